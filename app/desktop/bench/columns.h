// SPDX-License-Identifier: Apache-2.0
// The columns of the tables of findings, in the order in which they stand: what a cell of each kind
// of row holds, and what it is called.
#pragma once

#include <QString>
#include <optional>
#include <span>
#include <string>
#include <utility>
#include <vector>

#include "record/typed_indication.h"
#include "record/typed_reflector.h"

namespace app {

enum class CellOf { Text, Length, Number, Word };

template <class Row>
struct TypedColumn {
    std::string Row::*text;
    const char* field;  ///< the contract's name
    CellOf of;
    int digits;  ///< width of the column, in digits
};

/// What may stand in a column of words: the contract's word and the word shown.
using Words = std::vector<std::pair<std::string, QString>>;
/// The contract's word for what was typed: a shown word, or a beginning that only one of them has.
/// Anything else comes back as typed, and is marked as not readable.
std::string wordTyped(const Words& words, const QString& typed);
/// The word shown for a contract's word; the text itself where it is none of them.
QString wordShown(const Words& words, const QString& text);

/// What the rows of a kind have: all(), name() for messages, unit() of a number, help(), words().
template <class Row>
struct Columns;

template <>
struct Columns<model::TypedIndication> {
    static std::span<const TypedColumn<model::TypedIndication>> all();
    static QString name(int column);
    static QString unit(int column);
    static QString help(int column);
    static Words words(int column);
};

template <>
struct Columns<model::TypedReflector> {
    static std::span<const TypedColumn<model::TypedReflector>> all();
    static QString name(int column);
    static QString unit(int column);
    static QString help(int column);
    static Words words(int column);
};

/// Of an indication of MT and PT.
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

/// Of an indication of UT: where it is, what the instrument showed, what is known of its size, what
/// it is, and what is seldom needed.
enum class ReflectorColumn {
    Id,
    X,
    Y,
    Heading,
    SoundPath,
    Gain,
    Screen,
    Along,
    Across,
    Depth,
    Fbh,
    Length,
    Width,
    ThroughWall,
    Kind,
    Relevance,
    Reason,
    Setting,
    Drop,
    Angle,
    Area,
    OverReference,
    BackWallLoss,
    LossExplained,
    Wall,
    NotMeasurable,
    AfterCheck
};

template <class ColumnEnum>
constexpr int at(ColumnEnum column) {
    return static_cast<int>(column);
}

/// The column that a contract field stands in; none for a field that has none.
template <class Row>
std::optional<int> columnOf(const std::string& field) {
    const auto all = Columns<Row>::all();
    for (std::size_t i = 0; i < all.size(); ++i) {
        if (field == all[i].field) return static_cast<int>(i);
    }
    return std::nullopt;
}

/// "length, mm"; a length's unit is that of the examination.
template <class Row>
QString columnTitle(int column, model::LengthUnit unit) {
    const QString name = Columns<Row>::name(column);
    const QString own = Columns<Row>::all()[static_cast<std::size_t>(column)].of == CellOf::Length
                            ? QString::fromUtf8(model::symbol(unit).data())
                            : Columns<Row>::unit(column);
    return own.isEmpty() ? name : name + ", " + own;
}

}  // namespace app
