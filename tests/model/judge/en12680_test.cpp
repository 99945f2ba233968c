// SPDX-License-Identifier: Apache-2.0
// EN 12680-3, the ultrasonic testing of spheroidal graphite iron, each rule at, just under and just
// over its limit. The values are those of the standard; grade: R read, R2 read twice, P partly
// read, M from memory.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "reflector_maker.h"

namespace model {
namespace {

using test::checkOf;
using test::dB;
using test::expectWords;
using test::judged;
using test::mm;
using test::mm2;
using test::reflector;
using test::ultrasonicSheet;
using test::whyOf;
using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

const std::string kIron = "EN 12680-3:2003";

ExaminationVerdict iron(const std::string& level, std::vector<Reflector> reflectors,
                        const char* thickness = "60") {
    return judged(ultrasonicSheet(kIron, {{"all", level}}, std::move(reflectors),
                                  Material::SpheroidalGraphiteIron, thickness));
}

TEST(En12680Oracle, ThroughWallOfVolumetricIsUpToAShareOfTheWall) {
    // Table 1 (R): 20 % of the wall at level 2, 25 % at level 3; of 60 mm 12 and 15.
    const auto at = [](const char* level) {
        return [level](const char* extent) {
            Reflector u = reflector();
            u.depth = mm("24");
            u.throughWall = mm(extent);
            return iron(level, {u});
        };
    };
    expectWords(
        {{"11.9", Word::Acceptable}, {"12", Word::Acceptable}, {"12.000001", Word::NotAcceptable}},
        at("2"));
    expectWords({{"15", Word::Acceptable}, {"15.000001", Word::NotAcceptable}}, at("3"));
}

TEST(En12680Oracle, AreasDifferBetweenRimAndCore) {
    // Table 1 at level 2, wall from 50 to 200 mm: 1000 in the rim, 15 000 in the core (R).
    const auto at = [](const char* depth) {
        return [depth](const char* area) {
            Reflector u = reflector();
            u.depth = mm(depth);
            u.area = mm2(area);
            return iron("2", {u});
        };
    };
    expectWords({{"999.9", Word::Acceptable},
                 {"1000", Word::Acceptable},
                 {"1000.000001", Word::NotAcceptable}},
                at("10"));
    expectWords({{"1000.000001", Word::Acceptable},
                 {"15000", Word::Acceptable},
                 {"15000.000001", Word::NotAcceptable}},
                at("28"));
}

TEST(En12680Oracle, TheWallsBandChoosesTheRow) {
    // Level 2, in the rim: 600 below 50 mm (P), 1000 from there (R).
    const auto at = [](const char* wall) {
        Reflector u = reflector();
        u.depth = mm("5");
        u.area = mm2("800");
        return iron("2", {u}, wall).word;
    };
    EXPECT_EQ(at("49.9"), Word::NotAcceptable);
    EXPECT_EQ(at("50"), Word::Acceptable);
    // The wall stated at the indication overrides the zone's.
    Reflector u = reflector();
    u.depth = mm("5");
    u.area = mm2("800");
    u.wall = mm("50");
    EXPECT_EQ(iron("2", {u}, "45").word, Word::Acceptable);
    u.wall = mm("45");
    EXPECT_EQ(iron("2", {u}, "60").word, Word::NotAcceptable);
}

TEST(En12680Oracle, TheAreasTogetherAreUpToAShareOfTheExaminedSurface) {
    // Level 2, wall 50 to 200 mm: 15 % of the examined surface (R); here 100 000 mm2.
    const auto two = [](const char* second) {
        Reflector a = reflector("u1", "100", "100");
        a.area = mm2("10000");
        Reflector b = reflector("u2", "400", "100");
        b.area = mm2(second);
        return iron("2", {a, b});
    };
    expectWords({{"4999.9", Word::Acceptable},
                 {"5000", Word::Acceptable},
                 {"5000.000001", Word::NotAcceptable}},
                two);
    const Check* share = nullptr;
    const auto verdict = two("5000");
    share = checkOf(verdict, RuleKind::AreaShare);
    ASSERT_NE(share, nullptr);
    EXPECT_EQ(share->measured, mm("15").millionths());
    EXPECT_EQ(share->unit, CheckUnit::Percent);
    EXPECT_THAT(share->members, ElementsAre("u1", "u2"));
}

TEST(En12680Oracle, WhatWasNotExaminedIsNoPartOfTheSurface) {
    Reflector u = reflector();
    u.area = mm2("15000");
    Sheet sheet = ultrasonicSheet(kIron, {{"all", "2"}}, {u}, Material::SpheroidalGraphiteIron);
    EXPECT_EQ(judged(sheet).word, Word::Acceptable);
    sheet.examinations[0].notExamined = {{mm2("1"), "a lug", "A-1"}};
    EXPECT_EQ(judged(sheet).word, Word::NotAcceptable);
}

TEST(En12680Oracle, LevelOneTakesNothingFromTableFourOn) {
    // Table 4 with Table 3 (P): a hole of 5 mm for a wall above 20 up to 100 mm; a back-wall loss
    // of 20 dB above 20 mm.
    const auto withFbh = [](const char* fbh) {
        Reflector u = reflector();
        u.fbh = mm(fbh);
        return iron("1", {u});
    };
    expectWords({{"4.999999", Word::Acceptable}, {"5", Word::NotAcceptable}}, withFbh);
    const auto withLoss = [](const char* loss) {
        Reflector u = reflector();
        u.fbh = mm("2");
        u.backWallLoss = dB(loss);
        u.backWallLossExplained = "by the curved back wall";
        return iron("1", {u});
    };
    expectWords({{"19.999999", Word::Acceptable}, {"20", Word::NotAcceptable}}, withLoss);
}

TEST(En12680Oracle, WhatIsBelowTableFourIsNotConsidered) {
    Reflector u = reflector();
    u.fbh = mm("4.9");
    u.throughWall = mm("30");
    const auto verdict = iron("2", {u});
    EXPECT_EQ(verdict.word, Word::Acceptable) << whyOf(verdict);
    EXPECT_FALSE(verdict.indications[0].considered);
}

TEST(En12680Oracle, TestabilityIsTableThrees) {
    // Table 3 (R): 3 up to 20 mm, 5 up to 100, 8 up to 250, 10 up to 500. Where the reflector does
    // not show, nothing can be said of what is in the zone.
    const std::tuple<const char*, const char*, Word> cases[] = {
        {"20", "3", Word::Acceptable},       {"20", "3.1", Word::NotJudged},
        {"20.1", "5", Word::Acceptable},     {"100", "5.1", Word::NotJudged},
        {"250", "8", Word::Acceptable},      {"250", "8.1", Word::NotJudged},
        {"500", "10", Word::Acceptable},     {"500", "10.1", Word::NotJudged},
        {"500.1", "3", Word::NotJudged},     {"10", "1", Word::NotJudged},
        {"10.000001", "3", Word::Acceptable}};
    for (const auto& [thickness, fbh, word] : cases) {
        Sheet sheet =
            ultrasonicSheet(kIron, {{"all", "2"}}, {}, Material::SpheroidalGraphiteIron, thickness);
        sheet.examinations[0].ultrasonic.testability->smallestFbh = mm(fbh);
        EXPECT_EQ(judged(sheet).word, word) << thickness << " " << fbh;
    }
}

TEST(En12680Oracle, DrossHasItsOwnShareOfTheWall) {
    // Table 2 (R): 10, 15, 20, 25 % of the wall at levels 2 to 5; level 1 nothing.
    const std::tuple<const char*, const char*, Word> cases[] = {
        {"2", "6", Word::Acceptable},   {"2", "6.000001", Word::NotAcceptable},
        {"3", "9", Word::Acceptable},   {"3", "9.000001", Word::NotAcceptable},
        {"4", "12", Word::Acceptable},  {"4", "12.000001", Word::NotAcceptable},
        {"5", "15", Word::Acceptable},  {"5", "15.000001", Word::NotAcceptable},
        {"1", "1", Word::NotAcceptable}};
    for (const auto& [level, extent, word] : cases) {
        Reflector u = reflector();
        u.kind = Kind::Dross;
        u.throughWall = mm(extent);
        EXPECT_EQ(iron(level, {u}).word, word) << level << " " << extent;
    }
}

TEST(En12680Oracle, ACellThatRefersElsewhereIsUnknown) {
    Reflector u = reflector();
    u.depth = mm("5");
    const auto verdict = iron("4", {u});
    EXPECT_EQ(verdict.word, Word::NotJudged);
    EXPECT_EQ(checkOf(verdict, RuleKind::IndividualArea, "rim")->passes, std::nullopt);
    EXPECT_THAT(verdict.bestLevelsUnknown, IsEmpty());
    EXPECT_EQ(verdict.bestLevels.at("all"), "2");
}

TEST(En12680Oracle, HasNoTableForPlanarIndications) {
    Reflector u = reflector();
    u.kind = Kind::Planar;
    const auto verdict = iron("2", {u});
    EXPECT_EQ(verdict.word, Word::NotJudged);
    EXPECT_THAT(verdict.reasons, Contains(HasSubstr("no level is ordered for planar: u1")));
}

TEST(En12680Oracle, TheMaterialMustBeTheTables) {
    const auto verdict = judged(ultrasonicSheet(kIron, {{"all", "2"}}, {reflector()}));
    EXPECT_EQ(verdict.word, Word::NotJudged);
    EXPECT_THAT(verdict.reasons, Contains(HasSubstr("not for cast steel")));
}

}  // namespace
}  // namespace model
