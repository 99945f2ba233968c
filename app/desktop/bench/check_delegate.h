// SPDX-License-Identifier: Apache-2.0
// Draws a check: mark, rule and class, measured and limit; below them a bar of how much of the
// limit is used, with the number, the level, and the grade of the limit's source.
#pragma once

#include <QStyledItemDelegate>

namespace app {

class CheckDelegate : public QStyledItemDelegate {
    Q_OBJECT

public:
    using QStyledItemDelegate::QStyledItemDelegate;

    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override;
    [[nodiscard]] QSize sizeHint(const QStyleOptionViewItem& option,
                                 const QModelIndex& index) const override;
};

}  // namespace app
