// SPDX-License-Identifier: Apache-2.0
// The certificate as it is made for release.
#include <functional>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "certificate/certificate.h"
#include "sample/sample_casting.h"

namespace {

using reports::asText;
using reports::certificateOf;
using testing::AllOf;
using testing::HasSubstr;
using testing::Not;

std::string textOf(const sample::Sample& sample) {
    const auto document = certificateOf(sample.input());
    EXPECT_TRUE(document.ok()) << (document.ok() ? "" : document.error().message());
    return document.ok() ? asText(*document) : std::string();
}

TEST(CertificateForRelease, CarriesNoMarkOfADocumentThatNobodyReleased) {
    const sample::Sample sample = sample::signedCasting();
    const auto document = certificateOf(sample.input());
    ASSERT_TRUE(document.ok()) << document.error().message();
    EXPECT_EQ(document->watermark, "");
    EXPECT_TRUE(document->pageNotices.empty());
    const std::string text = textOf(sample);
    EXPECT_THAT(text, Not(HasSubstr("NOT RELEASED")));
    EXPECT_THAT(text, Not(HasSubstr("Not released.")));
    EXPECT_THAT(text, Not(HasSubstr("not signed")));
    EXPECT_THAT(text, HasSubstr("VALID ONLY WHEN SIGNED\nThis document is released when every "
                                "field under \"Signatures\" on its last page is signed."));
}

TEST(CertificateForRelease, OfADemonstrationSaysSoOnEveryPage) {
    sample::Sample sample = sample::signedCasting();
    sample.issue.demonstration = true;
    const auto document = certificateOf(sample.input());
    ASSERT_TRUE(document.ok()) << document.error().message();
    EXPECT_THAT(document->pageNotices, testing::ElementsAre("Demonstration"));
}

TEST(CertificateForRelease, PrintsNumberHeadAndWhatSignaturesProve) {
    const std::string text = textOf(sample::signedCasting());
    for (const char* part :
         {"Certificate number {A03}: QC-2026-0147", "9f86d081 884c7d65 9a2feaa0",
          "they do not replace the qualification of the people who sign",
          "(PAdES baseline B-B) proves little once the signer's certificate has ended",
          "Presented by: Łucja Ødegård-Brüß",
          "Released by {Z03}: the QA manager who signed in the field \"Release\"",
          "Date of issue {Z02}: that of the signature for release; prepared on 2026-11-25"})
        EXPECT_THAT(text, HasSubstr(part));
}

TEST(CertificateForRelease, PrintsTheHeadsNumberBeforeItsHashInGroups) {
    sample::Sample sample = sample::signedCasting();
    sample.issue.historyHead = "88:" + *sample.issue.historyHead;
    EXPECT_THAT(textOf(sample), HasSubstr(": 88:9f86d081 884c7d65 9a2feaa0 "));
}

TEST(CertificateForRelease, HasTheSignaturesThatItsTypeNeedsAtItsEnd) {
    sample::Sample sample = sample::signedCasting();
    const auto fieldsOf = [&sample](const char* type) {
        sample.file.order.certificateType = type;
        const auto document = certificateOf(sample.input());
        std::vector<std::string> fields;
        if (!document) return fields;
        const auto* boxes = std::get_if<reports::SignatureBoxes>(&document->blocks.back());
        if (boxes == nullptr) return fields;
        for (const auto& box : boxes->boxes) fields.push_back(box.field);
        return fields;
    };
    EXPECT_THAT(fieldsOf("2.2"), testing::ElementsAre("Inspector", "Release"));
    EXPECT_THAT(fieldsOf("3.1"), testing::ElementsAre("Inspector", "Release"));
    EXPECT_THAT(fieldsOf("3.2"), testing::ElementsAre("Inspector", "Third party", "Release"));
}

TEST(CertificateForRelease, NamesWhoSignedEachRecordAndWhen) {
    const std::string text = textOf(sample::signedCasting());
    EXPECT_THAT(text, HasSubstr("Recorded and signed: Łucja Ødegård-Brüß, 2026-11-24T08:00:00Z"));
    EXPECT_THAT(text, HasSubstr("Recorded and signed: Νίκη Αλεξίου, 2026-11-24T09:30:00Z"));
    EXPECT_THAT(text, HasSubstr("| Νίκη Αλεξίου, 2026-11-24T09:30:00Z |"));
}

TEST(CertificateForRelease, PrintsARejectionWithItsReasonOnTheFirstPageAndAtTheExamination) {
    sample::Sample sample = sample::signedCasting();
    sample.records[1].rejected = {"Νίκη Αλεξίου", "2026-11-24T09:30:00Z",
                                  "broken edge across the sealing face"};
    EXPECT_FALSE(certificateOf(sample.input()).ok()) << "the verdict does not know of it";
    sample.verdict.examinations[1].word = model::Word::NotAcceptable;
    sample.verdict.word = model::Word::NotAcceptable;
    const std::string text = textOf(sample);
    EXPECT_THAT(text,
                HasSubstr("NOT ACCEPTABLE\nDoes not conform to the order's requirements on the "
                          "tests named here.\nExaminations that count: 1. Acceptable: 0, not "
                          "acceptable: 1, not judged: 0."));
    EXPECT_THAT(text, HasSubstr("rejected by Νίκη Αλεξίου: broken edge across the sealing face"));
    EXPECT_THAT(text, HasSubstr("[x] REJECTED\nRejected by Νίκη Αλεξίου on 2026-11-24T09:30:00Z, "
                                "whatever the limits allow, because: broken edge"));
}

TEST(CertificateForRelease, PrintsBothRepeatsAndWhyOneWasDeclaredInvalid) {
    sample::Sample sample = sample::signedCasting();
    sample.records[0].invalidated = {"Ansel Quarrie", "2026-11-25T07:00:00Z",
                                     "the yoke had lost half its lifting force"};
    const std::string text = textOf(sample);
    EXPECT_THAT(text, HasSubstr("[!] DECLARED INVALID\nDeclared invalid by Ansel Quarrie on "
                                "2026-11-25T07:00:00Z because: the yoke had lost half its lifting "
                                "force\nIt does not count."));
    EXPECT_THAT(text, Not(HasSubstr("A later repair cycle or a worse repeat counts")));
    EXPECT_THAT(text, HasSubstr("Declared invalid by a Level 3 and printed all the same: Z1 MT"));
}

TEST(CertificateForRelease, NamesTheCertificateThatItSupersedes) {
    sample::Sample sample = sample::signedCasting();
    EXPECT_THAT(textOf(sample), Not(HasSubstr("supersedes")));
    sample.issue.supersedes = "17";
    EXPECT_THAT(textOf(sample),
                HasSubstr("This certificate supersedes certificate 17, which is no longer valid."));
}

struct Obstacle {
    const char* what;
    std::function<void(sample::Sample&)> make;
    const char* reason;
};

TEST(CertificateForRelease, IsNotMadeOfWhatMustNotBeReleased) {
    const std::vector<Obstacle> obstacles{
        {"no number", [](auto& one) { one.issue.number.reset(); }, "it has no number"},
        {"no head", [](auto& one) { one.issue.historyHead.reset(); }, "head of the history"},
        {"nobody presents", [](auto& one) { one.issue.presentedBy = ""; }, "nobody presents it"},
        {"no type", [](auto& one) { one.file.order.certificateType = ""; }, "no type of EN 10204"},
        {"unattested", [](auto& one) { one.verdict.examinations[1].attested = false; },
         "limit table \"Trial Standard 7:2020\" is not attested"},
        {"unsigned", [](auto& one) { one.records[1].by = ""; },
         "nobody signed the examination Z1 MT"},
        {"no records", [](auto& one) { one.records.clear(); }, "nobody signed the examination"},
        {"too few records", [](auto& one) { one.records.pop_back(); },
         "1 signed records are given, the file has 2 examinations"},
        {"not judged",
         [](auto& one) {
             one.verdict.word = model::Word::NotJudged;
             one.verdict.examinations[1].word = model::Word::NotJudged;
         },
         "what is not judged cannot be released"},
        {"not judged beside what failed",
         [](auto& one) {
             one.verdict.word = model::Word::NotAcceptable;
             one.verdict.examinations[1].word = model::Word::NotJudged;
         },
         "the examination Z1 MT, heat treated, repeat 1 is not judged"},
        {"a required test missing beside what failed",
         [](auto& one) {
             one.verdict.word = model::Word::NotAcceptable;
             one.verdict.examinations[1].word = model::Word::NotAcceptable;
             one.file.plan.zones.push_back(one.file.plan.zones[0]);
             one.file.plan.zones.back().name = "Z2";
         },
         "the zone plan requires a test of Z2 that was not made as required"},
        {"a required test missing",
         [](auto& one) {
             one.file.plan.zones.push_back(one.file.plan.zones[0]);
             one.file.plan.zones.back().name = "Z2";
         },
         "what is not judged cannot be released"},
    };
    for (const Obstacle& obstacle : obstacles) {
        sample::Sample sample = sample::signedCasting();
        obstacle.make(sample);
        const auto document = certificateOf(sample.input());
        ASSERT_FALSE(document.ok()) << obstacle.what;
        EXPECT_EQ(document.error().kind, model::ErrorKind::Input) << obstacle.what;
        EXPECT_THAT(document.error().message(), HasSubstr(obstacle.reason)) << obstacle.what;
    }
}

}  // namespace
