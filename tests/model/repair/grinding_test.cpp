// SPDX-License-Identifier: Apache-2.0
// A finding that is ground out: cavity, wall left, blending, examination by the method that found
// it. The order of the steps is that of ferrous castings in ASME VIII-2:2010 (read): cavity by MT
// or PT, ground areas blended.
#include "changed_case.h"

namespace model {
namespace {

using repaired::ground;
using repaired::held;
using repaired::judged;
using test::caseOf;
using test::Changed;
using test::expectOpen;
using test::openOf;

TEST(Grinding, IsClosedWhenEverythingIsThere) {
    const CastingFile file = ground();
    const RepairCase c = caseOf(file);
    EXPECT_TRUE(c.closed) << openOf(c);
    EXPECT_EQ(c.state, repair_state::kGround);
    EXPECT_TRUE(c.repaired());
    EXPECT_EQ(c.cycle, 1);
}

TEST(Grinding, CaseHoldsEveryLink) {
    const CastingFile file = ground();
    const RepairCase c = caseOf(file);
    EXPECT_EQ(c.opened, &file.dossier.nonconformances[0]);
    EXPECT_EQ(c.found, &file.examinations[0]);
    EXPECT_EQ(c.decision(), &file.dossier.dispositions[0]);
    EXPECT_THAT(c.excavations, testing::ElementsAre(&file.dossier.excavations[0]));
    EXPECT_THAT(c.cavityTests, testing::ElementsAre(&file.dossier.otherResults[0]));
    EXPECT_THAT(c.reexaminations, testing::ElementsAre(&file.examinations[2]));
    EXPECT_TRUE(c.weldRepairs.empty());
}

TEST(Grinding, NothingDecidedIsOnHold) {
    const CastingFile file = held();
    const RepairCase c = caseOf(file);
    EXPECT_EQ(c.state, repair_state::kOnHold);
    EXPECT_THAT(openOf(c), testing::HasSubstr("nothing is decided"));
    EXPECT_EQ(c.cycle, 0);
}

TEST(Grinding, EveryMissingStepOfTheCavityIsNamed) {
    const auto cavity = [](std::string Excavation::*field, const char* text) {
        return [field, text](CastingFile& f) { f.dossier.excavations[0].*field = text; };
    };
    using namespace repair_state;
    expectOpen(
        ground(),
        {{"no excavation", [](CastingFile& f) { f.dossier.excavations.clear(); }, kToExcavate,
          "the excavation is missing"},
         {"no day", cavity(&Excavation::doneOn, ""), kToExcavate, "day on which it was made"},
         {"no cavity test", cavity(&Excavation::cavityMethod, ""), kCavityOpen, "not tested"},
         {"cavity by UT", cavity(&Excavation::cavityMethod, "UT"), kCavityOpen, "tested by UT"},
         {"not cleared", cavity(&Excavation::cleared, "no"), kCavityOpen, "not cleared"},
         {"not said whether", cavity(&Excavation::cleared, ""), kCavityOpen, "not cleared"},
         {"no record", cavity(&Excavation::cavityRecord, ""), kCavityOpen, "record of the cavity"},
         {"another", cavity(&Excavation::cavityRecord, "R-9"), kCavityOpen, "R-9, is not there"},
         {"record of PT", [](CastingFile& f) { f.dossier.otherResults[0].test = "penetrant"; },
          kCavityOpen, "another test or zone"},
         {"record of Z2", [](CastingFile& f) { f.dossier.otherResults[0].zone = "Z2"; },
          kCavityOpen, "another test or zone"},
         {"record fails",
          [](CastingFile& f) { f.dossier.otherResults[0].verdict = "not acceptable"; }, kCavityOpen,
          "says \"not acceptable\""},
         {"record before",
          [](CastingFile& f) { f.dossier.otherResults[0].performedOn = "2026-03-03"; }, kCavityOpen,
          "not known to be later than the excavation"},
         {"not blended", cavity(&Excavation::blended, "no"), kCavityOpen, "blended"},
         {"not said whether blended", cavity(&Excavation::blended, ""), kCavityOpen, "blended"}});
}

TEST(Grinding, WallLeftIsComparedWithTheDrawing) {
    const auto left = [](const char* text) {
        return [text](CastingFile& f) { f.dossier.excavations[0].wallLeft = text; };
    };
    using namespace repair_state;
    expectOpen(
        ground(),
        {{"not measured", left(""), kCavityOpen, "the wall left is not measured"},
         {"below", left("31.999999"), kCavityOpen,
          "31.999999 mm is below the drawing's minimum of 32 mm"},
         {"more than before", left("40.5"), kCavityOpen, "more than the wall before of 40 mm"},
         {"no minimum", [](CastingFile& f) { f.plan.zones[0].drawingMinimum.reset(); }, kCavityOpen,
          "no smallest wall of the drawing"},
         {"no zone", [](CastingFile& f) { f.dossier.excavations[0].zone = "Z7"; }, kCavityOpen,
          "no smallest wall of the drawing for zone Z7"},
         {"no instrument",
          [](CastingFile& f) { f.dossier.excavations[0].wallMeasuredWith.clear(); }, kIncomplete,
          "with what the wall left was measured"},
         {"instrument overdue",
          [](CastingFile& f) {
              Equipment gauge;
              gauge.id = "TG-3";
              gauge.calibrationDue = "2026-03-03";
              f.used.equipment = {gauge};
          },
          kIncomplete, "overdue for calibration on that day: TG-3"}});
    CastingFile file = ground();
    file.dossier.excavations[0].wallLeft = "32";  // at the minimum
    EXPECT_TRUE(caseOf(file).closed);
    file.dossier.excavations[0].wallLeft = "32,0";
    EXPECT_TRUE(caseOf(file).closed);
}

TEST(Grinding, MagneticTestOfACavityNeedsAMagneticMaterial) {
    // Non-magnetic cavities are tested by PT: ASME VIII-2:2010 (read). What nothing says is
    // magnetic may be austenitic.
    CastingFile file = ground();
    const auto isDoubted = [&] {
        return openOf(repairCasesOf(file, {}).front())
                   .find("nothing says that the material is magnetic") != std::string::npos;
    };
    EXPECT_FALSE(isDoubted());
    for (ExaminationDraft& draft : file.examinations) draft.header.method = Method::Penetrant;
    EXPECT_FALSE(isDoubted());  // the plan requires MT
    for (PlannedZone& zone : file.plan.zones) zone.tests.clear();
    EXPECT_TRUE(isDoubted());
    file.dossier.excavations[0].cavityMethod = "PT";
    EXPECT_FALSE(isDoubted());
}

TEST(Grinding, IsExaminedAgainByTheMethodThatFoundIt) {
    const auto again = [](auto change) {
        return [change](CastingFile& f) { change(f.examinations[2]); };
    };
    using namespace repair_state;
    expectOpen(
        ground(),
        {{"not examined", [](CastingFile& f) { f.examinations.pop_back(); }, kToExamine,
          "the examination of Z1 by MT at stage as cast after the repair is missing"},
         {"no repair cycle", again([](ExaminationDraft& d) {
              d.header.repairCycle = 0;
              d.header.repeat = 1;
          }),
          kToExamine, "in a later repair cycle than 0"},
         {"other stage", again([](ExaminationDraft& d) { d.header.stage = Stage::RoughMachined; }),
          kToExamine, "is missing"},
         {"other zone", again([](ExaminationDraft& d) { d.header.zone = "Z2"; }), kToExamine,
          "is missing"},
         {"does not name it", again([](ExaminationDraft& d) { d.conditions.nonconformance = ""; }),
          kToExamine, "does not say that it examines after nonconformance N-1"},
         {"fails", again([](ExaminationDraft& d) {
              d.header.noIndications = false;
              d.rows = {repaired::crack("1", "100", "60")};
          }),
          kToExamine, "says \"not acceptable\""},
         {"nothing stated", again([](ExaminationDraft& d) { d.header.noIndications = false; }),
          kToExamine, "says \"not judged\""},
         {"declared invalid", again([](ExaminationDraft& d) {
              d.header.invalid = Objection{"Rhea Drag", "lamp overdue"};
          }),
          kToExamine, "is missing"},
         {"weaker level", again([](ExaminationDraft& d) { d.header.levels["linear"] = "LM 6"; }),
          kToExamine, "neither to the limits of the examination that found it"},
         {"before the work", again([](ExaminationDraft& d) { d.examinedOn = "2026-03-03"; }),
          kToExamine, "not known to be later than excavation E-1"},
         {"without a day", again([](ExaminationDraft& d) { d.examinedOn.clear(); }), kToExamine,
          "not known to be later"}});
}

TEST(Grinding, OrderMayChangeTheLimitsOfTheExaminationAfterIt) {
    CastingFile file = ground();
    file.examinations[2].header.levels["linear"] = "LM 6";
    file.order.terms.tests = {{"Z1", "MT", "as cast", "EN 1369:2012",
                               "non-linear=SM 3,linear=LM 6,aligned=AM 4", "amendment 2"}};
    EXPECT_TRUE(caseOf(file).closed) << openOf(caseOf(file));
}

TEST(Grinding, RepairCyclesAreLimitedByTheOrder) {
    using namespace repair_state;
    CastingFile file = ground();
    file.order.terms.repairCycles = "1";
    expectOpen(file, {{"none allowed", [](CastingFile& f) { f.order.terms.repairCycles = "0"; },
                       kIncomplete, "come to repair cycle 1, and the order allows 0"},
                      {"no number", [](CastingFile& f) { f.order.terms.repairCycles = "few"; },
                       kIncomplete, "is not a whole number"}});
    file.order.terms.repairCycles = "0";
    file.dossier.dispositions[0].agreement = "AG-2";
    EXPECT_TRUE(caseOf(file).closed) << openOf(caseOf(file));
    // Before anything is done.
    CastingFile decided = held();
    decided.dossier.dispositions = {ground().dossier.dispositions};
    decided.order.terms.repairCycles = "0";
    EXPECT_EQ(caseOf(decided).state, kOnHold) << openOf(caseOf(decided));
}

TEST(Grinding, FindingHasToBeThere) {
    using namespace repair_state;
    CastingFile file = ground();
    file.dossier.nonconformances[0].indications = "1, 9";
    const RepairCase c = caseOf(file);
    EXPECT_EQ(c.found, nullptr);
    EXPECT_FALSE(c.closed);
    EXPECT_THAT(openOf(c), testing::HasSubstr("by MT that found it in zone Z1 is not there"));
}

TEST(Grinding, WhatTheRepairDidNotRemoveIsCarriedOnByALaterNonconformance) {
    CastingFile file = ground();
    file.examinations[2].header.noIndications = false;
    file.examinations[2].rows = {repaired::crack("1", "105", "50")};
    Nonconformance second = file.dossier.nonconformances[0];
    second.number = "N-2";
    second.openedOn = "2026-03-05";
    file.dossier.nonconformances.push_back(second);
    const auto cases = repairCasesOf(file, judged(file));
    ASSERT_EQ(cases.size(), 2u);
    EXPECT_EQ(cases[0].carriedOnBy, &file.dossier.nonconformances[1]);
    EXPECT_EQ(cases[0].state, repair_state::kCarriedOn);
    EXPECT_TRUE(cases[0].closed) << openOf(cases[0]);
    EXPECT_EQ(cases[1].found, &file.examinations[2]);
    EXPECT_EQ(cases[1].state, repair_state::kOnHold);
    EXPECT_EQ(cases[1].carriedOnBy, nullptr);
    // Decided to be ground once more, it comes to the second cycle.
    Disposition decision = file.dossier.dispositions[0];
    decision.nonconformance = "N-2";
    file.dossier.dispositions.push_back(decision);
    EXPECT_EQ(repairCasesOf(file, judged(file))[1].cycle, 2);
}

TEST(Grinding, LastDecisionStands) {
    CastingFile file = ground();
    Disposition scrap = file.dossier.dispositions[0];
    scrap.sequence = "10";
    scrap.decision = "scrap";
    Disposition before = scrap;
    before.sequence = "9";
    before.decision = "regrade";
    file.dossier.dispositions = {scrap, before, file.dossier.dispositions[0]};
    EXPECT_EQ(caseOf(file).state, repair_state::kScrapped);
    file.dossier.dispositions.erase(file.dossier.dispositions.begin());
    EXPECT_EQ(caseOf(file).state, repair_state::kRegraded);
}

TEST(Grinding, DecisionNeedsWhoAndWhen) {
    using namespace repair_state;
    expectOpen(ground(),
               {{"who", [](CastingFile& f) { f.dossier.dispositions[0].authority.clear(); },
                 kOnHold, "who decided"},
                {"when", [](CastingFile& f) { f.dossier.dispositions[0].decidedOn.clear(); },
                 kOnHold, "who decided"}});
}

}  // namespace
}  // namespace model
