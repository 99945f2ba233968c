// SPDX-License-Identifier: Apache-2.0
// The commands for people and their identities, from set-up to withdrawal.
#include <algorithm>
#include <chrono>
#include <filesystem>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "process.h"
#include "sheets.h"
#include "trust/authority.h"

namespace app {
namespace {

using testing::AllOf;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::Not;
using testing::StartsWith;

class PeopleCommands : public testing::Test {
protected:
    void SetUp() override {
        const Finished finished = setUp(file_);
        ASSERT_EQ(finished.exitCode, 0) << finished.error;
        EXPECT_THAT(finished.output, StartsWith("set up " + file_ + "\nauthority's certificate"));
        // 64 hexadecimal digits.
        EXPECT_EQ(finished.output.size() - finished.output.rfind('\t'), 66U);
    }
    Finished setUp(const std::string& file, const std::string& passphrase = "") const {
        return runCli({"set-up", "--db", file, "--organisation", "Quillmere Foundry", "--authority",
                       "Quillmere inspection authority", "--person", "P-1", "--name", "Ada Ferrous",
                       "--until", "2090-12-31", "--authority-passphrase", ladle_, "--passphrase",
                       passphrase.empty() ? ada_ : passphrase});
    }
    /// With what an administrator gives in every command.
    Finished run(std::vector<std::string> arguments, const std::string& input = "") const {
        for (const char* word : {"--db", file_.c_str(), "--person", "P-1", "--passphrase"})
            arguments.emplace_back(word);
        arguments.push_back(input.empty() ? ada_ : "-");
        return runCli(arguments, input);
    }
    Finished addInspector() const {
        return run({"add-person", "--id", "P-2", "--name", "Ilse Br\xc3\xb6ker", "--roles",
                    "inspector, auditor", "--levels", "MT 2,PT 1", "--manufacturing"});
    }
    Finished issue() const {
        return run({"issue-identity", "--for", "P-2", "--until", "2080-06-30", "--new-passphrase",
                    ilse_, "--authority-passphrase", ladle_});
    }
    [[nodiscard]] std::string people() const {
        const Finished finished = runCli({"people", "--db", file_});
        EXPECT_EQ(finished.exitCode, 0) << finished.error;
        return finished.output;
    }
    static void expectRefused(const Finished& finished, int exitCode, const std::string& reason) {
        EXPECT_EQ(finished.exitCode, exitCode) << finished.error;
        EXPECT_EQ(finished.output, "");
        EXPECT_EQ(std::ranges::count(finished.error, '\n'), 1) << finished.error;
        EXPECT_THAT(finished.error, HasSubstr(reason));
    }

