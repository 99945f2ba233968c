// SPDX-License-Identifier: Apache-2.0
// Which level an order gives for a class or a rule. A UT table with the one key "all" can be
// ordered apart for rim, core, planar and dross, with the level names of "all".
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "judge/grouped.h"

namespace model {

/// The table's key whose levels an ordered key names: itself, or "all" for a split key of a class
/// that "all" orders; null where the table has no such key.
const LevelKey* orderedKey(const LimitTable& table, std::string_view name);

/// Whether the order says at which level a class is judged.
bool isOrdered(const LimitTable& table, const Levels& levels, IndicationClass classified);

/// One application of a rule: at one key's level, to some classes.
struct LevelOrder {
    std::string key;
    std::string level;
    std::vector<IndicationClass> classes;  ///< empty: every class
};

/// How a rule is applied at some levels. Ordered apart, what looks at each indication does so for
/// each class at its own level, and a sum of several classes is compared at each level ordered.
std::vector<LevelOrder> ordersOf(const LimitTable& table, const Levels& levels, const Rule& rule);

}  // namespace model
