// SPDX-License-Identifier: Apache-2.0
// Writing a file so that it is either there in full or not at all.
#pragma once

#include <string>
#include <string_view>

#include "base/result.h"

namespace reports {

/// Writes `bytes` to a temporary file beside `path`, makes them durable and renames it to `path`;
/// an older file of that name is replaced. Fails with ErrorKind::Refused (disk full, no
/// permission, no such folder); then an older file is untouched and nothing is left behind.
model::Result<void> writeFile(const std::string& path, std::string_view bytes);

}  // namespace reports
