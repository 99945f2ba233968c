// SPDX-License-Identifier: Apache-2.0
#include "bench/columns.h"

#include <QCoreApplication>

#include "limits/words.h"
#include "looks/text.h"

namespace app {
namespace {

using model::TypedIndication;
using Of = ColumnFacts::Of;

const std::array<ColumnFacts, kColumns> kFacts = {{
    {&TypedIndication::id, "id", Of::Text},
    {&TypedIndication::x, "x_mm", Of::Length},
    {&TypedIndication::y, "y_mm", Of::Length},
    {&TypedIndication::length, "length_mm", Of::Length},
    {&TypedIndication::width, "width_mm", Of::Length},
    {&TypedIndication::angle, "angle_deg", Of::Number},
    {&TypedIndication::kind, "kind", Of::Word},
    {&TypedIndication::stated, "class", Of::Word},
    {&TypedIndication::area, "area_mm2", Of::Number},
    {&TypedIndication::removed, "removed_mm", Of::Length},
    {&TypedIndication::relevance, "relevance", Of::Word},
    {&TypedIndication::reason, "reason", Of::Text},
}};

QString tr(const char* text) {
    return QCoreApplication::translate("IndicationColumns", text);
}

}  // namespace

const ColumnFacts& factsOf(Column column) {
    return kFacts[static_cast<std::size_t>(column)];
}

std::optional<Column> columnOf(const std::string& field) {
    for (int i = 0; i < kColumns; ++i) {
        if (field == factsOf(nthColumn(i)).field) return nthColumn(i);
    }
    return std::nullopt;
}

QString columnName(Column column) {
    switch (column) {
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

QString columnTitle(Column column, model::LengthUnit unit) {
    QString name = columnName(column);
    const auto& facts = factsOf(column);
    if (facts.of == Of::Length) {
        return name + ", " + QString::fromUtf8(model::symbol(unit).data());
    }
    if (column == Column::Angle) return tr("%1, °").arg(name);
    if (column == Column::Area) return tr("%1, mm²").arg(name);
    return name;
}

std::vector<std::pair<std::string, QString>> wordsOf(Column column) {
    std::vector<std::pair<std::string, QString>> words;
    if (column == Column::Kind) {
        for (int i = 0; i <= static_cast<int>(model::Kind::Unknown); ++i) {
            const auto kind = static_cast<model::Kind>(i);
            words.emplace_back(std::string(model::word(kind)), kindText(kind));
        }
    } else if (column == Column::Stated) {
        for (const char* word : {"linear", "non-linear"}) words.emplace_back(word, classText(word));
    } else if (column == Column::Relevance) {
        words.emplace_back("relevant", tr("relevant"));
        words.emplace_back("non-relevant", tr("non-relevant"));
        words.emplace_back("false", tr("false"));
    }
    return words;
}

std::string wordTyped(Column column, const QString& typed) {
    const QString wanted = typed.trimmed();
    if (wanted.isEmpty()) return {};
    std::string found;
    int beginnings = 0;
    for (const auto& [word, shown] : wordsOf(column)) {
        if (shown.compare(wanted, Qt::CaseInsensitive) == 0) return word;
        if (shown.startsWith(wanted, Qt::CaseInsensitive)) {
            found = word;
            ++beginnings;
        }
    }
    return beginnings == 1 ? found : typed.toStdString();
}

}  // namespace app
