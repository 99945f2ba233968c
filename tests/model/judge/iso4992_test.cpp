// SPDX-License-Identifier: Apache-2.0
// ISO 4992-1, the ultrasonic testing of steel castings, each rule at, just under and just over its
// limit. The values are those of the standard; grade: R read, R2 read twice, P partly read, M from
// memory.
#include <algorithm>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "reflector_maker.h"

namespace model {
namespace {

using test::checkOf;
using test::dB;
using test::judged;
using test::mm;
using test::mm2;
using test::reflector;
using test::steel;
using test::ultrasonicSheet;
using test::whyOf;
using testing::ElementsAre;

const std::string kSteel = "ISO 4992-1:2020";

Reflector planar(const char* length, const char* extent) {
    Reflector u = reflector();
    u.kind = Kind::Planar;
    u.length = mm(length);
    u.width = mm("2");
    u.throughWall = mm(extent);
    u.depth = mm("25");
    u.fbh = mm("3");
    return u;
}

TEST(Iso4992Oracle, ThroughWallOfPlanarDependsOnItsLength) {
    // Planar (R2): up to 10 % of the wall, up to 25 % where the length is up to 10 mm.
    const std::tuple<const char*, const char*, Word> cases[] = {
        {"10", "15", Word::Acceptable},
        {"10", "15.000001", Word::NotAcceptable},
        {"10.000001", "6", Word::Acceptable},
        {"10.000001", "6.000001", Word::NotAcceptable}};
    for (const auto& [length, extent, word] : cases) {
        const auto verdict = steel(kSteel, "1", {planar(length, extent)});
        EXPECT_EQ(verdict.word, word) << length << " " << extent << whyOf(verdict);
    }
}

TEST(Iso4992Oracle, PlanarOfClassOneIsUpToAHoleOfThree) {
    // Planar, class 1 (R): nothing above 3 mm.
    Reflector u = planar("8", "5");
    EXPECT_EQ(steel(kSteel, "1", {u}).word, Word::Acceptable);
    u.fbh = mm("3.000001");
    EXPECT_EQ(steel(kSteel, "1", {u}).word, Word::NotAcceptable);
    u.fbh = std::nullopt;
    const auto open = steel(kSteel, "1", {u});
    EXPECT_EQ(open.word, Word::NotJudged);
    EXPECT_EQ(checkOf(open, RuleKind::EquivalentReflector)->measured, std::nullopt);
}

TEST(Iso4992Oracle, WithoutALengthOnlyWhatPassesBothWaysPasses) {
    // 6 mm is 10 % of the wall and 15 mm 25 %.
    const auto extentOf = [](const char* extent) {
        Reflector u = planar("8", extent);
        u.length = std::nullopt;
        u.width = std::nullopt;
        u.area = mm2("10");
        return steel(kSteel, "1", {u});
    };
    EXPECT_EQ(extentOf("6").word, Word::Acceptable) << whyOf(extentOf("6"));
    EXPECT_EQ(extentOf("6.1").word, Word::NotJudged);
    EXPECT_EQ(extentOf("15.1").word, Word::NotJudged);
}

TEST(Iso4992Oracle, WhatIsNotMeasurableThroughTheWallCountsAsThree) {
    // "Not measurable", note (R): below the beam's width, taken as 3 mm.
    Reflector u = planar("20", "3");
    u.throughWall = std::nullopt;
    EXPECT_EQ(steel(kSteel, "1", {u}).word, Word::NotJudged);
    u.throughWallNotMeasurable = true;
    const auto verdict = steel(kSteel, "1", {u});
    EXPECT_EQ(verdict.word, Word::Acceptable) << whyOf(verdict);
    const auto taken = [](const Check& check) {
        return check.rule == RuleKind::ThroughWallExtent && check.measured == mm("3").millionths();
    };
    EXPECT_EQ(std::ranges::count_if(verdict.checks, taken), 1);
    // 10 % of 29 mm is 2.9.
    Sheet thin = ultrasonicSheet(kSteel, {{"all", "1"}}, {u}, Material::CastSteel, "29");
    EXPECT_EQ(judged(thin).word, Word::NotAcceptable);
}

TEST(Iso4992Oracle, NeighboursUpToTenMillimetresApartCountAsOne) {
    // Planar, joins (R2): gap up to 10 mm. Each is 9 mm long and 5 mm through the wall, alone up
    // to 25 % of 60; together they are longer than 10 mm, and 6 mm is the most.
    const auto at = [](const char* x, const char* depth) {
        Reflector a = planar("9", "5");
        Reflector b = planar("9", "5");
        b.id = "u2";
        b.x = mm(x);
        b.depth = mm(depth);
        return steel(kSteel, "1", {a, b});
    };
    // Lengths along x from 100 on: the gap is x - 109.
    const auto apart = at("119.001", "27");
    EXPECT_EQ(apart.word, Word::Acceptable) << whyOf(apart);
    EXPECT_TRUE(apart.groups.empty());
    const auto joined = at("119", "27");
    ASSERT_EQ(joined.groups.size(), 1U);
    EXPECT_THAT(joined.groups[0].members, ElementsAre("u1", "u2"));
    EXPECT_EQ(joined.groups[0].length, mm("28"));
    EXPECT_EQ(joined.groups[0].classified, IndicationClass::Planar);
    // From 25 to 32: 7 mm.
    EXPECT_EQ(joined.word, Word::NotAcceptable);
    EXPECT_EQ(at("119", "26").word, Word::Acceptable);
    EXPECT_EQ(at("119", "26.000001").word, Word::NotAcceptable);
}

TEST(Iso4992Oracle, SignalToNoiseIsAtLeastSix) {
    // Signal to noise (R): at least 6 dB.
    Sheet sheet = ultrasonicSheet(kSteel, {{"all", "1"}}, {});
    sheet.examinations[0].ultrasonic.testability->signalToNoise = dB("6");
    EXPECT_EQ(judged(sheet).word, Word::Acceptable);
    sheet.examinations[0].ultrasonic.testability->signalToNoise = dB("5.999999");
    EXPECT_EQ(judged(sheet).word, Word::NotJudged);
    sheet.examinations[0].ultrasonic.testability->signalToNoise = std::nullopt;
    EXPECT_EQ(judged(sheet).word, Word::NotJudged);
}

TEST(Iso4992Oracle, RecordingDependsOnWhetherTheExtentIsMeasurable) {
    // Recording limits (M), wall up to 300 mm: a hole of 3 mm with a measurable extent, 4 without.
    Reflector u = planar("8", "5");
    u.fbh = mm("3.5");
    EXPECT_TRUE(steel(kSteel, "1", {u}).indications[0].considered);
    u.length = u.width = u.throughWall = std::nullopt;
    u.area = std::nullopt;
    EXPECT_TRUE(steel(kSteel, "1", {u}).indications[0].considered) << "open counts";
    u.lengthNotMeasurable = u.widthNotMeasurable = u.throughWallNotMeasurable = true;
    EXPECT_FALSE(steel(kSteel, "1", {u}).indications[0].considered);
    u.fbh = mm("4");
    EXPECT_TRUE(steel(kSteel, "1", {u}).indications[0].considered);
}

TEST(Iso4992Oracle, VolumetricValuesAreUnknown) {
    const auto verdict = steel(kSteel, "2", {reflector()});
    EXPECT_EQ(verdict.word, Word::NotJudged);
    EXPECT_EQ(verdict.bestLevels.at("all"), std::nullopt);
    EXPECT_THAT(verdict.bestLevelsUnknown, ElementsAre("1", "2", "3", "4", "5"));
}

}  // namespace
}  // namespace model
