// SPDX-License-Identifier: Apache-2.0
#include "bench/surface_view.h"

#include <QApplication>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QWheelEvent>
#include <cmath>

namespace app {

SurfaceView::SurfaceView(QWidget* parent) : QWidget(parent) {
    setFocusPolicy(Qt::StrongFocus);
    setAccessibleName(tr("Developed surface of the zone"));
    setAccessibleDescription(tr(
        "Drawing to scale. Plus and minus zoom, arrow keys move, F fits the zone, D the deciding "
        "frame."));
    setToolTip(
        tr("Wheel or + and −: zoom · drag or arrow keys: move · F: whole zone · D: deciding frame "
           "· click: "
           "pick"));
}

SurfaceStyle SurfaceView::style_() const {
    SurfaceStyle style;
    style.palette = palette();
    style.area = rect();
    style.ruler = QFontMetricsF(font()).height() + 12;
    style.unit = unit_;
    style.currentRow = currentRow_;
    style.focused = hasFocus();
    return style;
}

void SurfaceView::show(SurfacePicture picture, bool fitIt) {
    picture_ = std::move(picture);
    setAccessibleDescription(tr("Zone %1 drawn to scale, indications: %2. Plus and minus zoom, "
                                "arrow keys move, F fits the zone, D the deciding frame.")
                                 .arg(picture_.zone.name)
                                 .arg(picture_.indications.size()));
    if (fitIt) fit();
    update();
}

void SurfaceView::setCheck(std::optional<ShownCheck> check) {
    check_ = std::move(check);
    if (fitted_ && check_ && check_->frame) {
        const QRectF sheet = style_().sheet();
        const QRectF frame = framePath(*check_->frame).boundingRect();
        const bool seen = sheet.contains(scale_.toPixels(frame.left(), frame.top())) &&
                          sheet.contains(scale_.toPixels(frame.right(), frame.bottom()));
        if (!seen) fit();
    }
    update();
}

void SurfaceView::setCurrentRow(int row) {
    currentRow_ = row;
    update();
}

void SurfaceView::setUnit(model::LengthUnit unit) {
    unit_ = unit;
    update();
}

void SurfaceView::fit() {
    fitted_ = true;
    const QRectF sheet = style_().sheet().adjusted(36, 28, -28, -36);
    QRectF shown(0, 0, picture_.zone.width, picture_.zone.height);
    if (check_ && check_->frame) shown |= framePath(*check_->frame).boundingRect();
    scale_ = fitted(shown, sheet);
    update();
}

void SurfaceView::fitFrame() {
    if (!check_ || !check_->frame) return;
    fitted_ = false;
    scale_ = fitted(framePath(*check_->frame).boundingRect(),
                    style_().sheet().adjusted(36, 40, -28, -36));
    update();
}

void SurfaceView::zoomAbout(QPointF still, double factor) {
    fitted_ = false;
    scale_ = scale_.zoomed(factor, still);
    update();
}

void SurfaceView::moveBy(QPointF pixels) {
    fitted_ = false;
    scale_.datum += pixels;
    update();
}

void SurfaceView::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    paintSurface(painter, picture_, scale_, style_(), check_);
    if (hasFocus()) {
        painter.setBrush(Qt::NoBrush);
        painter.setPen(QPen(palette().color(QPalette::Highlight), 2));
        painter.drawRect(QRectF(rect()).adjusted(1, 1, -1, -1));
    }
}

void SurfaceView::resizeEvent(QResizeEvent*) {
    if (fitted_) fit();
}

void SurfaceView::wheelEvent(QWheelEvent* event) {
    zoomAbout(event->position(), std::pow(1.0015, event->angleDelta().y()));
    event->accept();
}

void SurfaceView::mousePressEvent(QMouseEvent* event) {
    dragFrom_ = event->position();
    dragged_ = false;
}

void SurfaceView::mouseMoveEvent(QMouseEvent* event) {
    if (!dragFrom_) return;
    const QPointF moved = event->position() - *dragFrom_;
    if (!dragged_ && moved.manhattanLength() < QApplication::startDragDistance()) return;
    dragged_ = true;
    dragFrom_ = event->position();
    moveBy(moved);
}

void SurfaceView::mouseReleaseEvent(QMouseEvent* event) {
    if (dragFrom_ && !dragged_) pick(event->position());
    dragFrom_.reset();
}

void SurfaceView::mouseDoubleClickEvent(QMouseEvent*) {
    fit();
}

void SurfaceView::pick(QPointF at) {
    const QPointF mm = scale_.toMm(at);
    model::Capsule finger;
    finger.x = mm.x();
    finger.y = mm.y();
    model::Real nearest = 8 / scale_.pixelsPerMm;
    int row = -1;
    for (const auto& indication : picture_.indications) {
        if (indication.row < 0) continue;
        const auto gap = model::distance(finger, indication.capsule);
        if (gap < nearest) {
            nearest = gap;
            row = indication.row;
        }
    }
    if (row >= 0) emit rowPicked(row);
}

void SurfaceView::keyPressEvent(QKeyEvent* event) {
    const double step = event->modifiers() & Qt::ShiftModifier ? 200 : 50;
    switch (event->key()) {
        case Qt::Key_Plus:
        case Qt::Key_Equal:
            zoomIn();
            return;
        case Qt::Key_Minus:
            zoomOut();
            return;
        case Qt::Key_F:
        case Qt::Key_Home:
            fit();
            return;
        case Qt::Key_D:
            fitFrame();
            return;
        case Qt::Key_Left:
            moveBy({step, 0});
            return;
        case Qt::Key_Right:
            moveBy({-step, 0});
            return;
        case Qt::Key_Up:
            moveBy({0, step});
            return;
        case Qt::Key_Down:
            moveBy({0, -step});
            return;
        default:
            QWidget::keyPressEvent(event);
    }
}

}  // namespace app
