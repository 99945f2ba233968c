// SPDX-License-Identifier: Apache-2.0
#include "ultrasonic/drop_sizing.h"

#include <cmath>
#include <gtest/gtest.h>
#include <optional>

#include "ultrasonic/beam.h"
#include "ultrasonic/field.h"

namespace model {
namespace {

const double kAngle345 = std::acos(0.6) * 180 / std::acos(-1);

TEST(DropSizing, SixDbIsTheMovementOnceItIsAboveTheBeamsWidth) {
    EXPECT_EQ(extentMm(6, 35, 25), 35);
    EXPECT_EQ(extentMm(6, 25.01, 25), 25.01);
    EXPECT_EQ(extentMm(6, 25, 25), std::nullopt);
    EXPECT_EQ(extentMm(6, 12, 25), std::nullopt);
    EXPECT_EQ(extentMm(6, 0, 25), std::nullopt);
}

// Hand-computed: D 20, 2 MHz, 5920 m/s, at 120 mm: sin g = 0.87 x 2.96 / 20 = 0.1288, the beam is
// 240 x 0.1298 = 31.2 mm wide at -20 dB, and of a movement of 60 mm 28.8 mm remain.
TEST(DropSizingOracle, TwentyDbTakesTheBeamsWidthOff) {
    const double wavelength = wavelengthMm(5920, 2);
    const auto width = echoBeamWidthMm(ElementShape::Round, 20, wavelength,
                                       roundNearFieldMm(20, wavelength), 120, 20);
    ASSERT_TRUE(width);
    const auto extent = extentMm(20, 60, *width);
    ASSERT_TRUE(extent);
    EXPECT_NEAR(*extent, 28.8, 0.1);
    EXPECT_EQ(extentMm(20, *width, *width), std::nullopt);
    EXPECT_EQ(extentMm(20, 30, *width), std::nullopt);
}

// Hand-computed: 100 mm along a surface of radius 200 turn the probe by half a radian; 50 mm deeper
// that is 0.5 x 150 mm, or from a bore 0.5 x 250 mm.
TEST(DropSizingOracle, LengthAtDepthOnCurvedSurfaces) {
    const ScannedPart outer{80, ScanSurface::Outer, 200};
    const ScannedPart inner{80, ScanSurface::Inner, 200};
    const ScannedPart flat{80, ScanSurface::Flat, std::nullopt};
    EXPECT_DOUBLE_EQ(*circumferentialExtentMm(outer, 50, 6, 100, 20), 75);
    EXPECT_DOUBLE_EQ(*circumferentialExtentMm(inner, 50, 6, 100, 20), 125);
    EXPECT_DOUBLE_EQ(*circumferentialExtentMm(flat, 50, 6, 100, 20), 100);
    EXPECT_DOUBLE_EQ(*circumferentialExtentMm(outer, 50, 20, 100, 20), 60);
    EXPECT_DOUBLE_EQ(*circumferentialExtentMm(inner, 50, 20, 100, 20), 105);
    EXPECT_DOUBLE_EQ(*circumferentialExtentMm(flat, 50, 20, 100, 20), 80);
    for (const auto& part : {outer, inner, flat})
        EXPECT_FALSE(circumferentialExtentMm(part, 50, 6, 20, 20));
    // never shorter than the flaw that moved the probe so: the movement at depth less the width
    EXPECT_GE(*circumferentialExtentMm(outer, 50, 20, 100, 20), 75 - 20);
    EXPECT_GE(*circumferentialExtentMm(inner, 50, 20, 100, 20), 125 - 20);
}

TEST(DropSizingOracle, LargeRadiiScaleNothing) {
    for (const auto surface : {ScanSurface::Outer, ScanSurface::Inner})
        EXPECT_NEAR(lengthScaleAtDepth({80, surface, 1e9}, 60), 1, 1e-6);
}

// Hand-computed with the triangle 3-4-5, cos b = 0.6, wall 30 mm (half a skip is 50 mm).
TEST(DropSizingOracle, HeightBetweenTwoEdges) {
    const ScannedPart part{30, ScanSurface::Flat, std::nullopt};
    const auto height = [&](double first, double second) {
        return heightBetweenEdgesMm(part, kAngle345, first, second);
    };
    EXPECT_NEAR(*height(20, 35), 9, 1e-9);  // |35 - 20| x 0.6
    EXPECT_NEAR(*height(35, 20), 9, 1e-9);  // whichever comes first
    EXPECT_NEAR(*height(60, 75), 9, 1e-9);  // both on the second leg
    EXPECT_NEAR(*height(35, 60), 3, 1e-9);  // 21 mm deep on the first leg, 24 on the second
    EXPECT_FALSE(height(20, 20));           // no height was seen
    EXPECT_FALSE(height(20, 151));          // past the third leg
}

// Hand-computed: R 100, bore 50, sin b = 0.6: at 80 mm the axis is 60 mm from the centre (40 deep),
// at 80 - 11 it is sqrt(3600 + 121) = 61 mm from it (39 deep).
TEST(DropSizingOracle, HeightBetweenTwoEdgesInACylinder) {
    const double angle = std::asin(0.6) * 180 / std::acos(-1);
    EXPECT_NEAR(*heightBetweenEdgesMm({50, ScanSurface::Outer, 100}, angle, 69, 80), 1, 1e-9);
}

}  // namespace
}  // namespace model
