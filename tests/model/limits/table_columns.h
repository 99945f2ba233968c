// SPDX-License-Identifier: Apache-2.0
// Reads a shipped table as an auditor does: a rule, its key and classes, and down its levels.
#pragma once

#include <gtest/gtest.h>
#include <set>
#include <string>
#include <vector>

#include "base/decimal.h"
#include "limits/table_set.h"
#include "limits/words.h"

namespace model {

using Classes = std::vector<IndicationClass>;
using Texts = std::vector<std::string>;

inline constexpr auto kNonLinear = IndicationClass::NonLinear;
inline constexpr auto kIsolated = IndicationClass::Isolated;
inline constexpr auto kClustered = IndicationClass::Clustered;
inline constexpr auto kLinear = IndicationClass::Linear;
inline constexpr auto kAligned = IndicationClass::Aligned;

/// A wall that every table without thickness bands takes.
inline constexpr Length kAnyWall = millimetres(20);

inline const TableSet& shippedSet() {
    static const Result<TableSet> set = TableSet::shipped();
    EXPECT_TRUE(set.ok()) << (set.ok() ? "" : set.error().message());
    return set.value();
}

/// The shipped table of that id; the test ends where there is none.
inline const LimitTable& shippedTable(std::string_view id) {
    const LimitTable* table = shippedSet().find(id);
    if (table == nullptr) throw std::runtime_error("no shipped table " + std::string(id));
    return *table;
}

inline std::string textOf(const Cell& cell) {
    switch (cell.type) {
        case Cell::Type::Number:
            return formatMillionths(cell.number);
        case Cell::Type::FractionOfThickness:
            return std::to_string(cell.fraction.numerator) + "/" +
                   std::to_string(cell.fraction.denominator) + " t";
        case Cell::Type::FractionOfArea:
            return std::to_string(cell.fraction.numerator) + "/" +
                   std::to_string(cell.fraction.denominator) + " area";
        case Cell::Type::None:
            return "none";
        case Cell::Type::Unknown:
            return "unknown";
        case Cell::Type::Agreed:
            return "agreed";
    }
    return "?";
}

inline const Rule* findRule(const LimitTable& table, RuleKind kind, std::string_view key,
                            const Classes& classes) {
    for (const Rule& rule : table.rules)
        if (rule.kind == kind && rule.key == key &&
            std::set(rule.classes.begin(), rule.classes.end()) ==
                std::set(classes.begin(), classes.end()))
            return &rule;
    return nullptr;
}

/// What is expected of a rule's head.
struct Head {
    RuleKind kind;
    std::string key;
    Classes classes;
    bool framed = false;
    Comparison passes = Comparison::AtMost;
};

/// Expects the rule's cells at a wall, strictest level first, all with that grade.
inline void expectCells(const LimitTable& table, const Head& head, Length wall, Grade grade,
                        const Texts& expected) {
    SCOPED_TRACE(table.id + ", " + std::string(word(head.kind)) + " of " + head.key + ", wall " +
                 toText(wall));
    const Rule* rule = findRule(table, head.kind, head.key, head.classes);
    ASSERT_NE(rule, nullptr);
    EXPECT_EQ(rule->framed, head.framed);
    EXPECT_EQ(rule->passes, head.passes);
    Texts cells;
    for (const std::string& level : table.key(head.key)->levels)
        for (const RuleRow& row : rule->rows)
            if (row.level == level && row.band.contains(wall)) {
                cells.push_back(textOf(row.limit));
                EXPECT_EQ(row.limit.source.grade, grade) << level;
                EXPECT_FALSE(row.limit.source.locator.empty()) << level;
            }
    EXPECT_EQ(cells, expected);
}

/// Expects the thresholds of a key, strictest level first, all with that grade.
inline void expectThresholds(const LimitTable& table, const std::string& key, Grade grade,
                             const Texts& expected) {
    SCOPED_TRACE(table.id + ", threshold of " + key);
    Texts cells;
    for (const std::string& level : table.key(key)->levels)
        for (const ThresholdRow& row : table.threshold.rows)
            if (row.key == key && row.level == level) {
                cells.push_back(textOf(row.cell));
                EXPECT_EQ(row.cell.source.grade, grade) << level;
            }
    EXPECT_EQ(cells, expected);
}

inline void expectFrame(const FrameRule& frame, const FrameShape& shape) {
    EXPECT_EQ(frame.known, Known::Given);
    EXPECT_EQ(frame.shape, shape);
    EXPECT_EQ(frame.source.grade, Grade::Memory);  // no frame was read in a text
}

inline const FrameShape kFrame105x148{millimetres(105), millimetres(148), false};

}  // namespace model
