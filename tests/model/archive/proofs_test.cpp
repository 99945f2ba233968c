// SPDX-License-Identifier: Apache-2.0
// Seals and signatures: others can check them, and no forgery passes.
#include <fstream>

#include "archive/dialect.h"
#include "archive/history_store.h"
#include "archive/transaction.h"
#include "foundry_fixture.h"
#include "people/shell.h"
#include "trust/signature.h"

namespace model {
namespace {

using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;

class ProofTest : public FoundryTest {
protected:
    /// The last act that somebody signed, and a row that nobody signed after it.
    void SetUp() override {
        ASSERT_THAT(
            savePerson(*archive_, {"P-20", "Nea", {}, false, {}, "", true}, 0, administrator()),
            Succeeds());
        signed_ = archive_->head()->sequence;
        ASSERT_THAT(archive_->save(sampleOrder(), 0, actor_), Succeeds());
        plain_ = archive_->head()->sequence;
        archive_.reset();
    }
    [[nodiscard]] static std::string row(std::int64_t sequence) {
        return "history row " + std::to_string(sequence) + ": ";
    }
    [[nodiscard]] static std::string where(std::int64_t sequence) {
        return " WHERE sequence = " + std::to_string(sequence);
    }
    void expectFound(const std::string& sql, const std::string& finding) {
        const std::string kept = pathOf("kept");
        QFile::copy(QString::fromStdString(path()), QString::fromStdString(kept));
        alter(sql);
        EXPECT_THAT(findings(), Contains(HasSubstr(finding))) << sql;
        QFile::remove(QString::fromStdString(path()));
        QFile::rename(QString::fromStdString(kept), QString::fromStdString(path()));
    }

