// SPDX-License-Identifier: Apache-2.0
// What zone plan and order require against what was examined. Verdicts are written by hand: here
// only their word, table and levels matter.
#include "record/coverage.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace model {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

const std::map<std::string, std::string> kLevels = {{"linear", "LM 4"}};

/// Z1 and Z2, each by MT as cast.
CastingFile planned() {
    CastingFile file;
    file.casting.serial = "QM-26-0201";
    file.part.number = "QP-300";
    file.order.number = "O-77";
    for (const char* name : {"Z1", "Z2"}) {
        PlannedZone zone;
        zone.name = name;
        zone.tests = {{Method::Magnetic, Stage::AsCast, "T", kLevels}};
        file.plan.zones.push_back(zone);
    }
    return file;
}

ExaminationVerdict made(const std::string& zone, Word word = Word::Acceptable) {
    ExaminationVerdict verdict;
    verdict.zone = zone;
    verdict.word = word;
    verdict.tableId = "T";
    verdict.levels = kLevels;
    return verdict;
}

Verdict both() {
    return {Word::Acceptable, {made("Z1"), made("Z2")}};
}

OrderedTest ordered(const std::string& zone, const std::string& levels) {
    return {zone, "MT", "as cast", "T", levels, "amendment 1"};
}

OtherResult radiograph(const std::string& zone, const std::string& verdict) {
    OtherResult result;
    result.number = "R-1";
    result.zone = zone;
    result.test = "radiographic";
    result.verdict = verdict;
    result.performedOn = "2026-03-02";
    return result;
}

std::vector<CoveredTest::State> statesOf(const CastingFile& file, const Verdict& verdict) {
    std::vector<CoveredTest::State> states;
    for (const CoveredTest& covered : coverageOf(file, verdict)) states.push_back(covered.state);
    return states;
}

TEST(RequiredTests, AreThePlansWhereTheOrderSaysNothing) {
    const CastingFile file = planned();
    const RequiredTests required = requiredTestsOf(file);
    ASSERT_EQ(required.tests.size(), 2u);
    EXPECT_EQ(required.tests[0].zone, &file.plan.zones[0]);
    EXPECT_EQ(required.tests[0].test.levels, kLevels);
    EXPECT_FALSE(required.tests[0].ordered);
    EXPECT_THAT(required.errors, IsEmpty());
}

TEST(RequiredTests, OrderTakesThePlaceOfThePlan) {
    CastingFile file = planned();
    file.order.terms.tests = {ordered("", "linear=LM 3"), ordered("Z2", "linear=LM 2")};
    const RequiredTests required = requiredTestsOf(file);
    ASSERT_EQ(required.tests.size(), 2u);
    EXPECT_EQ(required.tests[0].test.levels.at("linear"), "LM 3");
    EXPECT_EQ(required.tests[1].test.levels.at("linear"), "LM 2");  // the named zone's
    EXPECT_TRUE(required.tests[0].ordered);
}

TEST(RequiredTests, OrderAddsWhatThePlanHasNot) {
    CastingFile file = planned();
    OrderedTest penetrant = ordered("Z2", "all=P 2");
    penetrant.method = "PT";
    file.order.terms.tests = {penetrant};
    const RequiredTests required = requiredTestsOf(file);
    ASSERT_EQ(required.tests.size(), 3u);
    EXPECT_EQ(required.tests[2].zone, &file.plan.zones[1]);
    EXPECT_EQ(required.tests[2].test.method, Method::Penetrant);
}

TEST(RequiredTests, WhatCannotBeReadIsNamedAndLeavesTheCastingNotJudged) {
    struct Case {
        std::string OrderedTest::*field;
        const char* text;
        const char* reason;
    };
    const Case cases[] = {{&OrderedTest::zone, "Z9", "the zone Z9 is not in the zone plan"},
                          {&OrderedTest::method, "XT", "\"XT\" is not a method"},
                          {&OrderedTest::stage, "melted", "\"melted\" is not a stage"},
                          {&OrderedTest::table, "", "names no limit table"},
                          {&OrderedTest::levels, "", "are not written as key=level"},
                          {&OrderedTest::levels, "LM 4", "are not written as key=level"}};
    for (const Case& c : cases) {
        CastingFile file = planned();
        file.order.terms.tests = {ordered("Z1", "linear=LM 4")};
        ASSERT_EQ(castingWord(file, both()), Word::Acceptable);
        file.order.terms.tests[0].*c.field = c.text;
        const RequiredTests required = requiredTestsOf(file);
        ASSERT_EQ(required.errors.size(), 1u) << c.reason;
        EXPECT_THAT(required.errors[0].message(), HasSubstr(c.reason));
        EXPECT_EQ(required.tests.size(), 2u);  // the plan's stays
        EXPECT_EQ(castingWord(file, both()), Word::NotJudged) << c.reason;
    }
}

