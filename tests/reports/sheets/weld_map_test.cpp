// SPDX-License-Identifier: Apache-2.0
#include <cstdlib>
#include <fstream>

#include "pdf/render.h"
#include "sheet_text.h"

namespace {

using repaired::ground;
using repaired::welded;
using sheet::weldMap;
using testing::AllOf;
using testing::HasSubstr;
using testing::StartsWith;

TEST(WeldMap, ShowsExcavationAndWeldToScale) {
    const std::string text = weldMap(welded());
    EXPECT_THAT(text, HasSubstr("capsule: E-1 / W-1 100 50 50 x 20 at 0, neighbour"));
    EXPECT_THAT(text, HasSubstr("outline: zone Z1 600 x 400"));
    EXPECT_THAT(text, HasSubstr("[+] CONFORMS AFTER REPAIR"));
}

TEST(WeldMap, HasEveryFieldOfTheRepair) {
    const std::string text = weldMap(welded());
    for (const char* part : {"E-1",
                             "x 100, y 50 mm",
                             "50 × 20 × 12 mm",
                             "40 mm / 28 mm",
                             "air carbon arc gouging",
                             "Otto Flask",
                             "2026-03-04",
                             "preheat 120 °C",
                             "MT, R-1: acceptable",
                             "major: its depth of 12 mm",
                             "QWPS-11, QWPQR-11, ISO 11970:2016",
                             "Lena Runner",
                             "QW-8 until 2027-01-31",
                             "electrode 3,2 mm, B 4471",
                             "150 °C / 250 °C",
                             "2026-03-06",
                             "H-1",
                             "stress relief",
                             "620 °C, 120 min",
                             "CH-55",
                             "F-2, TC-21, TC-22",
                             "2026-03-08",
                             "Z1 MT, as cast, after repair 1 on 2026-03-10: acceptable",
                             "AG-7",
                             "Rhea Drag",
                             "Drawing minimum: 32 mm"})
        EXPECT_THAT(text, HasSubstr(part));
}

TEST(WeldMap, LinksGoBothWays) {
    const std::string text = weldMap(welded());
    // From the excavation to finding and weld, from the weld to excavation, treatment, examination.
    EXPECT_THAT(text, HasSubstr("| E-1 | N-1 |"));
    EXPECT_THAT(text, HasSubstr("| weld W-1 |"));
    EXPECT_THAT(text, HasSubstr("| W-1 | E-1 |"));
    EXPECT_THAT(text, HasSubstr("| 2026-03-06 | H-1 | Z1 MT, as cast, after repair 1"));
    EXPECT_THAT(text, HasSubstr("| H-1 | W-1 |"));
    // From the nonconformance to everything.
    EXPECT_THAT(text, HasSubstr("Found by: Z1 MT, as cast, indications 1"));
    EXPECT_THAT(text, HasSubstr("Excavations: E-1"));
    EXPECT_THAT(text, HasSubstr("Welds: W-1"));
    EXPECT_THAT(text, HasSubstr("Heat treatments: H-1"));
    EXPECT_THAT(text, HasSubstr("Examined again: Z1 MT, as cast, after repair 1"));
}

TEST(WeldMap, SaysWhatIsOpen) {
    model::CastingFile file = welded();
    file.dossier.weldRepairs[0].fillerBatch.clear();
    const std::string text = weldMap(file);
    EXPECT_THAT(text, HasSubstr("[x] OPEN: REPAIRED, RECORD INCOMPLETE"));
    EXPECT_THAT(text, HasSubstr("weld W-1: not recorded: filler batch"));
    EXPECT_THAT(text, HasSubstr("[x] DOES NOT CONFORM"));
    EXPECT_THAT(text, HasSubstr("capsule: E-1 / W-1 100 50 50 x 20 at 0, failing"));
}

TEST(WeldMap, SaysWhatNamesNothing) {
    model::CastingFile file = welded();
    file.dossier.heatTreatments[0].weldRepairs = "W-1, W-9";
    EXPECT_THAT(weldMap(file), AllOf(HasSubstr("[!] LOOSE ENDS"), HasSubstr("names the weld W-9")));
}

TEST(WeldMap, ShowsAnExcavationOfNoNonconformanceAndNoPlannedZone) {
    model::CastingFile file = ground();
    file.dossier.excavations.push_back(file.dossier.excavations[0]);
    file.dossier.excavations[1].number = "E-2";
    file.dossier.excavations[1].nonconformance = "N-9";
    file.dossier.excavations[1].zone = "Z9";
    file.dossier.excavations[1].length = "10";
    const std::string text = weldMap(file);
    EXPECT_THAT(text, HasSubstr("Zone Z9"));
    EXPECT_THAT(text, HasSubstr("not in the zone plan"));
    // Wider than long, it lies across; without its nonconformance nobody says that it is closed.
    EXPECT_THAT(text, HasSubstr("capsule: E-2 100 50 20 x 10 at 90, failing"));
}

TEST(WeldMap, NamesAConcession) {
    model::CastingFile file = ground();
    model::Nonconformance second = repaired::held().dossier.nonconformances[0];
    second.number = "N-2";
    second.zone = "Z2";
    second.indications = "4";
    file.examinations[1].header.noIndications = false;
    file.examinations[1].rows = {repaired::crack("4", "50", "60")};
    file.dossier.nonconformances.push_back(second);
    model::Disposition decision = repaired::conceded().dossier.dispositions[0];
    decision.nonconformance = "N-2";
    file.dossier.dispositions.push_back(decision);
    file.dossier.concessions = repaired::conceded().dossier.concessions;
    file.dossier.concessions[0].nonconformance = "N-2";
    file.dossier.concessions[0].indications = "4";
    const std::string text = weldMap(file);
    EXPECT_THAT(text, HasSubstr("C-1 (TV-CR-19) of 2026-03-04, accepts 4, until 2026-12-31"));
    EXPECT_THAT(text, HasSubstr("[!] UNDER CONCESSION"));
}

TEST(WeldMap, IsRefusedWhereNothingWasTakenOut) {
    EXPECT_THAT(weldMap(repaired::held()), StartsWith("refused: casting QM-26-0201: has no exc"));
}

TEST(Sheets, ArePdfsThatOtherProgramsRead) {
    model::CastingFile decided = repaired::held();
    decided.dossier.dispositions = ground().dossier.dispositions;
    const model::Verdict before = repaired::judged(decided);
    const model::CastingFile after = welded();
    const model::Verdict afterwards = repaired::judged(after);
    const auto marking = reports::markingOutOf(sheet::inputOf(decided, before));
    const auto map = reports::weldMapOf(sheet::inputOf(after, afterwards));
    ASSERT_TRUE(marking.ok() && map.ok());
    for (const auto& [document, name] :
         {std::pair(&*marking, "marking-out.pdf"), std::pair(&*map, "weld-map.pdf")}) {
        const auto pdf = reports::renderPdf(*document);
        ASSERT_TRUE(pdf.ok()) << pdf.error().message();
        const std::string path = testing::TempDir() + name;
        std::ofstream(path, std::ios::binary) << pdf->bytes;
        EXPECT_EQ(std::system(("qpdf --check '" + path + "' > /dev/null").c_str()), 0) << name;
    }
}

}  // namespace
