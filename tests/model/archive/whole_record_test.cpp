// SPDX-License-Identifier: Apache-2.0
// What orders, parts, zones, castings and examinations hold beyond their columns comes back as it
// was given, and what was altered is found.
#include <filesystem>

#include "foundry/filled.h"
#include "register_fixture.h"

namespace model {
namespace {

using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::SizeIs;

class WholeRecord : public RegisterTest {
protected:
    static Order filledOrder() {
        Order order = sampleOrder();
        order.number = "O-2";
        order.terms = foundry::filledTerms();
        return order;
    }
    static Part filledPart() {
        Part part = samplePart();
        part.number = "P-2";
        part.pattern = "M 12";
        part.mass = "1 250 kg";
        return part;
    }
    static ZonePlan filledPlan() {
        ZonePlan plan = samplePlan();
        plan.part = "P-2";
        plan.zones[0].drawingMinimum = nanometres(38'500'001);
        plan.zones[0].otherTests = {"radiographic", "visual"};
        return plan;
    }
    static Casting filledCasting() {
        Casting casting = sampleCasting();
        casting.serial = "S-20";
        casting.order = "O-2";
        casting.part = "P-2";
        casting.series = "S-20, S-21, S-22";
        casting.marking = "H 204 cast on";
        casting.conditionOnReceipt = "blasted, dry";
        return casting;
    }
    static ExaminationDraft filledDraft() {
        ExaminationDraft draft = sampleUltrasonicDraft();
        draft.casting = "S-20";
        draft.conditions = foundry::filledConditions();
        return draft;
    }
    void fillWhole() {
        ASSERT_THAT(archive_->save(filledOrder(), 0, actor_), Succeeds());
        ASSERT_THAT(archive_->save(filledPart(), 0, actor_), Succeeds());
        ASSERT_THAT(archive_->add(filledPlan(), actor_), Succeeds());
        ASSERT_THAT(archive_->save(filledCasting(), 0, actor_), Succeeds());
        const auto saved = archive_->save(filledDraft(), actor_);
        ASSERT_THAT(saved, Succeeds());
        id_ = saved->id;
    }

