// SPDX-License-Identifier: Apache-2.0
// backup and restore as another program calls them.
#include <QCoreApplication>
#include <algorithm>
#include <array>
#include <filesystem>
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
using testing::StartsWith;

class BackupCommands : public testing::Test {
protected:
    void SetUp() override { foundry::copyTo(path("works.db")); }
    [[nodiscard]] std::string path(const std::string& name) const {
        return folder_.path() + "/" + name;
    }

    int count_ = 1;
    std::array<char, 5> name_{"test"};
    std::array<char*, 2> arguments_{name_.data(), nullptr};
    QCoreApplication qt_{count_, arguments_.data()};
    Folder folder_;
};

TEST_F(BackupCommands, GiveBackTheSameArchive) {
    const Finished made = runCli({"backup", "--db", path("works.db"), "--out", path("copy")});
    EXPECT_EQ(made.exitCode, 0) << made.error;
    EXPECT_EQ(made.error, "");
    EXPECT_THAT(made.output, AllOf(StartsWith("backup: " + path("copy") + "\ncertificates: 0\n"),
                                   HasSubstr("\nhistory: ")));
    const Finished restored = runCli({"restore", "--from", path("copy"), "--db", path("new.db")});
    EXPECT_EQ(restored.exitCode, 0) << restored.error;
    EXPECT_THAT(restored.output, StartsWith("restored: " + path("new.db") + "\n"));
    const Finished people = runCli({"people", "--db", path("new.db")});
    EXPECT_EQ(people.exitCode, 0) << people.error;
    EXPECT_THAT(people.output, HasSubstr("Quentin Marsh"));
    EXPECT_EQ(people.output, runCli({"people", "--db", path("works.db")}).output);
    const auto before = model::Archive::openForReading(path("works.db"));
    const auto after = model::Archive::openForReading(path("new.db"));
    ASSERT_TRUE(before.ok() && after.ok());
    EXPECT_EQ(*after->head(), *before->head());
    EXPECT_THAT(made.output, HasSubstr("history: " + model::toText(*before->head())));
    EXPECT_TRUE(after->verify()->findings.empty());
}

TEST_F(BackupCommands, RefuseToOverwriteAndToRestoreWhatIsNoBackup) {
    const auto expectRefused = [](const std::vector<std::string>& arguments, int code,
                                  const std::string& reason) {
        const Finished finished = runCli(arguments);
        EXPECT_EQ(finished.exitCode, code);
        EXPECT_EQ(finished.output, "");
        EXPECT_THAT(finished.error, HasSubstr(reason));
        EXPECT_EQ(std::ranges::count(finished.error, '\n'), 1) << finished.error;
    };
    std::filesystem::create_directory(path("there"));
    expectRefused({"backup", "--db", path("works.db"), "--out", path("there")}, 2,
                  path("there") + ": exists already");
    expectRefused({"backup", "--db", path("none.db"), "--out", path("other")}, 2,
                  path("none.db") + ": does not exist");
    expectRefused({"restore", "--from", path("there"), "--db", path("other.db")}, 2,
                  path("there") + ": is no backup");
    expectRefused({"restore", "--from", path("none"), "--db", path("other.db")}, 2,
                  path("none") + ": does not exist");
    ASSERT_EQ(runCli({"backup", "--db", path("works.db"), "--out", path("again")}).exitCode, 0);
    expectRefused({"restore", "--from", path("again"), "--db", path("works.db")}, 2,
                  path("works.db") + ": exists already");
    std::filesystem::resize_file(path("again/archive"), 5000);
    expectRefused({"restore", "--from", path("again"), "--db", path("other.db")}, 4,
                  path("again/archive") + ": was altered");
    EXPECT_FALSE(std::filesystem::exists(path("other.db")));
    EXPECT_FALSE(std::filesystem::exists(path("other")));
    // Nobody, root included, makes folders there.
    expectRefused({"backup", "--db", path("works.db"), "--out", "/proc/copy"}, 4, "/proc/copy");
}

}  // namespace
}  // namespace app
