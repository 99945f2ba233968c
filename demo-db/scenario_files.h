// SPDX-License-Identifier: Apache-2.0
// The bytes of the scenario's files, which the build puts into the program. The .cpp are written by
// embed.cmake.
#pragma once

#include <span>

#include "base/embedded_file.h"

namespace demo {

/// scenario/*.json, in the order of their names: one commission a file.
std::span<const model::EmbeddedFile> scenarioFiles();
/// works.json alone: what the works has, and who may test.
std::span<const model::EmbeddedFile> worksFiles();
/// pictures/*.png
std::span<const model::EmbeddedFile> pictureFiles();

}  // namespace demo
