// SPDX-License-Identifier: Apache-2.0
// A what-if as a JSON document, fettlemark-what-if/1. Nothing in it can be taken for a verdict: its
// format is another, and it says so itself.
#pragma once

#include <string_view>

#include "exchange/json_value.h"
#include "judge/judge_again.h"

namespace model {

inline constexpr std::string_view kWhatIfFormat = "fettlemark-what-if/1";

/// How every output of a what-if begins.
inline constexpr std::string_view kWhatIfWarning =
    "judged by other criteria than those ordered: no verdict on the casting, and not stored";

JsonValue whatIfToJson(const JudgedAgain& again, const OtherCriteria& other);

}  // namespace model
