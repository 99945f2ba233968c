// SPDX-License-Identifier: Apache-2.0
#include "signing/sign_pdf.h"

#include <gtest/gtest.h>

#include "people/time_stamps.h"
#include "signed_files.h"
#include "signing/appearance.h"
#include "signing/signature_fields.h"

namespace reports {
namespace {

using files::countOf;

TEST(SignPdf, EveryRevisionKeepsTheOneBeforeByteForByte) {
    EXPECT_TRUE(files::prepared().starts_with(files::unsignedFile()));
    EXPECT_TRUE(files::once().starts_with(files::prepared()));
    EXPECT_TRUE(files::twice().starts_with(files::once()));
    EXPECT_TRUE(files::thrice().starts_with(files::twice()));
    EXPECT_GT(files::thrice().size(), files::twice().size());
}

TEST(SignPdfOracle, PdfsigFindsAllThreeValidAndTrusted) {
    const auto seen = files::Onlookers(files::thrice()).pdfsig();
    EXPECT_EQ(countOf(seen.output, "Signature is Valid."), 3U) << seen.output;
    EXPECT_EQ(countOf(seen.output, "Certificate is Trusted."), 3U);
    EXPECT_EQ(countOf(seen.output, "ETSI.CAdES.detached"), 3U);
    EXPECT_EQ(countOf(seen.output, "Total document signed"), 1U);
    EXPECT_EQ(countOf(seen.output, "Not total document signed"), 2U);
    for (const char* name : {people::kInspectorName, people::kManagerName, people::kThirdPartyName})
        EXPECT_TRUE(seen.says(name)) << name;
}

// mutool knows a fixed set of authorities and cannot be told of another: it checks digest and
// signature, and complains of the certificate.
TEST(SignPdfOracle, MutoolVerifiesEachAndSeesTheLastUnchanged) {
    const auto seen = files::Onlookers(files::thrice()).mutool();
    EXPECT_EQ(countOf(seen.output, "The signature is valid but there have been edits"), 2U)
        << seen.output;
    EXPECT_EQ(countOf(seen.output, "The document is unchanged since signing."), 1U);
    EXPECT_FALSE(seen.says("Digest"));
}

TEST(SignPdfOracle, QpdfFindsNothingToComplainOf) {
    for (const std::string* pdf : {&files::prepared(), &files::once(), &files::thrice()}) {
        const auto seen = files::Onlookers(*pdf).qpdf();
        EXPECT_EQ(seen.code, 0) << seen.output;
        EXPECT_FALSE(seen.says("WARNING"));
    }
}

// The bytes outside the gap, and the DER inside it, handed to the openssl command.
TEST(SignPdfOracle, OpensslVerifiesTheCoveredBytes) {
    const std::string& pdf = files::once();
    const std::size_t begin = pdf.rfind("/Contents <") + 10;
    const std::size_t end = pdf.find('>', begin) + 1;
    std::string der;
    for (std::size_t i = begin + 1; i + 1 < end; i += 2)
        der += static_cast<char>(std::stoi(pdf.substr(i, 2), nullptr, 16));
    const files::Onlookers onlookers(pdf);
    onlookers.folder().write("covered", pdf.substr(0, begin) + pdf.substr(end));
    onlookers.folder().write("signature", der);
    const auto seen = onlookers.folder().run(
        "openssl cms -verify -cades -binary -inform DER -in signature -content covered -CAfile "
        "ca.pem -purpose any -out got");
    EXPECT_EQ(seen.code, 0) << seen.output;
}

TEST(SignPdfOracle, TheAppearanceIsOnThePage) {
    const auto text =
        files::Onlookers(files::thrice()).folder().run("pdftotext -raw -f 1 -l 1 one.pdf -");
    for (const char* name : {people::kInspectorName, people::kManagerName, people::kThirdPartyName})
        EXPECT_TRUE(text.says(name)) << name;
}

TEST(SignPdfOracle, ATimeStampedSignatureIsValidToo) {
    const people::LocalTimeStamps clock;
    const model::Rfc3161Service service = clock.service();
    const std::string pdf = files::signedIn(files::prepared(), "Release", people::kManagerName,
                                            people::managerKey(), &service);
    const files::Onlookers onlookers(pdf);
    EXPECT_TRUE(onlookers.pdfsig().says("Signature is Valid."));
    EXPECT_TRUE(onlookers.mutool().says("The document is unchanged since signing."));
    EXPECT_EQ(onlookers.qpdf().code, 0);
    model::TrustedCertificates trusted = people::trust();
    trusted.timeStampAnchors = {clock.authority()};
    const model::UtcTime later = model::systemClock().now() + std::chrono::seconds(2);
    const auto report = verifyPdf(pdf, trusted, later);
    ASSERT_TRUE(report.ok());
    EXPECT_EQ(report->outcome, PdfOutcome::IntactAndTrusted);
    ASSERT_TRUE(report->signatures.at(0).signature->timeStamp);
    EXPECT_TRUE(report->signatures[0].signature->timeStamp->trusted);
}

TEST(SignPdf, AFieldIsSignedOnceOnly) {
    PdfSigning signing;
    signing.field = "Inspection";
    signing.time = people::now();
    const auto again = signPdf(files::once(), signing, people::managerKey());
    ASSERT_FALSE(again.ok());
    EXPECT_NE(again.error().message().find("signed already"), std::string::npos);
}

TEST(SignPdf, ExpiredAndRevokedIdentitiesAreRefused) {
    PdfSigning signing;
    signing.field = "Inspection";
    signing.time = people::now() + 800 * people::kDay;
    EXPECT_FALSE(signPdf(files::prepared(), signing, people::inspectorKey()).ok());
    signing.time = people::now();
    const auto lists = people::trustWithout(people::inspector(), people::now()).revocationLists;
    EXPECT_FALSE(signPdf(files::prepared(), signing, people::inspectorKey(), lists).ok());
}

TEST(SignPdf, WhatCannotBeSignedSafelyIsRefused) {
    PdfSigning signing;
    signing.field = "Inspection";
    signing.time = people::now();
    const auto refused = [&](const std::string& pdf) {
        return !signPdf(pdf, signing, people::inspectorKey()).ok() &&
               !addSignatureFields(pdf, {{"Other", 0, 0, 0, 0, 0}}).ok();
    };
    EXPECT_TRUE(refused(""));
    EXPECT_TRUE(refused("no PDF"));
    const people::Folder folder;
    folder.write("one.pdf", files::prepared());
    ASSERT_EQ(folder
                  .run("qpdf --encrypt '' owner 256 -- one.pdf encrypted.pdf; qpdf "
                       "--object-streams=generate one.pdf streams.pdf")
                  .code,
              0);
    EXPECT_TRUE(refused(folder.read("encrypted.pdf")));
    EXPECT_TRUE(refused(folder.read("streams.pdf")));
    std::string shifted = files::prepared();
    shifted.insert(shifted.find("\n1 0 obj") + 1, "\n");
    EXPECT_TRUE(refused(shifted));
    EXPECT_TRUE(refused(files::prepared().substr(0, files::prepared().size() - 40)));
}

TEST(SignatureFields, UnfitFieldsAreRefused) {
    const auto add = [](const std::string& pdf, const SignatureField& field) {
        return addSignatureFields(pdf, {field}).ok();
    };
    EXPECT_FALSE(addSignatureFields(files::unsignedFile(), {}).ok());
    EXPECT_FALSE(add(files::unsignedFile(), {"A", 99, 0, 0, 10, 10}));
    EXPECT_FALSE(add(files::unsignedFile(), {"A.B", 0, 0, 0, 10, 10}));
    EXPECT_FALSE(add(files::unsignedFile(), {"", 0, 0, 0, 10, 10}));
    EXPECT_FALSE(add(files::unsignedFile(), {"A", 0, 0, 0, -10, 10}));
    EXPECT_FALSE(add(files::prepared(), {"Release", 0, 0, 0, 10, 10}));
    EXPECT_FALSE(add(files::once(), {"Late", 0, 0, 0, 10, 10}));
    EXPECT_TRUE(add(files::prepared(), {"Another", 0, 0, 0, 10, 10}));
}

TEST(Appearance, TextThatDoesNotFitIsRefused) {
    EXPECT_FALSE(drawAppearance({std::string(2000, 'W')}, 30, 12).ok());
    EXPECT_FALSE(drawAppearance({"A"}, 5, 12).ok());
    EXPECT_TRUE(drawAppearance({"A"}, 30, 12).ok());
}

}  // namespace
}  // namespace reports
