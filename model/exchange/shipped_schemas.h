// SPDX-License-Identifier: Apache-2.0
// The bytes of schemas/*.schema.json, which the build puts into the program. The .cpp is written by
// embed.cmake.
#pragma once

#include <span>

#include "base/embedded_file.h"

namespace model {

/// In the order of their file names.
std::span<const EmbeddedFile> shippedSchemas();

}  // namespace model
