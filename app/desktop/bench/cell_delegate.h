// SPDX-License-Identifier: Apache-2.0
// How a cell of the table of indications looks and is typed into. A cell that cannot be read has a
// sign and a broken underline, a missing one a sign, beside any colour.
#pragma once

#include <QStyledItemDelegate>

namespace app {

class CellDelegate : public QStyledItemDelegate {
    Q_OBJECT

public:
    using QStyledItemDelegate::QStyledItemDelegate;

    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override;
    QWidget* createEditor(QWidget* parent, const QStyleOptionViewItem& option,
                          const QModelIndex& index) const override;
    void setEditorData(QWidget* editor, const QModelIndex& index) const override;
    void setModelData(QWidget* editor, QAbstractItemModel* model,
                      const QModelIndex& index) const override;
};

}  // namespace app
