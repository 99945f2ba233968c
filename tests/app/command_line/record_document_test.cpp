// SPDX-License-Identifier: Apache-2.0
// The record of every certificate of the demonstration keeps the schema that the program publishes,
// checked by Python's jsonschema, which has nothing to do with this program; an altered one does
// not. Its tables are read back by Python's csv module.
#include <array>
#include <cstdio>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "process.h"
#include "sheets.h"

namespace app {
namespace {

using testing::HasSubstr;

std::string printedBy(const std::string& command) {
    std::string printed;
    FILE* pipe = ::popen((command + " 2>&1").c_str(), "r");
    if (pipe == nullptr) return "cannot be run";
    std::array<char, 4096> piece{};
    while (const std::size_t size = std::fread(piece.data(), 1, piece.size(), pipe))
        printed.append(piece.data(), size);
    ::pclose(pipe);
    return printed;
}

class RecordDocument : public testing::Test {
protected:
    static void SetUpTestSuite() {
        folder_ = new Folder;
        const std::string file = folder_->path() + "/demo.db";
        ASSERT_EQ(runCli({"demo", "--db", file}).exitCode, 0);
        const Json found = Json::parse(runCli({"find", "--db", file, "--json"}).output);
        for (const Json& certificate : found["certificates"])
            numbers_.push_back(std::to_string(certificate["number"].get<int>()));
        for (const std::string& number : numbers_)
            ASSERT_EQ(runCli({"export", "--db", file, "--number", number, "--out",
                              folder_->path() + "/" + number})
                          .exitCode,
                      0);
        schema_ = folder_->write("schema.json", runCli({"schema", "casting-record"}).output);
    }
    static void TearDownTestSuite() { delete folder_; }

    static std::string pathOf(const std::string& number, const std::string& name) {
        return folder_->path() + "/" + number + "/" + name;
    }
    /// A line for each document: "kept" or the path of the first thing that is wrong.
    static std::string validated(const std::vector<std::string>& files) {
        std::string command =
            "python3 -W ignore -c 'import json,sys,jsonschema\n"
            "s=json.load(open(sys.argv[1],encoding=\"utf-8\"))\n"
            "V=jsonschema.Draft202012Validator\n"
            "V.check_schema(s)\n"
            "for f in sys.argv[2:]:\n"
            " e=next(V(s).iter_errors(json.load(open(f,encoding=\"utf-8\"))),None)\n"
            " print(\"kept\" if e is None else (e.json_path,e.message[:300]))' '" +
            schema_ + "'";
        for (const std::string& file : files) command += " '" + file + "'";
        return printedBy(command);
    }

