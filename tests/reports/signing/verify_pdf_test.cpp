// SPDX-License-Identifier: Apache-2.0
#include "signing/verify_pdf.h"

#include <gtest/gtest.h>
#include <qpdf/QPDF.hh>
#include <random>

#include "signed_files.h"
#include "signing/signature_fields.h"

namespace reports {
namespace {

using files::verified;

// One more revision with objects of one's own, as any program could append it.
std::string appended(const std::string& pdf, const std::map<int, std::string>& objects) {
    const std::size_t last = std::stoul(pdf.substr(pdf.rfind("startxref") + 10));
    QPDF file;
    file.processMemoryFile("PDF", pdf.data(), pdf.size());
    std::string bytes = pdf;
    std::string table = "xref\n";
    for (const auto& [number, text] : objects) {
        char entry[32];
        std::snprintf(entry, sizeof entry, "%010zu 00000 n\r\n", bytes.size());
        table += std::to_string(number) + " 1\n" + entry;
        bytes += std::to_string(number) + " 0 obj\n" + text + "\nendobj\n";
    }
    const std::size_t at = bytes.size();
    const auto size = std::max<long long>(file.getTrailer().getKey("/Size").getIntValue(),
                                          objects.empty() ? 0 : objects.rbegin()->first + 1);
    return bytes + table + "trailer\n<< /Size " + std::to_string(size) + " /Root " +
           file.getTrailer().getKey("/Root").unparse() + " /Info " +
           file.getTrailer().getKey("/Info").unparse() + " /Prev " + std::to_string(last) +
           " >>\nstartxref\n" + std::to_string(at) + "\n%%EOF\n";
}

struct Page {
    int object = 0;
    int contents = 0;
    std::string text;  // the page's dictionary, without its end
    int nextNumber = 0;
};

Page firstPage(const std::string& pdf) {
    QPDF file;
    file.processMemoryFile("PDF", pdf.data(), pdf.size());
    QPDFObjectHandle page = file.getAllPages().at(0);
    std::string text = page.unparseResolved();
    text.erase(text.rfind(">>"));
    return {page.getObjectID(), page.getKey("/Contents").getObjectID(), text,
            static_cast<int>(file.getTrailer().getKey("/Size").getIntValue())};
}

std::string all(const PdfReport& report) {
    std::string text;
    for (const std::string& finding : report.findings) text += finding + "\n";
    for (const PdfSignature& signature : report.signatures)
        for (const std::string& fault : signature.faults)
            text += signature.field + ": " + fault + "\n";
    return text;
}

TEST(VerifyPdf, AnUntouchedFileIsIntactAndTrusted) {
    const PdfReport report = verified(files::thrice());
    EXPECT_EQ(report.outcome, PdfOutcome::IntactAndTrusted) << all(report);
    ASSERT_EQ(report.signatures.size(), 3U);
    const PdfSignature& first = report.signatures[0];
    EXPECT_EQ(first.field, "Inspection");
    EXPECT_EQ(first.signature->signer->name, people::kInspectorName);
    EXPECT_EQ(first.reason, "Inspection: geprüft für Žďár");
    EXPECT_EQ(first.place, "Quillmere");
    EXPECT_EQ(first.claimedTime, people::now());
    EXPECT_EQ(first.coveredBytes, files::once().size());
    EXPECT_FALSE(first.coversWholeFile);
    EXPECT_EQ(first.changedAfter,
              std::vector<std::string>{"the signature field Release was signed"});
    EXPECT_FALSE(first.forbiddenChange);
    EXPECT_TRUE(report.signatures[2].coversWholeFile);
    EXPECT_TRUE(report.signatures[2].changedAfter.empty());
    EXPECT_TRUE(report.emptyFields.empty());
    EXPECT_TRUE(report.findings.empty());
}

TEST(VerifyPdf, EmptyFieldsAreListed) {
    const PdfReport report = verified(files::once());
    EXPECT_EQ(report.outcome, PdfOutcome::IntactAndTrusted) << all(report);
    EXPECT_EQ(report.emptyFields, (std::vector<std::string>{"Release", "Third party"}));
}

TEST(VerifyPdf, AnUnsignedFileIsNotTrusted) {
    for (const std::string* pdf : {&files::unsignedFile(), &files::prepared()}) {
        const PdfReport report = verified(*pdf);
        EXPECT_EQ(report.outcome, PdfOutcome::NotTrusted);
        EXPECT_EQ(report.findings, std::vector<std::string>{"The file is not signed."});
    }
}

TEST(VerifyPdf, WithoutTheAuthorityItIsNotTrustedButNotAltered) {
    const PdfReport report = verified(files::twice(), {});
    EXPECT_EQ(report.outcome, PdfOutcome::NotTrusted) << all(report);
    EXPECT_TRUE(report.signatures.at(0).signature->intact());
    EXPECT_FALSE(report.signatures[0].faults.empty());
}

TEST(VerifyPdf, OneRevokedSignerIsEnoughNotToTrust) {
    const PdfReport report =
        verified(files::twice(), people::trustWithout(people::manager(), people::now()));
    EXPECT_EQ(report.outcome, PdfOutcome::NotTrusted);
    EXPECT_TRUE(report.signatures.at(0).faults.empty());
    ASSERT_TRUE(report.signatures.at(1).signature->revoked);
}

TEST(VerifyPdf, ExpiredAndNotYetValidCertificatesAreNotTrusted) {
    for (const auto shift : {800 * people::kDay, -40 * people::kDay}) {
        const auto report = verifyPdf(files::once(), people::trust(), people::now() + shift);
        ASSERT_TRUE(report.ok());
        EXPECT_EQ(report->outcome, PdfOutcome::NotTrusted);
        EXPECT_TRUE(report->signatures.at(0).signature->intact());
    }
}

TEST(VerifyPdf, WithoutARevocationListTheReportSaysSo) {
    model::TrustedCertificates trusted = people::trust();
    trusted.revocationLists.clear();
    const PdfReport report = verified(files::once(), trusted);
    EXPECT_EQ(report.outcome, PdfOutcome::IntactAndTrusted);
    EXPECT_FALSE(report.signatures.at(0).signature->revocationChecked);
    EXPECT_FALSE(report.signatures[0].notes.empty());
}

// The six files.

TEST(TamperedPdf, AByteOfTheFirstRevisionFlipped) {
    std::string pdf = files::twice();
    pdf[2000] ^= 1;
    const PdfReport report = verified(pdf);
    EXPECT_EQ(report.outcome, PdfOutcome::Altered);
}

TEST(TamperedPdf, AByteOfTheSecondRevisionFlippedLeavesTheFirstSignatureStanding) {
    std::string pdf = files::twice();
    pdf[pdf.rfind("/Reason") + 12] ^= 1;
    const PdfReport report = verified(pdf);
    EXPECT_EQ(report.outcome, PdfOutcome::Altered);
    EXPECT_TRUE(report.signatures.at(0).signature->intact());
    EXPECT_FALSE(report.signatures.at(1).signature->contentUnchanged);
}

TEST(TamperedPdf, BytesAppendedThatOtherReadersPassOver) {
    const std::string pdf = files::twice() + "% a remark\n";
    const PdfReport report = verified(pdf);
    EXPECT_EQ(report.outcome, PdfOutcome::Altered);
    const auto seen = files::Onlookers(pdf).pdfsig();
    EXPECT_EQ(files::countOf(seen.output, "Signature is Valid."), 2U) << seen.output;
}

TEST(TamperedPdf, APageReplacedByAnAppendedRevisionThatOtherReadersPassOver) {
    const int contents = firstPage(files::twice()).contents;
    const std::string drawing = "BT ET";
    const std::string pdf = appended(
        files::twice(), {{contents, "<< /Length 5 >>\nstream\n" + drawing + "\nendstream"}});
    const PdfReport report = verified(pdf);
    EXPECT_EQ(report.outcome, PdfOutcome::Altered);
    EXPECT_NE(all(report).find("what is drawn on page 1 was changed"), std::string::npos)
        << all(report);
    const auto seen = files::Onlookers(pdf).pdfsig();
    EXPECT_EQ(files::countOf(seen.output, "Signature is Valid."), 2U) << seen.output;
}

TEST(TamperedPdf, TheZerosBehindTheSignatureUsed) {
    std::string pdf = files::twice();
    const std::size_t end = pdf.find('>', pdf.rfind("/Contents <"));
    pdf[end - 10] = '7';
    const PdfReport report = verified(pdf);
    EXPECT_EQ(report.outcome, PdfOutcome::Altered) << all(report);
}

TEST(TamperedPdf, SignedByAnotherAuthorityOfTheSameName) {
    const auto twin = model::Authority::create({.name = "Quillmere inspection authority",
                                                .organisation = "Quillmere Gießerei",
                                                .country = "DE",
                                                .from = people::now() - people::kDay,
                                                .until = people::now() + 900 * people::kDay},
                                               people::passphrase());
    ASSERT_TRUE(twin.ok());
    const auto authority = model::Authority::unlock(*twin, people::passphrase(), people::now());
    ASSERT_TRUE(authority.ok());
    const auto forger = authority->issue({.name = people::kManagerName,
                                          .personId = "P-4",
                                          .from = people::now(),
                                          .until = people::now() + people::kDay},
                                         people::passphrase());
    ASSERT_TRUE(forger.ok());
    const auto key = model::unlock(*forger, people::passphrase(), people::now());
    ASSERT_TRUE(key.ok());
    const std::string pdf = files::signedIn(files::once(), "Release", people::kManagerName, *key);
    const PdfReport report = verified(pdf);
    EXPECT_EQ(report.outcome, PdfOutcome::NotTrusted);
    EXPECT_TRUE(report.signatures.at(0).signature->trusted());
    EXPECT_FALSE(report.signatures.at(1).signature->trusted());
}

// And others.

TEST(TamperedPdf, ALaterSignerCoversAReplacedPage) {
    const int contents = firstPage(files::once()).contents;
    const std::string changed =
        appended(files::once(), {{contents, "<< /Length 5 >>\nstream\nBT ET\nendstream"}});
    const std::string pdf =
        files::signedIn(changed, "Release", people::kManagerName, people::managerKey());
    const PdfReport report = verified(pdf);
    EXPECT_EQ(report.outcome, PdfOutcome::Altered);
    EXPECT_TRUE(report.signatures.at(0).forbiddenChange);
    EXPECT_TRUE(report.signatures.at(1).signature->trusted());
    EXPECT_TRUE(report.signatures.at(1).coversWholeFile);
}

TEST(TamperedPdf, AnAnnotationLaidOverThePage) {
    const Page page = firstPage(files::once());
    QPDF file;
    file.processMemoryFile("PDF", files::once().data(), files::once().size());
    QPDFObjectHandle annotations =
        QPDFObjectHandle(file.getAllPages().at(0)).getKey("/Annots").shallowCopy();
    const int number = page.nextNumber;
    annotations.appendItem(
        QPDFObjectHandle::parse("<< /Type /Annot /Subtype /Square /Rect [0 0 "
                                "500 500] >>"));
    QPDFObjectHandle changed = QPDFObjectHandle(file.getAllPages().at(0)).shallowCopy();
    changed.replaceKey("/Annots", annotations);
    const std::string between = appended(
        files::once(), {{page.object, changed.unparseResolved()}, {number, "<< /Nothing true >>"}});
    const std::string pdf =
        files::signedIn(between, "Release", people::kManagerName, people::managerKey());
    const PdfReport report = verified(pdf);
    EXPECT_EQ(report.outcome, PdfOutcome::Altered);
    EXPECT_NE(all(report).find("page 1 was changed"), std::string::npos) << all(report);
}

TEST(TamperedPdf, AVisibleSignatureFieldAddedAfterSigning) {
    const Page page = firstPage(files::once());
    QPDF file;
    file.processMemoryFile("PDF", files::once().data(), files::once().size());
    const auto with = [&](const std::string& extra) {
        const std::string reference = std::to_string(page.nextNumber) + " 0 R";
        QPDFObjectHandle changed = QPDFObjectHandle(file.getAllPages().at(0)).shallowCopy();
        std::string annotations = changed.getKey("/Annots").unparse();
        annotations.insert(annotations.rfind(']'), " " + reference + " ");
        std::string pageText = page.text;
        const std::size_t at = pageText.find("/Annots");
        const std::size_t end = pageText.find(']', at);
        pageText.replace(at, end + 1 - at, "/Annots " + annotations);
        QPDFObjectHandle form = file.getRoot().getKey("/AcroForm");
        std::string fields = form.getKey("/Fields").unparse();
        fields.insert(fields.rfind(']'), " " + reference + " ");
        const std::string between = appended(
            files::once(),
            {{page.object, pageText + ">>"},
             {form.getObjectID(), "<< /Fields " + fields + " /SigFlags 3 >>"},
             {page.nextNumber, "<< /Type /Annot /Subtype /Widget /FT /Sig /T (Buyer) /P " +
                                   std::to_string(page.object) + " 0 R " + extra + " >>"}});
        PdfSigning signing;
        signing.field = "Buyer";
        signing.time = people::now();
        if (extra.find("0 0 0 0") == std::string::npos)
            signing.appearance = files::appearance("acceptable");
        const auto made = signPdf(between, signing, people::thirdPartyKey());
        EXPECT_TRUE(made.ok()) << made.error().message();
        return made.ok() ? *made : "";
    };
    const PdfReport seen = verified(with("/F 132 /Rect [50 50 500 500]"));
    EXPECT_EQ(seen.outcome, PdfOutcome::Altered) << all(seen);
    const PdfReport unseen = verified(with("/F 132 /Rect [0 0 0 0]"));
    EXPECT_EQ(unseen.outcome, PdfOutcome::IntactAndTrusted) << all(unseen);
}

TEST(TamperedPdf, ARevisionWithACrossReferenceStreamAppended) {
    const std::string pdf = files::once() +
                            "99 0 obj\n<< /Type /XRef /Size 1 /W [1 1 1] /Length 0 "
                            ">>\nstream\n\nendstream\nendobj\nstartxref\n" +
                            std::to_string(files::once().size()) + "\n%%EOF\n";
    EXPECT_EQ(verified(pdf).outcome, PdfOutcome::Altered);
}

TEST(TamperedPdf, TheSignatureHiddenFromTheForm) {
    for (const char* key : {"/AcroForm", "/Fields"}) {
        std::string pdf = files::once();
        pdf[pdf.rfind(key) + 2] ^= 1;
        const PdfReport report = verified(pdf);
        EXPECT_EQ(report.outcome, PdfOutcome::Altered) << key;
    }
}

TEST(TamperedPdf, EveryByteOfARandomThousandFlippedIsFound) {
    std::mt19937 random(20260504);
    for (const std::string* whole : {&files::once(), &files::twice()}) {
        std::uniform_int_distribution<std::size_t> place(0, whole->size() - 1);
        std::uniform_int_distribution<int> bit(0, 7);
        for (int i = 0; i < 500; ++i) {
            std::string pdf = *whole;
            const std::size_t at = place(random);
            const int flipped = bit(random);
            pdf[at] = static_cast<char>(pdf[at] ^ (1 << flipped));
            const auto report = verifyPdf(pdf, people::trust(), people::now());
            ASSERT_TRUE(report.ok()) << at << " bit " << flipped << report.error().message();
            ASSERT_EQ(report->outcome, PdfOutcome::Altered) << at << " bit " << flipped;
        }
    }
}

TEST(TamperedPdf, EveryByteOfTheLastRevisionsStructureFlippedIsFound) {
    const std::string& whole = files::once();
    const model::TrustedCertificates trusted = people::trust();
    // From the signature's dictionary on; its drawing before that is covered by the test above.
    const std::size_t begin = whole.rfind("<< /Type /Sig ");
    for (std::size_t at = begin; at < whole.size(); ++at) {
        std::string pdf = whole;
        pdf[at] = static_cast<char>(pdf[at] ^ (1 << (at % 8)));
        const auto report = verifyPdf(pdf, trusted, people::now());
        ASSERT_TRUE(report.ok()) << at - begin << ": " << report.error().message();
        ASSERT_EQ(report->outcome, PdfOutcome::Altered)
            << at - begin << ": " << whole.substr(at - 10, 20);
    }
}

TEST(TamperedPdf, AFileCutShortIsFoundOrRefused) {
    for (std::size_t cut = 1; cut < files::once().size(); cut += 1777) {
        const auto report = verifyPdf(std::string_view(files::once()).substr(0, cut),
                                      people::trust(), people::now());
        EXPECT_FALSE(report.ok() && report->outcome == PdfOutcome::IntactAndTrusted) << cut;
    }
}

TEST(VerifyPdf, WhatIsNoPdfIsAnError) {
    for (const char* bytes : {"", "%PDF-1.7", "text", "%PDF-1.7\nstartxref\n0\n%%EOF"})
        EXPECT_FALSE(verifyPdf(bytes, people::trust(), people::now()).ok()) << bytes;
}

TEST(VerifyPdf, ForeignFilesOfOtherKindsAreRefusedNotCalledAltered) {
    const people::Folder folder;
    folder.write("one.pdf", files::unsignedFile());
    ASSERT_EQ(folder
                  .run("qpdf --encrypt '' owner 256 -- one.pdf encrypted.pdf; qpdf "
                       "--object-streams=generate one.pdf streams.pdf")
                  .code,
              0);
    for (const char* name : {"encrypted.pdf", "streams.pdf"}) {
        const auto report = verifyPdf(folder.read(name), people::trust(), people::now());
        ASSERT_FALSE(report.ok());
        EXPECT_EQ(report.error().kind, model::ErrorKind::Input);
    }
}

}  // namespace
}  // namespace reports
