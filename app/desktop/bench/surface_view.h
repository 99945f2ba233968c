// SPDX-License-Identifier: Apache-2.0
// A zone's developed surface to scale. Wheel or + and - zoom, dragging or the arrow keys move, F
// fits the zone, a click picks an indication.
#pragma once

#include <QWidget>
#include <optional>

#include "bench/surface_painter.h"

namespace app {

class SurfaceView : public QWidget {
    Q_OBJECT

public:
    explicit SurfaceView(QWidget* parent = nullptr);

    /// A picture of another zone is fitted; one of the same zone keeps scale and place.
    void show(SurfacePicture picture, bool fitIt);
    void setCheck(std::optional<ShownCheck> check);
    void setCurrentRow(int row);
    void setUnit(model::LengthUnit unit);

    [[nodiscard]] const SurfacePicture& picture() const { return picture_; }
    [[nodiscard]] const SurfaceScale& scale() const { return scale_; }
    [[nodiscard]] const std::optional<ShownCheck>& check() const { return check_; }
    [[nodiscard]] QSize sizeHint() const override { return {640, 420}; }
    [[nodiscard]] QSize minimumSizeHint() const override { return {240, 160}; }

public slots:
    /// Shows the whole zone, and the pointed out frame with it.
    void fit();
    /// Shows the pointed out frame large.
    void fitFrame();
    void zoomIn() { zoomAbout(rect().center(), 1.25); }
    void zoomOut() { zoomAbout(rect().center(), 0.8); }

signals:
    /// A click on an indication of the shown examination.
    void rowPicked(int row);

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void mouseDoubleClickEvent(QMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    void zoomAbout(QPointF still, double factor);
    void moveBy(QPointF pixels);
    void pick(QPointF at);
    [[nodiscard]] SurfaceStyle style_() const;

    SurfacePicture picture_;
    SurfaceScale scale_;
    std::optional<ShownCheck> check_;
    model::LengthUnit unit_ = model::LengthUnit::Millimetre;
    int currentRow_ = -1;
    bool fitted_ = true;  ///< follow the size until somebody zooms or moves
    std::optional<QPointF> dragFrom_;
    bool dragged_ = false;
};

}  // namespace app
