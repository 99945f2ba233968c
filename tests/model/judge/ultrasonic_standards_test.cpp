// SPDX-License-Identifier: Apache-2.0
// The shipped tables for ultrasonic testing, each rule at, just under and just over its limit. The
// values are those of the standards; grade: R read, R2 read twice, P partly read, M from memory.
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
using test::ultrasonicSheet;
using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

const std::string kIron = "EN 12680-3:2003";
const std::string kSteel = "ISO 4992-1:2020";

ExaminationVerdict iron(const std::string& level, std::vector<Reflector> reflectors,
                        const char* thickness = "60") {
    return judged(ultrasonicSheet(kIron, {{"all", level}}, std::move(reflectors),
                                  Material::SpheroidalGraphiteIron, thickness));
}
ExaminationVerdict steel(const std::string& table, const std::string& level,
                         std::vector<Reflector> reflectors) {
    return judged(ultrasonicSheet(table, {{"all", level}}, std::move(reflectors)));
}

/// Each check that did not pass, for messages.
std::string whyOf(const ExaminationVerdict& verdict) {
    std::string why;
    for (const Check& check : verdict.checks)
        if (check.passes != true)
            why += check.classText + (check.passes ? " fails; " : " open: " + check.reason + "; ");
    for (const std::string& reason : verdict.reasons) why += reason + "; ";
    return why;
}

/// The word of `judge(value)` for each value.
template <class Judge>
void expectWords(const std::vector<std::pair<const char*, Word>>& cases, Judge judge) {
    for (const auto& [value, word] : cases) {
        const ExaminationVerdict verdict = judge(value);
        EXPECT_EQ(verdict.word, word) << value << ": " << whyOf(verdict);
    }
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
