// SPDX-License-Identifier: Apache-2.0
// Revocation lists of a company's own authority, made by the openssl command.
#include "archive/identities.h"
#include "archive/people.h"
#include "foundry_fixture.h"
#include "people/shell.h"
#include "trust/identity.h"

namespace model {
namespace {

using testing::AllOf;
using testing::Each;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;
using testing::SizeIs;

constexpr char kSecret[] = "an imported one";

class ForeignLists : public FoundryTest {
protected:
    /// The trainee with an identity of the company's authority; the file leaves the issuer out.
    void SetUp() override {
        const SecretBytes passphrase("the company's own");
        const auto identity = Authority::create({"Company authority", "Quillmere Holding", "",
                                                 foundry::madeAt(), foundry::validUntil()},
                                                passphrase);
        ASSERT_THAT(identity, Succeeds());
        const auto authority = Authority::unlock(*identity, passphrase, clock_.now());
        ASSERT_THAT(authority, Succeeds());
        authority_ = authority->certificate();
        const auto issued = authority->issue(
            {"Vera Holding", "H-7", foundry::madeAt(), foundry::validUntil()}, passphrase);
        ASSERT_THAT(issued, Succeeds());
        serial_ = describeCertificate(issued->certificates.front())->serial;
        shell_.write("authority.der", identity->encryptedKey);
        shell_.write("authority.pem", certificateToPem(authority_));
        shell_.write("key.der", issued->encryptedKey);
        shell_.write("own.pem", certificateToPem(issued->certificates.front()));
        shell_.write("ca.cnf",
                     "[ca]\ndefault_ca = c\n[c]\ndatabase = index.txt\ndefault_md = sha256\n"
                     "default_crl_days = 30\n[named]\nauthorityKeyIdentifier = keyid\n[part]\n"
                     "issuingDistributionPoint = critical, @point\n[point]\nonlyuser = TRUE\n");
        const auto packed = shell_.run(
            "for k in authority key; do openssl pkcs8 -inform DER -in $k.der "
            "-passin \"pass:the company's own\" -out $k.key || exit 1; done; openssl pkcs12 "
            "-export -inkey key.key -in own.pem -passout pass:file -out own.p12");
        ASSERT_EQ(packed.code, 0) << packed.output;
        ASSERT_THAT(trustAuthority(*archive_, authority_, administrator()), Succeeds());
        ASSERT_THAT(import(foundry::kTrainee), Succeeds());
    }
    Result<void> import(const std::string& person) {
        return importIdentity(*archive_, person, shell_.read("own.p12"), SecretBytes("file"),
                              SecretBytes(kSecret), administrator());
    }
    /// A list of that day of November 2026; `revoked` as openssl has it:
    /// "261126100000Z,superseded".
    std::string listOf(const std::string& day, const std::string& revoked = {},
                       const std::string& extensions = "named") {
        shell_.write("index.txt", revoked.empty() ? ""
                                                  : "R\t760101000000Z\t" + revoked + "\t" +
                                                        serial_ + "\tunknown\t/CN=Vera Holding\n");
        const auto made = shell_.run(
            "openssl ca -gencrl -config ca.cnf -keyfile authority.key -cert authority.pem "
            "-crlexts " +
            extensions + " -crl_lastupdate 2611" + day + "120000Z -crl_nextupdate 2612" + day +
            "120000Z -out list.pem");
        EXPECT_EQ(made.code, 0) << made.output;
        const auto list = revocationListFrom(shell_.read("list.pem"));
        EXPECT_THAT(list, Succeeds());
        return list.ok() ? *list : std::string();
    }
    Result<RevocationListFacts> take(const std::string& list) {
        return takeRevocationList(*archive_, list, administrator());
    }
    void setDay(int day) {
        clock_.set(std::chrono::sys_days(std::chrono::year(2026) / 11 / day) +
                   std::chrono::hours(20));
    }
    [[nodiscard]] Result<SignedIn> trainee() {
        return signIn(*archive_, foundry::kTrainee, SecretBytes(kSecret));
    }
    /// An act that the trainee signs.
    Result<void> act() {
        return changePassphrase(*archive_, foundry::kTrainee, SecretBytes(kSecret),
                                SecretBytes(kSecret));
    }
    std::string stateOfTrainee() {
        std::string state;
        const auto all = identities(*archive_);
        EXPECT_THAT(all, Succeeds());
        for (const StoredIdentity& one : *all)
            if (one.facts.name == "Vera Holding") state = one.withdrawn;
        return state;
    }

