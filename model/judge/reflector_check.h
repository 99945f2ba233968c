// SPDX-License-Identifier: Apache-2.0
// One rule of a table applied to the ultrasonic indications of one zone.
#pragma once

#include "judge/reflector_view.h"
#include "judge/rule_check.h"

namespace model {

/// Applies `rule` as `order` says. A limit that depends on the wall is that of each indication's
/// own; a sum keeps the limits of the zone's thickness and of every wall that it counts.
RuleOutcome applyReflectorRule(const ReflectorView& view, const Rule& rule,
                               const LevelOrder& order);

/// Rules about each indication by itself.
RuleOutcome checkEachReflector(const ReflectorView& view, const Rule& rule,
                               const LevelOrder& order);
/// Rules about sums, shares and counts.
RuleOutcome checkReflectorSum(const ReflectorView& view, const Rule& rule, const LevelOrder& order);
/// Rules about the total area of clusters.
RuleOutcome checkClusters(const ReflectorView& view, const Rule& rule, const LevelOrder& order);

/// Whether a rule is about clusters alone.
bool isAboutClusters(const Rule& rule);

/// A check with what does not depend on the row.
Check beginCheck(const Rule& rule, const LevelOrder& order);

/// What came out at one row of a rule.
struct AtRow {
    const RuleRow* row = nullptr;  ///< null: the wall is outside the table
    std::optional<Rational> limit;
    std::optional<bool> passes;
    std::string reason;  ///< where it is open
};

/// Completes a check with its worst row; a rule whose rows all set no limit is left out.
RuleOutcome concluded(Check check, const Rule& rule, const LevelOrder& order,
                      const std::vector<AtRow>& rows);

}  // namespace model
