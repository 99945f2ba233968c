// SPDX-License-Identifier: Apache-2.0
#include "trust/identity.h"

#include <gtest/gtest.h>

#include "people/people.h"
#include "people/shell.h"
#include "trust/authority.h"
#include "trust/identity_certificate.h"

namespace model {
namespace {

using people::kDay;
using people::now;
using people::passphrase;

TEST(Identity, AWrongPassphraseIsToldApartFromOtherFailures) {
    const auto wrong = unlock(people::inspector(), SecretBytes("six casks of beer"), now());
    ASSERT_FALSE(wrong.ok());
    EXPECT_TRUE(isWrongPassphrase(wrong.error()));
    const auto late = unlock(people::inspector(), passphrase(), now() + 3000 * kDay);
    ASSERT_FALSE(late.ok());
    EXPECT_FALSE(isWrongPassphrase(late.error()));
}

TEST(Identity, AnEmptyPassphraseOpensNothing) {
    const auto opened = unlock(people::inspector(), SecretBytes(), now());
    ASSERT_FALSE(opened.ok());
    EXPECT_TRUE(isWrongPassphrase(opened.error()));
}

TEST(Identity, AnExpiredIdentityRefusesToSign) {
    const auto opened = unlock(people::inspector(), passphrase(), now() + 731 * kDay);
    ASSERT_FALSE(opened.ok());
    EXPECT_NE(opened.error().message().find("expired"), std::string::npos);
    EXPECT_NE(opened.error().message().find(people::kInspectorName), std::string::npos);
}

TEST(Identity, AnIdentityThatIsNotYetValidRefusesToSign) {
    const auto opened =
        unlock(people::inspector(), passphrase(), now() - kDay - std::chrono::hours(12));
    ASSERT_FALSE(opened.ok());
    EXPECT_NE(opened.error().message().find("not valid before"), std::string::npos);
}

TEST(Identity, TheLastSecondOfACertificateStillCounts) {
    const auto facts = describeCertificate(people::inspector().certificates.front());
    ASSERT_TRUE(facts.ok());
    const auto& certificates = people::inspector().certificates;
    EXPECT_TRUE(checkUsable(certificates, facts->validUntil).ok());
    EXPECT_FALSE(checkUsable(certificates, facts->validUntil + std::chrono::seconds(1)).ok());
    EXPECT_TRUE(checkUsable(certificates, facts->validFrom).ok());
    EXPECT_FALSE(checkUsable(certificates, facts->validFrom - std::chrono::seconds(1)).ok());
}

TEST(Identity, ARevokedIdentityRefusesToSign) {
    const auto lists = people::trustWithout(people::inspector(), now()).revocationLists;
    const auto opened = unlock(people::inspector(), passphrase(), now(), lists);
    ASSERT_FALSE(opened.ok());
    EXPECT_NE(opened.error().message().find("revoked"), std::string::npos);
    EXPECT_TRUE(unlock(people::manager(), passphrase(), now(), lists).ok());
}

TEST(Identity, ADamagedRevocationListStopsSigning) {
    auto lists = people::trust().revocationLists;
    lists.front()[lists.front().size() - 3] ^= 1;
    EXPECT_FALSE(unlock(people::inspector(), passphrase(), now(), lists).ok());
    lists.front() = "no list";
    EXPECT_FALSE(unlock(people::inspector(), passphrase(), now(), lists).ok());
}

TEST(Identity, AnAuthoritysKeySignsNoRecords) {
    EXPECT_FALSE(unlock(people::authorityIdentity(), passphrase(), now()).ok());
}

TEST(Identity, APersonIsNoAuthority) {
    EXPECT_FALSE(Authority::unlock(people::inspector(), passphrase(), now()).ok());
}

TEST(Identity, ChangingThePassphraseChangesTheEncryptedKeyAlone) {
    const auto changed =
        changePassphrase(people::inspector(), passphrase(), SecretBytes("neun blaue Körbe"));
    ASSERT_TRUE(changed.ok()) << changed.error().message();
    EXPECT_EQ(changed->certificates, people::inspector().certificates);
    EXPECT_NE(changed->encryptedKey, people::inspector().encryptedKey);
    EXPECT_TRUE(unlock(*changed, SecretBytes("neun blaue Körbe"), now()).ok());
    const auto old = unlock(*changed, passphrase(), now());
    ASSERT_FALSE(old.ok());
    EXPECT_TRUE(isWrongPassphrase(old.error()));
}

TEST(Identity, ChangingNeedsTheOldPassphraseAndALongEnoughNewOne) {
    EXPECT_FALSE(changePassphrase(people::inspector(), SecretBytes("guessed"), passphrase()).ok());
    EXPECT_FALSE(changePassphrase(people::inspector(), passphrase(), SecretBytes("1234567")).ok());
    EXPECT_TRUE(checkNewPassphrase(SecretBytes("12345678")).ok());
    // Characters count, not bytes.
    EXPECT_FALSE(checkNewPassphrase(SecretBytes("äöüß")).ok());
    EXPECT_FALSE(checkNewPassphrase(SecretBytes("12345678\xFF")).ok());
    EXPECT_FALSE(checkNewPassphrase(SecretBytes(std::string(1025, 'a'))).ok());
}

TEST(Identity, AnotherPersonsKeyIsNotMistakenForOnesOwn) {
    Identity mixed = people::inspector();
    mixed.encryptedKey = people::thirdParty().encryptedKey;
    const auto opened = unlock(mixed, passphrase(), now());
    ASSERT_FALSE(opened.ok());
    EXPECT_EQ(opened.error().kind, ErrorKind::Damaged);
}

TEST(IdentityOracle, OpensslReadsTheKeyWithThePassphraseAlone) {
    const people::Folder folder;
    folder.write("key.der", people::inspector().encryptedKey);
    const std::string read = "openssl pkey -inform DER -in key.der -noout -text -passin 'pass:";
    const auto right = folder.run(read + people::kPassphrase + "'");
    EXPECT_EQ(right.code, 0) << right.output;
    EXPECT_TRUE(right.says("prime256v1"));
    EXPECT_NE(folder.run(read + "six casks of beer'").code, 0);
    const auto form = folder.run("openssl asn1parse -inform DER -in key.der");
    EXPECT_TRUE(form.says("scrypt")) << form.output;
    EXPECT_TRUE(form.says("aes-256-cbc"));
}

// A key whose stored form asks for less work than this program's is not opened at all.
TEST(Identity, AWeakerDerivationIsRefused) {
    const people::Folder folder;
    folder.write("key.der", people::inspector().encryptedKey);
    ASSERT_EQ(folder
                  .run("openssl pkcs8 -inform DER -in key.der -out plain.pem -passin "
                       "'pass:six casks of brine' && openssl pkcs8 -topk8 -in plain.pem -outform "
                       "DER -out weak.der -iter 1 -passout 'pass:six casks of brine'")
                  .code,
              0);
    const Identity weak{people::inspector().certificates, folder.read("weak.der")};
    const auto opened = unlock(weak, passphrase(), now());
    ASSERT_FALSE(opened.ok());
    EXPECT_EQ(opened.error().kind, ErrorKind::Damaged);
}

TEST(Identity, DamagedBytesAreErrors) {
    Identity damaged = people::inspector();
    for (std::size_t i = 0; i < damaged.encryptedKey.size(); i += 41) {
        Identity flipped = damaged;
        flipped.encryptedKey[i] = static_cast<char>(flipped.encryptedKey[i] ^ 4);
        EXPECT_FALSE(unlock(flipped, passphrase(), now()).ok()) << "byte " << i;
    }
    damaged.certificates.front().pop_back();
    EXPECT_FALSE(unlock(damaged, passphrase(), now()).ok());
    damaged.certificates.clear();
    EXPECT_FALSE(unlock(damaged, passphrase(), now()).ok());
}

TEST(Certificate, PemGoesBothWays) {
    const std::string& der = people::inspector().certificates.front();
    const auto read = certificatesFromPem("some words\n" + certificateToPem(der) +
                                          certificateToPem(people::authority().certificate()));
    ASSERT_TRUE(read.ok()) << read.error().message();
    EXPECT_EQ(*read, (std::vector<std::string>{der, people::authority().certificate()}));
    EXPECT_FALSE(certificatesFromPem("no certificate").ok());
    std::string broken = certificateToPem(der);
    broken.erase(200, 10);
    EXPECT_FALSE(certificatesFromPem(broken).ok());
}

}  // namespace
}  // namespace model
