// SPDX-License-Identifier: Apache-2.0
#include "record/records.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "typed_rows.h"

namespace model {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;

TypedIndication row(const std::string& id, const std::string& x) {
    TypedIndication typed;
    typed.id = id;
    typed.x = x;
    typed.y = "20";
    typed.length = "3";
    typed.width = "1";
    return typed;
}

CastingFile castingFile() {
    CastingFile file;
    file.casting = {"S-17", "H-4", "O-1", "P-9", 1};
    file.part.number = "P-9";
    file.part.drawing = "D-100";
    file.part.material = Material::SpheroidalGraphiteIron;
    file.order.number = "O-1";
    file.order.forbiddenKinds = {Kind::Crack, Kind::HotTear};
    ExaminationDraft draft;
    draft.id = 5;
    draft.casting = "S-17";
    draft.header.zone = "Z1";
    draft.header.method = Method::Penetrant;
    draft.header.stage = Stage::RoughMachined;
    draft.header.repairCycle = 2;
    draft.header.repeat = 1;
    draft.header.thickness = millimetres(40);
    draft.header.table = "T";
    draft.header.levels = {{"linear", "LP 3"}};
    draft.header.forbiddenKinds = {Kind::Chaplet, Kind::Crack};
    draft.header.notExamined = {{squareMillimetres(400), "riser stub", "A-1"}};
    draft.rows = {row("1", "10"), row("2", "30")};
    file.examinations = {draft};
    return file;
}

TEST(SheetOf, TakesCastingPartAndEveryExamination) {
    CastingFile file = castingFile();
    file.examinations.push_back(file.examinations.front());
    file.examinations.back().header.zone = "Z2";
    file.examinations.back().header.noIndications = true;
    file.examinations.back().rows.clear();
    const auto sheet = sheetOf(file);
    ASSERT_TRUE(sheet.ok());
    EXPECT_EQ(sheet->casting.serial, "S-17");
    EXPECT_EQ(sheet->casting.heat, "H-4");
    EXPECT_EQ(sheet->casting.part, "P-9");
    EXPECT_EQ(sheet->casting.drawing, "D-100");
    EXPECT_EQ(sheet->casting.material, Material::SpheroidalGraphiteIron);
    ASSERT_EQ(sheet->examinations.size(), 2u);
    const Examination& first = sheet->examinations[0];
    EXPECT_EQ(first.zone, "Z1");
    EXPECT_EQ(first.method, Method::Penetrant);
    EXPECT_EQ(first.stage, Stage::RoughMachined);
    EXPECT_EQ(first.repairCycle, 2);
    EXPECT_EQ(first.repeat, 1);
    EXPECT_EQ(first.thickness, millimetres(40));
    EXPECT_EQ(first.table, "T");
    EXPECT_EQ(first.levels, (std::map<std::string, std::string>{{"linear", "LP 3"}}));
    ASSERT_EQ(first.notExamined.size(), 1u);
    EXPECT_EQ(first.notExamined[0].agreed, "A-1");
    EXPECT_FALSE(first.noIndications);
    ASSERT_EQ(first.indications.size(), 2u);
    EXPECT_EQ(first.indications[1].x, millimetres(30));
    EXPECT_EQ(sheet->examinations[1].zone, "Z2");
    EXPECT_TRUE(sheet->examinations[1].noIndications);
    EXPECT_TRUE(sheet->examinations[1].indications.empty());
}

TEST(SheetOf, AddsTheOrdersForbiddenKindsToEachExaminations) {
    const auto sheet = sheetOf(castingFile());
    ASSERT_TRUE(sheet.ok());
    EXPECT_THAT(sheet->examinations[0].forbiddenKinds,
                ElementsAre(Kind::Chaplet, Kind::Crack, Kind::HotTear));
}

TEST(SheetOf, PassesOverRowsWithoutAnyText) {
    CastingFile file = castingFile();
    TypedIndication blank;
    blank.id = "9";
    file.examinations[0].rows = {TypedIndication(), row("1", "10"), blank, row("2", "30")};
    const auto sheet = sheetOf(file);
    ASSERT_TRUE(sheet.ok());
    EXPECT_EQ(sheet->examinations[0].indications.size(), 2u);
}

TEST(SheetOf, NamesExaminationRowAndFieldOfWhatItCannotRead) {
    CastingFile file = castingFile();
    file.examinations[0].rows.push_back(row("c", "thirty"));
    const auto sheet = sheetOf(file);
    ASSERT_FALSE(sheet.ok());
    EXPECT_EQ(sheet.error().kind, ErrorKind::Input);
    EXPECT_EQ(sheet.error().place,
              "casting S-17, zone Z1 PT rough machined, repair cycle 2, repeat 1, row 3 (c), x_mm");
    EXPECT_FALSE(sheet.error().reason.empty());
}

TEST(SheetOf, NeverLeavesOutAHalfTypedRow) {
    for (auto field : {&TypedIndication::kind, &TypedIndication::relevance,
                       &TypedIndication::reason, &TypedIndication::removed}) {
        CastingFile file = castingFile();
        TypedIndication started;
        started.*field = "1";
        file.examinations[0].rows.push_back(started);
        const auto sheet = sheetOf(file);
        ASSERT_FALSE(sheet.ok());
        EXPECT_THAT(sheet.error().place, HasSubstr("row 3, "));
    }
}

TEST(SheetOf, RefusesIndicationsOutsideTheRowsAndExaminationsOfOtherCastings) {
    CastingFile file = castingFile();
    file.examinations[0].header.indications.emplace_back();
    EXPECT_FALSE(sheetOf(file).ok());
    file = castingFile();
    file.examinations[0].casting = "S-18";
    EXPECT_FALSE(sheetOf(file).ok());
}

/// Zone Z1 examined by UT: one row with a reading, one with sizes typed.
CastingFile ultrasonicFile() {
    CastingFile file = castingFile();
    ExaminationDraft& draft = file.examinations[0];
    draft.header.method = Method::Ultrasonic;
    draft.header.forbiddenKinds = {Kind::Planar};
    draft.header.ultrasonic.zoneArea = squareMillimetres(90'000);
    draft.header.ultrasonic.testability = {millimetres(3), decibels(12)};
    draft.header.ultrasonic.deadZone = millimetres(10);
    draft.header.ultrasonic.directions = {"from the flange, straight"};
    draft.rows = {};
    draft.settings = {angleSetting(), straightSetting()};
    TypedReflector typed;
    typed.id = "u2";
    typed.x = "10";
    typed.y = "20";
    typed.depth = "45";
    typed.fbh = "2.7";
    draft.reflectors = {straightRow(), typed};
    return file;
}

TEST(SheetOf, TakesAnUltrasonicExaminationWithItsReflectors) {
    CastingFile file = ultrasonicFile();
    TypedReflector blank;
    blank.id = "u3";
    blank.setting = "S24";
    blank.drop = "6";
    file.examinations[0].reflectors.push_back(blank);
    file.examinations[0].rows = {TypedIndication()};
    const auto sheet = sheetOf(file);
    ASSERT_TRUE(sheet.ok()) << sheet.error().message();
    const Examination& examination = sheet->examinations[0];
    EXPECT_EQ(examination.ultrasonic.zoneArea, squareMillimetres(90'000));
    ASSERT_TRUE(examination.ultrasonic.testability);
    EXPECT_EQ(examination.ultrasonic.testability->smallestFbh, millimetres(3));
    EXPECT_EQ(examination.ultrasonic.testability->signalToNoise, decibels(12));
    EXPECT_EQ(examination.ultrasonic.deadZone, millimetres(10));
    EXPECT_THAT(examination.ultrasonic.directions, ElementsAre("from the flange, straight"));
    ASSERT_EQ(examination.reflectors.size(), 2u);
    EXPECT_EQ(examination.reflectors[0].id, "u1");
    EXPECT_EQ(examination.reflectors[0].depth, millimetres(200));
    EXPECT_EQ(examination.reflectors[1].fbh, nanometres(2'700'000));
    EXPECT_TRUE(examination.indications.empty());
}

// Only different directions can cover each other's dead zones.
TEST(SheetOf, TakesEachDirectionThatHasTextOnce) {
    CastingFile file = ultrasonicFile();
    file.examinations[0].header.ultrasonic.directions = {"from the bore", " ", " from the bore ",
                                                         "from outside"};
    EXPECT_THAT(sheetOf(file)->examinations[0].ultrasonic.directions,
                ElementsAre("from the bore", "from outside"));
}

// Which of the order's kinds a method can tell: a crack shows in MT, planar is what UT says.
TEST(SheetOf, AddsOnlyTheForbiddenKindsThatTheMethodCanTell) {
    CastingFile file = ultrasonicFile();
    file.order.forbiddenKinds = {Kind::Porosity, Kind::Planar, Kind::Dross};
    file.examinations[0].header.forbiddenKinds = {Kind::Planar, Kind::Shrinkage};
    EXPECT_THAT(sheetOf(file)->examinations[0].forbiddenKinds,
                ElementsAre(Kind::Planar, Kind::Dross));
    // An echo does not tell a crack from another planar reflector.
    for (const Kind crackLike : {Kind::Crack, Kind::HotTear, Kind::ColdShut}) {
        file.order.forbiddenKinds = {crackLike};
        file.examinations[0].header.forbiddenKinds = {};
        EXPECT_THAT(sheetOf(file)->examinations[0].forbiddenKinds, ElementsAre(Kind::Planar));
    }
    file = castingFile();
    file.order.forbiddenKinds = {Kind::HotTear, Kind::Planar, Kind::Dross};
    EXPECT_THAT(sheetOf(file)->examinations[0].forbiddenKinds,
                ElementsAre(Kind::Chaplet, Kind::Crack, Kind::HotTear));
}

TEST(SheetOf, NamesTheFieldOfAReadingThatCannotBeSized) {
    CastingFile file = ultrasonicFile();
    file.examinations[0].reflectors[0].screen = "0";
    const auto sheet = sheetOf(file);
    ASSERT_FALSE(sheet.ok());
    EXPECT_EQ(sheet.error().place,
              "casting S-17, zone Z1 UT rough machined, repair cycle 2, repeat 1, row 1 (u1), "
              "echo.screen_percent");
}

TEST(SheetOf, RefusesRowsOfAnotherMethod) {
    CastingFile file = ultrasonicFile();
    file.examinations[0].rows = {row("1", "10")};
    EXPECT_THAT(sheetOf(file).error().message(), HasSubstr("row 1 (1): was not typed for UT"));
    file = castingFile();
    file.examinations[0].reflectors = {straightRow()};
    EXPECT_THAT(sheetOf(file).error().message(), HasSubstr("row 1 (u1): was not typed for PT"));
    file = ultrasonicFile();
    file.examinations[0].header.reflectors.emplace_back();
    EXPECT_FALSE(sheetOf(file).ok());
}

}  // namespace
}  // namespace model
