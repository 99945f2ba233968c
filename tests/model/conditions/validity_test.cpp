// SPDX-License-Identifier: Apache-2.0
// What holds for every test: examples without a finding, tests without a procedure of the register,
// reasons typed at the bench, the test's own times, procedures and sheets.
#include "conditions/validity.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "valid_test.h"

namespace model {
namespace {

using testing::Contains;
using testing::ElementsAre;
using testing::IsEmpty;

TEST(ValidityOf, FindsNothingInAValidMagneticTest) {
    EXPECT_THAT(idsOf(magneticTest().findings()), IsEmpty());
}
TEST(ValidityOf, FindsNothingInAValidPenetrantTest) {
    EXPECT_THAT(idsOf(penetrantTest().findings()), IsEmpty());
}
TEST(ValidityOf, FindsNothingInAValidUltrasonicTest) {
    EXPECT_THAT(idsOf(ultrasonicTest().findings()), IsEmpty());
}

TEST(ValidityOf, OnlySaysThatConditionsAreNotStatedWhereNoProcedureIsNamed) {
    for (ValidTest test : {magneticTest(), penetrantTest(), ultrasonicTest(), ValidTest()}) {
        test.draft.conditions.procedureNumber.clear();
        test.draft.conditions.coating = "unreadable";
        test.testers = {};
        const ConditionFinding said = onlyOne(test.findings());
        EXPECT_EQ(said.reason.reason, "test conditions not stated");
        EXPECT_EQ(said.reaction, Reaction::Warn);
        EXPECT_TRUE(said.onlySaid);
        EXPECT_FALSE(said.stands());
    }
}

TEST(ValidityOf, NeedsADateOfTheTest) {
    for (const char* date : {"", "25.11.2026", "2026-02-30"}) {
        ValidTest test = magneticTest();
        test.draft.examinedOn = date;
        EXPECT_TRUE(onlyOne(test.findings()).stands()) << date;
    }
}

TEST(ValidityOf, TakesATypedReasonForAWarningOnly) {
    ValidTest test = magneticTest();
    test.take("field_strength", "1.9", "kA/m");
    test.take("directions", "1");
    EXPECT_THAT(idsOf(test.findings()), ElementsAre("MT-04 least", "MT-06"));
    test.draft.conditions.acknowledgements = {{"MT-04 least", "agreed with Level 3", "Q-3"},
                                              {"MT-06", "agreed with Level 3", "Q-3"},
                                              {"MT-99", "of nothing", "Q-3"}};
    const auto findings = test.findings();
    ASSERT_EQ(findings.size(), 2u);
    EXPECT_EQ(findings[0].reaction, Reaction::Warn);
    EXPECT_EQ(findings[0].acknowledged, "agreed with Level 3");
    EXPECT_EQ(findings[0].acknowledgedBy, "Q-3");
    EXPECT_FALSE(findings[0].stands());
    EXPECT_EQ(findings[1].reaction, Reaction::Block);
    EXPECT_THAT(findings[1].acknowledged, IsEmpty());
    EXPECT_TRUE(findings[1].stands());
}

TEST(ValidityOf, TakesNoReasonThatSaysNothing) {
    ValidTest test = magneticTest();
    test.take("field_strength", "1.9", "kA/m");
    for (const char* reason : {"", "  ", "\n"}) {
        test.draft.conditions.acknowledgements = {{"MT-04 least", reason, "Q-3"}};
        EXPECT_TRUE(onlyOne(test.findings()).stands());
    }
}

TEST(ValidityOf, NamesLimitReadingAndSource) {
    ValidTest test = magneticTest();
    test.take("uv_a", "8", "W/m2");
    const ConditionFinding finding = onlyOne(test.findings());
    EXPECT_EQ(finding.id, "MT-10/PT-10");
    EXPECT_EQ(finding.measured, "8 W/m2");
    EXPECT_EQ(finding.limit, ">= 10 W/m2");
    EXPECT_EQ(finding.source.locator, "ISO 3059:2012 cl. 6");
    EXPECT_EQ(finding.source.grade, Grade::Partly);
    EXPECT_EQ(finding.reason.message(), "UV-A at the part: is 8 W/m2; it has to be >= 10 W/m2");
}

TEST(ValidityOf, LetsPartlyReadLimitsWarnUntilTheirSetIsAttested) {
    ValidTest test = magneticTest();
    test.take("uv_a", "8", "W/m2");
    EXPECT_EQ(onlyOne(test.findings()).reaction, Reaction::Warn);
    EXPECT_EQ(onlyOne(test.findings({digestOf("ISO 9934-1:2016")})).reaction, Reaction::Warn);
    EXPECT_EQ(onlyOne(test.findings({digestOf("ISO 3059:2012")})).reaction, Reaction::Block);
    // A limit that asks for no more than a reason stays so.
    test = magneticTest();
    test.take("field_strength", "6.1", "kA/m");
    EXPECT_EQ(onlyOne(test.findings({digestOf("ISO 9934-1:2016")})).reaction, Reaction::Warn);
    // One that was read blocks by itself.
    test = magneticTest();
    test.take("directions", "1");
    EXPECT_EQ(onlyOne(test.findings()).reaction, Reaction::Block);
}

TEST(ValidityOf, GivesEveryFindingItsOwnId) {
    ValidTest test = ultrasonicTest();
    test.draft.conditions.equipment += ", NO-1, NO-1, NO-2";
    test.draft.conditions.measurements.push_back({"what", "1", "", "", "", "", "", ""});
    test.draft.conditions.measurements.push_back({"what", "2", "", "", "", "", "", ""});
    test.file.used.checks.clear();
    const auto ids = idsOf(test.findings());
    EXPECT_EQ(std::set<std::string>(ids.begin(), ids.end()).size(), ids.size());
    EXPECT_GT(ids.size(), 10u);
}

TEST(TestTimes, HaveToBeReadableAndInOrder) {
    for (const auto& [start, end] : std::vector<std::pair<std::string, std::string>>{
             {"08:00", "2026-11-25T09:30:00Z"},
             {"2026-11-25T08:00:00Z", "later"},
             {"2026-11-25T08:00:00Z", "2026-11-25T07:59:59Z"},
             {"2026-11-23T08:00:00Z", "2026-11-25T09:30:00Z"}}) {
        ValidTest test = penetrantTest();
        test.draft.conditions.startedAt = start;
        test.draft.conditions.endedAt = end;
        const auto findings = test.findings();
        ASSERT_THAT(idsOf(findings), Contains("time of test")) << start << " " << end;
        EXPECT_EQ(findings[0].reaction, Reaction::Block);
    }
}

// The date is the works' own, the moment is UTC: in New Zealand the day begins 13 hours earlier.
TEST(TestTimes, MayLieOnTheDayOfAnyPlaceOnEarth) {
    ValidTest test = penetrantTest();
    test.draft.conditions.startedAt = "2026-11-24T11:00:00Z";
    test.draft.conditions.endedAt.clear();
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
}

// Procedures.

TEST(ProcedureCheck, BlocksWhatIsNotInTheRegister) {
    ValidTest test = penetrantTest();
    test.draft.conditions.procedureRevision = "C";
    EXPECT_THAT(idsOf(test.findings()), ElementsAre("procedure"));
    EXPECT_TRUE(test.findings()[0].stands());
    test.draft.conditions.procedureRevision.clear();
    EXPECT_THAT(idsOf(test.findings()), ElementsAre("procedure"));
}

TEST(ProcedureCheck, BlocksOneForAnotherMethod) {
    ValidTest test = penetrantTest();
    test.file.used.procedures[0].method = "MT";
    EXPECT_THAT(idsOf(test.findings()), ElementsAre("procedure method"));
    EXPECT_TRUE(test.findings()[0].stands());
}

TEST(ProcedureCheck, NeedsAnApprovalOnTheDayOfTheTestAtTheLatest) {
    ValidTest test = penetrantTest();
    Procedure& procedure = test.file.used.procedures[0];
    procedure.approvedOn = kTestDay;
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
    procedure.approvedOn = "2026-11-26";
    EXPECT_EQ(onlyOne(test.findings()).reaction, Reaction::Block);
    procedure.approvedOn.clear();
    EXPECT_EQ(onlyOne(test.findings()).id, "procedure approval");
    procedure.approvedOn = "2026-01-15";
    procedure.approvedBy.clear();
    EXPECT_TRUE(onlyOne(test.findings()).stands());
}

TEST(ProcedureCheck, BlocksARevisionThatIsObsoleteOnTheDay) {
    ValidTest test = penetrantTest();
    Procedure& procedure = test.file.used.procedures[0];
    procedure.state = "obsolete";
    procedure.obsoleteFrom = "2026-11-26";
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
    procedure.obsoleteFrom = kTestDay;
    EXPECT_EQ(onlyOne(test.findings()).id, "procedure revision");
    EXPECT_TRUE(onlyOne(test.findings()).stands());
    procedure.obsoleteFrom.clear();
    EXPECT_TRUE(onlyOne(test.findings()).stands());
    procedure.obsoleteFrom = "soon";
    EXPECT_TRUE(onlyOne(test.findings()).stands());
}

TEST(ProcedureCheck, BlocksARevisionThatALaterOneHasReplaced) {
    ValidTest test = penetrantTest();
    Procedure later = test.file.used.procedures[0];
    later.revision = "C";
    later.approvedOn = "2026-11-26";
    test.file.used.procedures.push_back(later);
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
    test.file.used.procedures[1].approvedOn = kTestDay;
    EXPECT_TRUE(onlyOne(test.findings()).stands());
    // Approved by nobody, it replaces nothing.
    test.file.used.procedures[1].approvedBy.clear();
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
}

TEST(ProcedureCheck, NotesAnObsoleteRevisionThatTheOrderFixes) {
    ValidTest test = penetrantTest();
    Procedure& procedure = test.file.used.procedures[0];
    procedure.state = "obsolete";
    procedure.obsoleteFrom = "2026-06-01";
    test.file.order.terms.fixedProcedures = "UT-1 / B, PT-1 / A";
    EXPECT_TRUE(onlyOne(test.findings()).stands());
    test.file.order.terms.fixedProcedures = "UT-1 / B, PT-1 / B";
    const ConditionFinding noted = onlyOne(test.findings());
    EXPECT_EQ(noted.reaction, Reaction::Log);
    EXPECT_FALSE(noted.stands());
}

TEST(ProcedureCheck, WantsTheSheetToBelongToTheProcedure) {
    ValidTest test = penetrantTest();
    Procedure sheet = test.file.used.procedures[0];
    sheet.number = "PT-S4";
    sheet.revision = "1";
    sheet.kind = "technique sheet";
    sheet.conditionSets.clear();
    sheet.parentProcedure = "PT-1 / B";
    test.file.used.procedures.push_back(sheet);
    test.draft.conditions.sheetNumber = "PT-S4";
    EXPECT_THAT(idsOf(test.findings()), ElementsAre("technique sheet"));
    test.draft.conditions.sheetRevision = "1";
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
    for (const char* parent : {"PT-1 / A", ""}) {
        test.file.used.procedures[1].parentProcedure = parent;
        EXPECT_EQ(onlyOne(test.findings()).id, "technique sheet procedure");
        EXPECT_TRUE(onlyOne(test.findings()).stands());
    }
    test.file.used.procedures[1].parentProcedure = "PT-1 / B";
    test.file.used.procedures[1].obsoleteFrom = "2026-11-01";
    EXPECT_EQ(onlyOne(test.findings()).id, "technique sheet revision");
    test.file.used.procedures[1].obsoleteFrom.clear();
    test.file.used.procedures[1].kind = "procedure";
    EXPECT_EQ(onlyOne(test.findings()).id, "technique sheet kind");
}

TEST(ProcedureCheck, BlocksSetsThatThereAreNotOrThatAreForAnotherMethod) {
    ValidTest test = penetrantTest();
    test.file.used.procedures[0].conditionSets += ", ISO 9999:2030";
    EXPECT_EQ(onlyOne(test.findings()).id, "conditions ISO 9999:2030");
    EXPECT_TRUE(onlyOne(test.findings()).stands());
    test = penetrantTest();
    test.file.used.procedures[0].conditionSets += ", ISO 4986:2020";
    EXPECT_TRUE(onlyOne(test.findings()).stands());
    // People's rules follow their scheme, not a procedure.
    test = penetrantTest();
    test.file.used.procedures[0].conditionSets += ", ISO 9712:2021";
    EXPECT_TRUE(onlyOne(test.findings()).stands());
}

TEST(ProcedureCheck, AsksForAReasonWhereThereIsNothingToCompareWith) {
    ValidTest test = penetrantTest();
    test.file.used.procedures[0].conditionSets.clear();
    EXPECT_EQ(onlyOne(test.findings()).id, "conditions");
    EXPECT_TRUE(onlyOne(test.findings()).stands());
}

TEST(ProcedureCheck, ComparesTheTestStandardAndAsksWhoAgreedToDeviations) {
    ValidTest test = penetrantTest();
    test.file.used.procedures[0].standards = "ISO 3452-1:2021";
    test.draft.conditions.testStandard = "ISO 3452-1:2021";
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
    test.draft.conditions.testStandard = "ISO 3452-1:2013";
    EXPECT_EQ(onlyOne(test.findings()).id, "test standard");
    test.draft.conditions.testStandard.clear();
    test.draft.conditions.deviations = "wiped dry";
    EXPECT_EQ(onlyOne(test.findings()).id, "deviations");
    test.draft.conditions.deviationsAgreed = "customer, letter 12";
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
}

}  // namespace
}  // namespace model
