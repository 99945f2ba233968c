// SPDX-License-Identifier: Apache-2.0
#include "judge/level_orders.h"

#include <algorithm>

#include "limits/words.h"

namespace model {
namespace {

constexpr std::string_view kAll = "all";
constexpr IndicationClass kSplit[] = {IndicationClass::Rim, IndicationClass::Core,
                                      IndicationClass::Planar, IndicationClass::Dross};

bool looksAtEach(RuleKind kind) {
    return kind == RuleKind::IndividualLength || kind == RuleKind::IndividualArea ||
           kind == RuleKind::EquivalentReflector || kind == RuleKind::ThroughWallExtent ||
           kind == RuleKind::BackWallLoss;
}

bool names(const std::vector<IndicationClass>& classes, IndicationClass classified) {
    return classes.empty() || std::ranges::find(classes, classified) != classes.end();
}

}  // namespace

const LevelKey* orderedKey(const LimitTable& table, std::string_view name) {
    if (const LevelKey* key = table.key(name)) return key;
    if (table.method != Method::Ultrasonic) return nullptr;
    const LevelKey* all = table.key(kAll);
    const bool split =
        all != nullptr && std::ranges::any_of(kSplit, [&](IndicationClass one) {
            return word(one) == name && std::ranges::find(all->classes, one) != all->classes.end();
        });
    return split ? all : nullptr;
}

bool isOrdered(const LimitTable& table, const Levels& levels, IndicationClass classified) {
    const LevelKey* key = table.keyOf(classified);
    if (key == nullptr) return false;
    if (levels.contains(key->name)) return true;
    return table.method == Method::Ultrasonic && key->name == kAll &&
           levels.contains(std::string(word(classified)));
}

std::vector<LevelOrder> ordersOf(const LimitTable& table, const Levels& levels, const Rule& rule) {
    if (const auto own = levels.find(rule.key); own != levels.end())
        return {{rule.key, own->second, rule.classes}};
    if (table.method != Method::Ultrasonic || rule.key != kAll) return {};
    const bool clusters = rule.classes == std::vector{IndicationClass::Clustered};
    std::vector<LevelOrder> orders;
    for (const IndicationClass split : kSplit) {
        const auto ordered = levels.find(std::string(word(split)));
        if (ordered == levels.end() || !(clusters || names(rule.classes, split))) continue;
        const auto classes = looksAtEach(rule.kind) ? std::vector{split} : rule.classes;
        orders.push_back({ordered->first, ordered->second, classes});
    }
    return orders;
}

}  // namespace model
