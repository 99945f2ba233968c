// SPDX-License-Identifier: Apache-2.0
#include "fields/entry_table.h"

#include <QApplication>
#include <QComboBox>
#include <QHeaderView>
#include <QKeyEvent>
#include <QLineEdit>
#include <QStyledItemDelegate>
#include <algorithm>

#include "fields/field_words.h"
#include "fields/suggestions.h"
#include "looks/text.h"

namespace app {
namespace {

class EntryDelegate : public QStyledItemDelegate {
public:
    using QStyledItemDelegate::QStyledItemDelegate;

    QWidget* createEditor(QWidget* parent, const QStyleOptionViewItem&,
                          const QModelIndex& index) const override {
        const auto* model = static_cast<const EntryRows*>(index.model());
        const CellEntry how = model->howEntered(index);
        const QString name =
            model->headerData(index.column(), Qt::Horizontal, Qt::DisplayRole).toString();
        if (how.closed) {
            auto* combo = new QComboBox(parent);
            for (const auto& [word, text] : how.choices) combo->addItem(text, qt(word));
            combo->setAccessibleName(name);
            connect(combo, &QComboBox::activated, this, [this, combo] {
                auto* self = const_cast<EntryDelegate*>(this);
                emit self->commitData(combo);
                emit self->closeEditor(combo, SubmitModelCache);
            });
            return combo;
        }
        auto* line = new QLineEdit(parent);
        line->setFrame(false);
        line->setAccessibleName(name);
        suggest(*line, how.choices, how.kind == model::FieldKind::List, [] {});
        return line;
    }

    void setEditorData(QWidget* editor, const QModelIndex& index) const override {
        const QString text = index.data(Qt::EditRole).toString();
        if (auto* combo = qobject_cast<QComboBox*>(editor)) {
            combo->setCurrentIndex(std::max(0, combo->findData(text)));
        } else if (auto* line = qobject_cast<QLineEdit*>(editor); line && !line->isModified()) {
            line->setText(text);
            line->selectAll();
        }
    }

    void setModelData(QWidget* editor, QAbstractItemModel* model,
                      const QModelIndex& index) const override {
        const auto* combo = qobject_cast<QComboBox*>(editor);
        const QString text =
            combo ? combo->currentData().toString() : qobject_cast<QLineEdit*>(editor)->text();
        if (text != index.data(Qt::EditRole).toString()) model->setData(index, text, Qt::EditRole);
    }
};

}  // namespace

EntryTable::EntryTable(EntryRows& model, QWidget* parent) : QTableView(parent), entries_(model) {
    setModel(&model);
    setItemDelegate(new EntryDelegate(this));
    setEditTriggers(AnyKeyPressed | DoubleClicked | EditKeyPressed);
    setSelectionMode(ContiguousSelection);
    setTabKeyNavigation(false);  // out of the table by Tab, within it by Enter and arrows
    setWordWrap(false);
    setHorizontalScrollMode(ScrollPerPixel);
    verticalHeader()->setSectionResizeMode(QHeaderView::Fixed);
    horizontalHeader()->setHighlightSections(false);
    horizontalHeader()->setStretchLastSection(true);
    applyWidths();
}

void EntryTable::setWidths(const std::map<std::string, int>& characters) {
    characters_ = characters;
    applyWidths();
}

void EntryTable::applyWidths() {
    const QFontMetrics metrics(font());
    for (int i = 0; i < entries_.columnCount(); ++i) {
        const auto found = characters_.find(std::string(entries_.field(i).key));
        const int wanted =
            (found == characters_.end() ? 10 : found->second) * metrics.averageCharWidth();
        const QString title = entries_.headerData(i, Qt::Horizontal, Qt::DisplayRole).toString();
        setColumnWidth(i, std::max(wanted, metrics.horizontalAdvance(title) + 18));
    }
    verticalHeader()->setDefaultSectionSize(metrics.height() + 10);
    setMinimumHeight(5 * (metrics.height() + 10));
}

void EntryTable::changeEvent(QEvent* event) {
    QTableView::changeEvent(event);
    if (event->type() == QEvent::FontChange) applyWidths();
}

void EntryTable::finishEditing() {
    if (state() != EditingState) return;
    if (QWidget* editor = QApplication::focusWidget(); editor && isAncestorOf(editor)) {
        commitData(editor);
        QTableView::closeEditor(editor, QAbstractItemDelegate::NoHint);
    }
}

void EntryTable::deleteSelectedRows() {
    const QModelIndexList cells = selectedIndexes();
    if (cells.isEmpty()) return;
    const auto [first, last] = std::ranges::minmax(cells, {}, &QModelIndex::row);
    const int row = first.row();
    entries_.deleteRows(row, last.row() - row + 1);
    setCurrentIndex(entries_.index(std::min(row, entries_.rowCount() - 1), 0));
}

void EntryTable::moveOn(bool nextRow) {
    const QModelIndex here = currentIndex();
    if (!here.isValid()) return;
    const bool wraps = nextRow || here.column() + 1 >= entries_.columnCount();
    const QModelIndex next =
        wraps ? entries_.index(std::min(here.row() + 1, entries_.rowCount() - 1), 0)
              : entries_.index(here.row(), here.column() + 1);
    setCurrentIndex(next);
    scrollTo(next);
}

void EntryTable::closeEditor(QWidget* editor, QAbstractItemDelegate::EndEditHint hint) {
    QTableView::closeEditor(editor, QAbstractItemDelegate::NoHint);
    if (hint == QAbstractItemDelegate::SubmitModelCache) {
        moveOn(QApplication::keyboardModifiers() & Qt::ControlModifier);
    } else if (hint == QAbstractItemDelegate::EditNextItem) {
        moveOn(false);
    }
}

void EntryTable::keyPressEvent(QKeyEvent* event) {
    const int key = event->key();
    const bool control = event->modifiers() & Qt::ControlModifier;
    if (state() != EditingState && currentIndex().isValid()) {
        if (key == Qt::Key_Return || key == Qt::Key_Enter) return moveOn(control);
        if (key == Qt::Key_Delete && control) return deleteSelectedRows();
        if (key == Qt::Key_Delete) {
            for (const QModelIndex& cell : selectedIndexes()) {
                if (cell.row() < entries_.entries()) entries_.setData(cell, "", Qt::EditRole);
            }
            return;
        }
        if (key == Qt::Key_N && event->modifiers() == Qt::NoModifier) {
            const auto kind = entries_.howEntered(currentIndex()).kind;
            const bool moment = kind == model::FieldKind::Moment;
            if (moment || kind == model::FieldKind::Date) {
                entries_.setData(currentIndex(),
                                 moment ? momentShown(momentNow()) : qt(dateToday()), Qt::EditRole);
                return moveOn(false);
            }
        }
    }
    QTableView::keyPressEvent(event);
}

}  // namespace app
