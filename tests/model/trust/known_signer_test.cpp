// SPDX-License-Identifier: Apache-2.0
// Signatures whose certificates lie beside them.
#include "trust/known_signer.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "people/people.h"

namespace model {
namespace {

using people::now;
using testing::HasSubstr;
using testing::IsEmpty;

std::string signedText(const SigningKey& key, std::string_view text = "the hash of a row") {
    const auto signature = signBeside(text, key, now());
    EXPECT_TRUE(signature.ok());
    return signature ? *signature : "";
}

KnownSigner signerOf(const Identity& identity) {
    auto signer = KnownSigner::read(identity.certificates, people::trust().anchors);
    EXPECT_TRUE(signer.ok());
    return std::move(*signer);
}

constexpr std::string_view kText = "the hash of a row";

TEST(KnownSigners, KnowTheirOwnSignatures) {
    const KnownSigner inspector = signerOf(people::inspector());
    const KnownSigner manager = signerOf(people::manager());
    EXPECT_EQ(inspector.facts().name, people::kInspectorName);
    EXPECT_TRUE(inspector.trusted());
    EXPECT_THAT(inspector.fault(kText, signedText(people::inspectorKey())), IsEmpty());
    EXPECT_THAT(manager.fault(kText, signedText(people::managerKey())), IsEmpty());
    EXPECT_THAT(manager.fault(kText, signedText(people::inspectorKey())),
                HasSubstr("another certificate"));
    EXPECT_THAT(inspector.fault("another hash", signedText(people::inspectorKey())),
                HasSubstr("something else"));
    EXPECT_THAT(inspector.fault(kText, ""), HasSubstr("form"));
    EXPECT_THAT(inspector.fault(kText, "text"), HasSubstr("form"));
}

TEST(KnownSigners, TakeNoSignatureThatHoldsMore) {
    const KnownSigner inspector = signerOf(people::inspector());
    const auto withCertificates = signDetached(kText, people::inspectorKey(), now());
    ASSERT_TRUE(withCertificates.ok());
    EXPECT_THAT(inspector.fault(kText, *withCertificates), HasSubstr("more than a signature"));
    EXPECT_THAT(inspector.fault(kText, signedText(people::inspectorKey()) + '\0'),
                HasSubstr("form"));
}

TEST(KnownSigners, SeeEveryChangedByte) {
    for (const auto* person : {&people::inspector(), &people::manager()}) {
        const KnownSigner signer = signerOf(*person);
        const std::string whole = signedText(person == &people::manager() ? people::managerKey()
                                                                          : people::inspectorKey());
        for (std::size_t i = 0; i < whole.size(); ++i)
            for (const int bit : {1, 0x20, 0x80}) {
                std::string changed = whole;
                changed[i] = static_cast<char>(changed[i] ^ bit);
                EXPECT_NE(signer.fault(kText, changed), "") << i;
            }
    }
}

TEST(KnownSigners, AgreeWithTheVerificationOfSingleSignatures) {
    const std::string signature = signedText(people::inspectorKey());
    TrustedCertificates trusted = people::trust();
    trusted.intermediates.push_back(people::inspector().certificates.front());
    const auto report = verifyDetached(kText, signature, trusted, now());
    ASSERT_TRUE(report.ok());
    EXPECT_TRUE(report->trusted());
    EXPECT_EQ(report->signer->fingerprint, signerOf(people::inspector()).facts().fingerprint);
}

TEST(KnownSigners, SayWhoVouchesForThemAndSinceWhen) {
    const auto alone = KnownSigner::read(people::inspector().certificates, {});
    ASSERT_TRUE(alone.ok());
    EXPECT_FALSE(alone->trusted());
    const KnownSigner inspector = signerOf(people::inspector());
    EXPECT_TRUE(inspector.validAt(now()));
    EXPECT_TRUE(inspector.validAt(inspector.facts().validUntil));
    EXPECT_FALSE(inspector.validAt(inspector.facts().validUntil + std::chrono::seconds(1)));
    EXPECT_FALSE(inspector.validAt(inspector.facts().validFrom - std::chrono::seconds(1)));
    EXPECT_FALSE(KnownSigner::read({}, {}).ok());
    EXPECT_FALSE(KnownSigner::read({"no certificate"}, {}).ok());
}

}  // namespace
}  // namespace model
