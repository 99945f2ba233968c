// SPDX-License-Identifier: Apache-2.0
// Reading a file that the caller named.
#pragma once

#include <cstddef>
#include <string>

#include "base/result.h"

namespace app {

/// The bytes of a file, at most `most` of them. Input: it is not there, is no file, or is larger.
/// Refused: it is there but cannot be read.
model::Result<std::string> readWholeFile(const std::string& file, std::size_t most);

}  // namespace app
