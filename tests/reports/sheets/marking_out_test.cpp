// SPDX-License-Identifier: Apache-2.0
#include "sheet_text.h"

namespace {

using repaired::held;
using sheet::markingOut;
using testing::AllOf;
using testing::HasSubstr;
using testing::Not;
using testing::StartsWith;

/// held() with a repair decided.
model::CastingFile decided(const std::string& decision) {
    model::CastingFile file = held();
    file.dossier.dispositions = repaired::ground().dossier.dispositions;
    file.dossier.dispositions[0].decision = decision;
    return file;
}

TEST(MarkingOut, ShowsWhatIsToBeTakenOutFromTheDatum) {
    const std::string text = markingOut(decided("grind only"));
    EXPECT_THAT(text, HasSubstr("| 1 | Z1 MT, as cast | 100 | 50 | 30 | 1 | 0 | surface | crack | "
                                "take out: grind only (N-1) |"));
    EXPECT_THAT(text, HasSubstr("capsule: 1 100 50 30 x 1 at 0, failing"));
    EXPECT_THAT(text, HasSubstr("outline: zone Z1 600 x 400"));
    EXPECT_THAT(text, HasSubstr("flange face, datum at the lower left bolt hole"));
    // What stays is drawn and not listed.
    EXPECT_THAT(text, HasSubstr("capsule: (2) 300 200 3 x 2 at 0, not counted"));
    EXPECT_THAT(text, Not(HasSubstr("| (2) |")));
    EXPECT_THAT(text, Not(HasSubstr("Zone Z2")));
    EXPECT_THAT(text, Not(HasSubstr("NOT DECIDED")));
}

TEST(MarkingOut, SaysHowMuchWallMayGo) {
    model::CastingFile file = decided("grind only");
    EXPECT_THAT(markingOut(file), AllOf(HasSubstr("Drawing minimum: 32 mm"),
                                        HasSubstr("8 mm deep in a wall of 40 mm")));
    file.plan.zones[0].drawingMinimum = model::millimetres(40);
    EXPECT_THAT(markingOut(file), HasSubstr("nothing: the wall is at the drawing's minimum"));
    file.plan.zones[0].drawingMinimum.reset();
    EXPECT_THAT(markingOut(file), AllOf(HasSubstr("Drawing minimum: not recorded"),
                                        HasSubstr("not known: ask before grinding")));
}

TEST(MarkingOut, CautionsWhoeverGrinds) {
    EXPECT_THAT(markingOut(decided("weld repair")),
                AllOf(HasSubstr("[!] CAUTION"), HasSubstr("Silica dust and vibration")));
}

TEST(MarkingOut, WhatNobodyDecidedIsLeft) {
    // Neither a finding without a nonconformance nor one on hold is to be ground.
    for (const model::CastingFile& file : {repaired::cracked(), held()}) {
        const std::string text = markingOut(file);
        EXPECT_THAT(text, HasSubstr("[!] NOT DECIDED"));
        EXPECT_THAT(text, HasSubstr("leave: not decided"));
        EXPECT_THAT(text, HasSubstr("capsule: 1 100 50 30 x 1 at 0, counted"));
        EXPECT_THAT(text, Not(HasSubstr("take out: ")));
        EXPECT_THAT(text, Not(HasSubstr("To be filled in")));
    }
    // Decided for one, and another is not spoken of.
    model::CastingFile file = decided("grind only");
    file.examinations[0].rows.push_back(repaired::crack("3", "400", "300"));
    const std::string text = markingOut(file);
    EXPECT_THAT(text, HasSubstr("What becomes of 3 is not decided"));
    EXPECT_THAT(text, HasSubstr("take out: grind only (N-1)"));
}

TEST(MarkingOut, WhatAConcessionMayAcceptIsLeft) {
    model::CastingFile file = repaired::conceded();
    EXPECT_THAT(markingOut(file),
                StartsWith("refused: casting QM-26-0201: has nothing that is to"));
    file.examinations[0].rows.push_back(repaired::crack("3", "400", "300"));
    EXPECT_THAT(markingOut(file), HasSubstr("leave: concession (N-1)"));
}

TEST(MarkingOut, ShowsWhatIsTakenOutAlready) {
    model::CastingFile file = decided("grind only");
    file.dossier.excavations = repaired::ground().dossier.excavations;
    file.dossier.excavations[0].cleared = "no";
    const std::string text = markingOut(file);
    EXPECT_THAT(text, HasSubstr("capsule: E-1 100 50 50 x 20 at 0, neighbour"));
    EXPECT_THAT(text, HasSubstr("take out: grind only (N-1)"));
}

TEST(MarkingOut, TellsFindingsOfTwoMethodsApart) {
    model::CastingFile file = decided("grind only");
    repaired::requireUltrasonic(file);
    file.examinations.push_back(repaired::ultrasonic("2026-03-02", true));
    file.examinations.back().reflectors[0].id = "1";
    const std::string text = markingOut(file);
    EXPECT_THAT(text, HasSubstr("| MT 1 |"));
    EXPECT_THAT(text,
                HasSubstr("| UT 1 | Z1 UT, as cast | 200 | 100 | 60 | 20 | 0 | 15 | planar |"));
}

TEST(MarkingOut, NamesFindingsWithoutCoordinates) {
    model::CastingFile file = decided("weld repair");
    file.dossier.nonconformances[0].method = "VT";
    file.dossier.nonconformances[0].finding = "cold shut at the rib";
    file.dossier.nonconformances[0].indications.clear();
    const std::string text = markingOut(file);
    EXPECT_THAT(text, HasSubstr("Findings without coordinates"));
    EXPECT_THAT(text, HasSubstr("cold shut at the rib"));
}

TEST(MarkingOut, OfOneZone) {
    model::CastingFile file = decided("grind only");
    EXPECT_THAT(markingOut(file, "Z1"), HasSubstr("take out: grind only (N-1)"));
    EXPECT_EQ(markingOut(file, "Z2"),
              "refused: casting QM-26-0201: has nothing in zone Z2 that is "
              "to be taken out or decided");
    EXPECT_EQ(markingOut(file, "Z9"), "refused: casting QM-26-0201: has no zone Z9");
}

TEST(MarkingOut, IsRefusedWhereNothingIsLeftToDo) {
    EXPECT_THAT(markingOut(repaired::ground()), StartsWith("refused: "));
    EXPECT_THAT(markingOut(repaired::welded()), StartsWith("refused: "));
}

TEST(MarkingOut, RowThatCannotBeReadIsNotLeftOut) {
    model::CastingFile file = decided("grind only");
    const model::Verdict verdict = repaired::judged(file);
    file.examinations[0].rows[0].length = "long";
    EXPECT_THAT(sheet::textOf(reports::markingOutOf(sheet::inputOf(file, verdict))),
                HasSubstr("refused: casting QM-26-0201, zone Z1 MT as cast, row 1 (1), length"));
}

}  // namespace
