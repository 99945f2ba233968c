// SPDX-License-Identifier: Apache-2.0
#include "bench/check_delegate.h"

#include <QCoreApplication>
#include <QPainter>
#include <algorithm>

#include "bench/check_list.h"
#include "limits/words.h"
#include "looks/mark.h"
#include "looks/text.h"

namespace app {
namespace {

constexpr double kBarShows = 1.5;  // the bar's length: one and a half times the limit

/// How much of the limit is used; a line stands at the limit, and what is above it is hatched.
void paintBar(QPainter& painter, const QRectF& bar, double share, const QColor& colour,
              const QColor& ink) {
    QColor trough = ink;
    trough.setAlphaF(.12F);
    const double limit = bar.width() / kBarShows;
    const double used = std::min(share, kBarShows) * limit;
    painter.setPen(Qt::NoPen);
    painter.setBrush(trough);
    painter.drawRect(bar);
    painter.setBrush(colour);
    painter.drawRect(QRectF(bar.left(), bar.top(), std::min(used, limit), bar.height()));
    if (used > limit) {
        painter.setBrush(QBrush(colour, Qt::Dense4Pattern));
        painter.drawRect(QRectF(bar.left() + limit, bar.top(), used - limit, bar.height()));
    }
    painter.setPen(QPen(ink, 1.5));
    painter.drawLine(QPointF(bar.left() + limit, bar.top() - 2),
                     QPointF(bar.left() + limit, bar.bottom() + 2));
}

/// Where there is no share to show: why not, or what was counted.
QString underText(const model::Check& check) {
    if (!check.reason.empty()) return qt(check.reason);
    return membersText(check);
}

}  // namespace

QSize CheckDelegate::sizeHint(const QStyleOptionViewItem& option, const QModelIndex&) const {
    return {200, 2 * option.fontMetrics.height() + 18};
}

void CheckDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option,
                          const QModelIndex& index) const {
    const auto* list = qobject_cast<const CheckModel*>(index.model());
    const auto* check = list ? list->check(index) : nullptr;
    if (!check) return;
    painter->save();
    painter->setRenderHint(QPainter::Antialiasing);
    const bool selected = option.state & QStyle::State_Selected;
    const QColor paper = option.palette.color(QPalette::Base);
    const QColor ink = option.palette.color(QPalette::Text);
    const QColor faint = option.palette.color(QPalette::PlaceholderText);
    const Mark mark = markOf(check->passes);
    const QColor colour = colourOf(mark, paper);
    const QRectF cell = QRectF(option.rect);
    if (selected) {
        QColor ground = option.palette.color(QPalette::Highlight);
        ground.setAlphaF(.16F);
        painter->fillRect(cell, ground);
        painter->fillRect(QRectF(cell.left(), cell.top(), 4, cell.height()),
                          option.palette.color(QPalette::Highlight));
    }
    if (option.state & QStyle::State_HasFocus) {
        painter->setPen(QPen(option.palette.color(QPalette::Highlight), 1));
        painter->setBrush(Qt::NoBrush);
        painter->drawRect(cell.adjusted(.5, .5, -.5, -.5));
    }
    const double line = option.fontMetrics.height();
    const double top = cell.top() + 6;
    const double left = cell.left() + 12;
    const double right = cell.right() - 10;
    paintMark(*painter, QRectF(left, top, line, line), mark, paper);

    const double textLeft = left + line + 8;
    QFont strong = option.font;
    strong.setBold(mark == Mark::Fails);
    const QFontMetricsF metrics(strong);
    const QString numbers = check->measured ? measuredAndLimit(*check)
                            : check->passes
                                ? (check->limit ? limitText(*check) : QString())
                                : QCoreApplication::translate("CheckDelegate", "could not be made");
    const double numbersWide = metrics.horizontalAdvance(numbers);
    painter->setFont(strong);
    painter->setPen(ink);
    const QRectF first(textLeft, top, right - textLeft, line);
    painter->drawText(first, Qt::AlignRight | Qt::AlignVCenter, numbers);
    painter->drawText(
        first, Qt::AlignLeft | Qt::AlignVCenter,
        metrics.elidedText(checkTitle(*check), Qt::ElideRight, first.width() - numbersWide - 10));

    painter->setFont(option.font);
    const double second = top + line + 4;
    const QString grade = QString::fromUtf8(model::word(check->source.grade).data());
    const QString origin = check->level.empty() ? grade : qt(check->level) + " · " + grade;
    const double originWide = option.fontMetrics.horizontalAdvance("AM 01 · R2") + 8;
    painter->setPen(faint);
    painter->drawText(QRectF(right - originWide, second, originWide, line),
                      Qt::AlignRight | Qt::AlignVCenter, origin);
    const auto share = shareUsed(*check);
    if (share) {
        const double percentWide = option.fontMetrics.horizontalAdvance("over 100 %");
        const QRectF bar(textLeft, second + line / 2 - 4,
                         right - originWide - percentWide - 8 - textLeft, 8);
        paintBar(*painter, bar, *share, colour, ink);
        painter->setPen(ink);
        painter->drawText(QRectF(bar.right() + 2, second, percentWide, line),
                          Qt::AlignRight | Qt::AlignVCenter, shareText(*check));
    } else {
        const QRectF room(textLeft, second, right - originWide - textLeft - 8, line);
        painter->setPen(faint);
        painter->drawText(room, Qt::AlignLeft | Qt::AlignVCenter,
                          option.fontMetrics.elidedText(underText(*check), Qt::ElideRight,
                                                        static_cast<int>(room.width())));
    }
    painter->restore();
}

}  // namespace app
