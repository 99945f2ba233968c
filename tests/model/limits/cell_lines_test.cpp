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

TEST(CellLines, LeaveUnknownUnknown) {
    const auto cells = cellsOfShipped("ASTM A903/A903M-99 MT");
    EXPECT_THAT(cells, Contains(line("rows", "", "unknown", "not read", std::nullopt)));
    EXPECT_THAT(cells, Contains(Field(&CellLine::value, "unknown")));
}

}  // namespace
}  // namespace model
