// SPDX-License-Identifier: Apache-2.0
// keep, hold, retention and dispose as another program calls them.
#include <QCoreApplication>
#include <algorithm>
#include <array>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "archive/archive.h"
#include "foundry/foundry.h"
#include "foundry/old_certificates.h"
#include "process.h"
#include "sheets.h"

namespace app {
namespace {

using testing::AllOf;
using testing::HasSubstr;

class RetentionCommands : public testing::Test {
protected:
    void SetUp() override {
        foundry::copyTo(file_);
        auto archive = model::Archive::open(file_);
        ASSERT_TRUE(archive.ok()) << archive.error().message();
        const model::Actor actor{"Ilse"};
        model::Order order;
        order.number = "O-1";
        order.certificateType = "3.1";
        order.language = "en";
        ASSERT_TRUE(archive->save(order, 0, actor).ok());
        model::Part part;
        part.number = "P-9";
        ASSERT_TRUE(archive->save(part, 0, actor).ok());
        ASSERT_TRUE(archive->add(model::ZonePlan{"P-9", 1, {}}, actor).ok());
        ASSERT_TRUE(archive->save(model::Casting{"S-17", "H 204", "O-1", "P-9", 1}, 0, actor).ok());
        model::IssueFacts facts;
        facts.serial = "S-17";
        facts.order = "O-1";
        facts.type = "3.1";
        ASSERT_TRUE(foundry::addCertificate(*archive, facts, "%PDF", actor).ok());
    }

    /// A command with --db, --person and that person's passphrase.
    Finished as(const std::string& person, std::vector<std::string> arguments) const {
        for (const std::string& word : {std::string("--db"), file_, std::string("--person"), person,
                                        std::string("--passphrase"), passphrase_})
            arguments.push_back(word);
        return runCli(arguments);
    }
    void expectStated(const Finished& finished, const std::string& text) const {
        EXPECT_EQ(finished.exitCode, 0) << finished.error;
        EXPECT_EQ(finished.output, "order O-1: " + text + "\n");
        EXPECT_EQ(runCli({"retention", "--db", file_, "--order", "O-1"}).output, finished.output);
    }
    static void expectRefused(const Finished& finished, int code, const std::string& reason) {
        EXPECT_EQ(finished.exitCode, code);
        EXPECT_EQ(finished.output, "");
        EXPECT_EQ(std::ranges::count(finished.error, '\n'), 1) << finished.error;
        EXPECT_THAT(finished.error, HasSubstr(reason));
    }

    int count_ = 1;
    std::array<char, 5> name_{"test"};
    std::array<char*, 2> arguments_{name_.data(), nullptr};
    QCoreApplication qt_{count_, arguments_.data()};
    Folder folder_;
    std::string file_ = folder_.path() + "/works.db";
    std::string passphrase_ = folder_.write("passphrase", std::string(foundry::kPassphrase) + "\n");
};

TEST_F(RetentionCommands, KeepHoldAndDispose) {
    EXPECT_EQ(runCli({"retention", "--db", file_, "--order", "O-1"}).output,
              "order O-1: kept for ever\n");
    const std::vector<std::string> dispose{"dispose", "--number", "1", "--reason", "day is over"};
    expectRefused(as(foundry::kQaManager, dispose), 4, "stays for ever");
    expectStated(as(foundry::kQaManager, {"keep", "--order", "O-1", "--until", "2999-12-31"}),
                 "to be kept until 2999-12-31");
    const std::string listed =
        runCli({"retention", "--db", file_, "--order", "O-1", "--certificates"}).output;
    EXPECT_THAT(listed, AllOf(HasSubstr("\n1\tS-17\t3.1\treleased\t20"),
                              HasSubstr("\t1\t0\tcertificate 1: stays: its order O-1 is to be kept "
                                        "until 2999-12-31\n")));
    expectRefused(as(foundry::kQaManager, dispose), 4, "is to be kept until 2999-12-31");
    const std::vector<std::string> sooner{"keep", "--order", "O-1", "--until", "2026-11-24"};
    expectRefused(as(foundry::kQaManager, sooner), 2, "an earlier day needs a reason");
    std::vector<std::string> explained = sooner;
    explained.insert(explained.end(), {"--reason", "typing error"});
    expectStated(as(foundry::kQaManager, explained), "to be kept until 2026-11-24");
    expectStated(as(foundry::kAdministrator, {"hold", "--order", "O-1", "--reason", "claim 12"}),
                 "to be kept until 2026-11-24; on hold: claim 12");
    expectRefused(as(foundry::kQaManager, dispose), 4, "is on hold: claim 12");
    expectStated(
        as(foundry::kQaManager, {"hold", "--order", "O-1", "--reason", "settled", "--end"}),
        "to be kept until 2026-11-24");
    expectRefused(as(foundry::kInspector, dispose), 4, "neither QA manager nor administrator");
    const Finished done = as(foundry::kQaManager, dispose);
    EXPECT_EQ(done.exitCode, 0) << done.error;
    EXPECT_EQ(done.output, "disposed of certificate 1\n");
    const auto archive = model::Archive::openForReading(file_);
    ASSERT_TRUE(archive.ok());
    EXPECT_TRUE(archive->verify()->findings.empty());
    const auto certificate = archive->certificate(1);
    ASSERT_FALSE(certificate.ok());
    EXPECT_THAT(certificate.error().message(),
                AllOf(HasSubstr("Quentin Marsh"), HasSubstr("day is over")));
}

TEST_F(RetentionCommands, RefuseWhatIsWrong) {
    expectRefused(as(foundry::kQaManager, {"keep", "--order", "O-1", "--until", "31.12.2036"}), 2,
                  "is no date");
    expectRefused(as(foundry::kQaManager, {"keep", "--order", "O-9", "--until", "2036-12-31"}), 2,
                  "has no order O-9");
    expectRefused(runCli({"retention", "--db", file_, "--order", "O-9"}), 2, "has no order O-9");
    expectRefused(as(foundry::kQaManager, {"dispose", "--number", "x", "--reason", "y"}), 2, "x");
    expectRefused(as(foundry::kQaManager, {"dispose", "--number", "8", "--reason", "y"}), 2,
                  "has no certificate 8");
    expectRefused(as(foundry::kQaManager, {"hold", "--order", "O-1"}), 2, "--reason");
}

}  // namespace
}  // namespace app
