// SPDX-License-Identifier: Apache-2.0
// The columns of the table of indications, in the order in which they stand.
#pragma once

#include <QString>
#include <array>
#include <string>
#include <utility>
#include <vector>

#include "record/typed_indication.h"

namespace app {

enum class Column {
    Id,
    X,
    Y,
    Length,
    Width,
    Angle,
    Kind,
    Stated,
    Area,
    Removed,
    Relevance,
    Reason
};
inline constexpr int kColumns = 12;

struct ColumnFacts {
    std::string model::TypedIndication::*text;
    const char* field;  ///< the contract's name
    enum class Of { Text, Length, Number, Word } of;
};
const ColumnFacts& factsOf(Column column);
inline Column nthColumn(int index) {
    return static_cast<Column>(index);
}

/// The column that a contract field stands in; none for a field that has none.
std::optional<Column> columnOf(const std::string& field);

/// "length, mm"; the unit is that of the examination.
QString columnTitle(Column column, model::LengthUnit unit);
/// The name alone, for messages.
QString columnName(Column column);

/// What may stand in a column of words: the contract's word and the word shown.
std::vector<std::pair<std::string, QString>> wordsOf(Column column);
/// The contract's word for what was typed: a shown word, or a beginning that only one of them has.
/// Anything else comes back as typed, and is marked as not readable.
std::string wordTyped(Column column, const QString& typed);

}  // namespace app
