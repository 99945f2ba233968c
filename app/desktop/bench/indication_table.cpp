// SPDX-License-Identifier: Apache-2.0
#include "bench/indication_table.h"

#include <QApplication>
#include <QClipboard>
#include <QHeaderView>
#include <QKeyEvent>
#include <algorithm>
#include <set>

#include "bench/cell_delegate.h"
#include "bench/indication_model.h"

namespace app {

IndicationTable::IndicationTable(IndicationModel& model, QWidget* parent)
    : QTableView(parent), rows_(model) {
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

void IndicationTable::applyWidths() {
    const QFontMetrics metrics(font());
    const int digit = metrics.horizontalAdvance('0');
    constexpr int kDigits[kColumns] = {6, 11, 11, 12, 11, 9, 13, 17, 12, 14, 15, 20};
    for (int i = 0; i < kColumns; ++i) setColumnWidth(i, kDigits[i] * digit);
    const int row = metrics.height() + 10;
    verticalHeader()->setDefaultSectionSize(row);
    setMinimumHeight(6 * row);
}

void IndicationTable::changeEvent(QEvent* event) {
    QTableView::changeEvent(event);
    if (event->type() == QEvent::FontChange) applyWidths();
}

void IndicationTable::goTo(int row, Column column) {
    const QModelIndex cell = rows_.index(row, static_cast<int>(column));
    setCurrentIndex(cell);
    scrollTo(cell);
}

void IndicationTable::goToNewRow() {
    goTo(rows_.indications(), Column::X);
}

void IndicationTable::finishEditing() {
    if (state() != EditingState) return;
    if (QWidget* editor = QApplication::focusWidget(); editor && isAncestorOf(editor)) {
        commitData(editor);
        QTableView::closeEditor(editor, QAbstractItemDelegate::NoHint);
    }
}

void IndicationTable::moveOn() {
    const QModelIndex current = currentIndex();
    if (!current.isValid()) return;
    const int row = current.row();
    const bool hairline =
        rows_.data(rows_.index(row, static_cast<int>(Column::Width)), Qt::EditRole)
            .toString()
            .isEmpty();
    const Column at = nthColumn(current.column());
    const bool endOfRun = hairline ? at == Column::Stated : at == Column::Kind;
    if (row >= rows_.indications()) {  // nothing was typed: stay in the row, it is still empty
        goTo(row, at < Column::Kind ? nthColumn(current.column() + 1) : Column::X);
    } else if (endOfRun || at == Column::Reason) {
        goTo(row + 1, Column::X);
    } else {
        goTo(row, nthColumn(current.column() + 1));
    }
}

void IndicationTable::closeEditor(QWidget* editor, QAbstractItemDelegate::EndEditHint hint) {
    // The base class would go on editing in the next cell; here typing does that by itself.
    QTableView::closeEditor(editor, QAbstractItemDelegate::NoHint);
    switch (hint) {
        case QAbstractItemDelegate::SubmitModelCache:
            if (QApplication::keyboardModifiers() & Qt::ControlModifier) {
                goTo(std::min(currentIndex().row() + 1, rows_.indications()), Column::X);
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

void IndicationTable::keyPressEvent(QKeyEvent* event) {
    const bool enter = event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter;
    if (enter && state() != EditingState) {
        if (event->modifiers() & Qt::ControlModifier) {
            goTo(std::min(currentIndex().row() + 1, rows_.indications()), Column::X);
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

void IndicationTable::currentChanged(const QModelIndex& current, const QModelIndex& previous) {
    QTableView::currentChanged(current, previous);
    emit currentRowChanged(current.isValid() ? current.row() : -1);
}

void IndicationTable::deleteSelectedRows() {
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
    goTo(std::min(first, rows_.indications()), nthColumn(std::max(column, 0)));
}

void IndicationTable::copySelection() const {
    QApplication::clipboard()->setText(rows_.copy(selectedIndexes()));
}

void IndicationTable::pasteClipboard() {
    const int left = rows_.paste(currentIndex(), QApplication::clipboard()->text());
    if (left > 0) {
        emit message(tr("Pasted cells beyond the last column were left out: %1").arg(left));
    }
}

void IndicationTable::goToNextProblem() {
    const auto problems = rows_.problems();
    if (problems.empty()) return;
    const auto here = std::pair(currentIndex().row(), nthColumn(currentIndex().column()));
    const auto next = std::find_if(problems.begin(), problems.end(), [&](const auto& problem) {
        return std::pair(problem.row, problem.column) > here;
    });
    const auto& target = next == problems.end() ? problems.front() : *next;
    goTo(target.row, target.column);
    setFocus();
}

}  // namespace app
