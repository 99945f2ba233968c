// SPDX-License-Identifier: Apache-2.0
#include "limits/table_check.h"

#include <algorithm>
#include <optional>
#include <set>
#include <tuple>

#include "limits/band_check.h"
#include "limits/table_lines.h"
#include "limits/ultrasonic_check.h"
#include "limits/words.h"

namespace model {
namespace {

using Failure = std::optional<Error>;
using Lines = std::map<std::string, int, std::less<>>;

/// Levels and bands of one rule, or of the threshold for one key: what both are checked for.
struct Step {
    std::string_view level;
    const Band* band = nullptr;
    const Cell* cell = nullptr;
    std::string_view notMonotone;
    int line = 0;
};

std::string lineText(const Step& step) {
    return std::to_string(step.line);
}

Failure checkLevels(const LimitTable& table, const LevelKey& key, const std::vector<Step>& steps,
                    int line) {
    std::map<std::string_view, std::vector<const Step*>> byLevel;
    for (const Step& step : steps) {
        if (std::ranges::find(key.levels, step.level) == key.levels.end())
            return failureAt(table, step.line, "\"%1\" is not a level of %2",
                             {shownInError(step.level), key.name});
        std::vector<const Step*>& bands = byLevel[step.level];
        if (!bands.empty())
            if (Failure failure = follows(table, {bands.back()->band, bands.back()->line},
                                          {step.band, step.line}))
                return failure;
        bands.push_back(&step);
        if (bands.size() > kMostBandsOfLevel)
            return failureAt(table, step.line, "a level has more than %1 bands",
                             {std::to_string(kMostBandsOfLevel)});
    }
    for (const std::string& level : key.levels)
        if (!byLevel.contains(level))
            return failureAt(table, line, "there is no row for the level \"%1\" of %2",
                             {shownInError(level), key.name});
    return {};
}

/// Whether the cells' values compare: numbers, or parts of one and the same thing.
bool comparable(const Cell& a, const Cell& b) {
    return a.type == b.type &&
           (a.type == Cell::Type::Number || a.type == Cell::Type::FractionOfThickness ||
            a.type == Cell::Type::FractionOfArea);
}

Rational valueOf(const Cell& cell) {
    return cell.type == Cell::Type::Number ? Rational(cell.number) : cell.fraction;
}

/// `loosens`: whether a greater value is the milder one.
Failure checkMonotone(const LimitTable& table, const LevelKey& key, const std::vector<Step>& steps,
                      bool loosens) {
    const auto rank = [&](const Step& step) {
        return std::ranges::find(key.levels, step.level) - key.levels.begin();
    };
    std::vector<std::pair<std::ptrdiff_t, const Step*>> values;
    for (const Step& step : steps)
        if (comparable(*step.cell, *step.cell)) values.emplace_back(rank(step), &step);
    std::set<const Step*> explained;
    for (const auto& [milderRank, milder] : values) {
        for (const auto& [stricterRank, stricter] : values) {
            if (stricterRank >= milderRank || !comparable(*stricter->cell, *milder->cell) ||
                !overlap(*stricter->band, *milder->band))
                continue;
            const Rational mild = valueOf(*milder->cell);
            const Rational strict = valueOf(*stricter->cell);
            const bool grows = loosens ? mild < strict : mild > strict;
            if (!grows) continue;
            if (milder->notMonotone.empty())
                return failureAt(
                    table, milder->line,
                    "the value is stricter than the one of the stricter level \"%1\" in line "
                    "%2; if that is so, the row says: not monotone \"why\"",
                    {shownInError(stricter->level), lineText(*stricter)});
            explained.insert(milder);
        }
    }
    for (const Step& step : steps)
        if (!step.notMonotone.empty() && !explained.contains(&step))
            return failureAt(table, step.line,
                             "the row says \"not monotone\", but its value is not "
                             "stricter than any stricter level's");
    return {};
}

Failure checkThreshold(const LimitTable& table, int line) {
    if (table.threshold.known != Known::Given) return {};
    static constexpr Band kEveryThickness;
    for (const LevelKey& key : table.keys) {
        std::vector<Step> steps;
        for (const ThresholdRow& row : table.threshold.rows)
            if (row.key == key.name)
                steps.push_back(
                    {row.level, &kEveryThickness, &row.cell, row.notMonotone, row.line});
        if (Failure failure = checkLevels(table, key, steps, line)) return failure;
        if (Failure failure = checkMonotone(table, key, steps, true)) return failure;
    }
    return {};
}

Failure checkRule(const LimitTable& table, const Rule& rule) {
    const LevelKey* key = table.key(rule.key);
    std::vector<Step> steps;
    steps.reserve(rule.rows.size());
    for (const RuleRow& row : rule.rows)
        steps.push_back({row.level, &row.band, &row.limit, row.notMonotone, row.line});
    if (Failure failure = checkLevels(table, *key, steps, rule.line)) return failure;
    const bool loosens = rule.passes == Comparison::AtMost || rule.passes == Comparison::Less;
    if (Failure failure = checkMonotone(table, *key, steps, loosens)) return failure;
    for (const IndicationClass looked : rule.classes)
        if (!table.keyOf(looked))
            return failureAt(table, rule.line, "no key orders the class %1",
                             {std::string(word(looked))});
    if (rule.kind == RuleKind::CountAtMaximum &&
        std::ranges::none_of(table.rules, [&](const Rule& other) {
            return other.kind == RuleKind::IndividualLength && other.key == rule.key &&
                   other.classes == rule.classes;
        }))
        return failureAt(table, rule.line,
                         "a count at the maximum needs a rule \"individual length\" of "
                         "the same key and classes, which gives the maximum");
    return {};
}

/// What tells rules of a key apart.
auto identity(const Rule& rule) {
    std::set<std::tuple<ReflectorMeasure, Comparison, std::int64_t, std::int64_t>> conditions;
    for (const Condition& each : rule.conditions)
        conditions.emplace(each.of, each.comparison, each.value.numerator, each.value.denominator);
    return std::tuple(rule.kind, std::string_view(rule.key), rule.testability,
                      std::set(rule.classes.begin(), rule.classes.end()), std::move(conditions));
}

/// Two rules that say the same kind of thing about the same indications.
Failure checkDistinct(const LimitTable& table) {
    std::map<decltype(identity(table.rules.front())), int> seen;
    for (const Rule& rule : table.rules) {
        const auto [first, isNew] = seen.try_emplace(identity(rule), rule.line);
        if (!isNew)
            return failureAt(table, rule.line,
                             "line %1 already gives this rule for this key and these classes",
                             {std::to_string(first->second)});
    }
    return {};
}

Failure checkClasses(const LimitTable& table, const Lines& lineOf) {
    const bool aligned = table.keyOf(IndicationClass::Aligned) != nullptr;
    const bool linear = table.keyOf(IndicationClass::Linear) != nullptr;
    const bool fromRows =
        table.rows.known == Known::Given && table.rows.becomes == RowRule::Becomes::Aligned;
    const bool fromJoins =
        table.joins.known == Known::Given && table.joins.becomes == JoinRule::Becomes::Aligned;
    if (fromRows && !aligned)
        return failureAt(table, lineOf.at("rows"),
                         "rows become aligned, but no key orders that class");
    if (fromJoins && !aligned)
        return failureAt(table, lineOf.at("joins"),
                         "joins become aligned, but no key orders that class");
    if (table.summedTogether && !(aligned && linear))
        return failureAt(table, lineOf.at("summed"),
                         "linear and aligned are summed together, but no key orders both classes");
    return {};
}

Failure checkKinds(const LimitTable& table, int line) {
    for (const Kind kind : table.forbiddenKinds)
        if (isUltrasonic(kind) != (table.method == Method::Ultrasonic))
            return failureAt(table, line, "%1 is not a kind of indications that %2 finds",
                             {std::string(word(kind)), std::string(word(table.method))});
    return {};
}

/// A class that a key orders and no rule of the key looks at would pass at any size; a rule with
/// conditions looks at some of it only.
Failure checkCovered(const LimitTable& table) {
    for (const LevelKey& key : table.keys) {
        const auto looksAt = [&](IndicationClass asked) {
            return std::ranges::any_of(table.rules, [&](const Rule& rule) {
                return rule.key == key.name && rule.conditions.empty() &&
                       rule.kind != RuleKind::Testability &&
                       (rule.classes.empty() ||
                        std::ranges::find(rule.classes, asked) != rule.classes.end());
            });
        };
        for (const IndicationClass ordered : key.classes)
            if (!looksAt(ordered))
                return failureAt(table, key.line, "no rule of %1 looks at the class %2",
                                 {key.name, std::string(word(ordered))});
        if (std::ranges::find(table.rules, key.name, &Rule::key) == table.rules.end())
            return failureAt(table, key.line, "there is no rule of %1", {key.name});
    }
    return {};
}

}  // namespace

Result<void> checkTable(const LimitTable& table, const Lines& lineOf) {
    if (table.method == Method::Ultrasonic) {
        if (Failure failure = checkUltrasonic(table, lineOf)) return *failure;
    } else {
        if (Failure failure = checkClasses(table, lineOf)) return *failure;
        if (Failure failure = checkThreshold(table, lineOf.at("threshold"))) return *failure;
    }
    if (Failure failure = checkKinds(table, lineOf.at("forbidden"))) return *failure;
    for (const Rule& rule : table.rules)
        if (Failure failure = checkRule(table, rule)) return *failure;
    if (Failure failure = checkDistinct(table)) return *failure;
    if (Failure failure = checkCovered(table)) return *failure;
    return {};
}

}  // namespace model