TEST(RequiredTests, TwiceByOtherLimitsIsNamed) {
    CastingFile file = planned();
    file.order.terms.tests = {ordered("Z1", "linear=LM 4"), ordered("Z1", "linear=LM 4")};
    EXPECT_THAT(requiredTestsOf(file).errors, IsEmpty());
    file.order.terms.tests[1].levels = "linear=LM 2";
    ASSERT_EQ(requiredTestsOf(file).errors.size(), 1u);
    EXPECT_THAT(requiredTestsOf(file).errors[0].message(), HasSubstr("order O-77, test 2"));
    EXPECT_EQ(castingWord(file, both()), Word::NotJudged);
}

TEST(Coverage, TellsMadeOtherCriteriaAndMissing) {
    using enum CoveredTest::State;
    const CastingFile file = planned();
    EXPECT_THAT(statesOf(file, both()), ElementsAre(Made, Made));
    Verdict verdict = both();
    verdict.examinations[0].levels["linear"] = "LM 6";
    verdict.examinations[1].stage = Stage::RoughMachined;
    EXPECT_THAT(statesOf(file, verdict), ElementsAre(OtherCriteria, Missing));
    verdict = both();
    verdict.examinations[0].superseded = true;
    verdict.examinations[1].tableId = "U";
    EXPECT_THAT(statesOf(file, verdict), ElementsAre(Missing, OtherCriteria));
}

TEST(Coverage, SaysWhichPartsWereLeftOut) {
    CastingFile file = planned();
    ExaminationDraft draft;
    draft.header.zone = "Z1";
    draft.header.notExamined = {{squareMillimetres(400), "riser stub", "A-1"}};
    file.examinations = {draft};
    const auto covered = coverageOf(file, both());
    ASSERT_EQ(covered[0].notExamined.size(), 1u);
    EXPECT_EQ(covered[0].notExamined[0].reason, "riser stub");
    EXPECT_THAT(covered[1].notExamined, IsEmpty());
    // What a later cycle counts instead of leaves nothing out.
    Verdict later = both();
    later.examinations[0].repairCycle = 1;
    EXPECT_THAT(coverageOf(file, later)[0].notExamined, IsEmpty());
}

TEST(Coverage, TestByOthersIsCoveredByItsWorstResult) {
    CastingFile file = planned();
    file.plan.zones[0].otherTests = {"radiographic"};
    EXPECT_EQ(castingWord(file, both()), Word::NotJudged);
    file.dossier.otherResults = {radiograph("Z1", "acceptable")};
    EXPECT_EQ(castingWord(file, both()), Word::Acceptable);
    EXPECT_EQ(otherCoverageOf(file)[0].result, &file.dossier.otherResults[0]);
    file.dossier.otherResults[0].zone.clear();  // the whole casting
    EXPECT_EQ(castingWord(file, both()), Word::Acceptable);
    file.dossier.otherResults[0].zone = "Z2";
    EXPECT_EQ(castingWord(file, both()), Word::NotJudged);
    file.dossier.otherResults = {radiograph("Z1", "acceptable"), radiograph("", "not judged")};
    EXPECT_EQ(castingWord(file, both()), Word::NotJudged);
    EXPECT_EQ(otherCoverageOf(file)[0].result, &file.dossier.otherResults[1]);
    file.dossier.otherResults[1].verdict = "not acceptable";
    EXPECT_EQ(castingWord(file, both()), Word::NotAcceptable);
}

TEST(Coverage, CavityTestCoversNoZone) {
    CastingFile file = planned();
    file.plan.zones[0].otherTests = {"radiographic"};
    file.dossier.otherResults = {radiograph("Z1", "acceptable")};
    file.dossier.excavations.resize(1);
    file.dossier.excavations[0].cavityRecord = "R-1";
    EXPECT_EQ(castingWord(file, both()), Word::NotJudged);
}

TEST(CastingWord, IsNeverBetterThanAnyResult) {
    CastingFile file = planned();
    EXPECT_EQ(castingWord(file, {}), Word::NotJudged);
    EXPECT_EQ(castingWord(file, both()), Word::Acceptable);
    // Nobody asked for the radiograph, and it is not acceptable all the same.
    file.dossier.otherResults = {radiograph("Z1", "not acceptable")};
    EXPECT_EQ(castingWord(file, both()), Word::NotAcceptable);
    file.dossier.otherResults[0].verdict = "looks good";  // no word of the contract
    EXPECT_EQ(castingWord(file, both()), Word::NotJudged);
    Verdict failed{Word::NotAcceptable, {made("Z1", Word::NotAcceptable)}};
    EXPECT_EQ(castingWord(file, failed), Word::NotAcceptable);
}

}  // namespace
}  // namespace model
