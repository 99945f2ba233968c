// SPDX-License-Identifier: Apache-2.0
// Readings of ultrasonic examinations with their settings and sizes, as they were signed.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "archive/archive.h"

namespace app {

/// A fettlemark-readings/1 document of those of the signed records that are ultrasonic; none where
/// there is no such record. "settings" and, of each of "readings", "typed" hold the texts as typed,
/// without empty ones, lengths in the "unit" beside them; "size" has the fields of a
/// fettlemark-size/1 that are not null, and is null itself where nothing was read.
model::Result<std::optional<std::string>> readingsJson(const model::Archive& archive,
                                                       const std::vector<std::int64_t>& records);

}  // namespace app
