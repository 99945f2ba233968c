// SPDX-License-Identifier: Apache-2.0
// Length and width through sizeOf(). Beam widths by hand: 2 s tan(arcsin(k lambda / D)) with
// Krautkraemer's k = 0.51 (-6 dB echo) and 0.87 (-20 dB echo) of Table 4.2; at 250 mm with
// wavelength 2 mm and 20 mm of diameter 25.5 mm and 43.7 mm. The table has two digits.
#include <cmath>

#include "reading_maker.h"

namespace model {
namespace {

Reading moved(Reading reading, double dropDb, std::optional<double> along,
              std::optional<double> across = std::nullopt) {
    reading.movement = {.dropDb = dropDb, .alongMm = along, .acrossMm = across};
    return reading;
}

TEST(SizeExtentOracle, StatesTheBeamsWidth) {
    EXPECT_NEAR(sized(straightReading()).beamWidthMm.value_or(0), 25.5, 0.3);
    // Rectangle: k = 0.44 of a side; 4 mm side, 0.5 mm wavelength, 120 mm: 2 x 120 x 0.0551.
    Reading rectangle = angleReading();
    rectangle.probe.frequencyMhz = 6.4;
    rectangle.probe.widthMm = 4;
    rectangle.probe.lengthMm = 8;
    EXPECT_NEAR(sized(rectangle).beamWidthMm.value_or(0), 13.22, 0.2);
    // As wide whichever side lies along the beam.
    std::swap(rectangle.probe.widthMm, rectangle.probe.lengthMm);
    EXPECT_NEAR(sized(rectangle).beamWidthMm.value_or(0), 13.22, 0.2);
}

TEST(SizeExtent, IsTheMovementBetweenHalfHeights) {
    const Size size = sized(moved(straightReading(), 6, 35, 27));
    EXPECT_EQ(size.lengthMm, 35.0);
    EXPECT_EQ(size.widthMm, 27.0);
    EXPECT_EQ(size.alongMeasurable, true);
    EXPECT_EQ(size.acrossMeasurable, true);
}

TEST(SizeExtent, IsNotMeasurableUpToTheBeamsWidth) {
    const Reading reading = moved(straightReading(), 6, 35, 25);
    Size size = sized(reading);
    EXPECT_EQ(size.alongMeasurable, true);
    EXPECT_EQ(size.acrossMeasurable, false);
    EXPECT_FALSE(size.widthMm);
    expectNote(size, "movement across of 25 mm is not above the beam's width");
    expectNoNote(size, "movement along");
    // Not above: the width itself is not.
    size = sized(moved(reading, 6, *size.beamWidthMm));
    EXPECT_EQ(size.alongMeasurable, false);
    EXPECT_FALSE(size.lengthMm);
}

TEST(SizeExtent, IsEmptyWhereNothingWasMeasured) {
    for (const Reading& reading : {straightReading(), moved(straightReading(), 6, std::nullopt)}) {
        const Size size = sized(reading);
        EXPECT_FALSE(size.lengthMm || size.widthMm);
        EXPECT_FALSE(size.alongMeasurable.has_value() || size.acrossMeasurable.has_value());
    }
    const Size size = sized(moved(straightReading(), 6, 35));
    EXPECT_TRUE(size.alongMeasurable.has_value());
    EXPECT_FALSE(size.acrossMeasurable.has_value());
    EXPECT_FALSE(size.widthMm);
}

TEST(SizeExtentOracle, TakesTheWidthOffTheTwentyDecibelMovement) {
    const Size size = sized(moved(straightReading(), 20, 70, 43));
    EXPECT_NEAR(size.lengthMm.value_or(0), 70 - 43.7, 0.5);
    // Above the -6 dB width, but nothing would be left.
    EXPECT_EQ(size.acrossMeasurable, false);
    EXPECT_FALSE(size.widthMm);
}

// A rectangle of 4 x 8 mm makes beams of k = 0.74 (-20 dB): at 120 mm with 0.5 mm of wavelength
// 22.3 mm and 11.1 mm wide.
TEST(SizeExtentOracle, TakesTheSaferOfTwoBeamWidths) {
    Reading reading = angleReading();
    reading.probe.frequencyMhz = 6.4;
    reading.probe.widthMm = 4;
    reading.probe.lengthMm = 8;
    Size size = sized(moved(reading, 20, 30, 20));
    EXPECT_NEAR(size.lengthMm.value_or(0), 30 - 11.1, 0.3);
    EXPECT_EQ(size.acrossMeasurable, false);
    expectNote(size, "rectangular element");
    size = sized(moved(reading, 6, 13.8, 12));
    EXPECT_EQ(size.lengthMm, 13.8);
    EXPECT_EQ(size.acrossMeasurable, false);
}

TEST(SizeExtent, IsBroughtToTheDepthInACurvedPart) {
    Reading reading = moved(straightReading(), 6, 50, 50);
    reading.part.radiusMm = 500;
    reading.part.surface = ScanSurface::Outer;
    Size size = sized(reading);
    EXPECT_NEAR(size.lengthMm.value_or(0), 50 * (500 - 250) / 500.0, 1e-9);
    EXPECT_EQ(size.widthMm, 50.0);
    expectNote(size, "the movement along is taken as around the circumference");
    reading.part.surface = ScanSurface::Inner;
    size = sized(reading);
    EXPECT_NEAR(size.lengthMm.value_or(0), 50 * (500 + 250) / 500.0, 1e-9);
    reading.movement->alongMm.reset();
    expectNoNote(sized(reading), "circumference");
}

TEST(SizeExtent, IsKnownInTheNearFieldOnlyAboveTheElement) {
    Reading reading = moved(straightReading(), 6, 21, 20);
    reading.echo.soundPathMm = 45;
    Size size = sized(reading);
    EXPECT_FALSE(size.beamWidthMm);
    EXPECT_EQ(size.lengthMm, 21.0);
    EXPECT_EQ(size.alongMeasurable, true);
    // Neither measurable nor known not to be.
    EXPECT_FALSE(size.widthMm);
    EXPECT_FALSE(size.acrossMeasurable.has_value());
    expectNote(size, "near field: the beam's width is not known");
    expectNote(size, "whether the movement across of 20 mm is above the beam's width is not known");
    // How much to take off is not known there.
    size = sized(moved(reading, 20, 60));
    EXPECT_FALSE(size.lengthMm);
    EXPECT_FALSE(size.alongMeasurable.has_value());
}

TEST(SizeExtent, IsNotMeasuredByAnElementWithoutABeam) {
    Reading reading = moved(straightReading(), 6, 60);
    reading.probe.diameterMm = 1;  // half a wavelength
    const Size size = sized(reading);
    EXPECT_FALSE(size.beamWidthMm);
    EXPECT_FALSE(size.lengthMm);
    EXPECT_FALSE(size.alongMeasurable.has_value());
    expectNote(size, "too small for a beam with an edge");
}

TEST(SizeExtent, NeedsAPlace) {
    Reading reading = moved(straightReading(), 6, 60);
    reading.part.thicknessMm = 200;
    const Size size = sized(reading);
    EXPECT_FALSE(size.depthMm || size.lengthMm);
    EXPECT_FALSE(size.alongMeasurable.has_value());
}

}  // namespace
}  // namespace model
