// SPDX-License-Identifier: Apache-2.0
// The commands that take a casting from draft to certificate, and what may follow.
#include <QCoreApplication>
#include <algorithm>
#include <array>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "archive/archive.h"
#include "foundry/foundry.h"
#include "process.h"
#include "sheets.h"

namespace app {
namespace {

using testing::AllOf;
using testing::HasSubstr;
using testing::Not;
using testing::StartsWith;

class ReleaseCommands : public testing::Test {
protected:
    void SetUp() override {
        foundry::copyTo(file_);
        auto archive = model::Archive::open(file_);
        ASSERT_TRUE(archive.ok()) << archive.error().message();
        const model::Actor actor{"Ilse"};
        model::Order order;
        order.number = "O-1";
        order.customer = "First Buyer";
        order.certificateType = "3.1";
        order.language = "en";
        ASSERT_TRUE(archive->save(order, 0, actor).ok());
        model::Part part;
        part.number = "P-9";
        ASSERT_TRUE(archive->save(part, 0, actor).ok());
        model::PlannedZone zone;
        zone.name = "Z1";
        zone.width = model::millimetres(600);
        zone.height = model::millimetres(400);
        zone.thickness = model::millimetres(40);
        zone.tests = {
            {model::Method::Magnetic, model::Stage::FinishMachined, "EN 1369:2012", levels_}};
        ASSERT_TRUE(archive->add(model::ZonePlan{"P-9", 1, {zone}}, actor).ok());
        ASSERT_TRUE(archive->save(model::Casting{"S-17", "H 204", "O-1", "P-9", 1}, 0, actor).ok());
        model::ExaminationDraft draft;
        draft.casting = "S-17";
        draft.header.zone = "Z1";
        draft.header.stage = model::Stage::FinishMachined;
        draft.header.thickness = model::millimetres(40);
        draft.header.table = "EN 1369:2012";
        draft.header.levels = levels_;
        draft.header.noIndications = true;
        ASSERT_TRUE(archive->save(draft, actor).ok());
        draft.header.repeat = 1;
        ASSERT_TRUE(archive->save(draft, actor).ok());
    }

    /// A command with --db, --person and that person's passphrase.
    Finished as(const std::string& person, std::vector<std::string> arguments) const {
        for (const std::string& word : {std::string("--db"), file_, std::string("--person"), person,
                                        std::string("--passphrase"), passphrase_})
            arguments.push_back(word);
        return runCli(arguments);
    }
    Finished sign(const std::string& id, std::vector<std::string> more = {}) const {
        std::vector<std::string> arguments{"sign", "--examination", id, "--version", "1"};
        arguments.insert(arguments.end(), more.begin(), more.end());
        return as(foundry::kInspector, arguments);
    }
    [[nodiscard]] std::string list(const std::string& command,
                                   std::vector<std::string> more = {}) const {
        std::vector<std::string> arguments{command, "--db", file_};
        arguments.insert(arguments.end(), more.begin(), more.end());
        const Finished finished = runCli(arguments);
        EXPECT_EQ(finished.exitCode, 0) << finished.error;
        return finished.output;
    }
    /// The table's SHA-256 as `tables --cells` shows it.
    [[nodiscard]] std::string digest() const {
        const std::string line = list("tables", {"--cells", "EN 1369:2012"});
        const std::string start = "EN 1369:2012\t1\tMT\t";
        EXPECT_THAT(line, StartsWith(start));
        return line.substr(start.size(), 64);
    }
    static void expectDone(const Finished& finished, const std::string& output) {
        EXPECT_EQ(finished.exitCode, 0) << finished.error;
        EXPECT_EQ(finished.output, output);
    }
    static void expectRefused(const Finished& finished, int exitCode, const std::string& reason) {
        EXPECT_EQ(finished.exitCode, exitCode) << finished.error;
        EXPECT_EQ(finished.output, "");
        EXPECT_EQ(std::ranges::count(finished.error, '\n'), 1) << finished.error;
        EXPECT_THAT(finished.error, HasSubstr(reason));
    }

