// SPDX-License-Identifier: Apache-2.0
// Equipment on the day of the test.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "valid_test.h"

namespace model {
namespace {

using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;

TEST(Calibration, HoldsToItsLastDay) {
    ValidTest test = magneticTest();
    test.equipment("UV-1").calibrationDue = kTestDay;
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
    test.equipment("UV-1").calibrationDue = "2026-11-24";
    const ConditionFinding finding = onlyOne(test.findings());
    EXPECT_EQ(finding.id, "calibration UV-1");
    EXPECT_EQ(finding.reaction, Reaction::Block);
    EXPECT_EQ(finding.limit, "<= 2026-11-24");
    test.equipment("UV-1").calibrationDue = "next spring";
    EXPECT_TRUE(onlyOne(test.findings()).stands());
}

TEST(Calibration, HasToBeStatedOfAMeter) {
    ValidTest test = magneticTest();
    test.equipment("UV-1").calibrationDue.clear();
    EXPECT_EQ(onlyOne(test.findings()).id, "calibration UV-1");
    EXPECT_TRUE(onlyOne(test.findings()).stands());
    // A yoke needs none.
    EXPECT_THAT(magneticTest().equipment("Y-1").calibrationDue, IsEmpty());
}

TEST(Calibration, AfterTheTestNeedsAReason) {
    ValidTest test = magneticTest();
    test.equipment("UV-1").calibratedOn = kTestDay;
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
    test.equipment("UV-1").calibratedOn = "2026-11-26";
    EXPECT_EQ(onlyOne(test.findings()).reaction, Reaction::Warn);
}

TEST(Calibration, OfAMeterThatOnlyAMeasurementNamesCounts) {
    ValidTest test = magneticTest();
    test.draft.conditions.equipment = "Y-1";
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
    test.equipment("LX-1").calibrationDue = "2026-11-24";
    EXPECT_EQ(onlyOne(test.findings()).id, "calibration LX-1");
}

TEST(EquipmentRegister, HasToHoldWhatTheTestNames) {
    ValidTest test = magneticTest();
    test.draft.conditions.equipment += ", Y-7";
    EXPECT_EQ(onlyOne(test.findings()).id, "equipment Y-7");
    EXPECT_EQ(onlyOne(test.findings()).reaction, Reaction::Block);
    test = magneticTest();
    test.measured("uv_a").instrument = "UV-9";
    EXPECT_EQ(onlyOne(test.findings()).id, "equipment UV-9");
    test = magneticTest();
    test.equipment("Y-1").state = "withdrawn";
    EXPECT_EQ(onlyOne(test.findings()).id, "state Y-1");
    EXPECT_TRUE(onlyOne(test.findings()).stands());
}

TEST(EquipmentCheckOf, AThingInUseHasToBePassed) {
    ValidTest test = magneticTest();
    test.check("Y-1", "yoke pull").result = "failed";
    EXPECT_EQ(onlyOne(test.findings()).id, "yoke pull Y-1");
    EXPECT_EQ(onlyOne(test.findings()).reaction, Reaction::Block);
    // A later one counts, up to the end of the test.
    EquipmentCheck later = test.check("Y-1", "yoke pull");
    later.at = "2026-11-25T09:30:00Z";
    later.result = "passed";
    test.file.used.checks.push_back(later);
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
    test.file.used.checks.back().at = "2026-11-25T09:30:01Z";
    EXPECT_EQ(onlyOne(test.findings()).id, "yoke pull Y-1");
}

TEST(EquipmentCheckOf, AThingIsOverdueAfterTheDayThatItNames) {
    ValidTest test = magneticTest();
    test.check("Y-1", "yoke pull").nextDue = kTestDay;
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
    test.check("Y-1", "yoke pull").nextDue = "2026-11-24";
    EXPECT_EQ(onlyOne(test.findings()).id, "yoke pull Y-1");
    EXPECT_EQ(onlyOne(test.findings()).reaction, Reaction::Block);
    test.check("Y-1", "yoke pull").nextDue = "in May";
    EXPECT_TRUE(onlyOne(test.findings()).stands());
}

// ISO 9934-3:2015 by memory: 44 N. A kilogram pulls with 9.80665 N.
TEST(YokePull, IsComparedInNewtonKilogramOrPound) {
    const auto pulled = [](const char* value, const char* unit) {
        ValidTest test = magneticTest();
        test.check("Y-1", "yoke pull").value = value;
        test.check("Y-1", "yoke pull").unit = unit;
        return idsOf(test.findings());
    };
    EXPECT_THAT(pulled("44", "N"), IsEmpty());
    EXPECT_THAT(pulled("43.99", "N"), ElementsAre("MT-05a Y-1"));
    EXPECT_THAT(pulled("4.486752", "kg"), IsEmpty());                  // 44.00001 N
    EXPECT_THAT(pulled("4.486751", "kg"), ElementsAre("MT-05a Y-1"));  // 43.999998 N
    EXPECT_THAT(pulled("10", "lb"), IsEmpty());                        // 44.48 N
    EXPECT_THAT(pulled("9.89", "lb"), ElementsAre("MT-05a Y-1"));      // 43.99 N
    EXPECT_THAT(pulled("", ""), ElementsAre("unreadable yoke pull Y-1"));
    EXPECT_THAT(pulled("4.6", "stone"), ElementsAre("unreadable yoke pull Y-1"));
    EXPECT_THAT(pulled("enough", "kg"), ElementsAre("unreadable yoke pull Y-1"));
}

TEST(YokePull, HasToBeInTheRegisterForAnAcYokeOnly) {
    ValidTest test = magneticTest();
    std::erase_if(test.file.used.checks,
                  [](const EquipmentCheck& check) { return check.check == "yoke pull"; });
    EXPECT_EQ(onlyOne(test.findings()).id, "MT-05a Y-1");
    test.take("technique", "coil");
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
}

TEST(YokePull, NeedsAYokeAmongTheEquipment) {
    ValidTest test = magneticTest();
    test.draft.conditions.equipment = "TF-1";
    EXPECT_THAT(idsOf(test.findings()), Contains("MT-05a"));
}

ValidTest yokeBy(const char* set, const char* technique, const char* value, const char* unit,
                 const char* spacing) {
    ValidTest test = magneticTest();
    test.file.used.procedures[0].conditionSets = set;
    test.take("technique", technique);
    EquipmentCheck& check = test.check("Y-1", "yoke pull");
    check.value = value;
    check.unit = unit;
    check.condition = spacing;
    return test;
}

// ASTM E1444-16e1 7.4.4, at second hand: AC and permanent magnet 4.5 kg at 50 mm to 150 mm; DC
// 13.5 kg at 50 mm to 100 mm or 22.5 kg at 100 mm to 150 mm.
TEST(YokePull, BySpacingOfTheLegsAsInE1444) {
    const auto ids = [](const char* technique, const char* value, const char* spacing) {
        return idsOf(yokeBy("ASTM E1444-16e1", technique, value, "kg", spacing).findings());
    };
    for (const char* technique : {"AC yoke", "permanent magnet"}) {
        EXPECT_THAT(ids(technique, "4.5", "50 mm"), Not(Contains("MT-05b Y-1")));
        EXPECT_THAT(ids(technique, "4.5", "6 in"), Contains("MT-05b Y-1"));  // 152.4 mm
        EXPECT_THAT(ids(technique, "4.5", "150 mm"), Not(Contains("MT-05b Y-1")));
        EXPECT_THAT(ids(technique, "4.5", "49.9 mm"), Contains("MT-05b Y-1"));
        EXPECT_THAT(ids(technique, "4.49", "100 mm"), Contains("MT-05b Y-1"));
        EXPECT_THAT(ids(technique, "4.5", ""), Contains("MT-05b Y-1"));
    }
    EXPECT_THAT(ids("DC yoke", "13.5", "100 mm"), Not(Contains("MT-05b DC Y-1")));
    EXPECT_THAT(ids("DC yoke", "13.5", "100.1 mm"), Contains("MT-05b DC Y-1"));
    EXPECT_THAT(ids("DC yoke", "22.5", "150 mm"), Not(Contains("MT-05b DC Y-1")));
    EXPECT_THAT(ids("DC yoke", "22.4", "150 mm"), Contains("MT-05b DC Y-1"));
    EXPECT_THAT(ids("DC yoke", "13.4", "80 mm"), Contains("MT-05b DC Y-1"));
}

// T.O. 33B-1-1: AC 10 lb at 3 in to 6 in; DC or permanent magnet 30 lb at 2 in to 4 in or 40 lb at
// 4 in to 6 in. This clause was read, so it blocks by itself.
TEST(YokePull, BySpacingOfTheLegsAsInTheTechnicalOrder) {
    EXPECT_THAT(idsOf(yokeBy("T.O. 33B-1-1 MT", "AC yoke", "10", "lb", "6 in").findings()),
                Not(Contains("MT-05c Y-1")));
    EXPECT_THAT(idsOf(yokeBy("T.O. 33B-1-1 MT", "AC yoke", "10", "lb", "2.9 in").findings()),
                Contains("MT-05c Y-1"));
    EXPECT_THAT(idsOf(yokeBy("T.O. 33B-1-1 MT", "DC yoke", "30", "lb", "4 in").findings()),
                Not(Contains("MT-05c DC Y-1")));
    for (const auto& finding :
         yokeBy("T.O. 33B-1-1 MT", "DC yoke", "39.9", "lb", "4.1 in").findings())
        if (finding.id == "MT-05c DC Y-1") {
            EXPECT_EQ(finding.reaction, Reaction::Block);
            EXPECT_EQ(finding.measured, "39.9 lb");
            EXPECT_EQ(finding.limit, ">= 30 lb at 2 in to 4 in, or >= 40 lb at 4 in to 6 in");
            return;
        }
    FAIL() << "the yoke is too weak";
}

// ASTM E3024-16 Table 1: every 6 months. From 2026-05-25 they end on 2026-11-25.
TEST(CheckInterval, OfMonthsHoldsToTheSameDayOfTheMonth) {
    ValidTest test = yokeBy("ASTM E3024-16", "AC yoke", "4.6", "kg", "100 mm");
    test.check("Y-1", "yoke pull").at = "2026-05-25T06:00:00Z";
    EXPECT_THAT(idsOf(test.findings()), Not(Contains("MT-14 yoke Y-1")));
    test.check("Y-1", "yoke pull").at = "2026-05-24T23:59:59Z";
    EXPECT_THAT(idsOf(test.findings()), Contains("MT-14 yoke Y-1"));
}

// ISO 9934-1 by memory: once a shift, here 8 hours.
TEST(CheckInterval, OfHoursRunsToTheStartOfTheTest) {
    ValidTest test = magneticTest();
    EquipmentCheck& check = test.check("Y-1", "overall performance");
    check.at = "2026-11-25T00:00:00Z";
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
    check.at = "2026-11-24T23:59:59Z";
    EXPECT_EQ(onlyOne(test.findings()).id, "MT-09");
    EXPECT_EQ(onlyOne(test.findings()).reaction, Reaction::Warn);
    check.at = "2026-11-25T06:15:00Z";
    test.draft.conditions.startedAt.clear();
    EXPECT_EQ(onlyOne(test.findings()).id, "MT-09");
    EXPECT_THAT(onlyOne(test.findings()).reason.message(), HasSubstr("start"));
}

// ISO 22232-3:2020 6.2.3: once a day, for the equipment used on that day.
TEST(CheckInterval, OfADayIsTheDayOfTheTest) {
    ValidTest test = ultrasonicTest();
    EquipmentCheck& check = test.check("PR-1", "daily physical check");
    check.at = "2026-11-25T00:00:00Z";
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
    check.at = "2026-11-24T23:59:59Z";
    const ConditionFinding finding = onlyOne(test.findings());
    EXPECT_EQ(finding.id, "UT-11 probe PR-1");
    EXPECT_EQ(finding.reaction, Reaction::Block);
    EXPECT_EQ(finding.limit, "on the day");
    check.at = "yesterday";
    EXPECT_EQ(onlyOne(test.findings()).id, "UT-11 probe PR-1");
}

TEST(CheckInterval, OfDaysHoldsThatManyDays) {
    ValidTest test = ultrasonicTest();
    EquipmentCheck& check = test.check("UI-1", "weekly linearity");
    check.at = "2026-11-18T07:00:00Z";
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
    check.at = "2026-11-17T07:00:00Z";
    EXPECT_EQ(onlyOne(test.findings()).id, "UT-13 linearity UI-1");
}

TEST(CheckOfAnything, MayBeOfABatchOrAThingThatTheTestNames) {
    ValidTest test = magneticTest();
    test.check("M-1", "in-service block comparison").equipment = "M-2";
    EXPECT_EQ(onlyOne(test.findings()).id, "MT-16");
    EXPECT_EQ(onlyOne(test.findings()).reaction, Reaction::Block);
    test.check("M-2", "in-service block comparison").equipment = "Y-1";
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
}

TEST(CalibrationRule, LimitsTheIntervalWhateverTheEntrySays) {
    ValidTest test = ultrasonicTest();
    test.equipment("UI-1").calibratedOn = "2025-11-25";
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
    test.equipment("UI-1").calibratedOn = "2025-11-24";
    EXPECT_EQ(onlyOne(test.findings()).id, "UT-15 UI-1");
    test.equipment("UI-1").calibratedOn.clear();
    EXPECT_EQ(onlyOne(test.findings()).id, "UT-15 UI-1");
}

TEST(AngleProbes, NeedTheirIndexAndAngleCheckedOnTheDay) {
    ValidTest test = ultrasonicTest();
    test.check("PR-2", "probe index and angle").at = "2026-11-24T07:00:00Z";
    EXPECT_EQ(onlyOne(test.findings()).id, "UT-11 angle PR-2");
    // A probe that only straight-beam settings name needs none.
    test = ultrasonicTest();
    test.draft.settings[1].probe = "straight probe 0451";
    EXPECT_THAT(idsOf(test.findings()), ElementsAre("UT-11 angle PR-1"));
    // Which probe an angle-beam setting means is not known: any that no other setting names.
    test = ultrasonicTest();
    test.draft.settings[1].probe = "the small one";
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
    test.check("PR-2", "probe index and angle").at = "2026-11-24T07:00:00Z";
    EXPECT_EQ(onlyOne(test.findings()).id, "UT-11 angle PR-2");
}

TEST(UltrasonicEquipment, HasToBeNamed) {
    ValidTest test = ultrasonicTest();
    test.draft.conditions.equipment = "CB-1";
    EXPECT_THAT(idsOf(test.findings()),
                ElementsAre("UT-11 instrument", "UT-11 probe", "UT-11 angle", "UT-13 linearity",
                            "UT-13 sensitivity"));
}

}  // namespace
}  // namespace model
