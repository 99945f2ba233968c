// SPDX-License-Identifier: Apache-2.0
// People on the day of the test: every limit of time on its last day and on the next.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "valid_test.h"

namespace model {
namespace {

using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

/// A certificate, eye tests and permission for a second person.
void addPerson(ValidTest& test, const std::string& person, const std::string& level) {
    Holdings& used = test.file.used;
    Qualification held = used.qualifications[0];
    held.person = person;
    held.level = level;
    used.qualifications.push_back(held);
    for (const char* kind : {"near vision", "colour perception"})
        used.eyeTests.push_back({person, kind, "2026-02-10", "", "", "passed", ""});
    Authorisation given = used.authorisations[0];
    given.person = person;
    used.authorisations.push_back(given);
}

TEST(Certificate, HoldsFromItsFirstToItsLastDay) {
    ValidTest test = penetrantTest();
    Qualification& held = test.file.used.qualifications[0];
    held.expiresOn = kTestDay;
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
    held.expiresOn = "2026-11-24";
    ConditionFinding ended = onlyOne(test.findings());
    EXPECT_EQ(ended.id, "certificate Q-2");
    EXPECT_EQ(ended.reaction, Reaction::Block);
    EXPECT_EQ(ended.reason.message(),
              "person Q-2: certificate C-77 ended on 2026-11-24, before the test on 2026-11-25");
    held.issuedOn = kTestDay;
    held.expiresOn = "2031-11-25";
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
    held.issuedOn = "2026-11-26";
    EXPECT_TRUE(onlyOne(test.findings()).stands());
}

TEST(Certificate, HasToBeInForceAndForTheMethodAndPerson) {
    const auto changed = [](auto change) {
        ValidTest test = penetrantTest();
        change(test.file.used.qualifications[0]);
        return onlyOne(test.findings());
    };
    for (const char* state : {"interrupted", "withdrawn", ""})
        EXPECT_EQ(changed([&](Qualification& held) { held.state = state; }).reaction,
                  Reaction::Block);
    EXPECT_EQ(changed([](Qualification& held) { held.method = "MT"; }).reaction, Reaction::Block);
    EXPECT_EQ(changed([](Qualification& held) { held.person = "Q-4"; }).reaction, Reaction::Block);
    EXPECT_EQ(changed([](Qualification& held) { held.expiresOn = "never"; }).reaction,
              Reaction::Block);
    EXPECT_EQ(changed([](Qualification& held) { held.level = "two"; }).reaction, Reaction::Block);
}

TEST(Certificate, IsTheOneThatHeldOnTheDay) {
    ValidTest test = penetrantTest();
    Qualification old = test.file.used.qualifications[0];
    old.certificate = "C-12";
    old.issuedOn = "2018-03-01";
    old.expiresOn = "2023-02-28";
    test.file.used.qualifications.push_back(old);
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
    test.draft.examinedOn = "2022-05-05";
    EXPECT_THAT(idsOf(test.findings()), testing::Not(Contains("certificate Q-2")));
}

TEST(Certificate, OfALongerPeriodThanFiveYearsNeedsAReason) {
    ValidTest test = penetrantTest();
    Qualification& held = test.file.used.qualifications[0];
    held.issuedOn = "2023-03-01";
    held.expiresOn = "2028-03-01";
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
    held.expiresOn = "2028-03-02";
    const ConditionFinding finding = onlyOne(test.findings());
    EXPECT_EQ(finding.id, "certificate period Q-2");
    EXPECT_EQ(finding.reaction, Reaction::Warn);
    EXPECT_EQ(finding.source.grade, Grade::Memory);
}

TEST(Certificate, ForAnotherSectorNeedsAReason) {
    ValidTest test = penetrantTest();
    for (const char* sector : {"welds", ""}) {
        test.file.used.qualifications[0].sector = sector;
        EXPECT_EQ(onlyOne(test.findings()).id, "sector Q-2");
        EXPECT_EQ(onlyOne(test.findings()).reaction, Reaction::Warn);
    }
    // A higher one for another sector does not stand before the one for castings.
    test.file.used.qualifications[0].sector = "castings";
    Qualification welds = test.file.used.qualifications[0];
    welds.certificate = "C-78";
    welds.sector = "welds";
    welds.level = "3";
    test.file.used.qualifications.push_back(welds);
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
    test.file.order.terms.operatorLevel = "3";
    EXPECT_EQ(onlyOne(test.findings()).id, "ordered level Q-2");
}

// ISO 9712:2012 7.4: near vision yearly. 12 months from 2026-02-10 end on 2027-02-10.
TEST(NearVision, HoldsForTwelveMonthsTheLastDayIncluded) {
    ValidTest test = penetrantTest();
    test.eyeTest("Q-2", "near vision").testedOn = "2025-11-25";
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
    test.eyeTest("Q-2", "near vision").testedOn = "2025-11-24";
    const ConditionFinding finding = onlyOne(test.findings());
    EXPECT_EQ(finding.id, "near vision Q-2");
    EXPECT_EQ(finding.reaction, Reaction::Block);
    EXPECT_EQ(finding.measured, "2025-11-24");
    EXPECT_EQ(finding.limit, "every 12 months");
    EXPECT_THAT(finding.source.locator, HasSubstr("ISO 9712:2012 cl. 7.4"));
}

TEST(NearVision, IsThatOfTheLastTestBeforeTheDay) {
    ValidTest test = penetrantTest();
    EyeTest failed = test.eyeTest("Q-2", "near vision");
    failed.testedOn = "2026-11-20";
    failed.result = "failed";
    test.file.used.eyeTests.push_back(failed);
    EXPECT_EQ(onlyOne(test.findings()).id, "near vision Q-2");
    // After the test it says nothing of the day.
    test.file.used.eyeTests.back().testedOn = "2026-11-26";
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
    test.file.used.eyeTests.back().testedOn = kTestDay;
    test.file.used.eyeTests.back().result = "passed with glasses";
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
}

TEST(NearVision, WithoutATestIsNoVision) {
    ValidTest test = penetrantTest();
    test.eyeTest("Q-2", "near vision").testedOn = "2026-11-26";
    EXPECT_TRUE(onlyOne(test.findings()).stands());
    test.file.used.eyeTests.clear();
    EXPECT_THAT(idsOf(test.findings()), ElementsAre("near vision Q-2", "colour perception Q-2"));
}

TEST(ColourPerception, HoldsForSixtyMonthsTheLastDayIncluded) {
    ValidTest test = penetrantTest();
    test.eyeTest("Q-2", "colour perception").testedOn = "2021-11-25";
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
    test.eyeTest("Q-2", "colour perception").testedOn = "2021-11-24";
    EXPECT_EQ(onlyOne(test.findings()).id, "colour perception Q-2");
    EXPECT_EQ(onlyOne(test.findings()).reaction, Reaction::Block);
    // The edition of 2012 leaves the interval to the employer.
    test.file.used.qualifications[0].scheme = "ISO 9712:2012";
    EXPECT_EQ(onlyOne(test.findings()).reaction, Reaction::Warn);
}

TEST(Scheme, OfAnEmployerWarnsFromMemory) {
    ValidTest test = penetrantTest();
    test.file.used.qualifications[0].scheme = "SNT-TC-1A 2020";
    test.file.used.qualifications[0].sector.clear();
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
    test.eyeTest("Q-2", "near vision").testedOn = "2025-11-24";
    EXPECT_EQ(onlyOne(test.findings()).reaction, Reaction::Warn);
    EXPECT_EQ(onlyOne(test.findings({digestOf("SNT-TC-1A")})).reaction, Reaction::Block);
}

TEST(Scheme, WithoutRulesOfItsOwnTakesThoseOfIso9712AndSaysSo) {
    ValidTest test = penetrantTest();
    test.file.used.qualifications[0].scheme = "works' own scheme";
    const ConditionFinding noted = onlyOne(test.findings());
    EXPECT_EQ(noted.reaction, Reaction::Log);
    EXPECT_THAT(noted.reason.message(), HasSubstr("ISO 9712:2021"));
    test.eyeTest("Q-2", "near vision").testedOn = "2025-11-24";
    EXPECT_THAT(idsOf(test.findings()), ElementsAre("scheme Q-2", "near vision Q-2"));
}

TEST(EmployersPermission, HoldsForTheProcedureFromItsFirstToItsLastDay) {
    ValidTest test = penetrantTest();
    Authorisation& given = test.file.used.authorisations[0];
    given.grantedOn = kTestDay;
    given.until = kTestDay;
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
    given.procedures.clear();
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
    const auto changed = [&](std::string Authorisation::*field, const char* text) {
        ValidTest other = penetrantTest();
        other.file.used.authorisations[0].*field = text;
        return onlyOne(other.findings());
    };
    EXPECT_EQ(changed(&Authorisation::grantedOn, "2026-11-26").id, "authorisation Q-2");
    EXPECT_EQ(changed(&Authorisation::until, "2026-11-24").id, "authorisation Q-2");
    EXPECT_EQ(changed(&Authorisation::state, "withdrawn").id, "authorisation Q-2");
    EXPECT_EQ(changed(&Authorisation::procedures, "PT-2, PT-10").id, "authorisation Q-2");
    EXPECT_EQ(changed(&Authorisation::method, "MT").id, "authorisation Q-2");
    EXPECT_EQ(changed(&Authorisation::person, "Q-1").id, "authorisation Q-2");
    // Second hand: it needs a reason, and blocks once the set is attested.
    EXPECT_EQ(changed(&Authorisation::state, "withdrawn").reaction, Reaction::Warn);
    given.state = "withdrawn";
    EXPECT_EQ(onlyOne(test.findings({digestOf("ISO 9712:2021")})).reaction, Reaction::Block);
}

TEST(LevelOne, NeedsAnEvaluatorOfLevelTwoOrThree) {
    ValidTest test = penetrantTest();
    test.file.used.qualifications[0].level = "1";
    EXPECT_EQ(onlyOne(test.findings()).id, "evaluator");
    EXPECT_EQ(onlyOne(test.findings()).reaction, Reaction::Block);
    test.testers.evaluator = "Q-2";
    EXPECT_EQ(onlyOne(test.findings()).id, "evaluator");
    addPerson(test, "Q-3", "1");
    test.testers.evaluator = "Q-3";
    EXPECT_EQ(onlyOne(test.findings()).id, "evaluator level");
    EXPECT_EQ(onlyOne(test.findings()).reaction, Reaction::Block);
    test.file.used.qualifications[1].level = "2";
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
    // As the draft names them.
    test.testers.evaluator.clear();
    test.draft.conditions.evaluatedBy = "Q-3";
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
}

TEST(Evaluator, HasToBeEntitledLikeTheExaminer) {
    ValidTest test = penetrantTest();
    test.file.used.qualifications[0].level = "1";
    test.testers.evaluator = "Q-9";
    EXPECT_EQ(onlyOne(test.findings()).id, "certificate Q-9");
    addPerson(test, "Q-9", "3");
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
    test.eyeTest("Q-9", "near vision").testedOn = "2025-01-01";
    EXPECT_EQ(onlyOne(test.findings()).id, "near vision Q-9");
}

TEST(OrderedLevel, IsThatOfTheExaminer) {
    ValidTest test = penetrantTest();
    test.file.order.terms.operatorLevel = "2";
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
    for (const char* level : {"3", "II"}) {
        test.file.order.terms.operatorLevel = level;
        EXPECT_EQ(onlyOne(test.findings()).id, "ordered level Q-2");
        EXPECT_EQ(onlyOne(test.findings()).reaction, Reaction::Block);
    }
    // An evaluator of that level does not stand in for the examiner.
    addPerson(test, "Q-3", "3");
    test.testers.evaluator = "Q-3";
    test.file.order.terms.operatorLevel = "3";
    EXPECT_EQ(onlyOne(test.findings()).id, "ordered level Q-2");
}

TEST(Examiner, HasToBeNamed) {
    ValidTest test = penetrantTest();
    test.testers = {};
    EXPECT_EQ(onlyOne(test.findings()).id, "examiner");
    EXPECT_TRUE(onlyOne(test.findings()).stands());
}

}  // namespace
}  // namespace model
