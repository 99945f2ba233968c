// SPDX-License-Identifier: Apache-2.0
// One line per check: rule, class, measured, limit, the share of the limit that is used, grade.
// What fails stands first, then what could not be made, then what is nearest to its limit.
#pragma once

#include <QAbstractListModel>
#include <QListView>
#include <QStyledItemDelegate>
#include <optional>
#include <vector>

#include "judge/verdict.h"

namespace app {

class CheckModel : public QAbstractListModel {
    Q_OBJECT

public:
    using QAbstractListModel::QAbstractListModel;

    void setChecks(std::vector<model::Check> checks);
    [[nodiscard]] const model::Check* check(const QModelIndex& index) const;
    /// Where a check of the same rule, key and class stands; 0 where there is none.
    [[nodiscard]] int indexLike(const model::Check& other) const;

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;

private:
    std::vector<model::Check> checks_;
};

/// The frame's tag on the surface and the tool tip's first line.
QString checkTitle(const model::Check& check);

/// "counted: 3, 4, A1", cut after forty; empty where nothing was.
QString membersText(const model::Check& check);

class CheckList : public QListView {
    Q_OBJECT

public:
    explicit CheckList(QWidget* parent = nullptr);

    /// Shows checks; the selection stays on the same rule where it was chosen by hand, else it
    /// goes to the first.
    void setChecks(std::vector<model::Check> checks);
    [[nodiscard]] const model::Check* current() const;
    [[nodiscard]] const CheckModel& checks() const { return model_; }

signals:
    void checkSelected();

protected:
    void currentChanged(const QModelIndex& current, const QModelIndex& previous) override;
    void mousePressEvent(QMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    CheckModel model_;
    bool chosen_ = false;
    bool filling_ = false;
};

}  // namespace app
