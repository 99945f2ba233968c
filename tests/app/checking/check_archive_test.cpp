// SPDX-License-Identifier: Apache-2.0
// What only looking into the PDFs shows, and what is no alteration.
#include "checking/check_archive.h"

#include <QTemporaryDir>
#include <filesystem>
#include <fstream>
#include <gmock/gmock.h>

#include "archive/identities.h"
#include "archive/lifecycle.h"
#include "busy_archive.h"
#include "foundry/foundry.h"

namespace app {
namespace {

using testing::AllOf;
using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

class CheckArchive : public testing::Test {
protected:
    [[nodiscard]] ArchiveCheck check(const CheckRequest& request = {}) {
        return must(checkArchive(busy_.archive(), request));
    }
    [[nodiscard]] std::vector<std::string> findings() {
        std::vector<std::string> messages;
        for (const model::Error& finding : check().findings) messages.push_back(finding.message());
        return messages;
    }
    /// The archive takes any bytes that its own people present.
    void presentBytes(const std::string& serial, const std::string& pdf,
                      const model::SignedIn& inspector) {
        const auto prepared = must(model::prepare(busy_.archive(), serial, inspector));
        must(model::present(busy_.archive(), prepared, pdf, inspector));
    }

    QTemporaryDir folder_;
    std::string path_ = folder_.filePath("q.fettlemark").toStdString();
    BusyArchive busy_{path_};
};

TEST_F(CheckArchive, CountsWhatItChecked) {
    busy_.signedCasting("Q-1", "O-32");
    const std::int64_t number = busy_.present("Q-1");
    busy_.endorse(number);
    busy_.release(number);
    busy_.signedCasting("Q-2", "O-31");
    busy_.present("Q-2");
    const ArchiveCheck checked = check({.held = {}, .rejudge = true});
    EXPECT_TRUE(checked.intact());
    EXPECT_EQ(checked.archive.certificates, 1);
    EXPECT_EQ(checked.archive.records, 2);
    EXPECT_EQ(checked.archive.seals, checked.archive.head.sequence);
    EXPECT_EQ(checked.pdfs, 2);
    EXPECT_EQ(checked.pdfSignatures, 4);
    EXPECT_EQ(checked.unsignedPdfs, 0);
    EXPECT_EQ(checked.verdicts, 2);
    EXPECT_EQ(check().verdicts, std::nullopt);
}

TEST_F(CheckArchive, TakesSignaturesOfPeopleWhoLeftSince) {
    busy_.signedCasting("Q-1", "O-31");
    busy_.release(busy_.present("Q-1"));
    for (const char* id : {foundry::kInspector, foundry::kQaManager})
        must(model::withdrawIdentity(busy_.archive(), id, model::RevocationReason::PositionChanged,
                                     "", foundry::authorityPassphrase(),
                                     busy_.person(foundry::kAdministrator)));
    EXPECT_THAT(findings(), IsEmpty());
}

TEST_F(CheckArchive, FindsAPdfThatSomebodyElseSigned) {
    busy_.signedCasting("Q-1", "O-31");
    const std::string pdf = must(model::presentedFile(busy_.archive(), busy_.present("Q-1")));
    busy_.signedCasting("Q-2", "O-31", "", foundry::kLevel3);
    presentBytes("Q-2", pdf, busy_.person(foundry::kLevel3));
    EXPECT_THAT(findings(), ElementsAre(AllOf(HasSubstr("certificate 2: its PDF"),
                                              HasSubstr("is not by Otto Sandmann"))));
}

TEST_F(CheckArchive, FindsAPdfThatNobodySigned) {
    busy_.signedCasting("Q-1", "O-31");
    presentBytes("Q-1", "%PDF-1.7\nnot one\n%%EOF\n", busy_.person(foundry::kInspector));
    EXPECT_THAT(findings(), ElementsAre(HasSubstr("certificate 1: its PDF cannot be read")));
}

TEST_F(CheckArchive, FindsWhatWasAddedBehindTheLastSignature) {
    busy_.signedCasting("Q-1", "O-31");
    const std::string pdf = must(model::presentedFile(busy_.archive(), busy_.present("Q-1")));
    busy_.signedCasting("Q-2", "O-31");
    presentBytes("Q-2", pdf + "\n% one line more\n", busy_.person(foundry::kInspector));
    EXPECT_THAT(findings(), Contains(HasSubstr("certificate 2: its PDF")));
}

TEST_F(CheckArchive, FindsAReleaseWithoutASignature) {
    busy_.signedCasting("Q-1", "O-31");
    const std::int64_t number = busy_.present("Q-1");
    const std::string pdf = must(model::presentedFile(busy_.archive(), number));
    must(model::release(busy_.archive(), number, pdf + "\n", busy_.person(foundry::kQaManager)));
    EXPECT_THAT(findings(),
                AllOf(Contains(HasSubstr("the history has acts that put one into it: 2")),
                      Contains(HasSubstr("is missing"))));
}

TEST_F(CheckArchive, NamesFilesThatBelongToNothing) {
    busy_.signedCasting("Q-1", "O-31");
    busy_.present("Q-1");
    const std::string files = path_ + ".files";
    std::filesystem::create_directories(files + "/ab");
    const std::string stray = files + "/ab/" + std::string(62, '0') + ".pdf";
    for (const std::string& path : {stray, stray + ".new", files + "/note"})
        std::ofstream(path) << "left over";
    const ArchiveCheck checked = check();
    EXPECT_TRUE(checked.intact());
    EXPECT_THAT(checked.unnamedFiles, ElementsAre(stray, stray + ".new", files + "/note"));
}

TEST_F(CheckArchive, CanBeStoppedInEachStep) {
    busy_.signedCasting("Q-1", "O-31");
    busy_.present("Q-1");
    for (const CheckStep last :
         {CheckStep::Archive, CheckStep::Certificates, CheckStep::Verdicts}) {
        bool wasAsked = false;
        const auto checked =
            checkArchive(busy_.archive(), {.held = {}, .rejudge = true},
                         [&](CheckStep step, std::int64_t done, std::int64_t total) {
                             EXPECT_LE(done, total);
                             if (step == last) wasAsked = true;
                             return step != last;
                         });
        EXPECT_TRUE(wasAsked);
        ASSERT_FALSE(checked.ok());
        EXPECT_EQ(checked.error().kind, model::ErrorKind::Refused);
        EXPECT_THAT(checked.error().message(), HasSubstr("stopped"));
    }
}

}  // namespace
}  // namespace app