    std::int64_t signed_ = 0;
    std::int64_t plain_ = 0;
    people::Folder shell_;
};

TEST_F(ProofTest, CoverEveryRowAndEverySigningAct) {
    const auto verification = reopened().verify();
    ASSERT_THAT(verification, Succeeds());
    EXPECT_THAT(verification->findings, IsEmpty());
    EXPECT_EQ(verification->seals, plain_);
    RawDatabase raw(path());
    EXPECT_EQ(std::to_string(verification->signatures),
              raw.value("SELECT count(*) FROM history WHERE instr(bytes, '\"signer\":\"P-') > 0"));
    EXPECT_EQ(verification->signatures, 3 + 2 * 7 + 1);
}

// Source: `openssl dgst` over the hash before and the row's bytes, `openssl pkeyutl` over the hash.
TEST_F(ProofTest, SealsAreVerifiedByOpensslOracle) {
    RawDatabase raw(path());
    shell_.write("key.der", raw.value("SELECT public_key FROM archive_key"));
    ASSERT_EQ(shell_.run("openssl pkey -pubin -inform DER -in key.der -out key.pem").code, 0);
    for (const std::int64_t sequence : {std::int64_t{2}, signed_, plain_}) {
        shell_.write("row", raw.value("SELECT hash FROM history" + where(sequence - 1)) +
                                raw.value("SELECT bytes FROM history" + where(sequence)));
        shell_.write("hash", raw.value("SELECT hash FROM history" + where(sequence)));
        shell_.write("seal", raw.value("SELECT signature FROM history_seal" + where(sequence)));
        EXPECT_TRUE(shell_.run("openssl dgst -sha256 -verify key.pem -signature seal row")
                        .says("Verified OK"));
        EXPECT_TRUE(
            shell_.run("openssl pkeyutl -verify -pubin -inkey key.pem -sigfile seal -in hash")
                .says("Signature Verified Successfully"));
    }
}

// Source: `openssl cms`.
TEST_F(ProofTest, SignaturesAreVerifiedByOpensslOracle) {
    RawDatabase raw(path());
    const std::string certificate =
        "SELECT certificate FROM identity_certificate WHERE position = 1 AND identity = ";
    shell_.write("ca.pem", certificateToPem(raw.value(certificate + "1")));
    shell_.write("signer.pem", certificateToPem(raw.value(certificate + "2")));
    shell_.write("other.pem", certificateToPem(raw.value(certificate + "3")));
    shell_.write("hash", raw.value("SELECT hash FROM history" + where(signed_)));
    shell_.write("hash2", raw.value("SELECT hash FROM history" + where(plain_)));
    shell_.write("signature",
                 raw.value("SELECT signature FROM history_signature" + where(signed_)));
    const auto verify = [&](const std::string& hash, const std::string& signer) {
        return shell_.run("openssl cms -verify -binary -cades -inform DER -in signature -content " +
                          hash + " -CAfile ca.pem -certfile " + signer +
                          " -purpose any -out back -attime " +
                          std::to_string(clock_.now().time_since_epoch().count()));
    };
    const auto right = verify("hash", "signer.pem");
    EXPECT_EQ(right.code, 0) << right.output;
    EXPECT_TRUE(right.says("CAdES Verification successful")) << right.output;
    EXPECT_NE(verify("hash2", "signer.pem").code, 0);
    EXPECT_NE(verify("hash", "other.pem").code, 0);
}

TEST_F(ProofTest, AreMissedWhereTheyWereTakenAway) {
    const std::string plain = where(plain_);
    const std::string act = where(signed_);
    expectFound("DELETE FROM history_seal" + plain, row(plain_) + "has no seal");
    expectFound("DELETE FROM history_seal WHERE sequence <= 2", row(1) + "has no seal");
    expectFound("DELETE FROM history_seal", row(plain_) + "has no seal");
    expectFound("DELETE FROM history_signature" + act, row(signed_) + "has lost the signature");
    expectFound("DELETE FROM archive_key", "archive key: is missing");
    expectFound("UPDATE archive_key SET sealed_from = " + std::to_string(plain_ + 1),
                row(plain_) + "has a seal, but comes before");
    expectFound("DELETE FROM history_seal; UPDATE archive_key SET sealed_from = " +
                    std::to_string(plain_ + 1),
                "archive key 1: is not what the history says");
}

TEST_F(ProofTest, AreFoundWhereTheyAreSomebodyElses) {
    const std::string plain = where(plain_);
    const std::string act = where(signed_);
    expectFound("UPDATE history_seal SET signature = (SELECT signature FROM history_seal" + act +
                    ")" + plain,
                row(plain_) + "has a seal that is not the archive's");
    expectFound(
        "UPDATE history_signature SET signature = (SELECT signature FROM history_signature"
        " WHERE sequence < " +
            std::to_string(signed_) + " ORDER BY sequence DESC LIMIT 1)" + act,
        row(signed_) +
            "has a signature of Ada Ferrous that does not hold: it was made "
            "over something else");
    expectFound("UPDATE history_signature SET identity = 3" + act,
                row(signed_) + "was not signed by the person that it names, P-1");
    expectFound("UPDATE history_signature SET identity = 3" + act,
                "that does not hold: it names another certificate");
    expectFound("UPDATE history_signature SET identity = 1" + act,
                row(signed_) + "was not signed by the person that it names");
    expectFound("UPDATE history_signature SET identity = 99" + act,
                row(signed_) + "was signed by an identity that the archive does not know");
    expectFound("INSERT INTO history_signature SELECT " + std::to_string(plain_) +
                    ", identity, signature FROM history_signature" + act,
                row(plain_) + "has a signature, but names nobody");
    // A seal by another key, and that key in the database.
    const auto other = SealKey::make();
    ASSERT_THAT(other, Succeeds());
    const auto quoted = [](const std::string& bytes) {
        return "x'" + QByteArray(bytes.data(), qsizetype(bytes.size())).toHex().toStdString() + "'";
    };
    expectFound("UPDATE archive_key SET public_key = " + quoted(other->publicKey()),
                row(plain_) + "has a seal that is not the archive's");
    expectFound("UPDATE archive_key SET public_key = x'00'",
                row(plain_) + "has a seal that is not the archive's");
    EXPECT_THAT(findings(), IsEmpty());
}

TEST_F(ProofTest, NoByteOfASignatureCanBeChangedUnseen) {
    std::string signature;
    {
        RawDatabase raw(path());
        signature = raw.value("SELECT signature FROM history_signature" + where(signed_));
        raw.dropTriggers();
    }
    const auto archive = reopened();
    std::size_t unseen = 0;
    for (std::size_t i = 0; i < signature.size(); ++i) {
        std::string changed = signature;
        changed[i] = static_cast<char>(changed[i] ^ 0x20);
        RawDatabase raw(path());
        ASSERT_EQ(
            raw.run("UPDATE history_signature SET signature = x'" +
                    QByteArray(changed.data(), qsizetype(changed.size())).toHex().toStdString() +
                    "'" + where(signed_)),
            SQLITE_OK);
        bool found = false;
        const auto verification = archive.verify();
        ASSERT_THAT(verification, Succeeds());
        for (const Error& error : verification->findings)
            found = found || error.place.find("history row") != std::string::npos;
        unseen += found ? 0 : 1;
    }
    EXPECT_EQ(unseen, 0U);
}

/// Somebody who holds the database and its key file, but no person's key.
class Forger {
public:
    explicit Forger(const std::string& path)
        : key_(path), connection_(std::move(dialect::openDatabase(path)).value()) {}

