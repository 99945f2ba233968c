// SPDX-License-Identifier: Apache-2.0
#include "trust/signature.h"

#include <array>
#include <gtest/gtest.h>

#include "people/people.h"
#include "people/shell.h"

namespace model {
namespace {

using people::kDay;
using people::now;

constexpr std::string_view kRecord = "casting 4711, zone Z1: acceptable";

std::string signedBy(const SigningKey& key) {
    auto signature = signDetached(kRecord, key, now());
    EXPECT_TRUE(signature.ok()) << signature.error().message();
    return signature.ok() ? *signature : "";
}

SignatureReport reportOn(std::string_view signature, const TrustedCertificates& trusted,
                         UtcTime at) {
    auto report = verifyDetached(kRecord, signature, trusted, at);
    EXPECT_TRUE(report.ok());
    return report.ok() ? *report : SignatureReport{};
}

class Signature : public testing::TestWithParam<const SigningKey& (*)()> {};
class SignatureOracle : public Signature {};

TEST_P(SignatureOracle, OpensslVerifiesItAsCadesAgainstTheAuthority) {
    const people::Folder folder;
    folder.write("record", kRecord);
    folder.write("signature", signedBy(GetParam()()));
    folder.write("ca.pem", certificateToPem(people::authority().certificate()));
    const std::string verify =
        "openssl cms -verify -cades -binary -inform DER -in signature -content record -CAfile "
        "ca.pem -purpose any -out got && cmp got record";
    const auto verified = folder.run(verify);
    EXPECT_EQ(verified.code, 0) << verified.output;
    folder.write("record", "casting 4711, zone Z1: not acceptable");
    EXPECT_NE(folder.run(verify).code, 0);
}

// ETSI EN 319 142-1, 6.3: no signing-time attribute in a PAdES baseline signature (grade M).
TEST_P(SignatureOracle, OpensslFindsThreeSignedAttributesAndNoSigningTime) {
    const people::Folder folder;
    folder.write("signature", signedBy(GetParam()()));
    const auto printed = folder.run("openssl cms -cmsout -print -inform DER -in signature");
    ASSERT_EQ(printed.code, 0) << printed.output;
    EXPECT_TRUE(printed.says("contentType"));
    EXPECT_TRUE(printed.says("messageDigest"));
    EXPECT_TRUE(printed.says("id-smime-aa-signingCertificateV2"));
    EXPECT_FALSE(printed.says("signingTime"));
    EXPECT_FALSE(printed.says("SMIME-CAPS"));
}

TEST_P(Signature, IsIntactAndTrusted) {
    const SignatureReport report = reportOn(signedBy(GetParam()()), people::trust(), now());
    EXPECT_TRUE(report.trusted()) << testing::PrintToString(report.remarks);
    EXPECT_TRUE(report.certificateNamed);
    EXPECT_TRUE(report.revocationChecked);
    EXPECT_FALSE(report.revocationOutOfDate);
    EXPECT_FALSE(report.timeStamp);
    EXPECT_TRUE(report.remarks.empty());
}

TEST_P(Signature, KeepsWithinItsAnnouncedLength) {
    EXPECT_LE(signedBy(GetParam()()).size(), longestSignature(GetParam()()));
}

TEST_P(Signature, DoesNotFitOtherContent) {
    const auto report = verifyDetached("casting 4711, zone Z1: not acceptable",
                                       signedBy(GetParam()()), people::trust(), now());
    ASSERT_TRUE(report.ok());
    EXPECT_FALSE(report->contentUnchanged);
    EXPECT_TRUE(report->signatureFits);
    EXPECT_FALSE(report->intact());
}

TEST_P(Signature, NoBitOfItCanBeFlippedUnseen) {
    const std::string signature = signedBy(GetParam()());
    const TrustedCertificates trusted = people::trust();
    for (std::size_t byte = 0; byte < signature.size(); ++byte) {
        std::string flipped = signature;
        flipped[byte] = static_cast<char>(flipped[byte] ^ (1 << (byte % 8)));
        const auto report = verifyDetached(kRecord, flipped, trusted, now());
        EXPECT_FALSE(report.ok() && report->trusted()) << "byte " << byte;
        EXPECT_FALSE(report.ok() && report->intact()) << "byte " << byte;
    }
}

TEST_P(Signature, BareSignaturesFitTheirBytesAndKeyAlone) {
    const auto signature = signBare(kRecord, GetParam()());
    ASSERT_TRUE(signature.ok());
    const std::string own = GetParam()().certificates().front();
    EXPECT_TRUE(bareSignatureFits(kRecord, *signature, own));
    EXPECT_FALSE(bareSignatureFits("else", *signature, own));
    EXPECT_FALSE(bareSignatureFits(kRecord, *signature, people::thirdParty().certificates.front()));
    EXPECT_FALSE(bareSignatureFits(kRecord, "", own));
    EXPECT_FALSE(bareSignatureFits(kRecord, *signature, "no certificate"));
}

INSTANTIATE_TEST_SUITE_P(Keys, Signature,
                         testing::Values(&people::inspectorKey, &people::managerKey));
INSTANTIATE_TEST_SUITE_P(Keys, SignatureOracle,
                         testing::Values(&people::inspectorKey, &people::managerKey));

TEST(SignatureFacts, PartsAreSignedAsIfTheyWereOneText) {
    const std::array<std::string_view, 3> parts{"casting 4711, ", "", "zone Z1: acceptable"};
    const auto signature = signDetached(parts, people::inspectorKey(), now());
    ASSERT_TRUE(signature.ok());
    EXPECT_TRUE(reportOn(*signature, people::trust(), now()).trusted());
    const auto other =
        verifyDetached(parts, signedBy(people::inspectorKey()), people::trust(), now());
    EXPECT_TRUE(other.ok() && other->trusted());
}

TEST(SignatureFacts, WithoutTheAuthorityItIsIntactButNotTrusted) {
    const SignatureReport report = reportOn(signedBy(people::inspectorKey()), {}, now());
    EXPECT_TRUE(report.intact());
    EXPECT_FALSE(report.chainTrusted);
    EXPECT_FALSE(report.trusted());
    EXPECT_FALSE(report.revocationChecked);
    ASSERT_TRUE(report.signer);
    EXPECT_EQ(report.signer->name, people::kInspectorName);
}

TEST(SignatureFacts, AnotherAuthorityOfTheSameNameIsNotTrusted) {
    const auto twin = Authority::create({.name = "Quillmere inspection authority",
                                         .organisation = "Quillmere Gießerei",
                                         .country = "DE",
                                         .from = now() - kDay,
                                         .until = now() + 7300 * kDay},
                                        people::passphrase());
    ASSERT_TRUE(twin.ok());
    TrustedCertificates trusted;
    trusted.anchors = twin->certificates;
    const SignatureReport report = reportOn(signedBy(people::inspectorKey()), trusted, now());
    EXPECT_TRUE(report.intact());
    EXPECT_FALSE(report.trusted());
}

TEST(SignatureFacts, DatesAreToldApart) {
    const std::string signature = signedBy(people::inspectorKey());
    const SignatureReport late = reportOn(signature, people::trust(), now() + 731 * kDay);
    EXPECT_TRUE(late.intact() && late.chainTrusted && late.expired);
    EXPECT_FALSE(late.notYetValid);
    EXPECT_FALSE(late.trusted());
    const SignatureReport early =
        reportOn(signature, people::trust(), now() - kDay - std::chrono::hours(2));
    EXPECT_TRUE(early.intact() && early.chainTrusted && early.notYetValid);
    EXPECT_FALSE(early.trusted());
}

TEST(SignatureFacts, RevocationIsToldWithItsDateAndReason) {
    const TrustedCertificates trusted = people::trustWithout(people::inspector(), now());
    const SignatureReport report = reportOn(signedBy(people::inspectorKey()), trusted, now());
    EXPECT_TRUE(report.intact() && report.chainTrusted && report.revocationChecked);
    ASSERT_TRUE(report.revoked);
    EXPECT_EQ(report.revoked->since, now());
    EXPECT_EQ(report.revoked->reason, "the key may be known to others");
    EXPECT_FALSE(report.trusted());
    const SignatureReport before =
        reportOn(signedBy(people::inspectorKey()), trusted, now() - std::chrono::seconds(1));
    EXPECT_TRUE(before.trusted());
}

TEST(SignatureFacts, AnOverdueOrDamagedListIsSaid) {
    TrustedCertificates trusted = people::trust();
    const std::string signature = signedBy(people::inspectorKey());
    EXPECT_TRUE(reportOn(signature, trusted, now() + 31 * kDay).revocationOutOfDate);
    trusted.revocationLists.front().back() ^= 1;
    const SignatureReport report = reportOn(signature, trusted, now());
    EXPECT_FALSE(report.revocationChecked);
    EXPECT_FALSE(report.remarks.empty());
}

TEST(SignatureFacts, ARevokedOrExpiredKeyRefusesToSign) {
    const auto lists = people::trustWithout(people::inspector(), now()).revocationLists;
    EXPECT_FALSE(signDetached(kRecord, people::inspectorKey(), now(), lists).ok());
    EXPECT_FALSE(signDetached(kRecord, people::inspectorKey(), now() + 731 * kDay).ok());
}

TEST(SignatureFacts, WhatIsNoSignatureIsAnError) {
    for (const std::string& bytes :
         {std::string(), std::string("text"), std::string(5000, '\x30'),
          people::authority().certificate(), signedBy(people::inspectorKey()).substr(0, 700)})
        EXPECT_FALSE(verifyDetached(kRecord, bytes, people::trust(), now()).ok());
}

TEST(SignatureFacts, BytesBehindItAreNotAccountedFor) {
    const auto report = reportOn(signedBy(people::inspectorKey()) + '\0', people::trust(), now());
    EXPECT_FALSE(report.intact());
}

// A signature with signing-time and two signers, as the openssl command makes it.
TEST(SignatureFacts, TwoSignersInOneAreRefused) {
    const people::Folder folder;
    folder.write("record", kRecord);
    const auto made = folder.run(
        "for n in a b; do openssl req -x509 -newkey ec -pkeyopt ec_paramgen_curve:P-256 -nodes "
        "-keyout $n.key -out $n.crt -subj /CN=$n; done; openssl cms -sign -binary -in record "
        "-signer a.crt -inkey a.key -signer b.crt -inkey b.key -outform DER -out both");
    ASSERT_EQ(made.code, 0) << made.output;
    EXPECT_FALSE(verifyDetached(kRecord, folder.read("both"), people::trust(), now()).ok());
}

}  // namespace
}  // namespace model
