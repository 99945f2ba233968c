// SPDX-License-Identifier: Apache-2.0
// Short ways to write down ultrasonic sheets, and limit tables for them, in tests.
#pragma once

#include "sheet_maker.h"

namespace model::test {

inline GainStep dB(const char* text) {
    return GainStep::fromMillionths(mm(text).millionths());
}

/// Volumetric, in the middle of a wall of 60 mm, measured in every way: an 8 mm hole, 20 x 10 mm,
/// 100 mm2, 4 mm through the wall, no back-wall loss, on the reference line.
inline Reflector reflector(const char* id = "u1", const char* x = "100", const char* y = "100") {
    Reflector made;
    made.id = id;
    made.x = mm(x);
    made.y = mm(y);
    made.depth = mm("28");
    made.fbh = mm("8");
    made.length = mm("20");
    made.width = mm("10");
    made.throughWall = mm("4");
    made.area = mm2("100");
    made.backWallLoss = dB("0");
    made.overReference = dB("0");
    made.kind = Kind::Volumetric;
    return made;
}

/// `table` with nothing left open but what the indications leave open: two directions, a dead zone
/// of 5 mm, a 3 mm hole with 12 dB, 100 000 mm2.
inline Sheet ultrasonicSheet(const std::string& table, std::map<std::string, std::string> levels,
                             std::vector<Reflector> reflectors,
                             Material material = Material::CastSteel,
                             const char* thickness = "60") {
    Examination examination;
    examination.zone = "Z1";
    examination.method = Method::Ultrasonic;
    examination.table = table;
    examination.levels = std::move(levels);
    examination.thickness = mm(thickness);
    examination.noIndications = reflectors.empty();
    examination.reflectors = std::move(reflectors);
    examination.ultrasonic.zoneArea = mm2("100000");
    examination.ultrasonic.testability = Testability{mm("3"), dB("12")};
    examination.ultrasonic.deadZone = mm("5");
    examination.ultrasonic.directions = {"from the outside", "from the bore"};
    Sheet sheet;
    sheet.casting.material = material;
    sheet.examinations.push_back(std::move(examination));
    return sheet;
}

/// A cell read in a standard, in mm, mm2, dB, percent or whole.
inline Cell cell(const char* number) {
    Cell made;
    made.type = Cell::Type::Number;
    made.number = mm(number).millionths();
    made.source = {"here", Grade::Read};
    return made;
}
inline Cell ofWall(std::int64_t over, std::int64_t under) {
    Cell made;
    made.type = Cell::Type::FractionOfThickness;
    made.fraction = Rational(over, under);
    made.source = {"here", Grade::Read};
    return made;
}
inline Cell unknownCell() {
    return {};
}

/// A rule of the key "all" with one row for each of the levels "1", "2" ...
inline Rule ruleOf(RuleKind kind, std::vector<IndicationClass> classes, std::vector<Cell> limits,
                   Comparison passes = Comparison::AtMost) {
    Rule rule;
    rule.kind = kind;
    rule.key = "all";
    rule.classes = std::move(classes);
    rule.passes = passes;
    for (std::size_t i = 0; i < limits.size(); ++i) {
        RuleRow row;
        row.level = std::to_string(i + 1);
        row.limit = limits[i];
        rule.rows.push_back(std::move(row));
    }
    return rule;
}

/// A table of ours for steel, "T", with the key "all", two levels, a rim of a third up to 30 mm, no
/// recording limit, and the rules given.
inline LimitTable tableOf(std::vector<Rule> rules) {
    LimitTable table;
    table.id = "T";
    table.method = Method::Ultrasonic;
    table.materials = {Material::CastSteel};
    table.digest = "00";
    table.keys = {{"all",
                   {"1", "2"},
                   {IndicationClass::Rim, IndicationClass::Core, IndicationClass::Planar,
                    IndicationClass::Dross, IndicationClass::Clustered},
                   0}};
    table.rim.known = Known::Given;
    table.rim.atMost = mm("30");
    table.ratio.known = Known::Absent;
    table.rows.known = Known::Absent;
    table.joins.known = Known::Absent;
    table.frame.known = Known::Absent;
    table.threshold.known = Known::Absent;
    table.rules = std::move(rules);
    return table;
}

inline void joinAllWithin(LimitTable& table, const char* gap) {
    table.joins.known = Known::Given;
    table.joins.who = JoinRule::Who::All;
    table.joins.reach = JoinRule::Reach::Constant;
    table.joins.comparison = Comparison::AtMost;
    table.joins.gap = mm(gap);
    table.joins.becomes = JoinRule::Becomes::Own;
}

inline Verdict verdictOn(const LimitTable& table, const Sheet& sheet) {
    TableSet tables;
    EXPECT_TRUE(tables.add(table).ok());
    const auto verdict = judge(sheet, tables);
    EXPECT_TRUE(verdict.ok()) << (verdict.ok() ? "" : verdict.error().message());
    return verdict.ok() ? *verdict : Verdict{};
}

/// One zone by a table of ours, at the level "1".
inline ExaminationVerdict judgedBy(const LimitTable& table, std::vector<Reflector> reflectors) {
    const Verdict verdict =
        verdictOn(table, ultrasonicSheet("T", {{"all", "1"}}, std::move(reflectors)));
    return verdict.examinations.empty() ? ExaminationVerdict{} : verdict.examinations.front();
}

/// By a shipped table for steel.
inline ExaminationVerdict steel(const std::string& table, const std::string& level,
                                std::vector<Reflector> reflectors) {
    return judged(ultrasonicSheet(table, {{"all", level}}, std::move(reflectors)));
}

/// Each check that did not pass, for messages.
inline std::string whyOf(const ExaminationVerdict& verdict) {
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

/// Lengths up to 5 in the rim, 30 in the core, 10 planar, 15 dross; twice that at level 2.
inline LimitTable lengthTable() {
    return tableOf(
        {ruleOf(RuleKind::IndividualLength, {IndicationClass::Rim}, {cell("5"), cell("10")}),
         ruleOf(RuleKind::IndividualLength, {IndicationClass::Core}, {cell("30"), cell("60")}),
         ruleOf(RuleKind::IndividualLength, {IndicationClass::Planar}, {cell("10"), cell("20")}),
         ruleOf(RuleKind::IndividualLength, {IndicationClass::Dross}, {cell("15"), cell("30")})});
}

inline Reflector ofLength(const char* length) {
    Reflector u = reflector();
    u.length = mm(length);
    u.width = mm("1");
    return u;
}

}  // namespace model::test
