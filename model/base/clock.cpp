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

const Clock& systemClock() {
    static const SystemClock clock;
    return clock;
}

}  // namespace model
