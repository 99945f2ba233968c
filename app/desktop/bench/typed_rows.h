// SPDX-License-Identifier: Apache-2.0
// What the tables of MT, PT and UT rows share: how typing, pasting and deleting change the rows of
// a draft; each is one step.
#pragma once

#include <QStringList>
#include <algorithm>

#include "bench/row_model.h"
#include "looks/text.h"

namespace app {

template <class Row>
class TypedRows : public RowModel {
public:
    using RowModel::RowModel;

    [[nodiscard]] int indications() const override { return static_cast<int>(rows().size()); }
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override {
        return parent.isValid() ? 0 : kCount;
    }
    [[nodiscard]] Words words(int column) const override { return Columns<Row>::words(column); }

    bool setData(const QModelIndex& index, const QVariant& value, int role) override {
        if (role != Qt::EditRole || !index.isValid() || readOnly()) return false;
        const int column = index.column();
        const bool there = index.row() < indications();
        const QString text = value.toString();
        if (!there && text.trimmed().isEmpty()) return false;
        Row row = there ? rows()[static_cast<std::size_t>(index.row())] : freshRow();
        if (model::isBlank(row) && columnAt(column).of == CellOf::Length) row.unit = unit_;
        set(row, column, text);
        editor_->replaceRows(
            examination_, index.row(), there ? 1 : 0, std::vector<Row>{std::move(row)},
            RowModel::tr("row %1, %2").arg(index.row() + 1).arg(Columns<Row>::name(column)));
        return true;
    }

    void deleteRows(int first, int count) override {
        count = std::min(count, indications() - first);
        if (readOnly() || count <= 0) return;
        editor_->replaceRows(
            examination_, first, count, std::vector<Row>(),
            count == 1 ? RowModel::tr("row deleted") : RowModel::tr("%1 rows deleted").arg(count));
    }

    void clearCells(const QModelIndexList& cells) override {
        int first = indications();
        int last = -1;
        for (const auto& cell : cells) {
            if (cell.row() >= indications()) continue;
            first = std::min(first, cell.row());
            last = std::max(last, cell.row());
        }
        if (readOnly() || last < first) return;
        std::vector<Row> changed(rows().begin() + first, rows().begin() + last + 1);
        for (const auto& cell : cells) {
            if (cell.row() >= indications()) continue;
            (changed[static_cast<std::size_t>(cell.row() - first)].*columnAt(cell.column()).text)
                .clear();
        }
        editor_->replaceRows(examination_, first, last - first + 1, std::move(changed),
                             RowModel::tr("cells cleared"));
    }

    int paste(const QModelIndex& from, const QString& text) override {
        if (readOnly() || !from.isValid()) return 0;
        QString plain = text;
        plain.replace("\r\n", "\n").replace('\r', '\n');
        while (plain.endsWith('\n')) plain.chop(1);
        if (plain.isEmpty()) return 0;
        const QStringList lines = plain.split('\n');
        const int first = from.row();
        const int replaced = std::clamp(indications() - first, 0, static_cast<int>(lines.size()));
        std::vector<Row> changed;
        int left = 0;
        int added = 0;
        for (int i = 0; i < lines.size(); ++i) {
            Row row = i < replaced ? *(rows().begin() + first + i) : freshRow(added++);
            const QStringList cells = lines[i].split('\t');
            for (int c = 0; c < cells.size(); ++c) {
                const int column = from.column() + c;
                if (column < kCount) {
                    set(row, column, cells[c]);
                } else if (!cells[c].trimmed().isEmpty()) {
                    ++left;
                }
            }
            changed.push_back(std::move(row));
        }
        editor_->replaceRows(examination_, first, replaced, std::move(changed),
                             lines.size() == 1 ? RowModel::tr("row pasted")
                                               : RowModel::tr("%1 rows pasted").arg(lines.size()));
        return left;
    }

protected:
    [[nodiscard]] virtual const std::vector<Row>& rows() const = 0;
    /// A row with nothing typed: the `ahead`-th after those that are there.
    [[nodiscard]] virtual Row freshRow(int ahead = 0) const {
        int highest = 0;
        for (const auto& row : rows()) {
            bool whole = false;
            const int number = qt(row.id).toInt(&whole);
            if (whole) highest = std::max(highest, number);
        }
        Row fresh;
        fresh.id = std::to_string(highest + 1 + ahead);
        fresh.unit = unit_;
        return fresh;
    }

    [[nodiscard]] ColumnFacts facts(int column) const override {
        return {columnAt(column).of, columnAt(column).digits, Columns<Row>::name(column)};
    }
    [[nodiscard]] QString title(int column) const override {
        return columnTitle<Row>(column, unit_);
    }
    [[nodiscard]] QString help(int column) const override { return Columns<Row>::help(column); }
    [[nodiscard]] std::optional<int> columnFor(const std::string& field) const override {
        return columnOf<Row>(field);
    }
    [[nodiscard]] std::string typed(int row, int column) const override {
        return rows()[static_cast<std::size_t>(row)].*columnAt(column).text;
    }
    [[nodiscard]] model::LengthUnit unitOf(int row) const override {
        return rows()[static_cast<std::size_t>(row)].unit;
    }
    [[nodiscard]] bool blank(int row) const override {
        return model::isBlank(rows()[static_cast<std::size_t>(row)]);
    }
    [[nodiscard]] QString nextId() const override { return qt(freshRow().id); }

private:
    static inline const int kCount = static_cast<int>(Columns<Row>::all().size());
    static const TypedColumn<Row>& columnAt(int column) {
        return Columns<Row>::all()[static_cast<std::size_t>(column)];
    }

    static void set(Row& row, int column, const QString& text) {
        row.*columnAt(column).text = columnAt(column).of == CellOf::Word
                                         ? wordTyped(Columns<Row>::words(column), text)
                                         : text.trimmed().toStdString();
    }
};

}  // namespace app
