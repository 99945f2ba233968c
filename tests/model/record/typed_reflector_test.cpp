// SPDX-License-Identifier: Apache-2.0
// A row of a bench's ultrasonic list becomes a reflector, by what was typed and by what was read.
#include "record/typed_reflector.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "typed_rows.h"

namespace model {
namespace {

using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;

const std::vector<TypedSetting>& settings() {
    static const std::vector<TypedSetting> all{straightSetting(), angleSetting()};
    return all;
}

std::vector<std::string> wrongFields(const TypedReflector& row,
                                     const std::vector<TypedSetting>& with = settings()) {
    std::vector<std::string> fields;
    const ReadReflector result = read(row, with);
    EXPECT_EQ(result.value.has_value(), result.errors.empty());
    for (const FieldError& wrong : result.errors) {
        EXPECT_EQ(wrong.error.kind, ErrorKind::Input);
        EXPECT_EQ(wrong.error.place, "");
        EXPECT_FALSE(wrong.error.reason.empty());
        fields.push_back(wrong.field);
    }
    return fields;
}

TypedReflector typedRow() {
    TypedReflector row;
    row.id = "u1";
    row.x = "120";
    row.y = "-80,25";
    row.depth = "0";
    row.fbh = "2.7";
    row.length = "22";
    row.width = "9";
    row.angle = "30.5";
    row.area = "155";
    row.backWallLoss = "6";
    row.backWallLossExplained = " by the rib below ";
    row.overReference = "-2,5";
    row.wall = "60";
    row.notMeasurable = "through_wall";
    row.kind = "planar";
    row.relevance = "false";
    row.reason = "the rib's corner";
    return row;
}

/// Against a hole of 2 mm in the casting, 200 mm deep, with a rectangular element, which is sized
/// by the far-field formulas alone.
TypedSetting rectangularSetting() {
    TypedSetting setting = straightSetting();
    setting.element = "rectangular";
    setting.elementWidth = "8";
    setting.elementLength = "9";
    setting.attenuation = "0";
    setting.reference = "flat-bottomed hole";
    setting.referenceDiameter = "2";
    setting.referencePath = "200";
    return setting;
}

TEST(TypedReflector, TakesEveryFieldAsTyped) {
    const ReadReflector result = read(typedRow(), {});
    ASSERT_TRUE(result.value);
    EXPECT_FALSE(result.size);
    const Reflector& reflector = *result.value;
    EXPECT_EQ(reflector.id, "u1");
    EXPECT_EQ(reflector.x, millimetres(120));
    EXPECT_EQ(reflector.y, nanometres(-80'250'000));
    EXPECT_EQ(reflector.depth, Length());
    EXPECT_EQ(reflector.fbh, nanometres(2'700'000));
    EXPECT_EQ(reflector.length, millimetres(22));
    EXPECT_EQ(reflector.width, millimetres(9));
    EXPECT_FALSE(reflector.throughWall);
    EXPECT_EQ(reflector.angle, Angle::fromMillionths(30'500'000));
    EXPECT_EQ(reflector.area, squareMillimetres(155));
    EXPECT_EQ(reflector.backWallLoss, decibels(6));
    EXPECT_EQ(reflector.backWallLossExplained, "by the rib below");
    EXPECT_EQ(reflector.overReference, GainStep::fromMillionths(-2'500'000));
    EXPECT_EQ(reflector.wall, millimetres(60));
    EXPECT_FALSE(reflector.lengthNotMeasurable);
    EXPECT_FALSE(reflector.widthNotMeasurable);
    EXPECT_TRUE(reflector.throughWallNotMeasurable);
    EXPECT_EQ(reflector.kind, Kind::Planar);
    EXPECT_EQ(reflector.relevance, Relevance::False);
    EXPECT_EQ(reflector.reason, "the rib's corner");
}

TEST(TypedReflector, TakesEmptyAsNotMeasured) {
    TypedReflector row;
    row.id = "u1";
    row.x = row.y = "1";
    const ReadReflector result = read(row, {});
    ASSERT_TRUE(result.value);
    const Reflector& reflector = *result.value;
    EXPECT_FALSE(reflector.depth || reflector.fbh || reflector.length || reflector.width ||
                 reflector.throughWall || reflector.area || reflector.backWallLoss ||
                 reflector.overReference || reflector.wall || reflector.kind);
    EXPECT_FALSE(reflector.lengthNotMeasurable || reflector.widthNotMeasurable ||
                 reflector.throughWallNotMeasurable);
    EXPECT_EQ(reflector.angle, Angle());
    EXPECT_EQ(reflector.relevance, Relevance::Relevant);
}

// Source: 1 in = 25.4 mm exactly (international yard and pound agreement, 1959).
TEST(TypedReflectorOracle, ConvertsInchEntriesExactly) {
    TypedReflector row = typedRow();
    row.unit = LengthUnit::Inch;
    row.depth = "1 3/8";
    row.fbh = "5/64";
    row.wall = ".5";
    const auto result = read(row, {});
    ASSERT_TRUE(result.value);
    EXPECT_EQ(result.value->depth, nanometres(34'925'000));
    EXPECT_EQ(result.value->fbh, nanometres(1'984'375));
    EXPECT_EQ(result.value->wall, nanometres(12'700'000));
    EXPECT_EQ(result.value->area, squareMillimetres(155));  // mm2 in either unit
}

TEST(TypedReflector, NamesEveryWrongFieldAtOnce) {
    TypedReflector row;
    row.depth = "-1";
    row.fbh = "0";
    row.length = "1e3";
    row.throughWall = "four";
    row.wall = "0";
    row.area = "-1";
    row.backWallLoss = "-0.5";
    row.overReference = "loud";
    row.angle = "east";
    row.notMeasurable = "depth";
    row.kind = "crack";
    row.relevance = "maybe";
    EXPECT_THAT(wrongFields(row),
                testing::UnorderedElementsAre("id", "x_mm", "y_mm", "depth_mm", "fbh_mm",
                                              "length_mm", "through_wall_mm", "wall_mm", "area_mm2",
                                              "back_wall_loss_db", "over_reference_db", "angle_deg",
                                              "not_measurable", "kind", "relevance"));
}

TEST(TypedReflector, RefusesAWidthAboveTheLengthOrWithoutOne) {
    TypedReflector row = typedRow();
    row.width = "22.000001";
    EXPECT_THAT(wrongFields(row), ElementsAre("width_mm"));
    row.width = "22";
    EXPECT_TRUE(wrongFields(row).empty());
    row.length = "";
    EXPECT_THAT(wrongFields(row), ElementsAre("width_mm"));
}

TEST(TypedReflector, RefusesASizeThatIsStatedAsNotMeasurable) {
    TypedReflector row = typedRow();
    row.notMeasurable = "  width\tlength through_wall ";
    EXPECT_THAT(wrongFields(row), ElementsAre("not_measurable", "not_measurable"));
    row.length = row.width = "";
    const auto result = read(row, {});
    ASSERT_TRUE(result.value);
    EXPECT_TRUE(result.value->lengthNotMeasurable && result.value->widthNotMeasurable &&
                result.value->throughWallNotMeasurable);
}

TEST(TypedReflector, ExplainsOnlyALossThatIsGiven) {
    TypedReflector row = typedRow();
    row.backWallLoss = " ";
    EXPECT_THAT(wrongFields(row), ElementsAre("back_wall_loss_explained"));
    row.backWallLossExplained = " ";
    EXPECT_TRUE(wrongFields(row).empty());
}

TEST(TypedReflector, NeedsAReasonForWhatIsNotRelevant) {
    TypedReflector row = typedRow();
    row.reason = " ";
    EXPECT_THAT(wrongFields(row), ElementsAre("reason"));
    row.relevance = "";
    EXPECT_TRUE(wrongFields(row).empty());
}

// Source: the far-field relation of two flat-bottomed holes, Df = Dr (sf / sr) 10^(dV / 40): 10 dB
// above 2 mm at 200 mm, met at 150 mm, is 2 x 0.75 x 10^0.25 = 2.66742 mm (a question bank's worked
// case, which gives 2.7 mm).
TEST(TypedReflectorOracle, TakesDepthAndSizeFromTheReading) {
    TypedReflector row = straightRow();
    row.soundPath = "150";
    row.gain = "20";  // 10 dB less than the reference for the same height
    const auto result = read(row, {rectangularSetting()});
    ASSERT_TRUE(result.value);
    ASSERT_TRUE(result.size);
    EXPECT_EQ(result.value->depth, millimetres(150));
    EXPECT_EQ(result.value->fbh, nanometres(2'667'000));
    EXPECT_EQ(result.value->x, millimetres(120));
    EXPECT_EQ(result.value->y, nanometres(80'500'000));
    EXPECT_FALSE(result.value->length || result.value->width || result.value->throughWall);
    EXPECT_FALSE(result.value->lengthNotMeasurable || result.value->widthNotMeasurable);
    EXPECT_FALSE(result.value->overReference);
}

TEST(TypedReflector, TakesWhatWasTypedBeforeWhatTheReadingGives) {
    TypedReflector row = straightRow();
    row.depth = "149.5";
    row.fbh = "3";
    row.length = "61";
    row.width = "7";
    row.drop = "6";
    row.along = "90";
    row.across = "5";
    const auto result = read(row, {rectangularSetting()});
    ASSERT_TRUE(result.value);
    EXPECT_TRUE(result.size);
    EXPECT_EQ(result.value->depth, nanometres(149'500'000));
    EXPECT_EQ(result.value->fbh, millimetres(3));
    EXPECT_EQ(result.value->length, millimetres(61));
    EXPECT_EQ(result.value->width, millimetres(7));
    EXPECT_FALSE(result.value->widthNotMeasurable);
}

// At 150 mm the half-value beam of 2.96 mm waves from sides of 8 and 9 mm is some 45 mm wide.
TEST(TypedReflector, TakesMovementsAboveTheBeamAndNamesThoseWithin) {
    TypedReflector row = straightRow();
    row.soundPath = "150";
    row.drop = "6";
    row.along = "90";
    row.across = "20";
    auto result = read(row, {rectangularSetting()});
    ASSERT_TRUE(result.value);
    EXPECT_EQ(result.value->length, millimetres(90));
    EXPECT_FALSE(result.value->lengthNotMeasurable);
    EXPECT_FALSE(result.value->width);
    EXPECT_TRUE(result.value->widthNotMeasurable);
    row.across = "";
    row.along = "20";
    result = read(row, {rectangularSetting()});
    ASSERT_TRUE(result.value);
    EXPECT_TRUE(result.value->lengthNotMeasurable);
    EXPECT_FALSE(result.value->width || result.value->widthNotMeasurable);
    // What was measured is not stated away.
    row.along = "90";
    row.notMeasurable = "length";
    EXPECT_THAT(wrongFields(row, {rectangularSetting()}), ElementsAre("not_measurable"));
    // The longer movement is the length.
    row.notMeasurable = "";
    row.across = "120";
    EXPECT_THAT(wrongFields(row, {rectangularSetting()}), ElementsAre("movement.across_mm"));
    row.along = "";
    EXPECT_THAT(wrongFields(row, {rectangularSetting()}), ElementsAre("movement.across_mm"));
}

// By hand, on a flat part: 70 mm at 45 degrees are 49.497 mm deep and 49.497 - 12 = 37.497 mm ahead
// of the front; 37.49747 x cos 30 = 32.474, x sin 30 = 18.749.
TEST(TypedReflectorOracle, FollowsTheHeadingFromTheProbesFront) {
    TypedSetting setting = angleSetting();
    setting.surface = "flat";
    TypedReflector row = angleRow();
    row.x = "100";
    row.y = "200";
    EXPECT_EQ(read(row, {setting}).value->x, millimetres(100));
    row.heading = "30";
    auto result = read(row, {setting});
    ASSERT_TRUE(result.value);
    EXPECT_EQ(result.value->depth, nanometres(49'497'000));
    EXPECT_EQ(result.value->x, nanometres(132'474'000));
    EXPECT_EQ(result.value->y, nanometres(218'749'000));
    row.heading = "-90";
    result = read(row, {setting});
    EXPECT_EQ(result.value->x, millimetres(100));
    EXPECT_EQ(result.value->y, nanometres(200'000'000 - 37'497'000));
}

TEST(TypedReflector, NeedsAPlaceAheadForAHeading) {
    TypedReflector row = typedRow();
    row.heading = "0";
    EXPECT_THAT(wrongFields(row), ElementsAre("heading_deg"));
    TypedSetting setting = angleSetting();
    setting.front = "";
    row = angleRow();
    row.heading = "0";
    EXPECT_THAT(wrongFields(row, {setting}), ElementsAre("heading_deg"));
    row.heading = "north";
    EXPECT_THAT(wrongFields(row), ElementsAre("heading_deg"));
}

TEST(TypedReflector, NeedsOneSettingOfThatName) {
    TypedReflector row = straightRow();
    row.setting = "";
    EXPECT_THAT(wrongFields(row), ElementsAre("setting"));
    row.setting = "S25";
    EXPECT_THAT(wrongFields(row), ElementsAre("setting"));
    row.setting = " S24 ";
    EXPECT_TRUE(wrongFields(row).empty());
    EXPECT_THAT(wrongFields(row, {straightSetting(), straightSetting()}), ElementsAre("setting"));
}

TEST(TypedReflector, NamesTheFieldOfAReadingThatIsWrong) {
    TypedReflector row = straightRow();
    row.heading = "0";
    row.gain = "";
    EXPECT_THAT(wrongFields(row), ElementsAre("echo.gain_db"));
    row.gain = "121";
    EXPECT_THAT(wrongFields(row), ElementsAre("echo.gain_db"));
    row.gain = "40";
    row.screen = "100.1";
    EXPECT_THAT(wrongFields(row), ElementsAre("echo.screen_percent"));
    row.screen = "80";
    row.soundPath = "901";  // three legs of 300 mm end before
    EXPECT_THAT(wrongFields(row), ElementsAre("echo.sound_path_mm"));
}

// Unknown is not 0: the size says so.
TEST(TypedReflector, NotesThatAttenuationIsNotKnown) {
    const auto result = read(straightRow(), settings());
    ASSERT_TRUE(result.size);
    EXPECT_THAT(result.size->notes, Contains(HasSubstr("attenuation")));
}

}  // namespace
}  // namespace model
