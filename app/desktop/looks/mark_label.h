// SPDX-License-Identifier: Apache-2.0
// A mark as a widget. The word stands beside it, so it is silent to a screen reader.
#pragma once

#include <QWidget>

#include "looks/mark.h"

namespace app {

class MarkLabel : public QWidget {
    Q_OBJECT

public:
    explicit MarkLabel(QWidget* parent = nullptr);
    void setMark(Mark mark);
    void setSide(int pixels);
    [[nodiscard]] Mark mark() const { return mark_; }
    [[nodiscard]] QSize sizeHint() const override { return {side_, side_}; }

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    Mark mark_ = Mark::NotBegun;
    int side_ = 18;
};

}  // namespace app
