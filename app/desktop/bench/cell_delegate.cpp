// SPDX-License-Identifier: Apache-2.0
#include "bench/cell_delegate.h"

#include <QCompleter>
#include <QLabel>
#include <QLineEdit>
#include <QPainter>
#include <QStringListModel>

#include "bench/row_model.h"
#include "looks/mark.h"

namespace app {
namespace {

/// A line with the unit that it is read in standing behind the text.
class CellEditor : public QLineEdit {
public:
    CellEditor(QWidget* parent, const QString& unit) : QLineEdit(parent) {
        setFrame(false);
        connect(this, &QLineEdit::textEdited, this, [this] { typedIn_ = true; });
        if (unit.isEmpty()) return;
        auto* label = new QLabel(unit, this);
        label->setAttribute(Qt::WA_TransparentForMouseEvents);
        label->setForegroundRole(QPalette::PlaceholderText);
        unit_ = label;
        setTextMargins(0, 0, label->sizeHint().width() + 4, 0);
    }

    /// Somebody has typed; isModified() forgets that when a word is completed.
    [[nodiscard]] bool typedIn() const { return typedIn_; }

protected:
    void resizeEvent(QResizeEvent* event) override {
        QLineEdit::resizeEvent(event);
        if (!unit_) return;
        const QSize size = unit_->sizeHint();
        unit_->setGeometry(width() - size.width() - 3, 0, size.width(), height());
    }

private:
    QLabel* unit_ = nullptr;
    bool typedIn_ = false;
};

}  // namespace

void CellDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option,
                         const QModelIndex& index) const {
    QStyleOptionViewItem shown = option;
    initStyleOption(&shown, index);
    const auto state = static_cast<CellState>(index.data(RowModel::kStateRole).toInt());
    const bool selected = shown.state & QStyle::State_Selected;
    const QColor ground = shown.palette.color(selected ? QPalette::Highlight : QPalette::Base);
    if (index.data(RowModel::kSuggestedRole).toBool() && !selected) {
        shown.palette.setColor(QPalette::Text, shown.palette.color(QPalette::PlaceholderText));
        shown.font.setItalic(true);
    }
    QStyledItemDelegate::paint(painter, shown, index);
    if (state == CellState::Good) return;
    const QColor colour =
        selected ? shown.palette.color(QPalette::HighlightedText)
                 : colourOf(state == CellState::Wrong ? Mark::Fails : Mark::Open, ground);
    painter->save();
    painter->setRenderHint(QPainter::Antialiasing);
    const QRectF cell = shown.rect;
    if (state == CellState::Wrong) {
        painter->setPen(QPen(colour, 2, Qt::DashLine));
        painter->drawLine(cell.bottomLeft() + QPointF(3, -2), cell.bottomRight() + QPointF(-3, -2));
        const double side = std::min(14.0, cell.height() - 6);
        paintMark(*painter, QRectF(cell.left() + 3, cell.center().y() - side / 2, side, side),
                  Mark::Fails, ground);
    } else {
        painter->setPen(colour);
        painter->drawText(cell.adjusted(4, 0, -4, 0), Qt::AlignCenter, tr("…"));
    }
    painter->restore();
}

QWidget* CellDelegate::createEditor(QWidget* parent, const QStyleOptionViewItem&,
                                    const QModelIndex& index) const {
    auto* editor = new CellEditor(parent, index.data(RowModel::kUnitRole).toString());
    editor->setAlignment(
        Qt::Alignment(index.data(Qt::TextAlignmentRole).toInt() & Qt::AlignHorizontal_Mask));
    editor->setAccessibleName(
        index.model()->headerData(index.column(), Qt::Horizontal, Qt::DisplayRole).toString());
    const auto* rows = dynamic_cast<const RowModel*>(index.model());
    const Words words = rows ? rows->words(index.column()) : Words();
    if (!words.empty()) {
        QStringList shown;
        for (const auto& word : words) shown << word.second;
        auto* completer = new QCompleter(shown, editor);
        completer->setCaseSensitivity(Qt::CaseInsensitive);
        completer->setCompletionMode(QCompleter::InlineCompletion);
        editor->setCompleter(completer);
    }
    return editor;
}

void CellDelegate::setEditorData(QWidget* editor, const QModelIndex& index) const {
    auto* line = dynamic_cast<CellEditor*>(editor);
    // A verdict that comes while somebody types refreshes the cells; what is being typed stays.
    if (!line || line->typedIn()) return;
    line->setText(index.data(Qt::EditRole).toString());
    line->selectAll();
}

void CellDelegate::setModelData(QWidget* editor, QAbstractItemModel* model,
                                const QModelIndex& index) const {
    const auto* line = dynamic_cast<CellEditor*>(editor);
    if (line && line->typedIn()) model->setData(index, line->text(), Qt::EditRole);
}

}  // namespace app
