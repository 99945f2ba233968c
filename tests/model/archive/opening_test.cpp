// SPDX-License-Identifier: Apache-2.0
// What is not an archive is said to be none, and never becomes one.
#include <filesystem>
#include <fstream>
#include <sys/stat.h>

#include "archive_fixture.h"
#include "foundry/old_certificates.h"
#include "raw_database.h"

namespace model {
namespace {

using testing::AllOf;
using testing::HasSubstr;

using Opening = ArchiveTest;

std::string bytesOf(const std::string& path) {
    std::ifstream file(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(file), {}};
}

TEST_F(Opening, RefusesToMakeAnArchiveOverAnything) {
    EXPECT_THAT(Archive::create(path(), ArchiveKind::Working, actor_, clock_),
                FailsWith(ErrorKind::Input));
    EXPECT_THAT(archive_->head(), Succeeds());
    for (const char* existing : {"a", "b-wal", "c-journal", "d.files", "e-shm"})
        std::ofstream(pathOf(existing)) << "text";
    std::filesystem::create_directory(pathOf("f"));
    std::filesystem::create_symlink("nowhere", pathOf("g"));
    for (const char* name : {"a", "b", "c", "d", "e", "f", "g"})
        EXPECT_THAT(Archive::create(pathOf(name), ArchiveKind::Working, actor_, clock_),
                    FailsWith(ErrorKind::Input))
            << name;
    EXPECT_EQ(bytesOf(pathOf("a")), "text");
    EXPECT_FALSE(std::filesystem::exists(pathOf("b")));
}

TEST_F(Opening, LeavesNothingWhereAnArchiveCouldNotBeMade) {
    EXPECT_THAT(Archive::create(pathOf("none/a"), ArchiveKind::Working, actor_, clock_),
                FailsWith(ErrorKind::Input));
    EXPECT_THAT(Archive::create(path() + "/a", ArchiveKind::Working, actor_, clock_),
                FailsWith(ErrorKind::Input));
    EXPECT_THAT(Archive::create(pathOf("a"), ArchiveKind::Working, Actor{""}, clock_),
                FailsWith(ErrorKind::Input));
    EXPECT_THAT(Archive::create(pathOf("a"), ArchiveKind::Working, Actor{"\xff"}, clock_),
                FailsWith(ErrorKind::Input));
    EXPECT_THAT(Archive::create("", ArchiveKind::Working, actor_, clock_),
                FailsWith(ErrorKind::Input));
    EXPECT_FALSE(std::filesystem::exists(pathOf("a")));
    EXPECT_THAT(Archive::create(pathOf("a"), ArchiveKind::Working, actor_, clock_), Succeeds());
}

TEST_F(Opening, ReportsAPlaceWhereNoFileCanBeMadeAsRefused) {
    // Nobody, root included, makes files there.
    EXPECT_THAT(Archive::create("/proc/archive", ArchiveKind::Working, actor_, clock_),
                FailsWith(ErrorKind::Refused));
}

TEST_F(Opening, SaysWhatIsMissingOrNoFile) {
    const auto missing = Archive::open(pathOf("missing"), clock_);
    ASSERT_THAT(missing, FailsWith(ErrorKind::Input));
    EXPECT_THAT(missing.error().message(),
                AllOf(HasSubstr("missing"), HasSubstr("does not exist")));
    EXPECT_FALSE(std::filesystem::exists(pathOf("missing")));
    EXPECT_THAT(Archive::open(path() + "/inside", clock_), FailsWith(ErrorKind::Input));
    EXPECT_THAT(Archive::open(folder_.path().toStdString(), clock_), FailsWith(ErrorKind::Input));
    EXPECT_THAT(Archive::open("", clock_), FailsWith(ErrorKind::Input));
    ASSERT_EQ(::mkfifo(pathOf("pipe").c_str(), 0600), 0);
    EXPECT_THAT(Archive::open(pathOf("pipe"), clock_), FailsWith(ErrorKind::Input));
}

TEST_F(Opening, NeverTakesAnotherFileForAnArchive) {
    {
        RawDatabase raw(pathOf("other.db"));
        raw.run("CREATE TABLE history (a); INSERT INTO history VALUES (1)");
    }
    std::ofstream(pathOf("empty")) << "";
    std::ofstream(pathOf("text")) << std::string(5000, 'x');
    std::ofstream(pathOf("short")) << "SQLite format 3";
    for (const char* name : {"other.db", "empty", "text", "short"}) {
        const std::string before = bytesOf(pathOf(name));
        const auto archive = Archive::open(pathOf(name), clock_);
        ASSERT_THAT(archive, FailsWith(ErrorKind::Input)) << name;
        EXPECT_THAT(archive.error().message(), HasSubstr("is not a Fettlemark archive")) << name;
        EXPECT_EQ(bytesOf(pathOf(name)), before) << name;
        EXPECT_FALSE(std::filesystem::exists(pathOf(name) + "-wal")) << name;
    }
}

TEST_F(Opening, RefusesAnArchiveOfANewerProgram) {
    archive_.reset();
    {
        RawDatabase raw(path());
        raw.run("PRAGMA user_version = 99");
    }
    const auto archive = Archive::open(path(), clock_);
    ASSERT_THAT(archive, FailsWith(ErrorKind::Input));
    EXPECT_THAT(archive.error().message(), AllOf(HasSubstr("newer"), HasSubstr("schema 99")));
}

TEST_F(Opening, DoesNotTakeALostSchemaNumberForANewArchive) {
    fill();
    archive_.reset();
    {
        RawDatabase raw(path());
        raw.run("PRAGMA user_version = 0");
    }
    EXPECT_THAT(Archive::open(path(), clock_), FailsWith(ErrorKind::Damaged));
    RawDatabase raw(path());
    EXPECT_EQ(raw.value("SELECT count(*) FROM history"), "7");
}

TEST_F(Opening, ReportsATruncatedDatabaseAsDamaged) {
    fill();
    archive_.reset();
    std::filesystem::resize_file(path(), std::uintmax_t{3} * 4096);
    const auto archive = Archive::open(path(), clock_);
    if (archive) {
        // Whatever can be read is checked, and the rest found.
        const auto verification = archive->verify();
        ASSERT_THAT(verification, Succeeds());
        EXPECT_FALSE(verification->findings.empty());
    } else {
        EXPECT_EQ(archive.error().kind, ErrorKind::Damaged);
    }
}

TEST_F(Opening, TakesAnyFileName) {
    for (const char* name : {"a b", "q?x=1&y", "50%41", "#hash", "'quote\"", "gr\xc3\xbc\xc3\x9f",
                             "file:x", "semi;QSQLITE_OPEN_READONLY"}) {
        {
            auto archive = Archive::create(pathOf(name), ArchiveKind::Working, actor_, clock_);
            ASSERT_THAT(archive, Succeeds()) << name;
            ASSERT_THAT(archive->save(sampleOrder(), 0, actor_), Succeeds()) << name;
        }
        ASSERT_TRUE(std::filesystem::exists(pathOf(name))) << name;
        const auto archive = Archive::open(pathOf(name), clock_);
        ASSERT_THAT(archive, Succeeds()) << name;
        EXPECT_EQ(archive->path(), pathOf(name));
        EXPECT_THAT(archive->order("O-1"), Succeeds()) << name;
    }
}

TEST_F(Opening, WorksOnWhileTheWorkingFolderChanges) {
    const auto before = std::filesystem::current_path();
    std::filesystem::current_path(folder_.path().toStdString());
    auto archive = Archive::create("relative", ArchiveKind::Working, actor_, clock_);
    std::filesystem::current_path(before);
    ASSERT_THAT(archive, Succeeds());
    ASSERT_THAT(archive->save(sampleOrder(), 0, actor_), Succeeds());
    ASSERT_THAT(archive->save(samplePart(), 0, actor_), Succeeds());
    ASSERT_THAT(archive->add(samplePlan(), actor_), Succeeds());
    ASSERT_THAT(archive->save(sampleCasting(), 0, actor_), Succeeds());
    ASSERT_THAT(foundry::addCertificate(*archive, sampleFacts(), "pdf", actor_), Succeeds());
    EXPECT_TRUE(std::filesystem::is_directory(pathOf("relative.files")));
}

TEST_F(Opening, SetsTheConnectionUpForSafeWork) {
    fill();
    RawDatabase raw(path());
    EXPECT_EQ(raw.value("PRAGMA journal_mode"), "wal");
    EXPECT_EQ(raw.value("PRAGMA application_id"), std::to_string(0x46744d6b));
    EXPECT_EQ(raw.column("SELECT name FROM pragma_table_list WHERE type = 'table' AND "
                         "strict = 0 AND schema = 'main' AND name NOT LIKE 'sqlite%'"),
              std::vector<std::string>());
}

}  // namespace
}  // namespace model
