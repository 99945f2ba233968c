// SPDX-License-Identifier: Apache-2.0
// The time of day, handed in wherever it is stored, so that a test or a demonstration sets it.
#pragma once

#include <chrono>
#include <optional>
#include <string>
#include <string_view>

namespace model {

/// A moment in UTC, to the second.
using UtcTime = std::chrono::sys_seconds;

/// ISO 8601 in UTC: 2026-11-25T09:30:00Z.
std::string toText(UtcTime time);
/// Reads toText()'s form and no other.
std::optional<UtcTime> timeFrom(std::string_view text);

class Clock {
public:
    Clock() = default;
    Clock(const Clock&) = delete;
    Clock& operator=(const Clock&) = delete;
    virtual ~Clock() = default;
    [[nodiscard]] virtual UtcTime now() const = 0;
};

/// The machine's clock. It can be set wrong or back: stored times never order anything.
const Clock& systemClock();

}  // namespace model
