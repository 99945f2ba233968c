// SPDX-License-Identifier: Apache-2.0
#include "conditions/condition_set.h"

#include <algorithm>
#include <cassert>

#include "conditions/shipped_sets.h"

namespace model {

std::string Every::text() const {
    if (unit == Unit::Days && count == 0) return "on the day";
    const std::string_view word = unit == Unit::Hours  ? "hour"
                                  : unit == Unit::Days ? "day"
                                                       : "month";
    return std::to_string(count) + " " + std::string(word) + (count == 1 ? "" : "s");
}

bool ConditionSet::hasDrift() const {
    return std::ranges::any_of(rules, [](const ConditionRule& rule) {
        return rule.kind == ConditionKind::DriftLoss || rule.kind == ConditionKind::DriftGain ||
               rule.kind == ConditionKind::DriftRange;
    });
}

const std::vector<ConditionSet>& builtInConditionSets() {
    static const std::vector<ConditionSet> kSets = [] {
        std::vector<ConditionSet> sets;
        for (const EmbeddedFile& shipped : shippedConditionSets()) {
            auto set = parseConditionSet(shipped.text, std::string(shipped.name));
            assert(set.ok() && "a condition set of the program is broken; a test reads them all");
            if (set) sets.push_back(std::move(*set));
        }
        std::ranges::sort(sets, {}, &ConditionSet::id);
        return sets;
    }();
    return kSets;
}

const ConditionSet* conditionSet(std::string_view id) {
    const auto& sets = builtInConditionSets();
    const auto found = std::ranges::find(sets, id, &ConditionSet::id);
    return found == sets.end() ? nullptr : &*found;
}

const ConditionSet* schemeSet(std::string_view scheme) {
    if (const ConditionSet* exact = conditionSet(scheme))
        return exact->methods.empty() ? exact : nullptr;
    const ConditionSet* last = nullptr;
    for (const ConditionSet& set : builtInConditionSets())
        if (set.methods.empty() && scheme.starts_with(set.standard)) last = &set;
    return last;
}

}  // namespace model
