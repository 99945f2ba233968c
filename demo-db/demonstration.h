// SPDX-License-Identifier: Apache-2.0
// The demonstration archive: the scenario, entered through the archive's public face as the people
// of the scenario would have, on the days on which they would have.
#pragma once

#include <string>

#include "base/result.h"

namespace demo {

/// Writes a demonstration archive to `path`. Refuses a path where anything exists (Input); where
/// it fails later, what it had begun is removed. Every call writes the same content, times
/// included. A QCoreApplication must exist, see archive/archive.h.
model::Result<void> writeDemonstration(const std::string& path);

}  // namespace demo
