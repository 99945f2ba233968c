// SPDX-License-Identifier: Apache-2.0
#include <QCoreApplication>
#include <gtest/gtest.h>

#include "looks/appearance.h"
#include "looks/mark.h"
#include "looks/text.h"

namespace app {
namespace {

// WCAG 2.1: black on white is 21 : 1 (definition of contrast ratio); text needs 4.5 : 1 (1.4.3).
TEST(Contrast, IsThatOfTheDefinition) {
    EXPECT_NEAR(contrast(Qt::black, Qt::white), 21, 1e-9);
    EXPECT_NEAR(contrast(QColor(0x77, 0x77, 0x77), Qt::white), 4.48, 0.005);
}

TEST(Appearance, EveryMarkAndTextCanBeReadInLightAndDark) {
    for (const QPalette& palette : {lightPalette(), darkPalette()}) {
        for (const auto ground : {QPalette::Window, QPalette::Base}) {
            const QColor background = palette.color(ground);
            for (const auto mark : {Mark::Passes, Mark::Fails, Mark::Open, Mark::NotBegun}) {
                EXPECT_GE(contrast(colourOf(mark, background), background), 4.5);
            }
            EXPECT_GE(contrast(palette.color(QPalette::Text), background), 4.5);
            EXPECT_GE(contrast(palette.color(QPalette::PlaceholderText), background), 4.5);
        }
        EXPECT_GE(
            contrast(palette.color(QPalette::ToolTipText), palette.color(QPalette::ToolTipBase)),
            4.5);
        EXPECT_GE(
            contrast(palette.color(QPalette::HighlightedText), palette.color(QPalette::Highlight)),
            4.5);
    }
}

model::Check check(std::int64_t measured, model::Rational limit, bool passes) {
    model::Check made;
    made.measured = measured;
    made.limit = limit;
    made.unit = model::CheckUnit::Millimetre;
    made.passes = passes;
    return made;
}

TEST(ShareText, NeverRoundsAFailureDownToTheLimitOrAPassBeyondIt) {
    EXPECT_EQ(shareText(check(18'000'000, 18'000'000, true)), "100 %");
    EXPECT_EQ(shareText(check(18'001'000, 18'000'000, false)), "101 %");
    EXPECT_EQ(shareText(check(17'999'000, 18'000'000, true)), "99 %");
    EXPECT_EQ(shareText(check(19'500'000, 18'000'000, false)), "109 %");
    EXPECT_EQ(shareText(check(1'000'000, 0, false)), "");
}

TEST(ShareUsed, OfALowerLimitGrowsAsTheMeasuredFalls) {
    auto spacing = check(40'000'000, 30'000'000, true);
    spacing.comparison = model::Comparison::AtLeast;
    EXPECT_DOUBLE_EQ(*shareUsed(spacing), 0.75);
}

TEST(MeasuredAndLimit, SaysBothInFewWords) {
    const QString gap(QChar(0x202F));
    EXPECT_EQ(measuredAndLimit(check(7'500'000, 10'000'000, true)), "7.5 of 10" + gap + "mm");
    auto count = check(2'000'000, 0, false);
    count.unit = model::CheckUnit::Count;
    EXPECT_EQ(measuredAndLimit(count), "2, none allowed");
}

TEST(LevelsText, NamesTheLevelsInTheTradesOrder) {
    EXPECT_EQ(levelsText({{"aligned", "AM 4"}, {"linear", "LM 4"}, {"non-linear", "SM 2"}}),
              QString("SM 2 · LM 4 · AM 4"));
}

TEST(ErrorText, PutsArgumentsIntoTheSentence) {
    const model::Error error{model::ErrorKind::Input, "row 1", "%2 is not %1", {"a", "b"}};
    EXPECT_EQ(errorText(error), "row 1: b is not a");
}

}  // namespace
}  // namespace app
