// SPDX-License-Identifier: Apache-2.0
// A finding that is welded: agreement, weld, heat treatment, examination of the finished surface
// after it (ASME VIII-2:2010, ferrous castings, read).
#include "changed_case.h"

namespace model {
namespace {

using repaired::judged;
using repaired::welded;
using test::caseOf;
using test::Changed;
using test::expectOpen;
using test::openOf;
using testing::HasSubstr;
using testing::Not;

/// 6 mm deep in 40 mm, 50 x 20 mm: minor by ASTM A216, without agreement and heat treatment.
CastingFile minorWeld() {
    CastingFile file = welded();
    file.dossier.excavations[0].depth = "6";
    file.dossier.excavations[0].wallLeft = "34";
    file.dossier.dispositions[0].agreement.clear();
    file.dossier.heatTreatments.clear();
    return file;
}

TEST(Welding, IsClosedWhenEverythingIsThere) {
    const CastingFile file = welded();
    const RepairCase c = caseOf(file);
    EXPECT_TRUE(c.closed) << openOf(c);
    EXPECT_EQ(c.state, repair_state::kWelded);
    EXPECT_THAT(c.weldRepairs, testing::ElementsAre(&file.dossier.weldRepairs[0]));
    EXPECT_THAT(c.heatTreatments, testing::ElementsAre(&file.dossier.heatTreatments[0]));
    ASSERT_EQ(c.severities.size(), 1u);
    EXPECT_EQ(c.severities[0].severity, Severity::Major);  // 12 of 40 mm is 30 %
}

TEST(Welding, MayLeaveLessWallThanTheDrawingInTheCavity) {
    CastingFile file = welded();
    file.dossier.excavations[0].wallLeft = "0";
    EXPECT_TRUE(caseOf(file).closed) << openOf(caseOf(file));
    file.dossier.excavations[0].wallLeft.clear();
    EXPECT_THAT(openOf(caseOf(file)), HasSubstr("the wall left is not measured"));
}

TEST(Welding, MinorRepairNeedsNeitherAgreementNorHeatTreatment) {
    const CastingFile file = minorWeld();
    EXPECT_TRUE(caseOf(file).closed) << openOf(caseOf(file));
}

TEST(Welding, OrderCanAskForAgreementFirst) {
    // EN 1559-1:2011 6.2.2, option c (read).
    using namespace repair_state;
    CastingFile file = minorWeld();
    for (const char* option : {"", "maker free", "maker informs"}) {
        file.order.terms.finishingWelds = option;
        EXPECT_TRUE(caseOf(file).closed) << option;
    }
    file.order.terms.finishingWelds = "agreement first";
    EXPECT_EQ(caseOf(file).state, kIncomplete);
    EXPECT_THAT(openOf(caseOf(file)), HasSubstr("agreement before welding"));
    CastingFile agreed = file;
    agreed.dossier.weldRepairs[0].agreement = "AG-3";
    EXPECT_TRUE(caseOf(agreed).closed) << openOf(caseOf(agreed));
    agreed = file;
    agreed.dossier.dispositions[0].agreement = "AG-3";
    EXPECT_TRUE(caseOf(agreed).closed) << openOf(caseOf(agreed));
    // Before it is welded the case waits for it.
    CastingFile waiting = file;
    waiting.dossier.weldRepairs.clear();
    EXPECT_EQ(caseOf(waiting).state, kOnHold);
}

TEST(Welding, MajorRepairNeedsAgreementAndHeatTreatment) {
    using namespace repair_state;
    expectOpen(
        welded(),
        {{"no agreement", [](CastingFile& f) { f.dossier.dispositions[0].agreement.clear(); },
          kIncomplete, "agreement to welding is missing; the repair is major"},
         {"no heat treatment", [](CastingFile& f) { f.dossier.heatTreatments.clear(); },
          kToHeatTreat, "heat treatment after welding is missing; the repair is major"},
         {"of another weld",
          [](CastingFile& f) { f.dossier.heatTreatments[0].weldRepairs = "W-9"; }, kToHeatTreat,
          "heat treatment after welding is missing"},
         {"before the weld",
          [](CastingFile& f) { f.dossier.heatTreatments[0].doneOn = "2026-03-05"; }, kToHeatTreat,
          "heat treatment after welding is missing"}});
}

TEST(Welding, WhatIsNotKnownToBeMinorIsTreatedAsMajor) {
    using namespace repair_state;
    expectOpen(minorWeld(),
               {{"no rule", [](CastingFile& f) { f.order.terms.repairRule.clear(); }, kIncomplete,
                 "not known, treated as major: the order names no rule"},
                {"unknown rule", [](CastingFile& f) { f.order.terms.repairRule = "house rule"; },
                 kIncomplete, "\"house rule\" is not known"},
                {"wall before not measured",
                 [](CastingFile& f) { f.dossier.excavations[0].wallBefore.clear(); }, kIncomplete,
                 "the wall before the excavation is not measured"},
                {"pressure test not judged",
                 [](CastingFile& f) {
                     f.dossier.otherResults.push_back(
                         repaired::otherResult("R-5", "pressure", "2026-03-01"));
                     f.dossier.otherResults.back().verdict = "not judged";
                 },
                 kIncomplete, "the pressure test is not judged"}});
}

TEST(Welding, EveryEntryOfTheWeldIsNeeded) {
    const CastingFile whole = welded();
    for (std::string WeldRepair::*field :
         {&WeldRepair::weldingProcedure, &WeldRepair::procedureApproval, &WeldRepair::welder,
          &WeldRepair::welderApproval, &WeldRepair::welderUntil, &WeldRepair::filler,
          &WeldRepair::fillerBatch, &WeldRepair::preheat, &WeldRepair::interpass}) {
        CastingFile file = whole;
        (file.dossier.weldRepairs[0].*field).clear();
        EXPECT_EQ(caseOf(file).state, repair_state::kIncomplete);
        EXPECT_THAT(openOf(caseOf(file)), HasSubstr("weld W-1: not recorded"));
    }
    for (std::string HeatTreatment::*field :
         {&HeatTreatment::temperature, &HeatTreatment::holding, &HeatTreatment::chart,
          &HeatTreatment::furnace, &HeatTreatment::thermocouples}) {
        CastingFile file = whole;
        (file.dossier.heatTreatments[0].*field).clear();
        EXPECT_EQ(caseOf(file).state, repair_state::kIncomplete);
        EXPECT_THAT(openOf(caseOf(file)), HasSubstr("heat treatment H-1: not recorded"));
    }
}

TEST(Welding, StepsFollowEachOther) {
    using namespace repair_state;
    expectOpen(welded(),
               {{"not welded", [](CastingFile& f) { f.dossier.weldRepairs.clear(); }, kToWeld,
                 "it is not welded yet"},
                {"before the cavity test",
                 [](CastingFile& f) { f.dossier.weldRepairs[0].doneOn = "2026-03-04"; },
                 kCavityOpen, "weld W-1 is not known to be later than the cavity test"},
                {"before the excavation",
                 [](CastingFile& f) { f.dossier.weldRepairs[0].doneOn = "2026-03-03"; },
                 kCavityOpen, "not known to be later than excavation E-1"},
                {"approval ended",
                 [](CastingFile& f) { f.dossier.weldRepairs[0].welderUntil = "2026-03-05"; },
                 kIncomplete, "which ended on 2026-03-05"},
                {"thermocouple overdue",
                 [](CastingFile& f) {
                     Equipment thing;
                     thing.id = "TC-22";
                     thing.calibrationDue = "2026-03-07";
                     f.used.equipment = {thing};
                 },
                 kIncomplete, "overdue for calibration on that day: TC-22"},
                {"never decided",
                 [](CastingFile& f) { f.dossier.dispositions[0].decision = "grind only"; },
                 kIncomplete, "weld repair was never decided"},
                {"examined before the heat treatment",
                 [](CastingFile& f) { f.examinations[2].examinedOn = "2026-03-07"; }, kToExamine,
                 "not known to be later than heat treatment H-1"},
                {"another heat treatment later",
                 [](CastingFile& f) {
                     f.dossier.heatTreatments.push_back(f.dossier.heatTreatments[0]);
                     f.dossier.heatTreatments[1].number = "H-2";
                     f.dossier.heatTreatments[1].weldRepairs.clear();
                     f.dossier.heatTreatments[1].doneOn = "2026-03-20";
                 },
                 kToExamine, "not known to be later than heat treatment H-2"}});
    CastingFile sameDay = welded();
    sameDay.dossier.weldRepairs[0].welderUntil = "2026-03-06";
    EXPECT_TRUE(caseOf(sameDay).closed);
}

TEST(Welding, SecondWeldNeedsItsOwnCavity) {
    // A second cavity of the case is decided to be welded, and is not.
    CastingFile file = welded();
    file.dossier.excavations.push_back(file.dossier.excavations[0]);
    file.dossier.excavations[1].number = "E-2";
    EXPECT_EQ(caseOf(file).state, repair_state::kToWeld) << openOf(caseOf(file));
    EXPECT_THAT(openOf(caseOf(file)), HasSubstr("excavation E-2: weld repair was decided"));
}

TEST(Welding, FindingByUltrasoundIsExaminedByItAndOnTheSurface) {
    using namespace repair_state;
    CastingFile file = welded();
    repaired::requireUltrasonic(file);
    file.examinations = {file.examinations[0], file.examinations[1],
                         repaired::ultrasonic("2026-03-02", true)};
    file.examinations[0].rows.erase(file.examinations[0].rows.begin());  // MT found nothing
    file.dossier.nonconformances[0].method = "UT";
    file.dossier.nonconformances[0].indications = "u1";
    EXPECT_EQ(caseOf(file).found, &file.examinations[2]);
    EXPECT_THAT(openOf(caseOf(file)), HasSubstr("the examination of Z1 by UT at stage as cast"));
    EXPECT_THAT(openOf(caseOf(file)), HasSubstr("MT or PT of the finished surface of zone Z1"));

    file.examinations.push_back(repaired::ultrasonic("2026-03-10", false, 1));
    file.examinations.back().conditions.nonconformance = "N-1";
    EXPECT_THAT(openOf(caseOf(file)), Not(HasSubstr("by UT at stage")));
    EXPECT_EQ(caseOf(file).state, kToExamine);  // MT was made before the weld

    CastingFile byMagnetic = file;
    byMagnetic.examinations.push_back(repaired::reexamination("2026-03-09"));
    EXPECT_TRUE(caseOf(byMagnetic).closed) << openOf(caseOf(byMagnetic));
    byMagnetic.examinations.back().examinedOn = "2026-03-07";  // before the heat treatment
    EXPECT_FALSE(caseOf(byMagnetic).closed);

    CastingFile byOthers = file;
    byOthers.dossier.otherResults.push_back(
        repaired::otherResult("R-2", "penetrant", "2026-03-09"));
    EXPECT_TRUE(caseOf(byOthers).closed) << openOf(caseOf(byOthers));
    byOthers.dossier.otherResults.back().zone = "Z2";
    EXPECT_FALSE(caseOf(byOthers).closed);
    byOthers.dossier.otherResults.back().zone.clear();  // the whole casting
    EXPECT_TRUE(caseOf(byOthers).closed);
}

TEST(Welding, FindingByAnotherTestIsExaminedByIt) {
    CastingFile file = welded();
    file.examinations = {file.examinations[1], repaired::reexamination("2026-03-10", 0)};
    file.dossier.nonconformances[0].method = "RT";
    file.dossier.nonconformances[0].indications = "film 3";
    file.dossier.nonconformances[0].stage.clear();
    EXPECT_THAT(openOf(caseOf(file)), HasSubstr("by RT that found it in zone Z1 is not there"));

    file.dossier.otherResults.push_back(repaired::otherResult("R-2", "radiographic", "2026-03-02"));
    file.dossier.otherResults.back().verdict = "not acceptable";
    EXPECT_EQ(caseOf(file).foundByOther, &file.dossier.otherResults[1]);
    EXPECT_EQ(caseOf(file).state, repair_state::kToExamine);
    EXPECT_THAT(openOf(caseOf(file)), HasSubstr("radiographic test of Z1 after the repair"));

    file.dossier.otherResults.push_back(repaired::otherResult("R-3", "radiographic", "2026-03-09"));
    EXPECT_TRUE(caseOf(file).closed) << openOf(caseOf(file));
    for (const char* word : {"not acceptable", "not judged"}) {
        file.dossier.otherResults.back().verdict = word;
        EXPECT_THAT(openOf(caseOf(file)), HasSubstr(std::string("R-3, says \"") + word));
    }
    file.dossier.otherResults.back().verdict = "acceptable";
    file.dossier.otherResults.back().performedOn = "2026-03-07";  // before the heat treatment
    EXPECT_FALSE(caseOf(file).closed);
}

}  // namespace
}  // namespace model
