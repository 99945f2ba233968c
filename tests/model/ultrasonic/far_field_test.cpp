// SPDX-License-Identifier: Apache-2.0
#include "ultrasonic/far_field.h"

#include <cmath>
#include <gmock/gmock.h>
#include <numbers>

#include "ultrasonic/distance_gain_size.h"

namespace model {
namespace {

/// Steel as the published problems take it, 5900 m/s, at 2.5 MHz.
EchoPath steel(double lengthMm, double attenuationDbPerM = 0) {
    return {lengthMm, 5900.0 / 2500, attenuationDbPerM};
}

/// As fbhFromFbhMm, against the side of a hole.
double fbhFromSdhMm(double differenceDb, const EchoPath& flaw, const EchoPath& hole,
                    double holeDiameterMm) {
    return fbhFromFbhMm(differenceDb, flaw, hole, fbhEqualToSdhMm(hole, holeDiameterMm));
}

/// How much lower the echo of a hole is than that of a back wall, by the normalised formulas.
double belowBackWallDb(double wallMm, double holePathMm, double holeMm) {
    constexpr double kCrystalMm = 20;
    const double nearFieldMm = kCrystalMm * kCrystalMm / (4 * steel(1).wavelengthMm);
    return farBackWallEchoDb(wallMm / nearFieldMm) -
           farDiscEchoDb(holePathMm / nearFieldMm, holeMm / kCrystalMm);
}

// The published problems are from examination question banks of ultrasonic inspectors; the answers
// are printed there, rounded as they stand here.

TEST(FarFieldOracle, SizesAgainstAFlatBottomedHole) {
    // +10 dB against a hole of 2 mm at 200 mm; the flaw at 150 mm: 2.7 mm.
    EXPECT_NEAR(fbhFromFbhMm(10, steel(150), steel(200), 2), 2.7, 0.05);
}

TEST(FarFieldOracle, SizesAgainstABackWallWithAttenuation) {
    // 7 dB below the back wall of 380 mm, the flaw at 130 mm, 0.01 dB/mm: 4.1 mm.
    EXPECT_NEAR(fbhFromBackWallMm(-7, steel(130, 10), steel(380, 10)), 4.1, 0.05);
}

TEST(FarFieldOracle, SizesAgainstASideDrilledHole) {
    // +18 dB against a side-drilled hole of 2 mm at 200 mm; the flaw at 80 mm: one of 8 mm.
    EXPECT_NEAR(fbhFromSdhMm(18, steel(80), steel(200), 2) / fbhEqualToSdhMm(steel(80), 8), 1,
                0.005);
}

TEST(FarFieldOracle, SetsTheSensitivityFromABackWall) {
    // A hole of 2 mm at 200 mm below the back wall of 400 mm: 31.5 dB. At 300 mm, below that of
    // 300 mm: 41 dB.
    EXPECT_NEAR(belowBackWallDb(400, 200, 2), 31.5, 0.05);
    EXPECT_NEAR(belowBackWallDb(300, 300, 2), 41, 0.5);
    EXPECT_NEAR(fbhFromBackWallMm(-31.5, steel(200), steel(400)), 2, 0.005);
    EXPECT_NEAR(fbhFromBackWallMm(-41, steel(300), steel(300)), 2, 0.05);
}

TEST(FarFieldOracle, ConvertsSensitivityBetweenDistancesAndHoles) {
    // From 200 to 300 mm: 7 dB. From a hole of 4 mm to one of 2 mm: 12 dB.
    EXPECT_NEAR(farDiscEchoDb(20, 0.1) - farDiscEchoDb(30, 0.1), 7, 0.05);
    EXPECT_NEAR(farDiscEchoDb(20, 0.2) - farDiscEchoDb(20, 0.1), 12, 0.05);
}

TEST(FarFieldOracle, LosesTwelveNineAndSixDecibelsWithTwiceTheDistance) {
    EXPECT_NEAR(farDiscEchoDb(10, 0.2) - farDiscEchoDb(20, 0.2), 12, 0.05);
    EXPECT_NEAR(farBackWallEchoDb(10) - farBackWallEchoDb(20), 6, 0.05);
    // A side-drilled hole twice as far away that echoes 9 dB lower is as large.
    EXPECT_NEAR(fbhFromSdhMm(-9, steel(200), steel(100), 3) / fbhEqualToSdhMm(steel(200), 3), 1,
                0.005);
}

// Computed by hand: 5930 m/s and 4 MHz, a side-drilled hole of 3 mm at 100 mm.
TEST(FarFieldOracle, FindsTheFlatBottomedHoleEqualToASideDrilledOne) {
    EXPECT_NEAR(fbhEqualToSdhMm({100, 5930.0 / 4000}, 3), 3.40, 0.005);
}

// Source: the side of a hole echoes as a back wall at the same distance times sqrt(d / 2 s).
TEST(FarFieldOracle, PutsASideDrilledHoleBelowABackWall) {
    const EchoPath path = steel(120);
    const double belowWall = 20 * std::log10(std::sqrt(3 / (2 * 120.0)));
    EXPECT_NEAR(fbhFromBackWallMm(belowWall, path, path), fbhEqualToSdhMm(path, 3), 1e-9);
}

// Source: published factor 0.67 of the equal holes, sqrt(lambda sqrt(d s)).
TEST(FarFieldOracle, HasThePublishedFactorOfEqualHoles) {
    const EchoPath path = steel(120);
    EXPECT_NEAR(fbhEqualToSdhMm(path, 3) / std::sqrt(path.wavelengthMm * std::sqrt(3 * 120.0)),
                0.67, 0.005);
}

TEST(FarField, FindsTheReferenceItself) {
    const EchoPath path{85, 1.4, 12};
    EXPECT_NEAR(fbhFromFbhMm(0, path, path, 3), 3, 1e-12);
    EXPECT_NEAR(fbhFromBackWallMm(farDiscEchoDb(1, 0.1) - farBackWallEchoDb(1), path, path),
                0.1 * std::sqrt(4 * 1.4 * 85), 1e-9);
}

// By hand: 20 dB/m over 0.3 m there and back is 12 dB, 5 dB/m over 0.1 m is 1 dB.
TEST(FarField, TakesOffAttenuationOnBothPathsThereAndBack) {
    EXPECT_NEAR(lossFreeDifferenceDb(-30, {300, 2, 20}, {100, 2, 5}), -19, 1e-12);
    EXPECT_NEAR(fbhFromFbhMm(-30, {300, 2, 20}, {100, 2, 5}, 3),
                fbhFromFbhMm(-19, {300, 2}, {100, 2}, 3), 1e-12);
    EXPECT_NEAR(fbhFromBackWallMm(-30, {300, 2, 20}, {100, 2, 5}),
                fbhFromBackWallMm(-19, {300, 2}, {100, 2}), 1e-12);
}

// The reference on a block of another velocity: the same through the normalised formulas, in which
// each near field has its own wavelength.
TEST(FarField, KeepsTheWavelengthsOfCastingAndBlockApart) {
    constexpr double kCrystalMm = 20;
    const EchoPath flaw{260, 5500.0 / 2000};
    const EchoPath reference{180, 5920.0 / 2000};
    const auto distance = [&](const EchoPath& path) {
        return path.lengthMm * 4 * path.wavelengthMm / (kCrystalMm * kCrystalMm);
    };
    const double flawDb = farDiscEchoDb(distance(flaw), 3.3 / kCrystalMm);
    EXPECT_NEAR(fbhFromBackWallMm(flawDb - farBackWallEchoDb(distance(reference)), flaw, reference),
                3.3, 1e-9);
    EXPECT_NEAR(fbhFromFbhMm(flawDb - farDiscEchoDb(distance(reference), 2 / kCrystalMm), flaw,
                             reference, 2),
                3.3, 1e-9);
}

// The far-field sizes and those of the model meet far away.
TEST(FarField, AgreesWithTheModelFarAway) {
    constexpr double kCrystalMm = 10;
    const EchoPath path = steel(1500);
    const double a = path.lengthMm * 4 * path.wavelengthMm / (kCrystalMm * kCrystalMm);
    const double byModel = discOfEcho(a, backWallEchoDb(a) - 30).g * kCrystalMm;
    EXPECT_NEAR(fbhFromBackWallMm(-30, path, path) / byModel, 1, 0.001);
}

// Limits from memory of ISO 16811: path from 0.7 N on, diameter from 1.5 wavelengths on.
TEST(FarField, SaysWhereASideDrilledHoleIsAReference) {
    EXPECT_TRUE(sideDrilledHoleFarEnough({35, 2}, 50));
    EXPECT_FALSE(sideDrilledHoleFarEnough({34.9, 2}, 50));
    EXPECT_TRUE(sideDrilledHoleWideEnough({35, 2}, 3));
    EXPECT_FALSE(sideDrilledHoleWideEnough({35, 2}, 2.9));
}

}  // namespace
}  // namespace model
