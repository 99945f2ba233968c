// SPDX-License-Identifier: Apache-2.0
// The cells of the EN and ISO surface tables against the standards' figures. Each check names its
// standard and table; the grade says how sure that transcription is: R read in the published text,
// R2 in two places, M from memory. They were transcribed apart from the .table files.
#include "table_columns.h"

namespace model {
namespace {

// EN 1369:2012, Table 1 (R).
TEST(En1369Of2012, HasTheNonLinearLimitsOfTable1) {
    const LimitTable& table = shippedTable("EN 1369:2012");
    const Texts levels = {"SM 001", "SM 01", "SM 1", "SM 2", "SM 3", "SM 4", "SM 5"};
    ASSERT_NE(table.key("non-linear"), nullptr);
    EXPECT_EQ(table.key("non-linear")->levels, levels);
    expectThresholds(table, "non-linear", Grade::Read, {"none", "0.3", "1.5", "2", "3", "5", "5"});
    expectCells(table, {RuleKind::IndividualLength, "non-linear", {kNonLinear}}, kAnyWall,
                Grade::Read, {"none", "1", "2", "4", "6", "10", "16"});
    expectCells(table, {RuleKind::TotalArea, "non-linear", {kNonLinear}, true}, kAnyWall,
                Grade::Read, {"none", "none", "10", "35", "70", "200", "500"});
    expectCells(table, {RuleKind::CountAtMaximum, "non-linear", {kNonLinear}, true}, kAnyWall,
                Grade::Read, {"none", "none", "2", "2", "2", "2", "2"});
    // "None allowed" at SM 001.
    expectCells(table, {RuleKind::Count, "non-linear", {kNonLinear}}, kAnyWall, Grade::Read,
                {"0", "none", "none", "none", "none", "none", "none"});
}

// The half millimetre is an interpretation (M), and the verdict must be able to say so.
TEST(En1369Of2012, NamesTheHalfMillimetreAtTheMaximumAsInterpretation) {
    const Rule* rule = findRule(shippedTable("EN 1369:2012"), RuleKind::CountAtMaximum,
                                "non-linear", {kNonLinear});
    ASSERT_NE(rule, nullptr);
    for (const RuleRow& row : rule->rows) {
        EXPECT_EQ(textOf(row.margin), "0.5");
        EXPECT_EQ(row.margin.source.grade, Grade::Memory);
        EXPECT_NE(row.margin.note.find("half millimetre"), std::string::npos);
    }
}

// EN 1369:2012, Table 2 (level names R, values M): the same for LM and AM.
TEST(En1369Of2012, HasTheLinearAndAlignedLimitsOfTable2) {
    const LimitTable& table = shippedTable("EN 1369:2012");
    EXPECT_EQ(table.key("linear")->levels,
              (Texts{"LM 001", "LM 01", "LM 1", "LM 2", "LM 3", "LM 4", "LM 5", "LM 6", "LM 7"}));
    EXPECT_EQ(table.key("aligned")->levels,
              (Texts{"AM 001", "AM 01", "AM 1", "AM 2", "AM 3", "AM 4", "AM 5", "AM 6", "AM 7"}));
    for (const auto& [key, ofClass] :
         {std::pair{"linear", kLinear}, std::pair{"aligned", kAligned}}) {
        expectThresholds(table, key, Grade::Memory,
                         {"none", "0.3", "1.5", "2", "3", "5", "5", "5", "5"});
        expectCells(table, {RuleKind::IndividualLength, key, {ofClass}}, kAnyWall, Grade::Memory,
                    {"0", "1", "2", "4", "6", "10", "18", "27", "45"});
        expectCells(table, {RuleKind::CumulativeLength, key, {ofClass}, true}, kAnyWall,
                    Grade::Memory, {"0", "unknown", "4", "6", "10", "18", "25", "40", "70"});
        expectCells(table, {RuleKind::Count, key, {ofClass}}, kAnyWall, Grade::Memory,
                    {"0", "none", "none", "none", "none", "none", "none", "none", "none"});
    }
}

// EN 1369:2012, 5.2 (R2): linear from 3 widths; rows of three or more non-linear with gaps below
// 2 mm; linear ones join below the longest member's length. Frame, sum and threshold: M.
TEST(En1369Of2012, HasTheDefinitionsOfClause5) {
    const LimitTable& table = shippedTable("EN 1369:2012");
    EXPECT_EQ(table.method, Method::Magnetic);
    EXPECT_EQ(table.materials.size(), 3U);
    EXPECT_EQ(table.ratio.known, Known::Given);
    EXPECT_EQ(table.ratio.factor, Rational(3));
    EXPECT_EQ(table.ratio.comparison, Comparison::AtLeast);
    EXPECT_EQ(table.ratio.source.grade, Grade::ReadTwice);
    EXPECT_EQ(table.rows.known, Known::Given);
    EXPECT_EQ(table.rows.members, 3);
    EXPECT_EQ(table.rows.gap, millimetres(2));
    EXPECT_EQ(table.rows.comparison, Comparison::Less);
    EXPECT_EQ(table.rows.becomes, RowRule::Becomes::Aligned);
    EXPECT_TRUE(table.rows.membersStay);
    EXPECT_EQ(table.rows.source.grade, Grade::ReadTwice);
    EXPECT_EQ(table.joins.known, Known::Given);
    EXPECT_EQ(table.joins.who, JoinRule::Who::Linear);
    EXPECT_EQ(table.joins.reach, JoinRule::Reach::LongestMember);
    EXPECT_EQ(table.joins.comparison, Comparison::Less);
    EXPECT_EQ(table.joins.becomes, JoinRule::Becomes::Aligned);
    EXPECT_EQ(table.joins.source.grade, Grade::ReadTwice);
    EXPECT_EQ(table.threshold.known, Known::Given);
    EXPECT_TRUE(table.threshold.afterGrouping);
    EXPECT_EQ(table.threshold.comparison, Comparison::AtLeast);
    EXPECT_EQ(table.threshold.source.grade, Grade::Memory);
    expectFrame(table.frame, kFrame105x148);
    EXPECT_TRUE(table.summedTogether);
    EXPECT_EQ(table.summedSource.grade, Grade::Memory);
    EXPECT_TRUE(table.forbiddenKinds.empty());
}

// EN 1369:1996 / ISO 4986:1992 (M), alone and sum by wall thickness: a to 16, b to 50, c above.
TEST(En1369Of1996, HasItsLimitsByThickness) {
    const LimitTable& table = shippedTable("EN 1369:1996");
    EXPECT_EQ(table.key("non-linear"), nullptr);
    EXPECT_EQ(table.key("linear")->levels, (Texts{"LM 1", "LM 2", "LM 3", "LM 4", "LM 5"}));
    EXPECT_EQ(table.key("aligned")->levels, (Texts{"AM 1", "AM 2", "AM 3", "AM 4", "AM 5"}));
    const Length justAbove16 = nanometres(16'000'001);
    const Length justAbove50 = nanometres(50'000'001);
    struct Type {
        Length wall;
        Texts alone;
        Texts sum;
    };
    const Texts aAlone = {"2", "4", "6", "10", "18"};
    const Texts aSum = {"4", "6", "10", "18", "25"};
    const Texts bAlone = {"3", "6", "9", "18", "27"};
    const Texts bSum = {"6", "12", "18", "27", "40"};
    const Texts cAlone = {"5", "10", "15", "30", "45"};
    const Texts cSum = {"10", "20", "30", "45", "70"};
    for (const Type& type :
         {Type{millimetres(1), aAlone, aSum}, Type{millimetres(16), aAlone, aSum},
          Type{justAbove16, bAlone, bSum}, Type{millimetres(50), bAlone, bSum},
          Type{justAbove50, cAlone, cSum}, Type{millimetres(900), cAlone, cSum}}) {
        for (const auto& [key, ofClass] :
             {std::pair{"linear", kLinear}, std::pair{"aligned", kAligned}}) {
            expectCells(table, {RuleKind::IndividualLength, key, {ofClass}}, type.wall,
                        Grade::Memory, type.alone);
            expectCells(table, {RuleKind::CumulativeLength, key, {ofClass}, true}, type.wall,
                        Grade::Memory, type.sum);
        }
    }
    EXPECT_EQ(table.threshold.known, Known::Unknown);
    EXPECT_EQ(table.ratio.source.grade, Grade::Memory);
    EXPECT_EQ(table.rows.members, 3);
    EXPECT_EQ(table.rows.source.grade, Grade::Memory);
    EXPECT_EQ(table.joins.reach, JoinRule::Reach::LongestMember);
    expectFrame(table.frame, kFrame105x148);
    EXPECT_TRUE(table.summedTogether);
}

/// Neither a rule nor a threshold with a number, nor a margin.
void expectNoNumber(const LimitTable& table) {
    EXPECT_EQ(table.threshold.known, Known::Unknown);
    EXPECT_EQ(table.joins.known, Known::Unknown);
    EXPECT_EQ(table.frame.known, Known::Unknown);
    EXPECT_FALSE(table.rules.empty());
    for (const Rule& rule : table.rules)
        for (const RuleRow& row : rule.rows) {
            EXPECT_EQ(row.limit.type, Cell::Type::Unknown) << table.id << " line " << row.line;
            EXPECT_EQ(row.margin.type, Cell::Type::Unknown) << table.id << " line " << row.line;
        }
}

// ISO 4986:2020 was not read at all.
TEST(Iso4986Of2020, HasTheShapeOfEn1369AndNoNumber) {
    const LimitTable& table = shippedTable("ISO 4986:2020");
    const LimitTable& shape = shippedTable("EN 1369:2012");
    EXPECT_EQ(table.method, Method::Magnetic);
    EXPECT_EQ(table.ratio.known, Known::Unknown);
    EXPECT_EQ(table.rows.known, Known::Unknown);
    expectNoNumber(table);
    ASSERT_EQ(table.keys.size(), shape.keys.size());
    for (std::size_t i = 0; i < table.keys.size(); ++i)
        EXPECT_EQ(table.keys[i].levels, shape.keys[i].levels);
    EXPECT_EQ(table.rules.size(), shape.rules.size());
    for (const Rule& rule : shape.rules)
        EXPECT_NE(findRule(table, rule.kind, rule.key, rule.classes), nullptr) << word(rule.kind);
}

// EN 1371-1:2011, Table 1 (M, low trust).
TEST(En13711Of2011, HasTheIsolatedAndClusteredLimitsOfTable1) {
    const LimitTable& table = shippedTable("EN 1371-1:2011");
    EXPECT_EQ(table.method, Method::Penetrant);
    EXPECT_EQ(table.materials.size(), 3U);
    EXPECT_EQ(table.key("isolated")->levels,
              (Texts{"SP 001", "SP 01", "SP 1", "SP 2", "SP 3", "SP 4", "SP 5"}));
    EXPECT_EQ(table.key("clustered")->levels,
              (Texts{"CP 001", "CP 01", "CP 1", "CP 2", "CP 3", "CP 4", "CP 5"}));
    for (const char* key : {"isolated", "clustered"}) {
        expectThresholds(table, key, Grade::Memory, {"none", "unknown", "1.5", "2", "3", "5", "5"});
        // The count takes both classes together, against each level ordered.
        expectCells(table, {RuleKind::Count, key, {kIsolated, kClustered}, true}, kAnyWall,
                    Grade::Memory, {"0", "unknown", "8", "8", "12", "20", "32"});
    }
    expectCells(table, {RuleKind::IndividualLength, "isolated", {kIsolated}}, kAnyWall,
                Grade::Memory, {"0", "unknown", "3", "6", "9", "14", "21"});
    expectCells(table, {RuleKind::IndividualLength, "clustered", {kClustered}}, kAnyWall,
                Grade::Memory, {"0", "unknown", "10", "16", "25", "unknown", "unknown"});
}

// EN 1371-1:2011, Table 2 (M): as EN 1369 Table 2.
TEST(En13711Of2011, HasTheLinearAndAlignedLimitsOfTable2) {
    const LimitTable& table = shippedTable("EN 1371-1:2011");
    EXPECT_EQ(table.key("linear")->levels,
              (Texts{"LP 001", "LP 01", "LP 1", "LP 2", "LP 3", "LP 4", "LP 5", "LP 6", "LP 7"}));
    EXPECT_EQ(table.key("aligned")->levels,
              (Texts{"AP 001", "AP 01", "AP 1", "AP 2", "AP 3", "AP 4", "AP 5", "AP 6", "AP 7"}));
    for (const auto& [key, ofClass] :
         {std::pair{"linear", kLinear}, std::pair{"aligned", kAligned}}) {
        expectThresholds(table, key, Grade::Memory,
                         {"none", "0.3", "1.5", "2", "3", "5", "5", "5", "5"});
        expectCells(table, {RuleKind::IndividualLength, key, {ofClass}}, kAnyWall, Grade::Memory,
                    {"0", "1", "2", "4", "6", "10", "18", "27", "45"});
        expectCells(table, {RuleKind::CumulativeLength, key, {ofClass}, true}, kAnyWall,
                    Grade::Memory, {"0", "unknown", "4", "6", "10", "18", "25", "40", "70"});
        expectCells(table, {RuleKind::Count, key, {ofClass}}, kAnyWall, Grade::Memory,
                    {"0", "none", "none", "none", "none", "none", "none", "none", "none"});
    }
    EXPECT_EQ(table.ratio.comparison, Comparison::AtLeast);
    EXPECT_EQ(table.ratio.source.grade, Grade::Memory);
    EXPECT_TRUE(table.threshold.afterGrouping);
    EXPECT_EQ(table.threshold.comparison, Comparison::AtLeast);
    EXPECT_EQ(table.rows.members, 3);
    EXPECT_EQ(table.rows.gap, millimetres(2));
    EXPECT_EQ(table.rows.comparison, Comparison::Less);
    EXPECT_EQ(table.rows.becomes, RowRule::Becomes::Aligned);
    EXPECT_TRUE(table.rows.membersStay);
    EXPECT_EQ(table.joins.who, JoinRule::Who::Linear);
    EXPECT_EQ(table.joins.reach, JoinRule::Reach::LongestMember);
    expectFrame(table.frame, kFrame105x148);
    EXPECT_TRUE(table.summedTogether);
}

// ISO 4987:2020, 6.1.2 (R): three or more with gaps below 2 mm count as one non-linear; linear from
// 3 widths (R). The rest was not read.
TEST(Iso4987Of2020, HasItsRowsAndNoNumber) {
    const LimitTable& table = shippedTable("ISO 4987:2020");
    const LimitTable& shape = shippedTable("EN 1371-1:2011");
    EXPECT_EQ(table.method, Method::Penetrant);
    EXPECT_EQ(table.ratio.known, Known::Given);
    EXPECT_EQ(table.ratio.comparison, Comparison::AtLeast);
    EXPECT_EQ(table.ratio.source.grade, Grade::Read);
    EXPECT_EQ(table.rows.known, Known::Given);
    EXPECT_EQ(table.rows.members, 3);
    EXPECT_EQ(table.rows.gap, millimetres(2));
    EXPECT_EQ(table.rows.comparison, Comparison::Less);
    EXPECT_EQ(table.rows.becomes, RowRule::Becomes::NonLinear);
    EXPECT_FALSE(table.rows.membersStay);
    EXPECT_EQ(table.rows.source.locator, "6.1.2");
    EXPECT_EQ(table.rows.source.grade, Grade::Read);
    expectNoNumber(table);
    ASSERT_EQ(table.keys.size(), shape.keys.size());
    for (std::size_t i = 0; i < table.keys.size(); ++i)
        EXPECT_EQ(table.keys[i].levels, shape.keys[i].levels);
    for (const Rule& rule : shape.rules)
        EXPECT_NE(findRule(table, rule.kind, rule.key, rule.classes), nullptr) << word(rule.kind);
}

struct Weld {
    const char* id;
    Method method;
    Grade ratio;
    Texts linear;
    Texts nonLinear;
};

// ISO 23278:2015 and ISO 23277:2015, acceptance levels 1 to 3 (M; ratio of ISO 23277: R).
TEST(RepairWelds, HaveTheirAcceptanceLevels) {
    for (const Weld& weld : {Weld{"ISO 23278:2015",
                                  Method::Magnetic,
                                  Grade::Memory,
                                  {"1.5", "3", "6"},
                                  {"2", "3", "4"}},
                             Weld{"ISO 23277:2015",
                                  Method::Penetrant,
                                  Grade::Read,
                                  {"2", "4", "8"},
                                  {"4", "6", "8"}}}) {
        const LimitTable& table = shippedTable(weld.id);
        EXPECT_EQ(table.method, weld.method);
        EXPECT_EQ(table.materials, std::vector{Material::CastSteel});
        EXPECT_EQ(table.key("all")->levels, (Texts{"1", "2", "3"}));
        expectCells(table, {RuleKind::IndividualLength, "all", {kLinear}}, kAnyWall, Grade::Memory,
                    weld.linear);
        expectCells(table, {RuleKind::IndividualLength, "all", {kNonLinear}}, kAnyWall,
                    Grade::Memory, weld.nonLinear);
        EXPECT_EQ(table.rules.size(), 2U);
        EXPECT_EQ(table.ratio.comparison, Comparison::More);
        EXPECT_EQ(table.ratio.factor, Rational(3));
        EXPECT_EQ(table.ratio.source.grade, weld.ratio);
        EXPECT_EQ(table.threshold.known, Known::Absent);
        EXPECT_EQ(table.rows.known, Known::Absent);
        EXPECT_EQ(table.joins.known, Known::Given);
        EXPECT_EQ(table.joins.who, JoinRule::Who::All);
        EXPECT_EQ(table.joins.reach, JoinRule::Reach::SmallerSet);
        EXPECT_EQ(table.joins.comparison, Comparison::Less);
        EXPECT_EQ(table.joins.becomes, JoinRule::Becomes::Own);
        EXPECT_EQ(table.frame.known, Known::Absent);
        EXPECT_FALSE(table.summedTogether);
    }
}

}  // namespace
}  // namespace model
