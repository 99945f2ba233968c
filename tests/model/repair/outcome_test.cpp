// SPDX-License-Identifier: Apache-2.0
#include "repair/outcome.h"

#include "changed_case.h"

namespace model {
namespace {

using repaired::judged;
using testing::ElementsAre;
using testing::HasSubstr;

Outcome outcome(const CastingFile& file) {
    return outcomeOf(file, judged(file));
}

std::vector<std::string> ends(const CastingFile& file) {
    std::vector<std::string> texts;
    for (const Error& error : looseEndsOf(file, judged(file))) texts.push_back(error.message());
    return texts;
}

/// cracked() with only the pore.
CastingFile sound() {
    CastingFile file = repaired::cracked();
    file.examinations[0].rows.erase(file.examinations[0].rows.begin());
    return file;
}

TEST(Outcome, ConformsWithoutRepair) {
    EXPECT_EQ(outcome(sound()), Outcome::Conforms);
    EXPECT_EQ(word(Outcome::Conforms), "conforms");
}

TEST(Outcome, ConformsAfterRepair) {
    EXPECT_EQ(outcome(repaired::ground()), Outcome::ConformsAfterRepair);
    EXPECT_EQ(outcome(repaired::welded()), Outcome::ConformsAfterRepair);
    EXPECT_EQ(word(Outcome::ConformsAfterRepair), "conforms after repair");
}

TEST(Outcome, DoesNotConformWhileTheFindingStands) {
    EXPECT_EQ(outcome(repaired::cracked()), Outcome::DoesNotConform);
    EXPECT_EQ(outcome(repaired::held()), Outcome::DoesNotConform);
}

TEST(Outcome, DoesNotConformWhileARepairIsOpenThoughTheWordIsAcceptable) {
    CastingFile file = repaired::ground();
    file.dossier.excavations[0].wallLeft.clear();
    EXPECT_EQ(judged(file).word, Word::Acceptable);
    EXPECT_EQ(outcome(file), Outcome::DoesNotConform);
}

TEST(Outcome, ScrappedAndRegradedDoNotConform) {
    for (const char* decision : {"scrap", "regrade"}) {
        CastingFile file = repaired::ground();
        file.dossier.dispositions[0].decision = decision;
        EXPECT_EQ(judged(file).word, Word::Acceptable);
        EXPECT_EQ(outcome(file), Outcome::DoesNotConform) << decision;
    }
}

TEST(Outcome, NotJudgedIsTheCastingsWord) {
    CastingFile file = sound();
    file.examinations[1].header.noIndications = false;
    EXPECT_EQ(outcome(file), Outcome::NotJudged);
    CastingFile missing = sound();
    missing.examinations.pop_back();
    EXPECT_EQ(outcome(missing), Outcome::NotJudged);
}

TEST(Outcome, FailureThatWasRepairedWithoutANonconformanceIsALooseEnd) {
    CastingFile file = repaired::cracked();
    file.examinations.push_back(repaired::reexamination("2026-03-05"));
    file.examinations.back().conditions.nonconformance.clear();
    EXPECT_EQ(judged(file).word, Word::Acceptable);
    EXPECT_THAT(ends(file),
                ElementsAre(HasSubstr("examination Z1 MT as cast: says \"not acceptable\"")));
    EXPECT_EQ(outcome(file), Outcome::DoesNotConform);
}

TEST(LooseEnds, AreNoneInAFinishedRepair) {
    EXPECT_THAT(ends(repaired::ground()), ElementsAre());
    EXPECT_THAT(ends(repaired::welded()), ElementsAre());
    EXPECT_THAT(ends(repaired::conceded()), ElementsAre());
}

TEST(LooseEnds, OfAnExaminationDeclaredInvalidThereAreNone) {
    CastingFile file = repaired::cracked();
    file.examinations[0].header.invalid = Objection{"Rhea Drag", "yoke overdue"};
    file.examinations.push_back(repaired::reexamination("2026-03-05", 0));
    file.examinations.back().header.repeat = 1;
    file.examinations.back().conditions.nonconformance.clear();
    EXPECT_THAT(ends(file), ElementsAre());
    EXPECT_EQ(outcome(file), Outcome::Conforms);
}

TEST(LooseEnds, EveryEntryThatNamesAnotherWhichIsNotThere) {
    CastingFile file = repaired::welded();
    file.dossier.concessions = repaired::conceded().dossier.concessions;
    ASSERT_THAT(ends(file), ElementsAre());
    file.dossier.concessions[0].nonconformance = "N-3";
    file.dossier.dispositions.push_back(file.dossier.dispositions[0]);
    file.dossier.dispositions[1].nonconformance = "N-4";
    file.dossier.dispositions[1].sequence = "4";
    file.dossier.excavations.push_back(file.dossier.excavations[0]);
    file.dossier.excavations[1].number = "E-5";
    file.dossier.excavations[1].nonconformance = "N-5";
    file.dossier.excavations[1].zone = "Z5";
    file.dossier.weldRepairs.push_back(file.dossier.weldRepairs[0]);
    file.dossier.weldRepairs[1].number = "W-6";
    file.dossier.weldRepairs[1].excavation = "E-6";
    file.dossier.heatTreatments[0].weldRepairs = "W-1, W-7";
    file.examinations[1].conditions.nonconformance = "N-8";
    EXPECT_THAT(ends(file),
                ElementsAre("decision 4: names the nonconformance N-4, which is not there",
                            "excavation E-5: names the nonconformance N-5, which is not there",
                            "excavation E-5: names the zone Z5, which is not in the zone plan",
                            "weld W-6: names the excavation E-6, which is not there",
                            "heat treatment H-1: names the weld W-7, which is not there",
                            "concession C-1: names the nonconformance N-3, which is not there",
                            "examination Z2 MT as cast: names the nonconformance N-8, which is "
                            "not there"));
    EXPECT_EQ(outcome(file), Outcome::DoesNotConform);
}

}  // namespace
}  // namespace model