    std::int64_t id_ = 0;
};

TEST_F(WholeRecord, ComesBackAsItWasGiven) {
    fillWhole();
    const auto file = reopened().casting("S-20");
    ASSERT_THAT(file, Succeeds());
    EXPECT_EQ(file->order.terms, filledOrder().terms);
    EXPECT_EQ(file->part.pattern, "M 12");
    EXPECT_EQ(file->part.mass, "1 250 kg");
    EXPECT_EQ(file->plan.zones[0].drawingMinimum, nanometres(38'500'001));
    EXPECT_THAT(file->plan.zones[0].otherTests, ElementsAre("radiographic", "visual"));
    EXPECT_EQ(file->plan.zones[1].drawingMinimum, std::nullopt);
    EXPECT_EQ(file->casting.series, "S-20, S-21, S-22");
    EXPECT_EQ(file->casting.marking, "H 204 cast on");
    EXPECT_EQ(file->casting.conditionOnReceipt, "blasted, dry");
    ASSERT_THAT(file->examinations, SizeIs(1));
    EXPECT_EQ(file->examinations[0].conditions, filledDraft().conditions);
    EXPECT_EQ(file->examinations[0].reflectors, filledDraft().reflectors);
    EXPECT_THAT(findings(), IsEmpty());
}

TEST_F(WholeRecord, CanBeChangedAndTakenBack) {
    fillWhole();
    Order order = filledOrder();
    order.terms = {};
    ASSERT_THAT(archive_->save(order, 1, actor_), Succeeds());
    Casting casting = filledCasting();
    casting.series.clear();
    ASSERT_THAT(archive_->save(casting, 1, actor_), Succeeds());
    ExaminationDraft draft = *archive_->draft(id_);
    draft.conditions.measurements.pop_back();
    const auto saved = archive_->save(draft, actor_);
    ASSERT_THAT(saved, Succeeds());
    EXPECT_EQ(saved->version, 2);
    EXPECT_EQ(reopened().draft(id_)->conditions, draft.conditions);
    EXPECT_THAT(findings(), IsEmpty());
    // Saving the same changes nothing.
    draft.version = 2;
    EXPECT_EQ(archive_->save(draft, actor_)->version, 2);
    draft.conditions = {};
    EXPECT_EQ(archive_->save(draft, actor_)->version, 3);
    EXPECT_EQ(reopened().draft(id_)->conditions, TestConditions());
    EXPECT_EQ(reopened().order("O-2")->value.terms, OrderTerms());
    EXPECT_EQ(reopened().castingEntry("S-20")->value.series, "");
    EXPECT_THAT(findings(), IsEmpty());
}

// The conditions are told to the history only where they changed, as a list of rows is saved after
// each row.
TEST_F(WholeRecord, IsToldToTheHistoryOnlyWhereItChanged) {
    fillWhole();
    const auto lastBytes = [&] {
        return archive_->history(archive_->head()->sequence)->front().bytes;
    };
    EXPECT_THAT(lastBytes(), HasSubstr("\"conditions\":{"));
    ExaminationDraft draft = *archive_->draft(id_);
    draft.remarks = "other";
    ASSERT_THAT(archive_->save(draft, actor_), Succeeds());
    EXPECT_THAT(lastBytes(), testing::Not(HasSubstr("\"conditions\"")));
    EXPECT_THAT(findings(), IsEmpty());
}

// An archive of nothing but what earlier schemas know writes what they wrote.
TEST_F(WholeRecord, LeavesOutOfTheHistoryWhatIsNotSaid) {
    LifecycleTest::save(draft());
    const auto rows = archive_->history();
    ASSERT_THAT(rows, Succeeds());
    for (const HistoryEntry& entry : *rows)
        for (const char* key : {"terms", "pattern", "series", "other_tests", "conditions",
                                "drawing_minimum_nm", "details"})
            EXPECT_THAT(entry.bytes, testing::Not(HasSubstr("\"" + std::string(key) + "\"")));
}

TEST_F(WholeRecord, RefusesWhatCannotBeStored) {
    Order order = filledOrder();
    order.terms.contact = "\xff";
    EXPECT_THAT(archive_->save(order, 0, actor_), FailsWith(ErrorKind::Input));
    ZonePlan plan = filledPlan();
    plan.part = "P-9";
    plan.revision = 2;
    plan.zones[0].drawingMinimum = Length();
    EXPECT_THAT(archive_->add(plan, actor_), FailsWith(ErrorKind::Input));
}

TEST_F(WholeRecord, NamesWhatItsExaminationsUse) {
    fillWhole();
    for (const char* id : {"E-1", "E-2", "E-3", "E-4"}) {
        auto one = foundry::filled<Equipment>();
        one.id = id;
        ASSERT_THAT(save(one), Succeeds());
    }
    const auto check = [&](const std::string& at, const std::string& kind = "yoke pull") {
        auto one = foundry::filled<EquipmentCheck>();
        one.equipment = "E-1";
        one.check = kind;
        one.at = at;
        return one;
    };
    const std::vector<EquipmentCheck> checks{
        check("2026-11-01T08:00:00Z"),         check("2026-11-22T08:00:00Z"),
        check("2026-11-24T08:00:00Z"),         check("2026-11-24T17:00:00Z"),
        check("2026-11-25T08:00:00Z"),         check("2026-11-26T08:00:00Z"),
        check("2026-10-01T08:00:00Z", "timer")};
    for (const EquipmentCheck& one : checks) ASSERT_THAT(save(one), Succeeds());
    for (const char* revision : {"1", "2"}) {
        Procedure one;
        one.number = "MT-7";
        one.revision = revision;
        one.kind = "procedure";
        one.title = "Castings";
        one.method = "MT";
        one.state = "current";
        ASSERT_THAT(save(one), Succeeds());
        one.number = "MT-70";
        ASSERT_THAT(save(one), Succeeds());
    }
    for (const char* person : {foundry::kInspector, foundry::kLevel3, foundry::kTrainee}) {
        auto one = foundry::filled<Qualification>();
        one.person = person;
        ASSERT_THAT(save(one), Succeeds());
    }
    for (const char* id : {"C-1", "C-2"}) {
        auto one = foundry::filled<Consumable>();
        one.id = id;
        ASSERT_THAT(save(one), Succeeds());
    }
    ExaminationDraft draft = *archive_->draft(id_);
    draft.examinedOn = "2026-11-24";
    draft.conditions = {};
    draft.conditions.procedureNumber = "MT-7";
    draft.conditions.procedureRevision = "2";
    draft.conditions.equipment = "E-1, E-9";
    draft.conditions.consumables = "C-2";
    draft.conditions.evaluatedBy = foundry::kLevel3;
    draft.conditions.measurements.emplace_back().instrument = "E-2";
    draft.conditions.settingChecks.emplace_back().block = "E-3";
    ASSERT_THAT(archive_->save(draft, actor_), Succeeds());
    const auto file = reopened().casting("S-20");
    ASSERT_THAT(file, Succeeds());
    const Holdings& used = file->used;
    const auto idsOf = [](const auto& list) {
        std::vector<std::string> ids;
        for (const auto& one : list) ids.push_back(keyOf(one));
        return ids;
    };
    EXPECT_THAT(idsOf(used.equipment), ElementsAre("E-1", "E-2", "E-3"));
    EXPECT_THAT(idsOf(used.consumables), ElementsAre("C-2"));
    EXPECT_THAT(idsOf(used.procedures), ElementsAre("MT-7 / 1", "MT-7 / 2"));
    ASSERT_THAT(used.qualifications, SizeIs(1));
    EXPECT_EQ(used.qualifications[0].person, foundry::kLevel3);
    // Of the checks those around the day, and the ones next to them of each kind.
    EXPECT_THAT(used.checks, testing::UnorderedElementsAre(checks[1], checks[2], checks[3],
                                                           checks[4], checks[5], checks[6]));
}

TEST_F(WholeRecord, IsFoundWhereItWasAltered) {
    fillWhole();
    archive_.reset();
    const std::string original = pathOf("original");
    std::filesystem::copy_file(path(), original);
    const struct {
        const char* sql;
        const char* finding;
    } alterations[] = {
        {"UPDATE customer_order SET details = '{}' WHERE number = 'O-2'", "order O-2: is not what"},
        {"UPDATE customer_order SET details = replace(details, 'the contact', 'x')",
         "order O-2: is not what"},
        {"UPDATE customer_order SET details = '{\"contact\":\"x\"}' WHERE number = 'O-1'",
         "order O-1: is not what"},
        {"UPDATE customer_order SET details = '{\"else\":\"x\"}' WHERE number = 'O-1'",
         "order O-1: has details that are not understood"},
        {"UPDATE customer_order SET details = 'x' WHERE number = 'O-1'",
         "order O-1: has details that are not understood"},
        {"UPDATE part SET details = replace(details, 'M 12', 'M 13')", "part P-2: is not what"},
        {"UPDATE part SET details = '{\"mass\":1}' WHERE number = 'P-2'",
         "part P-2: has details that are not understood"},
        {"UPDATE planned_zone SET details = replace(details, '38500001', '28500001')",
         "zone plan of P-2 revision 1: is not what"},
        {"UPDATE planned_zone SET details = replace(details, ',\"visual\"', '')",
         "zone plan of P-2 revision 1: is not what"},
        {"UPDATE planned_zone SET details = '{}' WHERE part_number = 'P-2'",
         "zone plan of P-2 revision 1: is not what"},
        {"UPDATE casting SET details = replace(details, 'S-22', 'S-23')",
         "casting S-20: is not what"},
        {"UPDATE casting SET details = '{}' WHERE serial = 'S-20'", "casting S-20: is not what"},
        {"UPDATE examination SET details = replace(details, 'half-typed', 'typed')",
         "examination 1, test conditions: is not what"},
        {"UPDATE examination SET details = '{}'", "examination 1, test conditions: is not what"},
        {"UPDATE examination SET details = '{\"rows\":[]}'",
         "examination 1: has details that are not understood"},
        {"UPDATE reflector SET after_check = '9' WHERE position = 1",
         "examination 1, reflector 1: is not what"},
    };
    for (const auto& [sql, finding] : alterations) {
        std::filesystem::copy_file(original, path(),
                                   std::filesystem::copy_options::overwrite_existing);
        alter(sql);
        EXPECT_THAT(findings(), Contains(HasSubstr(finding))) << sql;
    }
}

}  // namespace
}  // namespace model
