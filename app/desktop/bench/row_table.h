// SPDX-License-Identifier: Apache-2.0
// The table in which an inspector types indications by keyboard alone. Enter goes along the cells
// that a row needs, then to the next row; Ctrl+Enter goes there at once.
#pragma once

#include <QTableView>

#include "bench/columns.h"

namespace app {

class RowModel;

class RowTable : public QTableView {
    Q_OBJECT

public:
    explicit RowTable(RowModel& model, QWidget* parent = nullptr);

    /// Goes to the first cell of the row for the next indication.
    void goToNewRow();
    void goTo(int row, int column);
    template <class ColumnEnum>
    void goTo(int row, ColumnEnum column) {
        goTo(row, at(column));
    }
    /// Takes over what stands in an open cell, as before saving or closing.
    void finishEditing();

public slots:
    void deleteSelectedRows();
    void copySelection() const;
    void pasteClipboard();
    /// The next cell that cannot be read, from the current one on and round.
    void goToNextProblem();

signals:
    void currentRowChanged(int row);
    void message(const QString& text);

protected:
    void changeEvent(QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void closeEditor(QWidget* editor, QAbstractItemDelegate::EndEditHint hint) override;
    void currentChanged(const QModelIndex& current, const QModelIndex& previous) override;

private:
    void moveOn();
    void applyWidths();

    RowModel& rows_;
};

}  // namespace app
