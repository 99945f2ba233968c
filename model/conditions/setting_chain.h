// SPDX-License-Identifier: Apache-2.0
// The setting checks of one ultrasonic setting in the order of time.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/clock.h"
#include "record/test_conditions.h"

namespace model {

struct TimedCheck {
    const SettingCheck* check = nullptr;  ///< never null
    UtcTime at;
};

/// Those whose time can be read, by time, at the same time in the order typed.
std::vector<TimedCheck> checksOf(const TestConditions& conditions, std::string_view setting);

struct TimedScan {
    const Scan* scan = nullptr;  ///< never null
    UtcTime start;
    UtcTime end;  ///< >= start
};
/// None where its times cannot be read or contradict each other.
std::optional<TimedScan> timed(const Scan& scan);

}  // namespace model
