// SPDX-License-Identifier: Apache-2.0
#include "busy_archive.h"

#include "archive/attestation.h"
#include "archive/identities.h"
#include "archive/lifecycle.h"
#include "archive/retention.h"
#include "foundry/foundry.h"
#include "foundry/ultrasonic_rows.h"

namespace app {
namespace {

constexpr char kTable[] = "EN 1369:2012";
const std::map<std::string, std::string> kLevels{
    {"non-linear", "SM 2"}, {"linear", "LM 4"}, {"aligned", "AM 4"}};

model::Archive opened(const std::string& path, const model::Clock& clock) {
    foundry::copyTo(path);
    return must(model::Archive::open(path, clock));
}

model::SurfacePlace roundSurface() {
    return {
        "S1",
        {model::millimetres(-5), model::millimetres(1), model::Angle::fromMillionths(-30'500'000)},
        model::millimetres(600),
        model::millimetres(400),
        model::nanometres(1'570'800'000)};
}

model::ZonePlan plan(const std::string& part, const std::optional<model::SurfacePlace>& surface) {
    model::ZonePlan plan{part, 1, {}};
    for (const char* name : {"Z1", "Z2"}) {
        model::PlannedZone zone;
        zone.name = name;
        zone.description = std::string("beside the riser, ") + name;
        zone.width = model::millimetres(600);
        zone.height = model::millimetres(400);
        zone.thickness = model::millimetres(40);
        plan.zones.push_back(zone);
    }
    plan.zones[0].surface = surface;
    plan.zones[0].tests = {
        {model::Method::Magnetic, model::Stage::FinishMachined, kTable, kLevels}};
    if (surface)
        plan.zones[1].tests = {
            {model::Method::Magnetic, model::Stage::AsCast, kTable, kLevels},
            {model::Method::Magnetic, model::Stage::RoughMachined, kTable, kLevels}};
    return plan;
}

model::ExaminationDraft draftOf(const std::string& serial, const std::string& zone) {
    model::ExaminationDraft draft;
    draft.casting = serial;
    draft.header.zone = zone;
    draft.header.stage = model::Stage::FinishMachined;
    draft.header.thickness = model::millimetres(40);
    draft.header.table = kTable;
    draft.header.levels = kLevels;
    draft.header.noIndications = true;
    draft.examinedBy = "Ilse Bröker";
    draft.examinedOn = "2026-11-24";
    draft.procedure = "MT-07 revision 3";
    return draft;
}

model::TypedIndication typed(const std::string& id, const std::string& length) {
    model::TypedIndication row;
    row.id = id;
    row.x = "100";
    row.y = "22,5";
    row.length = length;
    row.width = "0.5";
    return row;
}

}  // namespace

BusyArchive::BusyArchive(const std::string& path)
    : clock_(foundry::madeAt() + std::chrono::hours(1)), archive_(opened(path, clock_)) {
    makeOrders();
    const auto tables = must(archive_.tables());
    must(model::attest(archive_, tables.find(kTable)->digest, "library copy 3",
                       person(foundry::kQaManager)));
}

void BusyArchive::makeOrders() {
    for (const char* type : {"3.1", "3.2"}) {
        model::Order order{std::string("O-") + type[0] + type[2],
                           "First Buyer",
                           std::string("FB 4711/") + type,
                           type,
                           "en",
                           {},
                           "simple acceptance",
                           "half up, once, to 0.001",
                           ""};
        must(archive_.save(order, 0, actor_));
    }
    must(archive_.save(model::Part{"P-1", "Lever", "D-1", "A", model::Material::CastSteel, "GE240"},
                       0, actor_));
    must(archive_.add(plan("P-1", std::nullopt), actor_));
}

IssueSettings BusyArchive::settings() const {
    IssueSettings settings;
    settings.worksName = "Quillmere Foundry";
    settings.place = "Quillmere";
    settings.programVersion = "test";
    settings.clock = &clock_;
    return settings;
}

model::SignedIn BusyArchive::person(const std::string& id) const {
    return foundry::signedIn(archive_, id);
}

void BusyArchive::signedCasting(const std::string& serial, const std::string& order,
                                const std::string& length, const std::string& inspector) {
    must(archive_.save(model::Casting{serial, "H " + serial, order, "P-1", 1}, 0, actor_));
    model::ExaminationDraft draft = draftOf(serial, "Z1");
    draft.header.noIndications = length.empty();
    if (!length.empty()) draft.rows = {typed("1", length)};
    must(archive_.save(draft, actor_));
    signAll(serial, "", inspector);
}

void BusyArchive::signAll(const std::string& serial, const std::string& rejection,
                          const std::string& inspector) {
    const auto signer = person(inspector);
    std::optional<model::Rejection> rejected;
    if (!rejection.empty()) rejected = model::Rejection{rejection};
    for (const auto& draft : must(archive_.casting(serial)).examinations)
        must(model::signRecord(archive_, draft.id, draft.version, rejected, signer));
}

std::int64_t BusyArchive::present(const std::string& serial) {
    return must(presentCasting(archive_, serial, person(foundry::kInspector), settings()));
}

void BusyArchive::endorse(std::int64_t number) {
    must(endorseCertificate(archive_, number, person(foundry::kThirdParty), settings()));
}

void BusyArchive::release(std::int64_t number) {
    must(releaseCertificate(archive_, number, person(foundry::kQaManager), settings()));
}

void BusyArchive::live() {
    const auto qaManager = person(foundry::kQaManager);
    // Returned, then released, then superseded.
    signedCasting("Q-1", "O-31");
    must(model::returnCasting(archive_, present("Q-1"), "the lamp was not checked", qaManager));
    signAll("Q-1");
    release(present("Q-1"));
    must(model::reopen(archive_, "Q-1", "wrong heat number", qaManager));
    signAll("Q-1");
    release(present("Q-1"));
    // Of type 3.2, with an invalid examination; released and withdrawn.
    signedCasting("Q-2", "O-32");
    model::ExaminationDraft again = draftOf("Q-2", "Z1");
    again.header.repeat = 1;
    const auto saved = must(archive_.save(again, actor_));
    const auto inspector = person(foundry::kInspector);
    const auto second =
        must(model::signRecord(archive_, saved.id, saved.version, std::nullopt, inspector));
    must(
        model::invalidateRecord(archive_, second, "the lamp was broken", person(foundry::kLevel3)));
    const std::int64_t thirdParty = present("Q-2");
    endorse(thirdParty);
    release(thirdParty);
    must(model::withdraw(archive_, thirdParty, "issued for the wrong order", qaManager));
    // Rejected by a person, and not acceptable by its rules.
    signedCasting("Q-3", "O-31");
    must(model::reopen(archive_, "Q-3", "look again", qaManager));
    signAll("Q-3", "torn surface");
    release(present("Q-3"));
    signedCasting("Q-4", "O-31", "19");
    stateSeries("Q-4", "Q-4, Q-41, Q-42");
    release(present("Q-4"));
    // One of each type waits; a number was never used.
    signedCasting("Q-5", "O-31");
    present("Q-5");
    signedCasting("Q-6", "O-32");
    endorse(present("Q-6"));
    must(archive_.reserveCertificateNumber(actor_));
    makeDrafts();
    keepRegisters();
    disposeOfOne();
    lookAfterPeople();
}

void BusyArchive::disposeOfOne() {
    const auto qaManager = person(foundry::kQaManager);
    model::Order order = must(archive_.order("O-31")).value;
    order.number = "O-7";
    must(archive_.save(order, 0, actor_));
    signedCasting("Q-7", "O-7");
    const std::int64_t number = present("Q-7");
    release(number);
    must(model::keepUntil(archive_, "O-7", "2026-12-31", "", qaManager));
    must(model::keepUntil(archive_, "O-31", "2036-12-31", "", qaManager));
    must(model::hold(archive_, "O-31", "a claim is open", qaManager));
    clock_.advance(std::chrono::days(60));
    must(model::dispose(archive_, number, "its time is over", qaManager));
}

void BusyArchive::makeDrafts() {
    model::Order order{"O-9",
                       "Second Buyer",
                       "SB 1",
                       "3.1",
                       "en",
                       {model::Kind::HotTear, model::Kind::Crack},
                       "simple acceptance",
                       "half up",
                       "witness point"};
    must(archive_.save(order, 0, actor_));
    must(archive_.save(
        model::Part{"P-9", "Valve body", "D-9", "C", model::Material::CastSteel, "GE300"}, 0,
        actor_));
    must(archive_.add(plan("P-9", roundSurface()), actor_));
    for (const char* serial : {"Q-8", "Q-9"})
        must(archive_.save(model::Casting{serial, "H 9", "O-9", "P-9", 1}, 0, actor_));
    model::ExaminationDraft draft = draftOf("Q-9", "Z1");
    draft.header.surface = roundSurface();
    draft.header.noIndications = false;
    draft.header.forbiddenKinds = {model::Kind::Chaplet, model::Kind::Crack};
    draft.header.notExamined = {{model::squareMillimetres(400), "riser stub", "A-1"},
                                {model::squareMillimetres(1), "stamp", ""}};
    draft.remarks = "UV-A";
    model::TypedIndication inch = typed("2", "5/64");
    inch.unit = model::LengthUnit::Inch;
    inch.x = " 1 3/8 ";
    inch.width = "";
    inch.removed = "1/64";
    inch.angle = "-30,5";
    inch.area = "1.20";
    inch.kind = "hot tear";
    inch.stated = "linear";
    inch.relevance = "non-relevant";
    inch.reason = "scale mark";
    draft.rows = {typed("1", "3"), inch, typed("3", "?")};
    const auto saved = must(archive_.save(draft, actor_));
    draft.id = saved.id;
    draft.version = saved.version;
    draft.rows.erase(draft.rows.begin());
    draft.rows.push_back(typed("4", "4.5"));
    must(archive_.save(draft, actor_));
    must(archive_.save(draftOf("Q-8", "Z2"), actor_));
    makeUltrasonicDraft();
}

void BusyArchive::makeUltrasonicDraft() {
    model::ExaminationDraft draft = draftOf("Q-9", "Z2");
    draft.header.method = model::Method::Ultrasonic;
    draft.header.noIndications = false;
    draft.header.ultrasonic = {model::squareMillimetres(90'000),
                               model::Testability{model::millimetres(3), model::decibels(12)},
                               model::millimetres(10),
                               {"from the flange", "from the bore"}};
    model::TypedSetting other;
    other.name = "S24";
    other.diameter = "?";
    draft.settings = {foundry::filledSetting(), other};
    model::TypedReflector started;
    started.id = "u2";
    started.soundPath = "70";
    draft.reflectors = {foundry::filledReflector(), started};
    const auto saved = must(archive_.save(draft, actor_));
    draft.id = saved.id;
    draft.version = saved.version;
    draft.settings.pop_back();
    draft.reflectors.insert(draft.reflectors.begin(), started);
    must(archive_.save(draft, actor_));
    draft = draftOf("Q-8", "Z1");
    draft.header.method = model::Method::Ultrasonic;
    draft.settings = {other};
    must(archive_.save(draft, actor_));
}

void BusyArchive::lookAfterPeople() {
    const auto administrator = person(foundry::kAdministrator);
    must(model::withdrawIdentity(archive_, foundry::kTrainee,
                                 model::RevocationReason::PositionChanged, "left the shop",
                                 foundry::authorityPassphrase(), administrator));
    must(model::withdrawIdentity(archive_, foundry::kWorksManager,
                                 model::RevocationReason::KeyCompromise, "passphrase was seen",
                                 foundry::authorityPassphrase(), administrator));
    model::AuthorityRequest request = foundry::authorityRequest();
    request.name = "First Buyer inspection authority";
    request.organisation = "First Buyer";
    const auto other = must(model::Authority::create(request, foundry::passphrase()));
    must(model::trustAuthority(archive_, other.certificates.front(), administrator));
    // Counted, with its time.
    if (model::signIn(archive_, foundry::kAuditor, model::SecretBytes("not this one")))
        throw std::runtime_error("a wrong passphrase opened a key");
}

}  // namespace app