    /// Adds a row that is sealed as it should be.
    void add(const std::string& person, const std::string& action, const std::string& subject,
             Canonical::Object content, const SignedIn* signer = nullptr,
             UtcTime time = foundry::madeAt()) {
        ASSERT_THAT(connection_->execute("BEGIN IMMEDIATE"), Succeeds());
        const auto head =
            appendHistory(*connection_, toText(time), person, action, subject, std::move(content));
        ASSERT_THAT(head, Succeeds());
        ASSERT_THAT(appendSeal(*connection_, *head, **key_.forSealing(*connection_)), Succeeds());
        if (signer) {
            const std::string_view hash(reinterpret_cast<const char*>(head->hash.data()),
                                        head->hash.size());
            const auto signature = signBeside(hash, signer->key(), foundry::madeAt());
            ASSERT_THAT(signature, Succeeds());
            ASSERT_THAT(
                appendSignature(*connection_, head->sequence, signer->identity(), *signature),
                Succeeds());
        }
        ASSERT_THAT(connection_->execute("COMMIT"), Succeeds());
    }

private:
    ArchiveKey key_;
    std::unique_ptr<Connection> connection_;
};

Canonical::Object promoted(const std::string& signer) {
    Canonical::Object content;
    content["version"] = 2;
    content["name"] = "Nea";
    content["roles"] = Canonical::Array{"QA manager"};
    content["manufacturing"] = false;
    content["levels"] = Canonical::Object();
    content["active"] = true;
    if (!signer.empty()) content["signer"] = signer;
    return content;
}

constexpr char kPromotion[] =
    "UPDATE person SET version = 2 WHERE id = 'P-20';"
    "INSERT INTO person_role VALUES ('P-20', 'QA manager')";

TEST_F(ProofTest, WhoHoldsTheKeyFileStillSignsForNobody) {
    const std::int64_t next = plain_ + 1;
    alter(kPromotion);
    Forger(path()).add("Ada Ferrous", "person saved", "P-20", promoted(""));
    EXPECT_THAT(findings(), ElementsAre(HasSubstr(row(next) + "is an act that nobody signed")));
    Forger(path()).add("Ada Ferrous", "person saved", "P-20", promoted("P-1"));
    EXPECT_THAT(findings(), Contains(HasSubstr(row(next + 1) + "has lost the signature")));
    // By a person of the works, in the administrator's name.
    const Archive archive = reopened();
    const SignedIn trainee = foundry::signedIn(archive, foundry::kTrainee);
    Forger(path()).add("Ada Ferrous", "person saved", "P-20", promoted("P-1"), &trainee);
    EXPECT_THAT(findings(), Contains(HasSubstr(row(next + 2) + "was not signed by the person")));
}

TEST_F(ProofTest, NobodySignsWhatTheirRolesDoNotAllow) {
    const Archive archive = reopened();
    const SignedIn trainee = foundry::signedIn(archive, foundry::kTrainee);
    alter(kPromotion);
    Forger(path()).add("Timo Neu", "person saved", "P-20", promoted("P-7"), &trainee);
    EXPECT_THAT(findings(), ElementsAre(HasSubstr(row(plain_ + 1) +
                                                  "was signed by P-7, who had not the role")));
    // Nor does it help to make oneself an administrator first.
    Canonical::Object content = promoted("P-7");
    content["name"] = "Timo Neu";
    content["roles"] = Canonical::Array{"administrator"};
    Forger(path()).add("Timo Neu", "person saved", "P-7", content, &trainee);
    EXPECT_THAT(findings(),
                Contains(HasSubstr(row(plain_ + 2) + "was signed by P-7, who had not")));
}

TEST_F(ProofTest, KeysOfTheArchiveAreReplacedByAnAdministratorAlone) {
    QFile::rename(QString::fromStdString(path() + ".key"), QString::fromStdString(pathOf("lost")));
    archive_ = reopened();
    EXPECT_THAT(replaceArchiveKey(*archive_, signedIn(foundry::kQaManager)),
                FailsWith(ErrorKind::Refused));
    EXPECT_THAT(archive_->save(sampleOrder(), 1, actor_), FailsWith(ErrorKind::Refused));
    ASSERT_THAT(replaceArchiveKey(*archive_, administrator()), Succeeds());
    const auto again = replaceArchiveKey(*archive_, administrator());
    ASSERT_THAT(again, FailsWith(ErrorKind::Input));
    EXPECT_THAT(again.error().message(), HasSubstr("is there"));
    EXPECT_THAT(archive_->save(sampleOrder(), 1, actor_), Succeeds());
    EXPECT_THAT(reopened().save(sampleOrder(), 2, actor_), Succeeds());
    EXPECT_THAT(findings(), IsEmpty());
    // The finder of the lost one seals nothing any more.
    archive_.reset();
    expectFound(
        "UPDATE archive_key SET sealed_from = " + std::to_string(plain_ + 9) + " WHERE number = 2",
        row(plain_ + 1) + "has a seal that is not the archive's");
    expectFound("DELETE FROM archive_key WHERE number = 2", "archive key 2: is gone");
}

TEST_F(ProofTest, SignaturesAfterAWithdrawalOrTheCertificatesEndDoNotCount) {
    archive_ = reopened();
    const SignedIn trainee = signedIn(foundry::kTrainee);
    ASSERT_THAT(withdrawIdentity(*archive_, foundry::kTrainee, RevocationReason::KeyCompromise, "",
                                 foundry::authorityPassphrase(), administrator()),
                Succeeds());
    EXPECT_THAT(findings(), IsEmpty());
    const std::int64_t next = archive_->head()->sequence + 1;
    Forger(path()).add("Timo Neu", "person saved", "P-20", promoted("P-7"), &trainee);
    EXPECT_THAT(findings(), Contains(HasSubstr(row(next) + "was signed by Timo Neu after the "
                                                           "identity was withdrawn")));
    const SignedIn inspector = signedIn(foundry::kInspector);
    const std::string late = row(next + 2) + "was signed while the certificate of Ilse";
    Forger(path()).add("Ilse", "person saved", "P-20", promoted("P-2"), &inspector,
                       foundry::validUntil());
    Forger(path()).add("Ilse", "person saved", "P-20", promoted("P-2"), &inspector,
                       foundry::validUntil() + std::chrono::seconds(1));
    EXPECT_THAT(findings(), Contains(HasSubstr(late)));
    EXPECT_THAT(findings(), Not(Contains(HasSubstr(row(next + 1) + "was signed while"))));
}

TEST_F(ProofTest, NobodyIsVouchedForByAnUnknownAuthority) {
    // The own authority's certificate gives way to another of the same name.
    const SecretBytes passphrase("some other passphrase");
    const auto other = Authority::create(foundry::authorityRequest(), passphrase);
    ASSERT_THAT(other, Succeeds());
    const std::string der = other->certificates.front();
    alter("UPDATE identity_certificate SET certificate = x'" +
          QByteArray(der.data(), qsizetype(der.size())).toHex().toStdString() +
          "' WHERE identity = 1; UPDATE identity SET fingerprint = '" + toHex(sha256(der)) +
          "' WHERE number = 1");
    EXPECT_THAT(findings(), Contains(HasSubstr("whom no trusted authority vouches for")));
    EXPECT_THAT(findings(), Contains(HasSubstr("identity 1: is not what the history says")));
}

}  // namespace
}  // namespace model
