// SPDX-License-Identifier: Apache-2.0
// Place, equivalent size and extent of a reflector as a JSON document, fettlemark-size/1.
#pragma once

#include <string_view>

#include "exchange/json_value.h"
#include "ultrasonic/size.h"

namespace model {

inline constexpr std::string_view kSizeFormat = "fettlemark-size/1";

/// The document of a size. What does not follow from the reading is null, never zero; a note says
/// why. Numbers are rounded once, to 0.001. Beside the fields of the format stand
/// "far_field_fbh_mm" (by the far-field formulas, whatever the method of "fbh_mm").
JsonValue sizeToJson(const Size& size);

}  // namespace model
