// SPDX-License-Identifier: Apache-2.0
// Sizes, places and extents through sizeOf(), against published problems, tabulated echoes and
// values worked out by hand.
#include "ultrasonic/size.h"

#include <cmath>
#include <numbers>

#include "reading_maker.h"

namespace model {
namespace {

// The published problems are from examination question banks of ultrasonic inspectors, with the
// answers as printed there; steel of 5900 m/s at 2.5 MHz. They use the far-field formulas.

/// A probe that is sized in the far field only, near field about 15 mm, on thick steel.
Reading bankReading(double flawPathMm, double referencePathMm) {
    Reading reading = inMaterial(straightReading(), 5900, 0);
    reading.probe.element = ElementShape::Rectangular;
    reading.probe.widthMm = 10;
    reading.probe.lengthMm = 10;
    reading.probe.diameterMm.reset();
    reading.probe.frequencyMhz = 2.5;
    reading.part.thicknessMm = 500;
    reading.echo.soundPathMm = flawPathMm;
    reading.reference.echo.soundPathMm = referencePathMm;
    return reading;
}

Reading against(Reading reading, ReferenceKind kind, double diameterMm) {
    reading.reference.kind = kind;
    reading.reference.diameterMm = diameterMm;
    return reading;
}

void expectFarField(const Reading& reading, double fbhMm, double within) {
    const Size size = sized(reading);
    ASSERT_TRUE(size.fbhMm) << testing::PrintToString(size.notes);
    EXPECT_NEAR(*size.fbhMm, fbhMm, within);
    EXPECT_EQ(size.method, SizingMethod::FarField);
    EXPECT_EQ(size.farFieldFbhMm, size.fbhMm);
}

TEST(SizeOracle, SolvesThePublishedProblemsWithHoles) {
    constexpr auto kHole = ReferenceKind::FlatBottomedHole;
    // +10 dB against a hole of 2 mm at 200 mm; the flaw at 150 mm: 2.7 mm.
    expectFarField(differing(against(bankReading(150, 200), kHole, 2), 10), 2.7, 0.05);
    // From 200 to 300 mm a hole loses 7 dB; from 4 mm to 2 mm 12 dB.
    expectFarField(differing(against(bankReading(300, 200), kHole, 2), -7), 2, 0.01);
    expectFarField(differing(against(bankReading(200, 200), kHole, 4), -12), 2, 0.01);
    // B1 / B2 = 100 % / 20 % on 400 mm gives the attenuation; then +18 dB against a hole of 2 mm at
    // 400 mm, the flaw at 200 mm: 2.2 mm.
    const double dbPerM = 1000 * (20 * std::log10(100.0 / 20) - 20 * std::log10(2)) / (2 * 400);
    expectFarField(
        inMaterial(differing(against(bankReading(200, 400), kHole, 2), 18), 5900, dbPerM), 2.2,
        0.05);
}

TEST(SizeOracle, SolvesThePublishedProblemsWithBackWalls) {
    // 7 dB below the back wall of 380 mm, the flaw at 130 mm, 0.01 dB/mm: 4.1 mm.
    expectFarField(inMaterial(differing(bankReading(130, 380), -7), 5900, 10), 4.1, 0.05);
    // A hole of 2 mm at 300 mm is 41 dB below the back wall there; at 200 mm, 31.5 dB below that of
    // 400 mm.
    expectFarField(differing(bankReading(300, 300), -41), 2, 0.02);
    expectFarField(differing(bankReading(200, 400), -31.5), 2, 0.01);
}

TEST(SizeOracle, SolvesThePublishedProblemWithSideDrilledHoles) {
    // +18 dB against one of 2 mm at 200 mm, the flaw at 80 mm: a side-drilled hole of 8 mm. A
    // flat-bottomed hole equal to that is sqrt(lambda / pi sqrt(2 d s)) wide.
    const double equal = std::sqrt(5900.0 / 2500 / std::numbers::pi * std::sqrt(2.0 * 8 * 80));
    expectFarField(differing(against(bankReading(80, 200), ReferenceKind::SideDrilledHole, 2), 18),
                   equal, 0.02);
}

TEST(SizeOracle, PlacesThePublishedProblemOnTheThirdLeg) {
    // tan b = 1.5, 60 mm thick, the echo at 4.5 divisions of 30 mm of depth: 15 mm deep, 202.5 mm
    // ahead of the index point.
    Reading reading = angleReading();
    reading.probe.angleDeg = std::atan(1.5) * 180 / std::numbers::pi;
    reading.part.thicknessMm = 60;
    reading.echo.soundPathMm = 4.5 * 30 * std::hypot(1, 1.5);
    reading.probe.frontMm = 0;
    const Size size = sized(reading);
    EXPECT_NEAR(size.depthMm.value_or(0), 15, 1e-9);
    EXPECT_NEAR(size.surfaceDistanceMm.value_or(0), 202.5, 1e-9);
    EXPECT_EQ(size.leg, 3);
}

// Echoes of the model, from a numerical evaluation with another program: back wall -3.87 dB at
// A = 2, -10.34 dB at A = 5; disc G = 0.2 -22.37 dB at A = 2, -36.39 dB at A = 5, -48.16 dB at
// A = 10; G = 0.4 -16.71 dB at A = 3, -9.67 dB at A = 1. A hundredth of a decibel is 0.06 % of a
// size, so two rounded echoes allow 0.1 %.

void expectByModel(const Reading& reading, double fbhMm) {
    const Size size = sized(reading);
    ASSERT_TRUE(size.fbhMm) << testing::PrintToString(size.notes);
    EXPECT_NEAR(*size.fbhMm / fbhMm, 1, 0.0012);
    EXPECT_EQ(size.method, SizingMethod::DistanceGainSize);
    EXPECT_TRUE(size.farFieldFbhMm);
    expectNote(size, "computed distance-gain-size model of a circular piston");
}

TEST(SizeOracle, FindsTabulatedDiscsAgainstABackWall) {
    expectByModel(differing(straightReading(), -36.39 + 3.87), 4);
    Reading near = straightReading();
    near.echo.soundPathMm = 150;
    expectByModel(differing(near, -16.71 + 3.87), 8);
}

TEST(SizeOracle, FindsTabulatedDiscsAgainstHoles) {
    expectByModel(
        differing(against(straightReading(), ReferenceKind::FlatBottomedHole, 4), -36.39 + 22.37),
        4);
    // Equal to a flat-bottomed hole of 4 mm at 100 mm: d = (pi Df^2 / lambda)^2 / 2 s.
    const double side = std::pow(std::numbers::pi * 16 / 2, 2) / 200;
    expectByModel(
        differing(against(straightReading(), ReferenceKind::SideDrilledHole, side), -36.39 + 22.37),
        4);
}

TEST(SizeOracle, CountsABlocksNearFieldWithItsOwnVelocity) {
    // Block: wavelength 1.8 mm, A = 10, a hole of 4 mm. Casting: A = 3, 8 mm. The casting couples
    // 4 dB worse than the block, which is added to the flaw's echo.
    Reading reading = against(straightReading(), ReferenceKind::FlatBottomedHole, 4);
    reading.reference.on = ReferencePlace::Block;
    reading.reference.medium.velocityMPerS = 5400;
    reading.reference.echo.soundPathMm = 10 * 400 / (4 * 1.8);
    reading.echo.soundPathMm = 150;
    reading.transferDb = 4;
    reading = differing(reading, -16.71 + 48.16 - 4);
    expectByModel(reading, 8);
    EXPECT_NEAR(sized(reading).echoDb.value_or(0), -16.71 + 48.16, 1e-9);
}

TEST(SizeOracle, CorrectsForAttenuationThereAndBack) {
    // 10 dB/m: 5 dB on 250 mm there and back, 2 dB on 100 mm. echoDb stays as read.
    const Reading reading = inMaterial(differing(straightReading(), -36.39 + 3.87 - 3), 6000, 10);
    expectByModel(reading, 4);
    EXPECT_NEAR(sized(reading).echoDb.value_or(0), -35.52, 1e-9);
    // A block with 2 dB/m: 0.4 dB on 100 mm.
    Reading block = reading;
    block.reference.on = ReferencePlace::Block;
    block.reference.medium.attenuationDbPerM = 2;
    expectByModel(differing(block, -36.39 + 3.87 - 5 + 0.4), 4);
}

// Worked out by hand: 20 lg(screen / 80) - gain of the flaw less that of the reference.
TEST(Size, TakesTheEchoFromScreenAndGain) {
    Reading reading = straightReading();
    reading.echo = {.soundPathMm = 250, .gainDb = 40, .screenPercent = 40};
    EXPECT_NEAR(sized(reading).echoDb.value_or(0), -16.0206, 1e-4);
    reading.reference.on = ReferencePlace::Block;
    reading.transferDb = 2.5;
    EXPECT_NEAR(sized(reading).echoDb.value_or(0), -13.5206, 1e-4);
}

// Worked out by hand: lambda = c / f, N = D^2 / 4 lambda.
TEST(Size, StatesWavelengthAndNearField) {
    Reading reading = inMaterial(straightReading(), 5920, 0);
    reading.probe.frequencyMhz = 2;
    reading.probe.diameterMm = 24;
    EXPECT_NEAR(sized(reading).wavelengthMm, 2.96, 1e-12);
    EXPECT_NEAR(sized(reading).nearFieldMm, 48.65, 0.005);
    // Square element: 1.37 L^2 / 4 lambda.
    EXPECT_NEAR(sized(angleReading()).nearFieldMm, 34.25, 0.005);
}

// Worked out by hand.
TEST(Size, PlacesStraightAndAngledBeams) {
    Size size = sized(straightReading());
    EXPECT_EQ(size.depthMm, 250.0);
    EXPECT_EQ(size.surfaceDistanceMm, 0.0);
    EXPECT_EQ(size.leg, 1);
    // 120 mm at 45 degrees: 84.85 mm deep and as far ahead, 12 mm of which are under the probe.
    size = sized(angleReading());
    EXPECT_NEAR(size.depthMm.value_or(0), 84.853, 0.001);
    EXPECT_NEAR(size.surfaceDistanceMm.value_or(0), 72.853, 0.001);
    EXPECT_EQ(size.leg, 1);
    // On 60 mm: reflected at the back wall, 2 x 60 - 84.85.
    Reading thin = angleReading();
    thin.part.thicknessMm = 60;
    size = sized(thin);
    EXPECT_NEAR(size.depthMm.value_or(0), 35.147, 0.001);
    EXPECT_EQ(size.leg, 2);
    EXPECT_TRUE(size.fbhMm);
}

// Worked out by hand: outer radius 500 mm, 60 mm thick, 45 degrees, 60 mm of path; the point is
// (42.426, 500 - 42.426) from the centre, 459.537 mm away and 5.297 degrees ahead.
TEST(Size, PlacesBeamsInCurvedParts) {
    Reading reading = angleReading();
    reading.part = {.thicknessMm = 60, .surface = ScanSurface::Outer, .radiusMm = 500};
    reading.echo.soundPathMm = 60;
    const Size size = sized(reading);
    EXPECT_NEAR(size.depthMm.value_or(0), 40.463, 0.001);
    EXPECT_NEAR(size.surfaceDistanceMm.value_or(0), 46.227 - 12, 0.002);
    expectNote(size, "curved surface: echoes are computed as on a flat one");
}

}  // namespace
}  // namespace model
