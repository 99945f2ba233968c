// SPDX-License-Identifier: Apache-2.0
// The lines are held against the shipped tables' own text, read here in another way.
#include "limits/cell_lines.h"

#include <algorithm>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <sstream>

#include "limits/shipped_tables.h"
#include "limits/table_set.h"

namespace model {
namespace {

using testing::Contains;
using testing::Field;

std::vector<CellLine> cellsOfShipped(const std::string& id) {
    const auto tables = TableSet::shipped();
    EXPECT_TRUE(tables.ok());
    const LimitTable* table = tables->find(id);
    EXPECT_NE(table, nullptr) << id;
    return table ? cellsOf(*table) : std::vector<CellLine>();
}

auto line(const std::string& what, const std::string& level, const std::string& value,
          const std::string& locator, std::optional<Grade> grade) {
    return testing::AllOf(
        Field("what", &CellLine::what, what), Field("level", &CellLine::level, level),
        Field("value", &CellLine::value, value), Field("locator", &CellLine::locator, locator),
        Field("grade", &CellLine::grade, grade));
}

/// Whether a line stands for a row of the text: one of a limit, a threshold, or a recording limit.
bool isRow(const CellLine& cell) {
    if (cell.what.ends_with(": frame") || cell.what.ends_with(": margin") ||
        cell.what.ends_with(": condition"))
        return false;
    return !cell.key.empty() || cell.what.starts_with("recording limit, ");
}

/// The text's rows of limits and thresholds: what follows the word "row".
std::vector<std::string> rowsIn(std::string_view text) {
    std::vector<std::string> rows;
    std::istringstream lines{std::string(text)};
    std::string one;
    while (std::getline(lines, one))
        if (one.starts_with("  row ")) rows.push_back(one.substr(6));
    return rows;
}

TEST(CellLinesOracle, ShowEveryRowOfEveryShippedTable) {
    for (const EmbeddedFile& file : shippedTables()) {
        const auto tables = TableSet::shipped();
        ASSERT_TRUE(tables.ok());
        const std::string text(file.text);
        const auto idAt = text.find('"', text.find("\nid "));
        const std::string id = text.substr(idAt + 1, text.find('"', idAt + 1) - idAt - 1);
        std::vector<CellLine> cells = cellsOf(*tables->find(id));
        std::erase_if(cells, [](const CellLine& cell) { return !isRow(cell); });
        const auto rows = rowsIn(text);
        ASSERT_EQ(cells.size(), rows.size()) << id;
        for (std::size_t i = 0; i < rows.size(); ++i) {
            const std::string level = cells[i].key.empty()     ? ""
                                      : cells[i].level.empty() ? "every"
                                                               : '"' + cells[i].level + '"';
            EXPECT_NE(rows[i].find(level), std::string::npos) << rows[i];
            EXPECT_NE(rows[i].find('"' + cells[i].locator + '"'), std::string::npos) << rows[i];
            const bool isUnknown = rows[i].find(" unknown ") != std::string::npos;
            EXPECT_EQ(cells[i].value == "unknown", isUnknown) << rows[i];
            EXPECT_EQ(cells[i].grade.has_value(), !isUnknown) << rows[i];
        }
    }
}

// Of EN 1369:2012, as en_1369_2012.table has them.
TEST(CellLinesOracle, SayWhatADefinitionAThresholdAndALimitAre) {
    const auto cells = cellsOfShipped("EN 1369:2012");
    EXPECT_THAT(
        cells, Contains(line("ratio", "", "linear when the length is at least 3 x the width", "5.2",
                             Grade::ReadTwice)));
    EXPECT_THAT(
        cells,
        Contains(line("rows", "", "at least 3 with gaps below 2 mm; become aligned; members stay",
                      "5.2", Grade::ReadTwice)));
    EXPECT_THAT(cells,
                Contains(line("frame", "", "105 x 148 mm", "evaluation, frame", Grade::Memory)));
    EXPECT_THAT(
        cells, Contains(line("threshold", "SM 01", "at least 0.3 mm", "Table 1, L1", Grade::Read)));
    EXPECT_THAT(cells, Contains(line("individual length (non-linear)", "SM 2", "at most 4 mm",
                                     "Table 1, L2", Grade::Read)));
    EXPECT_THAT(cells, Contains(line("total area (non-linear), within the frame", "SM 2",
                                     "at most 35 mm2", "Table 1, total area", Grade::Read)));
    EXPECT_THAT(cells,
                Contains(line("count (non-linear)", "SM 01", "none", "Table 1", Grade::Read)));
}

// As the ultrasonic tables' texts have them, in the units of the file.
TEST(CellLinesOracle, SayWhatUltrasonicTablesState) {
    const auto iron = cellsOfShipped("EN 12680-3:2003");
    EXPECT_THAT(iron, Contains(line("rim", "", "1/3 of the wall on each side, at most 30 mm",
                                    "as ISO 4992-1:2020, 3.6", Grade::Memory)));
    EXPECT_THAT(iron,
                Contains(testing::AllOf(line("recording limit, flat-bottomed hole", "",
                                             "at least 8 mm", "Table 4, Table 3", Grade::Partly),
                                        Field("band", &CellLine::band, "> 100, <= 250"))));
    EXPECT_THAT(
        iron, Contains(line("not measurable counts as", "", "unknown", "not read", std::nullopt)));
    EXPECT_THAT(iron, Contains(line("testability, smallest flat-bottomed hole", "", "at most 5 mm",
                                    "Table 3", Grade::Read)));
    EXPECT_THAT(
        iron, Contains(line("through-wall extent (rim, core)", "2", "at most 20 % of the thickness",
                            "Table 1, through-wall", Grade::Read)));
    EXPECT_THAT(iron, Contains(line("area share (rim, core)", "4", "at most 30 %",
                                    "Table 1, share of surface", Grade::Partly)));
    const auto steel = cellsOfShipped("ISO 4992-1:2020");
    EXPECT_THAT(steel, Contains(line("recording limit, flat-bottomed hole, extent not measurable",
                                     "", "at least 4 mm", "recording limits, no measurable extent",
                                     Grade::Memory)));
    EXPECT_THAT(steel, Contains(line("through-wall extent (planar), length above 10 mm: condition",
                                     "", "length above 10 mm", "planar, length above 10 mm",
                                     Grade::ReadTwice)));
    EXPECT_THAT(steel, Contains(line("through-wall extent (planar), length above 10 mm", "2",
                                     "at most 10 % of the thickness", "planar, through-wall",
                                     Grade::ReadTwice)));
    EXPECT_THAT(steel, Contains(line("testability, signal to noise", "", "at least 6 dB",
                                     "signal to noise", Grade::Read)));
    const auto inches = cellsOfShipped("ASTM A609-91(2007) B inch");
    EXPECT_THAT(inches, Contains(line("clusters", "", "cube 1 in spread 36 in2",
                                      "procedure B, clusters", Grade::Read)));
    EXPECT_THAT(inches,
                Contains(line("not measurable counts as", "", "area 0.15 in2",
                              "procedure B, indications that cannot be traced", Grade::Read)));
    EXPECT_THAT(inches, Contains(line("individual area (core)", "11", "at most 11 in2",
                                      "procedure B, table, C", Grade::Read)));
    const std::string linear =
        "count (rim, core, planar, dross), length to width at least 3, "
        "echo over the reference at least 0 dB";
    EXPECT_THAT(inches,
                Contains(line(linear, "", "at most 0", "procedure B, linear", Grade::Read)));
    EXPECT_THAT(cellsOfShipped("ASTM A609-91(2007) A inch"),
                Contains(line("individual length", "1", "at most 1.5 in",
                              "procedure A, table, length", Grade::Read)));
    EXPECT_THAT(cellsOfShipped("ASME B31.3-2024 UT"),
                Contains(line("recording limit", "", "the standard has none",
                              "no recording limit noted", Grade::Memory)));
}

// A surface table speaks of nothing ultrasonic, an ultrasonic one of nothing else.
TEST(CellLines, ShowWhatTheMethodHas) {
    for (const CellLine& cell : cellsOfShipped("EN 12680-3:2003"))
        EXPECT_TRUE(cell.what != "ratio" && cell.what != "rows" && cell.what != "threshold" &&
                    cell.what != "sums");
    for (const CellLine& cell : cellsOfShipped("EN 1369:2012"))
        EXPECT_TRUE(cell.what != "rim" && cell.what != "clusters" &&
                    cell.what != "not measurable counts as");
}

// ASME VIII-1 (2017), Appendix 6 (R2): four in line are not acceptable.
TEST(CellLinesOracle, CountALineOfIndicationsWithoutUnit) {
    EXPECT_THAT(cellsOfShipped("ASME VIII-1:2017 App. 6"),
                Contains(testing::AllOf(
                    Field("what", &CellLine::what, testing::StartsWith("line of indications")),
                    Field("value", &CellLine::value, "at most 3"))));
}

TEST(CellLines, LeaveUnknownUnknown) {
    const auto cells = cellsOfShipped("ASTM A903/A903M-99 MT");
    EXPECT_THAT(cells, Contains(line("rows", "", "unknown", "not read", std::nullopt)));
    EXPECT_THAT(cells, Contains(Field(&CellLine::value, "unknown")));
}

}  // namespace
}  // namespace model