    const std::map<std::string, std::string> levels_{
        {"non-linear", "SM 2"}, {"linear", "LM 4"}, {"aligned", "AM 4"}};
    Folder folder_;
    std::string file_ = folder_.path() + "/works.db";
    std::string passphrase_ = folder_.write("passphrase", foundry::kPassphrase);

private:
    int count_ = 1;
    std::array<char, 5> name_{"test"};
    std::array<char*, 2> arguments_{name_.data(), nullptr};
    QCoreApplication qt_{count_, arguments_.data()};
};

TEST_F(ReleaseCommands, AttestATableThatWasShown) {
    EXPECT_THAT(list("tables"),
                AllOf(HasSubstr("EN 1369:2012\t1\tMT\t"), HasSubstr("\tnot attested\n"),
                      Not(HasSubstr("attested by"))));
    EXPECT_EQ(runCli({"tables"}).output, list("tables"));
    const std::string cells = list("tables", {"--cells", "EN 1369:2012"});
    EXPECT_THAT(cells,
                HasSubstr("threshold\tnon-linear\tSM 01\t-\tat least 0.3 mm\tTable 1, L1\tR\n"));
    EXPECT_THAT(list("tables", {"--cells", "ASTM A903/A903M-99 MT"}),
                HasSubstr("\tunknown\tTable 1, not read\t-\n"));
    expectRefused(runCli({"tables", "--cells", "EN 1"}), 2, "there is no limit table \"EN 1\"");

    expectRefused(as(foundry::kInspector, {"attest", "--digest", digest(), "--copy", "copy 3"}), 4,
                  "is not signed in as QA manager");
    expectRefused(as(foundry::kQaManager, {"attest", "--digest", "00", "--copy", "copy 3"}), 2,
                  "has no limit table");
    expectDone(as(foundry::kQaManager, {"attest", "--digest", digest(), "--copy", "copy 3"}),
               "attested " + digest() + "\n");
    EXPECT_THAT(list("tables"), HasSubstr("\tattested by Quentin Marsh at "));
    expectRefused(as(foundry::kQaManager, {"attest", "--digest", digest(), "--copy", "copy 3"}), 4,
                  "attested already");
}

TEST_F(ReleaseCommands, AttestationIsSeenByJudging) {
    const std::string sheet = folder_.write("sheet.json", cleanSheet().dump());
    EXPECT_EQ(runCli({"judge", sheet, "--db", file_}).exitCode, 3);
    ASSERT_EQ(as(foundry::kQaManager, {"attest", "--digest", digest(), "--copy", "c"}).exitCode, 0);
    const Finished judged = runCli({"judge", sheet, "--db", file_});
    EXPECT_EQ(judged.exitCode, 0);
    EXPECT_THAT(judged.output, HasSubstr("\"status\": \"attested\""));
}

TEST_F(ReleaseCommands, SignExaminationsAndDeclareOneInvalid) {
    EXPECT_EQ(list("examinations", {"--serial", "S-17"}),
              "1\t1\tZ1\tMT\tfinish machined\t0\t0\t-\tdraft\n"
              "2\t1\tZ1\tMT\tfinish machined\t0\t1\t-\tdraft\n");
    const Finished rejected = sign("1", {"--reject", "looks torn"});
    EXPECT_EQ(rejected.exitCode, 0) << rejected.error;
    EXPECT_THAT(rejected.output, AllOf(StartsWith("record "), HasSubstr("\tnot acceptable\n")));
    const std::string record = rejected.output.substr(7, rejected.output.find('\t') - 7);
    EXPECT_THAT(sign("2").output, HasSubstr("\tacceptable\n"));
    EXPECT_THAT(list("examinations", {"--serial", "S-17"}),
                HasSubstr("\tnot acceptable\trecord " + record + " revision 1 by Ilse Bröker at "));
    expectRefused(sign("2"), 4, "signed already");
    expectRefused(sign("x"), 2, "--examination: \"x\" is not a number");
    expectRefused(as(foundry::kQaManager, {"sign", "--examination", "1", "--version", "1"}), 4,
                  "is not signed in as inspector");

    const std::vector<std::string> invalid{"invalidate", "--record", record, "--reason",
                                           "no paint"};
    expectRefused(as(foundry::kInspector, invalid), 4, "Level 3 in MT");
    expectDone(as(foundry::kLevel3, invalid), "declared record " + record + " invalid\n");
    EXPECT_THAT(list("examinations", {"--serial", "S-17"}),
                HasSubstr(", declared invalid by Otto Sandmann: no paint\n"));
    expectRefused(runCli({"examinations", "--db", file_, "--serial", "S-18"}), 2,
                  "has no casting S-18");
}

TEST_F(ReleaseCommands, TakeACastingToItsCertificateAndBack) {
    EXPECT_EQ(list("queue"), "nothing waits for release\n");
    ASSERT_EQ(sign("1").exitCode, 0);
    ASSERT_EQ(sign("2").exitCode, 0);
    ASSERT_EQ(as(foundry::kQaManager, {"attest", "--digest", digest(), "--copy", "c"}).exitCode, 0);
    const std::vector<std::string> present{"present", "--serial", "S-17", "--works",
                                           "Quillmere Foundry"};
    expectRefused(as(foundry::kLevel3, present), 4, "recorded none of its examinations");
    expectDone(as(foundry::kInspector, present), "presented S-17 as certificate 1\n");
    EXPECT_THAT(list("queue"), StartsWith("1\tS-17\t3.1\tacceptable\tIlse Bröker\t"));
    EXPECT_THAT(list("queue", {"--person", foundry::kWorksManager}),
                HasSubstr("1\tobstacle\tMara Ofen belongs to the manufacturing department"));
    const std::vector<std::string> release{"release", "--number", "1"};
    expectRefused(as(foundry::kWorksManager, release), 4, "manufacturing department");
    expectRefused(as(foundry::kInspector, release), 4, "is no QA manager");
    expectRefused(as(foundry::kThirdParty, {"endorse", "--number", "1"}), 2, "only type 3.2");
    const std::vector<std::string> giveBack{"return", "--number", "1", "--reason", "look again"};
    expectRefused(as(foundry::kInspector, giveBack), 4, "is not signed in as QA manager");
    expectDone(as(foundry::kQaManager, giveBack), "returned 1\n");
    EXPECT_THAT(list("examinations", {"--serial", "S-17"}),
                HasSubstr("\tdraft, given back by Quentin Marsh: look again\n"));

    ASSERT_EQ(sign("1").exitCode, 0);
    ASSERT_EQ(sign("2").exitCode, 0);
    ASSERT_EQ(as(foundry::kInspector, present).exitCode, 0);
    expectRefused(as(foundry::kQaManager, {"withdraw", "--number", "2", "--reason", "void"}), 2,
                  "has no certificate 2");
    expectDone(as(foundry::kQaManager, {"release", "--number", "2"}), "released certificate 2\n");
    expectRefused(as(foundry::kQaManager, {"release", "--number", "2"}), 4, "certificate 2");
    expectDone(as(foundry::kQaManager, {"withdraw", "--number", "2", "--reason", "void"}),
               "withdrew 2\n");
    expectDone(as(foundry::kQaManager, {"reopen", "--serial", "S-17", "--reason", "typo"}),
               "reopened S-17\n");
    EXPECT_THAT(list("examinations", {"--serial", "S-17"}),
                HasSubstr("\tdraft, given back by Quentin Marsh: typo\n"));
}

}  // namespace
}  // namespace app
