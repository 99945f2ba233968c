// SPDX-License-Identifier: Apache-2.0
// Identities from their making to their withdrawal, seen by the openssl command too.
#include "archive/identities.h"

#include <filesystem>
#include <fstream>

#include "foundry_fixture.h"
#include "people/shell.h"
#include "trust/identity.h"

namespace model {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;

class Identities : public FoundryTest {
protected:
    /// The certificate of an identity, as PEM.
    std::string pemOf(std::int64_t identity) {
        RawDatabase raw(path());
        return certificateToPem(raw.value(
            "SELECT certificate FROM identity_certificate WHERE position = 1 AND identity = " +
            std::to_string(identity)));
    }
    std::int64_t newestOf(const std::string& personId) {
        std::int64_t newest = 0;
        const auto all = identities(*archive_);
        EXPECT_THAT(all, Succeeds());
        for (const StoredIdentity& one : *all)
            if (one.person == personId) newest = one.number;
        return newest;
    }
    /// What `openssl verify` says of a person's newest certificate a minute from now, by the newest
    /// revocation list.
    people::Folder::Outcome verified(const std::string& personId) {
        RawDatabase raw(path());
        shell_.write("ca.pem", pemOf(1));
        shell_.write("person.pem", pemOf(newestOf(personId)));
        shell_.write("list.der",
                     raw.value("SELECT list FROM revocation_list ORDER BY number DESC"));
        const auto at = (clock_.now() + std::chrono::minutes(1)).time_since_epoch().count();
        return shell_.run(
            "openssl crl -inform DER -in list.der -out list.pem && openssl verify -x509_strict "
            "-CAfile ca.pem -CRLfile list.pem -crl_check -attime " +
            std::to_string(at) + " person.pem");
    }
    Result<void> withdraw(const std::string& personId) {
        return withdrawIdentity(*archive_, personId, RevocationReason::PositionChanged,
                                "left the works", foundry::authorityPassphrase(), administrator());
    }

