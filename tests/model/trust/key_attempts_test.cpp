// SPDX-License-Identifier: Apache-2.0
#include "trust/key_attempts.h"

#include <gtest/gtest.h>
#include <limits>

namespace model {
namespace {

using std::chrono::seconds;

const UtcTime kMorning = std::chrono::sys_days(std::chrono::year(2026) / 5 / 4) + seconds(28800);

TEST(FailedAttempts, TwoMistypingsCostNothing) {
    EXPECT_EQ(waitAfter(0), seconds(0));
    EXPECT_EQ(waitAfter(2), seconds(0));
}

TEST(FailedAttempts, TheWaitDoublesUpToAQuarterOfAnHour) {
    EXPECT_EQ(waitAfter(3), seconds(2));
    EXPECT_EQ(waitAfter(4), seconds(4));
    EXPECT_EQ(waitAfter(11), seconds(512));
    EXPECT_EQ(waitAfter(12), seconds(900));
    EXPECT_EQ(waitAfter(std::numeric_limits<int>::max()), seconds(900));
}

TEST(FailedAttempts, TheWaitRunsDownWithTheClock) {
    FailedAttempts attempts;
    for (int i = 0; i < 6; ++i) attempts = afterWrongPassphrase(attempts, kMorning);
    EXPECT_EQ(attempts.count, 6);
    EXPECT_EQ(remainingWait(attempts, kMorning), seconds(16));
    EXPECT_EQ(remainingWait(attempts, kMorning + seconds(15)), seconds(1));
    EXPECT_EQ(remainingWait(attempts, kMorning + seconds(16)), seconds(0));
    EXPECT_EQ(remainingWait(attempts, kMorning + seconds(100000)), seconds(0));
}

TEST(FailedAttempts, AClockSetBackGainsNothing) {
    const FailedAttempts attempts{8, kMorning};
    EXPECT_EQ(remainingWait(attempts, kMorning - seconds(3600)), waitAfter(8));
}

TEST(FailedAttempts, WithoutFailureThereIsNoWaitWhateverTheClockSays) {
    EXPECT_EQ(remainingWait(FailedAttempts{}, UtcTime{} - seconds(5)), seconds(0));
}

}  // namespace
}  // namespace model
