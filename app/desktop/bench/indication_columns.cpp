// SPDX-License-Identifier: Apache-2.0
#include <QCoreApplication>
#include <array>

#include "bench/columns.h"
#include "limits/words.h"
#include "looks/text.h"

namespace app {
namespace {

using model::TypedIndication;

constexpr std::array<TypedColumn<TypedIndication>, 12> kColumns = {{
    {&TypedIndication::id, "id", CellOf::Text, 6},
    {&TypedIndication::x, "x_mm", CellOf::Length, 11},
    {&TypedIndication::y, "y_mm", CellOf::Length, 11},
    {&TypedIndication::length, "length_mm", CellOf::Length, 12},
    {&TypedIndication::width, "width_mm", CellOf::Length, 11},
    {&TypedIndication::angle, "angle_deg", CellOf::Number, 9},
    {&TypedIndication::kind, "kind", CellOf::Word, 13},
    {&TypedIndication::stated, "class", CellOf::Word, 17},
    {&TypedIndication::area, "area_mm2", CellOf::Number, 12},
    {&TypedIndication::removed, "removed_mm", CellOf::Length, 14},
    {&TypedIndication::relevance, "relevance", CellOf::Word, 15},
    {&TypedIndication::reason, "reason", CellOf::Text, 20},
}};

QString tr(const char* text) {
    return QCoreApplication::translate("IndicationColumns", text);
}

}  // namespace

std::span<const TypedColumn<TypedIndication>> Columns<TypedIndication>::all() {
    return kColumns;
}

QString Columns<TypedIndication>::name(int column) {
    switch (static_cast<Column>(column)) {
        case Column::Id:
            return tr("id");
        case Column::X:
            return tr("x");
        case Column::Y:
            return tr("y");
        case Column::Length:
            return tr("length");
        case Column::Width:
            return tr("width");
        case Column::Angle:
            return tr("angle");
        case Column::Kind:
            return tr("kind");
        case Column::Stated:
            return tr("class");
        case Column::Area:
            return tr("area");
        case Column::Removed:
            return tr("removed");
        case Column::Relevance:
            return tr("relevance");
        case Column::Reason:
            break;
    }
    return tr("reason");
}

QString Columns<TypedIndication>::unit(int column) {
    if (column == at(Column::Angle)) return tr("°");
    if (column == at(Column::Area)) return tr("mm²");
    return {};
}

QString Columns<TypedIndication>::help(int column) {
    switch (static_cast<Column>(column)) {
        case Column::X:
        case Column::Y:
            return tr("Centre, from the zone's datum along its axes.");
        case Column::Width:
            return tr("Empty for a hairline; then state the class linear.");
        case Column::Angle:
            return tr("Counter-clockwise from the x axis; empty: 0.");
        case Column::Stated:
            return tr(
                "Only where you state it: linear or non-linear. "
                "Otherwise length and width decide.");
        case Column::Area:
            return tr("Measured area; empty: computed from length and width.");
        case Column::Removed:
            return tr("What machining will take off here; may be empty.");
        case Column::Relevance:
            return tr("Empty: relevant. Non-relevant or false need a reason.");
        default:
            return {};
    }
}

Words Columns<TypedIndication>::words(int column) {
    Words words;
    if (column == at(Column::Kind)) {
        for (int i = 0; i <= static_cast<int>(model::Kind::Unknown); ++i) {
            const auto kind = static_cast<model::Kind>(i);
            words.emplace_back(std::string(model::word(kind)), kindText(kind));
        }
    } else if (column == at(Column::Stated)) {
        for (const char* word : {"linear", "non-linear"}) words.emplace_back(word, classText(word));
    } else if (column == at(Column::Relevance)) {
        words.emplace_back("relevant", tr("relevant"));
        words.emplace_back("non-relevant", tr("non-relevant"));
        words.emplace_back("false", tr("false"));
    }
    return words;
}

}  // namespace app
