// SPDX-License-Identifier: Apache-2.0
// One rule of a table applied to one zone at given levels.
#pragma once

#include <optional>
#include <vector>

#include "judge/counted.h"
#include "judge/verdict.h"

namespace model {

/// How a rule came out.
struct RuleOutcome {
    std::optional<Check> check;  ///< none where the rule does not apply: see `leftOut`, `outside`
    std::string leftOut;         ///< the table sets no limit here: said in a note
    bool outside = false;        ///< the zone's thickness is outside the table
};

/// What is wanted of a check. Decided stops as soon as it is known whether the rule passes: then
/// measured, members and frame are not filled.
enum class Want { Exact, Decided };

/// Applies `rule` at the view's levels. `withRule` is the aligned rule to be summed together with a
/// linear one, else null; the stricter of the two limits holds.
RuleOutcome applyRule(const ZoneView& view, const Rule& rule, const Rule* withRule, Want want);

/// Whether linear and aligned are summed together at these levels.
bool sumsTogether(const LimitTable& table, const Levels& levels);

}  // namespace model
