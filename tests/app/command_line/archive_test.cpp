// SPDX-License-Identifier: Apache-2.0
// The commands that use an archive: demo, castings, and judge --db.
#include <algorithm>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <map>
#include <sstream>

#include "process.h"
#include "sheets.h"

namespace app {
namespace {

using testing::HasSubstr;
using testing::StartsWith;

void expectRefused(const Finished& finished, int exitCode, const std::string& start) {
    EXPECT_EQ(finished.exitCode, exitCode) << finished.error;
    EXPECT_EQ(finished.output, "");
    EXPECT_EQ(std::ranges::count(finished.error, '\n'), 1) << finished.error;
    EXPECT_THAT(finished.error, StartsWith(start));
}

/// The lines of `castings`, each as its columns.
std::vector<std::vector<std::string>> columnsOf(const std::string& output) {
    std::vector<std::vector<std::string>> lines;
    std::istringstream text(output);
    for (std::string line; std::getline(text, line);) {
        std::istringstream columns(line);
        lines.emplace_back();
        for (std::string column; std::getline(columns, column, '\t');)
            lines.back().push_back(column);
    }
    return lines;
}

class DemonstrationArchive : public testing::Test {
protected:
    void SetUp() override {
        const Finished finished = runCli({"demo", "--db", file_});
        ASSERT_EQ(finished.exitCode, 0) << finished.error;
        EXPECT_EQ(finished.output, "wrote " + file_ + "\n");
        EXPECT_EQ(finished.error, "");
    }
    Folder folder_;
    std::string file_ = folder_.path() + "/d.db";
};

TEST_F(DemonstrationArchive, IsNotWrittenOverAnything) {
    const std::string before = bytesOf(file_);
    expectRefused(runCli({"demo", "--db", file_}), 2, file_ + ": ");
    EXPECT_EQ(bytesOf(file_), before);
    expectRefused(runCli({"demo"}), 2, "fettlemark-cli demo: --db FILE is missing");
    expectRefused(runCli({"demo", "--db", folder_.path() + "/none/d.db"}), 2, "");
}

// The words that the demonstration's description works out by hand, beside its data.
TEST_F(DemonstrationArchive, ShowsTheVerdictOfEveryCasting) {
    const std::map<std::string, std::string> expected{
        {"PS-31-07", "acceptable"},     {"PS-31-08", "not acceptable"},
        {"BB-05-21", "not judged"},     {"RH-12-03", "acceptable"},
        {"RH-12-04", "not acceptable"}, {"VB-14-01", "acceptable"},
        {"VB-14-02", "not acceptable"}, {"SF-02-01", "not acceptable"},
        {"CD-09-02", "not acceptable"}};
    const Finished finished = runCli({"castings", "--db", file_});
    EXPECT_EQ(finished.exitCode, 1);
    EXPECT_EQ(finished.error, "");
    std::map<std::string, std::string> results;
    for (const auto& columns : columnsOf(finished.output)) {
        if (columns.at(1) == "result") {
            ASSERT_EQ(columns.size(), 8U);
            results[columns[0]] = columns[5];
        } else {
            ASSERT_EQ(columns.size(), 7U);
            EXPECT_NE(columns[6], "-") << "nothing says what decided " << columns[0];
        }
    }
    EXPECT_EQ(results, expected);
    // Zone Z2 of PS-31-08: what is printed names the rule, the measure and the limit.
    EXPECT_THAT(finished.output, HasSubstr("at most 10 mm (Table 2, sum, M)"));
}

TEST_F(DemonstrationArchive, GivesACertificateOfEveryCasting) {
    const std::string out = folder_.path() + "/certificates";
    const Finished finished =
        runCli({"castings", "--db", file_, "--out", out, "--works", "Quillmere"});
    EXPECT_EQ(finished.exitCode, 1) << finished.error;
    int certificates = 0;
    for (const auto& columns : columnsOf(finished.output)) {
        if (columns.at(1) != "result") continue;
        ++certificates;
        ASSERT_EQ(columns.size(), 8U);
        EXPECT_EQ(columns[7], out + "/" + columns[0] + ".pdf");
        EXPECT_THAT(bytesOf(columns[7]), StartsWith("%PDF-"));
    }
    EXPECT_EQ(certificates, 9);
    expectRefused(runCli({"castings", "--db", file_, "--out", file_}), 2, file_ + ": ");
    expectRefused(runCli({"castings", "--db", file_, "--out", out + "/a/b"}), 2, out + "/a/b: ");
}

TEST_F(DemonstrationArchive, LendsItsTablesToASheet) {
    const Finished with =
        runCli({"judge", "-", "--db", file_, "--unattested"}, spottedSheet(2).dump());
    EXPECT_EQ(with.exitCode, 0) << with.error;
    EXPECT_EQ(with.output, runCli({"judge", "-"}, spottedSheet(2).dump()).output);
}

TEST(Archives, ThatAreNoneAreRefused) {
    const Folder folder;
    const std::string missing = folder.path() + "/none.db";
    const std::string text = folder.write("text.db", "no database, though it has a line or two\n");
    for (const auto& command :
         std::vector<std::vector<std::string>>{{"castings"}, {"judge", "/dev/null"}}) {
        for (const std::string& file : {missing, text, folder.path()}) {
            std::vector<std::string> arguments = command;
            arguments.insert(arguments.end(), {"--db", file});
            expectRefused(runCli(arguments), 2, file + ": ");
        }
    }
    EXPECT_EQ(folder.names(), std::vector<std::string>{"text.db"});  // nothing was made
}

}  // namespace
}  // namespace app
