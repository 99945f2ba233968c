// SPDX-License-Identifier: Apache-2.0
// Finding a casting by serial, heat or part.
#pragma once

#include <QWidget>
#include <vector>

#include "record/records.h"

class QLineEdit;
class QListView;
class QStandardItemModel;
class QSortFilterProxyModel;

namespace app {

class CastingsPanel : public QWidget {
    Q_OBJECT

public:
    explicit CastingsPanel(QWidget* parent = nullptr);

    void setCastings(const std::vector<model::Casting>& castings);
    /// Marks a casting as the one on the bench.
    void setCurrent(const QString& serial);
    [[nodiscard]] QLineEdit& searchField() { return *search_; }

signals:
    void castingChosen(const QString& serial);

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void choose(const QModelIndex& index);

    QLineEdit* search_;
    QListView* list_;
    QStandardItemModel* model_;
    QSortFilterProxyModel* filter_;
};

}  // namespace app
