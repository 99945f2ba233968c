// SPDX-License-Identifier: Apache-2.0
// Numbers among the arguments.
#pragma once

#include <cstdint>
#include <string_view>

#include "command.h"

namespace app {

/// The value of a required option as a whole number from 1 on; else Input with the option as place.
model::Result<std::int64_t> wholeNumber(const Arguments& arguments, std::string_view option);

}  // namespace app
