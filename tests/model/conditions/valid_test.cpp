// SPDX-License-Identifier: Apache-2.0
#include "valid_test.h"

#include <algorithm>
#include <gtest/gtest.h>

#include "conditions/condition_set.h"

namespace model {
namespace {

ValidTest anyTest(Method method, const std::string& word) {
    ValidTest test;
    CastingFile& file = test.file;
    file.casting = {"S-1", "H-1", "O-1", "P-1", 1};
    file.order.number = "O-1";
    file.part.number = "P-1";
    ExaminationDraft& draft = test.draft;
    draft.casting = "S-1";
    draft.header.zone = "Z1";
    draft.header.method = method;
    draft.header.stage = Stage::HeatTreated;
    draft.header.thickness = millimetres(40);
    draft.examinedOn = kTestDay;
    draft.conditions.startedAt = "2026-11-25T08:00:00Z";
    draft.conditions.endedAt = "2026-11-25T09:30:00Z";
    draft.conditions.procedureNumber = word + "-1";
    draft.conditions.procedureRevision = "B";
    draft.conditions.surfaceFinish = "comparator 2 S1";
    test.testers.examiner = "Q-2";

    Procedure procedure;
    procedure.number = word + "-1";
    procedure.revision = "B";
    procedure.kind = "procedure";
    procedure.method = word;
    procedure.approvedBy = "Q-3";
    procedure.approvedOn = "2026-01-15";
    procedure.state = "current";
    file.used.procedures = {procedure};

    Qualification held;
    held.person = "Q-2";
    held.method = word;
    held.certificate = "C-77";
    held.scheme = "ISO 9712:2021";
    held.level = "2";
    held.sector = "Castings (c)";
    held.issuedOn = "2023-03-01";
    held.expiresOn = "2028-02-29";
    held.state = "valid";
    file.used.qualifications = {held};
    file.used.eyeTests = {{"Q-2", "near vision", "2026-02-10", "Jaeger 1", "", "passed", ""},
                          {"Q-2", "colour perception", "2023-02-10", "", "", "passed", ""}};
    Authorisation given;
    given.person = "Q-2";
    given.method = word;
    given.grantedOn = "2023-03-10";
    given.procedures = word + "-1, X-9";
    given.state = "valid";
    file.used.authorisations = {given};
    return test;
}

void own(ValidTest& test, const std::string& id, const std::string& kind,
         const std::string& calibratedOn = {}, const std::string& due = {}) {
    Equipment item;
    item.id = id;
    item.kind = kind;
    item.state = "in use";
    item.calibratedOn = calibratedOn;
    item.calibrationDue = due;
    test.file.used.equipment.push_back(item);
    std::string& list = test.draft.conditions.equipment;
    list += (list.empty() ? "" : ", ") + id;
}

void checked(ValidTest& test, const std::string& equipment, const std::string& name,
             const std::string& at, const std::string& value = {}, const std::string& unit = {},
             const std::string& condition = {}) {
    test.file.used.checks.push_back(
        {equipment, name, at, "Q-2", value, unit, condition, "", "passed", "", ""});
}

Consumable& batch(ValidTest& test, const std::string& id, const std::string& kind) {
    Consumable item;
    item.id = id;
    item.kind = kind;
    item.maker = "Maker A";
    item.batch = "B-" + id;
    item.expiresOn = "2027-06-30";
    item.batchCertificate = "BC-" + id;
    item.state = "in use";
    test.file.used.consumables.push_back(item);
    std::string& list = test.draft.conditions.consumables;
    list += (list.empty() ? "" : ", ") + id;
    return test.file.used.consumables.back();
}

void read(ValidTest& test, const std::string& parameter, const std::string& value,
          const std::string& unit, const std::string& instrument) {
    test.draft.conditions.measurements.push_back(
        {parameter, value, unit, instrument, "2026-11-25T08:05:00Z", "Q-2", "", ""});
}

void viewByUvA(ValidTest& test) {
    own(test, "UV-1", "UV-A meter", "2026-03-01", "2027-02-28");
    own(test, "LX-1", "light meter", "2026-03-01", "2027-02-28");
    read(test, "uv_a", "12.5", "W/m2", "UV-1");
    read(test, "ambient_light", "8", "lx", "LX-1");
    test.take("dark_adaptation", "2", "min");
    test.take("lamp", "LED");
    test.take("magnification", "1");
}

}  // namespace

Measurement& ValidTest::measured(const std::string& parameter) {
    auto& all = draft.conditions.measurements;
    const auto found = std::ranges::find(all, parameter, &Measurement::parameter);
    EXPECT_NE(found, all.end()) << parameter;
    return *found;
}

void ValidTest::take(const std::string& parameter, const std::string& value,
                     const std::string& unit) {
    auto& all = draft.conditions.measurements;
    const auto found = std::ranges::find(all, parameter, &Measurement::parameter);
    if (found == all.end()) {
        all.push_back({parameter, value, unit, "", "", "", "", ""});
        return;
    }
    found->value = value;
    found->unit = unit;
}

void ValidTest::drop(const std::string& parameter) {
    std::erase_if(draft.conditions.measurements,
                  [&](const Measurement& each) { return each.parameter == parameter; });
}

Equipment& ValidTest::equipment(const std::string& id) {
    return *std::ranges::find(file.used.equipment, id, &Equipment::id);
}
Consumable& ValidTest::consumable(const std::string& id) {
    return *std::ranges::find(file.used.consumables, id, &Consumable::id);
}
EquipmentCheck& ValidTest::check(const std::string& equipment, const std::string& name) {
    return *std::ranges::find_if(file.used.checks, [&](const EquipmentCheck& each) {
        return each.equipment == equipment && each.check == name;
    });
}
EyeTest& ValidTest::eyeTest(const std::string& person, const std::string& kind) {
    return *std::ranges::find_if(file.used.eyeTests, [&](const EyeTest& each) {
        return each.person == person && each.kind == kind;
    });
}

ValidTest magneticTest() {
    ValidTest test = anyTest(Method::Magnetic, "MT");
    test.file.used.procedures[0].conditionSets =
        "ISO 9934-1:2016, ISO 9934-2:2015, ISO 9934-3:2015, ISO 3059:2012, ISO 4986:2020";
    own(test, "Y-1", "yoke");
    own(test, "TF-1", "field meter", "2026-05-01", "2027-04-30");
    checked(test, "Y-1", "yoke pull", "2026-08-01T06:00:00Z", "4.6", "kg", "100 mm");
    checked(test, "M-1", "in-service block comparison", "2026-11-25T06:10:00Z");
    checked(test, "Y-1", "overall performance", "2026-11-25T06:15:00Z");
    batch(test, "M-1", "magnetic ink").type = "fluorescent";
    viewByUvA(test);
    read(test, "field_strength", "3.2", "kA/m", "TF-1");
    test.take("field_reading", "RMS");
    test.take("waveform", "alternating");
    test.take("technique", "AC yoke");
    test.take("field_proof", "tangential field meter");
    test.take("directions", "2");
    test.take("pole_spacing", "120", "mm");
    test.take("overlap", "50", "mm");
    test.take("surface_clean", "yes");
    test.take("viewed_after_demagnetising", "no");
    test.draft.conditions.coating = "0";
    return test;
}

ValidTest penetrantTest() {
    ValidTest test = anyTest(Method::Penetrant, "PT");
    test.file.used.procedures[0].conditionSets = "ISO 3452-1:2021, ISO 3059:2012, ISO 4987:2020";
    Consumable& penetrant = batch(test, "PE-1", "penetrant");
    penetrant.type = "fluorescent";
    penetrant.designation = "I C d - 2";
    penetrant.sensitivityLevel = "2";
    batch(test, "RE-1", "remover");
    batch(test, "DE-1", "developer");
    own(test, "TP-2", "test piece");
    checked(test, "TP-2", "overall performance", "2026-11-25T07:00:00Z");
    own(test, "TH-1", "thermometer", "2026-03-01", "2027-02-28");
    viewByUvA(test);
    read(test, "part_temperature", "19", "deg C", "TH-1");
    read(test, "drying_temperature", "35", "deg C", "TH-1");
    read(test, "removal_uv_a", "3", "W/m2", "UV-1");
    read(test, "removal_light", "60", "lx", "LX-1");
    test.take("removal", "solvent");
    test.take("penetration_time", "15", "min");
    test.take("penetration_least", "10", "min");
    test.take("penetrant_dried", "no");
    test.take("solvent_sprayed", "no");
    test.take("developer_dry_at", "2026-11-25T08:40:00Z");
    test.take("first_look_at", "2026-11-25T08:42:00Z");
    test.take("final_look_at", "2026-11-25T08:55:00Z");
    test.take("surface_clean", "yes");
    test.take("closing_treatment", "no");
    return test;
}

ValidTest ultrasonicTest() {
    ValidTest test = anyTest(Method::Ultrasonic, "UT");
    Procedure& procedure = test.file.used.procedures[0];
    procedure.conditionSets = "ISO 4992-1:2020, ISO 22232-3:2020, ASTM A609";
    procedure.driftRule = "ISO 17640";
    own(test, "UI-1", "ultrasonic instrument", "2026-03-01", "2027-02-28");
    own(test, "PR-1", "probe");
    own(test, "PR-2", "probe");
    own(test, "CB-1", "calibration block");
    test.equipment("PR-1").serial = "0451";
    test.equipment("PR-2").serial = "0452";
    for (const char* item : {"UI-1", "PR-1", "PR-2", "CB-1"})
        checked(test, item, "daily physical check", "2026-11-25T07:00:00Z");
    checked(test, "PR-2", "probe index and angle", "2026-11-25T07:10:00Z");
    checked(test, "UI-1", "weekly linearity", "2026-11-20T07:00:00Z");
    checked(test, "UI-1", "weekly sensitivity", "2026-11-20T07:20:00Z");
    batch(test, "CP-1", "couplant");

    UltrasonicTest& header = test.draft.header.ultrasonic;
    header.testability = Testability{millimetres(3), decibels(9)};
    header.directions = {"straight from the top"};
    TypedSetting straight;
    straight.name = "S1";
    straight.probe = "straight probe 0451";
    straight.kind = "straight";
    straight.element = "round";
    straight.diameter = "24";
    straight.frequency = "2";
    straight.referenceOn = "block";
    straight.block = "CB-1";
    straight.transfer = "2";
    TypedSetting angle = straight;
    angle.name = "S2";
    angle.probe = "angle probe 0452";
    angle.kind = "angle";
    angle.element = "rectangular";
    angle.diameter.clear();
    angle.elementWidth = "9";
    angle.elementLength = "8";
    test.draft.settings = {straight, angle};

    TestConditions& stated = test.draft.conditions;
    for (const char* setting : {"S1", "S2"}) {
        const std::string name = setting;
        stated.settingChecks.push_back({"A-" + name, name, "2026-11-25T07:30:00Z", "start", "Q-2",
                                        "CB-1", "", "", "20", "18", "", ""});
        stated.settingChecks.push_back({"E-" + name, name, "2026-11-25T09:25:00Z", "end", "Q-2",
                                        "CB-1", "-1", "0.5", "20", "18", "", ""});
    }
    stated.scans = {{"1", "top", "S1", "A-S1", "2026-11-25T08:00:00Z", "2026-11-25T08:30:00Z", "",
                     "100", "15", ""},
                    {"2", "top", "S2", "A-S2", "2026-11-25T08:35:00Z", "2026-11-25T09:20:00Z",
                     "to the left", "100", "15", ""}};
    test.take("couplant", "CP-1");
    test.take("couplant_of_setting", "CP-1");
    test.take("surface_condition", "machined");
    test.take("surface_ra", "6.3", "um");
    test.take("instrument_settings", "as in the daily check");
    return test;
}

std::vector<std::string> idsOf(const std::vector<ConditionFinding>& findings) {
    std::vector<std::string> ids;
    ids.reserve(findings.size());
    for (const ConditionFinding& finding : findings) ids.push_back(finding.id);
    return ids;
}

ConditionFinding onlyOne(const std::vector<ConditionFinding>& findings) {
    EXPECT_EQ(findings.size(), 1u);
    for (const ConditionFinding& finding : findings)
        EXPECT_EQ(findings.size(), 1u) << finding.id << ": " << finding.reason.message();
    return findings.size() == 1 ? findings[0] : ConditionFinding();
}

std::string digestOf(const std::string& set) {
    const ConditionSet* found = conditionSet(set);
    EXPECT_NE(found, nullptr) << set;
    return found ? found->digest : std::string();
}

}  // namespace model
