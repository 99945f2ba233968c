// SPDX-License-Identifier: Apache-2.0
// Reading what is stored as words, and placing zones on surfaces in columns.
#pragma once

#include <optional>
#include <string>

#include "archive/connection.h"
#include "judge/sheet.h"

namespace model {

/// `value` if the word was known, else Damaged: the program wrote only words that it knows.
template <class Value>
Result<Value> known(const Connection& connection, const std::optional<Value>& value,
                    const std::string& what, const std::string& word) {
    if (value) return *value;
    return connection.damaged(what, "holds the unknown word \"" + word + "\"");
}

/// A surface's columns; all empty where a zone lies on none.
struct SurfaceColumns {
    std::optional<std::string> id;
    std::optional<std::int64_t> x, y, angle, width, height, period;
};

SurfaceColumns columnsOf(const std::optional<SurfacePlace>& surface);

/// From seven columns in SurfaceColumns' order, the first of which is `column`.
std::optional<SurfacePlace> surfaceFrom(const SqlStatement& row, int column);

/// Reads all rows of `statement`, which has run: take(statement) returns Result<void>.
template <class Take>
Result<void> eachRow(SqlStatement& statement, Take take) {
    while (true) {
        const auto row = statement.next();
        if (!row) return row.error();
        if (!*row) return {};
        if (Result<void> taken = take(statement); !taken) return taken;
    }
}

}  // namespace model
