// SPDX-License-Identifier: Apache-2.0
// What a certificate says of test conditions, repairs and files, and when it is not made.
#include <functional>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "certificate/certificate.h"
#include "sample/sample_casting.h"

namespace {

using reports::asText;
using reports::certificateOf;
using testing::HasSubstr;
using testing::Not;

std::string textOf(const sample::Sample& sample) {
    const auto document = certificateOf(sample.input());
    EXPECT_TRUE(document.ok()) << (document.ok() ? "" : document.error().message());
    std::string text = document.ok() ? asText(*document) : std::string();
    // No-break spaces hold values and units together; a reader sees spaces.
    for (std::size_t at = 0; (at = text.find("\u00a0", at)) != std::string::npos;)
        text.replace(at, 2, " ");
    return text;
}

std::string refusalOf(const sample::Sample& sample) {
    const auto document = certificateOf(sample.input());
    return document.ok() ? "" : document.error().message();
}

int countOf(const std::string& text, const std::string& part) {
    int count = 0;
    for (std::size_t at = 0; (at = text.find(part, at)) != std::string::npos; ++at) ++count;
    return count;
}

TEST(Conditions, ThatNobodyStatedAreSaidNotToBe) {
    const std::string text = textOf(sample::soundCasting());
    EXPECT_EQ(countOf(text, "Test conditions not stated."), 2) << "first page and examination";
    EXPECT_THAT(text, Not(HasSubstr("Place of test")));
    EXPECT_THAT(text, HasSubstr("Not recorded here and needed before release: place of test"));
}

TEST(Conditions, ThatAreStatedNeedNoExcuse) {
    const std::string text = textOf(sample::recordedCasting());
    EXPECT_THAT(text, Not(HasSubstr("Test conditions not stated")));
    EXPECT_THAT(text, Not(HasSubstr("Not recorded in this document")));
}

TEST(Conditions, StatedForSomeAreSaidNotToBeForTheOthers) {
    sample::Sample sample = sample::recordedCasting();
    sample.file.examinations[2].conditions = {};
    EXPECT_THAT(textOf(sample), HasSubstr("Test conditions not stated: Z3 PT, finish machined."));
}

TEST(Conditions, ThatMustBeKnownSayThatTheyAreNotRecorded) {
    sample::Sample sample = sample::recordedCasting();
    sample.file.examinations[0].conditions = {};
    sample.file.examinations[0].conditions.piecesTested = "QM-26-0147";
    const std::string text = textOf(sample);
    for (const char* line :
         {"Purpose: not recorded", "Place of test: not recorded", "Test standard: not recorded",
          "Heat-treatment state {B04}: not recorded", "Deviations, exclusions: none recorded",
          "Residual field: not recorded; ordered: at most 0.5 kA/m"})
        EXPECT_THAT(text, HasSubstr(line));
}

TEST(Conditions, TakeTheStandardFromTheProcedureWhereItIsNotStated) {
    sample::Sample sample = sample::recordedCasting();
    sample.file.examinations[0].conditions.testStandard.clear();
    model::Procedure procedure;
    procedure.number = "QP-MT";
    procedure.revision = "6";
    procedure.standards = "ISO 9934-1:2016, Trial";
    sample.file.used.procedures = {procedure};
    EXPECT_THAT(textOf(sample), HasSubstr("Test standard: ISO 9934-1:2016, Trial"));
}

TEST(Conditions, ThatAreTheSameArePrintedOnce) {
    sample::Sample sample = sample::repairedCasting();
    const std::string text = textOf(sample);
    EXPECT_EQ(countOf(text, "Magnetisation: "), 1);
    EXPECT_EQ(countOf(text, "Test conditions: as for Z1 MT, heat treated."), 1);
    sample.file.examinations[1].conditions.place = "Bay 5";
    EXPECT_EQ(countOf(textOf(sample), "Magnetisation: "), 2);
}

TEST(Conditions, FindingsAreNamedOnTheFirstPageAndPrintedWithTheReason) {
    const std::string text = textOf(sample::recordedCasting());
    EXPECT_THAT(
        text,
        HasSubstr("called for a reason (see \"Examinations\"): Z1 MT, heat treated (MT-19)."));
    EXPECT_THAT(text,
                HasSubstr("• MT-19: Coating: is 60 um; it has to be <= 50 um (ISO 9934-1:2016 7, "
                          "R). Reason for going on, by Q-7: sensitivity proven on piece K-2"));
}

TEST(Conditions, ThatStandAgainstItKeepItFromRelease) {
    for (const model::Reaction reaction : {model::Reaction::Warn, model::Reaction::Block}) {
        sample::Sample sample = sample::recordedCasting();
        sample.findings[0][0].reaction = reaction;
        sample.findings[0][0].acknowledged.clear();
        EXPECT_THAT(
            refusalOf(sample),
            HasSubstr("the test conditions of Z1 MT, heat treated stand against it: MT-19"));
        sample.issue.forRelease = false;
        const std::string text = textOf(sample);
        EXPECT_THAT(text, HasSubstr("Test conditions not kept: Z1 MT, heat treated (MT-19)."));
        EXPECT_THAT(text, HasSubstr("(ISO 9934-1:2016 7, R). Not settled."));
    }
}

TEST(Conditions, ThatAreOnlySaidOrNotedDoNotKeepItFromRelease) {
    sample::Sample sample = sample::recordedCasting();
    sample.findings[0][0].acknowledged.clear();
    sample.findings[0][0].onlySaid = true;
    EXPECT_THAT(textOf(sample), Not(HasSubstr("MT-19")));
    sample.findings[0][0].onlySaid = false;
    sample.findings[0][0].reaction = model::Reaction::Log;
    EXPECT_THAT(textOf(sample), HasSubstr("• MT-19: Coating"));
}

TEST(Conditions, OfAnExaminationThatDoesNotCountDoNotKeepItFromRelease) {
    sample::Sample sample = sample::repairedCasting();
    sample.findings[0] = sample.findings[1];
    sample.findings[0][0].reaction = model::Reaction::Block;
    EXPECT_EQ(refusalOf(sample), "");
}

TEST(Conditions, OfAnotherNumberOfExaminationsAreRefused) {
    sample::Sample sample = sample::recordedCasting();
    sample.findings.pop_back();
    EXPECT_THAT(refusalOf(sample), HasSubstr("findings on 2 examinations"));
}

TEST(People, WithoutACertificateOnTheDayHaveNoLevel) {
    sample::Sample sample = sample::recordedCasting();
    for (model::Qualification& held : sample.file.used.qualifications)
        if (held.person == "Q-2") held.expiresOn = "2026-11-19";
    EXPECT_THAT(textOf(sample), HasSubstr("Νίκη Αλεξίου\nlevel not recorded\nevaluated by Q-7"));
}

TEST(People, HaveNotTheLevelOfWhoeverElseSigned) {
    // Z3 was examined by somebody whom the registers do not know, and signed by Q-2.
    EXPECT_THAT(textOf(sample::recordedCasting()),
                HasSubstr("李雷 (鋳造検査)\nlevel not recorded"));
}

TEST(People, OfLevelOneHaveNotEvaluated) {
    sample::Sample sample = sample::recordedCasting();
    for (model::ExaminationDraft& draft : sample.file.examinations)
        draft.conditions.evaluatedBy.clear();
    EXPECT_THAT(textOf(sample), HasSubstr("until 2028-12-31\nevaluator not recorded"));
    for (model::Qualification& held : sample.file.used.qualifications) held.level = "2";
    EXPECT_THAT(textOf(sample), HasSubstr("until 2028-12-31\nwho also evaluated"));
}

TEST(Repairs, ThatAreOpenOutrankAnAcceptableWord) {
    sample::Sample sample = sample::repairedCasting();
    sample.file.dossier.heatTreatments.clear();
    EXPECT_THAT(refusalOf(sample), HasSubstr("a nonconformance of the casting is open"));
    sample.issue.forRelease = false;
    const std::string text = textOf(sample);
    EXPECT_THAT(text, HasSubstr("[x] DOES NOT CONFORM\nThe examinations that count are acceptable. "
                                "What is open: see \"Repairs and scope\"."));
    EXPECT_THAT(text, Not(HasSubstr("Conforms")));
    EXPECT_THAT(text,
                HasSubstr("Still to be done: weld WR-1: heat treatment after welding is missing"));
}

TEST(Repairs, LeaveNothingOutOfTheRegisters) {
    const std::string text = textOf(sample::repairedCasting());
    for (const char* part :
         {"Wall left 26 mm", "Holding temperature 620 °C", "Welding procedure specification WPS-12",
          "Welder's approval WA-31", "Filler batch F-220", "Chart CH-8",
          "not known, treated as major", "magnetic particle\nof a cavity"})
        EXPECT_THAT(text, HasSubstr(part));
}

TEST(Concession, NeverMakesTheWordBetter) {
    const std::string text = textOf(sample::concededCasting());
    EXPECT_THAT(text,
                HasSubstr("[x] NOT ACCEPTABLE\nUnder concession no. CO-5 (purchaser's PC-2026-88): "
                          "beyond the limits, and accepted by the purchaser in writing."));
    EXPECT_THAT(text, HasSubstr("| CO-5 | – | purchaser's concession PC-2026-88 | – | 33333333 "));
    sample::Sample without = sample::concededCasting();
    without.file.dossier.concessions.clear();
    without.issue.forRelease = false;
    EXPECT_THAT(textOf(without), HasSubstr("[x] NOT ACCEPTABLE\nDoes not conform to the order's"));
}

TEST(OtherTests, ThatAreRequiredAndMissingAreNamed) {
    sample::Sample sample = sample::soundCasting();
    sample.file.plan.zones[0].otherTests = {"radiographic"};
    EXPECT_THAT(textOf(sample), HasSubstr("Required and not made: Z1 radiographic test."));
}

TEST(Attachments, StandByNumberRevisionAndHash) {
    sample::Sample sample = sample::recordedCasting();
    const std::string text = textOf(sample);
    // SHA-256 of the eight bytes of the signature of a PNG file, from sha256sum.
    EXPECT_THAT(
        text,
        HasSubstr(
            "| A-3 | B | Flange after cleaning\nzone Z1, indication 1 | flange.png | 4c4b6a3b "));
    EXPECT_THAT(
        text, HasSubstr("| RT-4410 rev. 1 | – | report of the radiographic test | – | 22222222 "));
}

TEST(Photos, AreOnlyListedInADraftWithoutTheirFiles) {
    sample::Sample sample = sample::recordedCasting();
    const auto made = [](const sample::Sample& from) {
        reports::CertificateInput input = from.input();
        input.pictures = nullptr;
        return certificateOf(input);
    };
    EXPECT_FALSE(made(sample).ok());
    sample.issue.forRelease = false;
    const auto document = made(sample);
    ASSERT_TRUE(document.ok());
    EXPECT_THAT(asText(*document), Not(HasSubstr("photo:")));
}

TEST(Photos, OfOtherBytesOrWithoutAreRefusedByName) {
    sample::Sample sample = sample::recordedCasting();
    sample.pictures.begin()->second += "x";
    EXPECT_THAT(refusalOf(sample), HasSubstr("attachment A-3: the file is not the one"));
    sample.pictures.clear();
    EXPECT_THAT(refusalOf(sample), HasSubstr("attachment A-3: it is to be printed"));
}

TEST(Photos, WithoutScaleOrDatumSaySo) {
    sample::Sample sample = sample::recordedCasting();
    sample.file.dossier.attachments[0].scale.clear();
    sample.file.dossier.attachments[0].datum.clear();
    const std::string text = textOf(sample);
    EXPECT_THAT(text, HasSubstr("Scale, in the picture: not recorded"));
    EXPECT_THAT(text, HasSubstr("Datum and direction: not recorded"));
}

}  // namespace
