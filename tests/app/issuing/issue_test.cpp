// SPDX-License-Identifier: Apache-2.0
// From signed records to a released certificate, and what other programs say of it.
#include "issuing/issue.h"

#include "foundry/foundry.h"
#include "issued.h"
#include "signing/verify_pdf.h"

namespace app {
namespace {

using testing::HasSubstr;
using testing::Not;
using testing::StartsWith;

std::size_t countOf(const std::string& text, const std::string& part) {
    std::size_t count = 0;
    for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + 1))
        ++count;
    return count;
}

TEST_F(Issued, AReleasedCertificateHoldsWhatWasPresentedByteForByte) {
    const std::int64_t number = presented();
    const std::string before = must(model::presentedFile(archive(), number));
    const std::string after = releasedFile(number);
    EXPECT_GT(after.size(), before.size());
    EXPECT_TRUE(after.starts_with(before));
}

// Oracle: poppler's pdfsig on NSS, mupdf's mutool and qpdf read the file that was released.
TEST_F(Issued, AReleasedCertificateIsSoundToOtherProgramsOracle) {
    folder_.write("one.pdf", releasedFile(presented()));
    writeAuthority();
    const auto made = folder_.run(
        "mkdir nss && certutil -N -d sql:nss --empty-password && certutil -A -d sql:nss -n "
        "Quillmere -t ,C, -i ca.pem");
    ASSERT_EQ(made.code, 0) << made.output;
    const auto pdfsig = folder_.run("pdfsig -nssdir sql:nss one.pdf");
    EXPECT_EQ(countOf(pdfsig.output, "Signature is Valid."), 2U) << pdfsig.output;
    EXPECT_EQ(countOf(pdfsig.output, "Certificate is Trusted."), 2U) << pdfsig.output;
    EXPECT_EQ(countOf(pdfsig.output, "ETSI.CAdES.detached"), 2U) << pdfsig.output;
    EXPECT_TRUE(pdfsig.says("Ilse Bröker") && pdfsig.says("Quentin Marsh")) << pdfsig.output;
    EXPECT_EQ(countOf(pdfsig.output, "Total document signed"), 1U) << pdfsig.output;
    const auto mutool = folder_.run("mutool sign -v one.pdf");
    EXPECT_FALSE(mutool.says("Digest error")) << mutool.output;
    EXPECT_TRUE(mutool.says("has not changed since it was signed") || mutool.says("unchanged"))
        << mutool.output;
    EXPECT_EQ(folder_.run("qpdf --check one.pdf").code, 0);
}

// Oracle: OpenSSL verifies the QA manager's signature, cut out of the file, over what it covers.
TEST_F(Issued, ItsLastSignatureIsOneToOpenSslOracle) {
    const std::string pdf = releasedFile(presented());
    writeAuthority();
    const std::size_t range = pdf.rfind("/ByteRange [0 ");
    ASSERT_NE(range, std::string::npos);
    std::size_t begin = 0;
    std::size_t end = 0;
    std::size_t rest = 0;
    ASSERT_EQ(std::sscanf(pdf.c_str() + range, "/ByteRange [0 %zu %zu %zu]", &begin, &end, &rest),
              3);
    ASSERT_EQ(end + rest, pdf.size());
    folder_.write("content", pdf.substr(0, begin) + pdf.substr(end));
    std::string signature;
    for (std::size_t at = begin + 1; at + 2 < end; at += 2)
        signature += static_cast<char>(std::stoi(pdf.substr(at, 2), nullptr, 16));
    folder_.write("signature.der", signature);
    const auto verified = folder_.run(
        "openssl cms -verify -cades -binary -inform DER -in signature.der -content content "
        "-CAfile ca.pem -purpose any -no_check_time -out /dev/null");
    EXPECT_EQ(verified.code, 0) << verified.output;
    EXPECT_TRUE(verified.says("CAdES Verification successful")) << verified.output;
}

