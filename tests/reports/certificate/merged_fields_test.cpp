// SPDX-License-Identifier: Apache-2.0
// Every field that a certificate of a casting's examination by MT, PT or UT has to carry, or has to
// where it applies, as standards of report, method and material ask for it together. Numbered as in
// the project's merged list; the others of its 69 fields stay in the works' record. Codes of EN
// 10168 where one fits.
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <set>

#include "certificate/certificate.h"
#include "sample/sample_casting.h"

namespace {

using testing::HasSubstr;

std::string textOf(const sample::Sample& sample) {
    const auto document = reports::certificateOf(sample.input());
    EXPECT_TRUE(document.ok()) << (document.ok() ? "" : document.error().message());
    std::string text = document.ok() ? reports::asText(*document) : std::string();
    for (std::size_t at = 0; (at = text.find("\u00a0", at)) != std::string::npos;)
        text.replace(at, 2, " ");
    return text;
}

struct Carried {
    int number;
    const char* what;
    std::vector<const char*> as;
};

const std::vector<Carried> kCarried = {
    {1,
     "title and type of the document",
     {"Inspection certificate 3.2 {A02}", "Type 3.2 of EN 10204:2004 as ordered."}},
    {2,
     "number on every page, and a clear end",
     {"Certificate number {A03}: QC-2026-0147", "Certificate QC-2026-0147, casting QM-26-0147",
      "End of certificate"}},
    {3, "works and its address", {"Quillmere Castings {A01}\nFurnace Lane 12, Quillmere"}},
    {4, "place of the test", {"Place of test: Fettling shop, bay 4"}},
    {5, "who made the document", {"Document made by {A05}: Quillmere Records"}},
    {6,
     "customer, receiver and contact",
     {"Customer {A06}: Łódzka Odlewnia", "Receiver {A06}: Works Harrowgate Nine",
      "Contact {A06}: Perpetua Vance, +44 0000 17"}},
    {7, "customer's order and item", {"Customer's order {A07}: 4500017721, item 10"}},
    {8, "works order", {"Works order {A08}: QO-2026-031"}},
    {9,
     "part, drawing and its revision",
     {"Part number {A09}: P-2201", "Drawing and revision {A09}: D-2201-00, revision C"}},
    {10, "product", {"Product {B01}: Bearing housing, upper half"}},
    {11,
     "material with standard and edition; additional requirements",
     {"Material {B02}: cast steel, G20Mn5 to EN 10293, to EN 10293:2015",
      "Additional requirements {B03}: Charpy at -40 °C"}},
    {12,
     "heat, serial, pattern, marking",
     {"Heat number {B07}: H 4471", "Serial number {B06}: QM-26-0147",
      "Pattern number {B07}: PT-880",
      "Marking {B06}: H 4471 / 0147 (ordered: heat and serial, cast on)"}},
    {13,
     "pieces tested of pieces delivered; sampling",
     {"Quantity {B08}: 2 castings: QM-26-0147, QM-26-0148; 12 delivered",
      "Sampling {B08}: every fourth of a heat; 25 % of the pieces", "Pieces tested: QM-26-0147"}},
    {14, "mass and wall", {"Mass as stated {B12}: 1240 kg", "Smallest wall: 30 mm"}},
    {15, "heat-treatment state at the test", {"Heat-treatment state {B04}: quenched and tempered"}},
    {16, "manufacturing stage", {"Z1 MT, heat treated"}},
    {17, "condition on receipt", {"Condition on receipt: received 2026-11-18, shot blasted"}},
    {18, "purpose of the test", {"Purpose: final"}},
    {19,
     "date and time of the test, date of issue",
     {"Examined on: 2026-11-20", "Time: 2026-11-20T08:10:00Z to 2026-11-20T09:40:00Z",
      "Date of issue {Z02}: that of the signature for release; prepared on 2026-11-25"}},
    {20,
     "test standard with edition",
     {"Test standard: ISO 9934-1:2016", "Test standard: ISO 3452-1:2021",
      "Test standard: ISO 4992-1:2020"}},
    {21,
     "acceptance standard with edition, levels by area, amendments of the order",
     {"Magnetic particle (MT) | Trial Standard 7:2020, revision 3 | aligned AM 4, linear LM 4, "
      "non-linear SM 2 | Z1",
      "Edition: 2020",
      "Ordered beside the zone plan or in its place: Z1 MT, heat treated (agreed by amendment 2 of "
      "the order)."}},
    {22,
     "procedure and technique sheet with revisions",
     {"Procedure: QP-MT revision 6", "Technique sheet: TS-MT-31 revision 2"}},
    {23,
     "deviations and who agreed",
     {"Deviations, exclusions: lower MT edge wiped twice; agreed: P. Vance"}},
    {24,
     "extent, and areas not tested with the reason",
     {"Zone plan revision 2 of part P-2201 requires 3 tests; 3 of them were made as required.",
      "400 mm² not examined: clamping claw in the way; agreed: AG-118",
      "Scanned: from the upper face; from the lower face"}},
    {25,
     "surface preparation and finish",
     {"Surface preparation: shot blasted", "Surface finish: comparator 4 S1"}},
    {26, "coating", {"Coating: 35 µm"}},
    {28,
     "equipment with serial number and calibration",
     {"| YK-3 | yoke, Invented Instruments, model YK-3 | serial Y-77120 | calibrated 2026-02-01, "
      "due 2027-02-01, certificate CC-YK-3 |"}},
    {32, "magnetisation", {"Magnetisation: AC yoke; 3.1 kA/m, at rib; RMS"}},
    {35,
     "detection media with batch",
     {"| INK-9 | magnetic ink, Trial Ink, Invented Media | batch MB-5521 | expires 2027-05-31 |"}},
    {38,
     "residual field with its limit",
     {"Residual field: 0.3 kA/m; ordered: at most 0.5 kA/m", "| FM-2 | field meter"}},
    {39,
     "penetrant system with batch",
     {"| PEN-4 | penetrant, Trial Red, Invented Media, II A e - 2, level 2 | batch PB-1180 |"}},
    {40, "batch certificate of sulphur and halogens", {"batch certificate BC-1180"}},
    {44,
     "probes",
     {"| PR-5 | probe, Invented Instruments, model PR-5, straight, 4 MHz, 10 mm | serial P-5512 |",
      "Probe: no. 4711"}},
    {46,
     "calibration and reference blocks",
     {"| RB-12 | reference block, Invented Instruments, model RB-12, flat-bottomed hole of 3 mm | "
      "serial B-1201 |",
      "flat-bottomed hole of block B-12"}},
    {47,
     "method of sensitivity, transfer correction",
     {"Sensitivity: 40 dB for 60 % of the screen at 80 mm of sound path",
      "Transfer correction: 2.5 dB"}},
    {50,
     "testability",
     {"Smallest flat-bottomed hole that shows: 4 mm", "Its signal to noise: 9 dB"}},
    {52,
     "indications with place from a named datum",
     {"Centre x, y from the zone's datum", "| 7 | 15 | 118 |", "axes: x, y from datum"}},
    {53, "class and size as measured", {"| 7 | 15 | 118 | 8 | 0.9 | 0 | – | linear |"}},
    {54,
     "ultrasonic indications with depth, equivalent size, extent, back-wall loss",
     {"| 2 | 140 | 60 | 17 | 3.4 | 22.5", "| planar |", "back-wall loss explained by a boss"}},
    {55,
     "sketch and photo with scale, datum and hash",
     {"Scale 1 : ", "Scale, in the picture: 100 mm rule at its lower edge",
      "Datum and direction: punch mark, flange up", "photo: A-3 revision B: Flange after cleaning",
      "SHA-256 of the file: "}},
    {56,
     "evaluation of each indication and area",
     {"individual length, linear, LM 4 | 8 mm | ≤ 10 mm", "[+] acceptable"}},
    {57,
     "rounding, decision rule, uncertainty",
     {"Decision rule of the order: simple acceptance", "Rounding rule of the order: no rounding",
      "Guard band of the order: expanded uncertainty, 95 %"}},
    {58, "outcome", {"Result {Z01}", "[+] ACCEPTABLE\nConforms to the order's requirements"}},
    {60,
     "scope",
     {"These results are for the castings named here and no others. Of a series, only the pieces "
      "named as tested were tested."}},
    {61,
     "what the customer or an outside laboratory supplied",
     {"radiographic\nresult of an outside laboratory", "chemical\nsupplied by the customer",
      "are as the customer gave them"}},
    {62,
     "inspector with level",
     {"Νίκη Αλεξίου\nLevel 1, ISO 9712:2021, certificate C-Q-2-MT, until 2028-12-31"}},
    {63, "evaluator", {"evaluated by Q-7, Level 2"}},
    {64,
     "who releases, and that this person is independent",
     {"signature: QA manager, who releases for the manufacturer, independent of manufacturing"}},
    {65,
     "purchaser's or official inspector",
     {"signature: Purchaser's or official inspector, for type 3.2"}},
    {66,
     "witness points",
     {"| PT of the bore | witness | Perpetua Vance | attended on 2026-11-20 | no objection |",
      "Witnessed by: Perpetua Vance"}},
    {67, "data of a CE or other marking", {"CE or other marking data {Z04}: CE 0000"}},
    {68,
     "supersedes; time and meaning of signatures",
     {"This certificate supersedes certificate QC-2026-0101, which is no longer valid.",
      "The time in a signature is that of the signer's own clock."}},
    {69, "manufacturer's mark", {"Manufacturer's mark {A04}: QUM in a ring"}},
};

TEST(MergedFields, OracleCertificateCarriesEachOne) {
    const std::string text = textOf(sample::recordedCasting());
    for (const Carried& carried : kCarried)
        for (const char* as : carried.as)
            EXPECT_THAT(text, HasSubstr(as)) << carried.number << ": " << carried.what;
}

TEST(MergedFields, ListIsComplete) {
    // Those marked for the certificate: 27 to 51 mostly stay in the record, 59 is of repairs.
    std::set<int> numbers = {59};
    for (const Carried& carried : kCarried) numbers.insert(carried.number);
    std::set<int> expected;
    for (int number = 1; number <= 69; ++number) expected.insert(number);
    for (const int number : {27, 29, 30, 31, 33, 34, 36, 37, 41, 42, 43, 45, 48, 49, 51})
        expected.erase(number);
    EXPECT_EQ(numbers, expected);
}

// Field 59: links to nonconformance, repair, retest and concession.
TEST(MergedFields, OracleCertificateLinksRepairsInBothDirections) {
    const std::string text = textOf(sample::repairedCasting());
    for (const char* part :
         {"Conforms after repair R1 (NCR-41) to the order's requirements",
          "| NCR-41\n2026-11-02 | Z1 MT: indication 1, linear indication of 12 mm | weld repair, "
          "purchaser's agreement PA-7, excavation EX-1, weld repair WR-1, heat treatment HT-8 | Z1 "
          "MT, after repair 1 | closed after weld repair |",
          "Examined again after: NCR-41; first record 17"})
        EXPECT_THAT(text, HasSubstr(part));
    const std::string conceded = textOf(sample::concededCasting());
    EXPECT_THAT(conceded, HasSubstr("Under concession no. CO-5 (purchaser's PC-2026-88)"));
    EXPECT_THAT(conceded, HasSubstr("concession, concession CO-5"));
}

TEST(MergedFields, WhatIsOptionalAndNotRecordedLeavesNoLine) {
    const std::string text = textOf(sample::soundCasting());
    for (const char* name : {"Receiver",
                             "Contact",
                             "Delivery conditions",
                             "Marking",
                             "Pattern number",
                             "Mass",
                             "Sampling",
                             "Condition on receipt",
                             "Manufacturer's mark",
                             "Document made by",
                             "CE or other",
                             "Additional requirements",
                             "Guard band",
                             "Witness",
                             "Attachments",
                             "Equipment and",
                             "Other tests",
                             "Photos",
                             "Nonconformances",
                             "Coating",
                             "Technique sheet",
                             "Ordered beside"})
        EXPECT_THAT(text, testing::Not(HasSubstr(name)));
}

}  // namespace
