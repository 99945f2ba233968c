// SPDX-License-Identifier: Apache-2.0
// What the grammar can say beyond what the shipped tables say.
#include "limits/parser.h"

#include <gmock/gmock.h>

#include "base/digest.h"
#include "limits/words.h"
#include "table_columns.h"

namespace model {
namespace {

LimitTable parsed(const std::string& text) {
    auto table = parseTable(text, "t");
    EXPECT_TRUE(table.ok()) << (table.ok() ? "" : table.error().message());
    return table.ok() ? std::move(table).value() : LimitTable{};
}

/// A table for MT with one key "all" of two levels, and the definitions given.
std::string tableWith(const std::string& definitions, const std::string& rules) {
    return "fettlemark-table 1\nid \"X\"\nstandard \"X\"\nedition \"1\"\nrevision 7\nmethod MT\n"
           "materials \"grey iron\"\nlevels all of non-linear linear aligned are \"1\" \"2\"\n" +
           definitions + rules + "end\n";
}

const std::string kAbsent =
    "linear length >= 3 widths at \"a\" R\nthreshold absent at \"a\" R\nrows absent at \"a\" R\n"
    "joins absent at \"a\" R\nframe absent at \"a\" R\nsummed apart at \"a\" R\n"
    "forbidden none at \"a\" R\n";
const std::string kRule =
    "rule individual length\nkey all\nclasses all\npasses at most\nframed no\n"
    "columns level limit locator grade\nrow \"1\" 1 \"a\" R\nrow \"2\" 2 \"a\" R\n";

std::string replaced(std::string text, const std::string& from, const std::string& to) {
    const std::size_t at = text.find(from);
    EXPECT_NE(at, std::string::npos) << from;
    return text.replace(at, from.size(), to);
}

LimitTable withDefinition(const std::string& from, const std::string& to) {
    return parsed(tableWith(replaced(kAbsent, from, to), kRule));
}

TEST(Parser, KeepsTheHeadAndTheDigestOfTheBytes) {
    const std::string text = tableWith(kAbsent, kRule) + "\r\n";
    const LimitTable table = parsed(text);
    EXPECT_EQ(table.id, "X");
    EXPECT_EQ(table.revision, 7);
    EXPECT_EQ(table.file, "t");
    EXPECT_EQ(table.digest, toHex(sha256(text)));
    EXPECT_EQ(table.materials, std::vector{Material::GreyIron});
    EXPECT_EQ(table.rules.front().line, 16);
    EXPECT_EQ(table.rules.front().rows.back().line, 23);
}

TEST(Parser, ReadsEveryCell) {
    const auto cells = [](const std::string& rule, const std::string& one, const std::string& two) {
        const LimitTable table =
            parsed(tableWith(kAbsent, replaced(replaced(replaced(kRule, "individual length", rule),
                                                        "1 \"a\"", one + " \"a\""),
                                               "2 \"a\"", two + " \"a\"")));
        if (table.rules.empty()) return Texts{};
        return Texts{textOf(table.rules[0].rows[0].limit), textOf(table.rules[0].rows[1].limit)};
    };
    EXPECT_EQ(cells("individual length", "0", "4.5"), (Texts{"0", "4.5"}));
    EXPECT_EQ(cells("individual length", "none", "unknown"), (Texts{"none", "unknown"}));
    EXPECT_EQ(cells("individual length", "agreed", "1e1"), (Texts{"agreed", "10"}));
    EXPECT_EQ(cells("cumulative length", "20%t", "t/3"), (Texts{"1/5 t", "1/3 t"}));
    EXPECT_EQ(cells("cumulative length", "0.5 in", "12.7 mm"), (Texts{"12.7", "12.7"}));
    EXPECT_EQ(cells("through-wall extent", "12.5%t", "100%t"), (Texts{"1/8 t", "1/1 t"}));
    EXPECT_EQ(cells("total area", "10%area", "none"), (Texts{"1/10 area", "none"}));
    EXPECT_EQ(cells("total area", "none", "0.8 in2"), (Texts{"none", "516.128"}));
    EXPECT_EQ(cells("area share", "10", "15"), (Texts{"10", "15"}));
    EXPECT_EQ(cells("count", "0", "1000"), (Texts{"0", "1000"}));
}

TEST(Parser, ReadsEveryComparisonOfALimit) {
    const auto passes = [](const std::string& words) {
        const LimitTable table = parsed(
            tableWith(kAbsent, replaced(replaced(kRule, "at most", words), "2 \"a\"", "1 \"a\"")));
        return table.rules.empty() ? Comparison::AtMost : table.rules[0].passes;
    };
    EXPECT_EQ(passes("at most"), Comparison::AtMost);
    EXPECT_EQ(passes("less than"), Comparison::Less);
    EXPECT_EQ(passes("at least"), Comparison::AtLeast);
    EXPECT_EQ(passes("more than"), Comparison::More);
}

TEST(Parser, ReadsEveryDefinition) {
    const std::string rows = "rows absent";
    EXPECT_EQ(withDefinition(rows, "rows unknown").rows.known, Known::Unknown);
    const RowRule line =
        withDefinition(rows, "rows 4 or more gap <= 1.5 mm become line only members stay").rows;
    EXPECT_EQ(line.known, Known::Given);
    EXPECT_EQ(line.members, 4);
    EXPECT_EQ(line.comparison, Comparison::AtMost);
    EXPECT_EQ(line.becomes, RowRule::Becomes::LineOnly);
    const RowRule one =
        withDefinition(rows, "rows 3 or more gap < 2 mm become non-linear members replaced").rows;
    EXPECT_EQ(one.becomes, RowRule::Becomes::NonLinear);
    EXPECT_FALSE(one.membersStay);

    const std::string joins = "joins absent";
    EXPECT_EQ(withDefinition(joins, "joins unknown").joins.known, Known::Unknown);
    const JoinRule constant = withDefinition(joins, "joins all gap <= 10 mm become own").joins;
    EXPECT_EQ(constant.who, JoinRule::Who::All);
    EXPECT_EQ(constant.reach, JoinRule::Reach::Constant);
    EXPECT_EQ(constant.gap, millimetres(10));
    EXPECT_EQ(constant.comparison, Comparison::AtMost);
    EXPECT_EQ(constant.becomes, JoinRule::Becomes::Own);
    EXPECT_EQ(withDefinition(joins, "joins all gap < smaller set become own").joins.reach,
              JoinRule::Reach::SmallerSet);
    EXPECT_EQ(withDefinition(joins, "joins linear gap < longest member become aligned").joins.who,
              JoinRule::Who::Linear);

    const FrameRule circle = withDefinition("frame absent", "frame circle 150 mm").frame;
    EXPECT_EQ(circle.shape, (FrameShape{millimetres(150), millimetres(150), true}));
    EXPECT_EQ(withDefinition("frame absent", "frame unknown").frame.known, Known::Unknown);
    EXPECT_EQ(withDefinition("linear length >= 3 widths", "linear absent").ratio.known,
              Known::Absent);
    EXPECT_TRUE(withDefinition("summed apart", "summed together").summedTogether);
    EXPECT_EQ(withDefinition("forbidden none", "forbidden \"cold shut\" chaplet").forbiddenKinds,
              (std::vector{Kind::ColdShut, Kind::Chaplet}));
}

TEST(Parser, ReadsAThresholdBeforeOrAfterGrouping) {
    const LimitTable table = withDefinition("threshold absent at \"a\" R\n",
                                            "threshold length > limit before grouping at \"a\" R\n"
                                            "columns key level limit locator grade\n"
                                            "row all \"1\" none \"a\" R\n"
                                            "row all \"2\" t/3 \"a\" R note \"n\"\n");
    EXPECT_EQ(table.threshold.known, Known::Given);
    EXPECT_FALSE(table.threshold.afterGrouping);
    EXPECT_EQ(table.threshold.comparison, Comparison::More);
    ASSERT_EQ(table.threshold.rows.size(), 2U);
    EXPECT_EQ(table.threshold.rows[0].cell.type, Cell::Type::None);
    EXPECT_EQ(textOf(table.threshold.rows[1].cell), "1/3 t");
    EXPECT_EQ(table.threshold.rows[1].cell.note, "n");
}

TEST(Parser, ReadsAFrameForEachLevelOfARule) {
    const LimitTable table =
        parsed(tableWith(kAbsent, replaced(kRule, "framed no\n",
                                           "framed yes\nframe \"1\" unknown at \"b\" P\n"
                                           "frame \"2\" rectangle 38 x 152 mm at \"c\" R2\n")));
    ASSERT_EQ(table.rules.size(), 1U);
    const Rule& rule = table.rules[0];
    EXPECT_TRUE(rule.framed);
    EXPECT_EQ(rule.frames.at("1").known, Known::Unknown);
    EXPECT_EQ(rule.frames.at("1").source.grade, Grade::Partly);
    EXPECT_EQ(rule.frames.at("2").shape, (FrameShape{millimetres(38), millimetres(152), false}));
}

TEST(Parser, AMarginCanDifferByLevel) {
    const LimitTable table = parsed(tableWith(
        kAbsent, kRule + replaced(replaced(kRule, "individual length", "count at the maximum"),
                                  "framed no\n",
                                  "framed yes\nmargin \"1\" 0.5 at \"b\" M note \"n\"\n"
                                  "margin \"2\" agreed at \"b\" M\n")));
    ASSERT_EQ(table.rules.size(), 2U);
    EXPECT_EQ(textOf(table.rules[1].rows[0].margin), "0.5");
    EXPECT_EQ(table.rules[1].rows[0].margin.note, "n");
    EXPECT_EQ(table.rules[1].rows[1].margin.type, Cell::Type::Agreed);
}

TEST(Parser, TakesAStricterValueThatIsExplained) {
    const LimitTable table =
        parsed(tableWith(kAbsent, replaced(kRule, "row \"2\" 2 \"a\" R",
                                           "row \"2\" 0.5 \"a\" R not monotone \"w\"")));
    ASSERT_EQ(table.rules.size(), 1U);
    EXPECT_EQ(table.rules[0].rows[1].notMonotone, "w");
}

TEST(Parser, ComparesNumbersOnlyAcrossLevels) {
    for (const char* cell : {"none", "unknown", "agreed", "t/3"}) {
        parsed(
            tableWith(kAbsent, replaced(kRule, "row \"2\" 2", std::string("row \"2\" ") + cell)));
        parsed(
            tableWith(kAbsent, replaced(kRule, "row \"1\" 1", std::string("row \"1\" ") + cell)));
    }
}

TEST(Parser, BandsMayBeginAndEndWithinBounds) {
    const LimitTable table =
        parsed(tableWith(kAbsent,
                         "rule individual length\nkey all\nclasses all\npasses at most\n"
                         "framed no\ncolumns level from to limit locator grade\n"
                         "row \"1\" >=10 <50 1 \"a\" R\nrow \"1\" >=50 <=50 2 \"a\" R\n"
                         "row \"1\" >50 <=600 3 \"a\" R\nrow \"2\" open open 3 \"a\" R\n"));
    ASSERT_EQ(table.rules.size(), 1U);
    const auto cellAt = [&](Length wall) {
        for (const RuleRow& row : table.rules[0].rows)
            if (row.level == "1" && row.band.contains(wall)) return textOf(row.limit);
        return std::string("outside");
    };
    EXPECT_EQ(cellAt(nanometres(9'999'999)), "outside");
    EXPECT_EQ(cellAt(millimetres(10)), "1");
    EXPECT_EQ(cellAt(millimetres(50)), "2");
    EXPECT_EQ(cellAt(millimetres(600)), "3");
    EXPECT_EQ(cellAt(nanometres(600'000'001)), "outside");
}

TEST(Parser, CommentsTabsAndLineEndsMeanNothing) {
    const std::string text = tableWith(kAbsent, kRule);
    std::string other = "\t# a comment with \"one mark\n\n";
    bool quoted = false;
    for (const char c : text) {
        if (c == '"') quoted = !quoted;
        if (c == '\n')
            other += " # x\r\n";
        else if (c == ' ' && !quoted)
            other += "\t ";
        else
            other += c;
    }
    const LimitTable table = parsed(other);
    ASSERT_EQ(table.rules.size(), 1U);
    EXPECT_EQ(table.rules[0].rows.size(), 2U);
}

}  // namespace
}  // namespace model
