// SPDX-License-Identifier: Apache-2.0
// Every limit of the method that sizeOf() meets is said in a note, and what does not follow is
// empty.
#include "reading_maker.h"

namespace model {
namespace {

Reading atPath(Reading reading, double soundPathMm) {
    reading.echo.soundPathMm = soundPathMm;
    return differing(reading, -20);
}

Reading against(Reading reading, ReferenceKind kind, double pathMm, double diameterMm) {
    reading.reference.kind = kind;
    reading.reference.echo.soundPathMm = pathMm;
    reading.reference.diameterMm = diameterMm;
    return reading;
}

TEST(SizeNotes, SayOfTheNearFieldThatNothingIsSizedOrIndicative) {
    // Near field 50 mm.
    expectUnsized(sized(atPath(straightReading(), 34.9)), "near field: the echo lies at 0.69");
    for (const double path : {35.0, 42.0, 50.0}) {
        const Size size = sized(atPath(straightReading(), path));
        EXPECT_TRUE(size.fbhMm) << path;
        expectNote(size, "near field, indicative: the echo lies at");
    }
    expectNoNote(sized(atPath(straightReading(), 50.1)), "near field,");
    expectNoNote(sized(atPath(straightReading(), 50.1)), "near field:");
    // A distance that meets 0.7 exactly in decimals, but not in binary: 0.7 x 24^2 / (4 x 2.96).
    Reading reading = inMaterial(straightReading(), 5920, 0);
    reading.probe.frequencyMhz = 2;
    reading.probe.diameterMm = 24;
    reading.echo.soundPathMm = 0.7 * 576 * 2 / (4 * 5.92);
    expectNote(sized(differing(reading, -20)), "near field, indicative");
}

TEST(SizeNotes, SayTheSameOfTheReference) {
    Reading reading = differing(straightReading(), -20);
    reading.reference.echo.soundPathMm = 34;
    expectUnsized(sized(reading), "near field: the reference lies at 0.68");
    reading.reference.echo.soundPathMm = 45;
    EXPECT_TRUE(sized(reading).fbhMm);
    expectNote(sized(reading), "near field, indicative: the reference lies at 0.9");
}

TEST(SizeNotes, SayThatOtherProbesAreSizedInTheFarFieldOnly) {
    // Near field 34.25 mm: 102.75 mm.
    Size size = sized(atPath(angleReading(), 102.8));
    EXPECT_TRUE(size.fbhMm);
    EXPECT_EQ(size.method, SizingMethod::FarField);
    expectNote(size, "size by the far-field formulas, the only ones for an angle probe");
    expectNote(size, "without its wedge");
    expectUnsized(sized(atPath(angleReading(), 102)), "sized from 3 near fields on");
    Reading reading = atPath(angleReading(), 120);
    reading.reference.echo.soundPathMm = 102;
    expectUnsized(sized(reading), "near field: the reference lies at 2.97 near fields");

    reading = differing(straightReading(), -20);
    reading.probe.element = ElementShape::Rectangular;
    reading.probe.widthMm = 10;
    reading.probe.lengthMm = 10;
    size = sized(reading);
    EXPECT_EQ(size.method, SizingMethod::FarField);
    expectNote(size, "the only ones for a rectangular element");
    // A round angle probe is an angle probe.
    reading = angleReading();
    reading.probe.element = ElementShape::Round;
    reading.probe.diameterMm = 10;
    EXPECT_EQ(sized(reading).method, SizingMethod::FarField);
}

TEST(SizeNotes, SayWhenTwinCrystalsHaveNoReferenceNearby) {
    Reading twin = against(straightReading(), ReferenceKind::FlatBottomedHole, 20, 3);
    twin.probe.kind = ProbeKind::TwinCrystal;
    twin.part.thicknessMm = 60;
    // Within 10 % of the echo's path, both ends included.
    for (const double reference : {18.0, 20.0, 22.0}) {
        twin.reference.echo.soundPathMm = reference;
        const Size size = sized(atPath(twin, 20));
        EXPECT_TRUE(size.fbhMm) << reference;
        EXPECT_EQ(size.method, SizingMethod::FarField);
        expectNote(size, "compared with that of the flat-bottomed hole");
    }
    for (const double reference : {17.9, 22.1}) {
        twin.reference.echo.soundPathMm = reference;
        expectUnsized(sized(atPath(twin, 20)), "within 10 % of the echo's");
    }
    twin.reference.echo.soundPathMm = 20;
    twin.reference.kind = ReferenceKind::SideDrilledHole;
    expectUnsized(sized(atPath(twin, 20)), "nothing about size");
    twin.reference.echo.soundPathMm = 22;
    twin.probe.diameterMm = 8;  // near field 8 mm
    expectUnsized(sized(atPath(twin, 20)), "only against a flat-bottomed hole");
    twin.reference.kind = ReferenceKind::BackWall;
    expectUnsized(sized(atPath(twin, 20)), "only against a flat-bottomed hole");
}

// At equal paths an echo 12 dB lower is a hole of half the diameter, whatever the probe.
TEST(SizeNotes, LeaveTwinCrystalsTheirComparison) {
    Reading twin = against(straightReading(), ReferenceKind::FlatBottomedHole, 20, 4);
    twin.probe.kind = ProbeKind::TwinCrystal;
    twin.echo.soundPathMm = 20;
    EXPECT_NEAR(sized(differing(twin, -12.0412)).fbhMm.value_or(0), 2, 1e-4);
}

TEST(SizeNotes, SayWhatLiesBeyondTheBackWall) {
    Reading reading = differing(straightReading(), -20);
    reading.part.thicknessMm = 249.9;
    const Size size = sized(reading);
    expectUnsized(size, "beyond the back wall");
    EXPECT_FALSE(size.depthMm);
    EXPECT_TRUE(size.echoDb);
    reading.part.thicknessMm = 250;
    EXPECT_TRUE(sized(reading).fbhMm);
    EXPECT_EQ(sized(reading).depthMm, 250.0);
}

TEST(SizeNotes, SayThatTheBoreIsMissed) {
    Reading reading = angleReading();
    // sin 45 is above 80 / 180.
    reading.part = {.thicknessMm = 100, .surface = ScanSurface::Outer, .radiusMm = 180};
    Size size = sized(reading);
    expectUnsized(size, "bore missed");
    EXPECT_TRUE(size.depthMm);
    // The chord is 2 x 180 x cos 45 = 254.6 mm long.
    reading.echo.soundPathMm = 255;
    size = sized(reading);
    expectUnsized(size, "bore missed: the beam passes the bore and comes out");
    EXPECT_FALSE(size.depthMm || size.surfaceDistanceMm);
}

TEST(SizeNotes, SayThatASizeIsClippedAtTheBackWall) {
    Reading reading = straightReading();
    reading.reference.echo.soundPathMm = 250;
    Size size = sized(differing(reading, 3));
    expectNote(size, "clipped at the back-wall curve");
    const double clipped = size.fbhMm.value_or(0);
    EXPECT_GT(clipped, 19.5);  // G = 1 at A = 5 is 0.24 dB below the back wall
    EXPECT_LT(clipped, 22);
    EXPECT_NEAR(sized(differing(reading, 30)).fbhMm.value_or(0), clipped, 1e-9);
    expectNoNote(sized(differing(reading, -3)), "clipped");

    // In the far field a disc of sqrt(2 lambda s / pi) echoes as a back wall.
    size = sized(differing(angleReading(), 45));
    expectNote(size, "clipped at the back-wall curve");
    EXPECT_NEAR(size.fbhMm.value_or(0), 8.740, 0.001);
}

TEST(SizeNotes, SayHowFarASideDrilledHoleHolds) {
    // Wavelength 2 mm: wide enough from 3 mm on, far enough from 35 mm on.
    const auto with = [](double pathMm, double diameterMm) {
        return sized(differing(
            against(straightReading(), ReferenceKind::SideDrilledHole, pathMm, diameterMm), -6));
    };
    EXPECT_TRUE(with(100, 3).fbhMm);
    expectNoNote(with(100, 3), "side-drilled");
    EXPECT_TRUE(with(100, 2.9).fbhMm);
    expectNote(with(100, 2.9), "narrower than 1.5 wavelengths (3 mm)");
    expectUnsized(with(34, 3), "nearer than 0.7 near fields");
}

TEST(SizeNotes, SayThatAReferenceHoleIsWiderThanTheElement) {
    expectUnsized(sized(against(straightReading(), ReferenceKind::FlatBottomedHole, 100, 21)),
                  "wider than the element");
}

TEST(SizeNotes, SayHowTheFarFieldFormulasDiffer) {
    // A = 1: far from the far field.
    const Size near = sized(atPath(straightReading(), 55));
    ASSERT_TRUE(near.fbhMm && near.farFieldFbhMm);
    expectNote(near, "the model rules, as the formulas hold from 3 near fields on");
    Reading far = straightReading();
    far.part.thicknessMm = 2000;
    far.reference.echo.soundPathMm = 1500;
    const Size size = sized(atPath(far, 1500));
    EXPECT_NEAR(size.farFieldFbhMm.value_or(0), size.fbhMm.value_or(1), 0.05);
    expectNoNote(size, "far-field formulas give");
}

TEST(SizeNotes, SayWhatAMissingAttenuationDoes) {
    Reading reading = differing(straightReading(), -20);
    reading.medium.attenuationDbPerM.reset();
    reading.reference.medium.attenuationDbPerM.reset();
    expectUnsized(sized(reading), "attenuation not given: no size");
    EXPECT_TRUE(sized(reading).echoDb);
    // Nearer than the reference it can only make the size too large; at its path it is the same.
    reading.echo.soundPathMm = 80;
    EXPECT_TRUE(sized(reading).fbhMm);
    expectNote(sized(reading), "the size is at most too large");
    reading.echo.soundPathMm = 100;
    EXPECT_TRUE(sized(reading).fbhMm);
    expectNoNote(sized(reading), "attenuation");
    // Of a block's attenuation nothing follows for the casting, nor the other way round.
    reading.reference.on = ReferencePlace::Block;
    expectUnsized(sized(reading), "attenuation not given");
    reading.reference.medium.attenuationDbPerM = 1;
    expectUnsized(sized(reading), "attenuation not given");
}

TEST(SizeNotes, SayThatAnEchoIsTooLow) {
    Reading reading = straightReading();
    reading.reference.echo = {.soundPathMm = 100, .gainDb = -20, .screenPercent = 100};
    reading.echo = {.soundPathMm = 250, .gainDb = 120, .screenPercent = 0.001};
    expectUnsized(sized(reading), "too low for a size");
}

TEST(SizeNotes, SayFromWhereTheSurfaceDistanceCounts) {
    Reading reading = angleReading();
    expectNoNote(sized(reading), "surface distance counts");
    reading.probe.frontMm.reset();
    EXPECT_NEAR(sized(reading).surfaceDistanceMm.value_or(0), 84.853, 0.001);
    expectNote(sized(reading), "the surface distance counts from the index point");
}

TEST(SizeNotes, SayWhatIsTakenOfAnAngleProbe) {
    Reading reading = angleReading();
    expectNoNote(sized(reading), "angle is taken");
    reading.reference.on = ReferencePlace::Block;
    reading.reference.medium.velocityMPerS = 3255;
    expectNote(sized(reading), "the probe's angle is taken as that in the casting");
    reading.reference.kind = ReferenceKind::BackWall;
    expectNote(sized(reading), "a flat wall square to the beam");
}

TEST(SizeNotes, SayWhatACurvedBackWallDoes) {
    Reading reading = straightReading();
    reading.part = {.thicknessMm = 300, .surface = ScanSurface::Inner, .radiusMm = 400};
    expectNote(sized(reading), "sizes come out too small");
    reading.part.surface = ScanSurface::Outer;
    expectNote(sized(reading), "computed as on a flat one");
}

TEST(SizeNotes, NameWhatIsOfNoUse) {
    Reading reading = straightReading();
    expectNoNote(sized(reading), "of no use");
    reading.probe.widthMm = 8;
    reading.probe.angleDeg = 45;
    reading.part.radiusMm = 500;
    reading.reference.diameterMm = 3;
    expectNote(sized(reading),
               "of no use for this probe, surface and reference: probe.width_mm, probe.angle_deg, "
               "part.radius_mm, reference.diameter_mm");
    // A straight beam is straight.
    EXPECT_EQ(sized(reading).depthMm, 250.0);
}

}  // namespace
}  // namespace model
