// SPDX-License-Identifier: Apache-2.0
// --number N of the commands that concern one certificate.
#pragma once

#include <cstdint>

#include "command.h"

namespace app {

/// Input: not a whole number from 1 on.
model::Result<std::int64_t> certificateNumber(const Arguments& arguments);

}  // namespace app
