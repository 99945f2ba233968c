// SPDX-License-Identifier: Apache-2.0
// PS-31-08, bearing face: that only an oblique frame rejects it, shown without the frame search.
// Source: EXPECTED.md (frame 105 x 148 and LM 3, sum 10: EN 1369:2012, M).
#include <algorithm>
#include <cmath>
#include <gtest/gtest.h>
#include <numbers>

#include "judge/judge.h"
#include "scenario_castings.h"

namespace {

constexpr double kShort = 105;
constexpr double kLong = 148;
constexpr double kLimit = 10;

/// An indication as the circle about its centre that no point of it leaves: whatever a frame
/// touches of the indication, it touches of the circle's square too.
struct Round {
    double x, y, length;
    double reach() const { return length / 2; }
};

/// The four linear ones, read from the rows as typed and told apart by EN 1369's ratio.
std::vector<Round> linearOnes() {
    std::vector<Round> found;
    for (const model::ExaminationDraft& draft : scenarioCasting("PS-31-08").examinations) {
        if (draft.header.zone != "Z1") continue;
        for (const model::TypedIndication& row : draft.rows)
            if (std::stod(row.length) >= 3 * std::stod(row.width))
                found.push_back({std::stod(row.x), std::stod(row.y), std::stod(row.length)});
    }
    return found;
}

/// The greatest sum of lengths that a width x height rectangle along the axes can touch. Moved to
/// the right and up until one that it touches is about to leave, it touches no fewer: these
/// positions are enough.
double worstAlongTheAxes(const std::vector<Round>& items, double width, double height) {
    double worst = 0;
    for (const Round& left : items)
        for (const Round& bottom : items) {
            const double x = left.x + left.reach();
            const double y = bottom.y + bottom.reach();
            double sum = 0;
            for (const Round& item : items)
                if (item.x + item.reach() >= x && item.x - item.reach() <= x + width &&
                    item.y + item.reach() >= y && item.y - item.reach() <= y + height)
                    sum += item.length;
            worst = std::max(worst, sum);
        }
    return worst;
}

TEST(ObliqueCase, NoFrameAlongTheAxesReachesTheLimitInEitherOrientation) {
    const auto items = linearOnes();
    ASSERT_EQ(items.size(), 4U);
    EXPECT_DOUBLE_EQ(worstAlongTheAxes(items, kShort, kLong), 7);
    EXPECT_DOUBLE_EQ(worstAlongTheAxes(items, kLong, kShort), 7);
    EXPECT_LT(7, kLimit);
}

TEST(ObliqueCase, TheFrameOfThePaperHoldsAllFourCentres) {
    double sum = 0;
    for (const Round& item : linearOnes()) {
        const double u = (item.x - 210 + item.y - 160) / std::numbers::sqrt2;
        const double v = (item.y - 160 - (item.x - 210)) / std::numbers::sqrt2;
        EXPECT_LE(std::abs(u), kLong / 2);
        EXPECT_LE(std::abs(v), kShort / 2);
        sum += item.length;
    }
    EXPECT_DOUBLE_EQ(sum, 13);
    EXPECT_GT(sum, kLimit);
}

TEST(ObliqueCase, TheDecidingFrameStandsAskew) {
    const auto tables = model::TableSet::shipped();
    ASSERT_TRUE(tables) << tables.error().message();
    const auto verdict = model::judge(scenarioSheet("PS-31-08"), *tables);
    ASSERT_TRUE(verdict) << verdict.error().message();
    int seen = 0;
    for (const model::ExaminationVerdict& examination : verdict->examinations)
        for (const model::Check& check : examination.checks) {
            if (check.passes != false) continue;
            ++seen;
            ASSERT_TRUE(check.frame);
            EXPECT_EQ(check.members.size(), 4U);
            // A frame nearer than 5 degrees to the axes spans at most 148 cos 5 + 105 sin 5 =
            // 156.6 in x and in y, and would have to span 162.5 in both.
            const double off = std::remainder(check.frame->angleDegrees, 90);
            EXPECT_GT(std::abs(off), 5);
        }
    EXPECT_EQ(seen, 1);
}

}  // namespace
