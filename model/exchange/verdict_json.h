// SPDX-License-Identifier: Apache-2.0
// The verdict as a JSON document, fettlemark-verdict/1.
#pragma once

#include <string_view>

#include "exchange/json_value.h"
#include "judge/verdict.h"

namespace model {

inline constexpr std::string_view kVerdictFormat = "fettlemark-verdict/1";

/// The document of a verdict. What is not there (a measurement that was not made, a limit that is
/// not known, a group that an indication does not belong to) is null. Lengths and areas are exact;
/// a limit that is no decimal, such as a third of the wall, is cut to 6 decimals and stands as a
/// fraction in "limit_exact"; a frame's place and angle have 6 decimals at most. "rejected" and
/// "invalid" stand only where the sheet has them.
JsonValue verdictToJson(const Verdict& verdict);

}  // namespace model
