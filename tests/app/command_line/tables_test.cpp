// SPDX-License-Identifier: Apache-2.0
// judge --tables DIR: own tables, newer revisions, and what is refused.
#include <algorithm>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "process.h"
#include "sheets.h"

namespace app {
namespace {

std::string shippedTable() {
    return bytesOf(FETTLEMARK_TABLES "/en_1369_2012.table");
}

std::string replaced(std::string text, const std::string& what, const std::string& with) {
    const std::size_t at = text.find(what);
    EXPECT_NE(at, std::string::npos) << what;
    return at == std::string::npos ? text : text.replace(at, what.size(), with);
}

Finished judged(const Json& sheet, const Folder& tables) {
    return runCli({"judge", "-", "--unattested", "--tables", tables.path()}, sheet.dump());
}

void expectRefused(const Finished& finished, const std::string& place) {
    EXPECT_EQ(finished.exitCode, 2);
    EXPECT_EQ(finished.output, "");
    EXPECT_EQ(std::ranges::count(finished.error, '\n'), 1) << finished.error;
    EXPECT_THAT(finished.error, testing::StartsWith(place));
}

TEST(Tables, OfAFolderAreJudgedBy) {
    const Folder folder;
    (void)folder.write("works.table",
                       replaced(shippedTable(), "\"EN 1369:2012\"", "\"Works specification 7\""));
    (void)folder.write("notes.txt", "no table");
    Json sheet = cleanSheet();
    examinationOf(sheet)["table"] = "Works specification 7";
    EXPECT_EQ(runCli({"judge", "-"}, sheet.dump()).exitCode, 2);  // not without the folder
    const Finished finished = judged(sheet, folder);
    EXPECT_EQ(finished.exitCode, 0) << finished.error;
    EXPECT_EQ(Json::parse(finished.output)["examinations"][0]["table"]["id"],
              "Works specification 7");
}

TEST(Tables, WithTheHighestRevisionWin) {
    const Folder folder;
    std::string stricter = replaced(shippedTable(), "revision   1", "revision   2");
    // SM 2: 3 mm instead of 4 mm.
    stricter = replaced(stricter, R"("SM 2"    4      "Table 1, L2")",
                        R"("SM 2"    3      "Table 1, L2")");
    (void)folder.write("stricter.table", stricter);
    EXPECT_EQ(runCli({"judge", "-", "--unattested"}, spottedSheet(1).dump()).exitCode, 0);
    const Finished finished = judged(spottedSheet(1), folder);
    EXPECT_EQ(finished.exitCode, 1) << finished.error;
    EXPECT_EQ(Json::parse(finished.output)["examinations"][0]["table"]["revision"], 2);
}

TEST(Tables, WithTheSameBytesMayStandTwice) {
    const Folder folder;
    (void)folder.write("copy.table", shippedTable());
    EXPECT_EQ(judged(cleanSheet(), folder).exitCode, 0);
}

TEST(Tables, WithTheSameRevisionAndOtherBytesAreRefused) {
    const Folder folder;
    const std::string file = folder.write("changed.table", shippedTable() + "# changed\n");
    expectRefused(judged(cleanSheet(), folder), file + ": ");
}

TEST(Tables, ThatAreBrokenAreRefusedEvenWhereNobodyNeedsThem) {
    const Folder folder;
    const std::string file = folder.write(
        "broken.table", replaced(replaced(shippedTable(), "\"EN 1369:2012\"", "\"Works 7\""),
                                 "method     MT", "method     XX"));
    expectRefused(judged(cleanSheet(), folder), file + ":");
}

TEST(Tables, NeedAFolderThatIsThere) {
    const Folder folder;
    const std::string missing = folder.path() + "/none";
    expectRefused(runCli({"judge", "-", "--tables", missing}, cleanSheet().dump()), missing);
    const std::string file = folder.write("a.table", shippedTable());
    expectRefused(runCli({"judge", "-", "--tables", file}, cleanSheet().dump()), file);
}

}  // namespace
}  // namespace app
