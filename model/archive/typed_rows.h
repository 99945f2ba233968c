// SPDX-License-Identifier: Apache-2.0
// The rows that are stored as typed, each field with the exact value beside it where it is a
// number: which column a field has, and which key in the history. For the .cpp files of this folder
// only.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "archive/connection.h"
#include "record/records.h"
#include "trust/canonical.h"

namespace model {

template <class Row>
struct TypedField {
    std::string Row::*text;
    const char* column;
    const char* exact = nullptr;  ///< column of the exact value; a length's ends in "_nm"
    const char* key = nullptr;    ///< in the history; none: as the column
};

/// The table and the fields of a kind of row: TypedIndication, TypedSetting or TypedReflector. A
/// row has also its examination, its position from 1, and the unit of its lengths.
template <class Row>
struct TypedTable {
    const char* name;
    std::vector<TypedField<Row>> fields;
};
template <class Row>
const TypedTable<Row>& typedTable();

template <>
const TypedTable<TypedIndication>& typedTable();
template <>
const TypedTable<TypedSetting>& typedTable();
template <>
const TypedTable<TypedReflector>& typedTable();

/// For each field with one, in order; none where the text is empty or no number.
using ExactValues = std::vector<std::optional<std::int64_t>>;

template <class Row>
ExactValues exactValuesOf(const Row& row) {
    ExactValues values;
    for (const auto& field : typedTable<Row>().fields) {
        if (field.exact == nullptr) continue;
        // Whatever is no length is typed by the same grammar as millimetres.
        const bool isLength = std::string_view(field.exact).ends_with("_nm");
        const auto entry =
            parseLength(row.*field.text, isLength ? row.unit : LengthUnit::Millimetre);
        values.push_back(entry ? std::optional(entry->value.millionths()) : std::nullopt);
    }
    return values;
}

/// "unit, id, x, ...": as typedFrom() takes them.
template <class Row>
std::string typedColumns() {
    std::string columns = "unit";
    for (const auto& field : typedTable<Row>().fields) columns.append(", ").append(field.column);
    return columns;
}
template <class Row>
int typedColumnCount() {
    return 1 + static_cast<int>(typedTable<Row>().fields.size());
}

/// "x_nm, y_nm, ...": as exactFrom() takes them.
template <class Row>
std::string exactColumns() {
    std::string columns;
    for (const auto& field : typedTable<Row>().fields)
        if (field.exact != nullptr) columns.append(columns.empty() ? "" : ", ").append(field.exact);
    return columns;
}

template <class Row>
Row typedFrom(const SqlStatement& statement, int column) {
    Row row;
    row.unit = statement.text(column) == symbol(LengthUnit::Inch) ? LengthUnit::Inch
                                                                  : LengthUnit::Millimetre;
    for (const auto& field : typedTable<Row>().fields) row.*field.text = statement.text(++column);
    return row;
}

template <class Row>
ExactValues exactFrom(const SqlStatement& statement, int column) {
    ExactValues values;
    for (const auto& field : typedTable<Row>().fields)
        if (field.exact != nullptr) values.push_back(statement.wholeOrNone(column++));
    return values;
}

/// The texts that are not empty, and the unit.
template <class Row>
Canonical::Object canonicalOf(const Row& row) {
    Canonical::Object object;
    object["unit"] = symbol(row.unit);
    for (const auto& field : typedTable<Row>().fields)
        if (const std::string& text = row.*field.text; !text.empty())
            object[field.key != nullptr ? field.key : field.column] = text;
    return object;
}

}  // namespace model
