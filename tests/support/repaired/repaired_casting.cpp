// SPDX-License-Identifier: Apache-2.0
#include "repaired/repaired_casting.h"

#include <gtest/gtest.h>

#include "judge/judge.h"

namespace repaired {

using namespace model;

namespace {

const std::string kTable = "EN 1369:2012";
const std::map<std::string, std::string> kLevels = {
    {"non-linear", "SM 3"}, {"linear", "LM 4"}, {"aligned", "AM 4"}};
const std::string kUltrasonicTable = "ISO 4992-1:2020";

PlannedZone zone(const std::string& name, const std::string& description, int width) {
    PlannedZone made;
    made.name = name;
    made.description = description;
    made.width = millimetres(width);
    made.height = millimetres(400);
    made.thickness = millimetres(40);
    made.drawingMinimum = millimetres(32);
    made.tests = {{Method::Magnetic, Stage::AsCast, kTable, kLevels}};
    return made;
}

ExaminationDraft magnetic(const std::string& zone, const std::string& day) {
    ExaminationDraft draft;
    draft.casting = "QM-26-0201";
    draft.header.zone = zone;
    draft.header.thickness = millimetres(40);
    draft.header.table = kTable;
    draft.header.levels = kLevels;
    draft.examinedBy = "Ines Cope";
    draft.examinedOn = day;
    draft.procedure = "QP-MT-04 revision 6";
    return draft;
}

Disposition decided(const std::string& decision) {
    Disposition made;
    made.nonconformance = "N-1";
    made.sequence = "1";
    made.casting = "QM-26-0201";
    made.decision = decision;
    made.reason = "the crack reaches into the wall";
    made.authority = "Rhea Drag";
    made.decidedOn = "2026-03-03";
    return made;
}

Excavation excavated() {
    Excavation made;
    made.number = "E-1";
    made.nonconformance = "N-1";
    made.casting = "QM-26-0201";
    made.zone = "Z1";
    made.x = "100";
    made.y = "50";
    made.length = "50";
    made.width = "20";
    made.depth = "6";
    made.wallBefore = "40";
    made.wallLeft = "34";
    made.wallMeasuredWith = "TG-3";
    made.means = "grinding";
    made.doneBy = "Otto Flask";
    made.doneOn = "2026-03-04";
    made.cavityMethod = "MT";
    made.cavityRecord = "R-1";
    made.cleared = "yes";
    made.blended = "yes";
    return made;
}

WeldRepair weld() {
    WeldRepair made;
    made.number = "W-1";
    made.excavation = "E-1";
    made.casting = "QM-26-0201";
    made.weldingProcedure = "QWPS-11";
    made.procedureApproval = "QWPQR-11, ISO 11970:2016";
    made.welder = "Lena Runner";
    made.welderApproval = "QW-8";
    made.welderUntil = "2027-01-31";
    made.filler = "electrode 3,2 mm";
    made.fillerBatch = "B 4471";
    made.preheat = "150";
    made.interpass = "250";
    made.doneOn = "2026-03-06";
    return made;
}

HeatTreatment stressRelief() {
    HeatTreatment made;
    made.number = "H-1";
    made.casting = "QM-26-0201";
    made.weldRepairs = "W-1";
    made.kind = "stress relief";
    made.temperature = "620";
    made.holding = "120";
    made.chart = "CH-55";
    made.furnace = "F-2";
    made.thermocouples = "TC-21, TC-22";
    made.doneOn = "2026-03-08";
    return made;
}

}  // namespace

Verdict judged(const CastingFile& file) {
    static const Result<TableSet> kTables = TableSet::shipped();
    const auto sheet = sheetOf(file);
    EXPECT_TRUE(sheet.ok()) << (sheet.ok() ? "" : sheet.error().message());
    if (!sheet || !kTables) return {};
    const auto verdict = judge(*sheet, *kTables);
    EXPECT_TRUE(verdict.ok()) << (verdict.ok() ? "" : verdict.error().message());
    return verdict ? *verdict : Verdict{};
}

TypedIndication crack(const std::string& id, const std::string& x, const std::string& y) {
    TypedIndication row;
    row.id = id;
    row.x = x;
    row.y = y;
    row.length = "30";
    row.width = "1";
    row.kind = "crack";
    return row;
}

OtherResult otherResult(const std::string& number, const std::string& test,
                        const std::string& day) {
    OtherResult made;
    made.number = number;
    made.casting = "QM-26-0201";
    made.zone = "Z1";
    made.test = test;
    made.standard = "ISO 9934-1:2016";
    made.verdict = "acceptable";
    made.performedBy = "Ines Cope";
    made.performedOn = day;
    made.report = number + " revision 0";
    return made;
}

CastingFile cracked() {
    CastingFile file;
    file.casting.serial = "QM-26-0201";
    file.casting.heat = "H 8812";
    file.casting.order = "O-77";
    file.casting.part = "QP-300";
    file.part.number = "QP-300";
    file.part.description = "Valve body";
    file.part.drawing = "D-300";
    file.part.drawingRevision = "C";
    file.part.materialGrade = "GP240GH";
    file.order.number = "O-77";
    file.order.customer = "Tarn Valves";
    file.order.forbiddenKinds = {Kind::Crack};
    file.order.terms.repairRule = "ASTM A216";
    file.plan.part = "QP-300";
    file.plan.zones = {zone("Z1", "flange face, datum at the lower left bolt hole", 600),
                       zone("Z2", "neck, datum at the joint line", 300)};
    ExaminationDraft first = magnetic("Z1", "2026-03-02");
    TypedIndication pore = crack("2", "300", "200");
    pore.length = "3";
    pore.width = "2";
    pore.kind = "porosity";
    first.rows = {crack("1", "100", "50"), pore};
    ExaminationDraft second = magnetic("Z2", "2026-03-02");
    second.header.noIndications = true;
    file.examinations = {first, second};
    return file;
}

CastingFile held() {
    CastingFile file = cracked();
    Nonconformance opened;
    opened.number = "N-1";
    opened.casting = "QM-26-0201";
    opened.zone = "Z1";
    opened.method = "MT";
    opened.stage = "as cast";
    opened.indications = "1";
    opened.finding = "crack of 30 mm at the edge of the flange";
    opened.ruleBroken = "forbidden kind, order O-77";
    opened.openedBy = "Ines Cope";
    opened.openedOn = "2026-03-02";
    file.dossier.nonconformances = {opened};
    return file;
}

ExaminationDraft reexamination(const std::string& day, int repairCycle) {
    ExaminationDraft draft = magnetic("Z1", day);
    draft.header.repairCycle = repairCycle;
    draft.header.noIndications = true;
    draft.conditions.nonconformance = "N-1";
    return draft;
}

CastingFile ground() {
    CastingFile file = held();
    file.dossier.dispositions = {decided("grind only")};
    file.dossier.excavations = {excavated()};
    file.dossier.otherResults = {otherResult("R-1", "magnetic particle", "2026-03-04")};
    file.examinations.push_back(reexamination("2026-03-05"));
    return file;
}

CastingFile welded() {
    CastingFile file = held();
    file.dossier.dispositions = {decided("weld repair")};
    file.dossier.dispositions[0].agreement = "AG-7";
    file.dossier.excavations = {excavated()};
    Excavation& excavation = file.dossier.excavations[0];
    excavation.depth = "12";
    excavation.wallLeft = "28";
    excavation.means = "air carbon arc gouging";
    excavation.preheat = "120";
    excavation.blended.clear();
    file.dossier.otherResults = {otherResult("R-1", "magnetic particle", "2026-03-05")};
    file.dossier.weldRepairs = {weld()};
    file.dossier.heatTreatments = {stressRelief()};
    file.examinations.push_back(reexamination("2026-03-10"));
    return file;
}

CastingFile conceded() {
    CastingFile file = held();
    file.dossier.dispositions = {decided("concession")};
    Concession made;
    made.number = "C-1";
    made.nonconformance = "N-1";
    made.casting = "QM-26-0201";
    made.customerReference = "TV-CR-19";
    made.grantedBy = "Ivo Tarn, head of quality";
    made.grantedOn = "2026-03-04";
    made.indications = "1";
    made.scope = "this casting only, to be machined off";
    made.until = "2026-12-31";
    file.dossier.concessions = {made};
    return file;
}

void requireUltrasonic(CastingFile& file) {
    file.plan.zones[0].tests.push_back(
        {Method::Ultrasonic, Stage::AsCast, kUltrasonicTable, {{"all", "3"}}});
}

ExaminationDraft ultrasonic(const std::string& day, bool planar, int repairCycle) {
    ExaminationDraft draft = magnetic("Z1", day);
    draft.header.method = Method::Ultrasonic;
    draft.header.repairCycle = repairCycle;
    draft.header.table = kUltrasonicTable;
    draft.header.levels = {{"all", "3"}};
    draft.header.noIndications = !planar;
    draft.header.ultrasonic.zoneArea = squareMillimetres(240000);
    draft.header.ultrasonic.testability = Testability{millimetres(3), decibels(12)};
    draft.header.ultrasonic.deadZone = millimetres(5);
    draft.header.ultrasonic.directions = {"from the outside", "from the bore"};
    draft.procedure = "QP-UT-02 revision 1";
    if (planar) {
        TypedReflector row;
        row.id = "u1";
        row.x = "200";
        row.y = "100";
        row.depth = "15";
        row.fbh = "6";
        row.length = "60";
        row.width = "20";
        row.throughWall = "15";
        row.area = "900";
        row.backWallLoss = "0";
        row.overReference = "0";
        row.kind = "planar";
        draft.reflectors = {row};
    }
    return draft;
}

}  // namespace repaired
