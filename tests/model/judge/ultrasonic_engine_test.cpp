// SPDX-License-Identifier: Apache-2.0
// Ultrasonic judging whatever the table: classes by depth and kind, what is open, and what must be
// stated. The tables here are ours.
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
using test::reflector;
using test::ultrasonicSheet;
using test::verdictOn;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

constexpr IndicationClass kRim = IndicationClass::Rim;
constexpr IndicationClass kCore = IndicationClass::Core;

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
