// SPDX-License-Identifier: Apache-2.0
// The rules for ultrasonic indications whatever the table: loss, area, share, extent through the
// wall, spacing and frames. The tables here are ours.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "reflector_maker.h"

namespace model {
namespace {

using test::cell;
using test::checkOf;
using test::dB;
using test::judgedBy;
using test::lengthTable;
using test::mm;
using test::mm2;
using test::ofLength;
using test::ofWall;
using test::reflector;
using test::ruleOf;
using test::tableOf;
using test::ultrasonicSheet;
using test::unknownCell;
using test::verdictOn;
using testing::ElementsAre;
using testing::HasSubstr;

TEST(UltrasonicRules, ABackWallLossHasItsLimitUnlessItIsExplained) {
    LimitTable table = tableOf({ruleOf(RuleKind::BackWallLoss, {}, {cell("6"), cell("6")})});
    Reflector u = reflector();
    u.backWallLoss = dB("6");
    EXPECT_EQ(judgedBy(table, {u}).word, Word::Acceptable);
    u.backWallLoss = dB("6.000001");
    EXPECT_EQ(judgedBy(table, {u}).word, Word::NotAcceptable);
    u.backWallLossExplained = "a core print";
    EXPECT_EQ(judgedBy(table, {u}).word, Word::Acceptable);
    u.backWallLossExplained.clear();
    u.backWallLoss = std::nullopt;
    EXPECT_EQ(judgedBy(table, {u}).word, Word::NotJudged);
}

TEST(UltrasonicRules, WhatIsNotRelevantStaysListedAndLeavesFirst) {
    Reflector u = ofLength("99");
    u.relevance = Relevance::False;
    u.reason = "an echo of the mode conversion at the fillet";
    const auto verdict = judgedBy(lengthTable(), {u});
    EXPECT_EQ(verdict.word, Word::Acceptable);
    ASSERT_EQ(verdict.indications.size(), 1U);
    EXPECT_FALSE(verdict.indications[0].considered);
}

TEST(UltrasonicRules, UnmeasuredIsNeverZero) {
    struct Case {
        RuleKind kind;
        void (*remove)(Reflector&);
    };
    const Case cases[] = {
        {RuleKind::IndividualLength, [](Reflector& u) { u.length.reset(); }},
        {RuleKind::CumulativeLength, [](Reflector& u) { u.length.reset(); }},
        {RuleKind::IndividualArea,
         [](Reflector& u) {
             u.area.reset();
             u.width.reset();
         }},
        {RuleKind::TotalArea,
         [](Reflector& u) {
             u.area.reset();
             u.width.reset();
         }},
        {RuleKind::AreaShare,
         [](Reflector& u) {
             u.area.reset();
             u.length.reset();
         }},
        {RuleKind::ThroughWallExtent, [](Reflector& u) { u.throughWall.reset(); }},
        {RuleKind::EquivalentReflector, [](Reflector& u) { u.fbh.reset(); }},
        {RuleKind::BackWallLoss, [](Reflector& u) { u.backWallLoss.reset(); }}};
    for (const Case& one : cases) {
        const LimitTable table = tableOf({ruleOf(one.kind, {}, {cell("5000"), cell("5000")})});
        Reflector u = reflector();
        EXPECT_EQ(judgedBy(table, {u}).word, Word::Acceptable);
        one.remove(u);
        const auto verdict = judgedBy(table, {u});
        EXPECT_EQ(verdict.word, Word::NotJudged);
        EXPECT_EQ(checkOf(verdict, one.kind)->measured, std::nullopt);
        EXPECT_THAT(checkOf(verdict, one.kind)->reason, HasSubstr("u1"));
    }
}

TEST(UltrasonicRules, TheAreaIsTypedOrThatOfTheEllipse) {
    const LimitTable table =
        tableOf({ruleOf(RuleKind::IndividualArea, {}, {cell("157.080"), cell("1000")})});
    Reflector u = reflector();
    u.area = std::nullopt;
    // pi/4 x 20 x 10 = 157.0796...
    const auto verdict = judgedBy(table, {u});
    EXPECT_EQ(verdict.word, Word::Acceptable);
    EXPECT_EQ(checkOf(verdict, RuleKind::IndividualArea)->measured, mm("157.080").millionths());
    u.area = mm2("157.080001");
    EXPECT_EQ(judgedBy(table, {u}).word, Word::NotAcceptable);
}

TEST(UltrasonicRules, WhatIsKnownAlreadyFailsASum) {
    const LimitTable table = tableOf({ruleOf(RuleKind::TotalArea, {}, {cell("150"), cell("900")})});
    Reflector a = reflector("u1", "100", "100");
    Reflector b = reflector("u2", "300", "100");
    b.width.reset();
    b.area.reset();
    EXPECT_EQ(judgedBy(table, {a, b}).word, Word::NotJudged);
    a.area = mm2("150.000001");
    const auto verdict = judgedBy(table, {a, b});
    EXPECT_EQ(verdict.word, Word::NotAcceptable);
    EXPECT_EQ(checkOf(verdict, RuleKind::TotalArea)->measured, mm("150.000001").millionths());
}

TEST(UltrasonicRules, AShareNeedsTheExaminedArea) {
    const LimitTable table = tableOf({ruleOf(RuleKind::AreaShare, {}, {cell("10"), cell("10")})});
    Sheet sheet = ultrasonicSheet("T", {{"all", "1"}}, {reflector()});
    sheet.examinations[0].ultrasonic.zoneArea = mm2("1000");
    EXPECT_EQ(verdictOn(table, sheet).word, Word::Acceptable);
    sheet.examinations[0].ultrasonic.zoneArea = mm2("999.999999");
    EXPECT_EQ(verdictOn(table, sheet).word, Word::NotAcceptable);
    sheet.examinations[0].ultrasonic.zoneArea = std::nullopt;
    EXPECT_EQ(verdictOn(table, sheet).word, Word::NotJudged);
}

TEST(UltrasonicRules, ALimitCanBeAPartOfTheExaminedArea) {
    Cell tenth;
    tenth.type = Cell::Type::FractionOfArea;
    tenth.fraction = Rational(10'000'000, 100'000'000);
    const LimitTable table = tableOf({ruleOf(RuleKind::TotalArea, {}, {tenth, tenth})});
    Reflector u = reflector();
    u.area = mm2("10000");
    EXPECT_EQ(judgedBy(table, {u}).word, Word::Acceptable);
    u.area = mm2("10000.000001");
    EXPECT_EQ(judgedBy(table, {u}).word, Word::NotAcceptable);
    Sheet sheet = ultrasonicSheet("T", {{"all", "1"}}, {u});
    sheet.examinations[0].ultrasonic.zoneArea = std::nullopt;
    EXPECT_EQ(verdictOn(table, sheet).word, Word::NotJudged);
}

TEST(UltrasonicRules, TheThroughWallLimitIsThatOfEachWall) {
    const LimitTable table =
        tableOf({ruleOf(RuleKind::ThroughWallExtent, {}, {ofWall(1, 10), ofWall(1, 5)})});
    Reflector a = reflector("u1", "100", "100");
    a.throughWall = mm("6");
    Reflector b = reflector("u2", "300", "100");
    b.wall = mm("40");
    b.throughWall = mm("4");
    auto verdict = judgedBy(table, {a, b});
    EXPECT_EQ(verdict.word, Word::Acceptable);
    b.throughWall = mm("4.1");
    verdict = judgedBy(table, {a, b});
    EXPECT_EQ(verdict.word, Word::NotAcceptable);
    const Check& check = *checkOf(verdict, RuleKind::ThroughWallExtent);
    EXPECT_THAT(check.members, ElementsAre("u2"));
    EXPECT_EQ(check.measured, mm("4.1").millionths());
    EXPECT_EQ(*check.limit, Rational(mm("4").millionths()));
    EXPECT_EQ(check.unit, CheckUnit::Millimetre);
    EXPECT_EQ(verdict.bestLevels.at("all"), "2");
}

TEST(UltrasonicRules, OpenConsiderationCannotFailACount) {
    LimitTable table = tableOf({ruleOf(RuleKind::Count, {}, {cell("0"), cell("1")})});
    table.recording.push_back({ReflectorMeasure::Fbh, Comparison::AtLeast, std::nullopt, {}});
    table.recording[0].rows = {{{}, cell("5"), 0}};
    Reflector u = reflector();
    EXPECT_EQ(judgedBy(table, {u}).word, Word::NotAcceptable);
    u.fbh = mm("4.9");
    EXPECT_EQ(judgedBy(table, {u}).word, Word::Acceptable);
    u.fbh = std::nullopt;
    const auto verdict = judgedBy(table, {u});
    EXPECT_EQ(verdict.word, Word::NotJudged);
    EXPECT_TRUE(verdict.indications[0].considered);
    EXPECT_EQ(verdict.bestLevels.at("all"), "2");
    EXPECT_THAT(verdict.bestLevelsUnknown, ElementsAre("1"));
    // Under an unknown limit all are considered.
    table.recording[0].rows[0].cell = unknownCell();
    u.fbh = mm("1");
    EXPECT_EQ(judgedBy(table, {u}).word, Word::NotJudged);
}

TEST(UltrasonicRules, SpacingIsTheSmallestGap) {
    const LimitTable table =
        tableOf({ruleOf(RuleKind::Spacing, {}, {cell("30"), cell("10")}, Comparison::AtLeast)});
    // Lengths of 20 mm along x: the gap is 20 less than the distance.
    const auto at = [&](const char* x) {
        return judgedBy(table, {reflector("u1", "100", "100"), reflector("u2", x, "100")});
    };
    EXPECT_EQ(at("150").word, Word::Acceptable);
    EXPECT_EQ(at("149.999").word, Word::NotAcceptable);
    EXPECT_EQ(at("149.999").bestLevels.at("all"), "2");
    EXPECT_EQ(judgedBy(table, {reflector()}).word, Word::Acceptable);
    Reflector open = reflector("u2", "200", "100");
    open.length = open.width = std::nullopt;
    EXPECT_EQ(judgedBy(table, {reflector(), open}).word, Word::NotJudged);
}

TEST(UltrasonicRules, AFramedCountIsThatOfTheWorstFrame) {
    LimitTable table = tableOf({ruleOf(RuleKind::Count, {}, {cell("2"), cell("3")})});
    table.rules[0].framed = true;
    table.frame.known = Known::Given;
    table.frame.shape = FrameShape{mm("100"), mm("100"), false};
    std::vector<Reflector> three{reflector("u1", "100", "100"), reflector("u2", "160", "100"),
                                 reflector("u3", "300", "100")};
    EXPECT_EQ(judgedBy(table, three).word, Word::Acceptable);
    // From the end of the first to the start of the last 100 mm: all touch one frame.
    three[2].x = mm("220");
    const auto verdict = judgedBy(table, three);
    EXPECT_EQ(verdict.word, Word::NotAcceptable);
    EXPECT_TRUE(checkOf(verdict, RuleKind::Count)->frame.has_value());
    // A shape that was not measured may reach into the frame; one not measurable is a point.
    three[2].x = mm("300");
    three[2].length = three[2].width = std::nullopt;
    EXPECT_EQ(judgedBy(table, three).word, Word::NotJudged);
    three[2].lengthNotMeasurable = three[2].widthNotMeasurable = true;
    EXPECT_EQ(judgedBy(table, three).word, Word::Acceptable);
    table.frame.known = Known::Unknown;
    EXPECT_EQ(judgedBy(table, three).word, Word::NotJudged);
    three.pop_back();
    EXPECT_EQ(judgedBy(table, three).word, Word::Acceptable);
}

}  // namespace
}  // namespace model
