// SPDX-License-Identifier: Apache-2.0
// The archive's own key and its file: there from the start, needed for every write and for nothing
// else.
#include "archive/archive_key.h"

#include <filesystem>
#include <fstream>
#include <sstream>

#include "archive/dialect.h"
#include "archive/migration.h"
#include "archive/stored_file.h"
#include "archive_fixture.h"
#include "people/shell.h"
#include "raw_database.h"

namespace model {
namespace {

namespace fs = std::filesystem;
using testing::AllOf;
using testing::Contains;
using testing::HasSubstr;
using testing::IsEmpty;

class ArchiveKeys : public ArchiveTest {
protected:
    [[nodiscard]] std::string keyFile() const { return path() + ".key"; }

    static std::string bytesOf(const std::string& file) {
        std::ifstream stream(file, std::ios::binary);
        return {std::istreambuf_iterator<char>(stream), {}};
    }

    /// An archive of schema 1 with one of each record.
    std::string oldArchive() {
        std::string name = pathOf("old");
        std::ifstream dump("data/schema_1.sql");
        std::stringstream script;
        script << dump.rdbuf();
        RawDatabase raw(name);
        EXPECT_EQ(raw.run(script.str()), SQLITE_OK) << raw.message();
        EXPECT_THAT(storeFile(name + ".files", "%PDF of an old archive"), Succeeds());
        return name;
    }

