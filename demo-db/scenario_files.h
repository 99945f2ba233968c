// SPDX-License-Identifier: Apache-2.0
// The bytes of scenario/*.json, which the build puts into the program. The .cpp is written by
// embed.cmake.
#pragma once

#include <span>

#include "base/embedded_file.h"

namespace demo {

/// In the order of their names.
std::span<const model::EmbeddedFile> scenarioFiles();

}  // namespace demo
