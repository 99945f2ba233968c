// SPDX-License-Identifier: Apache-2.0
// Where things are drawn. An inch is 25.4 mm (ISO 31-1:1992, annex A).
#include <QPixmap>
#include <gtest/gtest.h>

#include "bench/surface_scale.h"
#include "bench/surface_view.h"

namespace app {
namespace {

TEST(SurfaceScale, PutsYUpAndTheDatumWhereItIs) {
    const SurfaceScale scale{2, {100, 300}};
    EXPECT_EQ(scale.toPixels(0, 0), QPointF(100, 300));
    EXPECT_EQ(scale.toPixels(10, 20), QPointF(120, 260));
    EXPECT_EQ(scale.toMm({120, 260}), QPointF(10, 20));
}

TEST(SurfaceScale, ZoomKeepsThePointUnderTheHand) {
    const SurfaceScale scale{2, {100, 300}};
    const QPointF hand(150, 220);
    const auto larger = scale.zoomed(3, hand);
    EXPECT_EQ(larger.pixelsPerMm, 6);
    EXPECT_EQ(larger.toMm(hand), scale.toMm(hand));
}

TEST(SurfaceScale, FitShowsAllOfAZoneInItsMiddle) {
    const auto scale = fitted(QRectF(0, 0, 400, 100), QRectF(0, 0, 800, 600));
    EXPECT_EQ(scale.pixelsPerMm, 2);
    EXPECT_EQ(scale.toPixels(200, 50), QPointF(400, 300));
    EXPECT_EQ(scale.toPixels(400, 100), QPointF(800, 200));
}

TEST(RulerStep, IsARoundNumberOfTheUnit) {
    EXPECT_DOUBLE_EQ(rulerStep(3.1, model::LengthUnit::Millimetre).mm, 5);
    EXPECT_DOUBLE_EQ(rulerStep(51, model::LengthUnit::Millimetre).mm, 100);
    EXPECT_DOUBLE_EQ(rulerStep(100, model::LengthUnit::Millimetre).mm, 100);
    EXPECT_DOUBLE_EQ(rulerStep(2, model::LengthUnit::Inch).mm, 25.4 / 8);
    EXPECT_DOUBLE_EQ(rulerStep(30, model::LengthUnit::Inch).mm, 50.8);
    EXPECT_EQ(rulerStep(30, model::LengthUnit::Inch).label(3), "6");
    EXPECT_EQ(rulerStep(30, model::LengthUnit::Millimetre).label(-2), "-100");
}

SurfacePicture onePicture() {
    SurfacePicture picture;
    picture.zone = {"Z1", QTransform(), 400, 300};
    PictureIndication indication;
    indication.label = "7";
    indication.row = 4;
    indication.capsule = model::makeCapsule(model::millimetres(200), model::millimetres(150),
                                            model::millimetres(40), model::millimetres(10), {}, {});
    picture.byName["7"] = {0};
    picture.indications.push_back(indication);
    return picture;
}

TEST(SurfaceView, DrawsACapsuleToScaleWhereItIs) {
    SurfaceView view;
    view.resize(800, 600);
    view.show(onePicture(), true);
    const QImage drawn = view.grab().toImage();
    const auto at = [&](double x, double y) {
        return drawn.pixelColor(view.scale().toPixels(x, y).toPoint());
    };
    const QColor ink = view.palette().color(QPalette::Text);
    const QColor paper = view.palette().color(QPalette::Base);
    EXPECT_EQ(at(200, 150), ink);
    EXPECT_EQ(at(217, 150), ink) << "half of the length, rounded ends included, is 20 mm";
    EXPECT_EQ(at(200, 153.5), ink) << "half of the width is 5 mm";
    EXPECT_NE(at(223, 150), ink);
    EXPECT_NE(at(200, 158), ink);
    EXPECT_EQ(at(223, 158), paper);
}

TEST(SurfaceView, AFrameBeyondTheZoneIsStillSeen) {
    SurfaceView view;
    view.resize(800, 600);
    view.show(onePicture(), true);
    ShownCheck check;
    check.frame =
        model::CheckFrame{{model::millimetres(105), model::millimetres(148)}, 440, 150, 0};
    view.setCheck(check);
    EXPECT_TRUE(view.rect().contains(view.scale().toPixels(492.5, 224).toPoint()));
    EXPECT_TRUE(view.rect().contains(view.scale().toPixels(0, 0).toPoint()));
}

TEST(FramePath, TurnsCounterClockwise) {
    const model::CheckFrame frame{{model::millimetres(105), model::millimetres(148)}, 10, 20, 90};
    const QRectF bounds = framePath(frame).boundingRect();
    EXPECT_NEAR(bounds.width(), 148, 1e-9);
    EXPECT_NEAR(bounds.height(), 105, 1e-9);
    EXPECT_NEAR(bounds.center().x(), 10, 1e-9);
    const model::CheckFrame tilted{{model::millimetres(100), model::millimetres(1)}, 0, 0, 30};
    EXPECT_TRUE(framePath(tilted).contains(QPointF(40 * 0.8660254, 40 * 0.5)));
}

}  // namespace
}  // namespace app
