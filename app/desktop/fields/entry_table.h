// SPDX-License-Identifier: Apache-2.0
// A table of entries typed by keyboard alone: Enter goes to the next cell, Ctrl+Enter to the next
// row, n puts the present time into a cell that takes a time, Ctrl+Delete takes rows out.
#pragma once

#include <QTableView>

#include "fields/entry_rows.h"

namespace app {

class EntryTable : public QTableView {
    Q_OBJECT

public:
    explicit EntryTable(EntryRows& model, QWidget* parent = nullptr);
    /// Enters what stands in an open cell.
    void finishEditing();
    void deleteSelectedRows();
    /// Columns at least this wide, in characters, by key.
    void setWidths(const std::map<std::string, int>& characters);

protected:
    void closeEditor(QWidget* editor, QAbstractItemDelegate::EndEditHint hint) override;
    void keyPressEvent(QKeyEvent* event) override;
    void changeEvent(QEvent* event) override;

private:
    void moveOn(bool nextRow);
    void applyWidths();

    EntryRows& entries_;
    std::map<std::string, int> characters_;
};

}  // namespace app