    Folder folder_;
    std::string file_ = folder_.path() + "/works.db";
    std::string ada_ = folder_.write("ada", "clay and green sand\n");
    std::string ilse_ = folder_.write("ilse", "a lamp of ultraviolet\r\n");
    std::string ladle_ = folder_.write("ladle", "one ladle of iron");
};

TEST_F(PeopleCommands, BringAPersonFromTheFirstDayToTheLast) {
    ASSERT_EQ(addInspector().exitCode, 0);
    EXPECT_THAT(people(),
                "P-1\tAda Ferrous\tadministrator\t\t\tactive\tuntil 2090-12-31\n"
                "P-2\tIlse Br\xc3\xb6ker\tinspector, auditor\tMT 2, PT 1\tmanufacturing\tactive\t"
                "none\n");
    const Finished issued = issue();
    EXPECT_EQ(issued.exitCode, 0) << issued.error;
    EXPECT_THAT(people(), HasSubstr("until 2080-06-30\n"));
    const std::string next = folder_.write("next", "another lamp\n");
    const Finished changed = runCli({"passphrase", "--db", file_, "--person", "P-2", "--passphrase",
                                     ilse_, "--new-passphrase", next});
    EXPECT_EQ(changed.exitCode, 0) << changed.error;
    expectRefused(runCli({"passphrase", "--db", file_, "--person", "P-2", "--passphrase", ilse_,
                          "--new-passphrase", next}),
                  2, "the passphrase is wrong");
    const Finished withdrawn =
        run({"withdraw-identity", "--for", "P-2", "--reason", "position-changed", "--remark",
             "left the works", "--authority-passphrase", ladle_});
    EXPECT_EQ(withdrawn.exitCode, 0) << withdrawn.error;
    EXPECT_THAT(people(), HasSubstr("withdrawn: position changed\n"));
    expectRefused(runCli({"passphrase", "--db", file_, "--person", "P-2", "--passphrase", next,
                          "--new-passphrase", ilse_}),
                  2, "no identity of Ilse");
    const Finished left = run({"add-person", "--id", "P-2", "--name", "Ilse Br\xc3\xb6ker",
                               "--roles", "inspector", "--inactive", "--change"});
    EXPECT_EQ(left.exitCode, 0) << left.error;
    EXPECT_THAT(people(), HasSubstr("\tinspector\t\t\tinactive\t"));
}

TEST_F(PeopleCommands, ChangeTheAuthoritysPassphrase) {
    ASSERT_EQ(addInspector().exitCode, 0);
    const std::string kettle = folder_.write("kettle", "two ladles of iron\n");
    const std::vector<std::string> change{"authority-passphrase", "--authority-passphrase", ladle_,
                                          "--new-passphrase", kettle};
    const Finished changed = run(change);
    EXPECT_EQ(changed.exitCode, 0) << changed.error;
    EXPECT_EQ(changed.output, "changed the authority's passphrase\n");
    expectRefused(run(change), 2, "the passphrase is wrong");
    expectRefused(issue(), 2, "the passphrase is wrong");
    ladle_ = kettle;
    EXPECT_EQ(issue().exitCode, 0);
}

TEST_F(PeopleCommands, TakeOverACompanysRevocationList) {
    using model::toText;
    const auto now = std::chrono::floor<std::chrono::seconds>(std::chrono::system_clock::now());
    const model::UtcTime from = now - std::chrono::hours(2);
    const model::UtcTime until = now + std::chrono::hours(240);
    const model::SecretBytes passphrase("the company's own");
    const auto made = model::Authority::create(
        {"Company authority", "Quillmere Holding", "", from, until}, passphrase);
    ASSERT_TRUE(made);
    const auto authority = model::Authority::unlock(*made, passphrase, now);
    ASSERT_TRUE(authority);
    const std::vector<model::RevokedCertificate> revoked{{"1A2B", from, {}}};
    const auto list = authority->revocationList(revoked, 1, from, until);
    ASSERT_TRUE(list);
    const std::string certificate = folder_.write("company.der", authority->certificate());
    const std::string file = folder_.write("company.crl", *list);
    expectRefused(run({"take-revocation-list", "--file", ada_}), 2,
                  "ada: the file is no revocation list");
    expectRefused(run({"take-revocation-list", "--file", file}), 2,
                  "no trusted authority signed the list");
    ASSERT_EQ(run({"trust-authority", "--file", certificate}).exitCode, 0);
    const Finished taken = run({"take-revocation-list", "--file", file});
    EXPECT_EQ(taken.exitCode, 0) << taken.error;
    EXPECT_EQ(taken.output, "took over the list of Company authority of " + toText(from) +
                                ", which revokes 1; its next is due on " + toText(until) + "\n");
    expectRefused(run({"take-revocation-list", "--file", file}), 2, "already that was issued on");
}

TEST_F(PeopleCommands, TakeAPassphraseFromStandardInput) {
    const Finished added =
        run({"add-person", "--id", "P-3", "--name", "Quentin Marsh", "--roles", "QA manager"},
            "clay and green sand\n");
    EXPECT_EQ(added.exitCode, 0) << added.error;
    expectRefused(run({"add-person", "--id", "P-4", "--name", "Mara", "--roles", "auditor"}, "\n"),
                  2, "standard input: holds no passphrase");
    expectRefused(run({"add-person", "--id", "P-4", "--name", "Mara", "--roles", "auditor"},
                      "clay and green sand\nmore\n"),
                  2, "standard input: must hold the passphrase on its only line");
}

TEST_F(PeopleCommands, SlowDownGuessing) {
    const std::string wrong = folder_.write("wrong", "not the passphrase\n");
    const std::vector<std::string> words{"passphrase", "--db",         file_, "--person",
                                         "P-1",        "--passphrase", wrong, "--new-passphrase",
                                         ilse_};
    for (int i = 0; i < 3; ++i) expectRefused(runCli(words), 2, "the passphrase is wrong");
    // Not the right one either, until the wait is over.
    expectRefused(addInspector(), 4, "after 3 wrong ones; try again in ");
}

TEST_F(PeopleCommands, RefuseWhatCannotBe) {
    const auto add = [&](const std::string& roles, const std::string& levels) {
        return run(
            {"add-person", "--id", "P-9", "--name", "Nea", "--roles", roles, "--levels", levels});
    };
    expectRefused(add("king", "MT 2"), 2, "there is no role \"king\"");
    expectRefused(add("inspector", "MT 4"), 2, "\"MT 4\" is no level");
    expectRefused(add("inspector", "XT 2"), 2, "\"XT 2\" is no level");
    expectRefused(add("inspector", "MT"), 2, "\"MT\" is no level");
    expectRefused(add("third party", "MT 2"), 2, "whom a third party acts for");
    expectRefused(run({"add-person", "--id", "P-1", "--name", "Nea", "--roles", "auditor"}), 4,
                  "has a person P-1 already");
    expectRefused(
        run({"add-person", "--id", "P-9", "--name", "Nea", "--roles", "auditor", "--change"}), 2,
        "has no person P-9");
    expectRefused(run({"issue-identity", "--for", "P-1", "--until", "2080-02-30",
                       "--new-passphrase", ilse_, "--authority-passphrase", ladle_}),
                  2, "--until: \"2080-02-30\" is no date");
    expectRefused(run({"withdraw-identity", "--for", "P-1", "--reason", "whim",
                       "--authority-passphrase", ladle_}),
                  2, "--reason: \"whim\" is none of");
    expectRefused(run({"trust-authority", "--file", ada_}), 2, "holds no certificate");
    expectRefused(run({"import-identity", "--for", "P-1", "--file", ada_, "--file-passphrase",
                       ladle_, "--new-passphrase", ilse_}),
                  2, "no PKCS #12 identity");
    expectRefused(run({"issue-identity", "--for", "P-1", "--until", "2080-06-30",
                       "--new-passphrase", ilse_, "--authority-passphrase", "/none/here"}),
                  2, "/none/here: is no file with a passphrase");
    EXPECT_EQ(people(), "P-1\tAda Ferrous\tadministrator\t\t\tactive\tuntil 2090-12-31\n");
}

TEST_F(PeopleCommands, LeaveNothingOfASetUpThatFailed) {
    expectRefused(setUp(file_), 2, "was set up already");
    const std::string other = folder_.path() + "/other.db";
    expectRefused(setUp(other, folder_.write("short", "short\n")), 2,
                  "a passphrase must have at least 8 characters");
    // A key that lay there stays.
    static_cast<void>(folder_.write("third.db.key", "another archive's key"));
    expectRefused(setUp(folder_.path() + "/third.db"), 2, "exists already");
    EXPECT_THAT(folder_.names(), ElementsAre("ada", "ilse", "ladle", "short", "third.db.key",
                                             "works.db", "works.db.key"));
}

TEST_F(PeopleCommands, MakeAnotherKeyOnlyWhereTheArchivesIsLost) {
    expectRefused(run({"replace-archive-key"}), 2, "works.db.key: is there");
    std::filesystem::remove(file_ + ".key");
    expectRefused(addInspector(), 4, "works.db.key: is missing");
    const Finished replaced = run({"replace-archive-key"});
    EXPECT_EQ(replaced.exitCode, 0) << replaced.error;
    EXPECT_EQ(addInspector().exitCode, 0);
}

TEST_F(PeopleCommands, ShowNoPassphraseAnywhere) {
    ASSERT_EQ(addInspector().exitCode, 0);
    ASSERT_EQ(issue().exitCode, 0);
    const std::string bytes = bytesOf(file_);
    EXPECT_THAT(bytes, AllOf(Not(HasSubstr("clay and green")), Not(HasSubstr("ultraviolet")),
                             Not(HasSubstr("one ladle"))));
}

}  // namespace
}  // namespace app
