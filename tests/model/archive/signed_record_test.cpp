// SPDX-License-Identifier: Apache-2.0
#include <nlohmann/json.hpp>

#include "lifecycle_fixture.h"

namespace model {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::SizeIs;

class SignedRecords : public LifecycleTest {
protected:
    void SetUp() override { order(); }

    [[nodiscard]] Result<std::int64_t> reject(std::int64_t draftId, const SignedIn& by,
                                              const std::string& reason = "looks torn") {
        return signRecord(*archive_, draftId, 1, Rejection{reason}, by);
    }
    [[nodiscard]] Word wordForCasting() {
        const auto prepared = prepare(*archive_, "S-17", inspector_);
        EXPECT_THAT(prepared, Succeeds());
        return prepared ? prepared->facts().verdict : Word::NotJudged;
    }
    /// A clean examination of Z1 as a repeat without repair.
    [[nodiscard]] ExaminationDraft repeated() const {
        ExaminationDraft second = draft();
        second.header.repeat = 1;
        return second;
    }
};

TEST_F(SignedRecords, HoldAllThatWasTypedAndHowItWasJudged) {
    const std::int64_t id = save(draft("6"));
    const std::int64_t recordId = sign(id);
    const auto record = signedRecord(*archive_, recordId);
    ASSERT_THAT(record, Succeeds());
    EXPECT_EQ(record->examination, id);
    EXPECT_EQ(record->revision, 1);
    EXPECT_EQ(record->casting, "S-17");
    EXPECT_EQ(record->word, Word::Acceptable);
    EXPECT_EQ(record->recorded.person, foundry::kInspector);
    EXPECT_EQ(record->recorded.name, "Ilse Bröker");
    EXPECT_EQ(record->recorded.time, "2026-11-25T09:30:00Z");
    EXPECT_EQ(record->recorded.sequence, recordId);
    EXPECT_EQ(record->invalid, std::nullopt);
    EXPECT_EQ(record->givenBack, std::nullopt);

    // Read by another JSON reader.
    const auto bytes = signedRecordContent(*archive_, recordId);
    ASSERT_THAT(bytes, Succeeds());
    const auto content = nlohmann::json::parse(*bytes);
    EXPECT_EQ(content["format"], "fettlemark-record/1");
    EXPECT_EQ(content["header"]["zone"], "Z1");
    EXPECT_EQ(content["header"]["examined_on"], "2026-11-24");
    EXPECT_EQ(content["rows"][0]["length"], "6");
    EXPECT_EQ(content["order"]["number"], "O-1");
    EXPECT_EQ(content["casting"]["serial"], "S-17");
    EXPECT_EQ(content["word"], "acceptable");
    EXPECT_EQ(content["judged"]["table"], "EN 1369:2012");
    EXPECT_EQ(content["judged"]["table_sha256"], archive_->tables()->find("EN 1369:2012")->digest);
    EXPECT_EQ(content["inspector"]["level"], 2);
    // LM 4 allows a single length of 10 mm and a sum of 18 mm (EN 1369:2012, Table 2; grade M).
    bool found = false;
    for (const auto& check : content["judged"]["checks"])
        if (check["rule"] == "individual length" && check["measured"] == "6") {
            found = true;
            EXPECT_EQ(check["limit"], "10");
            EXPECT_EQ(check["passes"], true);
        }
    EXPECT_TRUE(found) << *bytes;
    EXPECT_THAT(findings(), IsEmpty());
}

TEST_F(SignedRecords, AreNoLongerDrafts) {
    const std::int64_t id = save(draft());
    sign(id);
    ExaminationDraft changed = *archive_->draft(id);
    changed.remarks = "an afterthought";
    const auto saved = archive_->save(changed, actor_);
    ASSERT_THAT(saved, FailsWith(ErrorKind::Input));
    EXPECT_THAT(saved.error().message(), HasSubstr("Ilse Bröker signed this one at 2026-11-25"));
    // A window that saves what was not touched is not troubled.
    EXPECT_THAT(archive_->save(*archive_->draft(id), actor_), Succeeds());
    EXPECT_EQ(archive_->draft(id)->remarks, "");
    const auto states = examinationStates(*archive_, "S-17");
    ASSERT_THAT(states, Succeeds());
    ASSERT_THAT(*states, SizeIs(1));
    ASSERT_NE((*states)[0].standing(), nullptr);
    EXPECT_THAT(examinationStates(*archive_, "S-18"), FailsWith(ErrorKind::Input));
}

TEST_F(SignedRecords, AreSignedByInspectorsOnly) {
    const std::int64_t id = save(draft());
    for (const SignedIn* other : {&qaManager_, &thirdParty_})
        EXPECT_THAT(signRecord(*archive_, id, 1, std::nullopt, *other),
                    FailsWith(ErrorKind::Refused));
    const SignedIn auditor = signedIn(foundry::kAuditor);
    EXPECT_THAT(signRecord(*archive_, id, 1, std::nullopt, auditor), FailsWith(ErrorKind::Refused));
    EXPECT_EQ(examinationStates(*archive_, "S-17")->at(0).standing(), nullptr);
}

TEST_F(SignedRecords, AreSignedAsTheyWereSeen) {
    const std::int64_t id = save(draft());
    ExaminationDraft changed = *archive_->draft(id);
    changed.remarks = "saved meanwhile";
    Archive other = reopened();
    ASSERT_THAT(other.save(changed, actor_), Succeeds());
    EXPECT_THAT(signRecord(*archive_, id, 1, std::nullopt, inspector_),
                FailsWith(ErrorKind::Conflict));
    ASSERT_THAT(signRecord(*archive_, id, 2, std::nullopt, inspector_), Succeeds());
    // And once: another program that still shows it as a draft.
    const auto twice = signRecord(other, id, 2, std::nullopt, level3_);
    ASSERT_THAT(twice, FailsWith(ErrorKind::Conflict));
    EXPECT_THAT(twice.error().message(), HasSubstr("signed already, by Ilse Bröker"));
    EXPECT_THAT(signRecord(*archive_, 99, 1, std::nullopt, inspector_),
                FailsWith(ErrorKind::Input));
    EXPECT_THAT(findings(), IsEmpty());
}

TEST_F(SignedRecords, AreNotHeldUpByWhatOthersAreTyping) {
    const std::int64_t mine = save(draft());
    ExaminationDraft typing = draft("3");
    typing.rows[0].width = "0.";
    typing.header.zone = "Z2";
    const std::int64_t theirs = save(typing);
    const std::int64_t record = sign(mine);
    const auto content = nlohmann::json::parse(*signedRecordContent(*archive_, record));
    EXPECT_THAT(content["judged_with"], IsEmpty());
    // Their own half-typed row is not signed.
    const auto refused = signRecord(*archive_, theirs, 1, std::nullopt, inspector_);
    ASSERT_THAT(refused, FailsWith(ErrorKind::Input));
    EXPECT_THAT(refused.error().message(), HasSubstr("zone Z2"));
}

TEST_F(SignedRecords, AreRejectedByLevel2AndAboveWithAReason) {
    const std::int64_t id = save(draft());
    const SignedIn trainee = signedIn(foundry::kTrainee);
    const auto refused = reject(id, trainee);
    ASSERT_THAT(refused, FailsWith(ErrorKind::Refused));
    EXPECT_THAT(refused.error().message(), HasSubstr("Level 2 in MT"));
    EXPECT_THAT(reject(id, inspector_, "  "), FailsWith(ErrorKind::Input));
    const auto record = reject(id, inspector_, " looks torn ");
    ASSERT_THAT(record, Succeeds());
    EXPECT_EQ(signedRecord(*archive_, *record)->word, Word::NotAcceptable);
    EXPECT_EQ(signedRecord(*archive_, *record)->recorded.reason, "looks torn");
    const auto content = nlohmann::json::parse(*signedRecordContent(*archive_, *record));
    EXPECT_EQ(content["judged"]["word"], "acceptable");
    EXPECT_EQ(content["word"], "not acceptable");
    EXPECT_EQ(content["rejection"], "looks torn");
    EXPECT_EQ(archive_->casting("S-17")->examinations[0].header.rejected,
              (Objection{"Ilse Bröker", "looks torn"}));
    EXPECT_EQ(wordForCasting(), Word::NotAcceptable);
}

TEST_F(SignedRecords, AreNotRejectedInAMethodOfNoLevel) {
    ExaminationDraft penetrant = draft();
    penetrant.header.method = Method::Penetrant;
    penetrant.header.table = "EN 1371-1:2011";
    penetrant.header.levels = {{"linear", "LP 3"}};
    const std::int64_t id = save(penetrant);
    // The trainee has Level 1 in MT and none in PT.
    EXPECT_THAT(reject(id, signedIn(foundry::kTrainee)), FailsWith(ErrorKind::Refused));
    EXPECT_THAT(reject(id, level3_), Succeeds());
}

TEST_F(SignedRecords, BecomeNoBetterByAnything) {
    const std::int64_t bad = save(draft("30"));
    EXPECT_EQ(signedRecord(*archive_, sign(bad))->word, Word::NotAcceptable);
    EXPECT_EQ(wordForCasting(), Word::NotAcceptable);
    ExaminationDraft open = draft();
    open.header.noIndications = false;
    open.header.repairCycle = 1;
    EXPECT_EQ(signedRecord(*archive_, sign(save(open)))->word, Word::NotJudged);
    EXPECT_EQ(wordForCasting(), Word::NotJudged);
    // What is stated in a draft's header is no signed statement.
    ExaminationDraft stated = draft();
    stated.header.repairCycle = 2;
    stated.header.invalid = Objection{"nobody", "so there"};
    stated.header.rejected = Objection{"nobody", "so there"};
    const std::int64_t id = save(stated);
    EXPECT_EQ(archive_->draft(id)->header.invalid, std::nullopt);
    EXPECT_EQ(archive_->draft(id)->header.rejected, std::nullopt);
}

TEST_F(SignedRecords, OfARepeatTheWorseStandsUntilALevel3SignsWhy) {
    const std::int64_t first = sign(save(draft("30")));
    const std::int64_t second = sign(save(repeated()));
    EXPECT_EQ(wordForCasting(), Word::NotAcceptable);

    const std::string why = "contrast paint left out";
    const auto refused = invalidateRecord(*archive_, first, why, inspector_);
    ASSERT_THAT(refused, FailsWith(ErrorKind::Refused));
    EXPECT_THAT(refused.error().message(), HasSubstr("Level 3 in MT"));
    EXPECT_THAT(invalidateRecord(*archive_, first, why, qaManager_), FailsWith(ErrorKind::Refused));
    EXPECT_THAT(invalidateRecord(*archive_, first, " ", level3_), FailsWith(ErrorKind::Input));
    EXPECT_THAT(invalidateRecord(*archive_, 1, why, level3_), FailsWith(ErrorKind::Input));
    EXPECT_EQ(wordForCasting(), Word::NotAcceptable);

    ASSERT_THAT(invalidateRecord(*archive_, first, why, level3_), Succeeds());
    EXPECT_EQ(signedRecord(*archive_, first)->invalid->name, "Otto Sandmann");
    EXPECT_EQ(signedRecord(*archive_, first)->invalid->reason, why);
    const auto prepared = prepare(*archive_, "S-17", inspector_);
    ASSERT_THAT(prepared, Succeeds());
    EXPECT_EQ(prepared->facts().verdict, Word::Acceptable);
    // Both are there to be printed.
    ASSERT_THAT(prepared->verdict().examinations, SizeIs(2));
    EXPECT_EQ(prepared->verdict().examinations[0].word, Word::NotAcceptable);
    EXPECT_EQ(prepared->verdict().examinations[0].invalid, (Objection{"Otto Sandmann", why}));
    EXPECT_EQ(prepared->records()[0].invalid->reason, why);
    // Once, and never the last valid one.
    EXPECT_THAT(invalidateRecord(*archive_, first, why, level3_), FailsWith(ErrorKind::Conflict));
    EXPECT_THAT(invalidateRecord(*archive_, second, why, level3_), FailsWith(ErrorKind::Input));
    EXPECT_THAT(findings(), IsEmpty());
}

TEST_F(SignedRecords, AreNotInvalidWithoutAnotherOfTheSameRepairCycle) {
    const std::int64_t first = sign(save(draft("30")));
    ExaminationDraft unsignedOne = repeated();
    save(unsignedOne);
    EXPECT_THAT(invalidateRecord(*archive_, first, "why", level3_), FailsWith(ErrorKind::Input));
    ExaminationDraft repaired = draft();
    repaired.header.repairCycle = 1;
    sign(save(repaired));
    EXPECT_THAT(invalidateRecord(*archive_, first, "why", level3_), FailsWith(ErrorKind::Input));
}

TEST_F(SignedRecords, AreRefusedOnceThePersonMayNoLongerSign) {
    const std::int64_t id = save(draft());
    clock_.set(foundry::validUntil() + std::chrono::days(1));
    EXPECT_THAT(signRecord(*archive_, id, 1, std::nullopt, inspector_),
                FailsWith(ErrorKind::Refused));
    clock_.set(foundry::madeAt());
    // Changed since the sign-in.
    withRoles(foundry::kInspector, {Role::Auditor});
    EXPECT_THAT(signRecord(*archive_, id, 1, std::nullopt, inspector_),
                FailsWith(ErrorKind::Refused));
    EXPECT_EQ(examinationStates(*archive_, "S-17")->at(0).standing(), nullptr);
}

}  // namespace
}  // namespace model