    people::Folder shell_;
};

TEST_F(Identities, AreMadeWithTheArchivesSetUp) {
    const std::string fresh = pathOf("fresh");
    auto archive = Archive::create(fresh, ArchiveKind::Working, actor_, clock_);
    ASSERT_THAT(archive, Succeeds());
    const Person first = foundry::everybody().front();
    const auto setUpOnce = [&] {
        return setUp(*archive, foundry::authorityRequest(), foundry::authorityPassphrase(), first,
                     foundry::passphrase(), foundry::validUntil());
    };
    ASSERT_THAT(setUpOnce(), Succeeds());
    EXPECT_THAT(signIn(*archive, first.id, foundry::passphrase()), Succeeds());
    EXPECT_EQ(trustedCertificates(*archive)->anchors.size(), 1U);
    const auto verification = archive->verify();
    ASSERT_THAT(verification, Succeeds());
    EXPECT_THAT(verification->findings, IsEmpty());
    EXPECT_EQ(verification->signatures, 3);
    EXPECT_EQ(verification->seals, verification->head.sequence);
    const Head head = *archive->head();
    const auto again = setUpOnce();
    ASSERT_THAT(again, FailsWith(ErrorKind::Input));
    EXPECT_THAT(again.error().message(), HasSubstr("was set up already"));
    EXPECT_EQ(*archive->head(), head);
}

TEST_F(Identities, LeaveNothingWhereASetUpFails) {
    const std::string fresh = pathOf("fresh");
    auto archive = Archive::create(fresh, ArchiveKind::Working, actor_, clock_);
    Person nameless = foundry::everybody().front();
    nameless.name = "";
    const Head head = *archive->head();
    EXPECT_THAT(setUp(*archive, foundry::authorityRequest(), foundry::authorityPassphrase(),
                      nameless, foundry::passphrase(), foundry::validUntil()),
                FailsWith(ErrorKind::Input));
    EXPECT_THAT(setUp(*archive, foundry::authorityRequest(), foundry::authorityPassphrase(),
                      foundry::everybody().front(), SecretBytes("short"), foundry::validUntil()),
                FailsWith(ErrorKind::Input));
    // A person's certificate cannot outlast the authority's.
    EXPECT_THAT(setUp(*archive, foundry::authorityRequest(), foundry::authorityPassphrase(),
                      foundry::everybody().front(), foundry::passphrase(),
                      foundry::validUntil() + std::chrono::days(1000)),
                FailsWith(ErrorKind::Input));
    EXPECT_EQ(*archive->head(), head);
    EXPECT_THAT(*people(*archive), IsEmpty());
}

// Source: the openssl command.
TEST_F(Identities, AreVerifiedByOthersUntilTheyAreWithdrawnOracle) {
    EXPECT_TRUE(verified(foundry::kInspector).says("person.pem: OK"));
    clock_.set(clock_.now() + std::chrono::hours(1));
    ASSERT_THAT(withdraw(foundry::kInspector), Succeeds());
    EXPECT_TRUE(verified(foundry::kInspector).says("certificate revoked"));
    EXPECT_TRUE(verified(foundry::kQaManager).says("person.pem: OK"));
    // The next list holds the first one too.
    ASSERT_THAT(withdraw(foundry::kQaManager), Succeeds());
    EXPECT_TRUE(verified(foundry::kInspector).says("certificate revoked"));
    EXPECT_TRUE(verified(foundry::kQaManager).says("certificate revoked"));
    const auto list = shell_.run("openssl crl -in list.pem -noout -text");
    EXPECT_TRUE(list.says("Affiliation Changed")) << list.output;
    EXPECT_TRUE(list.says("Nov 25 10:30:00 2026")) << list.output;
    EXPECT_THAT(withdraw(foundry::kQaManager), FailsWith(ErrorKind::Input));
    EXPECT_THAT(findings(), IsEmpty());
}

TEST_F(Identities, AreReplacedByNewOnes) {
    const SignedIn before = signedIn(foundry::kAdministrator);
    // Of the administrator's own: the old one signs for the new one.
    ASSERT_THAT(
        issueIdentity(*archive_, foundry::kAdministrator, KeyKind::Rsa3072, foundry::validUntil(),
                      SecretBytes("another passphrase"), foundry::authorityPassphrase(), before),
        Succeeds());
    EXPECT_THAT(savePerson(*archive_, {"P-20", "Nea", {}, false, {}, "", true}, 0, before),
                FailsWith(ErrorKind::Refused));
    const auto after =
        signIn(*archive_, foundry::kAdministrator, SecretBytes("another passphrase"));
    ASSERT_THAT(after, Succeeds());
    EXPECT_THAT(savePerson(*archive_, {"P-20", "Nea", {}, false, {}, "", true}, 0, *after),
                Succeeds());
    EXPECT_EQ(identities(*archive_)->back().facts.key, "RSA-3072");
    // What the old one signed is as good as before.
    EXPECT_THAT(findings(), IsEmpty());
}

TEST_F(Identities, AreIssuedOnlyWithTheAuthoritysPassphrase) {
    const auto issue = [&](const std::string& passphrase) {
        return issueIdentity(*archive_, foundry::kTrainee, KeyKind::P256, foundry::validUntil(),
                             foundry::passphrase(), SecretBytes(passphrase), administrator());
    };
    for (int i = 0; i < 3; ++i) EXPECT_TRUE(isWrongPassphrase(issue("not the ladle").error()));
    EXPECT_THAT(issue(foundry::kAuthorityPassphrase), FailsWith(ErrorKind::Refused));
    clock_.set(clock_.now() + std::chrono::seconds(2));
    EXPECT_THAT(issue(foundry::kAuthorityPassphrase), Succeeds());
    EXPECT_THAT(findings(), IsEmpty());
}

TEST_F(Identities, AreOnlyAnAdministratorsToGiveAndTake) {
    const SignedIn manager = signedIn(foundry::kQaManager);
    EXPECT_THAT(issueIdentity(*archive_, foundry::kTrainee, KeyKind::P256, foundry::validUntil(),
                              foundry::passphrase(), foundry::authorityPassphrase(), manager),
                FailsWith(ErrorKind::Refused));
    EXPECT_THAT(importIdentity(*archive_, foundry::kTrainee, "", SecretBytes(),
                               foundry::passphrase(), manager),
                FailsWith(ErrorKind::Refused));
    EXPECT_THAT(trustAuthority(*archive_, "", manager), FailsWith(ErrorKind::Refused));
    EXPECT_THAT(withdrawIdentity(*archive_, foundry::kTrainee, RevocationReason::Unspecified, "",
                                 foundry::authorityPassphrase(), manager),
                FailsWith(ErrorKind::Refused));
}

TEST_F(Identities, KeepTheirCertificateUnderANewPassphrase) {
    const auto change = [&](const std::string& from, const std::string& to) {
        return changePassphrase(*archive_, foundry::kInspector, SecretBytes(from), SecretBytes(to));
    };
    const Head before = *archive_->head();
    EXPECT_THAT(change(foundry::kPassphrase, "short"), FailsWith(ErrorKind::Input));
    EXPECT_EQ(*archive_->head(), before);
    EXPECT_TRUE(isWrongPassphrase(change("not mine", "a new passphrase").error()));
    ASSERT_THAT(change(foundry::kPassphrase, "a new passphrase"), Succeeds());
    EXPECT_TRUE(
        isWrongPassphrase(signIn(*archive_, foundry::kInspector, foundry::passphrase()).error()));
    const auto inspector = signIn(*archive_, foundry::kInspector, SecretBytes("a new passphrase"));
    ASSERT_THAT(inspector, Succeeds());
    EXPECT_EQ(inspector->key().certificates(), signedIn(foundry::kInspector).key().certificates());
    EXPECT_THAT(findings(), IsEmpty());
}

TEST_F(Identities, AreIssuedUnderTheAuthoritysNewPassphraseOnceItIsChanged) {
    const std::string next = "two ladles of iron";
    const auto change = [&](const std::string& from, const std::string& to,
                            const SignedIn& person) {
        return changeAuthorityPassphrase(*archive_, SecretBytes(from), SecretBytes(to), person);
    };
    const auto issue = [&](const std::string& passphrase) {
        return issueIdentity(*archive_, foundry::kTrainee, KeyKind::P256, foundry::validUntil(),
                             foundry::passphrase(), SecretBytes(passphrase), administrator());
    };
    const std::string certificate = pemOf(1);
    const Head before = *archive_->head();
    EXPECT_THAT(change(foundry::kAuthorityPassphrase, next, signedIn(foundry::kQaManager)),
                FailsWith(ErrorKind::Refused));
    EXPECT_THAT(change(foundry::kAuthorityPassphrase, "short", administrator()),
                FailsWith(ErrorKind::Input));
    EXPECT_EQ(*archive_->head(), before);
    // Counted like every other try at it, together with those of issuing.
    for (int i = 0; i < 2; ++i)
        EXPECT_TRUE(isWrongPassphrase(change("not the ladle", next, administrator()).error()));
    EXPECT_TRUE(isWrongPassphrase(issue("not the ladle").error()));
    EXPECT_THAT(change(foundry::kAuthorityPassphrase, next, administrator()),
                FailsWith(ErrorKind::Refused));
    clock_.set(clock_.now() + std::chrono::seconds(2));
    ASSERT_THAT(change(foundry::kAuthorityPassphrase, next, administrator()), Succeeds());
    const auto history = archive_->history();
    ASSERT_THAT(history, Succeeds());
    EXPECT_EQ(history->back().action, "authority's passphrase changed");
    EXPECT_EQ(history->back().subject, "authority");
    EXPECT_EQ(history->back().person, "Ada Ferrous");
    EXPECT_TRUE(isWrongPassphrase(issue(foundry::kAuthorityPassphrase).error()));
    EXPECT_THAT(issue(next), Succeeds());
    EXPECT_EQ(pemOf(1), certificate);
    EXPECT_TRUE(verified(foundry::kTrainee).says("person.pem: OK"));
    EXPECT_THAT(findings(), IsEmpty());
    // The key of before is no longer in the database, under whatever passphrase.
    alter("UPDATE identity_key SET encrypted_key = x'00' WHERE identity = 1");
    EXPECT_THAT(findings(), Not(IsEmpty()));
}

/// A company's identity, issued by an authority of its own and packed by the openssl command.
class Imported : public Identities {
protected:
    void SetUp() override {
        const SecretBytes passphrase("the company's own");
        const auto identity = Authority::create({"Company authority", "Quillmere Holding", "",
                                                 foundry::madeAt(), foundry::validUntil()},
                                                passphrase);
        ASSERT_THAT(identity, Succeeds());
        const auto authority = Authority::unlock(*identity, passphrase, clock_.now());
        ASSERT_THAT(authority, Succeeds());
        const auto issued = authority->issue(
            {"Vera Holding", "H-7", foundry::madeAt(), foundry::validUntil()}, passphrase);
        ASSERT_THAT(issued, Succeeds());
        authority_ = authority->certificate();
        shell_.write("key.der", issued->encryptedKey);
        shell_.write("own.pem", certificateToPem(issued->certificates[0]));
        shell_.write("issuer.pem", certificateToPem(issued->certificates[1]));
        const auto packed = shell_.run(
            "openssl pkcs8 -inform DER -in key.der -passin \"pass:the company's own\" -out key.pem "
            "&& openssl pkcs12 -export -inkey key.pem -in own.pem -certfile issuer.pem "
            "-passout pass:file -out own.p12");
        ASSERT_EQ(packed.code, 0) << packed.output;
        file_ = shell_.read("own.p12");
    }
    Result<void> import(const std::string& filePassphrase = "file") {
        return importIdentity(*archive_, foundry::kTrainee, file_, SecretBytes(filePassphrase),
                              SecretBytes("an imported one"), administrator());
    }

