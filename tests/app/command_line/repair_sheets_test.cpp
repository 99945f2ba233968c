// SPDX-License-Identifier: Apache-2.0
// The papers of the workshop by command, of castings of a real archive.
#include <filesystem>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <memory>

#include "process.h"
#include "sheets.h"

namespace app {
namespace {

using testing::HasSubstr;
using testing::StartsWith;

class RepairSheets : public testing::Test {
protected:
    /// The commands only read: one archive serves all tests.
    static void SetUpTestSuite() {
        archive_ = std::make_unique<Folder>();
        ASSERT_EQ(runCli({"demo", "--db", archive_->path() + "/d.db"}).exitCode, 0);
    }
    static void TearDownTestSuite() { archive_.reset(); }

    Finished sheet(const std::string& command, const std::string& serial,
                   std::vector<std::string> more = {}) {
        std::vector<std::string> arguments = {command, "--db",  file_, "--serial",
                                              serial,  "--out", out_};
        arguments.insert(arguments.end(), more.begin(), more.end());
        return runCli(arguments);
    }
    void expectRefused(const Finished& finished, const std::string& reason) {
        EXPECT_EQ(finished.exitCode, 2);
        EXPECT_EQ(finished.output, "");
        EXPECT_THAT(finished.error, HasSubstr(reason));
        EXPECT_FALSE(std::filesystem::exists(out_));
    }

    static inline std::unique_ptr<Folder> archive_;
    Folder folder_;
    std::string file_ = archive_->path() + "/d.db";
    std::string out_ = folder_.path() + "/sheet.pdf";
};

TEST_F(RepairSheets, WeldMapOfARepairedCasting) {
    const Finished finished = sheet("weld-map", "BS-22-01", {"--works", "Quillmere"});
    EXPECT_EQ(finished.exitCode, 0) << finished.error;
    EXPECT_EQ(finished.output, "wrote " + out_ + "\n");
    EXPECT_EQ(finished.error, "");
    EXPECT_THAT(bytesOf(out_), StartsWith("%PDF-"));
}

TEST_F(RepairSheets, MarkingOutOfACastingThatIsNotAcceptable) {
    const Finished finished = sheet("marking-out", "CD-09-02");
    EXPECT_EQ(finished.exitCode, 0) << finished.error;
    EXPECT_THAT(bytesOf(out_), StartsWith("%PDF-"));
}

TEST_F(RepairSheets, NothingIsWrittenOver) {
    ASSERT_EQ(sheet("weld-map", "BS-22-01").exitCode, 0);
    const std::string before = bytesOf(out_);
    for (const char* command : {"weld-map", "marking-out"}) {
        const Finished again =
            sheet(command, std::string(command) == "weld-map" ? "BS-22-01" : "CD-09-02");
        EXPECT_EQ(again.exitCode, 2);
        EXPECT_THAT(again.error, HasSubstr("a sheet is not written over anything"));
        EXPECT_EQ(bytesOf(out_), before);
    }
}

TEST_F(RepairSheets, WhereThereIsNothingToShowNothingIsWritten) {
    expectRefused(sheet("marking-out", "BS-22-01"), "has nothing that is to be taken out");
    expectRefused(sheet("weld-map", "BS-22-02"), "has no excavation");
    expectRefused(sheet("marking-out", "CD-09-02", {"--zone", "Z99"}), "has no zone Z99");
    expectRefused(sheet("weld-map", "XX-1"), "XX-1");
    expectRefused(runCli({"weld-map", "--db", file_, "--serial", "BS-22-01"}), "--out");
    out_ = folder_.path() + "/no/such/folder.pdf";
    expectRefused(sheet("weld-map", "BS-22-01"), "the folder is not there");
}

TEST_F(RepairSheets, HelpTellsTheOptions) {
    for (const char* command : {"weld-map", "marking-out"}) {
        const Finished finished = runCli({command, "--help"});
        EXPECT_EQ(finished.exitCode, 0);
        EXPECT_THAT(finished.output, HasSubstr("--serial S"));
        EXPECT_THAT(finished.output, HasSubstr("--out FILE.pdf"));
    }
}

}  // namespace
}  // namespace app