    people::Folder shell_;
    std::string authority_;
    std::string serial_;
};

TEST_F(ForeignLists, EndSigningOracle) {
    setDay(26);
    const auto empty = take(listOf("26"));
    ASSERT_THAT(empty, Succeeds());
    EXPECT_EQ(empty->issuer, "Company authority");
    EXPECT_EQ(empty->revoked, 0U);
    EXPECT_EQ(toText(*empty->next), "2026-12-26T12:00:00Z");
    EXPECT_THAT(act(), Succeeds());
    EXPECT_EQ(stateOfTrainee(), "");
    const auto before = trainee();
    ASSERT_THAT(before, Succeeds());

    setDay(28);
    const auto second = take(listOf("28", "261127100000Z,keyCompromise"));
    ASSERT_THAT(second, Succeeds());
    EXPECT_EQ(second->revoked, 1U);
    const auto history = archive_->history();
    EXPECT_EQ(history->back().action, "revocation list taken over");
    EXPECT_EQ(history->back().subject, "Company authority");
    EXPECT_EQ(history->back().person, "Ada Ferrous");
    const auto refused = trainee();
    ASSERT_THAT(refused, FailsWith(ErrorKind::Input));
    EXPECT_THAT(refused.error().message(),
                AllOf(HasSubstr("Vera Holding was revoked on 2026-11-27T10:00:00Z"),
                      HasSubstr("the key may be known to others")));
    EXPECT_EQ(stateOfTrainee(),
              "revoked by Company authority on 2026-11-27: the key may be known to others");
    // What was signed before stands; the archive's own people are not concerned.
    EXPECT_THAT(findings(), IsEmpty());
    EXPECT_THAT(signIn(*archive_, foundry::kInspector, foundry::passphrase()), Succeeds());
}

TEST_F(ForeignLists, NameWhatWasSignedSinceTheDayOfRevocation) {
    setDay(27);
    ASSERT_THAT(act(), Succeeds());
    ASSERT_THAT(findings(), IsEmpty());
    setDay(28);
    ASSERT_THAT(take(listOf("28", "261126100000Z,affiliationChanged")), Succeeds());
    EXPECT_THAT(findings(),
                AllOf(SizeIs(1), Each(HasSubstr("was signed by Vera Holding, whose certificate "
                                                "Company authority revoked on 2026-11-26"))));
    // A later list may leave out a certificate that has ended by itself.
    setDay(29);
    ASSERT_THAT(take(listOf("29")), Succeeds());
    EXPECT_THAT(findings(), SizeIs(1));
    EXPECT_THAT(trainee(), FailsWith(ErrorKind::Input));
}

TEST_F(ForeignLists, TakeACertificateOnHoldBackOnlyByTheNewestOne) {
    setDay(26);
    ASSERT_THAT(take(listOf("26", "261126100000Z,certificateHold")), Succeeds());
    const auto held = trainee();
    ASSERT_THAT(held, FailsWith(ErrorKind::Input));
    EXPECT_THAT(held.error().message(), HasSubstr("on hold"));
    setDay(27);
    ASSERT_THAT(take(listOf("27")), Succeeds());
    EXPECT_THAT(act(), Succeeds());
    EXPECT_THAT(findings(), IsEmpty());
}

TEST_F(ForeignLists, AreTakenOnlyWholeNewerAndFromWhomTheArchiveTrusts) {
    setDay(26);
    const Head before = *archive_->head();
    const std::string list = listOf("26");
    EXPECT_THAT(takeRevocationList(*archive_, list, signedIn(foundry::kQaManager)),
                FailsWith(ErrorKind::Refused));
    EXPECT_THAT(take("no list"), FailsWith(ErrorKind::Input));
    EXPECT_THAT(revocationListFrom("no list"), FailsWith(ErrorKind::Input));
    const auto part = take(listOf("26", {}, "part"));
    ASSERT_THAT(part, FailsWith(ErrorKind::Input));
    EXPECT_THAT(part.error().message(), HasSubstr("take its complete list"));
    const auto early = take(listOf("27"));
    ASSERT_THAT(early, FailsWith(ErrorKind::Input));
    EXPECT_THAT(early.error().message(), HasSubstr("is to come"));
    // The own authority's, which the archive makes itself.
    RawDatabase raw(path());
    EXPECT_THAT(take(raw.value("SELECT list FROM revocation_list")), FailsWith(ErrorKind::Input));
    std::string altered = list;
    altered[altered.size() - 1] ^= 1;
    EXPECT_THAT(take(altered), FailsWith(ErrorKind::Input));
    EXPECT_EQ(*archive_->head(), before);
    ASSERT_THAT(take(list), Succeeds());
    const auto again = take(list);
    ASSERT_THAT(again, FailsWith(ErrorKind::Input));
    EXPECT_THAT(again.error().message(), HasSubstr("already that was issued on 2026-11-26"));
    setDay(28);
    ASSERT_THAT(take(listOf("28")), Succeeds());
    EXPECT_THAT(take(listOf("27")), FailsWith(ErrorKind::Input));
}

TEST_F(ForeignLists, LeaveTheOwnAuthoritysListsAsTheyWere) {
    setDay(26);
    ASSERT_THAT(take(listOf("26")), Succeeds());
    ASSERT_THAT(withdrawIdentity(*archive_, foundry::kInspector, RevocationReason::PositionChanged,
                                 "", foundry::authorityPassphrase(), administrator()),
                Succeeds());
    setDay(27);
    ASSERT_THAT(take(listOf("27")), Succeeds());
    EXPECT_THAT(signIn(*archive_, foundry::kInspector, foundry::passphrase()),
                FailsWith(ErrorKind::Input));
    EXPECT_THAT(trustedCertificates(*archive_)->revocationLists, SizeIs(3));
    EXPECT_THAT(findings(), IsEmpty());
    for (const char* number : {"1", "2", "3", "4"}) {
        const std::string at = std::string(" WHERE number = ") + number;
        RawDatabase raw(path());
        const std::string was = raw.value("SELECT hex(list) FROM revocation_list" + at);
        std::string other = was;
        other.back() = other.back() == '0' ? '1' : '0';
        alter("UPDATE revocation_list SET list = x'" + other + "'" + at);
        EXPECT_THAT(findings(), Not(IsEmpty())) << number;
        alter("UPDATE revocation_list SET list = x'" + was + "'" + at);
        EXPECT_THAT(findings(), IsEmpty()) << number;
    }
}

TEST_F(ForeignLists, DoNotRevokeTheLastAdministrator) {
    setDay(26);
    const auto stored = person(*archive_, foundry::kTrainee);
    ASSERT_THAT(stored, Succeeds());
    Person trainee = stored->value;
    trainee.roles = {Role::Administrator};
    ASSERT_THAT(savePerson(*archive_, trainee, stored->version, administrator()), Succeeds());
    const auto foreign = this->trainee();
    ASSERT_THAT(foreign, Succeeds());
    ASSERT_THAT(withdrawIdentity(*archive_, foundry::kAdministrator, RevocationReason::NotNeeded,
                                 "", foundry::authorityPassphrase(), *foreign),
                Succeeds());
    const auto refused =
        takeRevocationList(*archive_, listOf("26", "261126100000Z,superseded"), *foreign);
    ASSERT_THAT(refused, FailsWith(ErrorKind::Input));
    EXPECT_THAT(refused.error().message(), HasSubstr("make another person one first"));
    EXPECT_THAT(this->trainee(), Succeeds());
    EXPECT_THAT(takeRevocationList(*archive_, listOf("26"), *foreign), Succeeds());
}

}  // namespace
}  // namespace model
