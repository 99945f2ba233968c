// SPDX-License-Identifier: Apache-2.0
#include "importing/named_things.h"

#include <algorithm>
#include <charconv>

#include "judge/level_orders.h"
#include "limits/words.h"

namespace app {
namespace {

using model::FieldError;
using model::ImportProblem;

/// Criteria as a row states them, with the columns in which they stand.
struct Criteria {
    std::string method;
    std::string table;
    std::string levels;
    const char* methodColumn;
    const char* tableColumn;
    const char* levelsColumn;
};

Criteria criteriaOf(const model::OrderLine& line) {
    return {line.testMethod, line.testTable, line.testLevels,
            "test_method",   "test_table",   "test_levels"};
}

Criteria criteriaOf(const model::ZonePlanLine& line) {
    return {line.method, line.table, line.levels, "method", "table", "levels"};
}

std::vector<FieldError> unknownIn(const model::TableSet& tables, const Criteria& criteria) {
    std::vector<FieldError> errors;
    const auto fail = [&](const char* column, std::string reason,
                          std::vector<std::string> arguments) {
        errors.push_back({column, model::inputError("", std::move(reason), std::move(arguments))});
    };
    if (criteria.table.empty()) return errors;
    const model::LimitTable* table = tables.find(criteria.table);
    if (!table) {
        fail(criteria.tableColumn, "there is no limit table \"%1\"", {criteria.table});
        return errors;
    }
    const auto method = model::methodFrom(criteria.method);
    if (method && *method != table->method)
        fail(criteria.methodColumn, "%1 is a table for %2, not for %3",
             {criteria.table, std::string(word(table->method)), criteria.method});
    const auto levels = model::levelsFrom(criteria.levels);
    if (!levels) return errors;  // told already
    for (const auto& [name, level] : *levels) {
        const model::LevelKey* key = model::orderedKey(*table, name);
        if (!key)
            fail(criteria.levelsColumn, "%1 has no level key \"%2\"", {criteria.table, name});
        else if (std::ranges::find(key->levels, level) == key->levels.end())
            fail(criteria.levelsColumn, "%1 has no level \"%2\"", {criteria.table, level});
    }
    return errors;
}

}  // namespace

std::vector<FieldError> unknownIn(const model::Archive& archive,
                                  const model::CastingLine& casting) {
    std::vector<FieldError> errors;
    const auto fail = [&](const char* column, std::string reason,
                          std::vector<std::string> arguments) {
        errors.push_back({column, model::inputError("", std::move(reason), std::move(arguments))});
    };
    if (!casting.order.empty() && !archive.order(casting.order))
        fail("order", "the archive has no order %1", {casting.order});
    if (casting.part.empty()) return errors;
    if (!archive.part(casting.part)) {
        fail("part", "the archive has no part %1", {casting.part});
        return errors;
    }
    int revision = 0;
    const std::string& text = casting.zonePlanRevision;
    const auto [end, code] = std::from_chars(text.data(), text.data() + text.size(), revision);
    const bool isNumber = code == std::errc() && end == text.data() + text.size() && revision > 0;
    if (isNumber && !archive.zonePlan(casting.part, revision))
        fail("zone_plan_revision", "the archive has no zone plan revision %1 of the part %2",
             {text, casting.part});
    return errors;
}

template <class Line>
model::Result<void> noteUnknownCriteria(const model::Archive& archive, const model::CsvTable& table,
                                        std::vector<ImportProblem>& problems) {
    const auto tables = archive.tables();
    if (!tables) return tables.error();
    for (const auto& entry : model::readRows<Line>(table).entries)
        for (FieldError& error : unknownIn(*tables, criteriaOf(entry.value)))
            problems.push_back(
                {entry.row, entry.line, std::move(error.field), std::move(error.error)});
    return {};
}

template model::Result<void> noteUnknownCriteria<model::OrderLine>(const model::Archive&,
                                                                   const model::CsvTable&,
                                                                   std::vector<ImportProblem>&);
template model::Result<void> noteUnknownCriteria<model::ZonePlanLine>(const model::Archive&,
                                                                      const model::CsvTable&,
                                                                      std::vector<ImportProblem>&);

}  // namespace app
