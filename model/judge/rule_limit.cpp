// SPDX-License-Identifier: Apache-2.0
#include "judge/rule_limit.h"

#include <algorithm>
#include <cassert>
#include <numeric>

#include "limits/words.h"

namespace model {
namespace {

/// A part of the examined area; cut to whole millionths where the exact fraction does not fit.
Rational partOf(Rational fraction, Area area) {
    assert(fraction.denominator >= 1);
    const std::int64_t shared =
        std::max<std::int64_t>(std::gcd(fraction.numerator, fraction.denominator), 1);
    const std::int64_t over = fraction.numerator / shared;
    const std::int64_t under = std::max<std::int64_t>(fraction.denominator / shared, 1);
    const Int128 product = static_cast<Int128>(over) * area.millionths();
    if (product < (std::int64_t{1} << 61)) return {static_cast<std::int64_t>(product), under};
    return {static_cast<std::int64_t>(product / under)};
}

}  // namespace

const RuleRow* rowFor(const Rule& rule, const std::string& level, Length wall) {
    for (const RuleRow& row : rule.rows)
        if (row.level == level && row.band.contains(wall)) return &row;
    return nullptr;
}

std::optional<Rational> limitOf(const Cell& cell, Length wall, std::optional<Area> examined) {
    switch (cell.type) {
        case Cell::Type::Number:
            return Rational(cell.number);
        case Cell::Type::FractionOfThickness:
            return Rational(cell.fraction.numerator * wall.millionths(), cell.fraction.denominator);
        case Cell::Type::FractionOfArea:
            if (!examined) return std::nullopt;
            return partOf(cell.fraction, *examined);
        default:
            return std::nullopt;
    }
}

std::string whyNoLimit(const Cell& cell, const std::string& level) {
    if (cell.type == Cell::Type::Agreed)
        return "the limit is to be agreed and the order does not give it";
    if (cell.type == Cell::Type::FractionOfArea)
        return "the limit is a part of the examined area, which is not stated";
    return "the limit at " + level + " is unknown in the table";
}

std::string classText(const std::vector<IndicationClass>& classes) {
    if (classes.empty()) return "all";
    std::string text;
    for (const IndicationClass classified : classes) {
        if (!text.empty()) text += " and ";
        text += word(classified);
    }
    return text;
}

CheckUnit unitOf(const Rule& rule) {
    switch (rule.kind) {
        case RuleKind::IndividualLength:
        case RuleKind::CumulativeLength:
        case RuleKind::Spacing:
        case RuleKind::EquivalentReflector:
        case RuleKind::ThroughWallExtent:
            return CheckUnit::Millimetre;
        case RuleKind::TotalArea:
        case RuleKind::IndividualArea:
            return CheckUnit::SquareMillimetre;
        case RuleKind::AreaShare:
            return CheckUnit::Percent;
        case RuleKind::BackWallLoss:
            return CheckUnit::Decibel;
        case RuleKind::Testability:
            return rule.testability == TestabilityMeasure::SmallestFbh ? CheckUnit::Millimetre
                                                                       : CheckUnit::Decibel;
        default:
            return CheckUnit::Count;
    }
}

void stateRow(Check& check, const Rule& rule, const Cell& cell, std::optional<Rational> limit) {
    check.rule = rule.kind;
    check.comparison = rule.passes;
    check.unit = unitOf(rule);
    check.source = cell.source;
    check.note = cell.note;
    check.limit = limit;
}

std::string leftOutText(const Rule& rule, const std::vector<IndicationClass>& classes,
                        const std::string& level) {
    return std::string(word(rule.kind)) + ", " + classText(classes) + ": no limit at " + level;
}

}  // namespace model
