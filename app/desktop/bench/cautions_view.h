// SPDX-License-Identifier: Apache-2.0
// The cautions of a method beside the method: open when it is met first, one line afterwards.
#pragma once

#include <set>

#include <QFrame>

#include "limits/limit_table.h"

class QLabel;
class QToolButton;

namespace app {

class CautionsView : public QFrame {
    Q_OBJECT

public:
    explicit CautionsView(QWidget* parent = nullptr);
    void show(model::Method method);
    [[nodiscard]] bool isOpen() const;
    void setOpen(bool open);

private:
    void refresh();

    model::Method method_ = model::Method::Magnetic;
    std::set<model::Method> met_;
    QToolButton* head_;
    QLabel* text_;
};

}  // namespace app
