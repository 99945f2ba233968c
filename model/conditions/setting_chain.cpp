// SPDX-License-Identifier: Apache-2.0
#include "conditions/setting_chain.h"

#include <algorithm>

namespace model {

std::vector<TimedCheck> checksOf(const TestConditions& conditions, std::string_view setting) {
    std::vector<TimedCheck> checks;
    for (const SettingCheck& check : conditions.settingChecks)
        if (check.setting == setting)
            if (const auto at = timeFrom(check.at)) checks.push_back({&check, *at});
    std::ranges::stable_sort(checks, {}, &TimedCheck::at);
    return checks;
}

std::optional<TimedScan> timed(const Scan& scan) {
    const auto start = timeFrom(scan.startedAt);
    const auto end = timeFrom(scan.endedAt);
    if (!start || !end || *end < *start) return std::nullopt;
    return TimedScan{&scan, *start, *end};
}

}  // namespace model
