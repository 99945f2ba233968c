// SPDX-License-Identifier: Apache-2.0
// Short ways to write down sheets in tests.
#pragma once

#include <gtest/gtest.h>
#include <string>
#include <vector>

#include "judge/judge.h"

namespace model::test {

inline Length mm(const char* text) {
    const auto value = parseMillionths(text);
    EXPECT_TRUE(value.ok()) << text;
    return Length::fromMillionths(value.value());
}
inline Area mm2(const char* text) {
    return Area::fromMillionths(mm(text).millionths());
}

/// A linear indication along x: width a tenth of the length.
inline Indication linear(const char* length, const char* x = "0", const char* y = "0") {
    Indication made;
    made.length = mm(length);
    made.width = Length::fromMillionths(made.length.millionths() / 10);
    made.x = mm(x);
    made.y = mm(y);
    return made;
}

/// A round indication.
inline Indication spot(const char* diameter, const char* x = "0", const char* y = "0") {
    Indication made = linear(diameter, x, y);
    made.width = made.length;
    return made;
}

inline Indication withArea(Indication indication, const char* area) {
    indication.area = mm2(area);
    return indication;
}

inline Indication ofKind(Indication indication, Kind kind) {
    indication.kind = kind;
    return indication;
}

/// Ids "1", "2" ... in order.
inline std::vector<Indication> numbered(std::vector<Indication> indications) {
    for (std::size_t i = 0; i < indications.size(); ++i) indications[i].id = std::to_string(i + 1);
    return indications;
}

/// The indications apart from each other within one frame: three columns, 30 mm steps, so that
/// even 18 mm long ones neither join nor line up.
inline std::vector<Indication> apart(std::vector<Indication> indications) {
    for (std::size_t i = 0; i < indications.size(); ++i) {
        const auto n = static_cast<std::int64_t>(i);
        indications[i].x = millimetres(10 + 38 * (n % 3));
        indications[i].y = millimetres(10 + 30 * (n / 3));
    }
    return numbered(std::move(indications));
}

/// Along x, with the gaps between them; `gaps` has one entry less.
inline std::vector<Indication> inLine(std::vector<Indication> indications,
                                      const std::vector<const char*>& gaps) {
    Length from;
    for (std::size_t i = 0; i < indications.size(); ++i) {
        Indication& next = indications[i];
        next.x = from + Length::fromMillionths(next.length.millionths() / 2);
        next.y = millimetres(10);
        from += next.length;
        if (i < gaps.size()) from += mm(gaps[i]);
    }
    return numbered(std::move(indications));
}

inline const TableSet& shippedTables() {
    static const TableSet tables = [] {
        auto loaded = TableSet::shipped();
        EXPECT_TRUE(loaded.ok()) << (loaded.ok() ? "" : loaded.error().message());
        return std::move(loaded).value();
    }();
    return tables;
}

/// One zone with the default material that every table takes.
inline Sheet sheetOf(const std::string& table, std::map<std::string, std::string> levels,
                     std::vector<Indication> indications, const char* thickness = "40") {
    Examination examination;
    examination.zone = "Z1";
    examination.table = table;
    examination.levels = std::move(levels);
    examination.thickness = mm(thickness);
    examination.noIndications = indications.empty();
    examination.indications = std::move(indications);
    const LimitTable* known = shippedTables().find(table);
    if (known != nullptr) examination.method = known->method;
    Sheet sheet;
    sheet.casting.material = Material::CastSteel;
    sheet.examinations.push_back(std::move(examination));
    return sheet;
}

/// The verdict on one zone; fails the test where the sheet is refused.
inline ExaminationVerdict judged(const Sheet& sheet) {
    const auto verdict = judge(sheet, shippedTables());
    EXPECT_TRUE(verdict.ok()) << (verdict.ok() ? "" : verdict.error().message());
    if (!verdict.ok()) return {};
    return verdict->examinations.front();
}

inline ExaminationVerdict judged(const std::string& table,
                                 std::map<std::string, std::string> levels,
                                 std::vector<Indication> indications,
                                 const char* thickness = "40") {
    return judged(sheetOf(table, std::move(levels), std::move(indications), thickness));
}

/// The check of a rule, of a class where several have the rule; null where there is none.
inline const Check* checkOf(const ExaminationVerdict& verdict, RuleKind rule,
                            const std::string& classText = "") {
    for (const Check& check : verdict.checks)
        if (check.rule == rule && (classText.empty() || check.classText == classText))
            return &check;
    return nullptr;
}

}  // namespace model::test