    people::Folder shell_;
};

// Source: the openssl command reads the file, and its public half is the database's.
TEST_F(ArchiveKeys, AreMadeWithTheArchiveOracle) {
    EXPECT_EQ(fs::status(keyFile()).permissions(), fs::perms::owner_read | fs::perms::owner_write);
    shell_.write("archive.pem", bytesOf(keyFile()));
    ASSERT_EQ(shell_.run("openssl pkey -in archive.pem -pubout -outform DER -out public").code, 0);
    RawDatabase raw(path());
    EXPECT_EQ(shell_.read("public"), raw.value("SELECT public_key FROM archive_key"));
    EXPECT_TRUE(shell_.run("openssl pkey -in archive.pem -noout -text").says("NIST CURVE: P-256"));
    EXPECT_FALSE(fs::exists(keyFile() + ".new"));
}

TEST_F(ArchiveKeys, AreNeededForWritingOnly) {
    fill();
    archive_ = reopened();
    const std::string away = pathOf("away");
    fs::rename(keyFile(), away);
    Archive other = reopened();
    EXPECT_THAT(other.casting("S-17"), Succeeds());
    const auto verification = other.verify();
    ASSERT_THAT(verification, Succeeds());
    EXPECT_THAT(verification->findings, IsEmpty());
    const Head head = *other.head();
    const auto saved = other.save(sampleOrder(), 1, actor_);
    ASSERT_THAT(saved, FailsWith(ErrorKind::Refused));
    EXPECT_THAT(saved.error().message(), AllOf(HasSubstr(keyFile()), HasSubstr("is missing")));
    EXPECT_EQ(*other.head(), head);
    fs::rename(away, keyFile());
    EXPECT_THAT(other.save(sampleOrder(), 1, actor_), Succeeds());
    EXPECT_THAT(findings(), IsEmpty());
}

TEST_F(ArchiveKeys, OfAnotherArchiveSealNothing) {
    const std::string second = pathOf("second");
    ASSERT_THAT(Archive::create(second, ArchiveKind::Working, actor_, clock_), Succeeds());
    fs::copy_file(second + ".key", keyFile(), fs::copy_options::overwrite_existing);
    Archive archive = reopened();
    const auto saved = archive.save(sampleOrder(), 0, actor_);
    ASSERT_THAT(saved, FailsWith(ErrorKind::Damaged));
    EXPECT_THAT(saved.error().message(), AllOf(HasSubstr(keyFile()), HasSubstr("another key")));
    std::ofstream(keyFile()) << "no key";
    const auto again = archive.save(sampleOrder(), 0, actor_);
    ASSERT_THAT(again, FailsWith(ErrorKind::Damaged));
    EXPECT_THAT(again.error().message(), HasSubstr("no private key"));
    EXPECT_EQ(archive.head()->sequence, 2);
}

TEST_F(ArchiveKeys, ThatLieThereAreNoPlaceForANewArchive) {
    std::ofstream(pathOf("a.key")) << "of another archive";
    EXPECT_THAT(Archive::create(pathOf("a"), ArchiveKind::Working, actor_, clock_),
                FailsWith(ErrorKind::Input));
    EXPECT_EQ(bytesOf(pathOf("a.key")), "of another archive");
    EXPECT_FALSE(fs::exists(pathOf("a")));
}

TEST_F(ArchiveKeys, AreNotLeftBehindByAnArchiveThatCouldNotBeMade) {
    EXPECT_FALSE(Archive::create(pathOf("b"), ArchiveKind::Working, Actor{"\xff"}, clock_).ok());
    EXPECT_FALSE(fs::exists(pathOf("b.key")));
    EXPECT_FALSE(fs::exists(pathOf("b")));
}

TEST_F(ArchiveKeys, SealAnOlderArchiveFromItsMigrationOn) {
    const std::string name = oldArchive();
    const auto archive = Archive::open(name, clock_);
    ASSERT_THAT(archive, Succeeds());
    EXPECT_EQ(fs::status(name + ".key").permissions(),
              fs::perms::owner_read | fs::perms::owner_write);
    RawDatabase raw(name);
    const std::string migrated =
        raw.value("SELECT CAST(sequence AS TEXT) FROM history WHERE subject = 'schema 2'");
    EXPECT_EQ(raw.value("SELECT CAST(min(sequence) AS TEXT) FROM history_seal"), migrated);
    EXPECT_EQ(raw.value("SELECT CAST(sealed_from AS TEXT) FROM archive_key"), migrated);
    auto verification = archive->verify();
    ASSERT_THAT(verification, Succeeds());
    EXPECT_THAT(verification->findings, IsEmpty());
    raw.dropTriggers();
    ASSERT_EQ(raw.run("DELETE FROM history_seal WHERE sequence = " + migrated), SQLITE_OK);
    verification = archive->verify();
    ASSERT_THAT(verification, Succeeds());
    std::vector<std::string> messages;
    for (const Error& error : verification->findings) messages.push_back(error.message());
    EXPECT_THAT(messages,
                Contains(HasSubstr("history row " + migrated + ": has no seal of the archive")));
}

TEST_F(ArchiveKeys, LeftByAMigrationThatWasStoppedAreTaken) {
    const std::string name = oldArchive();
    fs::copy_file(keyFile(), name + ".key");  // as good as one that was made for it
    ASSERT_THAT(Archive::open(name, clock_), Succeeds());
    EXPECT_EQ(bytesOf(name + ".key"), bytesOf(keyFile()));
}

TEST_F(ArchiveKeys, ThatCannotBeReadOrBelongToAFailedMigrationLeaveTheArchiveAsItWas) {
    const std::string name = oldArchive();
    std::ofstream(name + ".key") << "no key";
    EXPECT_THAT(Archive::open(name, clock_), FailsWith(ErrorKind::Damaged));
    EXPECT_EQ(bytesOf(name + ".key"), "no key");
    fs::remove(name + ".key");
    std::vector<Migration> steps = migrations();
    steps.push_back({steps.back().version + 1, "fails", "INSERT INTO nowhere VALUES (1);"});
    {
        auto connection = dialect::openDatabase(name);
        ASSERT_THAT(connection, Succeeds());
        ArchiveKey key(name);
        EXPECT_FALSE(migrate(**connection, steps, key, clock_).ok());
    }
    EXPECT_FALSE(fs::exists(name + ".key"));
    RawDatabase raw(name);
    EXPECT_EQ(raw.value("PRAGMA user_version"), "1");
}

}  // namespace
}  // namespace model
