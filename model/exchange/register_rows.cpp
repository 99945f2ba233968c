// SPDX-License-Identifier: Apache-2.0
#include "exchange/register_rows.h"

#include <algorithm>

#include "exchange/json_fields.h"
#include "registers/every_register.h"

namespace model {
namespace {

/// Values of several lines each, which `keyOfWhole` puts together.
template <class Value, class Line>
ReadEntries<Value> readTogether(const CsvTable& table, std::string (*keyOfWhole)(const Line&),
                                Value (*from)(std::span<const Line>, std::vector<LineError>&)) {
    ReadEntries<Line> lines = readRows<Line>(table);
    ReadEntries<Value> read;
    read.rows = lines.rows;
    read.problems = std::move(lines.problems);
    read.absent = std::move(lines.absent);
    std::set<std::size_t> wrong;
    for (const ImportProblem& problem : read.problems) wrong.insert(problem.row);
    std::vector<std::string> order;
    std::map<std::string, std::vector<const ReadEntry<Line>*>> wholes;
    for (const ReadEntry<Line>& line : lines.entries) {
        auto& whole = wholes[keyOfWhole(line.value)];
        if (whole.empty()) order.push_back(keyOfWhole(line.value));
        whole.push_back(&line);
    }
    for (const std::string& key : order) {
        const auto& members = wholes[key];
        std::vector<Line> values;
        bool sound = !wrong.contains(0);
        for (const ReadEntry<Line>* member : members) {
            values.push_back(member->value);
            sound = sound && !wrong.contains(member->row);
        }
        if (!sound) continue;
        std::vector<LineError> errors;
        Value value = from(values, errors);
        for (LineError& error : errors)
            read.problems.push_back({members[error.line]->row, members[error.line]->line,
                                     error.error.field, std::move(error.error.error)});
        if (errors.empty())
            read.entries.push_back({std::move(value), members[0]->row, members[0]->line});
    }
    sortByRow(read.problems);
    return read;
}

std::string keyOfOrder(const OrderLine& line) {
    return line.number;
}

std::string keyOfPlan(const ZonePlanLine& line) {
    return line.part + " / " + line.revision;
}

}  // namespace

std::vector<std::string> registerNames() {
    std::vector<std::string> names;
    for (const std::string_view name :
         {PersonLine::kRegister, PartLine::kRegister, ZonePlanLine::kRegister, OrderLine::kRegister,
          CastingLine::kRegister})
        names.emplace_back(name);
    forEachRegister([&]<class T>() { names.emplace_back(T::kRegister); });
    return names;
}

std::string ImportProblem::message() const {
    std::string place = row == 0 ? "columns" : "row " + std::to_string(row);
    if (line != 0 && row != 0) place += " (line " + std::to_string(line) + ")";
    if (!column.empty()) place += ", " + column;
    Error placed = error;
    placed.place = place;
    return placed.message();
}

void sortByRow(std::vector<ImportProblem>& problems) {
    std::ranges::stable_sort(problems, {}, &ImportProblem::row);
}

ColumnFields fieldsOfColumns(const CsvTable& table, const std::vector<FieldInfo>& fields,
                             std::vector<ImportProblem>& problems) {
    ColumnFields columns;
    for (const FieldInfo& field : fields) columns.absent.emplace(field.key);
    const auto note = [&](const std::string& column, std::string reason) {
        problems.push_back({0, table.names.line, column, inputError("", std::move(reason))});
    };
    FieldInfo name;  // a name is taken as a line of text is
    for (std::size_t i = 0; i < table.names.fields.size(); ++i) {
        const std::string given = textFor(name, table.names.fields[i]);
        const auto field = std::ranges::find(fields, given, &FieldInfo::key);
        if (field == fields.end())
            note(given, given.empty() ? "a column has no name" : "is no field of this register");
        else if (columns.absent.erase(std::string(field->key)) == 0)
            note(given, "stands twice");
        else
            columns.fields[i] = &*field;
    }
    for (const FieldInfo& field : fields)
        if (field.need != FieldInfo::Need::Optional && columns.absent.contains(field.key))
            note(std::string(field.key), "is missing; every entry needs it");
    return columns;
}

bool fitsColumns(const CsvTable& table, std::size_t row, std::vector<ImportProblem>& problems) {
    const CsvRow& given = table.rows[row];
    if (given.fields.size() == table.names.fields.size()) return true;
    problems.push_back({row + 1, given.line, "",
                        inputError("", "has %1 fields, but there are %2 columns",
                                   {std::to_string(given.fields.size()),
                                    std::to_string(table.names.fields.size())})});
    return false;
}

std::string textFor(const FieldInfo& field, const std::string& text) {
    if (field.kind == FieldKind::Paragraph) return text;
    constexpr const char* kBlanks = " \t\r\n";
    const std::size_t first = text.find_first_not_of(kBlanks);
    if (first == std::string::npos) return {};
    return text.substr(first, text.find_last_not_of(kBlanks) - first + 1);
}

ReadEntries<Order> readOrders(const CsvTable& table) {
    return readTogether<Order, OrderLine>(table, &keyOfOrder, &orderFrom);
}

ReadEntries<ZonePlan> readZonePlans(const CsvTable& table) {
    return readTogether<ZonePlan, ZonePlanLine>(table, &keyOfPlan, &zonePlanFrom);
}

Result<CsvTable> entryFromJson(const JsonValue& document, const std::string& file,
                               std::string_view registerName) {
    JsonProblem problem(file);
    const JsonFields in(document, "", problem, {"format", "register", "rows"});
    if (const std::string format = in.text("format"); format != kEntryFormat)
        in.report("format", "must be \"%1\", not \"%2\"", {std::string(kEntryFormat), format});
    if (const std::string name = in.text("register"); name != registerName)
        in.report("register", "must be \"%1\", not \"%2\"", {std::string(registerName), name});
    CsvTable table;
    std::size_t index = 0;
    for (const JsonValue& value : in.array("rows", kMostCsvRows)) {
        const std::string path = elementPath("rows", index++);
        if (value.type() != JsonValue::Type::Object) {
            problem.report(path, "must be an object, not %1",
                           {std::string(typeName(value.type()))});
            break;
        }
        CsvRow& row = table.rows.emplace_back();
        row.line = 0;
        row.fields.resize(table.names.fields.size());
        for (const auto& [name, text] : value.members()) {
            if (text.type() != JsonValue::Type::String) {
                problem.report(memberPath(path, name), "must be a string, not %1",
                               {std::string(typeName(text.type()))});
                continue;
            }
            auto column = std::ranges::find(table.names.fields, name);
            const auto position = static_cast<std::size_t>(column - table.names.fields.begin());
            if (column == table.names.fields.end()) table.names.fields.push_back(name);
            row.fields.resize(table.names.fields.size());
            row.fields[position] = text.string();
        }
    }
    if (index == 0 && !problem.first()) in.report("rows", "holds no row");
    if (problem.first()) return *problem.first();
    for (CsvRow& row : table.rows) row.fields.resize(table.names.fields.size());
    return table;
}

}  // namespace model
