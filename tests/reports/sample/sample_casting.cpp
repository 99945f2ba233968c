// SPDX-License-Identifier: Apache-2.0
#include "sample/sample_casting.h"

#include <cassert>
#include <utility>

namespace sample {

namespace {

using model::Check;
using model::CheckFrame;
using model::CheckUnit;
using model::IndicationClass;
using model::millimetres;

const std::map<std::string, std::string> kMagneticLevels = {
    {"non-linear", "SM 2"}, {"linear", "LM 4"}, {"aligned", "AM 4"}};
const std::map<std::string, std::string> kPenetrantLevels = {{"all", "P 2"}};

model::LimitTable penetrantTable() {
    model::LimitTable table = trialTable();
    table.id = "Trial Standard 8:2021";
    table.standard = "Trial Standard 8";
    table.edition = "2021";
    table.revision = 1;
    table.digest = std::string(48, 'b') + "0123456789abcdef";
    table.method = model::Method::Penetrant;
    table.frame = {model::Known::Absent, {}, {}};
    table.remarks.clear();
    return table;
}

model::PlannedZone zone(const std::string& name, const std::string& description, std::int64_t width,
                        std::int64_t height, std::int64_t thickness, model::RequiredTest test) {
    return {name,
            description,
            millimetres(width),
            millimetres(height),
            millimetres(thickness),
            std::nullopt,
            {std::move(test)}};
}

model::RequiredTest magneticTest() {
    return {model::Method::Magnetic, model::Stage::HeatTreated, "Trial Standard 7:2020",
            kMagneticLevels};
}
model::RequiredTest penetrantTest() {
    return {model::Method::Penetrant, model::Stage::FinishMachined, "Trial Standard 8:2021",
            kPenetrantLevels};
}

model::ExaminationDraft draftOf(const model::PlannedZone& planned,
                                const model::RequiredTest& test) {
    model::ExaminationDraft draft;
    draft.casting = "QM-26-0147";
    draft.header.zone = planned.name;
    draft.header.method = test.method;
    draft.header.stage = test.stage;
    draft.header.thickness = planned.thickness;
    draft.header.surface = planned.surface;
    draft.header.table = test.table;
    draft.header.levels = test.levels;
    draft.examinedBy = "Νίκη Αλεξίου";
    draft.examinedOn = "2026-11-20";
    draft.procedure = "QP-MT-04 revision 6";
    return draft;
}

model::ExaminationVerdict verdictOf(const model::ExaminationDraft& draft,
                                    const model::LimitTable& table, model::Word word) {
    model::ExaminationVerdict verdict;
    verdict.zone = draft.header.zone;
    verdict.method = draft.header.method;
    verdict.stage = draft.header.stage;
    verdict.repairCycle = draft.header.repairCycle;
    verdict.repeat = draft.header.repeat;
    verdict.word = word;
    verdict.tableId = table.id;
    verdict.tableRevision = table.revision;
    verdict.tableDigest = table.digest;
    verdict.levels = draft.header.levels;
    return verdict;
}

Check lengthCheck(model::RuleKind rule, const std::string& classText, const std::string& level,
                  std::int64_t measured, std::int64_t limit, bool passes,
                  std::vector<std::string> members) {
    Check check;
    check.rule = rule;
    check.key = "linear";
    check.level = level;
    check.classText = classText;
    check.source = {"Table 2", model::Grade::Memory};
    check.measured = measured;
    check.limit = model::Rational(limit);
    check.unit = CheckUnit::Millimetre;
    check.passes = passes;
    check.members = std::move(members);
    return check;
}

CheckFrame frameAt(double x, double y, double degrees) {
    return {{millimetres(105), millimetres(148), false}, x, y, degrees};
}

void addFailingZone(Sample& sample) {
    const model::PlannedZone& planned = sample.file.plan.zones[0];
    model::ExaminationDraft draft = draftOf(planned, magneticTest());
    draft.header.notExamined = {
        {model::squareMillimetres(400), "clamping claw in the way", "AG-118"}};
    model::TypedIndication linear = typed("1", "510", "120.5", "9.5", "1");
    linear.kind = "shrinkage";
    linear.angle = "30";
    model::TypedIndication inch = typed("2", "21.25", "5", "13/64", "1/32");
    inch.unit = model::LengthUnit::Inch;
    inch.angle = "35.5";
    model::TypedIndication spot = typed("3", "440", "60", "2.5", "2");
    spot.kind = "porosity";
    spot.area = "4.2";
    spot.removed = "6";
    model::TypedIndication mark = typed("4", "120", "300", "7", "1.5");
    mark.relevance = "non-relevant";
    mark.reason = "edge of the stamped number";
    model::TypedIndication small = typed("5", "300", "200", "0.8", "0.7");
    model::TypedIndication hairline = typed("6", "520", "130", "4", "");
    hairline.stated = "linear";
    draft.rows = {linear, inch, spot, mark, small, hairline};

    model::ExaminationVerdict verdict = verdictOf(draft, trialTable(), model::Word::NotAcceptable);
    verdict.indications = {
        {"1", IndicationClass::Linear, true, "A1"},   {"2", IndicationClass::Linear, true, ""},
        {"3", IndicationClass::NonLinear, true, ""},  {"4", IndicationClass::Linear, false, ""},
        {"5", IndicationClass::NonLinear, false, ""}, {"6", IndicationClass::Linear, true, "A1"}};
    verdict.groups = {{"A1", IndicationClass::Aligned, {"1", "6"}, model::nanometres(19'613'000)}};
    Check single = lengthCheck(model::RuleKind::IndividualLength, "linear", "LM 4", 9'500'000,
                               10'000'000, true, {"1"});
    Check sum = lengthCheck(model::RuleKind::CumulativeLength, "linear and aligned", "LM 4",
                            32'771'750, 18'000'000, false, {"A1", "2", "Z2/7"});
    sum.frame = frameAt(560.25, 110.4, 12);
    Check count =
        lengthCheck(model::RuleKind::CountAtMaximum, "non-linear", "SM 2", 0, 2'000'000, true, {});
    count.unit = CheckUnit::Count;
    count.source = {"Table 1, at L2", model::Grade::Memory};
    count.note = "counted from the maximum less 0.5 mm: an interpretation";
    Check spacing = lengthCheck(model::RuleKind::Spacing, "linear", "LM 4", 31'250'000, 30'000'000,
                                true, {"1", "2"});
    spacing.comparison = model::Comparison::AtLeast;
    spacing.source = {"clause 6.2", model::Grade::ReadTwice};
    verdict.checks = {single, sum, count, spacing};
    verdict.bestLevels = {{"linear", "LM 7"}, {"aligned", "AM 7"}, {"non-linear", std::nullopt}};
    verdict.bestLevelsUnknown = {"LM 01"};
    verdict.notes = {"indication 3: an examination at stage finish machined is due"};
    sample.file.examinations.push_back(draft);
    sample.verdict.examinations.push_back(verdict);
}

void addPassingNeighbour(Sample& sample) {
    model::ExaminationDraft draft = draftOf(sample.file.plan.zones[1], magneticTest());
    draft.examinedBy = "Łucja Ødegård-Brüß";
    draft.rows = {typed("7", "15", "118", "8", "0.9")};
    model::ExaminationVerdict verdict = verdictOf(draft, trialTable(), model::Word::Acceptable);
    verdict.indications = {{"7", IndicationClass::Linear, true, ""}};
    verdict.checks = {lengthCheck(model::RuleKind::IndividualLength, "linear", "LM 4", 8'000'000,
                                  10'000'000, true, {"7"})};
    verdict.checks[0].frame = frameAt(10, 110, 0);
    verdict.bestLevels = {{"linear", "LM 4"}};
    sample.file.examinations.push_back(draft);
    sample.verdict.examinations.push_back(verdict);
}

void addPenetrantZones(Sample& sample) {
    model::ExaminationDraft sound = draftOf(sample.file.plan.zones[2], penetrantTest());
    sound.header.noIndications = true;
    sound.examinedBy = "李雷 (鋳造検査)";
    sound.procedure = "QP-PT-02 revision 1";
    sample.verdict.examinations.push_back(
        verdictOf(sound, penetrantTable(), model::Word::Acceptable));
    sample.file.examinations.push_back(sound);

    model::ExaminationDraft open = draftOf(sample.file.plan.zones[3], penetrantTest());
    open.rows = {typed("P1", "40", "40", "3", "2.5")};
    open.remarks = "Developer ran at the lower edge;\nwiped and applied again.";
    model::ExaminationVerdict verdict = verdictOf(open, penetrantTable(), model::Word::NotJudged);
    verdict.indications = {{"P1", std::nullopt, true, ""}};
    Check check;
    check.rule = model::RuleKind::IndividualLength;
    check.classText = "all";
    check.level = "P 2";
    check.source = {"Table 1, P 2", model::Grade::Partly};
    check.measured = 3'000'000;
    check.unit = CheckUnit::Millimetre;
    check.reason = "the limit of level P 2 is not known";
    verdict.checks = {check};
    verdict.reasons = {"the ratio for linear indications is not known"};
    sample.file.examinations.push_back(open);
    sample.verdict.examinations.push_back(verdict);
}

void addRepairedZone(Sample& sample) {
    model::PlannedZone outside = zone("Z9", "", 80, 60, 22, magneticTest());
    model::ExaminationDraft draft = draftOf(outside, magneticTest());
    draft.header.repairCycle = 1;
    draft.header.noIndications = true;
    draft.examinedBy = "Жанна Щукина";
    sample.verdict.examinations.push_back(verdictOf(draft, trialTable(), model::Word::Acceptable));
    sample.file.examinations.push_back(draft);
}

}  // namespace

model::LimitTable trialTable() {
    model::LimitTable table;
    table.id = "Trial Standard 7:2020";
    table.standard = "Trial Standard 7";
    table.edition = "2020";
    table.revision = 3;
    table.digest = "0123456789abcdef" + std::string(48, 'a');
    table.remarks = {"Invented for tests.", "Table 2 is from memory."};
    table.method = model::Method::Magnetic;
    table.materials = {model::Material::CastSteel};
    table.frame = {model::Known::Given,
                   {millimetres(105), millimetres(148), false},
                   {"clause 5", model::Grade::Memory}};
    return table;
}

model::TypedIndication typed(std::string id, std::string x, std::string y, std::string length,
                             std::string width) {
    model::TypedIndication row;
    row.id = std::move(id);
    row.x = std::move(x);
    row.y = std::move(y);
    row.length = std::move(length);
    row.width = std::move(width);
    return row;
}

Sample soundCasting() {
    Sample sample;
    sample.file.casting = {"QM-26-0147", "H 4471", "QO-2026-031", "P-2201", 2};
    sample.file.part = {"P-2201", "Bearing housing, upper half", "D-2201-00",
                        "C",      model::Material::CastSteel,    "G20Mn5 to EN 10293"};
    sample.file.order = {"QO-2026-031",
                         "Łódzka Odlewnia & Søhne (Прага)",
                         "4500017721, item 10",
                         "3.1",
                         "en",
                         {model::Kind::Crack, model::Kind::HotTear},
                         "simple acceptance",
                         "no rounding",
                         ""};
    sample.file.plan = {
        "P-2201", 2, {zone("Z1", "Flange, datum at the mark", 200, 150, 30, magneticTest())}};
    model::ExaminationDraft draft = draftOf(sample.file.plan.zones[0], magneticTest());
    draft.header.noIndications = true;
    model::ExaminationVerdict verdict = verdictOf(draft, trialTable(), model::Word::Acceptable);
    verdict.attested = true;
    sample.file.examinations = {draft};
    sample.verdict = {model::Word::Acceptable, {verdict}};
    for (model::LimitTable table : {trialTable(), penetrantTable()}) {
        [[maybe_unused]] const auto added = sample.tables.add(std::move(table));
        assert(added.ok());
    }
    sample.issue = {"QC-2026-0147",
                    "2026-11-25",
                    "Quillmere Castings",
                    "Furnace Lane 12\nQuillmere",
                    false,
                    "9f86d081884c7d659a2feaa0c55ad015a3bf4f1b2b0b822cd15d6c15b0f00a08",
                    "0.1.0"};
    return sample;
}

Sample signedCasting() {
    Sample sample = soundCasting();
    sample.file.examinations.push_back(sample.file.examinations[0]);
    sample.file.examinations[1].header.repeat = 1;
    sample.verdict.examinations.push_back(sample.verdict.examinations[0]);
    sample.verdict.examinations[1].repeat = 1;
    sample.verdict.examinations[0].superseded = true;
    sample.issue.forRelease = true;
    sample.issue.presentedBy = "Łucja Ødegård-Brüß";
    sample.records = {{"Łucja Ødegård-Brüß", "2026-11-24T08:00:00Z", {}, {}},
                      {"Νίκη Αλεξίου", "2026-11-24T09:30:00Z", {}, {}}};
    return sample;
}

Sample mixedCasting() {
    Sample sample = soundCasting();
    sample.file.examinations.clear();
    sample.verdict.examinations.clear();
    sample.verdict.word = model::Word::NotAcceptable;
    sample.file.order.remarks = "Witness point before machining.";
    model::PlannedZone first = zone("Z1", "Flange to rib, datum at the lower left punch mark", 600,
                                    400, 40, magneticTest());
    first.surface = model::SurfacePlace{"S1", {}, first.width, first.height, std::nullopt};
    model::PlannedZone second = zone("Z2", "Rib, right of Z1", 300, 400, 30, magneticTest());
    second.surface = model::SurfacePlace{
        "S1", {millimetres(600), {}, {}}, second.width, second.height, std::nullopt};
    sample.file.plan.zones = {first, second,
                              zone("Z3", "Bore, upper half", 200, 90, 25, penetrantTest()),
                              zone("Z4", "Bore, lower half", 200, 90, 25, penetrantTest()),
                              zone("Z5", "Foot, all four pads", 120, 60, 35, magneticTest())};
    addFailingZone(sample);
    addPassingNeighbour(sample);
    addPenetrantZones(sample);
    addRepairedZone(sample);
    return sample;
}

Sample ultrasonicCasting() {
    Sample sample = soundCasting();
    model::LimitTable table = penetrantTable();
    table.id = "Trial Standard 9:2022";
    table.standard = "Trial Standard 9";
    table.edition = "2022";
    table.digest = std::string(48, 'c') + "0123456789abcdef";
    table.method = model::Method::Ultrasonic;
    const model::RequiredTest test{
        model::Method::Ultrasonic, model::Stage::RoughMachined, table.id, {{"all", "3"}}};
    sample.file.plan.zones.push_back(zone("Z2", "Hub, datum at the keyway", 300, 200, 120, test));
    model::ExaminationDraft draft = draftOf(sample.file.plan.zones.back(), test);
    draft.header.ultrasonic = {model::squareMillimetres(60000),
                               model::Testability{millimetres(4), model::decibels(9)},
                               millimetres(7),
                               {"from the upper face", "from the lower face"}};
    model::TypedSetting setting;
    setting.name = "S1";
    setting.probe = "no. 4711";
    setting.kind = "straight";
    setting.element = "round";
    setting.diameter = "10";
    setting.frequency = "4";
    setting.velocity = "5920";
    setting.attenuation = "6";
    setting.thickness = "120";
    setting.surface = "flat";
    setting.reference = "flat-bottomed hole";
    setting.referenceOn = "block";
    setting.block = "B-12";
    setting.referenceVelocity = "5930";
    setting.referenceAttenuation = "1";
    setting.referencePath = "80";
    setting.referenceDiameter = "3";
    setting.referenceGain = "40";
    setting.referenceScreen = "60";
    setting.transfer = "2.5";
    draft.settings = {setting};
    model::TypedReflector reading;
    reading.id = "1";
    reading.x = "40";
    reading.y = "50";
    reading.setting = "S1";
    reading.soundPath = "90";
    reading.gain = "38";
    reading.screen = "80";
    reading.drop = "6";
    reading.along = "31";
    reading.across = "3";
    reading.backWallLoss = "4.5";
    reading.backWallLossExplained = "a boss below";
    reading.kind = "volumetric";
    model::TypedReflector typed;
    typed.id = "2";
    typed.x = "140";
    typed.y = "60";
    typed.depth = "17";
    typed.fbh = "3.4";
    typed.length = "22.5";
    typed.width = "8";
    typed.throughWall = "5";
    typed.angle = "30";
    typed.overReference = "1.5";
    typed.kind = "planar";
    model::TypedReflector bare;
    bare.id = "3";
    bare.x = "200";
    bare.y = "150";
    bare.wall = "95";
    draft.reflectors = {reading, typed, bare};
    model::ExaminationVerdict verdict = verdictOf(draft, table, model::Word::NotJudged);
    verdict.attested = true;
    verdict.indications = {{"1", IndicationClass::Core, true, ""},
                           {"2", IndicationClass::Planar, true, ""},
                           {"3", std::nullopt, true, ""}};
    verdict.reasons = {"indication 3 was not measured"};
    sample.file.examinations.push_back(draft);
    sample.verdict.word = model::Word::NotJudged;
    sample.verdict.examinations.push_back(verdict);
    [[maybe_unused]] const auto added = sample.tables.add(std::move(table));
    assert(added.ok());
    return sample;
}

Sample largeCasting(int zones, int indications) {
    Sample sample = soundCasting();
    sample.file.plan.zones.clear();
    sample.file.examinations.clear();
    sample.verdict.examinations.clear();
    for (int z = 0; z < zones; ++z) {
        const std::string name = "Z" + std::to_string(z + 1);
        sample.file.plan.zones.push_back(
            zone(name, "Panel " + std::to_string(z + 1), 500, 400, 40, magneticTest()));
        model::ExaminationDraft draft = draftOf(sample.file.plan.zones.back(), magneticTest());
        draft.header.noIndications = indications == 0;
        model::ExaminationVerdict verdict = verdictOf(draft, trialTable(), model::Word::Acceptable);
        verdict.attested = true;
        for (int i = 0; i < indications; ++i) {
            const std::string id = std::to_string(i + 1);
            const int place = z * 31 + i * 47;
            draft.rows.push_back(typed(id, std::to_string(place % 490 + 5),
                                       std::to_string(place * 7 % 390 + 5), "3.2", "2.9"));
            verdict.indications.push_back({id, IndicationClass::NonLinear, true, ""});
        }
        if (indications > 0) {
            verdict.checks = {lengthCheck(model::RuleKind::IndividualLength, "non-linear", "SM 2",
                                          3'200'000, 4'000'000, true, {"1"})};
            verdict.checks[0].frame = frameAt(100, 100, 20);
        }
        sample.file.examinations.push_back(draft);
        sample.verdict.examinations.push_back(verdict);
    }
    return sample;
}

}  // namespace sample
