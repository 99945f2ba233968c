// SPDX-License-Identifier: Apache-2.0
// The demonstration archive with its certificates.
#pragma once

#include <string>

#include "base/result.h"

namespace app {

/// demo::writeDemonstration(), certificates included. Takes some seconds.
model::Result<void> writeDemonstration(const std::string& path, const std::string& programVersion);

}  // namespace app
