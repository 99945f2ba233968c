// SPDX-License-Identifier: Apache-2.0
// Conditions that are missing, cannot be read, or prove nothing.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "valid_test.h"

namespace model {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;

// What is missing.

TEST(MissingConditions, AreAFindingEach) {
    ValidTest test = penetrantTest();
    test.draft.conditions.measurements.clear();
    const auto findings = test.findings();
    EXPECT_THAT(
        idsOf(findings),
        testing::UnorderedElementsAre(
            "PT-01 least", "PT-01 most", "PT-04 least", "PT-04 most", "PT-04 dried", "PT-05 UV-A",
            "PT-05 light", "PT-06 solvent", "PT-07", "PT-08 least", "PT-08 most", "PT-09 first",
            "PT-09 final", "MT-10/PT-10", "MT-11/PT-10", "MT-13 eyes", "PT-17 surface",
            "PT-17 closing", "PT-18", "not stated removal", "not stated lamp"));
    for (const ConditionFinding& finding : findings)
        EXPECT_THAT(finding.measured, IsEmpty()) << finding.id;
}

TEST(MissingConditions, OfAScanAreNamedWithIt) {
    ValidTest test = ultrasonicTest();
    test.file.used.procedures[0].conditionSets += ", ASME V Article 5";
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
    test.draft.conditions.scans[1].overlap = " ";
    EXPECT_EQ(onlyOne(test.findings()).id, "UT-10 ASME V scan 2");
    // Stated for the test as a whole, it holds for every scan.
    test.take("scan_overlap", "12", "%");
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
    test.draft.conditions.scans[1].overlap = "9.9";
    EXPECT_EQ(onlyOne(test.findings()).measured, "9.9 %");
}

// What cannot be read, or proves nothing.

TEST(UnreadableConditions, BlockAndAreNeverPassedOver) {
    for (const auto& [value, unit] :
         std::vector<std::pair<const char*, const char*>>{{"twelve", "W/m2"},
                                                          {"", "W/m2"},
                                                          {"12.5", ""},
                                                          {"12.5", "lx"},
                                                          {"12.5", "W/m^2"},
                                                          {"-12", "W/m2"},
                                                          {"1e2", "W/m2"},
                                                          {"12.5", "w/m2"}}) {
        ValidTest test = magneticTest();
        test.take("uv_a", value, unit);
        const ConditionFinding finding = onlyOne(test.findings());
        EXPECT_EQ(finding.reaction, Reaction::Block) << value << " " << unit;
        EXPECT_TRUE(finding.id.starts_with("unreadable uv_a")) << finding.id;
    }
    for (const auto& [parameter, value, unit] :
         std::vector<std::tuple<const char*, const char*, const char*>>{
             {"technique", "ac yoke", ""},
             {"surface_clean", "maybe", ""},
             {"surface_clean", "yes", "mm"},
             {"magnification", "3", "x"},
             {"directions", "two", ""}}) {
        ValidTest test = magneticTest();
        test.take(parameter, value, unit);
        const auto findings = test.findings();
        ASSERT_FALSE(findings.empty()) << parameter;
        EXPECT_EQ(findings[0].reaction, Reaction::Block);
        EXPECT_THAT(findings[0].id, HasSubstr("unreadable")) << parameter;
    }
}

TEST(UnreadableConditions, IncludeParametersThatAreNotKnown) {
    ValidTest test = magneticTest();
    test.draft.conditions.measurements.push_back({"uva", "12", "W/m2", "", "", "", "", ""});
    EXPECT_TRUE(onlyOne(test.findings()).stands());
    EXPECT_THAT(onlyOne(test.findings()).id, HasSubstr("unreadable measurement"));
    test = magneticTest();
    test.take("penetration_time", "12", "min");
    EXPECT_EQ(onlyOne(test.findings()).id, "not of MT penetration_time");
}

TEST(SeveralReadings, HaveToHoldAll) {
    ValidTest test = magneticTest();
    Measurement second = test.measured("uv_a");
    second.value = "7";
    second.place = "in the bore";
    test.draft.conditions.measurements.push_back(second);
    second.value = "9";
    second.place = "at the flange";
    test.draft.conditions.measurements.push_back(second);
    const ConditionFinding finding = onlyOne(test.findings());
    EXPECT_EQ(finding.measured, "7 W/m2");
    EXPECT_THAT(finding.reason.place, HasSubstr("in the bore"));
}

TEST(Readings, WithoutMeterTimeOrPersonProveNothing) {
    ValidTest test = magneticTest();
    test.measured("uv_a").instrument.clear();
    EXPECT_THAT(onlyOne(test.findings()).id, HasSubstr("instrument uv_a"));
    EXPECT_EQ(onlyOne(test.findings()).reaction, Reaction::Block);
    test = magneticTest();
    test.measured("uv_a").by.clear();
    EXPECT_THAT(onlyOne(test.findings()).id, HasSubstr("person uv_a"));
    EXPECT_TRUE(onlyOne(test.findings()).stands());
    test = magneticTest();
    test.measured("uv_a").at.clear();
    EXPECT_THAT(onlyOne(test.findings()).id, HasSubstr("time uv_a"));
    EXPECT_TRUE(onlyOne(test.findings()).stands());
    test.measured("uv_a").at = "this morning";
    EXPECT_EQ(onlyOne(test.findings()).reaction, Reaction::Block);
    test.measured("uv_a").at = "2026-11-20T08:00:00Z";
    EXPECT_EQ(onlyOne(test.findings()).reaction, Reaction::Warn);
    test = magneticTest();
    test.measured("uv_a").instrument = "LX-1";
    EXPECT_THAT(onlyOne(test.findings()).id, HasSubstr("kind of instrument uv_a"));
}

}  // namespace
}  // namespace model
