// SPDX-License-Identifier: Apache-2.0
// Zones that share a developed surface. Limits used: EN 1369:2012 Table 2 (M): LM 3 and AM 3 alone
// 6, sum 10, counted from 3 mm; LM 2: 4, 6, 2 mm; LM 5: 18, 25, 5 mm; frame 105 x 148.
#include <cmath>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "sheet_maker.h"

namespace model {
namespace {

using test::checkOf;
using test::linear;
using test::mm;
using test::numbered;
using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::UnorderedElementsAre;

/// A 200 x 200 zone with its datum at (x, y) of surface S.
Examination zone(const char* name, const char* x, const char* y, const char* level,
                 std::vector<Indication> indications, Angle angle = {}) {
    Examination e;
    e.zone = name;
    e.table = "EN 1369:2012";
    e.levels = {{"linear", std::string("LM ") + level}, {"aligned", std::string("AM ") + level}};
    e.thickness = mm("40");
    e.surface = SurfacePlace{"S", {mm(x), mm(y), angle}, mm("200"), mm("200"), std::nullopt};
    e.noIndications = indications.empty();
    e.indications = numbered(std::move(indications));
    return e;
}

Verdict verdictOn(std::vector<Examination> examinations) {
    Sheet sheet;
    sheet.examinations = std::move(examinations);
    const auto verdict = judge(sheet, test::shippedTables());
    EXPECT_TRUE(verdict.ok()) << (verdict.ok() ? "" : verdict.error().message());
    return verdict.ok() ? verdict.value() : Verdict{};
}

TEST(SurfaceVerdict, AFrameAcrossTheEdgeCountsBothZones) {
    const auto verdict = verdictOn({zone("A", "0", "0", "3", {linear("5.5", "180", "50")}),
                                    zone("B", "200", "0", "3", {linear("5", "20", "50")})});
    EXPECT_EQ(verdict.word, Word::NotAcceptable);
    for (const auto& [index, other] : {std::pair{0, "B/1"}, {1, "A/1"}}) {
        const ExaminationVerdict& e = verdict.examinations[static_cast<std::size_t>(index)];
        EXPECT_EQ(e.word, Word::NotAcceptable);
        const Check* sum = checkOf(e, RuleKind::CumulativeLength, "linear and aligned");
        ASSERT_NE(sum, nullptr);
        EXPECT_EQ(sum->measured, mm("10.5").millionths());
        EXPECT_THAT(sum->members, UnorderedElementsAre("1", other));
        EXPECT_EQ(e.bestLevels.at("linear"), "LM 4");
        EXPECT_EQ(e.bestLevels.at("aligned"), "AM 4");
    }
    // The frame is given in each zone's own coordinates: 200 mm apart in x.
    const auto centre = [&](std::size_t i) {
        return checkOf(verdict.examinations[i], RuleKind::CumulativeLength)->frame->x;
    };
    EXPECT_GT(centre(0), 120);
    EXPECT_LT(centre(1), 80);
}

TEST(SurfaceVerdict, EachZoneAppliesItsOwnLevelAndThreshold) {
    // 5.5 + 4.5: 10 passes LM 3; at LM 5 only the 5.5 counts (L1 = 5); at LM 2 both fail alone.
    const auto verdict = verdictOn({zone("A", "0", "0", "3", {linear("5.5", "180", "50")}),
                                    zone("B", "200", "0", "5", {linear("4.5", "20", "50")})});
    EXPECT_EQ(verdict.examinations[0].word, Word::Acceptable);
    EXPECT_EQ(checkOf(verdict.examinations[0], RuleKind::CumulativeLength)->measured,
              mm("10").millionths());
    EXPECT_EQ(checkOf(verdict.examinations[1], RuleKind::CumulativeLength)->measured, 0);
    EXPECT_FALSE(verdict.examinations[1].indications[0].considered);

    const auto stricter = verdictOn({zone("A", "0", "0", "2", {linear("3.5", "180", "50")}),
                                     zone("B", "200", "0", "5", {linear("5", "20", "50")})});
    EXPECT_EQ(stricter.examinations[0].word, Word::NotAcceptable);  // 8.5 > 6
    EXPECT_EQ(stricter.examinations[1].word, Word::Acceptable);
    EXPECT_THAT(stricter.examinations[1].notes, Contains(HasSubstr("zone A")));
}

TEST(SurfaceVerdict, AGroupAcrossTheEdgeIsJudgedInBothZones) {
    // Two 4 mm long linear, gap 2 under the longest: one aligned of 10 mm, above 6 alone.
    const auto verdict = verdictOn({zone("A", "0", "0", "3", {linear("4", "197", "50")}),
                                    zone("B", "200", "0", "3", {linear("4", "3", "50")})});
    for (const ExaminationVerdict& e : verdict.examinations) {
        ASSERT_EQ(e.groups.size(), 1U);
        EXPECT_EQ(e.groups[0].length, mm("10"));
        EXPECT_EQ(e.word, Word::NotAcceptable);
        EXPECT_THAT(checkOf(e, RuleKind::IndividualLength, "aligned")->members, ElementsAre("A1"));
    }
    EXPECT_THAT(verdict.examinations[0].groups[0].members, ElementsAre("1", "B/1"));
    EXPECT_THAT(verdict.examinations[1].groups[0].members, ElementsAre("A/1", "1"));
}

TEST(SurfaceVerdict, OtherStagesCyclesAndTablesStayApart) {
    auto other = zone("B", "200", "0", "3", {linear("5", "20", "50")});
    other.stage = Stage::HeatTreated;
    EXPECT_EQ(verdictOn({zone("A", "0", "0", "3", {linear("5.5", "180", "50")}), other}).word,
              Word::Acceptable);
}

TEST(SurfaceVerdict, AZoneWithoutASurfaceIsJudgedAloneAndSaysSo) {
    auto alone = zone("A", "0", "0", "3", {linear("5.5", "180", "50")});
    alone.surface.reset();
    const auto verdict = verdictOn({alone});
    EXPECT_THAT(verdict.examinations[0].notes, Contains("edges not joined"));
}

TEST(SurfaceVerdict, OnlyAnObliqueFrameReachesBothEnds) {
    // The frame's diagonal is 181.5 mm. Two indications 179 mm apart along a line at 54.6 degrees
    // to the frame's width side fit; square to the edges the line at 45 degrees reaches 148 at most
    // in each direction: 179 cos 45 = 126.6 > 105.
    const auto verdict = verdictOn(
        {zone("A", "0", "0", "3", {linear("5.5", "20", "20"), linear("5", "146.5", "146.5")})});
    EXPECT_EQ(verdict.word, Word::NotAcceptable);
    const Check* sum = checkOf(verdict.examinations[0], RuleKind::CumulativeLength);
    EXPECT_EQ(sum->measured, mm("10.5").millionths());
    const double angle = sum->frame->angleDegrees;
    EXPECT_GT(std::min(std::fmod(angle, 90), 90 - std::fmod(angle, 90)), 5);
}

TEST(SurfaceVerdict, ATurnedZoneIsJudgedAsTheSameFindingsUnturned) {
    for (const int turn : {0, 30, 90, 217}) {
        const auto verdict = verdictOn(
            {zone("A", "500", "-300", "3",
                  {linear("4", "20", "20"), linear("4", "60", "90"), linear("3", "90", "10")},
                  degrees(turn))});
        const Check* sum = checkOf(verdict.examinations[0], RuleKind::CumulativeLength);
        EXPECT_EQ(sum->measured, mm("11").millionths()) << turn;
        EXPECT_GT(sum->frame->x, -60) << turn;
        EXPECT_LT(sum->frame->x, 170) << turn;
    }
}

TEST(SurfaceVerdict, TheSeamOfARoundSurfaceIsNoEdge) {
    auto a = zone("A", "0", "0", "3", {linear("5.5", "5", "50"), linear("5", "195", "50")});
    EXPECT_EQ(verdictOn({a}).word, Word::Acceptable);  // 190 mm apart
    a.surface->period = mm("250");                     // 60 mm apart round the back
    const auto verdict = verdictOn({a});
    EXPECT_EQ(verdict.word, Word::NotAcceptable);
    EXPECT_EQ(checkOf(verdict.examinations[0], RuleKind::CumulativeLength)->measured,
              mm("10.5").millionths());
}

TEST(SurfaceVerdict, ALaterRepairCycleCountsInsteadOfTheEarlier) {
    auto before = zone("A", "0", "0", "3", {linear("9", "20", "20")});
    auto after = zone("A", "0", "0", "3", {});
    after.repairCycle = 1;
    const auto verdict = verdictOn({before, after});
    EXPECT_TRUE(verdict.examinations[0].superseded);
    EXPECT_EQ(verdict.examinations[0].word, Word::NotAcceptable);
    EXPECT_EQ(verdict.word, Word::Acceptable);
}

TEST(SurfaceVerdict, ARepeatWithoutRepairDoesNotReplaceTheFirst) {
    auto first = zone("A", "0", "0", "3", {linear("9", "20", "20")});
    auto second = zone("A", "0", "0", "3", {});
    second.repeat = 1;
    const auto verdict = verdictOn({first, second});
    EXPECT_EQ(verdict.examinations[1].word, Word::Acceptable);
    EXPECT_EQ(verdict.word, Word::NotAcceptable);
    EXPECT_FALSE(verdict.examinations[0].superseded);
}

TEST(SurfaceVerdict, ARejectionMakesAcceptableNotAcceptableAndNothingBetter) {
    auto clean = zone("A", "0", "0", "3", {});
    clean.rejected = Objection{"L. Two", "looks torn"};
    auto verdict = verdictOn({clean});
    EXPECT_EQ(verdict.examinations[0].word, Word::NotAcceptable);
    EXPECT_EQ(verdict.examinations[0].rejected, clean.rejected);
    EXPECT_EQ(verdict.word, Word::NotAcceptable);
    auto open = zone("A", "0", "0", "3", {});
    open.noIndications = false;
    EXPECT_EQ(verdictOn({open}).word, Word::NotJudged);
    open.rejected = clean.rejected;
    EXPECT_EQ(verdictOn({open}).word, Word::NotAcceptable);
    // After a repair it is the next cycle that counts.
    auto repaired = zone("A", "0", "0", "3", {});
    repaired.repairCycle = 1;
    EXPECT_EQ(verdictOn({clean, repaired}).word, Word::Acceptable);
}

TEST(SurfaceVerdict, WhatWasDeclaredInvalidStaysListedAndDoesNotCount) {
    auto first = zone("A", "0", "0", "3", {linear("9", "20", "20")});
    auto second = zone("A", "0", "0", "3", {});
    second.repeat = 1;
    first.invalid = Objection{"L. Three", "no contrast paint"};
    const auto verdict = verdictOn({first, second});
    EXPECT_EQ(verdict.examinations[0].word, Word::NotAcceptable);
    EXPECT_TRUE(verdict.examinations[0].superseded);
    EXPECT_EQ(verdict.examinations[0].invalid, first.invalid);
    EXPECT_FALSE(verdict.examinations[1].superseded);
    EXPECT_EQ(verdict.word, Word::Acceptable);
}

TEST(SurfaceVerdict, AZoneWithNothingButInvalidExaminationsIsNotJudged) {
    auto only = zone("A", "0", "0", "3", {});
    only.invalid = Objection{"L. Three", "no contrast paint"};
    EXPECT_EQ(verdictOn({only}).word, Word::NotJudged);
    // An invalid examination after the repair does not bring back the one before it.
    auto before = zone("A", "0", "0", "3", {});
    only.repairCycle = 1;
    const auto verdict = verdictOn({before, only, zone("B", "200", "0", "3", {})});
    EXPECT_TRUE(verdict.examinations[0].superseded);
    EXPECT_EQ(verdict.word, Word::NotJudged);
}

TEST(SurfaceVerdict, WhatWasDeclaredInvalidIsNoNeighbour) {
    // 5.5 and 5 mm lie in one frame: together above 10 mm, each alone below 6.
    auto a = zone("A", "0", "0", "3", {linear("5.5", "180", "50")});
    auto b0 = zone("B", "200", "0", "3", {linear("5", "20", "50")});
    auto b1 = zone("B", "200", "0", "3", {});
    b1.repeat = 1;
    ASSERT_EQ(verdictOn({a, b0, b1}).examinations[0].word, Word::NotAcceptable);
    b0.invalid = Objection{"L. Three", "wrong zone"};
    const auto verdict = verdictOn({a, b0, b1});
    EXPECT_EQ(verdict.examinations[0].word, Word::Acceptable);
    // It is itself still shown with its neighbours.
    EXPECT_EQ(verdict.examinations[1].word, Word::NotAcceptable);
    EXPECT_EQ(verdict.word, Word::Acceptable);
    // And the finding of a valid repeat is seen by the neighbour.
    std::swap(b0.indications, b1.indications);
    std::swap(b0.noIndications, b1.noIndications);
    EXPECT_EQ(verdictOn({a, b0, b1}).examinations[0].word, Word::NotAcceptable);
}

TEST(SurfaceVerdict, ARepeatIsFramedWithItsNeighboursOnce) {
    // B is examined twice; A's frame sees B once each time, not both examinations of it.
    auto a = zone("A", "0", "0", "3", {linear("3.5", "190", "50")});
    auto b0 = zone("B", "200", "0", "3", {linear("4", "20", "50")});
    auto b1 = b0;
    b1.repeat = 1;
    const auto verdict = verdictOn({a, b0, b1});
    for (const ExaminationVerdict& e : verdict.examinations)
        EXPECT_EQ(checkOf(e, RuleKind::CumulativeLength)->measured, mm("7.5").millionths());
}

std::string refusalOf(std::vector<Examination> examinations) {
    Sheet sheet;
    sheet.examinations = std::move(examinations);
    const auto valid = validate(sheet, test::shippedTables());
    return valid.ok() ? "" : valid.error().message();
}

TEST(ZonePlaces, MayTouchButNotOverlap) {
    const auto a = zone("A", "0", "0", "3", {});
    EXPECT_EQ(refusalOf({a, zone("B", "200", "0", "3", {})}), "");
    EXPECT_THAT(refusalOf({a, zone("B", "199.9", "0", "3", {})}), HasSubstr("shares area"));
    EXPECT_THAT(refusalOf({a, zone("B", "100", "-10", "3", {}, degrees(45))}),
                HasSubstr("shares area"));
    EXPECT_EQ(refusalOf({a, zone("B", "350", "100", "3", {}, degrees(45))}), "");
    EXPECT_EQ(refusalOf({a, zone("B", "400", "200", "3", {}, degrees(180))}), "");
}

TEST(ZonePlaces, MayNotMeetRoundTheSeam) {
    auto a = zone("A", "0", "0", "3", {});
    auto b = zone("B", "250", "0", "3", {});
    for (auto* e : {&a, &b}) e->surface->period = mm("450");
    EXPECT_EQ(refusalOf({a, b}), "");
    for (auto* e : {&a, &b}) e->surface->period = mm("449");
    EXPECT_THAT(refusalOf({a, b}), HasSubstr("shares area"));
    a.surface->period = mm("199");
    EXPECT_THAT(refusalOf({a}), HasSubstr("wider than the period"));
}

TEST(ZonePlaces, AreGivenOnce) {
    auto again = zone("A", "0", "10", "3", {});
    again.stage = Stage::HeatTreated;
    EXPECT_THAT(refusalOf({zone("A", "0", "0", "3", {}), again}),
                HasSubstr("placed in another way"));
    auto b = zone("B", "200", "0", "3", {});
    b.surface->period = mm("500");
    EXPECT_THAT(refusalOf({zone("A", "0", "0", "3", {}), b}), HasSubstr("two periods"));
}

TEST(ZonePlaces, HoldTheCentresOfTheirIndications) {
    EXPECT_EQ(refusalOf({zone("A", "0", "0", "3", {linear("5", "200", "0")})}), "");
    EXPECT_THAT(refusalOf({zone("A", "0", "0", "3", {linear("5", "200.000001", "0")})}),
                HasSubstr("outside zone A"));
}

}  // namespace
}  // namespace model
