// SPDX-License-Identifier: Apache-2.0
#include "base/clock.h"

#include <gtest/gtest.h>

namespace model {
namespace {

// Source: `date -u -d TIME +%s` of GNU coreutils.
TEST(ClockOracle, ReadsTheTimesThatAreStored) {
    const struct {
        const char* text;
        long long seconds;
    } kTimes[] = {{"2026-11-25T09:30:00Z", 1795599000},
                  {"2000-02-29T23:59:59Z", 951868799},
                  {"1970-01-01T00:00:00Z", 0}};
    for (const auto& time : kTimes) {
        const auto read = timeFrom(time.text);
        ASSERT_TRUE(read) << time.text;
        EXPECT_EQ(read->time_since_epoch().count(), time.seconds) << time.text;
        EXPECT_EQ(toText(*read), time.text);
    }
}

TEST(Clock, ReadsNoOtherForm) {
    for (const char* text :
         {"", "2026-11-25", "2026-11-25T09:30:00", "2026-11-25 09:30:00Z", "2026-11-25T09:30:00ZZ",
          "2026-11-25T09:30:00Z ", " 2026-11-25T09:30:00Z", "2026-11-25T9:30:00Z",
          "2026-11-25T24:00:00Z", "2026-11-25T09:60:00Z", "2026-11-25T09:30:60Z",
          "2026-02-29T00:00:00Z", "2026-13-01T00:00:00Z", "2026-00-01T00:00:00Z",
          "+026-11-25T09:30:00Z", "2026-11-25T-9:30:00Z", "2026-11-25T09:30:00+00:00"})
        EXPECT_FALSE(timeFrom(text)) << text;
}

}  // namespace
}  // namespace model
