// SPDX-License-Identifier: Apache-2.0
// Conditions that the record itself shows: thickness, settings, scans, the order of methods.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "valid_test.h"

namespace model {
namespace {

using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

TEST(UltrasonicRecord, GivesThicknessFrequencyAndProbes) {
    ValidTest test = ultrasonicTest();
    test.draft.header.thickness = millimetres(600);
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
    test.draft.header.thickness = Length::fromMillionths(600'000'001);
    EXPECT_EQ(onlyOne(test.findings()).id, "UT-01");
    test.take("agreement", "letter 9");
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
    test = ultrasonicTest();
    test.draft.header.thickness = Length();
    EXPECT_THAT(idsOf(test.findings()), ElementsAre("UT-01"));

    test = ultrasonicTest();
    test.draft.settings[0].frequency = "5";
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
    test.draft.settings[0].frequency = "5.1";
    EXPECT_THAT(idsOf(test.findings()), ElementsAre("UT-06 most", "UT-06 A609 most"));
    test.draft.settings[0].frequency.clear();
    EXPECT_THAT(idsOf(test.findings()), Contains("UT-06 least setting S1"));

    test = ultrasonicTest();
    test.draft.settings[0].diameter = "28.1";
    EXPECT_EQ(onlyOne(test.findings()).id, "UT-07 A609");
    EXPECT_EQ(onlyOne(test.findings()).reaction, Reaction::Log);
}

// ISO 4992-1:2020 5.5.1: twin-crystal probes alone reach 50 mm.
TEST(UltrasonicRecord, WithTwinCrystalProbesAloneReachesFiftyMillimetres) {
    ValidTest test = ultrasonicTest();
    test.draft.settings[0].kind = "twin";
    test.draft.settings[1].kind = "twin";
    test.draft.header.thickness = millimetres(50);
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
    test.draft.header.thickness = millimetres(51);
    EXPECT_EQ(onlyOne(test.findings()).id, "UT-08");
    test.draft.settings[1].kind = "angle";
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
}

TEST(UltrasonicRecord, HasToBeTestable) {
    ValidTest test = ultrasonicTest();
    test.draft.header.ultrasonic.testability->signalToNoise = decibels(6);
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
    test.draft.header.ultrasonic.testability->signalToNoise = GainStep::fromMillionths(5'999'999);
    EXPECT_EQ(onlyOne(test.findings()).id, "UT-03");
    test.draft.header.ultrasonic.testability.reset();
    EXPECT_EQ(onlyOne(test.findings()).id, "UT-03");
}

TEST(UltrasonicRecord, NamesTheBlockAndTheTransferFromIt) {
    ValidTest test = ultrasonicTest();
    test.draft.settings[0].block.clear();
    EXPECT_EQ(onlyOne(test.findings()).id, "UT-21 A609 setting S1");
    EXPECT_EQ(onlyOne(test.findings()).reaction, Reaction::Block);
    test.draft.settings[0].block = "CB-1";
    test.draft.settings[1].transfer.clear();
    EXPECT_EQ(onlyOne(test.findings()).reaction, Reaction::Log);
    // With the casting itself as reference there is no block.
    test.draft.settings[1].referenceOn = "casting";
    test.draft.settings[1].block.clear();
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
}

TEST(UltrasonicRecord, KeepsTheSpeedOfEveryScan) {
    ValidTest test = ultrasonicTest();
    test.draft.conditions.scans[0].speed = "150";
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
    test.draft.conditions.scans[0].speed = "150.1";
    EXPECT_EQ(onlyOne(test.findings()).id, "UT-09 A609");
    EXPECT_THAT(onlyOne(test.findings()).reason.place, HasSubstr("scan 1"));
    test.draft.conditions.scans[0].speed = "slow";
    EXPECT_EQ(onlyOne(test.findings()).reaction, Reaction::Block);
}

// SA-609 6.1: after an austenitising heat treatment at least.
TEST(UltrasonicRecord, IsOfAHeatTreatedCasting) {
    ValidTest test = ultrasonicTest();
    test.draft.header.stage = Stage::AsCast;
    EXPECT_EQ(onlyOne(test.findings()).id, "UT-02 A609");
}

TEST(UltrasonicRecord, ComparesTheSurfaceAsItIs) {
    ValidTest test = ultrasonicTest();
    test.take("surface_condition", "as cast");
    EXPECT_EQ(onlyOne(test.findings()).id, "UT-04 as cast");
    test.take("surface_comparator", "4 S1");
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
    test.take("surface_comparator", "5 S1");
    EXPECT_EQ(onlyOne(test.findings()).id, "UT-04 as cast");
    test.drop("surface_condition");
    EXPECT_EQ(onlyOne(test.findings()).id, "not stated surface_condition");
}

// Handbook practice, no source: particles block the openings.
TEST(OrderOfMethods, IsPenetrantBeforeMagnetic) {
    ValidTest test = penetrantTest();
    ExaminationDraft magnetic = magneticTest().draft;
    magnetic.examinedOn = "2026-11-24";
    test.file.examinations = {magnetic, test.draft};
    EXPECT_EQ(onlyOne(test.findings()).id, "PT-20");
    EXPECT_EQ(onlyOne(test.findings()).reaction, Reaction::Warn);
    test.file.examinations[0].examinedOn = "2026-11-26";
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
    test.file.examinations[0].examinedOn = kTestDay;
    test.file.examinations[0].conditions.startedAt = "2026-11-25T09:45:00Z";
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
    test.file.examinations[0].conditions.startedAt = "2026-11-25T07:45:00Z";
    EXPECT_EQ(onlyOne(test.findings()).id, "PT-20");
    // Where the order of the day is not known, it may have been before.
    test.file.examinations[0].conditions.startedAt.clear();
    EXPECT_EQ(onlyOne(test.findings()).id, "PT-20");
    for (auto change : {+[](Examination& header) { header.zone = "Z2"; },
                        +[](Examination& header) { header.stage = Stage::FinishMachined; },
                        +[](Examination& header) { header.repairCycle = 1; }}) {
        ValidTest other = test;
        change(other.file.examinations[0].header);
        EXPECT_THAT(idsOf(other.findings()), IsEmpty());
    }
}

// ISO 4992-1:2020 5.3.4, ASTM A609 4.4.
TEST(Couplant, IsTheSameInSettingAndTest) {
    ValidTest test = ultrasonicTest();
    test.take("couplant", "CP-2");
    EXPECT_THAT(idsOf(test.findings()), ElementsAre("UT-05", "UT-05 A609"));
    EXPECT_EQ(test.findings()[0].reaction, Reaction::Block);
    test.drop("couplant_of_setting");
    EXPECT_THAT(idsOf(test.findings()), ElementsAre("UT-05", "UT-05 A609"));
}

}  // namespace
}  // namespace model
