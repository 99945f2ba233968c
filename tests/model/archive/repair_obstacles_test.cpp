// SPDX-License-Identifier: Apache-2.0
// Nothing is released while a nonconformance is open, a test by others is missing, or the order
// cannot be read.
#include "archive/retention.h"
#include "archive/search.h"
#include "register_fixture.h"

namespace model {
namespace {

using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

class RepairObstacles : public RegisterTest {
protected:
    RepairObstacles() { attestTable(); }

    [[nodiscard]] std::vector<std::string> sentences(std::int64_t number) const {
        std::vector<std::string> all;
        const auto found = obstacles(*archive_, number, qaManager_.person());
        EXPECT_THAT(found, Succeeds());
        if (found)
            for (const Obstacle& obstacle : *found) all.push_back(obstacle.sentence);
        return all;
    }
    [[nodiscard]] Nonconformance opened(const std::string& record = "") const {
        Nonconformance one;
        one.number = "N-1";
        one.casting = "S-17";
        one.zone = "Z1";
        one.method = "MT";
        one.stage = "finish machined";
        one.record = record;
        one.indications = "1";
        one.finding = "linear indication";
        one.ruleBroken = "LM 4";
        one.openedBy = foundry::kInspector;
        one.openedOn = "2026-11-24";
        return one;
    }
    [[nodiscard]] Disposition decided(const std::string& decision) const {
        Disposition one;
        one.nonconformance = "N-1";
        one.sequence = "1";
        one.casting = "S-17";
        one.decision = decision;
        one.reason = "as agreed";
        one.authority = foundry::kQaManager;
        one.decidedOn = "2026-11-24";
        return one;
    }
    [[nodiscard]] Concession conceded(const std::string& until = "") const {
        Concession one;
        one.number = "K-1";
        one.nonconformance = "N-1";
        one.casting = "S-17";
        one.customerReference = "FB 99";
        one.grantedBy = "Purchasing";
        one.grantedOn = "2026-11-24";
        one.indications = "1";
        one.scope = "this casting";
        one.until = until;
        return one;
    }
};

TEST_F(RepairObstacles, AnOpenNonconformanceIsNamed) {
    const std::int64_t record = sign(LifecycleTest::save(draft("30")));
    ASSERT_THAT(save(opened(std::to_string(record))), Succeeds());
    const std::int64_t number = present();
    EXPECT_THAT(obstacleKinds(number, qaManager_), ElementsAre(Obstacle::Kind::RepairOpen));
    EXPECT_THAT(sentences(number),
                ElementsAre(testing::StartsWith("The nonconformance N-1 is not closed: on hold")));
    EXPECT_THAT(release(number, qaManager_), FailsWith(ErrorKind::Refused));
    // What changes the registers asks for another presentation.
    ASSERT_THAT(save(decided("scrap")), Succeeds());
    EXPECT_THAT(obstacleKinds(number, qaManager_), Contains(Obstacle::Kind::Changed));
    EXPECT_THAT(sentences(number), Contains(HasSubstr("What the registers hold of the casting")));
    EXPECT_THAT(findings(), IsEmpty());
}

TEST_F(RepairObstacles, AScrappedCastingIsReleasedAsNotAcceptable) {
    const std::int64_t record = sign(LifecycleTest::save(draft("30")));
    ASSERT_THAT(save(opened(std::to_string(record))), Succeeds());
    ASSERT_THAT(save(decided("scrap")), Succeeds());
    const std::int64_t number = present();
    EXPECT_THAT(sentences(number), IsEmpty());
    EXPECT_EQ(presented(*archive_, number)->facts.verdict, Word::NotAcceptable);
    EXPECT_THAT(release(number, qaManager_), Succeeds());
    EXPECT_THAT(findings(), IsEmpty());
}

// A concession never makes the word better, and ends.
TEST_F(RepairObstacles, AConcessionThatEndedIsNamed) {
    const std::int64_t record = sign(LifecycleTest::save(draft("30")));
    ASSERT_THAT(save(opened(std::to_string(record))), Succeeds());
    ASSERT_THAT(save(decided("concession")), Succeeds());
    ASSERT_THAT(save(conceded("2026-11-26")), Succeeds());
    const std::int64_t number = present();
    EXPECT_THAT(sentences(number), IsEmpty());
    EXPECT_EQ(presented(*archive_, number)->facts.verdict, Word::NotAcceptable);
    clock_.set(clock_.now() + std::chrono::days(2));
    EXPECT_THAT(sentences(number), ElementsAre("The concession K-1 held until 2026-11-26."));
    EXPECT_THAT(release(number, qaManager_), FailsWith(ErrorKind::Refused));
}

TEST_F(RepairObstacles, ATestByOthersThatIsMissingIsNamed) {
    ZonePlan plan = *archive_->zonePlan("P-9", 1);
    plan.revision = 2;
    plan.zones[0].otherTests = {"radiographic"};
    ASSERT_THAT(archive_->add(plan, actor_), Succeeds());
    Casting casting = sampleCasting();
    casting.zonePlanRevision = 2;
    ASSERT_THAT(archive_->save(casting, 1, actor_), Succeeds());
    sign(LifecycleTest::save(draft()));
    const std::int64_t number = present();
    EXPECT_THAT(obstacleKinds(number, qaManager_), Contains(Obstacle::Kind::RequiredTest));
    EXPECT_THAT(sentences(number),
                Contains("Zone plan and order require Z1 radiographic, of which there is no "
                         "result."));
    ASSERT_THAT(returnCasting(*archive_, number, "film is missing", qaManager_), Succeeds());
    OtherResult film;
    film.number = "RT-1";
    film.casting = "S-17";
    film.zone = "Z1";
    film.test = "radiographic";
    film.standard = "EN 12681-1:2017";
    film.verdict = "acceptable";
    film.performedBy = "Outside laboratory";
    film.performedOn = "2026-11-23";
    film.report = "7 rev. 0";
    ASSERT_THAT(save(film), Succeeds());
    sign(1);
    EXPECT_THAT(release(present(), qaManager_), Succeeds());
    EXPECT_THAT(findings(), IsEmpty());
}

TEST_F(RepairObstacles, AnOrderThatCannotBeReadIsNamed) {
    Order order = archive_->order("O-1")->value;
    order.terms.tests.emplace_back().method = "XT";
    ASSERT_THAT(archive_->save(order, 1, actor_), Succeeds());
    sign(LifecycleTest::save(draft()));
    const std::int64_t number = present();
    EXPECT_THAT(obstacleKinds(number, qaManager_), Contains(Obstacle::Kind::NotJudged));
    EXPECT_THAT(sentences(number), Contains(HasSubstr("The order cannot be read: ")));
    EXPECT_EQ(presented(*archive_, number)->facts.verdict, Word::NotJudged);
}

// A certificate of a series is found by every serial number of it.
TEST_F(RepairObstacles, ASeriesIsFoundByEverySerialNumber) {
    Casting casting = sampleCasting();
    casting.series = "S-18, S-19";
    ASSERT_THAT(archive_->save(casting, 1, actor_), Succeeds());
    sign(LifecycleTest::save(draft()));
    const std::int64_t number = present();
    ASSERT_THAT(release(number, qaManager_), Succeeds());
    const Archive archive = reopened();
    EXPECT_EQ(archive.certificate(number)->facts.series, "S-17, S-18, S-19");
    const auto numbers = [&](const CertificateSearch& search) {
        std::vector<std::int64_t> found;
        const auto page = findCertificates(archive, search);
        EXPECT_THAT(page, Succeeds());
        if (page)
            for (const FoundCertificate& one : page->certificates) found.push_back(one.number);
        return found;
    };
    for (const char* serial : {"S-17", "S-18", "S-19"}) {
        EXPECT_THAT(numbers({.serial = serial}), ElementsAre(number)) << serial;
        EXPECT_THAT(numbers({.words = serial}), ElementsAre(number)) << serial;
        EXPECT_THAT(numbers({.serial = serial, .heat = "H 204"}), ElementsAre(number)) << serial;
        EXPECT_THAT(numbers({.words = "first buyer ", .serial = serial}), ElementsAre(number));
    }
    EXPECT_THAT(numbers({.serial = "S-1"}), IsEmpty());
    EXPECT_THAT(numbers({.serial = "S-18, S-19"}), IsEmpty());
    EXPECT_THAT(numbers({.serial = "S-18", .heat = "H 205"}), IsEmpty());
    EXPECT_THAT(findings(), IsEmpty());
    archive_.reset();
    alter("DELETE FROM certificate_serial WHERE serial = 'S-18'");
    EXPECT_THAT(findings(), Contains(HasSubstr("certificate 1: is not found by the serial")));
    alter("INSERT INTO certificate_serial VALUES ('S-18', 1), ('S-99', 1)");
    EXPECT_THAT(findings(), Contains(HasSubstr("certificate 1: is not found by the serial")));
    alter(
        "DELETE FROM certificate_serial WHERE serial <> 'S-17';"
        "UPDATE certificate SET series = 'S-17'");
    EXPECT_THAT(findings(), Contains(HasSubstr("certificate 1: is not what the history says")));
}

TEST_F(RepairObstacles, ASeriesGoesWithItsCertificate) {
    Casting casting = sampleCasting();
    casting.series = "S-17, S-18";
    ASSERT_THAT(archive_->save(casting, 1, actor_), Succeeds());
    sign(LifecycleTest::save(draft()));
    const std::int64_t number = present();
    ASSERT_THAT(release(number, qaManager_), Succeeds());
    {
        RawDatabase raw(path());
        EXPECT_EQ(raw.run("DELETE FROM certificate_serial"), SQLITE_CONSTRAINT_TRIGGER);
        EXPECT_EQ(raw.run("UPDATE certificate_serial SET serial = 'S-9'"),
                  SQLITE_CONSTRAINT_TRIGGER);
    }
    ASSERT_THAT(keepUntil(*archive_, "O-1", "2026-12-31", "", qaManager_), Succeeds());
    clock_.set(clock_.now() + std::chrono::days(60));
    ASSERT_THAT(dispose(*archive_, number, "its day is over", qaManager_), Succeeds());
    EXPECT_EQ(RawDatabase(path()).value("SELECT count(*) FROM certificate_serial"), "0");
    EXPECT_THAT(findCertificates(*archive_, {.words = "S-18"})->certificates, IsEmpty());
    EXPECT_THAT(findings(), IsEmpty());
}

TEST_F(RepairObstacles, AnAttestationThatWasWithdrawnIsNamed) {
    sign(LifecycleTest::save(draft()));
    const std::int64_t number = present();
    EXPECT_THAT(sentences(number), IsEmpty());
    const std::string digest = archive_->tables()->find("EN 1369:2012")->digest;
    EXPECT_THAT(withdrawAttestation(*archive_, digest, "copy 3 was outdated", inspector_),
                FailsWith(ErrorKind::Refused));
    EXPECT_THAT(withdrawAttestation(*archive_, digest, " ", qaManager_),
                FailsWith(ErrorKind::Input));
    ASSERT_THAT(withdrawAttestation(*archive_, digest, "copy 3 was outdated", qaManager_),
                Succeeds());
    EXPECT_THAT(withdrawAttestation(*archive_, digest, "again", qaManager_),
                FailsWith(ErrorKind::Input));
    EXPECT_FALSE(archive_->tables()->isAttested(*archive_->tables()->find("EN 1369:2012")));
    EXPECT_THAT(*attestations(*archive_), IsEmpty());
    ASSERT_EQ(allAttestations(*archive_)->size(), 1U);
    EXPECT_EQ(allAttestations(*archive_)->front().withdrawn->reason, "copy 3 was outdated");
    EXPECT_THAT(sentences(number), ElementsAre("The attestation of the limit table EN 1369:2012 "
                                               "revision 1 was withdrawn since the casting was "
                                               "presented."));
    EXPECT_THAT(release(number, qaManager_), FailsWith(ErrorKind::Refused));
    // It is attested again by what is held then.
    attestTable();
    EXPECT_THAT(*attestations(*archive_), testing::SizeIs(1));
    EXPECT_THAT(release(number, qaManager_), Succeeds());
    EXPECT_THAT(findings(), IsEmpty());
    archive_.reset();
    RawDatabase raw(path());
    EXPECT_EQ(raw.run("DELETE FROM attestation_withdrawal"), SQLITE_CONSTRAINT_TRIGGER);
    alter("UPDATE attestation_withdrawal SET reason = 'other'");
    EXPECT_THAT(findings(), Contains(HasSubstr("withdrawal of attestation")));
    alter("DELETE FROM attestation_withdrawal");
    EXPECT_THAT(findings(), Contains(HasSubstr("withdrawal of attestation")));
}

}  // namespace
}  // namespace model
