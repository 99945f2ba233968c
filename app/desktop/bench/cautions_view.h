// SPDX-License-Identifier: Apache-2.0
// The cautions of a method beside the method: open when it is met first, one line afterwards.
#pragma once

#include <QFrame>
#include <set>

#include "limits/limit_table.h"

class QLabel;
class QToolButton;

namespace app {

class CautionsView : public QFrame {
    Q_OBJECT

public:
    explicit CautionsView(QWidget* parent = nullptr);
    void show(model::Method method);
    [[nodiscard]] bool isOpen() const { return open_; }
    void setOpen(bool open);

private:
    void refresh();

    model::Method method_ = model::Method::Magnetic;
    std::set<model::Method> met_;
    bool open_ = false;
    QToolButton* head_;
    QWidget* body_;
    QLabel* left_;
    QLabel* right_;
};

}  // namespace app
