// SPDX-License-Identifier: Apache-2.0
#include "looks/marked_lines.h"

#include <QPainter>

namespace app {
namespace {

constexpr int kKeyRole = MarkedLines::kFirstFreeRole;

}  // namespace

MarkedLines::MarkedLines(int details, QObject* parent)
    : QStyledItemDelegate(parent), details_(details) {}

QSize MarkedLines::sizeHint(const QStyleOptionViewItem& option, const QModelIndex&) const {
    return {160, (1 + details_) * (option.fontMetrics.height() + 2) + 10};
}

void MarkedLines::paint(QPainter* painter, const QStyleOptionViewItem& option,
                        const QModelIndex& index) const {
    painter->save();
    const QPalette& palette = option.palette;
    const QRectF cell = option.rect;
    if (option.state & QStyle::State_Selected) {
        QColor ground = palette.color(QPalette::Highlight);
        ground.setAlphaF(.16F);
        painter->fillRect(cell, ground);
        painter->fillRect(QRectF(cell.left(), cell.top(), 4, cell.height()),
                          palette.color(QPalette::Highlight));
    }
    if (option.state & QStyle::State_HasFocus) {
        painter->setPen(palette.color(QPalette::Highlight));
        painter->drawRect(cell.adjusted(.5, .5, -.5, -.5));
    }
    const double line = option.fontMetrics.height();
    const auto mark = static_cast<Mark>(index.data(kMarkRole).toInt());
    const QColor paper = palette.color(QPalette::Base);
    paintMark(*painter, QRectF(cell.left() + 10, cell.top() + 6, line, line), mark, paper);
    QRectF row(cell.left() + line + 20, cell.top() + 6, cell.width() - line - 28, line);
    const QString word = index.data(kWordRole).toString();
    const double wordWidth = option.fontMetrics.horizontalAdvance(word);
    QFont strong = option.font;
    strong.setBold(true);
    painter->setFont(strong);
    painter->setPen(palette.color(QPalette::Text));
    const int titleWidth = static_cast<int>(row.width() - wordWidth - 8);
    painter->drawText(row, Qt::AlignLeft | Qt::AlignVCenter,
                      QFontMetrics(strong).elidedText(index.data(Qt::DisplayRole).toString(),
                                                      Qt::ElideRight, titleWidth));
    painter->setFont(option.font);
    const bool muted = mark == Mark::NotBegun || index.data(kMutedRole).toBool();
    painter->setPen(muted ? palette.color(QPalette::PlaceholderText) : colourOf(mark, paper));
    painter->drawText(row, Qt::AlignRight | Qt::AlignVCenter, word);
    painter->setPen(palette.color(QPalette::PlaceholderText));
    for (const QString& detail : index.data(kDetailRole).toStringList()) {
        row.translate(0, line + 2);
        painter->drawText(
            row, Qt::AlignLeft | Qt::AlignVCenter,
            option.fontMetrics.elidedText(detail, Qt::ElideRight, static_cast<int>(row.width())));
    }
    painter->restore();
}

MarkedList::MarkedList(int details, QWidget* parent) : QListView(parent) {
    setModel(&model_);
    setItemDelegate(new MarkedLines(details, this));
    setEditTriggers(NoEditTriggers);
    setUniformItemSizes(true);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setFrameShape(NoFrame);
    setResizeMode(Adjust);
}

void MarkedList::setEntries(const std::vector<MarkedEntry>& entries) {
    const QVariant chosen = currentKey();
    quiet_ = true;
    model_.clear();
    append(entries);
    quiet_ = false;
    if (chosen.isValid()) choose(chosen);
    if (currentKey() != chosen) emit keyChosen(currentKey());
}

void MarkedList::append(const std::vector<MarkedEntry>& entries) {
    for (const auto& entry : entries) {
        auto* item = new QStandardItem(entry.title);
        item->setData(static_cast<int>(entry.mark), MarkedLines::kMarkRole);
        item->setData(entry.word, MarkedLines::kWordRole);
        item->setData(entry.details, MarkedLines::kDetailRole);
        item->setData(entry.muted, MarkedLines::kMutedRole);
        item->setData(entry.key, kKeyRole);
        const QStringList all = QStringList{entry.title, entry.word} + entry.details;
        item->setAccessibleText(all.join(", "));
        item->setToolTip(entry.details.join('\n'));
        model_.appendRow(item);
    }
}

QVariant MarkedList::currentKey() const {
    return currentIndex().data(kKeyRole);
}

void MarkedList::choose(const QVariant& key) {
    for (int row = 0; row < model_.rowCount(); ++row) {
        if (model_.index(row, 0).data(kKeyRole) == key) {
            setCurrentIndex(model_.index(row, 0));
            return;
        }
    }
}

void MarkedList::currentChanged(const QModelIndex& current, const QModelIndex& previous) {
    QListView::currentChanged(current, previous);
    if (!quiet_) emit keyChosen(currentKey());
}

}  // namespace app
