// SPDX-License-Identifier: Apache-2.0
// PKCS #12 files as the openssl command makes them.
#include <gtest/gtest.h>

#include "people/people.h"
#include "people/shell.h"
#include "trust/identity.h"
#include "trust/identity_certificate.h"
#include "trust/signature.h"

namespace model {
namespace {

using people::passphrase;

// A company's authority, an authority below it, and a person's certificate by the latter.
std::string commands(const std::string& key, const std::string& usage = "digitalSignature") {
    return "openssl req -x509 -newkey ec -pkeyopt ec_paramgen_curve:P-256 -nodes -keyout root.key "
           "-out root.crt -days 30 -subj '/O=Quillmere Holding/CN=Root' -addext "
           "keyUsage=critical,keyCertSign,cRLSign && "
           "openssl req -newkey rsa:3072 -nodes -keyout sub.key -out sub.csr -subj "
           "'/O=Quillmere Holding/CN=People' && "
           "openssl x509 -req -in sub.csr -CA root.crt -CAkey root.key -CAcreateserial -days 20 "
           "-out sub.crt -extfile <(printf "
           "'basicConstraints=critical,CA:TRUE\\nkeyUsage=keyCertSign') && "
           "openssl req -utf8 -newkey " +
           key +
           " -nodes -keyout own.key -out own.csr -subj '/O=Quillmere Holding/CN=Søren Łuk' && "
           "openssl x509 -req -in own.csr -CA sub.crt -CAkey sub.key -CAcreateserial -days 10 -out "
           "own.crt -extfile <(printf 'basicConstraints=CA:FALSE\\nkeyUsage=" +
           usage + "') && cat root.crt sub.crt > chain.crt && ";
}

std::string exported(const people::Folder& folder, const std::string& commandLine) {
    folder.write("make.sh", commandLine);
    const auto made = folder.run("bash make.sh");
    EXPECT_EQ(made.code, 0) << made.output;
    return made.code == 0 ? folder.read("own.p12") : "";
}

constexpr const char* kExport =
    "openssl pkcs12 -export -inkey own.key -in own.crt -certfile chain.crt -out own.p12 -passout "
    "'pass:schlüssel'";
const char* const kP256 = "ec -pkeyopt ec_paramgen_curve:P-256";

class Pkcs12Oracle : public testing::TestWithParam<std::pair<const char*, const char*>> {};

TEST_P(Pkcs12Oracle, AFileOfTheOpensslCommandBecomesAnIdentityThatSigns) {
    const people::Folder folder;
    const std::string file = exported(folder, commands(GetParam().first) + kExport);
    const auto identity = importPkcs12(file, SecretBytes("schlüssel"), passphrase());
    ASSERT_TRUE(identity.ok()) << identity.error().message();
    ASSERT_EQ(identity->certificates.size(), 3U);
    const auto facts = describeCertificate(identity->certificates[0]);
    ASSERT_TRUE(facts.ok());
    EXPECT_EQ(facts->name, "Søren Łuk");
    EXPECT_EQ(facts->organisation, "Quillmere Holding");
    EXPECT_EQ(facts->issuer, "People");
    EXPECT_EQ(facts->key, GetParam().second);
    EXPECT_FALSE(facts->isAuthority);
    EXPECT_EQ(describeCertificate(identity->certificates[2])->name, "Root");

    const UtcTime moment = systemClock().now();
    const auto key = unlock(*identity, passphrase(), moment);
    ASSERT_TRUE(key.ok()) << key.error().message();
    const auto signature = signDetached("a record", *key, moment);
    ASSERT_TRUE(signature.ok()) << signature.error().message();
    TrustedCertificates trusted;
    trusted.anchors = *certificatesFromPem(folder.read("root.crt"));
    const auto report = verifyDetached("a record", *signature, trusted, moment);
    ASSERT_TRUE(report.ok());
    EXPECT_TRUE(report->trusted()) << testing::PrintToString(report->remarks);
    EXPECT_FALSE(report->revocationChecked);
}

INSTANTIATE_TEST_SUITE_P(Keys, Pkcs12Oracle,
                         testing::Values(std::pair{kP256, "P-256"},
                                         std::pair{"ec -pkeyopt ec_paramgen_curve:P-384", "P-384"},
                                         std::pair{"rsa:3072", "RSA-3072"}));

TEST(Pkcs12, WrongPassphraseAndDamageAreErrors) {
    const people::Folder folder;
    const std::string file = exported(folder, commands(kP256) + kExport);
    const auto wrong = importPkcs12(file, SecretBytes("schluessel"), passphrase());
    ASSERT_FALSE(wrong.ok());
    EXPECT_TRUE(isWrongPassphrase(wrong.error()));
    EXPECT_FALSE(importPkcs12(file, SecretBytes(), passphrase()).ok());
    EXPECT_FALSE(importPkcs12("", SecretBytes("schlüssel"), passphrase()).ok());
    EXPECT_FALSE(importPkcs12(file.substr(0, 900), SecretBytes("schlüssel"), passphrase()).ok());
    EXPECT_FALSE(importPkcs12(file, SecretBytes("schlüssel"), SecretBytes("short")).ok());
}

TEST(Pkcs12, KeysThatAreTooWeakOrForOtherUsesAreRefused) {
    const people::Folder folder;
    EXPECT_FALSE(importPkcs12(exported(folder, commands("rsa:2048") + kExport),
                              SecretBytes("schlüssel"), passphrase())
                     .ok());
    EXPECT_FALSE(importPkcs12(exported(folder, commands(kP256, "keyEncipherment") + kExport),
                              SecretBytes("schlüssel"), passphrase())
                     .ok());
    EXPECT_FALSE(
        importPkcs12(exported(folder, commands(kP256) +
                                          "openssl pkcs12 -export -inkey root.key -in root.crt "
                                          "-out own.p12 -passout 'pass:schlüssel'"),
                     SecretBytes("schlüssel"), passphrase())
            .ok());
}

TEST(Pkcs12, AFileWithoutIntegrityCheckIsRefused) {
    const people::Folder folder;
    const std::string file = exported(folder, commands(kP256) + kExport + " -nomac");
    EXPECT_FALSE(importPkcs12(file, SecretBytes("schlüssel"), passphrase()).ok());
}

}  // namespace
}  // namespace model
