// SPDX-License-Identifier: Apache-2.0
#include "base/clock.h"

#include <cstdio>

namespace model {
namespace {

class SystemClock final : public Clock {
public:
    [[nodiscard]] UtcTime now() const override {
        return std::chrono::floor<std::chrono::seconds>(std::chrono::system_clock::now());
    }
};

}  // namespace

std::string toText(UtcTime time) {
    const auto day = std::chrono::floor<std::chrono::days>(time);
    const std::chrono::year_month_day date(day);
    const std::chrono::hh_mm_ss clock(time - day);
    char text[40];
    std::snprintf(text, sizeof text, "%04d-%02u-%02uT%02d:%02d:%02dZ",
                  static_cast<int>(date.year()), static_cast<unsigned>(date.month()),
                  static_cast<unsigned>(date.day()), static_cast<int>(clock.hours().count()),
                  static_cast<int>(clock.minutes().count()),
                  static_cast<int>(clock.seconds().count()));
    return text;
}

std::optional<UtcTime> timeFrom(std::string_view text) {
    int year = 0;
    unsigned month = 0;
    unsigned day = 0;
    int hours = 0;
    int minutes = 0;
    int seconds = 0;
    const std::string ended(text);
    if (std::sscanf(ended.c_str(), "%4d-%2u-%2uT%2d:%2d:%2dZ", &year, &month, &day, &hours,
                    &minutes, &seconds) != 6)
        return std::nullopt;
    const std::chrono::year_month_day date{std::chrono::year(year), std::chrono::month(month),
                                           std::chrono::day(day)};
    if (!date.ok()) return std::nullopt;
    const UtcTime time = std::chrono::sys_days(date) + std::chrono::hours(hours) +
                         std::chrono::minutes(minutes) + std::chrono::seconds(seconds);
    // The round trip refuses blanks, signs, hours beyond 23 and whatever else follows.
    if (toText(time) != text) return std::nullopt;
    return time;
}

const Clock& systemClock() {
    static const SystemClock clock;
    return clock;
}

}  // namespace model