TEST_F(Issued, TheCertificateSaysWhoSignedAndNothingOfADraft) {
    folder_.write("one.pdf", releasedFile(presented()));
    const std::string text = folder_.run("pdftotext -layout one.pdf -").output;
    EXPECT_THAT(text, Not(HasSubstr("NOT RELEASED")));
    EXPECT_THAT(text, Not(HasSubstr("Demonstration")));
    for (const char* part :
         {"VALID ONLY WHEN SIGNED", "Inspection certificate 3.1", "Certificate 1, casting Q-1",
          "ACCEPTABLE", "Ilse Bröker", "QA manager, who releases for the manufacturer",
          "Head of the archive's history"})
        EXPECT_THAT(text, HasSubstr(part));
}

TEST_F(Issued, TheBoxesShowWhoSignedAsWhat) {
    folder_.write("one.pdf", releasedFile(presented()));
    // mutool draws the appearances of the fields as well, unlike pdftotext.
    const std::string text = folder_.run("mutool draw -F text one.pdf 2>/dev/null").output;
    for (const char* part :
         {"Presents the results in this document for release", "Quentin Marsh",
          "Releases this certificate, type 3.1 of EN 10204", "by the signer's own clock",
          "Identity issued by Quillmere inspection authority",
          "Without the time stamp of an independent service"})
        EXPECT_THAT(text, HasSubstr(part));
}

TEST_F(Issued, IsRefusedToWhoeverMayNotReleaseAndNothingIsStored) {
    const std::int64_t number = presented();
    const std::string before = must(model::presentedFile(archive(), number));
    for (const char* person : {foundry::kInspector, foundry::kWorksManager, foundry::kAuditor}) {
        const auto refused =
            releaseCertificate(archive(), number, foundry_.person(person), foundry_.settings());
        ASSERT_FALSE(refused.ok()) << person;
        EXPECT_EQ(refused.error().kind, model::ErrorKind::Refused) << refused.error().message();
    }
    EXPECT_EQ(must(model::presented(archive(), number)).state(), model::CertificateState::Waiting);
    EXPECT_EQ(must(model::presentedFile(archive(), number)), before);
    EXPECT_FALSE(archive().certificateFile(number).ok());
}

TEST_F(Issued, Type32NeedsTheThirdPartyFirst) {
    const std::int64_t number = presented("O-32");
    const auto early = releaseCertificate(archive(), number, foundry_.person(foundry::kQaManager),
                                          foundry_.settings());
    ASSERT_FALSE(early.ok());
    foundry_.endorse(number);
    const auto report = must(reports::verifyPdf(
        releasedFile(number), must(model::trustedCertificates(archive())), foundry_.clock().now()));
    EXPECT_EQ(report.outcome, reports::PdfOutcome::IntactAndTrusted);
    ASSERT_EQ(report.signatures.size(), 3U);
    EXPECT_EQ(report.signatures[1].field, "Third party");
    EXPECT_EQ(report.signatures[1].signature->signer->name, "Thea Parley");
    EXPECT_EQ(report.signatures[2].signature->signer->name, "Quentin Marsh");
    EXPECT_TRUE(report.emptyFields.empty());
}

TEST_F(Issued, NeedsNoNumberToSayThatALimitTableIsNotAttested) {
    const model::Actor actor{"Ilse Bröker"};
    must(archive().save(model::Casting{"Q-9", "H 9", "O-31", "P-1", 1}, 0, actor));
    model::ExaminationDraft draft;
    draft.casting = "Q-9";
    draft.header.zone = "Z1";
    draft.header.thickness = model::millimetres(40);
    draft.header.table = "EN 1369:1996";
    draft.header.levels = {{"linear", "LM 3"}, {"aligned", "AM 3"}};
    draft.header.noIndications = true;
    must(archive().save(draft, actor));
    foundry_.signAll("Q-9");
    const model::Head before = must(archive().head());
    const auto refused =
        presentCasting(archive(), "Q-9", foundry_.person(foundry::kInspector), foundry_.settings());
    ASSERT_FALSE(refused.ok());
    EXPECT_THAT(refused.error().message(),
                HasSubstr("limit table \"EN 1369:1996\" is not attested; a QA manager has to "
                          "attest it first"));
    EXPECT_EQ(must(archive().head()), before);
}

}  // namespace
}  // namespace app
