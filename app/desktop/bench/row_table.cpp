// SPDX-License-Identifier: Apache-2.0
#include "bench/row_table.h"

#include <QApplication>
#include <QClipboard>
#include <QHeaderView>
#include <QKeyEvent>
#include <algorithm>
#include <set>

#include "bench/cell_delegate.h"
#include "bench/row_model.h"

namespace app {

RowTable::RowTable(RowModel& model, QWidget* parent) : QTableView(parent), rows_(model) {
    setModel(&model);
    setItemDelegate(new CellDelegate(this));
    setEditTriggers(AnyKeyPressed | DoubleClicked | EditKeyPressed);
    setSelectionMode(ContiguousSelection);
    setTabKeyNavigation(true);
    setWordWrap(false);
    setAlternatingRowColors(false);
    setHorizontalScrollMode(ScrollPerPixel);
    setAccessibleName(tr("Indications"));
    verticalHeader()->setSectionResizeMode(QHeaderView::Fixed);
    verticalHeader()->hide();
    horizontalHeader()->setStretchLastSection(true);
    horizontalHeader()->setHighlightSections(false);
    applyWidths();
    connect(&model, &QAbstractItemModel::modelReset, this, [this] { applyWidths(); });
}

void RowTable::applyWidths() {
    const QFontMetrics metrics(font());
    const int digit = metrics.horizontalAdvance('0');
    for (int i = 0; i < rows_.columnCount(); ++i) setColumnWidth(i, rows_.digits(i) * digit);
    const int row = metrics.height() + 10;
    verticalHeader()->setDefaultSectionSize(row);
    setMinimumHeight(4 * row);
}

void RowTable::changeEvent(QEvent* event) {
    QTableView::changeEvent(event);
    if (event->type() == QEvent::FontChange) applyWidths();
}

void RowTable::goTo(int row, int column) {
    const QModelIndex cell = rows_.index(row, column);
    setCurrentIndex(cell);
    if (column == rows_.firstCell()) scrollTo(rows_.index(row, 0));  // the id with it
    scrollTo(cell);
}

void RowTable::goToNewRow() {
    goTo(rows_.indications(), rows_.firstCell());
}

void RowTable::finishEditing() {
    if (state() != EditingState) return;
    if (QWidget* editor = QApplication::focusWidget(); editor && isAncestorOf(editor)) {
        commitData(editor);
        QTableView::closeEditor(editor, QAbstractItemDelegate::NoHint);
    }
}

void RowTable::moveOn() {
    const QModelIndex current = currentIndex();
    if (!current.isValid()) return;
    if (const auto next = rows_.cellAfter(current.row(), current.column())) {
        goTo(current.row(), *next);
    } else {
        goTo(current.row() + 1, rows_.firstCell());
    }
}

void RowTable::closeEditor(QWidget* editor, QAbstractItemDelegate::EndEditHint hint) {
    // The base class would go on editing in the next cell; here typing does that by itself.
    QTableView::closeEditor(editor, QAbstractItemDelegate::NoHint);
    switch (hint) {
        case QAbstractItemDelegate::SubmitModelCache:
            if (QApplication::keyboardModifiers() & Qt::ControlModifier) {
                goTo(std::min(currentIndex().row() + 1, rows_.indications()), rows_.firstCell());
            } else {
                moveOn();
            }
            break;
        case QAbstractItemDelegate::EditNextItem:
            setCurrentIndex(moveCursor(MoveNext, Qt::NoModifier));
            break;
        case QAbstractItemDelegate::EditPreviousItem:
            setCurrentIndex(moveCursor(MovePrevious, Qt::NoModifier));
            break;
        default:
            break;
    }
}

void RowTable::keyPressEvent(QKeyEvent* event) {
    const bool enter = event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter;
    if (enter && state() != EditingState) {
        if (event->modifiers() & Qt::ControlModifier) {
            goTo(std::min(currentIndex().row() + 1, rows_.indications()), rows_.firstCell());
        } else {
            moveOn();
        }
        return;
    }
    if (event->matches(QKeySequence::Copy)) return copySelection();
    if (event->matches(QKeySequence::Paste)) return pasteClipboard();
    if (event->key() == Qt::Key_Delete && event->modifiers() == Qt::NoModifier) {
        rows_.clearCells(selectedIndexes());
        return;
    }
    if (event->key() == Qt::Key_D && event->modifiers() == Qt::ControlModifier) {
        rows_.repeatAbove(currentIndex());
        return;
    }
    QTableView::keyPressEvent(event);
}

void RowTable::currentChanged(const QModelIndex& current, const QModelIndex& previous) {
    QTableView::currentChanged(current, previous);
    emit currentRowChanged(current.isValid() ? current.row() : -1);
}

void RowTable::deleteSelectedRows() {
    const QModelIndexList cells = selectedIndexes();
    if (cells.isEmpty()) return;
    int first = cells.front().row();
    int last = first;
    for (const auto& cell : cells) {
        first = std::min(first, cell.row());
        last = std::max(last, cell.row());
    }
    const int column = currentIndex().column();
    rows_.deleteRows(first, last - first + 1);
    goTo(std::min(first, rows_.indications()), std::max(column, 0));
}

void RowTable::copySelection() const {
    QApplication::clipboard()->setText(rows_.copy(selectedIndexes()));
}

void RowTable::pasteClipboard() {
    const int left = rows_.paste(currentIndex(), QApplication::clipboard()->text());
    if (left > 0) {
        emit message(tr("Pasted cells beyond the last column were left out: %1").arg(left));
    }
}

void RowTable::goToNextProblem() {
    const auto problems = rows_.problems();
    if (problems.empty()) return;
    const auto here = std::pair(currentIndex().row(), currentIndex().column());
    const auto next = std::find_if(problems.begin(), problems.end(), [&](const auto& problem) {
        return std::pair(problem.row, problem.column) > here;
    });
    const auto& target = next == problems.end() ? problems.front() : *next;
    goTo(target.row, target.column);
    setFocus();
}

}  // namespace app
