// SPDX-License-Identifier: Apache-2.0
// What judge does not take: exit 2 (4 where the machine refused), one line that says where and why,
// and nothing on standard output.
#include <algorithm>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "process.h"
#include "sheets.h"

namespace app {
namespace {

using testing::HasSubstr;
using testing::StartsWith;

void expectRefused(const Finished& finished, int exitCode, const std::string& start,
                   const std::string& reason) {
    EXPECT_EQ(finished.exitCode, exitCode) << finished.error;
    EXPECT_EQ(finished.output, "");
    EXPECT_EQ(std::ranges::count(finished.error, '\n'), 1) << finished.error;
    EXPECT_THAT(finished.error, StartsWith(start));
    EXPECT_THAT(finished.error, HasSubstr(reason));
}

void expectRefused(const std::string& text, const std::string& place, const std::string& reason) {
    expectRefused(runCli({"judge", "-"}, text), 2, "standard input: " + place, reason);
}
void expectRefused(const Json& sheet, const std::string& place, const std::string& reason) {
    expectRefused(sheet.dump(), place, reason);
}

/// `sheet` as text with the JSON text `value` in the place of a field's value.
std::string withText(Json sheet, const char* pointer, const std::string& value) {
    sheet[Json::json_pointer(pointer)] = "@@";
    std::string text = sheet.dump();
    text.replace(text.find("\"@@\""), 4, value);
    return text;
}

constexpr char kLength[] = "/examinations/0/indications/0/length_mm";
const std::string kFirst = "examinations[0].indications[0].";

TEST(RefusedSheets, NameThePlaceOfASyntaxError) {
    const std::string text = spottedSheet(1).dump();
    expectRefused(text.substr(0, text.size() / 2), "line 1, column ", "");
    expectRefused(std::string(), "", "is empty");
    expectRefused(text + "{}", "line 1, column ", "is not JSON");
    expectRefused(withText(spottedSheet(1), kLength, "NaN"), "line 1, column ", "is not JSON");
    expectRefused(withText(spottedSheet(1), kLength, "Infinity"), "line 1, column ", "is not JSON");
}

TEST(RefusedSheets, NameThePathOfANumberOutOfRange) {
    for (const char* number : {"1e400", "-1e400", "1e7", "1000000.000001"})
        expectRefused(withText(spottedSheet(1), kLength, number),
                      kFirst + "length_mm: ", "is larger than 1000000");
    expectRefused(withText(spottedSheet(1), kLength, "0.0000001"),
                  kFirst + "length_mm: ", "more than 6 decimals");
}

TEST(RefusedSheets, NameThePathOfNullAndOfADuplicateKey) {
    expectRefused(withText(spottedSheet(1), "/examinations/0/indications/0/kind", "null"),
                  kFirst + "kind: ", "must not be null");
    expectRefused(withText(spottedSheet(1), kLength, "4, \"length_mm\": 3"),
                  kFirst + "length_mm: ", "is given twice");
    expectRefused(withText(spottedSheet(1), "/format", "\"fettlemark-sheet/1\", \"format\": 1"),
                  "format: ", "is given twice");
}

TEST(RefusedSheets, NameTheFieldThatIsWrong) {
    Json sheet = spottedSheet(1);
    indicationOf(sheet)["length_mm"] = -4;
    expectRefused(sheet, kFirst + "length_mm: ", "greater than 0");
    sheet = spottedSheet(1);
    indicationOf(sheet)["length_mm"] = 0;
    expectRefused(sheet, kFirst + "length_mm: ", "greater than 0");
    sheet = spottedSheet(1);
    indicationOf(sheet)["width_mm"] = 4.1;
    expectRefused(sheet, kFirst + "width_mm: ", "above length_mm");
    sheet = spottedSheet(1);
    indicationOf(sheet)["lenght_mm"] = 4;
    expectRefused(sheet, kFirst + "lenght_mm: ", "not a field that is known");
    sheet = spottedSheet(1);
    examinationOf(sheet)["thickness_mm"] = "40";
    expectRefused(sheet, "examinations[0].thickness_mm: ", "must be a number");
    sheet = spottedSheet(1);
    indicationOf(sheet).erase("width_mm");
    expectRefused(sheet, kFirst + "width_mm: ", "\"class\": \"linear\"");
    sheet = spottedSheet(1);
    examinationOf(sheet)["no_indications"] = true;
    expectRefused(sheet, "examinations[0].no_indications: ", "indications are listed");
}

TEST(RefusedSheets, NameWhatDoesNotFitTogether) {
    Json sheet = spottedSheet(2);
    indicationOf(sheet, 1)["id"] = "1";
    expectRefused(sheet, "examinations[0].indications[1].id: ", "twice");

    sheet = spottedSheet(1);
    indicationOf(sheet)["length_mm"] = 9.6;  // three widths: linear by the table's ratio (>= 3)
    indicationOf(sheet)["class"] = "non-linear";
    expectRefused(sheet, kFirst + "class: ", "ratio");

    sheet = spottedSheet(1);
    indicationOf(sheet)["x_mm"] = 600.000001;
    expectRefused(sheet, "examinations[0].indications[0]", "outside zone Z1");

    sheet = cleanSheet();
    sheet["examinations"].push_back(sheet["examinations"][0]);
    expectRefused(sheet, "examinations[1]: ", "twice");
}

TEST(RefusedSheets, NameALevelOrTableThatDoesNotBelong) {
    Json sheet = cleanSheet();
    examinationOf(sheet)["levels"]["non-linear"] = "SP 2";  // a level of EN 1371-1
    expectRefused(sheet, "examinations[0].levels.non-linear: ", "no level \"SP 2\"");
    sheet = cleanSheet();
    examinationOf(sheet)["levels"]["isolated"] = "SM 2";
    expectRefused(sheet, "examinations[0].levels", "isolated");
    sheet = cleanSheet();
    examinationOf(sheet)["table"] = "EN 1369:2099";
    expectRefused(sheet, "examinations[0].table: ", "EN 1369:2099");
    sheet = cleanSheet();
    examinationOf(sheet)["method"] = "PT";
    expectRefused(sheet, "examinations[0].table: ", "not for PT");
}

TEST(RefusedSheets, NameZonesThatShareArea) {
    Json sheet = cleanSheet();
    sheet["examinations"].push_back(sheet["examinations"][0]);
    examinationOf(sheet, 1)["zone"] = "Z2";
    examinationOf(sheet, 1)["surface"]["x_mm"] = 599.999;
    expectRefused(sheet, "examinations[1]", "shares area");
    examinationOf(sheet, 1)["surface"]["x_mm"] = 600;  // edges may touch
    EXPECT_EQ(runCli({"judge", "-", "--unattested"}, sheet.dump()).exitCode, 0);
}

TEST(RefusedSheets, NameTheWrongEncoding) {
    Json sheet = cleanSheet();
    sheet["casting"]["serial"] = "Qu\xC3\xA4l";
    const std::string text = sheet.dump();
    std::string latin1 = text;
    latin1.replace(latin1.find("\xC3\xA4"), 2, "\xE4");
    expectRefused(latin1, "line 1, column ", "is not UTF-8");
    expectRefused("\xEF\xBB\xBF" + text, "", "byte-order mark");
    std::string utf16 = "\xFF\xFE";
    for (const char c : cleanSheet().dump()) (utf16 += c) += '\0';
    expectRefused(utf16, "", "UTF-16");
    expectRefused(utf16.substr(2), "line 1, column 2", "is not JSON in UTF-8");
    EXPECT_EQ(runCli({"judge", "-", "--unattested"}, text).exitCode, 0);
}

TEST(RefusedSheets, NameAFileThatIsNotThereOrCannotBeRead) {
    const Folder folder;
    const std::string missing = folder.path() + "/none.json";
    expectRefused(runCli({"judge", missing}), 2, missing + ": ", "is not there");
    expectRefused(runCli({"judge", folder.path()}), 2, folder.path() + ": ", "folder");
    // Address 0 of a process cannot be read: the file is there, and reading it fails.
    expectRefused(runCli({"judge", "/proc/self/mem"}), 4, "/proc/self/mem: ", "cannot be read");
}

TEST(RefusedSheets, AreLeftUnreadWhenTheyGoOnForEver) {
    // 200 MB of brackets; the program must give up long before it has taken them.
    constexpr std::size_t kSize = 200'000'000;
    struct Endless {
        std::string start;
        char then;
        std::size_t enough;
    };
    const Endless inputs[] = {
        {"", '[', 2'000'000}, {"\"", 'a', 2'000'000}, {"", '1', 2'000'000}, {"", ' ', 70'000'000}};
    for (const Endless& endless : inputs) {
        Launch launch{.arguments = {"judge", "-"}};
        std::size_t given = 0;
        launch.input = [&]() -> std::string {
            if (given >= kSize) return "";
            std::string piece =
                (given == 0 ? endless.start : "") + std::string(100'000, endless.then);
            given += piece.size();
            return piece;
        };
        const Finished finished = runCli(launch);
        expectRefused(finished, 2, "standard input: ", "");
        EXPECT_LT(finished.bytesTaken, endless.enough) << endless.then;
        EXPECT_LT(finished.seconds, 10.0) << endless.then;
    }
}

TEST(RefusedSheets, CannotMakeTheErrorLineLong) {
    Json sheet = cleanSheet();
    examinationOf(sheet)["stage"] = std::string(90'000, 'x') + "\nsecond line";
    const Finished finished = runCli({"judge", "-"}, sheet.dump());
    expectRefused(finished, 2, "standard input: examinations[0].stage: ", "");
    EXPECT_LT(finished.error.size(), 5'000U);
}

}  // namespace
}  // namespace app
