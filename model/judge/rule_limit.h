// SPDX-License-Identifier: Apache-2.0
// What a row of a rule means for one wall: its limit, unit and words. Shared by all methods.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "judge/verdict.h"

namespace model {

/// The row for a level and a wall; null where the wall is outside the table.
const RuleRow* rowFor(const Rule& rule, const std::string& level, Length wall);

/// The limit of a cell, in millionths; none where the cell is no number here. `examined` is the
/// area that a fraction of the area is taken of.
std::optional<Rational> limitOf(const Cell& cell, Length wall, std::optional<Area> examined);

/// Why a cell gives no limit.
std::string whyNoLimit(const Cell& cell, const std::string& level);

/// "linear and aligned"; "all" where the rule names none.
std::string classText(const std::vector<IndicationClass>& classes);

CheckUnit unitOf(const Rule& rule);

/// What the check says of the row that decided it: where it stands, its limit and its note.
void stateRow(Check& check, const Rule& rule, const Cell& cell, std::optional<Rational> limit);

/// "rule, classes: no limit at LEVEL".
std::string leftOutText(const Rule& rule, const std::vector<IndicationClass>& classes,
                        const std::string& level);

}  // namespace model
