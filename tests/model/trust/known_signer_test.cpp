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

// The first one is read in full, those after it are only held against it.
TEST(KnownSigners, CheckTheNextOnesAsMuchAsTheFirst) {
    for (const auto* person : {&people::inspector(), &people::manager()}) {
        const KnownSigner signer = signerOf(*person);
        const SigningKey& key =
            person == &people::manager() ? people::managerKey() : people::inspectorKey();
        std::vector<std::string> texts;
        std::vector<std::string> signatures;
        for (int i = 0; i < 40; ++i) {
            texts.push_back("row " + std::to_string(i));
            signatures.push_back(signedText(key, texts.back()));
            EXPECT_THAT(signer.fault(texts.back(), signatures.back()), IsEmpty()) << i;
        }
        for (std::size_t i = 1; i < texts.size(); ++i) {
            EXPECT_NE(signer.fault(texts[i], signatures[i - 1]), "") << i;
            EXPECT_NE(signer.fault(texts[i - 1], signatures[i]), "") << i;
        }
        const std::string& last = signatures.back();
        for (std::size_t i = 0; i < last.size(); ++i) {
            std::string changed = last;
            changed[i] = static_cast<char>(changed[i] ^ 1);
            EXPECT_NE(signer.fault(texts.back(), changed), "") << i;
        }
    }
    // Another person's of the same length.
    const KnownSigner inspector = signerOf(people::inspector());
    const KnownSigner thirdParty = signerOf(people::thirdParty());
    for (int i = 0; i < 20; ++i) {
        EXPECT_THAT(inspector.fault(kText, signedText(people::inspectorKey())), IsEmpty());
        EXPECT_NE(inspector.fault(kText, signedText(people::thirdPartyKey())), "");
        EXPECT_THAT(thirdParty.fault(kText, signedText(people::thirdPartyKey())), IsEmpty());
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
