// SPDX-License-Identifier: Apache-2.0
#include "looks/mark_label.h"

#include <QPainter>

namespace app {

MarkLabel::MarkLabel(QWidget* parent) : QWidget(parent) {
    setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
}

void MarkLabel::setMark(Mark mark) {
    mark_ = mark;
    update();
}

void MarkLabel::setSide(int pixels) {
    side_ = pixels;
    updateGeometry();
}

void MarkLabel::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    paintMark(painter, QRectF(0, 0, side_, side_), mark_, palette().color(QPalette::Window));
}

}  // namespace app
