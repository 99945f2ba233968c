// SPDX-License-Identifier: Apache-2.0
#include "trust/authority.h"

#include <gtest/gtest.h>

#include "people/people.h"
#include "people/shell.h"
#include "trust/identity_certificate.h"

namespace model {
namespace {

using people::kDay;
using people::now;
using people::passphrase;

AuthorityRequest request() {
    return {.name = "A",
            .organisation = "B",
            .country = "GB",
            .from = now(),
            .until = now() + 10 * kDay};
}

PersonRequest person() {
    return {.name = "A Person", .personId = "1", .from = now(), .until = now() + 10 * kDay};
}

class WithOpenssl : public testing::Test {
protected:
    void SetUp() override {
        folder_.write("ca.pem", certificateToPem(people::authority().certificate()));
        folder_.write("one.pem", certificateToPem(people::inspector().certificates.front()));
        folder_.write("two.pem", certificateToPem(people::manager().certificates.front()));
    }
    people::Folder folder_;
};
using AuthorityOracle = WithOpenssl;

TEST_F(AuthorityOracle, OpensslVerifiesTheIssuedCertificates) {
    for (const char* name : {"one.pem", "two.pem"}) {
        const auto verified = folder_.run(
            std::string("openssl verify -x509_strict -purpose smimesign -CAfile ca.pem ") + name);
        EXPECT_EQ(verified.code, 0) << verified.output;
    }
}

TEST_F(AuthorityOracle, CertificatesSayWhatTheyAreFor) {
    const auto text = folder_.run(
        "openssl x509 -in one.pem -noout -text -nameopt utf8,sep_comma_plus && openssl x509 -in "
        "ca.pem -noout -text -nameopt utf8,sep_comma_plus");
    ASSERT_EQ(text.code, 0);
    EXPECT_TRUE(text.says("C=DE,O=Quillmere Gießerei,serialNumber=P-17,CN=Žofie Müller-Ørsted"))
        << text.output;
    EXPECT_TRUE(text.says("CA:FALSE"));
    EXPECT_TRUE(text.says("Digital Signature, Non Repudiation"));
    EXPECT_TRUE(text.says("CA:TRUE, pathlen:0"));
    EXPECT_TRUE(text.says("Certificate Sign, CRL Sign"));
    EXPECT_TRUE(text.says("X509v3 Name Constraints: critical"));
}

TEST_F(AuthorityOracle, AStolenAuthoritysKeyIsOfNoUseForWebServersOrOtherCompanies) {
    folder_.write("ca.der", people::authorityIdentity().encryptedKey);
    const auto issue = [&](const std::string& subject, const std::string& extensions) {
        folder_.write("extensions", extensions);
        return folder_.run(
            "openssl pkey -inform DER -in ca.der -out ca.key -passin 'pass:six casks of brine' && "
            "openssl req -utf8 -newkey ec -pkeyopt ec_paramgen_curve:P-256 -nodes -keyout x.key "
            "-out x.csr -subj '" +
            subject +
            "' && openssl x509 -req -in x.csr -CA ca.pem -CAkey ca.key -CAcreateserial -days 1 "
            "-extfile extensions -out x.pem && openssl verify -CAfile ca.pem x.pem");
    };
    const std::string company = "/C=DE/O=Quillmere Gießerei";
    EXPECT_EQ(issue(company + "/CN=Somebody", "keyUsage=digitalSignature").code, 0);
    EXPECT_TRUE(issue(company + "/CN=Somebody", "subjectAltName=DNS:shop.example")
                    .says("excluded subtree"));
    EXPECT_TRUE(
        issue(company + "/CN=Somebody", "subjectAltName=IP:192.0.2.1").says("excluded subtree"));
    EXPECT_TRUE(issue(company + "/CN=Somebody", "subjectAltName=email:a@shop.example")
                    .says("permitted subtree violation"));
    EXPECT_TRUE(issue("/C=DE/O=Another Company/CN=Somebody", "keyUsage=digitalSignature")
                    .says("permitted subtree violation"));
}

TEST_F(AuthorityOracle, OpensslReadsTheRevocationList) {
    const auto lists =
        people::trustWithout(people::inspector(), now() - std::chrono::hours(12)).revocationLists;
    folder_.write("list.der", lists.front());
    const auto text = folder_.run(
        "openssl crl -inform DER -in list.der -out list.pem -text -CAfile ca.pem && cat list.pem");
    EXPECT_TRUE(text.says("verify OK")) << text.output;
    EXPECT_TRUE(text.says("Key Compromise"));
    EXPECT_TRUE(text.says("X509v3 CRL Number"));
    const std::string check = "openssl verify -crl_check -CAfile ca.pem -CRLfile list.pem ";
    const auto revoked = folder_.run(check + "one.pem");
    EXPECT_TRUE(revoked.says("certificate revoked")) << revoked.output;
    EXPECT_EQ(folder_.run(check + "two.pem").code, 0);
}

TEST(Authority, SerialNumbersDiffer) {
    EXPECT_NE(describeCertificate(people::inspector().certificates.front())->serial,
              describeCertificate(people::manager().certificates.front())->serial);
}

TEST(Authority, FactsComeBackAsTheyWereAskedFor) {
    const auto facts = describeCertificate(people::manager().certificates.front());
    ASSERT_TRUE(facts.ok());
    EXPECT_EQ(facts->name, people::kManagerName);
    EXPECT_EQ(facts->personId, "P-4");
    EXPECT_EQ(facts->organisation, "Quillmere Gießerei");
    EXPECT_EQ(facts->issuer, "Quillmere inspection authority");
    EXPECT_EQ(facts->key, "RSA-3072");
    EXPECT_EQ(facts->validFrom, now() - kDay);
    EXPECT_EQ(facts->validUntil, now() + 730 * kDay);
}

TEST(Authority, NobodyOutlivesTheAuthority) {
    PersonRequest late = person();
    late.until = now() + 7301 * kDay;
    EXPECT_FALSE(people::authority().issue(late, passphrase()).ok());
    PersonRequest early = person();
    early.from = now() - 3 * kDay;
    EXPECT_FALSE(people::authority().issue(early, passphrase()).ok());
}

TEST(Authority, AnExpiredAuthorityDoesNotOpen) {
    EXPECT_FALSE(
        Authority::unlock(people::authorityIdentity(), passphrase(), now() + 7301 * kDay).ok());
}

TEST(Authority, UnfitNamesAndPeriodsAreRefused) {
    AuthorityRequest bad = request();
    bad.country = "Germany";
    EXPECT_FALSE(Authority::create(bad, passphrase()).ok());
    bad = request();
    bad.organisation.clear();
    EXPECT_FALSE(Authority::create(bad, passphrase()).ok());
    bad = request();
    bad.until = bad.from;
    EXPECT_FALSE(Authority::create(bad, passphrase()).ok());
    PersonRequest wrong = person();
    wrong.name = std::string(65, 'x');
    EXPECT_FALSE(people::authority().issue(wrong, passphrase()).ok());
    wrong = person();
    wrong.name = "not UTF-8: \xFF";
    EXPECT_FALSE(people::authority().issue(wrong, passphrase()).ok());
    wrong = person();
    wrong.personId = "line\nbreak";
    EXPECT_FALSE(people::authority().issue(wrong, passphrase()).ok());
    EXPECT_FALSE(people::authority().issue(person(), SecretBytes("short")).ok());
}

TEST(Authority, ARevocationListNeedsSerialNumbersAndAGrowingNumber) {
    const RevokedCertificate none{"no number", now(), RevocationReason::Unspecified};
    EXPECT_FALSE(people::authority().revocationList({&none, 1}, 1, now(), now() + kDay).ok());
    EXPECT_FALSE(people::authority().revocationList({}, 0, now(), now() + kDay).ok());
    EXPECT_FALSE(people::authority().revocationList({}, 1, now(), now()).ok());
}

}  // namespace
}  // namespace model
