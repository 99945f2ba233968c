// SPDX-License-Identifier: Apache-2.0
// The files of a casting that its certificate prints.
#pragma once

#include <map>
#include <string>

#include "archive/archive.h"
#include "base/result.h"

namespace app {

/// Bytes of the attachments that are to be printed, by SHA-256. Damaged: one is gone or altered.
model::Result<std::map<std::string, std::string>> printedPictures(const model::Archive& archive,
                                                                  const model::CastingFile& file);

}  // namespace app