    static inline Folder* folder_ = nullptr;
    static inline std::vector<std::string> numbers_;
    static inline std::string schema_;
};

TEST_F(RecordDocument, OracleKeepsItsSchemaForEveryCertificateOfTheDemonstration) {
    ASSERT_FALSE(numbers_.empty());
    std::vector<std::string> files;
    std::string expected;
    for (const std::string& number : numbers_) {
        files.push_back(pathOf(number, "record.json"));
        expected += "kept\n";
    }
    EXPECT_EQ(validated(files), expected);
}

TEST_F(RecordDocument, OracleDoesNotKeepItWhereItIsAltered) {
    const Json record = Json::parse(bytesOf(pathOf(numbers_.front(), "record.json")));
    const std::vector<std::pair<std::string, Json>> changes{
        {"/format", "fettlemark-casting-record/2"},
        {"/demonstration", "yes"},
        {"/certificate/verdict", "accepted"},
        {"/certificate/file_sha256", "abc"},
        {"/certificate/colour", "red"},
        {"/records", Json::array()},
        {"/records/0/word", nullptr},
        {"/records/0/recorded/name", ""},
        {"/records/0/content/header/method", "RT"},
        {"/records/0/content/header/thickness_mm", 0},
        {"/records/0/content/header/thickness_nm", 40},
        {"/records/0/content/order/terms", Json{{"no_such_term", "x"}}},
        {"/records/0/content/conditions", Json{{"measurements", "many"}}},
        {"/records/0/content/judged/word", "good"},
        {"/dossier", Json{{"complaints", Json::array()}}},
        {"/dossier", Json{{"concessions", Json::array({Json{{"number", "C-1"}}})}}},
        {"/sheet/examinations/0/method", "XT"},
        {"/verdict/verdict", "fine"}};
    std::vector<std::string> files;
    for (const auto& [pointer, value] : changes) {
        Json altered = record;
        altered[Json::json_pointer(pointer)] = value;
        files.push_back(folder_->write("altered-" + std::to_string(files.size()), altered.dump()));
    }
    for (const char* missing :
         {"format", "certificate", "records", "dossier", "sheet", "verdict"}) {
        Json altered = record;
        altered.erase(missing);
        files.push_back(folder_->write(std::string("without-") + missing, altered.dump()));
    }
    const std::string printed = validated(files);
    EXPECT_EQ(std::ranges::count(printed, '\n'), static_cast<std::ptrdiff_t>(files.size()));
    EXPECT_THAT(printed, testing::Not(HasSubstr("kept"))) << printed;
}

TEST_F(RecordDocument, HoldsTheSheetAndTheVerdictThatStandBesideIt) {
    for (const std::string& number : numbers_) {
        const Json record = Json::parse(bytesOf(pathOf(number, "record.json")));
        EXPECT_EQ(record["sheet"], Json::parse(bytesOf(pathOf(number, "sheet.json"))));
        EXPECT_EQ(record["verdict"], Json::parse(bytesOf(pathOf(number, "verdict.json"))));
        Json facts = Json::parse(bytesOf(pathOf(number, "certificate-" + number + ".json")));
        facts.erase("format");
        EXPECT_EQ(record["certificate"], facts);
        EXPECT_TRUE(record["demonstration"].get<bool>());
        EXPECT_EQ(record["records"].size(), record["sheet"]["examinations"].size());
        for (std::size_t i = 0; i < record["records"].size(); ++i) {
            const Json& header = record["records"][i]["content"]["header"];
            const Json& examination = record["sheet"]["examinations"][i];
            EXPECT_EQ(header["zone"], examination["zone"]);
            EXPECT_EQ(header["thickness_mm"], examination["thickness_mm"]);
        }
    }
}

TEST_F(RecordDocument, OracleTablesAreReadByAnotherReader) {
    for (const std::string& number : numbers_) {
        const Json record = Json::parse(bytesOf(pathOf(number, "record.json")));
        std::string expected;
        for (const Json& each : record["records"])
            expected += std::to_string(each["id"].get<int>()) + "|" +
                        each["content"]["header"]["zone"].get<std::string>() + "|" +
                        each["word"].get<std::string>() + "|" +
                        each["content_sha256"].get<std::string>() + "\n";
        const std::string read = printedBy(
            "python3 -c 'import csv,sys\n"
            "for r in "
            "csv.DictReader(open(sys.argv[1],newline=\"\",encoding=\"utf-8\"),strict=True):"
            " print(r[\"record\"],r[\"zone\"],r[\"word\"],r[\"content_sha256\"],sep=\"|\")' '" +
            pathOf(number, "records.csv") + "'");
        EXPECT_EQ(read, expected);
    }
}

TEST(SchemaCommand, ListsAndPrints) {
    const Finished names = runCli({"schema"});
    EXPECT_EQ(names.exitCode, 0);
    EXPECT_THAT(names.output, HasSubstr("casting-record\n"));
    EXPECT_THAT(names.output, HasSubstr("equipment check\n"));
    const Json schema = Json::parse(runCli({"schema", "equipment"}).output);
    EXPECT_EQ(schema["properties"]["register"]["const"], "equipment");
    EXPECT_TRUE(schema["$defs"]["equipment"]["properties"].contains("calibration_due"));
    const Finished none = runCli({"schema", "nothing"});
    EXPECT_EQ(none.exitCode, 2);
    EXPECT_THAT(none.error, HasSubstr("there is no schema \"nothing\""));
}

}  // namespace
}  // namespace app
