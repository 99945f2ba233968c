// SPDX-License-Identifier: Apache-2.0
// The reading of an ultrasonic instrument as a JSON document, fettlemark-reading/1.
#pragma once

#include <string>
#include <string_view>

#include "base/result.h"
#include "exchange/json_value.h"
#include "ultrasonic/reading.h"

namespace model {

inline constexpr std::string_view kReadingFormat = "fettlemark-reading/1";

/// The reading in a document that was read from `file`. Checks names, types and words, and fails
/// with the place "file: echo.gain_db"; whether the values are possible, and whether all is there
/// that their kind needs, is sizeOf()'s to check. The reference's velocity and attenuation default
/// to the material's, its place to the casting, on which a transfer that is not given is 0. A
/// surface that is not given is flat if there is no radius.
Result<Reading> readingFromJson(const JsonValue& document, const std::string& file);

}  // namespace model
