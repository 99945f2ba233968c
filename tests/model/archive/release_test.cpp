// SPDX-License-Identifier: Apache-2.0
#include <filesystem>

#include "lifecycle_fixture.h"

namespace model {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::SizeIs;

using Release = LifecycleTest;

TEST_F(Release, GoesFromDraftToCertificate) {
    signedCasting();
    const auto prepared = prepare(*archive_, "S-17", inspector_);
    ASSERT_THAT(prepared, Succeeds());
    EXPECT_EQ(prepared->number(), 1);
    EXPECT_EQ(prepared->facts().verdict, Word::Acceptable);
    EXPECT_EQ(prepared->facts().serial, "S-17");
    EXPECT_EQ(prepared->facts().heat, "H 204");
    EXPECT_EQ(prepared->facts().type, "3.1");
    EXPECT_EQ(prepared->facts().supersedes, std::nullopt);
    EXPECT_EQ(prepared->facts().printedHead, *archive_->head());
    EXPECT_THAT(prepared->records(), SizeIs(1));
    EXPECT_THAT(*presented(*archive_), IsEmpty());

    ASSERT_THAT(model::present(*archive_, *prepared, presentedPdf(), inspector_), Succeeds());
    const auto queue = presented(*archive_);
    ASSERT_THAT(queue, Succeeds());
    ASSERT_THAT(*queue, SizeIs(1));
    EXPECT_EQ(queue->front().number, 1);
    EXPECT_EQ(queue->front().state(), CertificateState::Waiting);
    EXPECT_EQ(queue->front().presented.person, foundry::kInspector);
    EXPECT_EQ(queue->front().records, std::vector{prepared->records()[0].id});
    EXPECT_EQ(*presentedFile(*archive_, 1), presentedPdf());
    EXPECT_EQ(*presentedSheet(*archive_, 1), prepared->sheetJson());
    EXPECT_EQ(*presentedVerdict(*archive_, 1), prepared->verdictJson());
    EXPECT_THAT(numbersIn(*archive_), IsEmpty());
    EXPECT_THAT(findings(), IsEmpty());

    EXPECT_THAT(obstacleKinds(1, qaManager_), IsEmpty());
    const std::string pdf = releasedPdf(1);
    ASSERT_THAT(release(1, qaManager_), Succeeds());
    EXPECT_THAT(*presented(*archive_), IsEmpty());
    const auto shown = presented(*archive_, 1);
    ASSERT_THAT(shown, Succeeds());
    EXPECT_EQ(shown->state(), CertificateState::Released);
    EXPECT_EQ(shown->released->person, foundry::kQaManager);
    const auto certificate = archive_->certificate(1);
    ASSERT_THAT(certificate, Succeeds());
    EXPECT_EQ(certificate->issuedBy, "Quentin Marsh");
    EXPECT_EQ(certificate->facts.verdict, Word::Acceptable);
    EXPECT_EQ(certificate->facts.printedHead, prepared->facts().printedHead);
    EXPECT_THAT(certificate->facts.tableDigests, SizeIs(1));
    EXPECT_EQ(*archive_->certificateFile(1), pdf);
    EXPECT_THAT(findings(), IsEmpty());
}

TEST_F(Release, NeedsEveryExaminationSigned) {
    order();
    EXPECT_THAT(prepare(*archive_, "S-17", inspector_), FailsWith(ErrorKind::Input));
    EXPECT_THAT(prepare(*archive_, "S-99", inspector_), FailsWith(ErrorKind::Input));
    sign(save(draft()));
    ExaminationDraft other = draft();
    other.header.zone = "Z7";
    const std::int64_t id = save(other);
    const auto refused = prepare(*archive_, "S-17", inspector_);
    ASSERT_THAT(refused, FailsWith(ErrorKind::Input));
    EXPECT_THAT(refused.error().message(), HasSubstr("not signed yet: Z7 MT finish machined"));
    sign(id);
    // A refused one uses up no number.
    EXPECT_EQ(prepare(*archive_, "S-17", inspector_)->number(), 1);
}

TEST_F(Release, IsPreparedByAnInspectorWhoRecordedSomeOfIt) {
    signedCasting();
    for (const SignedIn* other : {&level3_, &qaManager_, &thirdParty_})
        EXPECT_THAT(prepare(*archive_, "S-17", *other), FailsWith(ErrorKind::Refused));
    const auto prepared = prepare(*archive_, "S-17", inspector_);
    ASSERT_THAT(prepared, Succeeds());
    EXPECT_THAT(model::present(*archive_, *prepared, presentedPdf(), level3_),
                FailsWith(ErrorKind::Refused));
    EXPECT_THAT(model::present(*archive_, *prepared, presentedPdf(), qaManager_),
                FailsWith(ErrorKind::Refused));
    EXPECT_THAT(model::present(*archive_, *prepared, "no PDF", inspector_),
                FailsWith(ErrorKind::Input));
    EXPECT_EQ(filesStored(), 0U);
}

TEST_F(Release, IsPresentedOnceAtATime) {
    signedCasting();
    const auto one = prepare(*archive_, "S-17", inspector_);
    Archive other = reopened();
    const auto two = prepare(other, "S-17", inspector_);
    ASSERT_THAT(one, Succeeds());
    ASSERT_THAT(two, Succeeds());
    EXPECT_EQ(two->number(), 2);
    ASSERT_THAT(model::present(*archive_, *one, presentedPdf(), inspector_), Succeeds());
    EXPECT_THAT(model::present(*archive_, *one, presentedPdf(), inspector_),
                FailsWith(ErrorKind::Conflict));
    EXPECT_THAT(model::present(other, *two, presentedPdf() + "2", inspector_),
                FailsWith(ErrorKind::Conflict));
    EXPECT_THAT(prepare(*archive_, "S-17", inspector_), FailsWith(ErrorKind::Conflict));
    EXPECT_EQ(filesStored(), 1U);
    EXPECT_THAT(findings(), IsEmpty());
}

TEST_F(Release, IsNotPresentedWhereSomethingChangedAfterPreparing) {
    signedCasting();
    const auto changed = [&](const auto& change) {
        const auto prepared = prepare(*archive_, "S-17", inspector_);
        ASSERT_THAT(prepared, Succeeds());
        change();
        EXPECT_THAT(model::present(*archive_, *prepared, presentedPdf(), inspector_),
                    FailsWith(ErrorKind::Conflict));
    };
    changed([&] {
        auto order = archive_->order("O-1");
        order->value.customerOrder = "another";
        ASSERT_THAT(archive_->save(order->value, order->version, actor_), Succeeds());
    });
    changed([&] {
        ExaminationDraft more = draft();
        more.header.repeat = 1;
        sign(save(more));
    });
    EXPECT_EQ(filesStored(), 0U);
    EXPECT_THAT(*presented(*archive_), IsEmpty());
}

TEST_F(Release, SaysNotAcceptableWhereItIs) {
    const std::int64_t number = presentedCasting("3.1", "30");
    ASSERT_THAT(release(number, qaManager_), Succeeds());
    EXPECT_EQ(archive_->certificate(number)->facts.verdict, Word::NotAcceptable);
}

TEST_F(Release, TakesTheFileOfBeforeWithASignatureMore) {
    const std::int64_t number = presentedCasting();
    const std::string before = *presentedFile(*archive_, number);
    for (const std::string& pdf :
         {std::string(), before, before.substr(1) + "xx", "%PDF-1.7 another" + before})
        EXPECT_THAT(model::release(*archive_, number, pdf, qaManager_),
                    FailsWith(ErrorKind::Input));
    std::string altered = before + "more";
    altered[10] = '!';
    EXPECT_THAT(model::release(*archive_, number, altered, qaManager_),
                FailsWith(ErrorKind::Input));
    EXPECT_EQ(filesStored(), 1U);
    EXPECT_EQ(presented(*archive_, number)->state(), CertificateState::Waiting);
}

TEST_F(Release, ByTwoQaManagersAtOnceIsOneReleaseAndAConflict) {
    const std::int64_t number = presentedCasting("2.2");
    const SignedIn second = signedIn(foundry::kWorksManager);
    Archive other = reopened();
    // Both have the file as it waits, and sign it.
    const std::string before = *presentedFile(*archive_, number);
    ASSERT_THAT(model::release(*archive_, number, before + "first", qaManager_), Succeeds());
    const auto late = model::release(other, number, before + "second", second);
    ASSERT_THAT(late, FailsWith(ErrorKind::Conflict));
    EXPECT_THAT(late.error().message(), HasSubstr("released already, by Quentin Marsh"));
    EXPECT_THAT(returnCasting(other, number, "too late", second), FailsWith(ErrorKind::Conflict));
    EXPECT_EQ(*archive_->certificateFile(number), before + "first");
    EXPECT_EQ(filesStored(), 2U);
    EXPECT_THAT(findings(), IsEmpty());
}

TEST_F(Release, AfterAReturnIsAConflict) {
    const std::int64_t number = presentedCasting();
    const std::string pdf = releasedPdf(number);
    ASSERT_THAT(returnCasting(*archive_, number, "heat number unreadable", qaManager_), Succeeds());
    EXPECT_THAT(model::release(*archive_, number, pdf, qaManager_), FailsWith(ErrorKind::Conflict));
    EXPECT_THAT(numbersIn(*archive_), IsEmpty());
}

TEST_F(Release, LeavesNothingWhereItsRowCannotBeStored) {
    const std::int64_t number = presentedCasting();
    const Head head = *archive_->head();
    RawDatabase raw(path());
    ASSERT_EQ(raw.run("CREATE TRIGGER refuse BEFORE INSERT ON certificate_table "
                      "BEGIN SELECT RAISE(ABORT, 'not today'); END"),
              SQLITE_OK);
    EXPECT_THAT(release(number, qaManager_), FailsWith(ErrorKind::Refused));
    ASSERT_EQ(raw.run("DROP TRIGGER refuse"), SQLITE_OK);
    EXPECT_EQ(*archive_->head(), head);
    EXPECT_EQ(filesStored(), 1U);
    EXPECT_EQ(presented(*archive_, number)->state(), CertificateState::Waiting);
    EXPECT_THAT(findings(), IsEmpty());
    EXPECT_THAT(release(number, qaManager_), Succeeds());
}

TEST_F(Release, OfAReturnedCastingHasTheNextRevisionAndTheReason) {
    const std::int64_t first = presentedCasting();
    EXPECT_THAT(returnCasting(*archive_, first, "", qaManager_), FailsWith(ErrorKind::Input));
    EXPECT_THAT(returnCasting(*archive_, first, "why", inspector_), FailsWith(ErrorKind::Refused));
    EXPECT_THAT(returnCasting(*archive_, 7, "why", qaManager_), FailsWith(ErrorKind::Input));
    ASSERT_THAT(returnCasting(*archive_, first, "heat number unreadable", qaManager_), Succeeds());
    const auto shown = presented(*archive_, first);
    EXPECT_EQ(shown->state(), CertificateState::Returned);
    EXPECT_EQ(shown->returned->reason, "heat number unreadable");
    EXPECT_EQ(shown->returned->name, "Quentin Marsh");
    EXPECT_THAT(*presented(*archive_), IsEmpty());
    const auto state = examinationStates(*archive_, "S-17")->at(0);
    EXPECT_EQ(state.standing(), nullptr);
    EXPECT_EQ(state.records.at(0).givenBack->reason, "heat number unreadable");

    ExaminationDraft draft = *archive_->draft(1);
    draft.remarks = "heat number seen";
    ASSERT_THAT(archive_->save(draft, actor_), Succeeds());
    const std::int64_t record = sign(1);
    EXPECT_EQ(signedRecord(*archive_, record)->revision, 2);
    const std::int64_t second = present();
    EXPECT_GT(second, first);
    ASSERT_THAT(release(second, qaManager_), Succeeds());
    EXPECT_THAT(archive_->certificate(first), FailsWith(ErrorKind::Input));
    EXPECT_THAT(*presentedOf(*archive_, "S-17"), SizeIs(2));
    EXPECT_THAT(findings(), IsEmpty());
}

TEST_F(Release, ThatWasWithdrawnStaysWithItsReason) {
    const std::int64_t number = presentedCasting();
    EXPECT_THAT(withdraw(*archive_, number, "why", qaManager_), FailsWith(ErrorKind::Input));
    ASSERT_THAT(release(number, qaManager_), Succeeds());
    EXPECT_THAT(withdraw(*archive_, number, " ", qaManager_), FailsWith(ErrorKind::Input));
    EXPECT_THAT(withdraw(*archive_, number, "why", inspector_), FailsWith(ErrorKind::Refused));
    ASSERT_THAT(withdraw(*archive_, number, "wrong casting", qaManager_), Succeeds());
    EXPECT_THAT(withdraw(*archive_, number, "again", qaManager_), FailsWith(ErrorKind::Conflict));
    const auto shown = presented(*archive_, number);
    EXPECT_EQ(shown->state(), CertificateState::Withdrawn);
    EXPECT_EQ(shown->withdrawn->reason, "wrong casting");
    EXPECT_THAT(archive_->certificateFile(number), Succeeds());
    // The records stand: they may be certified anew, instead of the withdrawn one.
    const auto prepared = prepare(*archive_, "S-17", inspector_);
    ASSERT_THAT(prepared, Succeeds());
    EXPECT_EQ(prepared->facts().supersedes, number);
    EXPECT_THAT(findings(), IsEmpty());
}

TEST_F(Release, OfACorrectionSupersedesTheFirst) {
    const std::int64_t first = presentedCasting();
    EXPECT_THAT(reopen(*archive_, "S-17", "typo", qaManager_), FailsWith(ErrorKind::Input));
    ASSERT_THAT(release(first, qaManager_), Succeeds());
    const auto again = prepare(*archive_, "S-17", inspector_);
    ASSERT_THAT(again, FailsWith(ErrorKind::Input));
    EXPECT_THAT(again.error().message(), HasSubstr("certified as it stands, by certificate 1"));
    EXPECT_THAT(reopen(*archive_, "S-17", "typo", inspector_), FailsWith(ErrorKind::Refused));
    EXPECT_THAT(reopen(*archive_, "S-17", "", qaManager_), FailsWith(ErrorKind::Input));
    EXPECT_THAT(reopen(*archive_, "S-99", "typo", qaManager_), FailsWith(ErrorKind::Input));
    ASSERT_THAT(reopen(*archive_, "S-17", "typo in the procedure", qaManager_), Succeeds());
    EXPECT_EQ(presented(*archive_, first)->state(), CertificateState::Released);
    EXPECT_THAT(reopen(*archive_, "S-17", "twice", qaManager_), FailsWith(ErrorKind::Input));
    ExaminationDraft draft = *archive_->draft(1);
    draft.procedure = "MT-07 revision 4";
    ASSERT_THAT(archive_->save(draft, actor_), Succeeds());
    sign(1);
    const std::int64_t second = present();
    EXPECT_EQ(presented(*archive_, second)->facts.supersedes, first);
    ASSERT_THAT(release(second, qaManager_), Succeeds());
    EXPECT_EQ(presented(*archive_, first)->state(), CertificateState::Superseded);
    EXPECT_EQ(presented(*archive_, first)->supersededBy, second);
    EXPECT_EQ(archive_->certificate(second)->facts.supersedes, first);
    EXPECT_THAT(findings(), IsEmpty());
}

TEST_F(Release, OfType32HasTheThirdPartysSignatureFirst) {
    const std::int64_t number = presentedCasting("3.2");
    EXPECT_THAT(obstacleKinds(number, qaManager_), ElementsAre(Obstacle::Kind::ThirdPartyMissing));
    EXPECT_THAT(release(number, qaManager_), FailsWith(ErrorKind::Refused));
    const std::string pdf = endorsedPdf(number);
    EXPECT_THAT(endorse(*archive_, number, pdf, qaManager_), FailsWith(ErrorKind::Refused));
    EXPECT_THAT(endorse(*archive_, number, pdf, inspector_), FailsWith(ErrorKind::Refused));
    EXPECT_THAT(endorse(*archive_, number, presentedPdf(), thirdParty_),
                FailsWith(ErrorKind::Input));
    EXPECT_THAT(checkMayEndorse(*archive_, number, qaManager_), FailsWith(ErrorKind::Refused));
    EXPECT_THAT(checkMayEndorse(*archive_, number, thirdParty_), Succeeds());
    ASSERT_THAT(endorse(*archive_, number, pdf, thirdParty_), Succeeds());
    EXPECT_THAT(checkMayEndorse(*archive_, number, thirdParty_), FailsWith(ErrorKind::Conflict));
    EXPECT_THAT(endorse(*archive_, number, pdf + "x", thirdParty_), FailsWith(ErrorKind::Conflict));
    EXPECT_EQ(*presentedFile(*archive_, number), pdf);
    EXPECT_EQ(presented(*archive_, number)->endorsed->name, "Thea Parley");
    EXPECT_THAT(obstacleKinds(number, qaManager_), IsEmpty());
    // The signed file of before is no longer enough.
    EXPECT_THAT(model::release(*archive_, number, presentedPdf() + "QA manager", qaManager_),
                FailsWith(ErrorKind::Input));
    ASSERT_THAT(release(number, qaManager_), Succeeds());
    EXPECT_THAT(findings(), IsEmpty());
}

TEST_F(Release, OfOtherTypesHasNoThirdParty) {
    const std::int64_t number = presentedCasting("3.1");
    EXPECT_THAT(endorse(*archive_, number, endorsedPdf(number), thirdParty_),
                FailsWith(ErrorKind::Input));
}

}  // namespace
}  // namespace model
