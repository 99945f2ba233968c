// SPDX-License-Identifier: Apache-2.0
#include "repair/repair_rule.h"

#include <algorithm>
#include <cassert>

#include "repair/shipped_rules.h"

namespace model {

const std::vector<RepairRule>& builtInRepairRules() {
    static const std::vector<RepairRule> kRules = [] {
        std::vector<RepairRule> rules;
        for (const EmbeddedFile& shipped : shippedRepairRules()) {
            auto rule = parseRepairRule(shipped.text, std::string(shipped.name));
            assert(rule.ok() && "a repair rule of the program is broken; a test reads them all");
            if (rule) rules.push_back(std::move(*rule));
        }
        std::ranges::sort(rules, {}, &RepairRule::id);
        return rules;
    }();
    return kRules;
}

const RepairRule* repairRule(std::string_view id) {
    const auto& rules = builtInRepairRules();
    const auto found = std::ranges::find(rules, id, &RepairRule::id);
    return found == rules.end() ? nullptr : &*found;
}

}  // namespace model
