// SPDX-License-Identifier: Apache-2.0
// Readings that cannot be: refused with the field that is wrong.
#include <functional>
#include <limits>

#include "reading_maker.h"

namespace model {
namespace {

using testing::HasSubstr;

void expectRefused(const Reading& reading, const std::string& field, const std::string& reason) {
    const Result<Size> size = sizeOf(reading);
    ASSERT_FALSE(size.ok()) << field << ": " << reason;
    EXPECT_EQ(size.error().kind, ErrorKind::Input);
    EXPECT_EQ(size.error().place, field);
    EXPECT_THAT(size.error().message(), HasSubstr(reason));
}

using Change = std::function<void(Reading&)>;

void expectRefused(const Change& change, const std::string& field, const std::string& reason) {
    Reading reading = straightReading();
    reading.movement = ProbeMovement{.dropDb = 6, .alongMm = 40, .acrossMm = 40};
    change(reading);
    expectRefused(reading, field, reason);
}

void expectAngleRefused(const Change& change, const std::string& field, const std::string& reason) {
    Reading reading = angleReading();
    change(reading);
    expectRefused(reading, field, reason);
}

TEST(SizeRefusals, NameAnAnglePastCritical) {
    expectAngleRefused([](Reading& r) { r.probe.angleDeg = 90; }, "probe.angle_deg",
                       "is 90, past critical");
    expectAngleRefused([](Reading& r) { r.probe.angleDeg = 95; }, "probe.angle_deg", "critical");
    expectRefused([](Reading& r) { r.probe.angleDeg = 95; }, "probe.angle_deg", "critical");
    // sin 70 x 3600 / 3200 is above 1: no beam in the block.
    expectAngleRefused(
        [](Reading& r) {
            r.probe.angleDeg = 70;
            r.reference.on = ReferencePlace::Block;
            r.reference.medium.velocityMPerS = 3600;
        },
        "probe.angle_deg", "past critical for the reference block");
    expectAngleRefused([](Reading& r) { r.probe.angleDeg = 0; }, "probe.angle_deg",
                       "greater than 0");
    expectAngleRefused([](Reading& r) { r.probe.angleDeg.reset(); }, "probe.angle_deg",
                       "is missing");
}

TEST(SizeRefusals, NameAScreenHeightThatIsNone) {
    for (const double screen : {0.0, -5.0, 100.000001, std::numeric_limits<double>::quiet_NaN()}) {
        expectRefused([&](Reading& r) { r.echo.screenPercent = screen; }, "echo.screen_percent",
                      "above 0 and at most 100");
        expectRefused([&](Reading& r) { r.reference.echo.screenPercent = screen; },
                      "reference.screen_percent", "above 0 and at most 100");
    }
    Reading reading = straightReading();
    reading.echo.screenPercent = 100;
    EXPECT_TRUE(sizeOf(reading).ok());
}

TEST(SizeRefusals, NameAGainThatNoInstrumentHas) {
    for (const double gain : {-20.000001, 120.000001, 1e300}) {
        expectRefused([&](Reading& r) { r.echo.gainDb = gain; }, "echo.gain_db", "from -20 to 120");
        expectRefused([&](Reading& r) { r.reference.echo.gainDb = gain; }, "reference.gain_db",
                      "from -20 to 120");
    }
    Reading reading = straightReading();
    reading.echo.gainDb = 120;
    reading.reference.echo.gainDb = -20;
    EXPECT_TRUE(sizeOf(reading).ok());
}

TEST(SizeRefusals, NameAPathPastTheThirdLeg) {
    // 3 x 100 / cos 45 = 424.26.
    expectAngleRefused([](Reading& r) { r.echo.soundPathMm = 424.3; }, "echo.sound_path_mm",
                       "past the third leg");
    Reading reading = angleReading();
    reading.echo.soundPathMm = 424.2;
    EXPECT_EQ(sized(reading).leg, 3);
    expectRefused([](Reading& r) { r.echo.soundPathMm = 900.1; }, "echo.sound_path_mm",
                  "past the third leg");
}

TEST(SizeRefusals, NameATransferOnTheCasting) {
    expectRefused([](Reading& r) { r.transferDb = 2; }, "transfer_db", "is 2, but must be 0");
    Reading reading = straightReading();
    reading.transferDb = 2;
    reading.reference.on = ReferencePlace::Block;
    EXPECT_TRUE(sizeOf(reading).ok());
}

TEST(SizeRefusals, NameWhatAKindNeeds) {
    expectRefused([](Reading& r) { r.probe.diameterMm.reset(); }, "probe.diameter_mm",
                  "a round element needs it");
    expectAngleRefused([](Reading& r) { r.probe.widthMm.reset(); }, "probe.width_mm",
                       "a rectangular element needs it");
    expectAngleRefused([](Reading& r) { r.probe.lengthMm.reset(); }, "probe.length_mm",
                       "a rectangular element needs it");
    expectAngleRefused([](Reading& r) { r.reference.diameterMm.reset(); }, "reference.diameter_mm",
                       "a hole needs it");
    expectRefused([](Reading& r) { r.part.surface = ScanSurface::Inner; }, "part.radius_mm",
                  "a curved surface needs it");
    expectRefused(
        [](Reading& r) {
            r.part.surface = ScanSurface::Outer;
            r.part.radiusMm = 300;
        },
        "part.radius_mm", "must be above the thickness");
}

TEST(SizeRefusals, NameWhatMustBeAboveZero) {
    for (const double value : {0.0, -1.0}) {
        const std::string reason = "greater than 0";
        expectRefused([&](Reading& r) { r.probe.diameterMm = value; }, "probe.diameter_mm", reason);
        expectRefused([&](Reading& r) { r.probe.widthMm = value; }, "probe.width_mm", reason);
        expectRefused([&](Reading& r) { r.probe.lengthMm = value; }, "probe.length_mm", reason);
        expectRefused([&](Reading& r) { r.probe.frequencyMhz = value; }, "probe.frequency_mhz",
                      reason);
        expectRefused([&](Reading& r) { r.medium.velocityMPerS = value; }, "material.velocity_m_s",
                      reason);
        expectRefused([&](Reading& r) { r.part.thicknessMm = value; }, "part.thickness_mm", reason);
        expectRefused([&](Reading& r) { r.part.radiusMm = value; }, "part.radius_mm", reason);
        expectRefused([&](Reading& r) { r.reference.medium.velocityMPerS = value; },
                      "reference.velocity_m_s", reason);
        expectRefused([&](Reading& r) { r.reference.diameterMm = value; }, "reference.diameter_mm",
                      reason);
        expectRefused([&](Reading& r) { r.reference.echo.soundPathMm = value; },
                      "reference.sound_path_mm", reason);
        expectRefused([&](Reading& r) { r.echo.soundPathMm = value; }, "echo.sound_path_mm",
                      reason);
    }
}

TEST(SizeRefusals, NameWhatMustNotBeNegative) {
    const std::string reason = "must not be negative, as -1 is";
    expectRefused([](Reading& r) { r.probe.frontMm = -1; }, "probe.front_mm", reason);
    expectRefused([](Reading& r) { r.medium.attenuationDbPerM = -1; },
                  "material.attenuation_db_per_m", reason);
    expectRefused([](Reading& r) { r.reference.medium.attenuationDbPerM = -1; },
                  "reference.attenuation_db_per_m", reason);
    expectRefused([](Reading& r) { r.movement->alongMm = -1; }, "movement.along_mm", reason);
    expectRefused([](Reading& r) { r.movement->acrossMm = -1; }, "movement.across_mm", reason);
}

TEST(SizeRefusals, NameADropThatIsNotUsed) {
    for (const double drop : {0.0, 12.0, -6.0})
        expectRefused([&](Reading& r) { r.movement->dropDb = drop; }, "movement.drop_db",
                      "must be 6 or 20");
}

TEST(SizeRefusals, NameWhatIsNoNumber) {
    const double none = std::numeric_limits<double>::quiet_NaN();
    const double endless = std::numeric_limits<double>::infinity();
    expectRefused([&](Reading& r) { r.echo.soundPathMm = none; }, "echo.sound_path_mm", "number");
    expectRefused([&](Reading& r) { r.part.thicknessMm = endless; }, "part.thickness_mm", "number");
    expectRefused([&](Reading& r) { r.movement->alongMm = none; }, "movement.along_mm", "number");
    expectRefused(
        [&](Reading& r) {
            r.reference.on = ReferencePlace::Block;
            r.transferDb = endless;
        },
        "transfer_db", "number");
}

}  // namespace
}  // namespace model
