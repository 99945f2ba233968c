// SPDX-License-Identifier: Apache-2.0
// What the purchaser accepts beyond the limits: exact indications, in writing, up to a day
// (ISO 9001:2015 8.7.2, from memory).
#include "changed_case.h"
#include "repair/outcome.h"

namespace model {
namespace {

using repaired::conceded;
using repaired::judged;
using test::caseOf;
using test::Changed;
using test::expectOpen;
using test::openOf;
using testing::HasSubstr;

TEST(Concession, AcceptsWhatItNames) {
    const CastingFile file = conceded();
    const RepairCase c = caseOf(file);
    EXPECT_TRUE(c.closed) << openOf(c);
    EXPECT_EQ(c.state, repair_state::kConceded);
    EXPECT_FALSE(c.repaired());
    EXPECT_EQ(outcomeOf(file, judged(file)), Outcome::UnderConcession);
    EXPECT_EQ(judged(file).word, Word::NotAcceptable);
}

TEST(Concession, EachThingThatItNeeds) {
    const auto without = [](std::string Concession::*field, const char* text = "") {
        return [field, text](CastingFile& f) { f.dossier.concessions[0].*field = text; };
    };
    using namespace repair_state;
    expectOpen(
        conceded(),
        {{"none", [](CastingFile& f) { f.dossier.concessions.clear(); }, kToConcede,
          "the purchaser's concession is missing"},
         {"reference", without(&Concession::customerReference), kToConcede, "reference is missing"},
         {"by whom", without(&Concession::grantedBy), kToConcede, "who granted it"},
         {"scope", without(&Concession::scope), kToConcede, "its scope is missing"},
         {"indications", without(&Concession::indications, " , "), kToConcede,
          "it names no indication"},
         {"day", without(&Concession::grantedOn), kToConcede, "not known to be granted"},
         {"before the finding", without(&Concession::grantedOn, "2026-03-01"), kToConcede,
          "not known to be granted after"},
         {"other indication", without(&Concession::indications, "2"), kToConcede,
          "no concession that holds accepts Z1/1"},
         {"unknown indication", without(&Concession::indications, "1, 7"), kToConcede,
          "names Z1/7, which no examination"}});
}

TEST(Concession, HoldsFromItsDayToItsEnd) {
    const CastingFile file = conceded();
    const auto closedOn = [&](const char* today) { return caseOf(file, today).closed; };
    EXPECT_FALSE(closedOn("2026-03-03"));
    EXPECT_TRUE(closedOn("2026-03-04"));
    EXPECT_TRUE(closedOn("2026-12-31"));
    EXPECT_FALSE(closedOn("2027-01-01"));
    EXPECT_THAT(openOf(caseOf(file, "2027-01-01")), HasSubstr("it ended on 2026-12-31"));
    EXPECT_EQ(outcomeOf(file, judged(file), "2027-01-01"), Outcome::DoesNotConform);
    CastingFile open = file;
    open.dossier.concessions[0].until.clear();
    EXPECT_TRUE(caseOf(open, "2099-01-01").closed);
}

TEST(Concession, WithoutADayTheLastOneOfTheRecordCounts) {
    CastingFile file = conceded();
    file.dossier.concessions[0].until = "2026-03-10";
    EXPECT_TRUE(caseOf(file).closed);
    file.dossier.otherResults = {repaired::otherResult("R-8", "visual", "2026-03-11")};
    EXPECT_FALSE(caseOf(file).closed);
}

TEST(Concession, IsOfTheExaminationThatCountsNotOfALaterOneWithTheSameNumbers) {
    CastingFile file = conceded();
    ExaminationDraft repeat = file.examinations[0];
    repeat.header.repeat = 1;
    repeat.examinedOn = "2026-03-09";
    file.examinations.push_back(repeat);
    EXPECT_THAT(openOf(caseOf(file)), HasSubstr("not known to be granted after the examination"));
    EXPECT_EQ(outcomeOf(file, judged(file)), Outcome::DoesNotConform);
    file.dossier.concessions[0].grantedOn = "2026-03-09";
    EXPECT_EQ(outcomeOf(file, judged(file)), Outcome::UnderConcession);
}

TEST(Concession, EveryFailingIndicationHasToBeAccepted) {
    CastingFile file = conceded();
    file.examinations[0].rows.push_back(repaired::crack("3", "400", "300"));
    // N-1 speaks of 1 alone, and its case is closed; the casting is not.
    EXPECT_TRUE(caseOf(file).closed) << openOf(caseOf(file));
    EXPECT_EQ(outcomeOf(file, judged(file)), Outcome::DoesNotConform);
    file.dossier.concessions[0].indications = "1, 3";
    EXPECT_EQ(outcomeOf(file, judged(file)), Outcome::UnderConcession);
}

TEST(Concession, OfASumNamesEverythingThatCounts) {
    // Not the worst frame alone: elsewhere another may be over the limit too.
    CastingFile file = conceded();
    file.order.forbiddenKinds.clear();
    file.examinations[0].rows.clear();
    int id = 0;
    for (const char* x : {"40", "80", "120", "440", "480", "520"}) {
        TypedIndication row = repaired::crack(std::to_string(++id), x, "100");
        row.length = "8";
        row.kind.clear();
        file.examinations[0].rows.push_back(row);
    }
    const Verdict verdict = judged(file);
    ASSERT_EQ(verdict.examinations[0].word, Word::NotAcceptable);
    file.dossier.nonconformances[0].indications.clear();
    file.dossier.concessions[0].indications = "1, 2, 3";
    EXPECT_EQ(outcomeOf(file, judged(file)), Outcome::DoesNotConform);
    EXPECT_THAT(openOf(caseOf(file)), HasSubstr("Z1/6"));
    file.dossier.concessions[0].indications = "1, 2, 3, 4, 5, Z1/6";
    EXPECT_EQ(outcomeOf(file, judged(file)), Outcome::UnderConcession) << openOf(caseOf(file));
}

TEST(Concession, CannotAcceptWhatNobodyCanName) {
    CastingFile rejected = conceded();
    rejected.examinations[0].header.rejected = Objection{"Ada Level", "surface too rough to judge"};
    EXPECT_THAT(openOf(caseOf(rejected)), HasSubstr("surface too rough to judge"));
    EXPECT_EQ(outcomeOf(rejected, judged(rejected)), Outcome::DoesNotConform);

    // Beside the crack a kind is not stated: it may be a crack too.
    CastingFile open = conceded();
    open.examinations[0].rows.push_back(repaired::crack("3", "400", "300"));
    open.examinations[0].rows.back().length = "6";
    open.examinations[0].rows.back().kind.clear();
    EXPECT_EQ(outcomeOf(open, judged(open)), Outcome::DoesNotConform);
}

TEST(Concession, DoesNotCoverWhatIsNotJudged) {
    CastingFile file = conceded();
    file.plan.zones[1].otherTests = {"radiographic"};
    EXPECT_EQ(outcomeOf(file, judged(file)), Outcome::DoesNotConform);
    file.dossier.otherResults = {repaired::otherResult("R-3", "radiographic", "2026-03-03")};
    file.dossier.otherResults[0].zone = "Z2";
    EXPECT_EQ(outcomeOf(file, judged(file)), Outcome::UnderConcession);
}

TEST(Concession, OfAnotherTestIsOfItsResult) {
    CastingFile file = conceded();
    file.examinations[0].rows.erase(file.examinations[0].rows.begin());
    file.dossier.nonconformances[0].method = "RT";
    file.dossier.nonconformances[0].indications = "film 3";
    file.dossier.concessions[0].indications = "film 3";
    file.dossier.otherResults = {repaired::otherResult("R-3", "radiographic", "2026-03-02")};
    file.dossier.otherResults[0].verdict = "not acceptable";
    EXPECT_EQ(outcomeOf(file, judged(file)), Outcome::UnderConcession) << openOf(caseOf(file));
    // A result that is not in it.
    file.dossier.otherResults.push_back(repaired::otherResult("R-4", "visual", "2026-03-02"));
    file.dossier.otherResults[1].verdict = "not acceptable";
    EXPECT_EQ(outcomeOf(file, judged(file)), Outcome::DoesNotConform);
}

TEST(Concession, AfterARepairIsOfWhatWasFoundAgain) {
    CastingFile file = repaired::ground();
    file.examinations[2].header.noIndications = false;
    file.examinations[2].rows = {repaired::crack("1", "105", "50")};
    Disposition later = file.dossier.dispositions[0];
    later.sequence = "2";
    later.decision = "concession";
    later.decidedOn = "2026-03-06";
    file.dossier.dispositions.push_back(later);
    file.dossier.concessions = conceded().dossier.concessions;
    // Granted on the 4th, for what was found on the 2nd.
    EXPECT_EQ(outcomeOf(file, judged(file)), Outcome::DoesNotConform);
    file.dossier.concessions[0].grantedOn = "2026-03-06";
    EXPECT_EQ(outcomeOf(file, judged(file)), Outcome::UnderConcession) << openOf(caseOf(file));
    // The wall left has to be that of the drawing all the same.
    file.dossier.excavations[0].wallLeft = "31";
    EXPECT_EQ(outcomeOf(file, judged(file)), Outcome::DoesNotConform);
    // A cavity that is not cleared is what the concession is about.
    file.dossier.excavations[0].wallLeft = "33";
    file.dossier.excavations[0].cleared = "no";
    file.dossier.otherResults[0].verdict = "not acceptable";
    EXPECT_EQ(outcomeOf(file, judged(file)), Outcome::UnderConcession) << openOf(caseOf(file));
}

}  // namespace
}  // namespace model
