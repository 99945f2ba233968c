// SPDX-License-Identifier: Apache-2.0
// A casting of which everything is recorded that a certificate can carry.
#include <cassert>

#include "base/digest.h"
#include "sample/sample_casting.h"

namespace sample {

namespace {

// The smallest file that begins as a picture does; whoever draws it finds out that it is none.
const std::string kPicture = "\x89PNG\r\n\x1a\n";
const std::string kReport = std::string(63, '2') + "e";
const std::string kConsent = std::string(63, '3') + "f";

void setOrder(model::CastingFile& file) {
    model::OrderTerms& terms = file.order.terms;
    file.order.certificateType = "3.2";
    file.order.customerOrder = "4500017721";
    terms.receiver = "Works Harrowgate Nine";
    terms.contact = "Perpetua Vance, +44 0000 17";
    terms.item = "10";
    terms.deliveryConditions = "EN 1559-1:2011";
    terms.productStandard = "EN 10293:2015";
    terms.extraRequirements = "Charpy at -40 °C";
    terms.quantity = "12";
    terms.samplingRule = "every fourth of a heat";
    terms.samplingPercent = "25";
    terms.marking = "heat and serial, cast on";
    terms.residualField = "0.5";
    terms.guardBand = "expanded uncertainty, 95 %";
    terms.repairRule = "";
    terms.witnessPoints = {{"PT of the bore", "witness", "Perpetua Vance", "2026-11-18",
                            "2026-11-20", "", "no objection"}};
    terms.tests = {{"Z1", "MT", "heat treated", "Trial Standard 7:2020",
                    "non-linear=SM 2, linear=LM 4, aligned=AM 4", "amendment 2 of the order"}};
    file.part.pattern = "PT-880";
    file.part.mass = "1240 kg";
    file.casting.series = "QM-26-0147, QM-26-0148";
    file.casting.marking = "H 4471 / 0147";
    file.casting.conditionOnReceipt = "received 2026-11-18, shot blasted";
}

model::TestConditions conditionsOf(const std::string& method) {
    model::TestConditions conditions;
    conditions.purpose = "final";
    conditions.place = "Fettling shop, bay 4";
    conditions.startedAt = "2026-11-20T08:10:00Z";
    conditions.endedAt = "2026-11-20T09:40:00Z";
    conditions.procedureNumber = "QP-" + method;
    conditions.procedureRevision = "6";
    conditions.sheetNumber = "TS-" + method + "-31";
    conditions.sheetRevision = "2";
    conditions.testStandard = method == "MT"   ? "ISO 9934-1:2016"
                              : method == "PT" ? "ISO 3452-1:2021"
                                               : "ISO 4992-1:2020";
    conditions.deviations = "lower " + method + " edge wiped twice";
    conditions.deviationsAgreed = "P. Vance";
    conditions.deliveryState = "quenched and tempered";
    conditions.surfacePreparation = "shot blasted";
    conditions.surfaceFinish = "comparator 4 S1";
    conditions.coating = "35";
    conditions.evaluatedBy = "Q-7";
    conditions.witnessedBy = "Perpetua Vance";
    conditions.piecesTested = "QM-26-0147";
    return conditions;
}

void setConditions(model::CastingFile& file) {
    model::TestConditions magnetic = conditionsOf("MT");
    magnetic.equipment = "YK-3";
    magnetic.consumables = "INK-9";
    magnetic.measurements = {{"technique", "AC yoke", "", "", "", "", "", ""},
                             {"field_strength", "3.1", "kA/m", "FM-2", "", "", "rib", ""},
                             {"field_reading", "RMS", "", "", "", "", "", ""},
                             {"residual_field", "0.3", "kA/m", "FM-2", "", "", "", ""},
                             {"uv_a", "21", "W/m2", "", "", "", "", ""}};
    model::TestConditions penetrant = conditionsOf("PT");
    penetrant.consumables = "PEN-4";
    model::TestConditions ultrasonic = conditionsOf("UT");
    ultrasonic.equipment = "UI-1, PR-5, RB-12";
    for (model::ExaminationDraft& draft : file.examinations)
        draft.conditions = draft.header.method == model::Method::Magnetic    ? magnetic
                           : draft.header.method == model::Method::Penetrant ? penetrant
                                                                             : ultrasonic;
}

void setHoldings(model::Holdings& used) {
    const auto equipment = [&used](const char* id, const char* kind, const char* serial) {
        model::Equipment one;
        one.id = id;
        one.kind = kind;
        one.maker = "Invented Instruments";
        one.model = std::string("model ") + id;
        one.serial = serial;
        one.calibratedOn = "2026-02-01";
        one.calibrationDue = "2027-02-01";
        one.calibrationCertificate = std::string("CC-") + id;
        one.state = "in use";
        used.equipment.push_back(one);
    };
    equipment("YK-3", "yoke", "Y-77120");
    equipment("FM-2", "field meter", "F-2210");
    equipment("UI-1", "ultrasonic instrument", "U-90331");
    equipment("PR-5", "probe", "P-5512");
    equipment("RB-12", "reference block", "B-1201");
    used.equipment[3].characteristics = "straight, 4 MHz, 10 mm";
    used.equipment[4].characteristics = "flat-bottomed hole of 3 mm";
    model::Consumable ink;
    ink.id = "INK-9";
    ink.kind = "magnetic ink";
    ink.product = "Trial Ink";
    ink.maker = "Invented Media";
    ink.batch = "MB-5521";
    ink.expiresOn = "2027-05-31";
    ink.state = "in use";
    model::Consumable penetrant = ink;
    penetrant.id = "PEN-4";
    penetrant.kind = "penetrant";
    penetrant.product = "Trial Red";
    penetrant.batch = "PB-1180";
    penetrant.designation = "II A e - 2";
    penetrant.sensitivityLevel = "2";
    penetrant.batchCertificate = "BC-1180";
    used.consumables = {ink, penetrant};
    for (const char* method : {"MT", "PT", "UT"})
        for (const char* person : {"Q-2", "Q-7"}) {
            model::Qualification held;
            held.person = person;
            held.method = method;
            held.certificate = std::string("C-") + person + "-" + method;
            held.scheme = "ISO 9712:2021";
            held.level = held.person == "Q-2" ? "1" : "2";
            held.issuedOn = "2024-01-01";
            held.expiresOn = "2028-12-31";
            held.state = "valid";
            used.qualifications.push_back(held);
        }
}

void setFiles(Sample& sample) {
    model::Dossier& dossier = sample.file.dossier;
    model::OtherResult radiographic;
    radiographic.number = "OR-3";
    radiographic.casting = "QM-26-0147";
    radiographic.zone = "Z1";
    radiographic.test = "radiographic";
    radiographic.standard = "ISO 5579:2013";
    radiographic.criteria = "ISO 4993:2015, level 3";
    radiographic.verdict = "acceptable";
    radiographic.performedBy = "O. Brand, Invented Radiography";
    radiographic.subcontracted = "yes";
    radiographic.performedOn = "2026-11-15";
    radiographic.report = "RT-4410 rev. 1";
    radiographic.fileSha256 = kReport;
    model::OtherResult chemical = radiographic;
    chemical.number = "OR-4";
    chemical.zone.clear();
    chemical.test = "chemical";
    chemical.subcontracted.clear();
    chemical.customerSupplied = "yes";
    chemical.report = "CH-12";
    chemical.fileSha256.clear();
    dossier.otherResults = {radiographic, chemical};
    const std::string digest = model::toHex(model::sha256(kPicture));
    dossier.attachments = {{"A-3", "QM-26-0147", "Z1", "1", "", "Flange after cleaning", "B",
                            "photo", "100 mm rule at its lower edge", "punch mark, flange up",
                            "flange.png", "image/png", digest, "8", "yes", ""}};
    sample.pictures = {{digest, kPicture}};
}

}  // namespace

Sample recordedCasting() {
    Sample sample = ultrasonicCasting();
    model::CastingFile& file = sample.file;
    file.examinations[1].reflectors.pop_back();
    sample.verdict.examinations[1].indications.pop_back();
    sample.verdict.examinations[1].reasons.clear();
    const Sample mixed = mixedCasting();
    file.plan.zones.push_back(mixed.file.plan.zones[2]);
    file.examinations.push_back(mixed.file.examinations[2]);
    sample.verdict.examinations.push_back(mixed.verdict.examinations[2]);
    sample.verdict.word = model::Word::Acceptable;
    for (model::ExaminationVerdict& verdict : sample.verdict.examinations) {
        verdict.word = model::Word::Acceptable;
        verdict.attested = true;
    }
    file.examinations[0].header.noIndications = false;
    file.examinations[0].rows = {mixed.file.examinations[1].rows[0]};
    sample.verdict.examinations[0].indications = mixed.verdict.examinations[1].indications;
    sample.verdict.examinations[0].checks = mixed.verdict.examinations[1].checks;
    file.examinations[0].header.notExamined = {
        {model::squareMillimetres(400), "clamping claw in the way", "AG-118"}};
    setOrder(file);
    setConditions(file);
    setHoldings(file.used);
    setFiles(sample);
    sample.issue.forRelease = true;
    sample.issue.presentedBy = "Łucja Ødegård-Brüß";
    sample.issue.supersedes = "QC-2026-0101";
    sample.issue.worksMark = "QUM in a ring";
    sample.issue.establishedBy = "Quillmere Records";
    sample.issue.productMarking = "CE 0000";
    for (std::size_t i = 0; i < file.examinations.size(); ++i)
        sample.records.push_back({"Νίκη Αλεξίου", "2026-11-24T09:30:00Z", {}, {}, "Q-2"});
    sample.findings.resize(file.examinations.size());
    model::ConditionFinding finding;
    finding.id = "MT-19";
    finding.reaction = model::Reaction::Warn;
    finding.reason = model::inputError("Coating", "is %1; it has to be %2", {"60 um", "<= 50 um"});
    finding.source = {"ISO 9934-1:2016 7", model::Grade::Read};
    finding.acknowledged = "sensitivity proven on piece K-2";
    finding.acknowledgedBy = "Q-7";
    sample.findings[0] = {finding};
    return sample;
}

namespace {

/// What Z1 had before: two indications, one of which fails.
void addFirstExamination(Sample& sample) {
    const Sample mixed = mixedCasting();
    model::ExaminationDraft first = sample.file.examinations[0];
    first.rows = {typed("1", "50", "60", "12", "1")};
    first.examinedOn = "2026-11-02";
    model::ExaminationVerdict verdict = sample.verdict.examinations[0];
    verdict.word = model::Word::NotAcceptable;
    verdict.indications = {{"1", model::IndicationClass::Linear, true, ""}};
    verdict.checks = {mixed.verdict.examinations[0].checks[0]};
    verdict.checks[0].passes = false;
    verdict.checks[0].measured = 12'000'000;
    verdict.checks[0].members = {"1"};
    sample.file.examinations.insert(sample.file.examinations.begin(), first);
    sample.verdict.examinations.insert(sample.verdict.examinations.begin(), verdict);
    sample.records.insert(sample.records.begin(), sample.records.front());
    sample.findings.insert(sample.findings.begin(), sample.findings.back());
    model::Nonconformance opened;
    opened.number = "NCR-41";
    opened.casting = "QM-26-0147";
    opened.zone = "Z1";
    opened.method = "MT";
    opened.stage = "heat treated";
    opened.indications = "1";
    opened.finding = "linear indication of 12 mm";
    opened.ruleBroken = "individual length, LM 4";
    opened.openedBy = "Q-2";
    opened.openedOn = "2026-11-02";
    sample.file.dossier.nonconformances = {opened};
}

}  // namespace

Sample repairedCasting() {
    Sample sample = recordedCasting();
    addFirstExamination(sample);
    sample.verdict.examinations[0].superseded = true;
    sample.file.examinations[1].header.repairCycle = 1;
    sample.verdict.examinations[1].repairCycle = 1;
    sample.file.examinations[1].conditions.nonconformance = "NCR-41";
    sample.file.examinations[1].conditions.firstRecord = "17";
    model::Dossier& dossier = sample.file.dossier;
    dossier.dispositions = {{"NCR-41", "1", "QM-26-0147", "weld repair", "below the minimum wall",
                             "Ansel Quarrie", "2026-11-03", "PA-7", ""}};
    model::Excavation cavity;
    cavity.number = "EX-1";
    cavity.nonconformance = "NCR-41";
    cavity.casting = "QM-26-0147";
    cavity.zone = "Z1";
    cavity.x = "50";
    cavity.y = "60";
    cavity.length = "40";
    cavity.width = "15";
    cavity.depth = "4";
    cavity.wallBefore = "30";
    cavity.wallLeft = "26";
    cavity.wallMeasuredWith = "UI-1";
    cavity.means = "grinding";
    cavity.doneBy = "T. Okonjo";
    cavity.doneOn = "2026-11-04";
    cavity.cavityMethod = "MT";
    cavity.cavityRecord = "OR-9";
    cavity.cleared = "yes";
    dossier.excavations = {cavity};
    model::OtherResult cavityTest = dossier.otherResults[0];
    cavityTest.number = "OR-9";
    cavityTest.test = "magnetic particle";
    cavityTest.subcontracted.clear();
    cavityTest.performedOn = "2026-11-04";
    cavityTest.report = "MT-CAV-9";
    cavityTest.fileSha256.clear();
    dossier.otherResults.push_back(cavityTest);
    dossier.weldRepairs = {{"WR-1", "EX-1", "QM-26-0147", "WPS-12", "ISO 11970 no. 5", "W-3",
                            "WA-31", "2027-01-31", "Trial Wire", "F-220", "120", "250",
                            "2026-11-05", "PA-7", ""}};
    dossier.heatTreatments = {{"HT-8", "QM-26-0147", "WR-1", "stress relief", "620", "120", "CH-8",
                               "FU-1", "TC-4", "2026-11-06", ""}};
    return sample;
}

Sample concededCasting() {
    Sample sample = recordedCasting();
    addFirstExamination(sample);
    // Only what fails is left of Z1.
    sample.file.examinations.erase(sample.file.examinations.begin() + 1);
    sample.verdict.examinations.erase(sample.verdict.examinations.begin() + 1);
    sample.records.pop_back();
    sample.findings.pop_back();
    sample.verdict.word = model::Word::NotAcceptable;
    model::Dossier& dossier = sample.file.dossier;
    dossier.dispositions = {{"NCR-41", "1", "QM-26-0147", "concession", "no load there",
                             "Ansel Quarrie", "2026-11-03", "", ""}};
    dossier.concessions = {{"CO-5", "NCR-41", "QM-26-0147", "PC-2026-88", "Perpetua Vance, quality",
                            "2026-11-10", "1", "flange only", "", kConsent}};
    return sample;
}

}  // namespace sample
