// SPDX-License-Identifier: Apache-2.0
// ASTM A609 and ASME B31.3, the ultrasonic testing of steel castings, each rule at, just under and
// just over its limit. The values are those of the standard; grade: R read, R2 read twice, P partly
// read, M from memory.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "reflector_maker.h"

namespace model {
namespace {

using test::checkOf;
using test::dB;
using test::mm;
using test::mm2;
using test::reflector;
using test::steel;
using test::whyOf;
using testing::HasSubstr;

TEST(A609AOracle, IsJudgedByTheAreaAndLengthOverTheReferenceLine) {
    // Procedure A (R): level 1 5 cm2 and 40 mm, level 7 100 cm2 and 175 mm.
    const std::string table = "ASTM A609-91(2007) A SI";
    const auto sized = [&](const char* level, const char* area, const char* length) {
        Reflector u = reflector();
        u.area = mm2(area);
        u.length = mm(length);
        u.throughWall = std::nullopt;
        u.fbh = std::nullopt;
        return steel(table, level, {u}).word;
    };
    EXPECT_EQ(sized("1", "500", "40"), Word::Acceptable);
    EXPECT_EQ(sized("1", "500.000001", "40"), Word::NotAcceptable);
    EXPECT_EQ(sized("1", "500", "40.000001"), Word::NotAcceptable);
    EXPECT_EQ(sized("7", "10000", "175"), Word::Acceptable);
    EXPECT_EQ(sized("7", "10000.000001", "175"), Word::NotAcceptable);
    EXPECT_EQ(sized("7", "10000", "175.000001"), Word::NotAcceptable);
    // Below the line it is not considered.
    Reflector u = reflector();
    u.area = mm2("600");
    u.overReference = dB("-0.000001");
    EXPECT_EQ(steel(table, "1", {u}).word, Word::Acceptable);
    u.overReference = dB("0");
    EXPECT_EQ(steel(table, "1", {u}).word, Word::NotAcceptable);
    u.overReference = std::nullopt;
    EXPECT_EQ(steel(table, "1", {u}).word, Word::NotAcceptable) << "open counts";
}

TEST(A609AOracle, KeepsTheInchColumnsApart) {
    // Level 1 (R): 0.8 in2 is 516.128 mm2, 1.5 in is 38.1 mm.
    const std::string table = "ASTM A609-91(2007) A inch";
    Reflector u = reflector();
    u.area = mm2("516.128");
    u.length = mm("38.1");
    EXPECT_EQ(steel(table, "1", {u}).word, Word::Acceptable);
    u.length = mm("38.100001");
    EXPECT_EQ(steel(table, "1", {u}).word, Word::NotAcceptable);
    u.length = mm("38.1");
    u.area = mm2("516.128001");
    EXPECT_EQ(steel(table, "1", {u}).word, Word::NotAcceptable);
}

const std::string kB = "ASTM A609-91(2007) B SI";

TEST(A609BOracle, AreasDifferBetweenTheQuartersAndTheMiddle) {
    // Level 3 (R): outer and inner quarter 6 cm2, middle 13; level 2 everywhere 6. A quarter of
    // 60 mm is 15.
    const std::tuple<const char*, const char*, const char*, Word> cases[] = {
        {"3", "15", "600", Word::Acceptable},       {"3", "15", "600.1", Word::NotAcceptable},
        {"3", "15.1", "600.1", Word::Acceptable},   {"3", "15.1", "1300", Word::Acceptable},
        {"3", "20", "1300.1", Word::NotAcceptable}, {"2", "20", "600", Word::Acceptable},
        {"2", "20", "600.1", Word::NotAcceptable}};
    for (const auto& [level, depth, area, word] : cases) {
        Reflector u = reflector();
        u.depth = mm(depth);
        u.area = mm2(area);
        EXPECT_EQ(steel(kB, level, {u}).word, word) << level << " " << depth << " " << area;
    }
}

TEST(A609BOracle, ThroughWallIsUpToAThird) {
    // (R): above t/3 is out at every level; a third of 60 is 20.
    Reflector u = reflector();
    u.depth = mm("20");
    u.throughWall = mm("20");
    EXPECT_EQ(steel(kB, "2", {u}).word, Word::Acceptable);
    u.throughWall = mm("20.000001");
    EXPECT_EQ(steel(kB, "11", {u}).word, Word::NotAcceptable);
}

TEST(A609BOracle, LinearAtTheReferenceIsOutAtEveryLevel) {
    // Linear is L >= 3W, at the reference amplitude (R).
    const auto of = [](const char* width, const char* over) {
        Reflector u = reflector();
        u.length = mm("30");
        u.width = mm(width);
        u.overReference = dB(over);
        return steel(kB, "11", {u}).word;
    };
    EXPECT_EQ(of("10", "0"), Word::NotAcceptable);
    EXPECT_EQ(of("10.000001", "0"), Word::Acceptable);
    EXPECT_EQ(of("10", "-0.000001"), Word::Acceptable);
    Reflector open = reflector();
    open.length = mm("30");
    open.width = std::nullopt;
    EXPECT_EQ(steel(kB, "11", {open}).word, Word::NotJudged);
    open.width = mm("10");
    open.overReference = std::nullopt;
    EXPECT_EQ(steel(kB, "11", {open}).word, Word::NotJudged);
}

TEST(A609BOracle, WhatCannotBeTracedCountsOneSquareCentimetre) {
    // (R): 1 cm2. Level 1 takes none.
    Reflector u = reflector();
    u.length = u.width = std::nullopt;
    u.area = std::nullopt;
    u.lengthNotMeasurable = u.widthNotMeasurable = true;
    u.overReference = dB("-1");
    const auto verdict = steel(kB, "2", {u});
    EXPECT_EQ(verdict.word, Word::Acceptable) << whyOf(verdict);
    EXPECT_EQ(checkOf(verdict, RuleKind::IndividualArea, "core")->measured,
              mm2("100").millionths());
    EXPECT_EQ(steel(kB, "1", {u}).word, Word::NotAcceptable);
    u.lengthNotMeasurable = false;
    EXPECT_EQ(steel(kB, "2", {u}).word, Word::NotJudged) << "not measured is not unmeasurable";
}

TEST(A609BOracle, ClustersAddUpWhereTheySpread) {
    // (R): two or more within a cube of 25 mm; level 2: 13 cm2 over at least 232 cm2.
    const auto cluster = [](int count, const char* area) {
        std::vector<Reflector> all;
        for (int i = 0; i < count; ++i) {
            Reflector u = reflector(("u" + std::to_string(i)).c_str());
            u.x = millimetres(100 + 40 * (i % 6));
            u.y = millimetres(100 + 40 * (i / 6));
            u.overReference = dB("-1");
            u.area = mm2(area);
            all.push_back(u);
        }
        return all;
    };
    // Six by six at a pitch of 40 mm: gaps of 20 mm, 220 x 210 mm.
    EXPECT_EQ(steel(kB, "2", cluster(36, "36")).word, Word::Acceptable)
        << whyOf(steel(kB, "2", cluster(36, "36")));
    EXPECT_EQ(steel(kB, "2", cluster(36, "36.2")).word, Word::NotAcceptable);
    // Two are together 2 cm2, but within much less than 232 cm2.
    const auto close = steel(kB, "2", cluster(2, "100"));
    EXPECT_EQ(close.word, Word::NotJudged);
    EXPECT_THAT(checkOf(close, RuleKind::TotalArea, "clustered")->reason,
                HasSubstr("spread over 23200 mm2"));
    // Apart by more than the cube in depth or in the plan they are none.
    auto apart = cluster(2, "100");
    apart[1].depth = mm("2.8");
    apart[1].throughWall = mm("0.1");
    EXPECT_EQ(steel(kB, "2", apart).word, Word::Acceptable) << whyOf(steel(kB, "2", apart));
    apart[1].depth = mm("3");
    apart[1].throughWall = mm("0.1");
    EXPECT_EQ(steel(kB, "2", apart).word, Word::NotJudged);
    apart[1].depth = std::nullopt;
    EXPECT_EQ(steel(kB, "2", apart).word, Word::NotJudged);
}

TEST(B313Oracle, DefectsAreUpToFivePercentOfTheWall) {
    // (R): no depth of defects above 5 % of the wall; of 60 mm 3.
    const std::string table = "ASME B31.3-2024 UT";
    for (const Kind kind : {Kind::Volumetric, Kind::Planar, Kind::Dross}) {
        Reflector u = reflector();
        u.kind = kind;
        u.throughWall = mm("3");
        EXPECT_EQ(steel(table, "casting", {u}).word, Word::Acceptable);
        u.throughWall = mm("3.000001");
        EXPECT_EQ(steel(table, "casting", {u}).word, Word::NotAcceptable);
        u.throughWall = std::nullopt;
        EXPECT_EQ(steel(table, "casting", {u}).word, Word::NotJudged);
    }
}

}  // namespace
}  // namespace model
