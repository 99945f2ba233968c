// SPDX-License-Identifier: Apache-2.0
// Ultrasonic judging whatever the table: classes by depth and kind, what is open, what must be
// stated, joins, frames, walls and levels. The tables here are ours.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "reflector_maker.h"

namespace model {
namespace {

using test::cell;
using test::checkOf;
using test::dB;
using test::joinAllWithin;
using test::judgedBy;
using test::mm;
using test::mm2;
using test::ofWall;
using test::reflector;
using test::ruleOf;
using test::tableOf;
using test::ultrasonicSheet;
using test::unknownCell;
using test::verdictOn;
using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

constexpr IndicationClass kRim = IndicationClass::Rim;
constexpr IndicationClass kCore = IndicationClass::Core;
constexpr IndicationClass kPlanar = IndicationClass::Planar;
constexpr IndicationClass kDross = IndicationClass::Dross;

/// Lengths up to 5 in the rim, 30 in the core, 10 planar, 15 dross; twice that at level 2.
LimitTable lengthTable() {
    return tableOf({ruleOf(RuleKind::IndividualLength, {kRim}, {cell("5"), cell("10")}),
                    ruleOf(RuleKind::IndividualLength, {kCore}, {cell("30"), cell("60")}),
                    ruleOf(RuleKind::IndividualLength, {kPlanar}, {cell("10"), cell("20")}),
                    ruleOf(RuleKind::IndividualLength, {kDross}, {cell("15"), cell("30")})});
}

Reflector ofLength(const char* length) {
    Reflector u = reflector();
    u.length = mm(length);
    u.width = mm("1");
    return u;
}

TEST(ReflectorClass, IsRimWhereAnyPartLiesInTheRim) {
    // A wall of 60 mm: the outer third is 20 mm on each side; on its boundary is in it.
    const std::tuple<const char*, const char*, IndicationClass> cases[] = {
        {"0", "1", kRim},          {"20", "1", kRim},
        {"20.000001", "1", kCore}, {"30", "9.999999", kCore},
        {"30", "10", kRim},        {"30", "25", kRim},
        {"40", "1", kRim},         {"39.999998", "0.000001", kCore},
        {"60", "1", kRim}};
    for (const auto& [depth, extent, expected] : cases) {
        Reflector u = reflector();
        u.depth = mm(depth);
        u.throughWall = mm(extent);
        EXPECT_EQ(judgedBy(lengthTable(), {u}).indications[0].classified, expected)
            << depth << " + " << extent;
    }
}

TEST(ReflectorClass, TheRimIsAtMostThirtyDeep) {
    // ISO 4992-1:2020 3.6 (R): outer third, at most 30 mm.
    Reflector u = reflector();
    u.wall = mm("200");
    u.throughWall = mm("1");
    u.depth = mm("30");
    EXPECT_EQ(judgedBy(lengthTable(), {u}).indications[0].classified, kRim);
    u.depth = mm("30.000001");
    EXPECT_EQ(judgedBy(lengthTable(), {u}).indications[0].classified, kCore);
    u.depth = mm("169");
    EXPECT_EQ(judgedBy(lengthTable(), {u}).indications[0].classified, kRim);
    u.depth = mm("168.999999");
    EXPECT_EQ(judgedBy(lengthTable(), {u}).indications[0].classified, kCore);
}

TEST(ReflectorClass, WithoutADepthIsRimAndCoreAndTheWorseCounts) {
    Reflector u = ofLength("20");
    EXPECT_EQ(judgedBy(lengthTable(), {u}).word, Word::Acceptable);
    u.depth = std::nullopt;
    const auto verdict = judgedBy(lengthTable(), {u});
    EXPECT_EQ(verdict.word, Word::NotAcceptable);
    EXPECT_EQ(verdict.indications[0].classified, std::nullopt);
    EXPECT_EQ(verdict.indications[0].openClass, "rim or core");
    EXPECT_EQ(judgedBy(lengthTable(), {[] {
                           Reflector small = ofLength("5");
                           small.depth = std::nullopt;
                           return small;
                       }()})
                  .word,
              Word::Acceptable);
}

TEST(ReflectorClass, WithoutAnExtentItMayReachTheFarRim) {
    Reflector u = ofLength("20");
    u.throughWall = std::nullopt;
    const auto open = judgedBy(lengthTable(), {u});
    EXPECT_EQ(open.indications[0].openClass, "rim or core");
    EXPECT_EQ(open.word, Word::NotAcceptable);
    u.depth = mm("10");
    EXPECT_EQ(judgedBy(lengthTable(), {u}).indications[0].classified, kRim);
    // Not measurable is as much as the table says.
    u.depth = mm("28");
    u.throughWallNotMeasurable = true;
    LimitTable table = lengthTable();
    EXPECT_EQ(judgedBy(table, {u}).indications[0].openClass, "rim or core");
    table.notMeasurable.throughWall = mm("3");
    EXPECT_EQ(judgedBy(table, {u}).indications[0].classified, kCore);
}

TEST(ReflectorClass, AKindThatIsOpenPassesOnlyAsEachAndFailsOnlyAsEach) {
    // In the core: 30 as volumetric, 10 as planar, 15 as dross.
    const auto at = [](const char* length) {
        Reflector u = ofLength(length);
        u.kind = std::nullopt;
        return judgedBy(lengthTable(), {u});
    };
    EXPECT_EQ(at("10").word, Word::Acceptable);
    EXPECT_EQ(at("10.1").word, Word::NotJudged);
    EXPECT_EQ(at("30").word, Word::NotJudged);
    EXPECT_EQ(at("30.1").word, Word::NotAcceptable);
    EXPECT_EQ(at("10").indications[0].openClass, "core or planar or dross");
    EXPECT_THAT(checkOf(at("10.1"), RuleKind::IndividualLength, "planar")->reason,
                HasSubstr("kind"));
    // Without a depth the rim counts: 5 as volumetric, so 10.1 is failed only as two of three.
    Reflector u = ofLength("12");
    u.kind = std::nullopt;
    u.depth = std::nullopt;
    EXPECT_EQ(judgedBy(lengthTable(), {u}).word, Word::NotJudged);
    u.length = mm("15.1");
    EXPECT_EQ(judgedBy(lengthTable(), {u}).word, Word::NotAcceptable);
}

TEST(ReflectorClass, AnOpenKindNeedsARuleForEach) {
    LimitTable table = lengthTable();
    table.rules.pop_back();
    Reflector u = ofLength("2");
    EXPECT_EQ(judgedBy(table, {u}).word, Word::Acceptable);
    u.kind = std::nullopt;
    const auto verdict = judgedBy(table, {u});
    EXPECT_EQ(verdict.word, Word::NotJudged);
    EXPECT_THAT(verdict.reasons, ElementsAre("the table has no rule for dross: u1"));
}

TEST(ReflectorClass, AForbiddenKindIsNeverAcceptableAndAnOpenOneNotJudged) {
    LimitTable table = lengthTable();
    table.recording.push_back({ReflectorMeasure::Fbh, Comparison::AtLeast, std::nullopt, {}});
    table.recording[0].rows = {{{}, cell("9"), 0}};
    Reflector u = ofLength("1");
    Sheet sheet = ultrasonicSheet("T", {{"all", "1"}}, {u});
    sheet.examinations[0].forbiddenKinds = {Kind::Planar};
    EXPECT_EQ(verdictOn(table, sheet).word, Word::Acceptable);
    sheet.examinations[0].reflectors[0].kind = Kind::Planar;
    EXPECT_EQ(verdictOn(table, sheet).word, Word::NotAcceptable);
    sheet.examinations[0].reflectors[0].kind = std::nullopt;
    EXPECT_EQ(verdictOn(table, sheet).word, Word::NotJudged);
}

TEST(UltrasonicReasons, WhatMustBeStatedOfTheExamination) {
    const auto reasonsWith = [](auto change) {
        Sheet sheet = ultrasonicSheet("T", {{"all", "1"}}, {});
        change(sheet.examinations[0]);
        const Verdict verdict = verdictOn(lengthTable(), sheet);
        EXPECT_EQ(verdict.word,
                  verdict.examinations[0].reasons.empty() ? Word::Acceptable : Word::NotJudged);
        return verdict.examinations[0].reasons;
    };
    EXPECT_THAT(reasonsWith([](Examination&) {}), IsEmpty());
    EXPECT_THAT(reasonsWith([](Examination& e) { e.noIndications = false; }),
                ElementsAre(HasSubstr("\"no indications\" is not stated")));
    EXPECT_THAT(reasonsWith([](Examination& e) { e.ultrasonic.testability.reset(); }),
                ElementsAre("the testability is not stated"));
    EXPECT_THAT(reasonsWith([](Examination& e) { e.ultrasonic.testability = Testability{}; }),
                ElementsAre("the testability is not stated"));
    EXPECT_THAT(reasonsWith([](Examination& e) { e.ultrasonic.deadZone.reset(); }),
                ElementsAre("the dead zone is not stated"));
    EXPECT_THAT(reasonsWith([](Examination& e) { e.ultrasonic.directions.clear(); }),
                ElementsAre("the directions of scanning are not stated"));
    EXPECT_THAT(reasonsWith([](Examination& e) { e.ultrasonic.directions.pop_back(); }),
                ElementsAre("the dead zone of 5 mm is not covered by another direction"));
    EXPECT_THAT(reasonsWith([](Examination& e) {
                    e.ultrasonic.directions.pop_back();
                    e.ultrasonic.deadZone = Length{};
                }),
                IsEmpty());
    EXPECT_THAT(reasonsWith([](Examination& e) {
                    e.notExamined = {{mm2("4"), "a lug", ""}};
                }),
                ElementsAre(HasSubstr("4 mm2 were not examined")));
    EXPECT_THAT(reasonsWith([](Examination& e) { e.levels.clear(); }), IsEmpty())
        << "nothing found needs no level";
}

TEST(UltrasonicReasons, ABackWallLossAtTheLevelMustBeExplained) {
    LimitTable table = lengthTable();
    table.recording.push_back({ReflectorMeasure::BackWallLoss, Comparison::AtLeast, {}, {}});
    table.recording[0].rows = {{{}, cell("12"), 0}};
    Reflector u = ofLength("2");
    u.backWallLoss = dB("11.999999");
    EXPECT_THAT(judgedBy(table, {u}).reasons, IsEmpty());
    u.backWallLoss = dB("12");
    const auto verdict = judgedBy(table, {u});
    EXPECT_EQ(verdict.word, Word::NotJudged);
    EXPECT_THAT(verdict.reasons,
                ElementsAre("a back-wall loss at the evaluation level is not explained: u1"));
    u.backWallLossExplained = "a taper of the far side";
    EXPECT_EQ(judgedBy(table, {u}).word, Word::Acceptable);
    // It does not excuse what it explains.
    u.length = mm("31");
    EXPECT_EQ(judgedBy(table, {u}).word, Word::NotAcceptable);
}

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

TEST(UltrasonicValidation, RefusesWhatCannotBe) {
    const auto refused = [](auto change) {
        Sheet sheet = ultrasonicSheet("T", {{"all", "1"}}, {reflector()});
        change(sheet.examinations[0]);
        TableSet tables;
        EXPECT_TRUE(tables.add(lengthTable()).ok());
        const auto verdict = judge(sheet, tables);
        EXPECT_FALSE(verdict.ok());
        return verdict.ok() ? "" : verdict.error().message();
    };
    EXPECT_THAT(refused([](Examination& e) { e.reflectors.push_back(e.reflectors[0]); }),
                HasSubstr("indications[1].id: \"u1\" is used twice"));
    EXPECT_THAT(refused([](Examination& e) { e.noIndications = true; }),
                HasSubstr("no_indications"));
    EXPECT_THAT(refused([](Examination& e) { e.reflectors[0].depth = mm("60.000001"); }),
                HasSubstr("indications[0].depth_mm: is 60.000001, below the zone's thickness"));
    EXPECT_THAT(refused([](Examination& e) {
                    e.reflectors[0].wall = mm("20");
                    e.reflectors[0].depth = mm("21");
                }),
                HasSubstr("indications[0].depth_mm: is 21, below the wall of 20 mm"));
    EXPECT_THAT(refused([](Examination& e) { e.reflectors[0].width = mm("21"); }),
                HasSubstr("indications[0].width_mm"));
    EXPECT_THAT(refused([](Examination& e) { e.reflectors[0].fbh = Length{}; }),
                HasSubstr("indications[0].fbh_mm: must be above 0"));
    EXPECT_THAT(refused([](Examination& e) { e.reflectors[0].throughWallNotMeasurable = true; }),
                HasSubstr("indications[0].not_measurable"));
    EXPECT_THAT(refused([](Examination& e) {
                    e.reflectors[0].backWallLoss.reset();
                    e.reflectors[0].backWallLossExplained = "an edge";
                }),
                HasSubstr("indications[0].back_wall_loss_explained"));
    EXPECT_THAT(refused([](Examination& e) { e.reflectors[0].kind = Kind::Crack; }),
                HasSubstr("indications[0].kind"));
    EXPECT_THAT(refused([](Examination& e) { e.forbiddenKinds = {Kind::Crack}; }),
                HasSubstr("forbidden_kinds[0]"));
    EXPECT_THAT(refused([](Examination& e) { e.reflectors[0].relevance = Relevance::False; }),
                HasSubstr("indications[0].reason"));
    EXPECT_THAT(refused([](Examination& e) {
                    e.notExamined = {{mm2("100000.1"), "hidden", "A-1"}};
                }),
                HasSubstr("zone_area_mm2: is 100000, below the 100000.1 mm2"));
    EXPECT_THAT(refused([](Examination& e) { e.levels["rim"] = "1"; }),
                HasSubstr("levels.rim: stands beside \"all\""));
    EXPECT_THAT(refused([](Examination& e) {
                    e.levels = {{"clustered", "1"}};
                }),
                HasSubstr("no level key \"clustered\""));
    EXPECT_THAT(refused([](Examination& e) {
                    e.levels = {{"rim", "3"}};
                }),
                HasSubstr("levels.rim"));
    EXPECT_THAT(refused([](Examination& e) {
                    e.surface = SurfacePlace{"S", {}, mm("50"), mm("50"), std::nullopt};
                }),
                HasSubstr("centred outside zone Z1"));
    EXPECT_THAT(refused([](Examination& e) { e.indications = {test::spot("3")}; }),
                HasSubstr("indications"));
    EXPECT_THAT(refused([](Examination& e) { e.method = Method::Magnetic; }), HasSubstr("table"));
}

}  // namespace
}  // namespace model
