// SPDX-License-Identifier: Apache-2.0
// A test that was not valid is not signed; what was said of one that is signed is frozen with it.
#include "archive/test_validity.h"

#include <nlohmann/json.hpp>

#include "register_fixture.h"

namespace model {
namespace {

using testing::Contains;
using testing::ElementsAre;
using testing::Field;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::SizeIs;

class TestValidity : public RegisterTest {
protected:
    /// Everything that a test of 2026-11-24 by the inspector needs, by a procedure that names no
    /// sets of limits.
    void entitle() {
        Procedure procedure;
        procedure.number = "MT-7";
        procedure.revision = "2";
        procedure.kind = "procedure";
        procedure.title = "Castings";
        procedure.method = "MT";
        procedure.approvedBy = foundry::kLevel3;
        procedure.approvedOn = "2026-01-15";
        procedure.state = "current";
        ASSERT_THAT(save(procedure), Succeeds());
        ASSERT_THAT(save(certificate()), Succeeds());
        for (const char* kind : {"near vision", "colour perception"}) {
            EyeTest sight;
            sight.person = foundry::kInspector;
            sight.kind = kind;
            sight.testedOn = "2026-03-02";
            sight.result = "passed";
            ASSERT_THAT(save(sight), Succeeds());
        }
        Authorisation permission;
        permission.person = foundry::kInspector;
        permission.method = "MT";
        permission.grantedOn = "2025-06-01";
        permission.by = foundry::kQaManager;
        permission.state = "valid";
        ASSERT_THAT(save(permission), Succeeds());
    }
    [[nodiscard]] static Qualification certificate(const std::string& state = "valid") {
        Qualification one;
        one.person = foundry::kInspector;
        one.method = "MT";
        one.certificate = "C 204";
        one.scheme = "ISO 9712:2021";
        one.level = "2";
        one.sector = "castings";
        one.issuedOn = "2025-05-20";
        one.expiresOn = "2030-05-19";
        one.state = state;
        return one;
    }
    /// A draft by that procedure.
    [[nodiscard]] ExaminationDraft byProcedure() const {
        ExaminationDraft one = draft();
        one.conditions.procedureNumber = "MT-7";
        one.conditions.procedureRevision = "2";
        return one;
    }
    /// Stores a draft with a reason typed for whatever only warns; its id.
    std::int64_t saveAcknowledged(ExaminationDraft one, const std::string& reason = "seen") {
        const auto said = validityOf(*archive_, one, foundry::kInspector);
        EXPECT_THAT(said, Succeeds());
        if (!said) return 0;
        for (const ConditionFinding& finding : *said)
            if (finding.stands() && finding.reaction == Reaction::Warn)
                one.conditions.acknowledgements.push_back({finding.id, reason, foundry::kLevel3});
        return LifecycleTest::save(one);
    }
    [[nodiscard]] Result<std::int64_t> signIt(std::int64_t id) {
        return signRecord(*archive_, id, archive_->draft(id)->version, std::nullopt, inspector_);
    }
    [[nodiscard]] nlohmann::json contentOf(std::int64_t record) const {
        return nlohmann::json::parse(*signedRecordContent(*archive_, record));
    }
};

TEST_F(TestValidity, OfADraftThatStatesNoConditionsIsOnlySaid) {
    const auto said = validityOf(*archive_, draft(), foundry::kInspector);
    ASSERT_THAT(said, Succeeds());
    ASSERT_THAT(*said, SizeIs(1));
    EXPECT_TRUE(said->front().onlySaid);
    const std::int64_t record = sign(LifecycleTest::save(draft()));
    const auto test = signedTest(*archive_, record);
    ASSERT_THAT(test, Succeeds());
    EXPECT_EQ(test->conditions, TestConditions());
    EXPECT_EQ(test->testers.examiner, foundry::kInspector);
    EXPECT_EQ(test->used, Holdings());
    ASSERT_THAT(test->findings, SizeIs(1));
    EXPECT_TRUE(test->findings[0].onlySaid);
    EXPECT_FALSE(test->findings[0].stands());
    EXPECT_EQ(test->findings[0].reason.message(), "test conditions not stated");
    EXPECT_THAT(findings(), IsEmpty());
}

TEST_F(TestValidity, ThatIsWantingKeepsItFromBeingSigned) {
    const std::int64_t id = LifecycleTest::save(byProcedure());
    const Head head = *archive_->head();
    const auto refused = signIt(id);
    ASSERT_THAT(refused, FailsWith(ErrorKind::Refused));
    EXPECT_THAT(refused.error().message(), HasSubstr("does not take the record of this test: "));
    EXPECT_EQ(*archive_->head(), head);
    EXPECT_EQ(examinationStates(*archive_, "S-17")->front().standing(), nullptr);
    // What is said before and what refuses are the same.
    const auto said = validityOf(*archive_, byProcedure(), foundry::kInspector);
    ASSERT_THAT(said, Succeeds());
    EXPECT_THAT(refused.error().message(), HasSubstr(said->front().reason.message()));
}

TEST_F(TestValidity, ThatHoldsIsFrozenWithWhatTheRegistersSaid) {
    entitle();
    const std::int64_t id = saveAcknowledged(byProcedure());
    const auto said = validityOf(*archive_, *archive_->draft(id), foundry::kInspector);
    for (const ConditionFinding& finding : *said)
        EXPECT_FALSE(finding.stands()) << finding.reason.message();
    const auto record = signIt(id);
    ASSERT_THAT(record, Succeeds());
    // The registers go on; the record does not.
    ASSERT_THAT(save(certificate("withdrawn"), 1), Succeeds());
    const auto test = signedTest(*archive_, *record);
    ASSERT_THAT(test, Succeeds());
    EXPECT_EQ(test->conditions, archive_->draft(id)->conditions);
    EXPECT_THAT(test->used.qualifications, ElementsAre(certificate()));
    EXPECT_THAT(test->used.eyeTests, SizeIs(2));
    EXPECT_THAT(test->used.authorisations, SizeIs(1));
    ASSERT_THAT(test->used.procedures, SizeIs(1));
    EXPECT_EQ(test->used.procedures[0].approvedBy, foundry::kLevel3);
    EXPECT_EQ(test->findings.size(), said->size());
    // Read by another JSON reader.
    const auto content = contentOf(*record);
    EXPECT_EQ(content["conditions"]["procedure_number"], "MT-7");
    EXPECT_EQ(content["testers"]["examiner"], foundry::kInspector);
    EXPECT_EQ(content["used"]["qualifications"][0]["certificate"], "C 204");
    EXPECT_EQ(content["used"]["qualifications"][0]["state"], "valid");
    EXPECT_EQ(content["condition_sets"][0]["id"], "ISO 9712:2021");
    EXPECT_EQ(content["condition_sets"][0]["sha256"].get<std::string>().size(), 64U);
    const auto prepared = prepare(*archive_, "S-17", inspector_);
    ASSERT_THAT(prepared, Succeeds());
    EXPECT_EQ(prepared->file().used, test->used);
    EXPECT_THAT(findings(), IsEmpty());
}

// An eye test that had expired on the day of the test, though there is a newer one by now.
TEST_F(TestValidity, IsAskedOfTheDayOfTheTest) {
    entitle();
    ExaminationDraft late = byProcedure();
    late.examinedOn = "2027-03-10";
    const std::int64_t id = saveAcknowledged(late);
    EyeTest renewed;
    renewed.person = foundry::kInspector;
    renewed.kind = "near vision";
    renewed.testedOn = "2027-03-11";
    renewed.result = "passed";
    ASSERT_THAT(save(renewed), Succeeds());
    const auto refused = signIt(id);
    ASSERT_THAT(refused, FailsWith(ErrorKind::Refused));
    EXPECT_THAT(refused.error().message(), HasSubstr("near vision"));
    late = *archive_->draft(id);
    late.examinedOn = "2027-03-11";
    ASSERT_THAT(archive_->save(late, actor_), Succeeds());
    EXPECT_THAT(signIt(id), Succeeds());
}

TEST_F(TestValidity, TakesATypedReasonWhereItWarns) {
    entitle();
    // Issued for longer than a certificate of its scheme holds: known from memory, so it warns.
    Qualification longer = certificate();
    longer.expiresOn = "2032-05-19";
    ASSERT_THAT(save(longer, 1), Succeeds());
    const std::int64_t id = LifecycleTest::save(byProcedure());
    ASSERT_THAT(signIt(id), FailsWith(ErrorKind::Refused));
    const auto said = validityOf(*archive_, *archive_->draft(id), foundry::kInspector);
    ExaminationDraft draft = *archive_->draft(id);
    for (const ConditionFinding& finding : *said)
        if (finding.stands()) {
            EXPECT_EQ(finding.reaction, Reaction::Warn) << finding.reason.message();
            draft.conditions.acknowledgements.push_back(
                {finding.id, "extended by its body, letter of 2030", foundry::kLevel3});
        }
    ASSERT_FALSE(draft.conditions.acknowledgements.empty());
    ASSERT_THAT(archive_->save(draft, actor_), Succeeds());
    const auto record = signIt(id);
    ASSERT_THAT(record, Succeeds());
    const auto test = signedTest(*archive_, *record);
    ASSERT_THAT(test, Succeeds());
    EXPECT_THAT(test->findings, Contains(Field(&ConditionFinding::acknowledged,
                                               "extended by its body, letter of 2030")));
    const auto prepared = prepare(*archive_, "S-17", inspector_);
    ASSERT_THAT(prepared, Succeeds());
    ASSERT_THAT(prepared->tests(), SizeIs(1));
    EXPECT_EQ(prepared->tests()[0].findings.size(), test->findings.size());
    EXPECT_EQ(prepared->tests()[0].conditions, draft.conditions);
}

}  // namespace
}  // namespace model
