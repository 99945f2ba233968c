// SPDX-License-Identifier: Apache-2.0
// From a table of texts to the entries of a register: which column is which field, what is wrong
// with each row, which rows name the same entry. Everything that is wrong is told, not the first
// thing alone.
#pragma once

#include <cstddef>
#include <map>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"
#include "exchange/csv_reader.h"
#include "exchange/json_value.h"
#include "exchange/register_lines.h"
#include "registers/field.h"

namespace model {

/// Everything that is read from rows: people, parts, zone plans, orders, castings, and the
/// registers of registers/; none names anything of those behind it.
std::vector<std::string> registerNames();

/// What stands against a file that is to be taken over. Its error has no place.
struct ImportProblem {
    std::size_t row = 0;   ///< from 1, beneath the names of the columns; 0: the names themselves
    std::size_t line = 0;  ///< of the file, where the row starts; 0: none is known
    std::string column;    ///< its name; empty: the row as a whole
    Error error;

    /// "row 3 (line 4), calibration_due: takes a date ..."
    [[nodiscard]] std::string message() const;
};

/// By row, those of one row in the order in which they were found.
void sortByRow(std::vector<ImportProblem>& problems);

/// One entry of a file.
template <class T>
struct ReadEntry {
    T value;
    std::size_t row = 0;
    std::size_t line = 0;
};

template <class T>
struct ReadEntries {
    std::vector<ReadEntry<T>> entries;  ///< also those with problems
    std::vector<ImportProblem> problems;
    std::size_t rows = 0;  ///< of the file
    /// Keys of fields that no column has; they say nothing, where an empty text says "empty".
    std::set<std::string, std::less<>> absent;
};

/// Which field each column is, by its name; a column that is none has no entry.
struct ColumnFields {
    std::map<std::size_t, const FieldInfo*> fields;
    std::set<std::string, std::less<>> absent;  ///< keys of fields that no column has
};

/// Notes columns that are unknown or stand twice, and fields that must be there and are not.
ColumnFields fieldsOfColumns(const CsvTable& table, const std::vector<FieldInfo>& fields,
                             std::vector<ImportProblem>& problems);
/// Whether the row has as many fields as there are columns; else that is noted.
bool fitsColumns(const CsvTable& table, std::size_t row, std::vector<ImportProblem>& problems);
/// The text that a field of this kind has for what stands in the file: without blanks at both ends,
/// but for a paragraph.
std::string textFor(const FieldInfo& field, const std::string& text);

template <class T>
std::vector<FieldInfo> fieldInfos() {
    std::vector<FieldInfo> infos;
    for (const Field<T>& field : T::fields()) infos.push_back(field.info);
    return infos;
}

/// Whether a field may be empty on a row because another row of the same entry says it.
template <class T>
bool mayStandElsewhere(const FieldInfo& field) {
    if constexpr (requires { T::isOfLine(field.key); })
        return field.need != FieldInfo::Need::Key;
    else
        return false;
}

/// Every row that has the right number of fields, with everything that is wrong with its texts.
template <class T>
ReadEntries<T> readRows(const CsvTable& table) {
    ReadEntries<T> read;
    read.rows = table.rows.size();
    const std::vector<FieldInfo> infos = fieldInfos<T>();
    const ColumnFields columns = fieldsOfColumns(table, infos, read.problems);
    for (std::size_t i = 0; i < table.rows.size(); ++i) {
        if (!fitsColumns(table, i, read.problems)) continue;
        const CsvRow& row = table.rows[i];
        ReadEntry<T>& entry = read.entries.emplace_back();
        entry.row = i + 1;
        entry.line = row.line;
        for (const auto& [column, info] : columns.fields)
            entry.value.*T::fields()[static_cast<std::size_t>(info - infos.data())].text =
                textFor(*info, row.fields[column]);
        for (const Field<T>& field : T::fields()) {
            const std::string& text = entry.value.*field.text;
            if (text.empty() &&
                (columns.absent.contains(field.info.key) || mayStandElsewhere<T>(field.info)))
                continue;
            if (auto error = wrongText(field.info, text))
                read.problems.push_back(
                    {entry.row, entry.line, std::string(field.info.key), std::move(*error)});
        }
    }
    read.absent = columns.absent;
    return read;
}

/// Notes every entry whose key an earlier row has.
template <class T>
void checkKeysOnce(ReadEntries<T>& read) {
    std::map<std::string, std::size_t> rows;
    for (const ReadEntry<T>& entry : read.entries) {
        const std::string key = keyOf(entry.value);
        const auto [first, isNew] = rows.emplace(key, entry.row);
        if (!isNew)
            read.problems.push_back({entry.row, entry.line, "",
                                     inputError("", "\"%1\" stands in row %2 already",
                                                {key, std::to_string(first->second)})});
    }
}

/// The entries of what takes one row each: the registers of registers/, parts, castings, people.
template <class T>
ReadEntries<T> readRegister(const CsvTable& table) {
    ReadEntries<T> read = readRows<T>(table);
    checkKeysOnce(read);
    sortByRow(read.problems);
    return read;
}

// What takes several rows each; those whose rows are wrong are left out.
ReadEntries<Order> readOrders(const CsvTable& table);
ReadEntries<ZonePlan> readZonePlans(const CsvTable& table);

/// The texts of a line by the keys of its fields, in their order; empty ones are left out.
template <class T>
JsonValue lineToJson(const T& line) {
    JsonValue::Members members;
    for (const Field<T>& field : T::fields())
        if (const std::string& text = line.*field.text; !text.empty())
            members.push_back({std::string(field.info.key), JsonValue::string(text)});
    return JsonValue::object(std::move(members));
}

inline constexpr std::string_view kEntryFormat = "fettlemark-entry/1";

/// {"format": "fettlemark-entry/1", "register": "...", "rows": [{"id": "...", ...}]}: one entry in
/// as many rows as it takes, every value a text as in CSV. Input, with the place "file: path":
/// another shape, no row, or the name of another register.
Result<CsvTable> entryFromJson(const JsonValue& document, const std::string& file,
                               std::string_view registerName);

}  // namespace model
