// SPDX-License-Identifier: Apache-2.0
#include "lifecycle_fixture.h"
#include "limits/shipped_tables.h"

namespace model {
namespace {

using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

class Obstacles : public LifecycleTest {
protected:
    /// Release is refused to this person for these reasons, and nothing is written.
    void expectRefused(std::int64_t number, const SignedIn& by,
                       const std::vector<Obstacle::Kind>& kinds) {
        EXPECT_EQ(obstacleKinds(number, by), kinds);
        const Head head = *archive_->head();
        EXPECT_THAT(release(number, by), FailsWith(ErrorKind::Refused));
        EXPECT_EQ(*archive_->head(), head);
        EXPECT_THAT(numbersIn(*archive_), IsEmpty());
    }
    [[nodiscard]] std::string sentences(std::int64_t number, const SignedIn& by) const {
        std::string all;
        const auto found = obstacles(*archive_, number, by.person());
        EXPECT_THAT(found, Succeeds());
        if (found)
            for (const Obstacle& obstacle : *found) all += obstacle.sentence + "\n";
        return all;
    }
};

TEST_F(Obstacles, WhoRecordedAnyOfItCannotReleaseIt) {
    order();
    ExaminationDraft other = draft();
    other.header.zone = "Z7";
    sign(save(draft()));
    sign(save(other), level3_);
    attestTable();
    const std::int64_t number = present();
    const SignedIn both = withRoles(foundry::kLevel3, {Role::Inspector, Role::QaManager});
    expectRefused(number, both, {Obstacle::Kind::RecordedByPerson});
    EXPECT_EQ(sentences(number, both),
              "Otto Sandmann recorded one of its examinations: somebody else has to release it.\n");
    EXPECT_THAT(release(number, qaManager_), Succeeds());
}

TEST_F(Obstacles, NobodyButAQaManagerReleases) {
    const std::int64_t number = presentedCasting();
    for (const SignedIn* other : {&inspector_, &level3_, &thirdParty_})
        EXPECT_THAT(release(number, *other), FailsWith(ErrorKind::Refused));
    EXPECT_THAT(obstacleKinds(number, level3_), ElementsAre(Obstacle::Kind::NoQaManager));
}

TEST_F(Obstacles, ManufacturingReleasesNeither31Nor32) {
    const std::int64_t number = presentedCasting("3.1");
    const SignedIn works = signedIn(foundry::kWorksManager);
    expectRefused(number, works, {Obstacle::Kind::Manufacturing});
    EXPECT_THAT(sentences(number, works), HasSubstr("manufacturing department"));
}

TEST_F(Obstacles, ManufacturingReleases22) {
    const std::int64_t number = presentedCasting("2.2");
    EXPECT_THAT(release(number, signedIn(foundry::kWorksManager)), Succeeds());
}

TEST_F(Obstacles, ManufacturingReleasesNo32) {
    const std::int64_t number = presentedCasting("3.2");
    ASSERT_THAT(endorse(*archive_, number, endorsedPdf(number), thirdParty_), Succeeds());
    expectRefused(number, signedIn(foundry::kWorksManager), {Obstacle::Kind::Manufacturing});
}

TEST_F(Obstacles, TheThirdPartyIsNobodyWhoRecordedOrReleases) {
    const std::int64_t number = presentedCasting("3.2");
    // Nobody is third party and something else at once, but a person's role may change.
    const SignedIn inspector = withRoles(foundry::kInspector, {Role::ThirdParty});
    EXPECT_THAT(endorse(*archive_, number, endorsedPdf(number), inspector),
                FailsWith(ErrorKind::Refused));
    ASSERT_THAT(endorse(*archive_, number, endorsedPdf(number), thirdParty_), Succeeds());
    expectRefused(number, withRoles(foundry::kThirdParty, {Role::QaManager}),
                  {Obstacle::Kind::RecordedByPerson});
}

TEST_F(Obstacles, ATableThatNobodyAttestedIsNamed) {
    order();
    sign(save(draft()));
    const std::int64_t number = present();
    expectRefused(number, qaManager_, {Obstacle::Kind::TableNotAttested});
    EXPECT_EQ(sentences(number, qaManager_),
              "The limit table EN 1369:2012 revision 1 is not attested.\n");
    // The certificate as it was presented says so; a later attestation does not change its words.
    attestTable();
    expectRefused(number, qaManager_, {Obstacle::Kind::TableNotAttested});
    EXPECT_THAT(sentences(number, qaManager_), HasSubstr("attested only after"));
    ASSERT_THAT(returnCasting(*archive_, number, "attested now", qaManager_), Succeeds());
    sign(1);
    EXPECT_THAT(release(present(), qaManager_), Succeeds());
}

TEST_F(Obstacles, WhatIsNotJudgedIsNotReleased) {
    order();
    ExaminationDraft open = draft();
    open.header.noIndications = false;
    sign(save(open));
    attestTable();
    const std::int64_t number = present();
    EXPECT_EQ(presented(*archive_, number)->facts.verdict, Word::NotJudged);
    expectRefused(number, qaManager_, {Obstacle::Kind::NotJudged});
    EXPECT_EQ(sentences(number, qaManager_), "Z1 MT finish machined is not judged.\n");
}

TEST_F(Obstacles, ARequiredTestThatIsMissingIsNamed) {
    order();
    ExaminationDraft other = draft();
    other.header.zone = "Z7";
    sign(save(other));
    attestTable();
    const std::int64_t number = present();
    EXPECT_EQ(presented(*archive_, number)->facts.verdict, Word::NotJudged);
    expectRefused(number, qaManager_, {Obstacle::Kind::RequiredTest});
    EXPECT_EQ(sentences(number, qaManager_),
              "Zone plan and order require Z1 MT finish machined by EN 1369:2012, which was not "
              "made.\n");
}

TEST_F(Obstacles, ARequiredTestToOtherCriteriaIsNamed) {
    order();
    ExaminationDraft milder = draft();
    milder.header.levels["linear"] = "LM 5";
    sign(save(milder));
    attestTable();
    const std::int64_t number = present();
    expectRefused(number, qaManager_, {Obstacle::Kind::RequiredTest});
    EXPECT_THAT(sentences(number, qaManager_), HasSubstr("made to other criteria"));
}

TEST_F(Obstacles, AnExaminationThatCameAfterwardsBlocksIt) {
    const std::int64_t number = presentedCasting();
    ExaminationDraft later = draft("30");
    later.header.repeat = 1;
    const std::int64_t id = save(later);
    expectRefused(number, qaManager_, {Obstacle::Kind::Changed});
    EXPECT_THAT(sentences(number, qaManager_), HasSubstr("an examination that is not signed"));
    sign(id);
    expectRefused(number, qaManager_, {Obstacle::Kind::Changed});
    EXPECT_THAT(sentences(number, qaManager_), HasSubstr("other signed examinations"));
}

TEST_F(Obstacles, AnInvalidationAfterwardsBlocksIt) {
    order();
    const std::int64_t first = sign(save(draft()));
    ExaminationDraft second = draft();
    second.header.repeat = 1;
    sign(save(second));
    attestTable();
    const std::int64_t number = present();
    EXPECT_THAT(obstacleKinds(number, qaManager_), IsEmpty());
    ASSERT_THAT(invalidateRecord(*archive_, first, "lamp broken", level3_), Succeeds());
    expectRefused(number, qaManager_, {Obstacle::Kind::Changed});
}

TEST_F(Obstacles, AChangedOrderPartOrCastingBlocksIt) {
    const std::int64_t number = presentedCasting();
    auto order = archive_->order("O-1");
    order->value.forbiddenKinds = {Kind::Crack};
    ASSERT_THAT(archive_->save(order->value, order->version, actor_), Succeeds());
    expectRefused(number, qaManager_, {Obstacle::Kind::Changed});
    auto part = archive_->part("P-9");
    part->value.drawingRevision = "D";
    ASSERT_THAT(archive_->save(part->value, part->version, actor_), Succeeds());
    auto casting = archive_->castingEntry("S-17");
    casting->value.heat = "H 999";
    ASSERT_THAT(archive_->save(casting->value, casting->version, actor_), Succeeds());
    const std::string all = sentences(number, qaManager_);
    EXPECT_THAT(all, HasSubstr("The order O-1 was changed"));
    EXPECT_THAT(all, HasSubstr("The part P-9 was changed"));
    EXPECT_THAT(all, HasSubstr("The casting S-17 was changed"));
}

TEST_F(Obstacles, ANewerRevisionOfItsTableBlocksIt) {
    const std::int64_t number = presentedCasting();
    std::string text;
    for (const EmbeddedFile& file : shippedTables())
        if (file.name == "en_1369_2012.table") text = file.text;
    const auto at = text.find("revision   1");
    ASSERT_NE(at, std::string::npos);
    text.replace(at, 12, "revision   2");
    ASSERT_THAT(archive_->addTable(text, "en_1369_2012.table", actor_), Succeeds());
    expectRefused(number, qaManager_, {Obstacle::Kind::Changed});
    EXPECT_THAT(sentences(number, qaManager_), HasSubstr("newer revision"));
}

TEST_F(Obstacles, AreAllShownAtOnce) {
    order("3.2");
    ExaminationDraft other = draft();
    other.header.zone = "Z7";
    sign(save(other));
    const std::int64_t number = present();
    const SignedIn both = withRoles(foundry::kInspector, {Role::Inspector, Role::QaManager});
    EXPECT_THAT(obstacleKinds(number, both),
                ElementsAre(Obstacle::Kind::RecordedByPerson, Obstacle::Kind::ThirdPartyMissing,
                            Obstacle::Kind::TableNotAttested, Obstacle::Kind::RequiredTest));
    ASSERT_THAT(returnCasting(*archive_, number, "all that", qaManager_), Succeeds());
    EXPECT_THAT(obstacleKinds(number, both), Contains(Obstacle::Kind::NotWaiting));
}

TEST_F(Obstacles, StandInTheThirdPartysWayToo) {
    order("3.2");
    ExaminationDraft open = draft();
    open.header.noIndications = false;
    sign(save(open));
    attestTable();
    const std::int64_t number = present();
    const auto refused = endorse(*archive_, number, endorsedPdf(number), thirdParty_);
    ASSERT_THAT(refused, FailsWith(ErrorKind::Refused));
    EXPECT_THAT(refused.error().message(), HasSubstr("not judged"));
}

}  // namespace
}  // namespace model
