// SPDX-License-Identifier: Apache-2.0
#include "certificate/printed_values.h"

#include <gtest/gtest.h>

namespace {

using model::Comparison;
using reports::filled;
using reports::shareText;

model::Check checkOf(std::int64_t measured, model::Rational limit, Comparison comparison,
                     model::CheckUnit unit = model::CheckUnit::Millimetre) {
    model::Check check;
    check.measured = measured;
    check.limit = limit;
    check.comparison = comparison;
    check.unit = unit;
    return check;
}

// Expected shares are worked out by hand from measured / limit.

TEST(ShareOfTheLimit, IsRoundedUpSoThatAFailureNeverReads100) {
    EXPECT_EQ(shareText(checkOf(19'500'000, 18'000'000, Comparison::AtMost)), "108.4\u00a0%");
    EXPECT_EQ(shareText(checkOf(18'000'001, 18'000'000, Comparison::AtMost)), "100.1\u00a0%");
    EXPECT_EQ(shareText(checkOf(18'000'000, 18'000'000, Comparison::AtMost)), "100\u00a0%");
    EXPECT_EQ(shareText(checkOf(1, 18'000'000, Comparison::AtMost)), "0.1\u00a0%");
    EXPECT_EQ(shareText(checkOf(0, 18'000'000, Comparison::AtMost)), "0\u00a0%");
}

TEST(ShareOfTheLimit, OfAFractionIsExact) {
    // limit t / 3 of 40 mm; 10 / (40 / 3) = 75 %
    EXPECT_EQ(shareText(checkOf(10'000'000, {40'000'000, 3}, Comparison::AtMost)), "75\u00a0%");
}

TEST(ShareOfTheLimit, OfALowerLimitIsTheLimitAgainstTheMeasured) {
    EXPECT_EQ(shareText(checkOf(40'000'000, 30'000'000, Comparison::AtLeast)), "75\u00a0%");
    EXPECT_EQ(shareText(checkOf(29'999'999, 30'000'000, Comparison::More)), "100.1\u00a0%");
    EXPECT_EQ(shareText(checkOf(0, 30'000'000, Comparison::AtLeast)), "");
}

TEST(ShareOfTheLimit, HasNoMeaningWhereNothingIsAllowedOrMeasured) {
    EXPECT_EQ(shareText(checkOf(1'000'000, 0, Comparison::AtMost)), "");
    model::Check unknown = checkOf(0, 18'000'000, Comparison::AtMost);
    unknown.measured.reset();
    EXPECT_EQ(shareText(unknown), "");
}

TEST(ShareOfTheLimit, FarAboveIsNotSpeltOut) {
    EXPECT_EQ(shareText(checkOf(1'000'000'000'000, 1'000'000, Comparison::AtMost)), "> 999 %");
}

TEST(PrintedLimit, ShowsTheComparison) {
    EXPECT_EQ(reports::limitText(checkOf(0, 2'000'000, Comparison::Less)), "<\u00a02\u00a0mm");
    EXPECT_EQ(reports::limitText(
                  checkOf(0, 2'000'000, Comparison::AtMost, model::CheckUnit::SquareMillimetre)),
              "≤\u00a02\u00a0mm²");
    EXPECT_EQ(reports::limitText(checkOf(0, {10'000'000, 3}, Comparison::AtMost)),
              "≤\u00a03.333333\u00a0mm");
}

TEST(FilledPhrase, DoesNotReadPlaceholdersInValues) {
    EXPECT_EQ(filled("%2 and %1", {"%2", "100 %1"}), "100 %1 and %2");
    EXPECT_EQ(filled("50 %", {}), "50 %");
}

TEST(ShortList, SaysHowManyItLeavesOut) {
    EXPECT_EQ(reports::shortList({"a", "b", "c"}, 3), "a, b, c");
    EXPECT_EQ(reports::shortList({"a", "b", "c", "d"}, 2), "a, b and 2 more");
}

TEST(PrintedLevel, NamesTheClassUnlessItIsEveryOne) {
    EXPECT_EQ(reports::levelText("linear", "LM 4"), "linear\u00a0LM\u00a04");
    EXPECT_EQ(reports::levelText("rim", "2"), "rim\u00a02");
    EXPECT_EQ(reports::levelText("all", "3"), "level\u00a03");
    EXPECT_EQ(reports::levelText("all", "P 2"), "P\u00a02");
}

}  // namespace
