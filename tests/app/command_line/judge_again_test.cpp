// SPDX-License-Identifier: Apache-2.0
// What-ifs by command. Three spots of 4 mm are one more at the maximum than SM 2 of EN 1369:2012
// Table 1 allows; SM 3 allows up to 6 mm.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "process.h"
#include "sheets.h"

namespace app {
namespace {

using testing::AllOf;
using testing::Each;
using testing::HasSubstr;
using testing::StartsWith;

Finished again(const Json& sheet, const std::vector<std::string>& options) {
    std::vector<std::string> arguments{"judge-again", "-"};
    arguments.insert(arguments.end(), options.begin(), options.end());
    return runCli(arguments, sheet.dump());
}

std::vector<std::string> linesOf(const std::string& text) {
    std::vector<std::string> lines;
    for (std::size_t start = 0; start < text.size();) {
        const std::size_t end = std::min(text.find('\n', start), text.size());
        lines.push_back(text.substr(start, end - start));
        start = end + 1;
    }
    return lines;
}

TEST(JudgeAgainCommand, ShowsBothVerdictsAndMarksEveryLine) {
    const Finished finished =
        again(spottedSheet(3), {"--level", "non-linear=SM 3", "--unattested"});
    EXPECT_EQ(finished.exitCode, 0) << finished.error;
    EXPECT_EQ(finished.error, "");
    const auto lines = linesOf(finished.output);
    ASSERT_EQ(lines.size(), 3U);
    EXPECT_THAT(lines, Each(StartsWith("what-if")));
    EXPECT_THAT(lines[0], AllOf(HasSubstr("no verdict on the casting"), HasSubstr("not stored")));
    EXPECT_THAT(lines[1], HasSubstr("non-linear=SM 2\tnot acceptable\t"));
    EXPECT_THAT(lines[1], HasSubstr("non-linear=SM 3\tacceptable\t"));
    EXPECT_EQ(lines[2], "what-if\tresult\t-\t-\t-\tnot acceptable\t-\tacceptable\t-");
    // Without an attestation of the table.
    EXPECT_EQ(again(spottedSheet(3), {"--level", "non-linear=SM 3"}).exitCode, 3);
    EXPECT_EQ(again(spottedSheet(3), {"--level", "non-linear=SM 1"}).exitCode, 1);
}

TEST(JudgeAgainCommand, PrintsJsonThatIsNoVerdict) {
    const Finished finished = again(
        spottedSheet(3), {"--level", "non-linear=SM 3, linear=LM 5", "--zone", "Z1", "--json"});
    const Json document = Json::parse(finished.output, nullptr, false);
    ASSERT_TRUE(document.is_object()) << finished.error;
    EXPECT_EQ(document["format"], "fettlemark-what-if/1");
    EXPECT_THAT(document["warning"].get<std::string>(), HasSubstr("no verdict"));
    EXPECT_FALSE(document.contains("verdict"));
    EXPECT_EQ(document["ordered"], "not acceptable");
    EXPECT_EQ(document["what_if"], "acceptable");
    EXPECT_EQ(document["criteria"]["levels"]["linear"], "LM 5");
    EXPECT_EQ(document["criteria"]["table"], nullptr);
    const Json& zone = document["examinations"][0];
    EXPECT_TRUE(zone["judged_otherwise"].get<bool>());
    EXPECT_EQ(zone["ordered"]["levels"]["non-linear"], "SM 2");
    EXPECT_EQ(zone["what_if"]["levels"]["non-linear"], "SM 3");
    EXPECT_THAT(zone["what_if"]["notes"].back().get<std::string>(), StartsWith("what-if"));
}

TEST(JudgeAgainCommand, TakesACastingOfAnArchiveAndStoresNothing) {
    const Folder folder;
    const std::string file = folder.path() + "/demo.db";
    ASSERT_EQ(runCli({"demo", "--db", file}).exitCode, 0);
    const std::string before = runCli({"verify", "--db", file}).output;
    const Finished finished = runCli(
        {"judge-again", "--db", file, "--serial", "PS-31-08", "--table", "EN 1369:1996", "--json"});
    const Json document = Json::parse(finished.output, nullptr, false);
    ASSERT_TRUE(document.is_object()) << finished.error;
    // Of three zones the two examined by MT; the third is examined by PT.
    int otherwise = 0;
    for (const Json& zone : document["examinations"])
        if (zone["judged_otherwise"].get<bool>()) {
            ++otherwise;
            EXPECT_EQ(zone["method"], "MT");
            EXPECT_EQ(zone["what_if"]["table"]["id"], "EN 1369:1996");
        }
    EXPECT_EQ(otherwise, 2);
    EXPECT_EQ(runCli({"verify", "--db", file}).output, before);
}

TEST(JudgeAgainCommand, RefusesAWrongCall) {
    const auto refused = [](const Finished& finished, const char* reason) {
        EXPECT_EQ(finished.exitCode, 2);
        EXPECT_EQ(finished.output, "");
        EXPECT_THAT(finished.error, HasSubstr(reason));
    };
    refused(again(spottedSheet(3), {}), "another table or another level is missing");
    refused(again(spottedSheet(3), {"--level", "SM 3"}), "--level: takes KEY=LEVEL");
    refused(again(spottedSheet(3), {"--level", "non-linear=SM 2"}), "nothing would be judged");
    refused(again(spottedSheet(3), {"--level", "non-linear=SM 3", "--serial", "S"}),
            "either a sheet, or --db and --serial");
    refused(runCli({"judge-again", "--serial", "S", "--table", "T"}), "--serial needs --db");
    refused(runCli({"judge-again", "--table", "T"}), "either a sheet, or");
}

}  // namespace
}  // namespace app
