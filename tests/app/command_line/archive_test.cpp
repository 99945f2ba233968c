// SPDX-License-Identifier: Apache-2.0
// The commands that use an archive: demo, castings, and judge --db.
#include "archive/archive.h"

#include <QCoreApplication>
#include <algorithm>
#include <array>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <map>
#include <optional>
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
        EXPECT_THAT(finished.output, StartsWith("wrote " + file_ + "\n"));
        EXPECT_THAT(finished.output, HasSubstr("Q-2\tAurelio Vantongeren\tQA manager\n"));
        EXPECT_THAT(finished.output, HasSubstr("invented and public: seven gates of Quillmere\n"));
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
        {"CD-09-02", "not acceptable"}, {"TB-18-01", "acceptable"},
        {"TB-18-02", "not acceptable"}, {"TB-18-03", "not judged"},
        {"GP-27-01", "acceptable"},     {"GP-27-02", "not acceptable"},
        {"BS-22-01", "acceptable"},     {"BS-22-02", "not acceptable"},
        {"BS-22-03", "not judged"}};
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
    // Zone Z1 of PS-31-08: what is printed names the rule, the measure and the limit.
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
    EXPECT_EQ(certificates, 17);
    expectRefused(runCli({"castings", "--db", file_, "--out", file_}), 2, file_ + ": ");
    expectRefused(runCli({"castings", "--db", file_, "--out", out + "/a/b"}), 2, out + "/a/b: ");
}

// Its QA manager attested EN 1369:2012; nothing else of the verdict differs.
TEST_F(DemonstrationArchive, LendsItsTablesAndAttestationsToASheet) {
    const Finished with = runCli({"judge", "-", "--db", file_}, spottedSheet(2).dump());
    EXPECT_EQ(with.exitCode, 0) << with.error;
    std::string expected = runCli({"judge", "-"}, spottedSheet(2).dump()).output;
    const std::string open = "\"status\": \"not attested\"";
    const std::size_t at = expected.find(open);
    ASSERT_NE(at, std::string::npos);
    expected.replace(at, open.size(), "\"status\": \"attested\"");
    EXPECT_EQ(with.output, expected);
}

const model::Actor kInspector{"Ada Quill"};

/// An archive with one casting, Q-1, whose plan asks for MT of zone Z1.
class WorkingArchive : public testing::Test {
protected:
    void SetUp() override {
        auto archive = model::Archive::create(file_, model::ArchiveKind::Working, kInspector);
        ASSERT_TRUE(archive.ok()) << archive.error().message();
        archive_.emplace(std::move(archive).value());
        model::Order order;
        order.number = "O-1";
        order.certificateType = "3.1";
        order.language = "en";
        model::Part part;
        part.number = "P-1";
        model::ZonePlan plan;
        plan.part = part.number;
        model::PlannedZone& zone = plan.zones.emplace_back();
        zone.name = "Z1";
        zone.width = model::millimetres(600);
        zone.height = model::millimetres(400);
        zone.thickness = model::millimetres(40);
        zone.tests.push_back(
            {model::Method::Magnetic, model::Stage::AsCast, "EN 1369:2012", kLevels});
        model::Casting casting;
        casting.serial = "Q-1";
        casting.order = order.number;
        casting.part = part.number;
        expectDone(archive_->save(order, 0, kInspector));
        expectDone(archive_->save(part, 0, kInspector));
        expectDone(archive_->add(plan, kInspector));
        expectDone(archive_->save(casting, 0, kInspector));
    }

    template <class Done>
    static void expectDone(const Done& done) {
        ASSERT_TRUE(done.ok()) << done.error().message();
    }

    /// Adds MT of Z1 with one spot of 4 x 3.2 mm, whose length is given as typed.
    void examine(const std::string& length) {
        model::ExaminationDraft draft;
        draft.casting = "Q-1";
        draft.header.zone = "Z1";
        draft.header.thickness = model::millimetres(40);
        draft.header.table = "EN 1369:2012";
        draft.header.levels = kLevels;
        model::TypedIndication& row = draft.rows.emplace_back();
        row.id = "1";
        row.x = row.y = "50";
        row.length = length;
        row.width = "3.2";
        expectDone(archive_->save(draft, kInspector));
    }

    const std::map<std::string, std::string> kLevels{
        {"non-linear", "SM 2"}, {"linear", "LM 4"}, {"aligned", "AM 4"}};
    int count_ = 1;
    std::array<char, 5> name_{"test"};
    std::array<char*, 2> arguments_{name_.data(), nullptr};
    QCoreApplication qt_{count_, arguments_.data()};
    Folder folder_;
    std::string file_ = folder_.path() + "/works.db";
    std::optional<model::Archive> archive_;
};

TEST_F(WorkingArchive, HasNoResultWhereNothingWasExamined) {
    const Finished finished = runCli({"castings", "--db", file_, "--unattested"});
    EXPECT_EQ(finished.exitCode, 3);
    EXPECT_EQ(finished.error, "");
    const auto lines = columnsOf(finished.output);
    ASSERT_EQ(lines.size(), 1U);
    EXPECT_EQ(lines[0][5], "not judged");
}

TEST_F(WorkingArchive, IsJudgedAcceptableOnlyWithTheSwitchWhileNobodyAttested) {
    examine("4");
    EXPECT_EQ(runCli({"castings", "--db", file_}).exitCode, 3);
    const Finished finished = runCli({"castings", "--db", file_, "--unattested"});
    EXPECT_EQ(finished.exitCode, 0) << finished.error;
    const auto lines = columnsOf(finished.output);
    ASSERT_EQ(lines.size(), 2U);
    EXPECT_THAT(
        lines[0],
        testing::ElementsAre("Q-1", "Z1", "MT", "as cast",
                             "aligned AM 4, linear LM 4, non-linear SM 2", "acceptable",
                             "individual length, non-linear: 4 mm, at most 4 mm (Table 1, L2, R)"));
    EXPECT_EQ(lines[1][5], "acceptable");
}

TEST_F(WorkingArchive, IsNotJudgedWhileARowIsHalfTyped) {
    examine("");
    const Finished finished = runCli({"castings", "--db", file_, "--unattested"});
    EXPECT_EQ(finished.exitCode, 3);
    EXPECT_EQ(finished.error, "");
    const auto lines = columnsOf(finished.output);
    ASSERT_EQ(lines.size(), 1U);
    EXPECT_EQ(lines[0][5], "not judged");
    EXPECT_THAT(lines[0][6], HasSubstr("length_mm"));
}

TEST_F(WorkingArchive, LendsItsOwnTables) {
    std::string text = bytesOf(FETTLEMARK_TABLES "/en_1369_2012.table");
    text.replace(text.find("\"EN 1369:2012\""), 14, "\"Works 7\"");
    expectDone(archive_->addTable(text, "works.table", kInspector));
    Json sheet = spottedSheet(1);
    examinationOf(sheet)["table"] = "Works 7";
    EXPECT_EQ(runCli({"judge", "-", "--unattested"}, sheet.dump()).exitCode, 2);
    EXPECT_EQ(runCli({"judge", "-", "--unattested", "--db", file_}, sheet.dump()).exitCode, 0);
    // The same revision from a folder, with other bytes.
    const Folder tables;
    const std::string other = tables.write("works.table", text + "# changed\n");
    expectRefused(runCli({"judge", "-", "--db", file_, "--tables", tables.path()}, sheet.dump()), 2,
                  other + ": ");
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
