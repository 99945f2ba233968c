// SPDX-License-Identifier: Apache-2.0
// Writing a file that must not exist yet.
#pragma once

#include <string>
#include <string_view>

#include "base/result.h"

namespace app {

/// Writes a file whole or not at all, and never over anything; then the error ends with `advice`.
/// Input: something is there, or the folder is not. Refused: as the disk says.
model::Result<void> writeNewWholeFile(const std::string& out, std::string_view bytes,
                                      const char* advice);

}  // namespace app
