// SPDX-License-Identifier: Apache-2.0
// How typing, pasting and deleting change the rows; each is one step.
#include <QStringList>
#include <algorithm>
#include <set>

#include "bench/indication_model.h"
#include "looks/text.h"

namespace app {

void IndicationModel::set(model::TypedIndication& row, Column column, const QString& typed) const {
    const auto& facts = factsOf(column);
    row.*facts.text = facts.of == ColumnFacts::Of::Word ? wordTyped(column, typed)
                                                        : typed.trimmed().toStdString();
}

bool IndicationModel::setData(const QModelIndex& index, const QVariant& value, int role) {
    if (role != Qt::EditRole || !index.isValid() || readOnly()) return false;
    const Column column = nthColumn(index.column());
    const QString typed = value.toString();
    if (index.row() < indications()) {
        auto row = rows()[static_cast<std::size_t>(index.row())];
        if (model::isBlank(row) && factsOf(column).of == ColumnFacts::Of::Length) row.unit = unit_;
        set(row, column, typed);
        editor_->replaceRows(examination_, index.row(), 1, {row},
                             tr("row %1, %2").arg(index.row() + 1).arg(columnName(column)));
        return true;
    }
    if (typed.trimmed().isEmpty()) return false;
    auto row = freshRow();
    set(row, column, typed);
    editor_->replaceRows(examination_, indications(), 0, {row},
                         tr("row %1, %2").arg(index.row() + 1).arg(columnName(column)));
    return true;
}

void IndicationModel::deleteRows(int first, int count) {
    count = std::min(count, indications() - first);
    if (readOnly() || count <= 0) return;
    editor_->replaceRows(examination_, first, count, {},
                         count == 1 ? tr("row deleted") : tr("%1 rows deleted").arg(count));
}

void IndicationModel::clearCells(const QModelIndexList& cells) {
    int first = indications();
    int last = -1;
    for (const auto& cell : cells) {
        if (cell.row() >= indications()) continue;
        first = std::min(first, cell.row());
        last = std::max(last, cell.row());
    }
    if (readOnly() || last < first) return;
    std::vector<model::TypedIndication> changed(rows().begin() + first, rows().begin() + last + 1);
    for (const auto& cell : cells) {
        if (cell.row() >= indications()) continue;
        (changed[static_cast<std::size_t>(cell.row() - first)].*
         factsOf(nthColumn(cell.column())).text)
            .clear();
    }
    editor_->replaceRows(examination_, first, last - first + 1, std::move(changed),
                         tr("cells cleared"));
}

QString IndicationModel::copy(const QModelIndexList& cells) const {
    std::set<int> rowSet;
    std::set<int> columnSet;
    for (const auto& cell : cells) {
        if (cell.row() >= indications()) continue;
        rowSet.insert(cell.row());
        columnSet.insert(cell.column());
    }
    QStringList lines;
    for (const int row : rowSet) {
        QStringList line;
        for (const int column : columnSet) line << shownText(row, nthColumn(column));
        lines << line.join('\t');
    }
    return lines.join('\n');
}

int IndicationModel::paste(const QModelIndex& from, const QString& text) {
    if (readOnly() || !from.isValid()) return 0;
    QString plain = text;
    plain.replace("\r\n", "\n").replace('\r', '\n');
    while (plain.endsWith('\n')) plain.chop(1);
    if (plain.isEmpty()) return 0;
    const QStringList lines = plain.split('\n');
    const int first = from.row();
    const int replaced = std::clamp(indications() - first, 0, static_cast<int>(lines.size()));
    std::vector<model::TypedIndication> changed;
    int left = 0;
    int added = 0;
    for (int i = 0; i < lines.size(); ++i) {
        auto row = i < replaced ? *(rows().begin() + first + i) : freshRow(added++);
        const QStringList cells = lines[i].split('\t');
        for (int c = 0; c < cells.size(); ++c) {
            const int column = from.column() + c;
            if (column < kColumns) {
                set(row, nthColumn(column), cells[c]);
            } else if (!cells[c].trimmed().isEmpty()) {
                ++left;
            }
        }
        changed.push_back(std::move(row));
    }
    editor_->replaceRows(
        examination_, first, replaced, std::move(changed),
        lines.size() == 1 ? tr("row pasted") : tr("%1 rows pasted").arg(lines.size()));
    return left;
}

void IndicationModel::repeatAbove(const QModelIndex& cell) {
    if (!cell.isValid() || cell.row() == 0 || cell.row() > indications()) return;
    setData(cell, shownText(cell.row() - 1, nthColumn(cell.column())), Qt::EditRole);
}

}  // namespace app
