// SPDX-License-Identifier: Apache-2.0
// A row and its setting make a reading of the contract's fettlemark-reading/1.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "typed_rows.h"

namespace model {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::UnorderedElementsAre;

std::vector<std::string> wrongFields(const TypedReflector& row, const TypedSetting& setting) {
    std::vector<std::string> fields;
    const ReadReading result = readingOf(row, setting);
    EXPECT_EQ(result.value.has_value(), result.errors.empty());
    for (const FieldError& wrong : result.errors) {
        EXPECT_FALSE(wrong.error.reason.empty());
        fields.push_back(wrong.field);
    }
    return fields;
}

TEST(TypedReading, TakesEveryField) {
    TypedSetting setting = angleSetting();
    setting.attenuation = "4,5";
    setting.referenceAttenuation = "1";
    setting.referenceVelocity = "3230";
    TypedReflector row = angleRow();
    row.drop = "20";
    row.along = "35";
    row.across = "12.5";
    const ReadReading read = readingOf(row, setting);
    ASSERT_TRUE(read.value);
    const Reading& reading = *read.value;
    EXPECT_EQ(reading.probe.kind, ProbeKind::AngleBeam);
    EXPECT_EQ(reading.probe.element, ElementShape::Rectangular);
    EXPECT_FALSE(reading.probe.diameterMm);
    EXPECT_EQ(reading.probe.widthMm, 8);
    EXPECT_EQ(reading.probe.lengthMm, 9);
    EXPECT_EQ(reading.probe.frequencyMhz, 2.25);
    EXPECT_EQ(reading.probe.angleDeg, 45);
    EXPECT_EQ(reading.probe.frontMm, 12);
    EXPECT_EQ(reading.medium.velocityMPerS, 3080);
    EXPECT_EQ(reading.medium.attenuationDbPerM, 4.5);
    EXPECT_EQ(reading.part.thicknessMm, 60);
    EXPECT_EQ(reading.part.surface, ScanSurface::Outer);
    EXPECT_EQ(reading.part.radiusMm, 500);
    EXPECT_EQ(reading.reference.kind, ReferenceKind::SideDrilledHole);
    EXPECT_EQ(reading.reference.on, ReferencePlace::Block);
    EXPECT_EQ(reading.reference.medium.velocityMPerS, 3230);
    EXPECT_EQ(reading.reference.medium.attenuationDbPerM, 1);
    EXPECT_EQ(reading.reference.diameterMm, 3);
    EXPECT_EQ(reading.reference.echo.soundPathMm, 80);
    EXPECT_EQ(reading.reference.echo.gainDb, -3.5);
    EXPECT_EQ(reading.reference.echo.screenPercent, 80);
    EXPECT_EQ(reading.transferDb, 2);
    EXPECT_EQ(reading.echo.soundPathMm, 70);
    EXPECT_EQ(reading.echo.gainDb, 40);
    EXPECT_EQ(reading.echo.screenPercent, 60);
    ASSERT_TRUE(reading.movement);
    EXPECT_EQ(reading.movement->dropDb, 20);
    EXPECT_EQ(reading.movement->alongMm, 35);
    EXPECT_EQ(reading.movement->acrossMm, 12.5);
}

TEST(TypedReading, LeavesOutWhatItsKindsDoNotNeed) {
    TypedSetting setting = straightSetting();
    setting.elementWidth = "?";
    setting.probeAngle = "?";
    setting.front = "?";
    setting.radius = "?";
    setting.referenceDiameter = "?";
    const ReadReading read = readingOf(straightRow(), setting);
    ASSERT_TRUE(read.value);
    EXPECT_EQ(read.value->probe.diameterMm, 24);
    EXPECT_FALSE(read.value->probe.widthMm);
    EXPECT_FALSE(read.value->probe.angleDeg);
    EXPECT_FALSE(read.value->probe.frontMm);
    EXPECT_FALSE(read.value->part.radiusMm);
    EXPECT_FALSE(read.value->reference.diameterMm);
    EXPECT_FALSE(read.value->movement);
}

TEST(TypedReading, NamesEveryFieldThatIsMissing) {
    TypedSetting setting;
    EXPECT_THAT(
        wrongFields(TypedReflector(), setting),
        ElementsAre("probe.kind", "probe.element", "probe.diameter_mm", "probe.frequency_mhz",
                    "material.velocity_m_s", "part.thickness_mm", "part.surface", "reference.kind",
                    "reference.sound_path_mm", "reference.gain_db", "reference.screen_percent",
                    "echo.sound_path_mm", "echo.gain_db", "echo.screen_percent"));
    setting = angleSetting();
    setting.elementWidth = setting.elementLength = setting.probeAngle = "";
    setting.radius = setting.referenceDiameter = setting.transfer = "";
    EXPECT_THAT(wrongFields(angleRow(), setting),
                ElementsAre("probe.width_mm", "probe.length_mm", "probe.angle_deg",
                            "part.radius_mm", "reference.diameter_mm", "transfer_db"));
}

TEST(TypedReading, NamesWhatIsNoNumberAndWhatIsNoSize) {
    TypedSetting setting = straightSetting();
    setting.diameter = "0";
    setting.frequency = "2 MHz";
    setting.velocity = "-5920";
    setting.attenuation = "-1";
    setting.thickness = "1/2";
    setting.referenceGain = "1e1";
    TypedReflector row = straightRow();
    row.soundPath = "0";
    row.screen = "0";
    row.along = "-1";
    EXPECT_THAT(
        wrongFields(row, setting),
        UnorderedElementsAre("probe.diameter_mm", "probe.frequency_mhz", "material.velocity_m_s",
                             "material.attenuation_db_per_m", "part.thickness_mm",
                             "reference.gain_db", "echo.sound_path_mm", "echo.screen_percent",
                             "movement.drop_db", "movement.along_mm"));
}

TEST(TypedReading, TakesOnlyTheContractsWords) {
    TypedSetting setting = straightSetting();
    setting.kind = "curved";
    setting.element = "oval";
    setting.surface = "bumpy";
    setting.reference = "notch";
    setting.referenceOn = "shelf";
    EXPECT_THAT(wrongFields(straightRow(), setting),
                UnorderedElementsAre("probe.kind", "probe.element", "part.surface",
                                     "reference.kind", "reference.on"));
}

// Source: 1 in = 25.4 mm exactly (international yard and pound agreement, 1959).
TEST(TypedReadingOracle, ConvertsLengthsOfEachWithItsOwnUnit) {
    TypedSetting setting = straightSetting();
    setting.unit = LengthUnit::Inch;
    setting.diameter = "1";
    setting.thickness = "12";
    setting.referencePath = "10 1/2";
    TypedReflector row = straightRow();
    row.soundPath = "200";
    const ReadReading read = readingOf(row, setting);
    ASSERT_TRUE(read.value);
    EXPECT_DOUBLE_EQ(*read.value->probe.diameterMm, 25.4);
    EXPECT_DOUBLE_EQ(read.value->part.thicknessMm, 304.8);
    EXPECT_DOUBLE_EQ(read.value->reference.echo.soundPathMm, 266.7);
    EXPECT_DOUBLE_EQ(read.value->reference.medium.velocityMPerS, 5920);
    EXPECT_DOUBLE_EQ(read.value->echo.soundPathMm, 200);
}

TEST(TypedReading, TakesNoAttenuationForUnknownAndNotForZero) {
    TypedSetting setting = straightSetting();
    EXPECT_FALSE(readingOf(straightRow(), setting).value->medium.attenuationDbPerM);
    EXPECT_FALSE(readingOf(straightRow(), setting).value->reference.medium.attenuationDbPerM);
    setting.attenuation = "0";
    EXPECT_EQ(readingOf(straightRow(), setting).value->medium.attenuationDbPerM, 0.0);
    setting.attenuation = " ";
    setting.referenceAttenuation = "3";
    EXPECT_FALSE(readingOf(straightRow(), setting).value->medium.attenuationDbPerM);
    EXPECT_EQ(readingOf(straightRow(), setting).value->reference.medium.attenuationDbPerM, 3.0);
}

TEST(TypedReading, TakesTheMaterialsVelocityAndAttenuationForTheReference) {
    TypedSetting setting = straightSetting();
    setting.attenuation = "7";
    const ReadReading read = readingOf(straightRow(), setting);
    ASSERT_TRUE(read.value);
    EXPECT_EQ(read.value->reference.medium.velocityMPerS, 5920);
    EXPECT_EQ(read.value->reference.medium.attenuationDbPerM, 7);
}

TEST(TypedReading, HasNoTransferOnTheCasting) {
    TypedSetting setting = straightSetting();
    setting.transfer = "0.0";
    EXPECT_THAT(wrongFields(straightRow(), setting), IsEmpty());
    setting.transfer = "0.1";
    EXPECT_THAT(wrongFields(straightRow(), setting), ElementsAre("transfer_db"));
    setting.referenceOn = "block";
    EXPECT_EQ(readingOf(straightRow(), setting).value->transferDb, 0.1);
}

TEST(TypedReading, IsThereOnlyWithAFieldOfIts) {
    TypedReflector row;
    row.id = "u1";
    row.setting = "MB4S";
    row.drop = "6";
    EXPECT_FALSE(hasReading(row));
    EXPECT_TRUE(isBlank(row));
    for (auto field : {&TypedReflector::soundPath, &TypedReflector::gain, &TypedReflector::screen,
                       &TypedReflector::along, &TypedReflector::across}) {
        TypedReflector started = row;
        started.*field = " ";
        EXPECT_FALSE(hasReading(started));
        started.*field = "?";
        EXPECT_TRUE(hasReading(started));
        EXPECT_FALSE(isBlank(started));
    }
    for (auto field :
         {&TypedReflector::x, &TypedReflector::y, &TypedReflector::heading, &TypedReflector::depth,
          &TypedReflector::fbh, &TypedReflector::length, &TypedReflector::width,
          &TypedReflector::throughWall, &TypedReflector::angle, &TypedReflector::area,
          &TypedReflector::backWallLoss, &TypedReflector::backWallLossExplained,
          &TypedReflector::overReference, &TypedReflector::wall, &TypedReflector::notMeasurable,
          &TypedReflector::kind, &TypedReflector::relevance, &TypedReflector::reason}) {
        TypedReflector started = row;
        started.*field = "?";
        EXPECT_FALSE(hasReading(started));
        EXPECT_FALSE(isBlank(started));
    }
}

}  // namespace
}  // namespace model
