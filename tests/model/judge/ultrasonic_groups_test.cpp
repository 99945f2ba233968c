// SPDX-License-Identifier: Apache-2.0
// Ultrasonic indications that are joined, and levels ordered apart. The tables here are ours.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "reflector_maker.h"

namespace model {
namespace {

using test::cell;
using test::checkOf;
using test::joinAllWithin;
using test::judgedBy;
using test::lengthTable;
using test::mm;
using test::mm2;
using test::ofLength;
using test::reflector;
using test::ruleOf;
using test::tableOf;
using test::ultrasonicSheet;
using test::verdictOn;
using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;

constexpr IndicationClass kRim = IndicationClass::Rim;
constexpr IndicationClass kCore = IndicationClass::Core;

TEST(UltrasonicGroups, AreJudgedAsOneAndAcquitNothing) {
    LimitTable table = tableOf({ruleOf(RuleKind::IndividualLength, {}, {cell("45"), cell("90")}),
                                ruleOf(RuleKind::IndividualArea, {}, {cell("500"), cell("900")}),
                                ruleOf(RuleKind::ThroughWallExtent, {}, {cell("7"), cell("9")}),
                                ruleOf(RuleKind::Count, {}, {cell("2"), cell("2")})});
    joinAllWithin(table, "10");
    Reflector a = reflector("u1", "100", "100");
    Reflector b = reflector("u2", "125", "100");
    auto verdict = judgedBy(table, {a, b});
    ASSERT_EQ(verdict.groups.size(), 1U);
    EXPECT_EQ(verdict.groups[0].id, "J1");
    EXPECT_EQ(verdict.indications[0].group, "J1");
    // 20 + 5 + 20 long; the hull is a 35 x 10 rectangle with a disc of 10: 428.54 mm2.
    EXPECT_EQ(verdict.word, Word::Acceptable);
    EXPECT_EQ(checkOf(verdict, RuleKind::IndividualLength)->measured, mm("45").millionths());
    const std::int64_t hull = *checkOf(verdict, RuleKind::IndividualArea)->measured;
    EXPECT_GE(hull, mm("428.54").millionths() - 1000);
    EXPECT_LE(hull, mm("429.40").millionths()) << "above it by at most 0.2 %";
    EXPECT_EQ(checkOf(verdict, RuleKind::Count)->measured, mm("2").millionths());
    // From the least depth to the greatest: 28 to 35.
    b.depth = mm("31");
    EXPECT_EQ(judgedBy(table, {a, b}).word, Word::Acceptable);
    b.depth = mm("31.1");
    verdict = judgedBy(table, {a, b});
    EXPECT_EQ(verdict.word, Word::NotAcceptable);
    EXPECT_THAT(checkOf(verdict, RuleKind::ThroughWallExtent)->members, ElementsAre("J1"));
    b.depth = std::nullopt;
    EXPECT_EQ(judgedBy(table, {a, b}).word, Word::NotJudged);
    // The sum of the members' areas where it is more than the hull.
    b.depth = mm("28");
    a.area = b.area = mm2("250.1");
    EXPECT_EQ(judgedBy(table, {a, b}).word, Word::NotAcceptable);
    // A count takes indications, not groups.
    a.area = b.area = mm2("100");
    EXPECT_EQ(judgedBy(table, {a, b, reflector("u3", "400", "100")}).word, Word::NotAcceptable);
}

TEST(UltrasonicGroups, ALengthThatWasNotMeasuredLeavesJoiningOpen) {
    LimitTable table = tableOf({ruleOf(RuleKind::ThroughWallExtent, {}, {cell("6"), cell("9")})});
    joinAllWithin(table, "10");
    Reflector a = reflector("u1", "100", "100");
    Reflector b = reflector("u2", "150", "100");
    b.depth = mm("24");
    EXPECT_EQ(judgedBy(table, {a, b}).word, Word::Acceptable);
    b.length = b.width = std::nullopt;
    const auto verdict = judgedBy(table, {a, b});
    EXPECT_EQ(verdict.word, Word::NotJudged);
    EXPECT_THAT(verdict.reasons, Contains(HasSubstr("whether it joins a neighbour is open")));
    EXPECT_EQ(judgedBy(table, {b}).word, Word::Acceptable);
    b.lengthNotMeasurable = b.widthNotMeasurable = true;
    EXPECT_EQ(judgedBy(table, {a, b}).word, Word::Acceptable);
    // Without a width it may be as wide as long: 9 mm from the other instead of 18.
    b = reflector("u2", "100", "120");
    b.depth = mm("24");
    b.width = mm("2");
    a.width = mm("2");
    EXPECT_EQ(judgedBy(table, {a, b}).word, Word::Acceptable);
    b.width = std::nullopt;
    EXPECT_EQ(judgedBy(table, {a, b}).word, Word::NotJudged);
    b.y = mm("121.1");
    EXPECT_EQ(judgedBy(table, {a, b}).word, Word::Acceptable);
}

TEST(UltrasonicGroups, JoinAcrossTheEdgeOfTwoZones) {
    LimitTable table = tableOf({ruleOf(RuleKind::IndividualLength, {}, {cell("40"), cell("90")})});
    joinAllWithin(table, "10");
    Sheet sheet = ultrasonicSheet("T", {{"all", "1"}}, {reflector("u1", "185", "100")});
    Examination& first = sheet.examinations[0];
    first.surface = SurfacePlace{"S", {}, mm("200"), mm("200"), std::nullopt};
    Examination second = first;
    second.zone = "Z2";
    second.surface->placement.x = mm("200");
    second.reflectors = {reflector("u1", "15", "100")};
    sheet.examinations.push_back(second);
    const Verdict verdict = verdictOn(table, sheet);
    EXPECT_EQ(verdict.word, Word::NotAcceptable);
    for (const ExaminationVerdict& zone : verdict.examinations) {
        EXPECT_EQ(zone.word, Word::NotAcceptable);
        ASSERT_EQ(zone.groups.size(), 1U);
        EXPECT_EQ(zone.groups[0].length, mm("50"));
    }
    EXPECT_THAT(verdict.examinations[0].groups[0].members, ElementsAre("u1", "Z2/u1"));
}

TEST(UltrasonicLevels, CanBeOrderedApart) {
    Sheet sheet = ultrasonicSheet("T", {{"rim", "1"}, {"core", "2"}}, {ofLength("45")});
    EXPECT_EQ(verdictOn(lengthTable(), sheet).word, Word::Acceptable);
    sheet.examinations[0].levels["core"] = "1";
    EXPECT_EQ(verdictOn(lengthTable(), sheet).word, Word::NotAcceptable);
    const auto best = verdictOn(lengthTable(), sheet).examinations[0].bestLevels;
    EXPECT_EQ(best.at("rim"), "1");
    EXPECT_EQ(best.at("core"), "2");
    // A class without a level is not judged.
    sheet.examinations[0].levels = {{"rim", "1"}};
    const Verdict open = verdictOn(lengthTable(), sheet);
    EXPECT_EQ(open.word, Word::NotJudged);
    EXPECT_THAT(open.examinations[0].reasons, ElementsAre("no level is ordered for core: u1"));
}

TEST(UltrasonicLevels, ASumOfSeveralClassesIsHeldAgainstEachLevel) {
    const LimitTable table =
        tableOf({ruleOf(RuleKind::TotalArea, {kRim, kCore}, {cell("150"), cell("300")})});
    Reflector a = reflector("u1", "100", "100");
    Reflector b = reflector("u2", "300", "100");
    b.depth = mm("5");
    Sheet sheet = ultrasonicSheet("T", {{"rim", "2"}, {"core", "2"}}, {a, b});
    EXPECT_EQ(verdictOn(table, sheet).word, Word::Acceptable);
    sheet.examinations[0].levels["rim"] = "1";
    EXPECT_EQ(verdictOn(table, sheet).word, Word::NotAcceptable);
}

}  // namespace
}  // namespace model
