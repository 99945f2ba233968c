// SPDX-License-Identifier: Apache-2.0
// What the demonstration archive holds of signed and released certificates.
#include "issuing/demonstration.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <map>

#include "archive/identities.h"
#include "archive/lifecycle.h"
#include "busy_archive.h"
#include "demo_db/staff.h"
#include "people/shell.h"
#include "signing/verify_pdf.h"

namespace app {
namespace {

using model::CertificateState;
using testing::HasSubstr;

TEST(DemonstrationCertificates, AreReleasedWaitingAndReturnedAndEverySignatureHolds) {
    const people::Folder folder;
    const std::string path = folder.path("quillmere.fettlemark");
    must(writeDemonstration(path, "test"));
    auto archive = must(model::Archive::open(path));

    // As the demonstration's course has it; the words are those worked out in EXPECTED.md.
    struct Expected {
        CertificateState state;
        model::Word word;
        const char* type;
        std::size_t signatures;
    };
    const std::map<std::string, Expected> expected{
        {"PS-31-07", {CertificateState::Released, model::Word::Acceptable, "3.1", 2}},
        {"RH-12-03", {CertificateState::Released, model::Word::Acceptable, "3.2", 3}},
        {"RH-12-04", {CertificateState::Released, model::Word::NotAcceptable, "3.2", 3}},
        {"CD-09-02", {CertificateState::Returned, model::Word::NotAcceptable, "3.1", 1}},
        {"VB-14-01", {CertificateState::Waiting, model::Word::Acceptable, "3.1", 1}},
        {"TB-18-01", {CertificateState::Released, model::Word::Acceptable, "3.1", 2}},
        {"BS-22-01", {CertificateState::Released, model::Word::Acceptable, "3.1", 2}},
        {"BS-22-02", {CertificateState::Released, model::Word::NotAcceptable, "3.1", 2}}};
    const auto trusted = must(model::trustedCertificates(archive));
    for (const auto& [serial, course] : expected) {
        const auto all = must(model::presentedOf(archive, serial));
        ASSERT_EQ(all.size(), 1U) << serial;
        EXPECT_EQ(all[0].state(), course.state) << serial;
        EXPECT_EQ(all[0].facts.verdict, course.word) << serial;
        EXPECT_EQ(all[0].facts.type, course.type) << serial;
        const std::string pdf = course.state == CertificateState::Released
                                    ? must(archive.certificateFile(all[0].number))
                                    : must(model::presentedFile(archive, all[0].number));
        const auto report = must(reports::verifyPdf(pdf, trusted, model::systemClock().now()));
        EXPECT_EQ(report.outcome, reports::PdfOutcome::IntactAndTrusted) << serial;
        EXPECT_EQ(report.signatures.size(), course.signatures) << serial;
        EXPECT_EQ(report.emptyFields.empty(), course.state == CertificateState::Released);
        folder.write("one.pdf", pdf);
        const int pages = std::stoi(folder.run("pdfinfo one.pdf | sed -n 's/^Pages: *//p'").output);
        for (int page = 1; page <= pages; ++page) {
            const std::string number = std::to_string(page);
            EXPECT_TRUE(folder.run("pdftotext -f " + number + " -l " + number + " one.pdf -")
                            .says("Demonstration"))
                << serial << " page " << page;
        }
    }
    for (const char* draft :
         {"PS-31-08", "BB-05-21", "SF-02-01", "VB-14-02", "GP-27-01", "BS-22-03"})
        EXPECT_TRUE(must(model::presentedOf(archive, draft)).empty()) << draft;
    EXPECT_THAT(must(model::presentedOf(archive, "CD-09-02"))[0].returned->reason,
                HasSubstr("measure them again from its datum"));

    const auto verification = must(archive.verify());
    for (const model::Error& finding : verification.findings) ADD_FAILURE() << finding.message();
    EXPECT_TRUE(model::signIn(archive, demo::kQaManager,
                              model::SecretBytes(std::string_view(demo::kPassphrase)))
                    .ok());
}

}  // namespace
}  // namespace app
