// SPDX-License-Identifier: Apache-2.0
// The cells of the ultrasonic tables against the standards' figures. Each check names its standard
// and table; the letter behind a value says how sure that transcription is: R read in the published
// text, R2 in two places, P partly read, M from memory. They were transcribed apart from the .table
// files; areas are mm2, inches were converted by hand with 25.4 mm and 645.16 mm2.
#include <algorithm>

#include "table_columns.h"

namespace model {
namespace {

constexpr auto kRim = IndicationClass::Rim;
constexpr auto kCore = IndicationClass::Core;
constexpr auto kPlanar = IndicationClass::Planar;
constexpr auto kDross = IndicationClass::Dross;

/// The rule of that kind and classes with so many conditions.
const Rule* ruleOf(const LimitTable& table, RuleKind kind, const Classes& classes,
                   std::size_t conditions = 0, std::size_t skipped = 0) {
    for (const Rule& rule : table.rules)
        if (rule.kind == kind && rule.classes == classes && rule.conditions.size() == conditions &&
            skipped-- == 0)
            return &rule;
    ADD_FAILURE() << table.id << " has no rule " << word(kind);
    return nullptr;
}

/// Down the levels at a wall: "600 P", or "outside".
Texts column(const LimitTable& table, const Rule* rule, Length wall) {
    Texts texts;
    if (rule == nullptr) return texts;
    for (const std::string& level : table.keys.front().levels) {
        const auto row = std::ranges::find_if(rule->rows, [&](const RuleRow& candidate) {
            return candidate.level == level && candidate.band.contains(wall);
        });
        texts.push_back(row == rule->rows.end() ? "outside"
                                                : textOf(row->limit) + " " +
                                                      std::string(word(row->limit.source.grade)));
    }
    return texts;
}

/// A recording limit at a wall.
std::string recordedFrom(const LimitTable& table, ReflectorMeasure of, Length wall,
                         std::optional<bool> measurable = std::nullopt) {
    for (const RecordingLimit& limit : table.recording)
        if (limit.of == of && limit.measurable == measurable)
            for (const RecordingLimit::Row& row : limit.rows)
                if (row.band.contains(wall))
                    return std::string(word(limit.comparison)) + " " + textOf(row.cell) + " " +
                           std::string(word(row.cell.source.grade));
    return "outside";
}

Texts everyLevel(const LimitTable& table, const std::string& cell) {
    return Texts(table.keys.front().levels.size(), cell);
}

void expectKey(const LimitTable& table, const Texts& levels, const Classes& classes) {
    SCOPED_TRACE(table.id);
    EXPECT_EQ(table.method, Method::Ultrasonic);
    ASSERT_EQ(table.keys.size(), 1U);
    EXPECT_EQ(table.keys[0].name, "all");
    EXPECT_EQ(table.keys[0].levels, levels);
    EXPECT_EQ(table.keys[0].classes, classes);
}

constexpr Length kJustAbove200 = nanometres(200'000'001);
constexpr Length kJustBelow50 = nanometres(49'999'999);

// EN 12680-3:2003, Table 1 (P; the percentages, level 1, and 50 to 200 mm of levels 2 and 3 R).
TEST(En12680Part3, HasTheVolumetricLimitsOfTable1) {
    const LimitTable& table = shippedTable("EN 12680-3:2003");
    EXPECT_EQ(table.materials, std::vector{Material::SpheroidalGraphiteIron});
    expectKey(table, {"1", "2", "3", "4", "5"}, {kRim, kCore, kDross});
    const Rule* extent = ruleOf(table, RuleKind::ThroughWallExtent, {kRim, kCore});
    EXPECT_EQ(column(table, extent, kAnyWall),
              (Texts{"none R", "1/5 t R", "1/4 t R", "3/10 t R", "7/20 t R"}));
    const Rule* count = ruleOf(table, RuleKind::Count, {kRim, kCore});
    EXPECT_EQ(column(table, count, kAnyWall),
              (Texts{"0 R", "none R", "none R", "none R", "none R"}));
    EXPECT_FALSE(count->framed);

    const Rule* rim = ruleOf(table, RuleKind::IndividualArea, {kRim});
    const Rule* core = ruleOf(table, RuleKind::IndividualArea, {kCore});
    const Rule* share = ruleOf(table, RuleKind::AreaShare, {kRim, kCore});
    for (const Length wall : {millimetres(15), kJustBelow50}) {
        EXPECT_EQ(column(table, rim, wall),
                  (Texts{"none R", "600 P", "1000 P", "unknown P", "unknown P"}));
        EXPECT_EQ(column(table, core, wall),
                  (Texts{"none R", "10000 P", "15000 P", "20000 P", "unknown P"}));
        EXPECT_EQ(column(table, share, wall), (Texts{"none R", "10 P", "15 P", "15 P", "30 P"}));
    }
    for (const Length wall : {millimetres(50), millimetres(200)}) {
        EXPECT_EQ(column(table, rim, wall),
                  (Texts{"none R", "1000 R", "2000 R", "unknown P", "unknown P"}));
        EXPECT_EQ(column(table, core, wall),
                  (Texts{"none R", "15000 R", "20000 R", "unknown P", "unknown P"}));
        EXPECT_EQ(column(table, share, wall), (Texts{"none R", "15 R", "20 R", "20 P", "40 P"}));
    }
    EXPECT_EQ(column(table, rim, kJustAbove200),
              (Texts{"none R", "1000 P", "2000 P", "unknown P", "unknown P"}));
    EXPECT_EQ(column(table, core, kJustAbove200),
              (Texts{"none R", "15000 P", "30000 P", "unknown P", "unknown P"}));
    EXPECT_EQ(column(table, share, kJustAbove200),
              (Texts{"none R", "15 P", "20 P", "30 P", "40 P"}));
}

// EN 12680-3:2003, Table 2, dross (R).
TEST(En12680Part3, HasTheDrossLimitsOfTable2) {
    const LimitTable& table = shippedTable("EN 12680-3:2003");
    EXPECT_EQ(column(table, ruleOf(table, RuleKind::ThroughWallExtent, {kDross}), kAnyWall),
              (Texts{"none R", "1/10 t R", "3/20 t R", "1/5 t R", "1/4 t R"}));
    EXPECT_EQ(column(table, ruleOf(table, RuleKind::Count, {kDross}), kAnyWall),
              (Texts{"0 R", "none R", "none R", "none R", "none R"}));
}

// EN 12680-3:2003, Table 3 (R) and Table 4 (R2, some cells P: all are taken as P). Rim: ISO
// 4992-1:2020, 3.6, taken for iron too (M).
TEST(En12680Part3, HasTheHolesOfTable3AndTheRecordingLimitsOfTable4) {
    const LimitTable& table = shippedTable("EN 12680-3:2003");
    const Rule* holes = ruleOf(table, RuleKind::Testability, {});
    ASSERT_NE(holes, nullptr);
    EXPECT_EQ(holes->testability, TestabilityMeasure::SmallestFbh);
    EXPECT_EQ(holes->passes, Comparison::AtMost);
    struct AtWall {
        Length wall;
        const char* hole;
        const char* loss;
    };
    for (const AtWall& at :
         {AtWall{millimetres(10), "", "12"}, AtWall{nanometres(10'000'001), "3", "12"},
          AtWall{millimetres(20), "3", "12"}, AtWall{nanometres(20'000'001), "5", "20"},
          AtWall{millimetres(100), "5", "20"}, AtWall{nanometres(100'000'001), "8", "20"},
          AtWall{millimetres(250), "8", "20"}, AtWall{nanometres(250'000'001), "10", "20"},
          AtWall{millimetres(500), "10", "20"}, AtWall{nanometres(500'000'001), "", "20"}}) {
        SCOPED_TRACE(toText(at.wall));
        const std::string hole = at.hole;
        EXPECT_EQ(column(table, holes, at.wall),
                  everyLevel(table, hole.empty() ? "outside" : hole + " R"));
        EXPECT_EQ(recordedFrom(table, ReflectorMeasure::Fbh, at.wall),
                  hole.empty() ? "outside" : ">= " + hole + " P");
        EXPECT_EQ(recordedFrom(table, ReflectorMeasure::BackWallLoss, at.wall),
                  ">= " + std::string(at.loss) + " P");
    }
    EXPECT_EQ(table.recording.size(), 2U);
    EXPECT_EQ(table.rim.share, Rational(1, 3));
    EXPECT_EQ(table.rim.atMost, millimetres(30));
    EXPECT_EQ(table.rim.source.grade, Grade::Memory);
    EXPECT_FALSE(table.notMeasurable.throughWall || table.notMeasurable.area);
    EXPECT_EQ(table.joins.known, Known::Absent);
}

// ISO 4992-1:2020: rim 3.6 (R), wall up to 600 mm (R), planar (R, R2), joins (R2), not measurable
// (R), signal to noise (R); recording limits and holes by thickness 300/400/600 (M).
TEST(Iso4992Part1, HasWhatWasReadAndRemembered) {
    const LimitTable& table = shippedTable("ISO 4992-1:2020");
    EXPECT_EQ(table.materials, std::vector{Material::CastSteel});
    expectKey(table, {"1", "2", "3", "4", "5"}, {kRim, kCore, kPlanar});
    EXPECT_EQ(table.rim.share, Rational(1, 3));
    EXPECT_EQ(table.rim.atMost, millimetres(30));
    EXPECT_EQ(table.rim.source.grade, Grade::Read);
    EXPECT_EQ(table.notMeasurable.throughWall, millimetres(3));
    EXPECT_FALSE(table.notMeasurable.area);
    EXPECT_EQ(table.notMeasurable.source.grade, Grade::Read);
    EXPECT_EQ(table.joins.who, JoinRule::Who::All);
    EXPECT_EQ(table.joins.reach, JoinRule::Reach::Constant);
    EXPECT_EQ(table.joins.gap, millimetres(10));
    EXPECT_EQ(table.joins.comparison, Comparison::AtMost);
    EXPECT_EQ(table.joins.source.grade, Grade::ReadTwice);
    EXPECT_EQ(table.frame.known, Known::Unknown);

    struct AtWall {
        Length wall;
        const char* hole;        // to detect, and recorded with a measurable extent
        const char* unmeasured;  // recorded without
    };
    for (const AtWall& at :
         {AtWall{millimetres(1), "3", "4"}, AtWall{millimetres(300), "3", "4"},
          AtWall{nanometres(300'000'001), "4", "6"}, AtWall{millimetres(400), "4", "6"},
          AtWall{nanometres(400'000'001), "6", "6"}, AtWall{millimetres(600), "6", "6"}}) {
        SCOPED_TRACE(toText(at.wall));
        EXPECT_EQ(column(table, ruleOf(table, RuleKind::Testability, {}), at.wall),
                  everyLevel(table, std::string(at.hole) + " M"));
        EXPECT_EQ(recordedFrom(table, ReflectorMeasure::Fbh, at.wall, true),
                  ">= " + std::string(at.hole) + " M");
        EXPECT_EQ(recordedFrom(table, ReflectorMeasure::Fbh, at.wall, false),
                  ">= " + std::string(at.unmeasured) + " M");
        EXPECT_EQ(recordedFrom(table, ReflectorMeasure::BackWallLoss, at.wall), ">= 12 M");
    }
    const Rule* noise = ruleOf(table, RuleKind::Testability, {}, 0, 1);
    ASSERT_NE(noise, nullptr);
    EXPECT_EQ(noise->testability, TestabilityMeasure::SignalToNoise);
    EXPECT_EQ(noise->passes, Comparison::AtLeast);
    EXPECT_EQ(column(table, noise, kAnyWall), everyLevel(table, "6 R"));
    for (const Rule& rule : table.rules)
        EXPECT_EQ(column(table, &rule, nanometres(600'000'001)), everyLevel(table, "outside"));
}

// ISO 4992-1:2020, planar: nothing above a 3 mm hole in class 1 (R); through-wall up to 25 % of the
// wall where the length is at most 10 mm, up to 10 % where it is more (R2; at level 1 M).
TEST(Iso4992Part1, HasThePlanarLimits) {
    const LimitTable& table = shippedTable("ISO 4992-1:2020");
    EXPECT_EQ(column(table, ruleOf(table, RuleKind::EquivalentReflector, {kPlanar}), kAnyWall),
              (Texts{"3 R", "none R", "none R", "none R", "none R"}));
    const Rule* little = ruleOf(table, RuleKind::ThroughWallExtent, {kPlanar}, 1);
    const Rule* large = ruleOf(table, RuleKind::ThroughWallExtent, {kPlanar}, 1, 1);
    ASSERT_TRUE(little != nullptr && large != nullptr);
    EXPECT_EQ(column(table, little, kAnyWall),
              (Texts{"1/4 t M", "1/4 t R2", "1/4 t R2", "1/4 t R2", "1/4 t R2"}));
    EXPECT_EQ(column(table, large, kAnyWall),
              (Texts{"1/10 t M", "1/10 t R2", "1/10 t R2", "1/10 t R2", "1/10 t R2"}));
    for (const Rule* rule : {little, large}) {
        EXPECT_EQ(rule->conditions[0].of, ReflectorMeasure::IndicationLength);
        EXPECT_EQ(rule->conditions[0].value, Rational(10'000'000));
        EXPECT_EQ(rule->conditions[0].source.grade, Grade::ReadTwice);
    }
    EXPECT_EQ(little->conditions[0].comparison, Comparison::AtMost);
    EXPECT_EQ(large->conditions[0].comparison, Comparison::More);
}

// ISO 4992-1:2020, the volumetric table was not to be had: its shape alone.
TEST(Iso4992Part1, LeavesTheVolumetricTableUnknown) {
    const LimitTable& table = shippedTable("ISO 4992-1:2020");
    for (const IndicationClass zone : {kRim, kCore})
        for (const RuleKind kind :
             {RuleKind::Count, RuleKind::ThroughWallExtent, RuleKind::IndividualLength,
              RuleKind::IndividualArea, RuleKind::TotalArea}) {
            const Rule* rule = ruleOf(table, kind, {zone});
            ASSERT_NE(rule, nullptr);
            EXPECT_EQ(rule->rows.size(), 15U);  // five levels, three bands
            for (const Length wall :
                 {millimetres(50), nanometres(50'000'001), millimetres(100), millimetres(600)})
                EXPECT_EQ(column(table, rule, wall), everyLevel(table, "unknown M"));
            EXPECT_EQ(rule->framed, kind == RuleKind::Count || kind == RuleKind::TotalArea);
        }
    const FrameRule& frame = ruleOf(table, RuleKind::Count, {kRim})->frames.at("3");
    EXPECT_EQ(frame.shape, (FrameShape{millimetres(100), millimetres(100), false}));
    EXPECT_TRUE(ruleOf(table, RuleKind::TotalArea, {kCore})->frames.empty());
}

// ASTM A609/A609M-91(2007), procedure A (R): area cm2 and in2, length mm and in. 75 % down is
// 20 lg 4 = 12.0412 dB.
TEST(A609ProcedureA, HasAreasAndLengthsInEachUnit) {
    const Texts levels = {"1", "2", "3", "4", "5", "6", "7"};
    for (const char* id : {"ASTM A609-91(2007) A SI", "ASTM A609-91(2007) A inch"}) {
        const LimitTable& table = shippedTable(id);
        expectKey(table, levels, {kRim, kCore, kPlanar, kDross});
        EXPECT_EQ(table.materials, std::vector{Material::CastSteel});
        EXPECT_EQ(recordedFrom(table, ReflectorMeasure::OverReference, kAnyWall), ">= 0 R");
        EXPECT_EQ(recordedFrom(table, ReflectorMeasure::BackWallLoss, kAnyWall), ">= 12.0412 R");
        EXPECT_EQ(table.recording.size(), 2U);
        EXPECT_EQ(table.rim.known, Known::Absent);
        EXPECT_EQ(table.clusters.known, Known::Absent);
        EXPECT_EQ(table.joins.known, Known::Absent);
        EXPECT_EQ(table.rules.size(), 2U);
        for (const RuleRow& row : ruleOf(table, RuleKind::IndividualArea, {})->rows)
            EXPECT_NE(row.limit.note.find("at exactly the limit passes"), std::string::npos);
    }
    const auto cells = [](const char* id, RuleKind kind) {
        const LimitTable& table = shippedTable(id);
        const Rule* rule = ruleOf(table, kind, {});
        EXPECT_EQ(rule->passes, Comparison::AtMost);
        return column(table, rule, kAnyWall);
    };
    EXPECT_EQ(cells("ASTM A609-91(2007) A SI", RuleKind::IndividualArea),
              (Texts{"500 R", "1000 R", "2000 R", "3000 R", "5000 R", "8000 R", "10000 R"}));
    EXPECT_EQ(cells("ASTM A609-91(2007) A SI", RuleKind::IndividualLength),
              (Texts{"40 R", "55 R", "75 R", "100 R", "120 R", "150 R", "175 R"}));
    EXPECT_EQ(cells("ASTM A609-91(2007) A inch", RuleKind::IndividualArea),
              (Texts{"516.128 R", "967.74 R", "1935.48 R", "3225.8 R", "5161.28 R", "7741.92 R",
                     "10322.56 R"}));
    EXPECT_EQ(cells("ASTM A609-91(2007) A inch", RuleKind::IndividualLength),
              (Texts{"38.1 R", "55.88 R", "76.2 R", "99.06 R", "121.92 R", "152.4 R", "175.26 R"}));
}

// In the inch copy level 2 is in no doubt; of the SI column one copy shows 20 cm2.
TEST(A609ProcedureA, TellsTheDoubtAtLevel2) {
    const auto note = [](const char* id) {
        return ruleOf(shippedTable(id), RuleKind::IndividualArea, {})->rows[1].limit.note;
    };
    EXPECT_NE(note("ASTM A609-91(2007) A SI").find("one copy shows 20"), std::string::npos);
    EXPECT_EQ(note("ASTM A609-91(2007) A inch").find("one copy"), std::string::npos);
}

// ASTM A609/A609M-91(2007), procedure B (R): single indications E (the entire wall), O (outer and
// inner quarter), C (middle); clusters; linear from 3 widths (R2). Half is 20 lg 2 = 6.0206 dB.
TEST(A609ProcedureB, HasAreasInEachUnit) {
    const Texts levels = {"1", "2", "3", "4", "5", "6", "7", "8", "9", "10", "11"};
    struct Columns {
        const char* id;
        Texts outer;
        Texts core;
        Texts clusters;
    };
    const Columns both[] = {
        {"ASTM A609-91(2007) B SI",
         // E 0, E 6, O 6, E 19, O 19, E 32, O 32, E 45, O 45, E 58, O 58 cm2
         {"0 R", "600 R", "600 R", "1900 R", "1900 R", "3200 R", "3200 R", "4500 R", "4500 R",
          "5800 R", "5800 R"},
         // E 0, E 6, C 13, E 19, C 32, E 32, C 45, E 45, C 58, E 58, C 71 cm2
         {"0 R", "600 R", "1300 R", "1900 R", "3200 R", "3200 R", "4500 R", "4500 R", "5800 R",
          "5800 R", "7100 R"},
         {"0 R", "1300 R", "1300 R", "2600 R", "2600 R", "3900 R", "3900 R", "5200 R", "5200 R",
          "6400 R", "6400 R"}},
        {"ASTM A609-91(2007) B inch",
         // 0, 1, 1, 3, 3, 5, 5, 7, 7, 9, 9 in2
         {"0 R", "645.16 R", "645.16 R", "1935.48 R", "1935.48 R", "3225.8 R", "3225.8 R",
          "4516.12 R", "4516.12 R", "5806.44 R", "5806.44 R"},
         // 0, 1, 2, 3, 5, 5, 7, 7, 9, 9, 11 in2
         {"0 R", "645.16 R", "1290.32 R", "1935.48 R", "3225.8 R", "3225.8 R", "4516.12 R",
          "4516.12 R", "5806.44 R", "5806.44 R", "7096.76 R"},
         // 0, 2, 2, 4, 4, 6, 6, 8, 8, 10, 10 in2
         {"0 R", "1290.32 R", "1290.32 R", "2580.64 R", "2580.64 R", "3870.96 R", "3870.96 R",
          "5161.28 R", "5161.28 R", "6451.6 R", "6451.6 R"}}};
    for (const Columns& columns : both) {
        const LimitTable& table = shippedTable(columns.id);
        expectKey(table, levels, {kRim, kCore, kPlanar, kDross, kClustered});
        const auto cells = [&](RuleKind kind, const Classes& classes) {
            return column(table, ruleOf(table, kind, classes), kAnyWall);
        };
        EXPECT_EQ(cells(RuleKind::IndividualArea, {kRim}), columns.outer);
        EXPECT_EQ(cells(RuleKind::IndividualArea, {kCore}), columns.core);
        // Told apart by depth in no text: the smaller of both.
        EXPECT_EQ(cells(RuleKind::IndividualArea, {kPlanar, kDross}), columns.outer);
        EXPECT_EQ(cells(RuleKind::TotalArea, {kClustered}), columns.clusters);
        EXPECT_EQ(cells(RuleKind::ThroughWallExtent, {kRim, kCore, kPlanar, kDross}),
                  everyLevel(table, "1/3 t R"));
    }
}

TEST(A609ProcedureB, HasItsDefinitionsInEachUnit) {
    struct Definitions {
        const char* id;
        Length cube;
        Area spread;
        Area untraced;
    };
    for (const Definitions& expected :
         {Definitions{"ASTM A609-91(2007) B SI", millimetres(25), squareMillimetres(23'200),
                      squareMillimetres(100)},
          // 1 in; 36 in2 = 23 225.76 mm2; 0.15 in2 = 96.774 mm2
          Definitions{"ASTM A609-91(2007) B inch", nanometres(25'400'000),
                      Area::fromMillionths(23'225'760'000), Area::fromMillionths(96'774'000)}}) {
        const LimitTable& table = shippedTable(expected.id);
        SCOPED_TRACE(table.id);
        EXPECT_EQ(table.clusters.known, Known::Given);
        EXPECT_EQ(table.clusters.cube, expected.cube);
        EXPECT_EQ(table.clusters.spread, expected.spread);
        EXPECT_EQ(table.notMeasurable.area, expected.untraced);
        EXPECT_FALSE(table.notMeasurable.throughWall);
        EXPECT_EQ(table.rim.share, Rational(1, 4));
        EXPECT_FALSE(table.rim.atMost);
        EXPECT_EQ(table.rim.source.grade, Grade::Read);
        EXPECT_EQ(recordedFrom(table, ReflectorMeasure::OverReference, kAnyWall), ">= -6.0206 R");
        EXPECT_EQ(recordedFrom(table, ReflectorMeasure::BackWallLoss, kAnyWall), ">= 12.0412 R");
        EXPECT_EQ(table.recording.size(), 2U);
        const Rule* linear = ruleOf(table, RuleKind::Count, {kRim, kCore, kPlanar, kDross}, 2);
        ASSERT_NE(linear, nullptr);
        EXPECT_EQ(column(table, linear, kAnyWall), everyLevel(table, "0 R"));
        EXPECT_EQ(linear->conditions[0].of, ReflectorMeasure::LengthToWidth);
        EXPECT_EQ(linear->conditions[0].comparison, Comparison::AtLeast);
        EXPECT_EQ(linear->conditions[0].value, Rational(3));
        EXPECT_EQ(linear->conditions[0].source.grade, Grade::ReadTwice);
        EXPECT_EQ(linear->conditions[1].of, ReflectorMeasure::OverReference);
        EXPECT_EQ(linear->conditions[1].comparison, Comparison::AtLeast);
        EXPECT_EQ(linear->conditions[1].value, Rational(0));
    }
}

// ASME B31.3-2024 (R): no depth of defects above 5 % of the wall.
TEST(AsmeB313, LimitsTheDepthToATwentiethOfTheWall) {
    const LimitTable& table = shippedTable("ASME B31.3-2024 UT");
    expectKey(table, {"casting"}, {kRim, kCore, kPlanar, kDross});
    EXPECT_EQ(table.materials, std::vector{Material::CastSteel});
    EXPECT_TRUE(table.recording.empty());
    ASSERT_EQ(table.rules.size(), 1U);
    EXPECT_EQ(column(table, ruleOf(table, RuleKind::ThroughWallExtent, {}), kAnyWall),
              Texts{"1/20 t R"});
    EXPECT_EQ(table.rules[0].passes, Comparison::AtMost);
}

}  // namespace
}  // namespace model
