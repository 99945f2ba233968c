// SPDX-License-Identifier: Apache-2.0
#include "lifecycle_fixture.h"

#include <filesystem>

namespace model {
namespace {

constexpr char kTable[] = "EN 1369:2012";
const std::map<std::string, std::string> kLevels{
    {"non-linear", "SM 2"}, {"linear", "LM 4"}, {"aligned", "AM 4"}};

}  // namespace

void LifecycleTest::order(const std::string& certificateType) {
    Order order = sampleOrder();
    order.certificateType = certificateType;
    order.forbiddenKinds.clear();
    ASSERT_THAT(archive_->save(order, 0, actor_), Succeeds());
    ASSERT_THAT(archive_->save(samplePart(), 0, actor_), Succeeds());
    PlannedZone zone;
    zone.name = "Z1";
    zone.width = millimetres(600);
    zone.height = millimetres(400);
    zone.thickness = millimetres(40);
    zone.tests = {{Method::Magnetic, Stage::FinishMachined, kTable, kLevels}};
    ASSERT_THAT(archive_->add(ZonePlan{"P-9", 1, {zone}}, actor_), Succeeds());
    ASSERT_THAT(archive_->save(sampleCasting(), 0, actor_), Succeeds());
}

ExaminationDraft LifecycleTest::draft(const std::string& length) const {
    ExaminationDraft draft;
    draft.casting = "S-17";
    draft.header.zone = "Z1";
    draft.header.method = Method::Magnetic;
    draft.header.stage = Stage::FinishMachined;
    draft.header.thickness = millimetres(40);
    draft.header.table = kTable;
    draft.header.levels = kLevels;
    draft.header.noIndications = length.empty();
    draft.examinedBy = "Ilse Bröker";
    draft.examinedOn = "2026-11-24";
    if (length.empty()) return draft;
    TypedIndication row = typedRow("1", "100");
    row.length = length;
    draft.rows = {row};
    return draft;
}

std::int64_t LifecycleTest::save(const ExaminationDraft& draft) {
    const auto saved = archive_->save(draft, actor_);
    EXPECT_THAT(saved, Succeeds());
    return saved ? saved->id : 0;
}

std::int64_t LifecycleTest::sign(std::int64_t draftId, const SignedIn& by) {
    const auto draft = archive_->draft(draftId);
    EXPECT_THAT(draft, Succeeds());
    if (!draft) return 0;
    const auto record = signRecord(*archive_, draftId, draft->version, std::nullopt, by);
    EXPECT_THAT(record, Succeeds());
    return record ? *record : 0;
}

void LifecycleTest::attestTable() {
    const auto tables = archive_->tables();
    ASSERT_THAT(tables, Succeeds());
    ASSERT_THAT(attest(*archive_, tables->find(kTable)->digest, "library copy 3", qaManager_),
                Succeeds());
}

void LifecycleTest::signedCasting(const std::string& certificateType, const std::string& length) {
    order(certificateType);
    sign(save(draft(length)));
    attestTable();
}

std::int64_t LifecycleTest::present() {
    const auto prepared = prepare(*archive_, "S-17", inspector_);
    EXPECT_THAT(prepared, Succeeds());
    if (!prepared) return 0;
    EXPECT_THAT(model::present(*archive_, *prepared, presentedPdf(), inspector_), Succeeds());
    return prepared->number();
}

std::int64_t LifecycleTest::presentedCasting(const std::string& certificateType,
                                             const std::string& length) {
    signedCasting(certificateType, length);
    return present();
}

SignedIn LifecycleTest::withRoles(const std::string& personId, const std::set<Role>& roles) {
    auto person = model::person(*archive_, personId);
    EXPECT_THAT(person, Succeeds());
    person->value.roles = roles;
    person->value.body = roles.contains(Role::ThirdParty) ? "First Buyer" : "";
    EXPECT_THAT(savePerson(*archive_, person->value, person->version, administrator()), Succeeds());
    return signedIn(personId);
}

std::string LifecycleTest::followingPdf(std::int64_t number, const std::string& by) const {
    const auto before = presentedFile(*archive_, number);
    return (before ? *before : "") + "and by the " + by + "\n";
}

std::vector<Obstacle::Kind> LifecycleTest::obstacleKinds(std::int64_t number,
                                                         const SignedIn& by) const {
    const auto found = obstacles(*archive_, number, by.person());
    EXPECT_THAT(found, Succeeds());
    std::vector<Obstacle::Kind> kinds;
    if (found)
        for (const Obstacle& obstacle : *found) kinds.push_back(obstacle.kind);
    return kinds;
}

std::size_t LifecycleTest::filesStored() const {
    std::size_t count = 0;
    if (!std::filesystem::exists(path() + ".files")) return 0;
    for (const auto& entry : std::filesystem::recursive_directory_iterator(path() + ".files"))
        if (entry.is_regular_file()) ++count;
    return count;
}

}  // namespace model