    std::string authority_;
    std::string file_;
};

TEST_F(Imported, IsTakenOnceItsAuthorityIsTrusted) {
    const Head before = *archive_->head();
    const auto early = import();
    ASSERT_THAT(early, FailsWith(ErrorKind::Input));
    EXPECT_THAT(early.error().message(), HasSubstr("trust its authority first"));
    EXPECT_TRUE(isWrongPassphrase(import("other").error()));
    EXPECT_EQ(*archive_->head(), before);
    ASSERT_THAT(trustAuthority(*archive_, authority_, administrator()), Succeeds());
    EXPECT_THAT(trustAuthority(*archive_, authority_, administrator()),
                FailsWith(ErrorKind::Input));
    ASSERT_THAT(import(), Succeeds());
    EXPECT_THAT(import(), FailsWith(ErrorKind::Input));
    const auto trainee = signIn(*archive_, foundry::kTrainee, SecretBytes("an imported one"));
    ASSERT_THAT(trainee, Succeeds());
    // A signed row by it.
    ASSERT_THAT(changePassphrase(*archive_, foundry::kTrainee, SecretBytes("an imported one"),
                                 SecretBytes("yet another")),
                Succeeds());
    EXPECT_THAT(findings(), IsEmpty());
    // Its authority makes its revocation lists: here the withdrawal itself is what counts.
    ASSERT_THAT(withdrawIdentity(*archive_, foundry::kTrainee, RevocationReason::Superseded, "",
                                 foundry::authorityPassphrase(), administrator()),
                Succeeds());
    EXPECT_THAT(signIn(*archive_, foundry::kTrainee, SecretBytes("yet another")),
                FailsWith(ErrorKind::Input));
    EXPECT_THAT(findings(), IsEmpty());
}

TEST_F(Imported, TrustsNoPersonsCertificateAndNoOtherBytes) {
    const std::string own = *certificatesFromPem(shell_.read("own.pem"))->begin();
    EXPECT_THAT(trustAuthority(*archive_, own, administrator()), FailsWith(ErrorKind::Input));
    EXPECT_THAT(trustAuthority(*archive_, "no certificate", administrator()),
                FailsWith(ErrorKind::Input));
}

/// Every byte that lies on the disk, keys' file aside.
std::string bytesIn(const std::string& path) {
    std::string bytes;
    for (const char* suffix : {"", "-wal", "-shm"}) {
        std::ifstream file(path + suffix, std::ios::binary);
        bytes += std::string(std::istreambuf_iterator<char>(file), {});
    }
    return bytes;
}

TEST_F(Identities, LeaveNoSecretInTheDatabase) {
    const std::string secret = "under nobody's eyes";
    ASSERT_THAT(changePassphrase(*archive_, foundry::kInspector, foundry::passphrase(),
                                 SecretBytes(secret)),
                Succeeds());
    const auto inspector = signIn(*archive_, foundry::kInspector, SecretBytes(secret));
    ASSERT_THAT(inspector, Succeeds());
    static_cast<void>(signIn(*archive_, foundry::kInspector, SecretBytes("mistyped one")));
    const std::string bytes = bytesIn(path());
    ASSERT_GT(bytes.size(), 100'000U);
    for (const std::string& text :
         {secret, std::string(foundry::kPassphrase), std::string(foundry::kAuthorityPassphrase),
          std::string("mistyped one")})
        EXPECT_EQ(bytes.find(text), std::string::npos) << text;
    // The certificate is in it, and the private numbers are not: RFC 5915 has them from the eighth
    // byte on.
    EXPECT_NE(bytes.find(inspector->key().certificates().front()), std::string::npos);
    std::filesystem::copy_file(path() + ".key", shell_.path("archive.pem"));
    ASSERT_EQ(shell_.run("openssl ec -in archive.pem -outform DER -out archive.der").code, 0);
    const std::string archiveKey = shell_.read("archive.der").substr(7, 32);
    const std::string personKey = foundry::privateNumber(foundry::kInspector);
    ASSERT_EQ(archiveKey.size(), 32U);
    ASSERT_EQ(personKey.size(), 32U);
    EXPECT_EQ(bytes.find(archiveKey), std::string::npos);
    EXPECT_EQ(bytes.find(personKey), std::string::npos);
    EXPECT_EQ(std::filesystem::status(path() + ".key").permissions(),
              std::filesystem::perms::owner_read | std::filesystem::perms::owner_write);
}

}  // namespace
}  // namespace model
