// SPDX-License-Identifier: Apache-2.0
#include "archive_fixture.h"

#include <sstream>

#include "foundry/ultrasonic_rows.h"

namespace model {
namespace {

std::ostream& operator<<(std::ostream& out, const std::optional<SurfacePlace>& surface) {
    if (!surface) return out << "no surface;";
    out << surface->id << ';' << toText(surface->placement.x) << ';' << toText(surface->placement.y)
        << ';' << toText(surface->placement.angle) << ';' << toText(surface->width) << ';'
        << toText(surface->height) << ';';
    return surface->period ? out << toText(*surface->period) << ';' : out << "flat;";
}

std::ostream& operator<<(std::ostream& out, const std::map<std::string, std::string>& levels) {
    for (const auto& [key, level] : levels) out << key << '=' << level << ';';
    return out;
}

std::ostream& operator<<(std::ostream& out, const std::vector<Kind>& kinds) {
    for (const Kind kind : kinds) out << static_cast<int>(kind) << ',';
    return out << ';';
}

}  // namespace

Order sampleOrder() {
    return {"O-1",
            "First Buyer",
            "FB 4711/20",
            "3.1",
            "en",
            {Kind::HotTear, Kind::Crack},
            "simple acceptance",
            "half up, once, to 0.001",
            "witness point: \"final MT\"\nsecond line"};
}

Part samplePart() {
    return {"P-9", "Valve body", "D-100", "C", Material::SpheroidalGraphiteIron, "EN-GJS-400-15"};
}

ZonePlan samplePlan() {
    PlannedZone round;
    round.name = "Z1";
    round.description = "Flange, datum at the mark";
    round.width = millimetres(600);
    round.height = nanometres(400'000'001);
    round.thickness = millimetres(40);
    round.surface =
        SurfacePlace{"S1",
                     {millimetres(-5), nanometres(1), Angle::fromMillionths(-30'500'000)},
                     millimetres(600),
                     nanometres(400'000'001),
                     nanometres(1'570'800'000)};
    round.tests = {{Method::Magnetic,
                    Stage::FinishMachined,
                    "EN 1369:2012",
                    {{"linear", "LM 4"}, {"aligned", "AM 4"}, {"non-linear", "SM 2"}}},
                   {Method::Penetrant, Stage::AsCast, "T", {}}};
    PlannedZone plain;
    plain.name = "Z2";
    plain.width = millimetres(10);
    plain.height = millimetres(20);
    plain.thickness = nanometres(1);
    return {"P-9", 1, {round, plain}};
}

Casting sampleCasting() {
    return {"S-17", "H 204", "O-1", "P-9", 1};
}

TypedIndication typedRow(const std::string& id, const std::string& x) {
    TypedIndication row;
    row.id = id;
    row.x = x;
    row.y = "22,50";
    row.length = "3";
    row.width = "0.5";
    return row;
}

ExaminationDraft sampleDraft() {
    ExaminationDraft draft;
    draft.casting = "S-17";
    draft.header.zone = "Z1";
    draft.header.method = Method::Magnetic;
    draft.header.stage = Stage::FinishMachined;
    draft.header.repairCycle = 2;
    draft.header.repeat = 1;
    draft.header.thickness = nanometres(40'000'001);
    draft.header.surface = samplePlan().zones[0].surface;
    draft.header.table = "EN 1369:2012";
    draft.header.levels = {{"linear", "LM 4"}, {"non-linear", "SM 2"}};
    draft.header.forbiddenKinds = {Kind::Chaplet, Kind::Crack};
    draft.header.noIndications = false;
    draft.header.notExamined = {{Area::fromMillionths(400'000'001), "riser stub", "A-1"},
                                {squareMillimetres(1), "", ""}};
    draft.examinedBy = "A. Bench, MT level 2";
    draft.examinedOn = "2026-11-24";
    draft.procedure = "MT-07 revision 3";
    draft.remarks = "UV-A";
    TypedIndication inch;
    inch.id = " 2 ";
    inch.unit = LengthUnit::Inch;
    inch.x = " 1 3/8 ";
    inch.y = "0.0625";
    inch.length = "5/64";
    inch.width = "";
    inch.removed = "1/64";
    inch.angle = "-30,5";
    inch.area = "1.20";
    inch.kind = "hot tear";
    inch.stated = "linear";
    inch.relevance = "non-relevant";
    inch.reason = "scale mark, \xc3\xa9t\xc3\xa9 \xf0\x9f\x98\x80\ttab";
    TypedIndication half;
    half.length = "3.";
    half.width = "?";
    draft.rows = {typedRow("1", "10.0"), inch, half, TypedIndication()};
    return draft;
}

ExaminationDraft sampleUltrasonicDraft() {
    ExaminationDraft draft = sampleDraft();
    draft.header.zone = "Z2";
    draft.header.method = Method::Ultrasonic;
    draft.header.ultrasonic.zoneArea = Area::fromMillionths(90'000'000'001);
    draft.header.ultrasonic.testability = {nanometres(3'000'001),
                                           GainStep::fromMillionths(12'500'000)};
    draft.header.ultrasonic.deadZone = nanometres(10'000'001);
    draft.header.ultrasonic.directions = {"from the flange, straight", "", "from the bore, 45"};
    draft.rows = {};
    TypedSetting half;
    half.diameter = "24.";
    half.velocity = "?";
    draft.settings = {foundry::filledSetting(), half, TypedSetting()};
    TypedReflector started;
    started.soundPath = "3.";
    started.gain = "?";
    draft.reflectors = {foundry::filledReflector(), started, TypedReflector()};
    return draft;
}

IssueFacts sampleFacts() {
    IssueFacts facts;
    facts.serial = "S-17";
    facts.heat = "H 204";
    facts.part = "P-9";
    facts.order = "O-1";
    facts.customer = "First Buyer";
    facts.customerOrder = "FB 4711/20";
    facts.type = "3.1";
    facts.language = "en";
    facts.verdict = Word::Acceptable;
    return facts;
}

std::string described(const Order& order) {
    std::ostringstream out;
    out << order.number << ';' << order.customer << ';' << order.customerOrder << ';'
        << order.certificateType << ';' << order.language << ';' << order.forbiddenKinds
        << order.decisionRule << ';' << order.roundingRule << ';' << order.remarks;
    return out.str();
}

std::string described(const Part& part) {
    std::ostringstream out;
    out << part.number << ';' << part.description << ';' << part.drawing << ';'
        << part.drawingRevision << ';' << static_cast<int>(part.material) << ';'
        << part.materialGrade;
    return out.str();
}

std::string described(const ZonePlan& plan) {
    std::ostringstream out;
    out << plan.part << ';' << plan.revision << '\n';
    for (const PlannedZone& zone : plan.zones) {
        out << zone.name << ';' << zone.description << ';' << toText(zone.width) << ';'
            << toText(zone.height) << ';' << toText(zone.thickness) << ';' << zone.surface << '\n';
        for (const RequiredTest& test : zone.tests)
            out << static_cast<int>(test.method) << ';' << static_cast<int>(test.stage) << ';'
                << test.table << ';' << test.levels << '\n';
    }
    return out.str();
}

std::string described(const Casting& casting) {
    std::ostringstream out;
    out << casting.serial << ';' << casting.heat << ';' << casting.order << ';' << casting.part
        << ';' << casting.zonePlanRevision;
    return out.str();
}

namespace {

template <class Quantity>
std::string described(const std::optional<Quantity>& quantity) {
    return quantity ? toText(*quantity) : "none";
}

std::string described(const UltrasonicTest& test) {
    const auto& [zoneArea, testability, deadZone, directions] = test;
    std::ostringstream out;
    out << described(zoneArea) << ';' << described(deadZone) << ';';
    if (testability)
        out << described(testability->smallestFbh) << ';' << described(testability->signalToNoise);
    for (const std::string& direction : directions) out << '|' << direction;
    return out.str();
}

std::string described(const TypedSetting& setting) {
    const auto& [name, probe, kind, element, diameter, elementWidth, elementLength, front,
                 frequency, probeAngle, velocity, attenuation, thickness, surface, radius,
                 reference, referenceOn, block, referenceVelocity, referenceAttenuation,
                 referencePath, referenceDiameter, referenceGain, referenceScreen, transfer,
                 knownThickness, shownThickness, setVelocity, firstEchoNumber, firstEchoGain,
                 secondEchoNumber, secondEchoGain, unit] = setting;
    std::string text(symbol(unit));
    for (const std::string* field : {&name,
                                     &probe,
                                     &kind,
                                     &element,
                                     &diameter,
                                     &elementWidth,
                                     &elementLength,
                                     &front,
                                     &frequency,
                                     &probeAngle,
                                     &velocity,
                                     &attenuation,
                                     &thickness,
                                     &surface,
                                     &radius,
                                     &reference,
                                     &referenceOn,
                                     &block,
                                     &referenceVelocity,
                                     &referenceAttenuation,
                                     &referencePath,
                                     &referenceDiameter,
                                     &referenceGain,
                                     &referenceScreen,
                                     &transfer,
                                     &knownThickness,
                                     &shownThickness,
                                     &setVelocity,
                                     &firstEchoNumber,
                                     &firstEchoGain,
                                     &secondEchoNumber,
                                     &secondEchoGain})
        text += "|" + *field;
    return text;
}

std::string described(const TypedReflector& row) {
    const auto& [id, x, y, heading, setting, afterCheck, soundPath, gain, screen, drop, along,
                 across, depth, fbh, length, width, throughWall, angle, area, backWallLoss,
                 backWallLossExplained, overReference, wall, notMeasurable, kind, relevance, reason,
                 unit] = row;
    std::string text(symbol(unit));
    for (const std::string* field : {&id,
                                     &x,
                                     &y,
                                     &heading,
                                     &setting,
                                     &afterCheck,
                                     &soundPath,
                                     &gain,
                                     &screen,
                                     &drop,
                                     &along,
                                     &across,
                                     &depth,
                                     &fbh,
                                     &length,
                                     &width,
                                     &throughWall,
                                     &angle,
                                     &area,
                                     &backWallLoss,
                                     &backWallLossExplained,
                                     &overReference,
                                     &wall,
                                     &notMeasurable,
                                     &kind,
                                     &relevance,
                                     &reason})
        text += "|" + *field;
    return text;
}

}  // namespace

std::string described(const ExaminationDraft& draft) {
    const Examination& header = draft.header;
    std::ostringstream out;
    out << draft.casting << ';' << header.zone << ';' << static_cast<int>(header.method) << ';'
        << static_cast<int>(header.stage) << ';' << header.repairCycle << ';' << header.repeat
        << ';' << toText(header.thickness) << ';' << header.surface << header.table << ';'
        << header.levels << header.forbiddenKinds << header.noIndications << ';';
    for (const NotExamined& area : header.notExamined)
        out << toText(area.area) << ',' << area.reason << ',' << area.agreed << ';';
    out << header.indications.size() << ';' << draft.examinedBy << ';' << draft.examinedOn << ';'
        << draft.procedure << ';' << draft.remarks << '\n';
    out << header.reflectors.size() << ';' << described(header.ultrasonic) << '\n';
    for (const TypedSetting& setting : draft.settings) out << described(setting) << '\n';
    for (const TypedReflector& reflector : draft.reflectors) out << described(reflector) << '\n';
    for (const TypedIndication& row : draft.rows) {
        for (const std::string& text :
             {row.id, row.x, row.y, row.length, row.width, row.removed, row.angle, row.area,
              row.kind, row.stated, row.relevance, row.reason})
            out << text << '|';
        out << symbol(row.unit) << '\n';
    }
    return out.str();
}

std::vector<std::int64_t> numbersIn(const Archive& archive, const CertificateSearch& search) {
    std::vector<std::int64_t> numbers;
    const auto page = findCertificates(archive, search);
    EXPECT_THAT(page, Succeeds());
    if (page)
        for (const FoundCertificate& found : page->certificates) numbers.push_back(found.number);
    return numbers;
}

ArchiveTest::ArchiveTest() {
    auto archive = Archive::create(path(), ArchiveKind::Working, actor_, clock_);
    EXPECT_THAT(archive, Succeeds());
    if (archive) archive_ = std::move(*archive);
}

void ArchiveTest::fill() {
    ASSERT_TRUE(archive_);
    ASSERT_THAT(archive_->save(sampleOrder(), 0, actor_), Succeeds());
    ASSERT_THAT(archive_->save(samplePart(), 0, actor_), Succeeds());
    ASSERT_THAT(archive_->add(samplePlan(), actor_), Succeeds());
    ASSERT_THAT(archive_->save(sampleCasting(), 0, actor_), Succeeds());
    ASSERT_THAT(archive_->save(sampleDraft(), actor_), Succeeds());
}

std::vector<std::string> ArchiveTest::findings(const std::optional<Head>& held) const {
    const auto verification = reopened().verify(held);
    EXPECT_THAT(verification, Succeeds());
    std::vector<std::string> messages;
    if (!verification) return {"not verified"};
    for (const Error& error : verification->findings) {
        EXPECT_EQ(error.kind, ErrorKind::Damaged);
        messages.push_back(error.message());
    }
    return messages;
}

}  // namespace model
