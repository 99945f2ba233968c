// SPDX-License-Identifier: Apache-2.0
// The cells of the ASME, ASTM and IACS surface tables against the figures of the codes. Each check
// names its code; grades as in shipped_en_iso_oracle_test.cpp. They were transcribed apart from the
// .table files.
#include "table_columns.h"

namespace model {
namespace {

const Length kJustAbove13 = nanometres(13'000'001);
const Length kJustAbove25 = nanometres(25'000'001);

void expectRow(const RowRule& rows, Grade grade) {
    // Four or more in line, gaps up to 1.5 mm, forming no group.
    EXPECT_EQ(rows.known, Known::Given);
    EXPECT_EQ(rows.members, 4);
    EXPECT_EQ(rows.gap, nanometres(1'500'000));
    EXPECT_EQ(rows.comparison, Comparison::AtMost);
    EXPECT_EQ(rows.becomes, RowRule::Becomes::LineOnly);
    EXPECT_EQ(rows.source.grade, grade);
}

void expectRatioAbove3(const ClassRatio& ratio, Grade grade) {
    EXPECT_EQ(ratio.known, Known::Given);
    EXPECT_EQ(ratio.factor, Rational(3));
    EXPECT_EQ(ratio.comparison, Comparison::More);
    EXPECT_EQ(ratio.source.grade, grade);
}

struct Valves {
    const char* id;
    const char* level;
    Method method;
    Grade grade;
};

// ASME B16.34-2020, Mandatory Appendix II, castings (R), and III (M, same values).
TEST(AsmeB1634, HasTheLimitsOfItsAppendices) {
    for (const Valves& valves :
         {Valves{"ASME B16.34-2020 App. II", "App. II", Method::Magnetic, Grade::Read},
          Valves{"ASME B16.34-2020 App. III", "App. III", Method::Penetrant, Grade::Memory}}) {
        const LimitTable& table = shippedTable(valves.id);
        EXPECT_EQ(table.method, valves.method);
        EXPECT_EQ(table.materials, std::vector{Material::CastSteel});
        EXPECT_EQ(table.key("all")->levels, Texts{valves.level});
        struct Wall {
            Length wall;
            const char* linear;
            const char* rounded;
        };
        for (const Wall& at :
             {Wall{millimetres(1), "8", "8"}, Wall{millimetres(13), "8", "8"},
              Wall{kJustAbove13, "13", "13"}, Wall{millimetres(25), "13", "13"},
              Wall{kJustAbove25, "18", "13"}, Wall{millimetres(400), "18", "13"}}) {
            expectCells(table, {RuleKind::IndividualLength, "all", {kLinear}}, at.wall,
                        valves.grade, {at.linear});
            expectCells(table, {RuleKind::IndividualLength, "all", {kNonLinear}}, at.wall,
                        valves.grade, {at.rounded});
            // Fails at or under the limit for the thickness: the stricter reading.
            expectCells(table, {RuleKind::Spacing, "all", {kLinear}, false, Comparison::More},
                        at.wall, valves.grade, {at.linear});
        }
        expectCells(table, {RuleKind::LineOfIndications, "all", {kNonLinear}}, kAnyWall,
                    valves.grade, {"3"});
        EXPECT_EQ(table.rules.size(), 4U);
        expectRatioAbove3(table.ratio, valves.grade);
        expectRow(table.rows, valves.grade);
        EXPECT_EQ(table.threshold.known, Known::Absent);
        EXPECT_EQ(table.joins.known, Known::Absent);
        EXPECT_EQ(table.frame.known, Known::Absent);
        EXPECT_TRUE(table.forbiddenKinds.empty());
    }
}

TEST(AsmeB1634, NamesTheStricterReadingOfTheSpacing) {
    const Rule* rule =
        findRule(shippedTable("ASME B16.34-2020 App. II"), RuleKind::Spacing, "all", {kLinear});
    ASSERT_NE(rule, nullptr);
    for (const RuleRow& row : rule->rows)
        EXPECT_NE(row.limit.note.find("stricter reading"), std::string::npos);
}

struct Vessels {
    const char* id;
    const char* level;
    Method method;
};

// ASME BPVC VIII-1 (2017), Appendix 6 (MT) and Appendix 8 (PT), R2.
TEST(AsmeVesselsAppendices6And8, HaveTheirLimits) {
    for (const Vessels& vessels :
         {Vessels{"ASME VIII-1:2017 App. 6", "App. 6", Method::Magnetic},
          Vessels{"ASME VIII-1:2017 App. 8", "App. 8", Method::Penetrant}}) {
        const LimitTable& table = shippedTable(vessels.id);
        EXPECT_EQ(table.method, vessels.method);
        EXPECT_EQ(table.materials, std::vector{Material::CastSteel});
        EXPECT_EQ(table.key("all")->levels, Texts{vessels.level});
        EXPECT_EQ(table.threshold.known, Known::Given);
        EXPECT_FALSE(table.threshold.afterGrouping);
        EXPECT_EQ(table.threshold.comparison, Comparison::More);
        expectThresholds(table, "all", Grade::ReadTwice, {"1.5"});
        expectCells(table, {RuleKind::Count, "all", {kLinear}}, kAnyWall, Grade::ReadTwice, {"0"});
        expectCells(table, {RuleKind::IndividualLength, "all", {kNonLinear}}, kAnyWall,
                    Grade::ReadTwice, {"5"});
        expectCells(table, {RuleKind::LineOfIndications, "all", {kNonLinear}}, kAnyWall,
                    Grade::ReadTwice, {"3"});
        EXPECT_EQ(table.rules.size(), 3U);
        expectRatioAbove3(table.ratio, Grade::ReadTwice);
        expectRow(table.rows, Grade::ReadTwice);
        EXPECT_EQ(table.joins.known, Known::Absent);
        EXPECT_EQ(table.frame.known, Known::Absent);
    }
}

// ASME BPVC VIII-1 (2017), Appendix 7, 7-3(a)(4) (M).
TEST(AsmeVesselsAppendix7, HasItsPenetrantLimits) {
    const LimitTable& table = shippedTable("ASME VIII-1:2017 App. 7 PT");
    EXPECT_EQ(table.method, Method::Penetrant);
    EXPECT_EQ(table.materials, std::vector{Material::CastSteel});
    EXPECT_EQ(table.key("all")->levels, Texts{"App. 7"});
    EXPECT_EQ(table.forbiddenKinds, (std::vector{Kind::Crack, Kind::HotTear}));
    EXPECT_EQ(table.forbiddenSource.locator, "7-3(a)(4)");
    expectCells(table, {RuleKind::Count, "all", {kLinear}, true}, kAnyWall, Grade::Memory, {"6"});
    expectFrame(table.frame, {millimetres(38), millimetres(152), false});
    const Head linear{RuleKind::IndividualLength, "all", {kLinear}};
    expectCells(table, linear, millimetres(19), Grade::Memory, {"6"});
    expectCells(table, linear, nanometres(19'000'001), Grade::Memory, {"1/3 t"});
    expectCells(table, linear, millimetres(57), Grade::Memory, {"1/3 t"});
    expectCells(table, linear, nanometres(57'000'001), Grade::Memory, {"19"});
    expectCells(table, {RuleKind::IndividualLength, "all", {kNonLinear}}, kAnyWall, Grade::Memory,
                {"2.4"});
    EXPECT_EQ(table.rules.size(), 3U);
    expectRatioAbove3(table.ratio, Grade::Memory);
    expectThresholds(table, "all", Grade::Memory, {"1.5"});
    EXPECT_FALSE(table.threshold.afterGrouping);
    EXPECT_EQ(table.threshold.comparison, Comparison::More);
    EXPECT_EQ(table.rows.known, Known::Absent);
    EXPECT_EQ(table.joins.known, Known::Absent);
}

// ASTM A903/A903M-99: linear from 3 widths, relevant above 1.6 mm (R2). Table 1 was not read.
TEST(AstmA903, HasRatioAndThresholdAndNoLimit) {
    for (const auto& [id, method] : {std::pair{"ASTM A903/A903M-99 MT", Method::Magnetic},
                                     std::pair{"ASTM A903/A903M-99 PT", Method::Penetrant}}) {
        const LimitTable& table = shippedTable(id);
        EXPECT_EQ(table.method, method);
        EXPECT_EQ(table.materials, std::vector{Material::CastSteel});
        EXPECT_EQ(table.key("all")->levels, (Texts{"I", "II", "III", "IV", "V"}));
        EXPECT_EQ(table.ratio.known, Known::Given);
        EXPECT_EQ(table.ratio.factor, Rational(3));
        EXPECT_EQ(table.ratio.comparison, Comparison::AtLeast);
        EXPECT_EQ(table.ratio.source.grade, Grade::ReadTwice);
        expectThresholds(table, "all", Grade::ReadTwice, {"1.6", "1.6", "1.6", "1.6", "1.6"});
        EXPECT_FALSE(table.threshold.afterGrouping);
        EXPECT_EQ(table.threshold.comparison, Comparison::More);
        EXPECT_EQ(table.rows.known, Known::Unknown);
        EXPECT_EQ(table.joins.known, Known::Unknown);
        EXPECT_EQ(table.frame.known, Known::Unknown);
        const Texts unknown(5, "unknown");
        expectCells(table, {RuleKind::IndividualLength, "all", {kLinear}}, kAnyWall, Grade::Memory,
                    unknown);
        expectCells(table, {RuleKind::IndividualLength, "all", {kNonLinear}}, kAnyWall,
                    Grade::Memory, unknown);
        for (const Rule& rule : table.rules)
            for (const RuleRow& row : rule.rows)
                EXPECT_EQ(row.limit.type, Cell::Type::Unknown) << row.line;
    }
}

// IACS Recommendation 69 (M): MT1/PT1 in 150 mm, MT2/PT2 in 22 500 mm2.
TEST(IacsRecommendation69, HasItsLimits) {
    for (const auto& [id, method, one] :
         {std::tuple{"IACS Rec. 69 MT", Method::Magnetic, "MT1"},
          std::tuple{"IACS Rec. 69 PT", Method::Penetrant, "PT1"}}) {
        const LimitTable& table = shippedTable(id);
        EXPECT_EQ(table.method, method);
        EXPECT_EQ(table.materials, std::vector{Material::CastSteel});
        const std::string two = one[0] == 'M' ? "MT2" : "PT2";
        EXPECT_EQ(table.key("all")->levels, (Texts{one, two}));
        EXPECT_EQ(table.forbiddenKinds, (std::vector{Kind::Crack, Kind::HotTear}));
        EXPECT_EQ(table.ratio.comparison, Comparison::AtLeast);
        EXPECT_EQ(table.ratio.source.grade, Grade::Memory);
        EXPECT_EQ(table.threshold.known, Known::Unknown);
        EXPECT_EQ(table.rows.members, 3);
        EXPECT_EQ(table.rows.gap, millimetres(2));
        EXPECT_EQ(table.rows.comparison, Comparison::Less);
        EXPECT_EQ(table.rows.becomes, RowRule::Becomes::Aligned);
        EXPECT_TRUE(table.rows.membersStay);
        EXPECT_EQ(table.joins.reach, JoinRule::Reach::LongestMember);
        EXPECT_EQ(table.joins.becomes, JoinRule::Becomes::Aligned);

        expectCells(table, {RuleKind::Count, "all", {}, true}, kAnyWall, Grade::Memory,
                    {"4", "20"});
        expectCells(table, {RuleKind::Count, "all", {kNonLinear}, true}, kAnyWall, Grade::Memory,
                    {"none", "10"});
        expectCells(table, {RuleKind::Count, "all", {kLinear}, true}, kAnyWall, Grade::Memory,
                    {"none", "6"});
        expectCells(table, {RuleKind::Count, "all", {kAligned}, true}, kAnyWall, Grade::Memory,
                    {"none", "6"});
        expectCells(table, {RuleKind::IndividualLength, "all", {kNonLinear}}, kAnyWall,
                    Grade::Memory, {"5", "7"});
        expectCells(table, {RuleKind::IndividualLength, "all", {kLinear}}, kAnyWall, Grade::Memory,
                    {"3", "5"});
        expectCells(table, {RuleKind::IndividualLength, "all", {kAligned}}, kAnyWall, Grade::Memory,
                    {"3", "5"});
        expectCells(table, {RuleKind::Spacing, "all", {}, false, Comparison::AtLeast}, kAnyWall,
                    Grade::Memory, {"30", "none"});
        EXPECT_EQ(table.rules.size(), 8U);

        for (const Rule& rule : table.rules) {
            if (!rule.framed) continue;
            SCOPED_TRACE(rule.line);
            ASSERT_TRUE(rule.frames.contains(one) && rule.frames.contains(two));
            expectFrame(rule.frames.at(one), {millimetres(150), millimetres(150), true});
            expectFrame(rule.frames.at(two), {millimetres(150), millimetres(150), false});
        }
    }
}

}  // namespace
}  // namespace model
