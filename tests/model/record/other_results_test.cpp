// SPDX-License-Identifier: Apache-2.0
// Which verdicts of other tests stand.
#include "record/other_results.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace model {
namespace {

using testing::ElementsAre;

OtherResult result(const std::string& number, const std::string& verdict, const std::string& day,
                   const std::string& test = "radiographic") {
    OtherResult made;
    made.number = number;
    made.zone = "Z1";
    made.test = test;
    made.verdict = verdict;
    made.performedOn = day;
    return made;
}

std::vector<std::string> standing(const CastingFile& file) {
    std::vector<std::string> numbers;
    for (const OtherResult* one : standingResultsOf(file)) numbers.push_back(one->number);
    return numbers;
}

/// R-1 fails on the 2nd, metal is taken out under N-1 (RT) on the 4th, R-2 passes on the 6th.
CastingFile repaired() {
    CastingFile file;
    file.dossier.otherResults = {result("R-1", "not acceptable", "2026-03-02"),
                                 result("R-2", "acceptable", "2026-03-06")};
    file.dossier.nonconformances.resize(1);
    file.dossier.nonconformances[0].number = "N-1";
    file.dossier.nonconformances[0].method = "RT";
    file.dossier.excavations.resize(1);
    file.dossier.excavations[0].nonconformance = "N-1";
    file.dossier.excavations[0].zone = "Z1";
    file.dossier.excavations[0].doneOn = "2026-03-04";
    return file;
}

TEST(StandingResults, FailureGivesWayOnlyAfterMetalWasTakenOut) {
    EXPECT_THAT(standing(repaired()), ElementsAre("R-2"));
    CastingFile file = repaired();
    file.dossier.excavations.clear();  // a second reading of the same film is no repair
    EXPECT_THAT(standing(file), ElementsAre("R-1", "R-2"));
    file = repaired();
    file.dossier.excavations[0].doneOn = "2026-03-01";
    EXPECT_THAT(standing(file), ElementsAre("R-1", "R-2"));
    file = repaired();
    file.dossier.excavations[0].doneOn = "2026-03-07";
    EXPECT_THAT(standing(file), ElementsAre("R-1", "R-2"));
    file = repaired();
    file.dossier.excavations[0].zone = "Z2";
    EXPECT_THAT(standing(file), ElementsAre("R-1", "R-2"));
    file = repaired();
    file.dossier.nonconformances[0].method = "VT";
    EXPECT_THAT(standing(file), ElementsAre("R-1", "R-2"));
    file = repaired();
    file.dossier.otherResults[1].zone.clear();
    EXPECT_THAT(standing(file), ElementsAre("R-1", "R-2"));
    file = repaired();
    file.dossier.otherResults[1].verdict = "not judged";
    EXPECT_THAT(standing(file), ElementsAre("R-1", "R-2"));
}

TEST(StandingResults, WithoutADayNothingGivesWay) {
    CastingFile file = repaired();
    file.dossier.otherResults[0].performedOn.clear();
    EXPECT_THAT(standing(file), ElementsAre("R-1", "R-2"));
    file = repaired();
    file.dossier.otherResults[1].performedOn = "6 March";
    EXPECT_THAT(standing(file), ElementsAre("R-1", "R-2"));
    file = repaired();
    file.dossier.excavations[0].doneOn.clear();
    EXPECT_THAT(standing(file), ElementsAre("R-1", "R-2"));
}

TEST(StandingResults, NotJudgedGivesWayToALaterOneOfItsTestAndZone) {
    CastingFile file;
    file.dossier.otherResults = {result("R-1", "not judged", "2026-03-02"),
                                 result("R-2", "acceptable", "2026-03-03")};
    EXPECT_THAT(standing(file), ElementsAre("R-2"));
    file.dossier.otherResults[1].verdict = "not acceptable";
    EXPECT_THAT(standing(file), ElementsAre("R-2"));
    file.dossier.otherResults[1].verdict = "not judged";
    EXPECT_THAT(standing(file), ElementsAre("R-2"));
    file.dossier.otherResults[1].performedOn = "2026-03-02";  // which is the later is not known
    EXPECT_THAT(standing(file), ElementsAre("R-1", "R-2"));
    file.dossier.otherResults[1] = result("R-2", "acceptable", "2026-03-03", "visual");
    EXPECT_THAT(standing(file), ElementsAre("R-1", "R-2"));
}

TEST(StandingResults, LaterFailureStandsBesideAnEarlierPass) {
    CastingFile file;
    file.dossier.otherResults = {result("R-1", "acceptable", "2026-03-02"),
                                 result("R-2", "not acceptable", "2026-03-03")};
    EXPECT_THAT(standing(file), ElementsAre("R-1", "R-2"));
}

TEST(StandingResults, SurfaceTestsOfEveryRepairCount) {
    // MT and PT follow every step of a repair, whatever test found it.
    CastingFile file = repaired();
    for (OtherResult& one : file.dossier.otherResults) one.test = "penetrant";
    EXPECT_THAT(standing(file), ElementsAre("R-2"));
    for (OtherResult& one : file.dossier.otherResults) one.test = "hardness";
    EXPECT_THAT(standing(file), ElementsAre("R-1", "R-2"));
    file.dossier.nonconformances[0].method = "other";
    EXPECT_THAT(standing(file), ElementsAre("R-2"));
}

}  // namespace
}  // namespace model
