// SPDX-License-Identifier: Apache-2.0
#include "pdf/render.h"

#include <QFile>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <thread>

#include "sample/sample_casting.h"
#include "tools.h"

namespace {

using reports::Paragraph;
using testing::HasSubstr;
using tools::documentOf;
using tools::PdfOnDisk;
using tools::rendered;

reports::Document certificate(sample::Sample sample) {
    sample.issue.demonstration = true;
    const auto document = reports::certificateOf(sample.input());
    EXPECT_TRUE(document.ok());
    return *document;
}

reports::Document paragraph(const std::string& text) {
    return documentOf({Paragraph{Paragraph::Tone::Plain, text}});
}

TEST(Pdf, IsSoundForQpdf) {
    const PdfOnDisk pdf(rendered(certificate(sample::mixedCasting())));
    const auto checked = tools::run("qpdf", {"--check", pdf.path()});
    EXPECT_EQ(checked.code, 0) << checked.output << checked.errors;
    EXPECT_THAT(checked.output, HasSubstr("No syntax or stream encoding errors found"));
}

TEST(Pdf, HasItsTextsInReadableOrderAndSearchable) {
    const std::string text = PdfOnDisk(rendered(certificate(sample::mixedCasting()))).text();
    for (const char* part :
         {"Inspection certificate 3.1", "Łódzka Odlewnia & Søhne", "Łucja Ødegård-Brüß",
          "Νίκη Αλεξίου", "Жанна Щукина", "李雷 (鋳造検査)", "≤ 18 mm", "400 mm² not examined",
          "105 × 148 mm", "182.1 %", "QC-2026-0147", "End of certificate"})
        EXPECT_THAT(text, HasSubstr(part));
}

TEST(Pdf, TellsItsTitleAndLanguageInUtf8) {
    reports::Document document = paragraph("x");
    document.title = "Prüfung Ω 鋳";
    document.subject = "<a & b>";
    const PdfOnDisk pdf(rendered(document));
    EXPECT_THAT(tools::run("pdfinfo", {pdf.path()}).output, HasSubstr("Prüfung Ω 鋳: <a & b>"));
    const std::string metadata = tools::run("pdfinfo", {"-meta", pdf.path()}).output;
    EXPECT_THAT(metadata, HasSubstr("Prüfung Ω 鋳: &lt;a &amp; b&gt;"));
    EXPECT_THAT(metadata, HasSubstr("<rdf:li>en</rdf:li>"));
}

TEST(Pdf, NumbersEveryPageAndCarriesTheNoticesOnEach) {
    const PdfOnDisk pdf(rendered(certificate(sample::mixedCasting())));
    const int pages = pdf.pages();
    ASSERT_GT(pages, 3);
    for (int page = 1; page <= pages; ++page) {
        const std::string text = pdf.text(page);
        EXPECT_THAT(text, HasSubstr("Page " + std::to_string(page) + " of " +
                                    std::to_string(pages) + "\n"));
        EXPECT_THAT(text, HasSubstr("NOT RELEASED"));
        EXPECT_THAT(text, HasSubstr("Demonstration"));
        EXPECT_THAT(text, HasSubstr("Certificate QC-2026-0147, casting QM-26-0147"));
    }
}

TEST(Pdf, HasVerdictPartCriteriaAndScopeOnTheFirstPage) {
    const std::string text = PdfOnDisk(rendered(certificate(sample::mixedCasting()))).text(1);
    for (const char* part : {"NOT ACCEPTABLE", "P-2201", "Trial Standard 7:2020", "linear LM 4",
                             "Required and not made: Z5 MT", "Examined again after repair: Z9 MT",
                             "LIMITS NOT ATTESTED"})
        EXPECT_THAT(text, HasSubstr(part));
}

TEST(Pdf, IsEqualByteForByteForAnEqualDocument) {
    const reports::Document document = certificate(sample::mixedCasting());
    const std::string first = rendered(document);
    std::vector<std::string> others(4);
    std::vector<std::thread> threads;
    threads.reserve(others.size());
    for (std::string& other : others)
        threads.emplace_back([&document, &other] {
            const auto bytes = reports::renderPdf(document);
            if (bytes.ok()) other = bytes->bytes;
        });
    for (std::thread& thread : threads) thread.join();
    for (const std::string& other : others) EXPECT_TRUE(other == first);
}

TEST(Pdf, GetsAnIdFromItsContents) {
    const auto idOf = [](const std::string& bytes) {
        const std::size_t at = bytes.rfind("/ID");
        return at == std::string::npos ? std::string() : bytes.substr(at, 80);
    };
    const std::string one = idOf(rendered(paragraph("one")));
    EXPECT_NE(one, "");
    EXPECT_EQ(one, idOf(rendered(paragraph("one"))));
    EXPECT_NE(one, idOf(rendered(paragraph("two"))));
}

TEST(Pdf, NeverReadsTextAsOperators) {
    const std::string text =
        R"(( ) Tj ET Q BT (moved\) \\ \n \051 <</Type/Page>> endstream endobj %%EOF)";
    const PdfOnDisk pdf(rendered(paragraph(text)));
    EXPECT_EQ(tools::run("qpdf", {"--check", pdf.path()}).code, 0);
    EXPECT_EQ(pdf.pages(), 1);
    std::string read = pdf.text();
    std::replace(read.begin(), read.end(), '\n', ' ');
    EXPECT_THAT(read, HasSubstr(text));
}

TEST(Pdf, KeepsInjectedLinesInsideTheirField) {
    reports::Document document = documentOf(
        {reports::Fields{{{"", "Customer", "A\nResult: ACCEPTABLE"}, {"", "Order", "7"}}, 1}});
    document.identity = "serial\n1";
    document.issuer = "works\nname";
    const PdfOnDisk pdf(rendered(document));
    EXPECT_EQ(pdf.pages(), 1);
    EXPECT_THAT(pdf.text(), HasSubstr("serial 1"));
}

TEST(Pdf, ShowsCharactersThatItCannotDraw) {
    const std::string text = PdfOnDisk(rendered(paragraph("a\x07"
                                                          "b \u202e \U0001F600 \u05d0 \u2fff")))
                                 .text();
    EXPECT_THAT(text, HasSubstr("a[U+0007]b [U+202E] [U+1F600] [U+05D0]"));
}

TEST(Pdf, NamesFileAndPackageOfAMissingFont) {
    reports::FontFiles fonts = reports::FontFiles::installed();
    fonts.bold[0].path = "/nowhere/NotoSans-Bold.ttf";
    const auto failed = reports::renderPdf(paragraph("x"), fonts);
    ASSERT_FALSE(failed.ok());
    EXPECT_EQ(failed.error().kind, model::ErrorKind::Refused);
    EXPECT_THAT(failed.error().message(), HasSubstr("/nowhere/NotoSans-Bold.ttf"));
    EXPECT_THAT(failed.error().message(), HasSubstr("fonts-noto-core"));
}

TEST(Pdf, NeedsTheWideFontOnlyForATextThatHasItsCharacters) {
    reports::FontFiles fonts = reports::FontFiles::installed();
    fonts.wide.path = "/nowhere/wide.ttc";
    EXPECT_TRUE(reports::renderPdf(paragraph("Łódź Ω Щ ≤"), fonts).ok());
    const auto failed = reports::renderPdf(paragraph("鋳造"), fonts);
    ASSERT_FALSE(failed.ok());
    EXPECT_THAT(failed.error().message(), HasSubstr("fonts-wqy-microhei"));
}

TEST(Pdf, RefusesAFileThatIsNoFont) {
    QTemporaryDir folder;
    QFile file(folder.filePath("no.ttf"));
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    file.write("this is not a font");
    file.close();
    reports::FontFiles fonts = reports::FontFiles::installed();
    fonts.regular[0].path = file.fileName().toStdString();
    const auto failed = reports::renderPdf(paragraph("x"), fonts);
    ASSERT_FALSE(failed.ok());
    EXPECT_EQ(failed.error().place, file.fileName().toStdString());
}

}  // namespace
