// SPDX-License-Identifier: Apache-2.0
// A backup is whole and checked, or there is none; and so is an archive that is restored.
#include "archive/backup.h"

#include <QCoreApplication>
#include <QProcess>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <sys/stat.h>

#include "archive/stored_file.h"
#include "archive_fixture.h"
#include "base/digest.h"
#include "foundry/old_certificates.h"
#include "raw_database.h"

namespace model {
namespace {

namespace fs = std::filesystem;
using testing::AllOf;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

std::string bytesOf(const std::string& path) {
    std::ifstream file(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(file), {}};
}

void write(const std::string& path, const std::string& bytes) {
    std::ofstream(path, std::ios::binary | std::ios::trunc) << bytes;
}

class Backup : public ArchiveTest {
protected:
    void SetUp() override {
        fill();
        for (const char* pdf : {"%PDF first", "%PDF second"})
            ASSERT_THAT(foundry::addCertificate(*archive_, sampleFacts(), pdf, actor_), Succeeds());
        head_ = *archive_->head();
    }
    [[nodiscard]] std::string backup() const { return pathOf("backup"); }
    [[nodiscard]] std::string restored() const { return pathOf("restored"); }
    [[nodiscard]] std::string storedPath(const std::string& pdf) const {
        return storedFilePath(path() + ".files", toHex(sha256(pdf)));
    }
    void make() { ASSERT_THAT(backUp(path(), backup(), clock_), Succeeds()); }

    /// Names in the test's folder that begin with `name`.
    [[nodiscard]] std::vector<std::string> namesFrom(const std::string& name) const {
        std::vector<std::string> names;
        for (const auto& entry : fs::directory_iterator(folder_.path().toStdString()))
            if (entry.path().filename().string().starts_with(name))
                names.push_back(entry.path().filename().string());
        std::ranges::sort(names);
        return names;
    }
    /// sha256sum is coreutils', another implementation of FIPS 180-4.
    void expectListFits() const {
        QProcess process;
        process.setWorkingDirectory(QString::fromStdString(backup()));
        process.start("sha256sum", {"--check", "--strict", "manifest"});
        ASSERT_TRUE(process.waitForFinished());
        EXPECT_EQ(process.exitCode(), 0) << process.readAllStandardError().toStdString();
    }
    void expectNotRestored(ErrorKind kind, const std::string& reason) {
        const auto done = restore(backup(), restored(), clock_);
        ASSERT_THAT(done, FailsWith(kind));
        EXPECT_THAT(done.error().message(), HasSubstr(reason));
        EXPECT_THAT(namesFrom("restored"), IsEmpty());
    }

    Head head_;
};

TEST_F(Backup, IsACopyThatCanBeCheckedAndRestored) {
    const auto made = backUp(path(), backup(), clock_);
    ASSERT_THAT(made, Succeeds());
    EXPECT_EQ(made->head, head_);
    EXPECT_EQ(made->headTime, "2026-11-25T09:30:00Z");
    EXPECT_EQ(made->certificates, 2);
    EXPECT_EQ(made->lastNumber, 2);
    EXPECT_TRUE(made->hasKey);
    expectListFits();

    const auto done = restore(backup(), restored(), clock_);
    ASSERT_THAT(done, Succeeds());
    EXPECT_EQ(done->head, head_);
    EXPECT_EQ(done->made, "2026-11-25T09:30:00Z");
    EXPECT_THAT(namesFrom("restored"), ElementsAre("restored", "restored.files", "restored.key"));
    EXPECT_EQ(bytesOf(restored() + ".key"), bytesOf(path() + ".key"));

    auto archive = Archive::open(restored(), clock_);
    ASSERT_THAT(archive, Succeeds());
    EXPECT_THAT(archive->verify(head_)->findings, IsEmpty());
    EXPECT_EQ(described(archive->order("O-1")->value), described(sampleOrder()));
    EXPECT_EQ(described(*archive->zonePlan("P-9", 1)), described(samplePlan()));
    EXPECT_EQ(described(*archive->draft(1)), described(*archive_->draft(1)));
    EXPECT_EQ(*archive->certificateFile(1), "%PDF first");
    EXPECT_EQ(*archive->certificateFile(2), "%PDF second");
    // It goes on from there.
    Order order = sampleOrder();
    order.number = "O-2";
    EXPECT_THAT(archive->save(order, 0, actor_), Succeeds());
    EXPECT_EQ(archive->head()->sequence, head_.sequence + 1);
    EXPECT_THAT(archive->verify(head_)->findings, IsEmpty());
}

TEST_F(Backup, KeepsTheKeyForItsOwner) {
    make();
    ASSERT_THAT(restore(backup(), restored(), clock_), Succeeds());
    for (const std::string& key : {backup() + "/archive.key", restored() + ".key"}) {
        struct stat status {};
        ASSERT_EQ(::stat(key.c_str(), &status), 0);
        EXPECT_EQ(status.st_mode & 0777, 0600U) << key;
    }
}

TEST_F(Backup, IsMadeWithoutTheKeyWhereThatIsGone) {
    fs::remove(path() + ".key");
    const auto made = backUp(path(), backup(), clock_);
    ASSERT_THAT(made, Succeeds());
    EXPECT_FALSE(made->hasKey);
    const auto done = restore(backup(), restored(), clock_);
    ASSERT_THAT(done, Succeeds());
    EXPECT_FALSE(done->hasKey);
    EXPECT_THAT(Archive::openForReading(restored(), clock_), Succeeds());
}

TEST_F(Backup, CanBeReadWhereItLies) {
    make();
    {
        const auto archive = Archive::openForReading(backup() + "/archive", clock_);
        ASSERT_THAT(archive, Succeeds());
        EXPECT_EQ(*archive->certificateFile(2), "%PDF second");
        EXPECT_THAT(archive->verify(head_)->findings, IsEmpty());
    }
    expectListFits();
    EXPECT_FALSE(fs::exists(backup() + "/archive-wal"));
}

TEST_F(Backup, IsOfOneMomentWhileOthersWrite) {
    int written = 0;
    const auto writeMeanwhile = [&](std::int64_t, std::int64_t) {
        Order order = sampleOrder();
        order.number = "M-" + std::to_string(++written);
        EXPECT_THAT(archive_->save(order, 0, actor_), Succeeds());
        return true;
    };
    const auto made = backUp(path(), backup(), clock_, writeMeanwhile);
    ASSERT_THAT(made, Succeeds());
    EXPECT_GT(written, 1);
    EXPECT_EQ(made->head, head_);
    EXPECT_EQ(archive_->head()->sequence, head_.sequence + written);
    expectListFits();
    EXPECT_THAT(findings(), IsEmpty());
}

TEST_F(Backup, BeginsAgainWhereACertificateGoesMeanwhile) {
    int calls = 0;
    // As a disposal leaves it behind: the row and the file are gone. verify() does not like it, so
    // the last attempt is not the one that counts here; that there is a second one is.
    const auto dispose = [&](std::int64_t, std::int64_t) {
        if (++calls > 1) return false;
        RawDatabase raw(path());
        raw.dropTriggers();
        EXPECT_EQ(raw.run("DELETE FROM certificate_table; DELETE FROM certificate"), SQLITE_OK);
        for (const char* pdf : {"%PDF first", "%PDF second"}) fs::remove(storedPath(pdf));
        return true;
    };
    const auto made = backUp(path(), backup(), clock_, dispose);
    // Stopped at the second attempt's first step, and not for the file that is gone.
    ASSERT_FALSE(made.ok());
    EXPECT_THAT(made.error().message(), testing::Not(HasSubstr("is gone")));
    EXPECT_EQ(calls, 2);
    EXPECT_THAT(namesFrom("backup"), IsEmpty());
}

TEST_F(Backup, LeavesNothingWhereItIsStopped) {
    for (const int steps : {1, 2, 3}) {
        int step = 0;
        const auto made = backUp(path(), backup(), clock_,
                                 [&](std::int64_t, std::int64_t) { return ++step < steps; });
        ASSERT_THAT(made, FailsWith(ErrorKind::Refused));
        EXPECT_EQ(step, steps);
        EXPECT_THAT(namesFrom("backup"), IsEmpty());
    }
    make();
    for (const int steps : {1, 4, 5}) {
        int step = 0;
        const auto done = restore(backup(), restored(), clock_,
                                  [&](std::int64_t, std::int64_t) { return ++step < steps; });
        ASSERT_THAT(done, FailsWith(ErrorKind::Refused));
        EXPECT_THAT(namesFrom("restored"), IsEmpty());
    }
}

TEST_F(Backup, ShowsProgressThatRisesToTheTotal) {
    std::int64_t last = 0;
    std::int64_t of = 1;
    const auto rises = [&](std::int64_t done, std::int64_t total) {
        EXPECT_GT(done, last);
        EXPECT_LE(done, total);
        last = done;
        of = total;
        return true;
    };
    ASSERT_THAT(backUp(path(), backup(), clock_, rises), Succeeds());
    EXPECT_EQ(last, of);
    last = 0;
    ASSERT_THAT(restore(backup(), restored(), clock_, rises), Succeeds());
    EXPECT_EQ(last, of);
}

TEST_F(Backup, IsNotMadeOverAnythingNorOfNothing) {
    write(backup(), "something");
    EXPECT_THAT(backUp(path(), backup(), clock_), FailsWith(ErrorKind::Input));
    EXPECT_EQ(bytesOf(backup()), "something");
    fs::remove(backup());
    fs::create_directory(backup());
    EXPECT_THAT(backUp(path(), backup(), clock_), FailsWith(ErrorKind::Input));
    fs::remove(backup());
    fs::create_directory(backup() + ".part");
    write(backup() + ".part/kept", "somebody's");
    const auto atWork = backUp(path(), backup(), clock_);
    ASSERT_THAT(atWork, FailsWith(ErrorKind::Input));
    EXPECT_THAT(atWork.error().message(), HasSubstr("another program is at work there"));
    EXPECT_EQ(bytesOf(backup() + ".part/kept"), "somebody's");
    fs::remove_all(backup() + ".part");

    EXPECT_THAT(backUp(path(), pathOf("none/backup"), clock_), FailsWith(ErrorKind::Input));
    EXPECT_THAT(backUp(pathOf("none"), backup(), clock_), FailsWith(ErrorKind::Input));
    write(pathOf("text"), std::string(5000, 'x'));
    EXPECT_THAT(backUp(pathOf("text"), backup(), clock_), FailsWith(ErrorKind::Input));
    EXPECT_THAT(namesFrom("backup"), IsEmpty());
}

TEST_F(Backup, IsNotMadeOfAnArchiveThatIsDamaged) {
    write(storedPath("%PDF second"), "%PDF other");
    auto made = backUp(path(), backup(), clock_);
    ASSERT_THAT(made, FailsWith(ErrorKind::Damaged));
    EXPECT_THAT(made.error().message(),
                AllOf(HasSubstr(storedPath("%PDF second")), HasSubstr("was altered")));
    fs::remove(storedPath("%PDF second"));
    made = backUp(path(), backup(), clock_);
    ASSERT_THAT(made, FailsWith(ErrorKind::Damaged));
    EXPECT_THAT(made.error().message(), HasSubstr("is gone"));
    ASSERT_THAT(storeFile(path() + ".files", "%PDF second"), Succeeds());
    {
        RawDatabase raw(path());
        ASSERT_EQ(raw.run("UPDATE casting SET heat = 'H 1'"), SQLITE_OK);
    }
    made = backUp(path(), backup(), clock_);
    ASSERT_THAT(made, FailsWith(ErrorKind::Damaged));
    EXPECT_THAT(made.error().message(), HasSubstr("casting S-17: is not what"));
    EXPECT_THAT(namesFrom("backup"), IsEmpty());
}

TEST_F(Backup, LeavesNothingOnAFullDisk) {
    // A process in which no file may grow beyond a size: below the database's, then below that of
    // a certificate's file.
    ASSERT_THAT(
        foundry::addCertificate(*archive_, sampleFacts(), std::string(2'000'000, 'p'), actor_),
        Succeeds());
    for (const char* size : {"50000", "1900000"}) {
        QProcess process;
        process.start(QCoreApplication::applicationFilePath(),
                      {"--back-up-on-small-disk", QString::fromStdString(path()),
                       QString::fromStdString(backup()), size});
        ASSERT_TRUE(process.waitForFinished());
        EXPECT_EQ(process.exitCode(), 0) << process.readAllStandardOutput().toStdString();
        EXPECT_THAT(namesFrom("backup"), IsEmpty()) << size;
    }
    make();
    QProcess process;
    process.start(QCoreApplication::applicationFilePath(),
                  {"--restore-on-small-disk", QString::fromStdString(backup()),
                   QString::fromStdString(restored()), "1900000"});
    ASSERT_TRUE(process.waitForFinished());
    EXPECT_EQ(process.exitCode(), 0) << process.readAllStandardOutput().toStdString();
    EXPECT_THAT(namesFrom("restored"), IsEmpty());
}

TEST_F(Backup, IsNotRestoredWhereAnyOfItsBytesDiffers) {
    make();
    std::vector<std::string> files;
    for (const auto& entry : fs::recursive_directory_iterator(backup()))
        if (entry.is_regular_file()) files.push_back(entry.path().string());
    ASSERT_EQ(files.size(), 5U);  // database, key, two certificates, manifest
    for (const std::string& file : files) {
        const std::string bytes = bytesOf(file);
        for (const std::size_t at : {std::size_t{0}, bytes.size() / 2, bytes.size() - 1}) {
            std::string altered = bytes;
            altered[at] = static_cast<char>(altered[at] ^ 1);
            write(file, altered);
            EXPECT_FALSE(restore(backup(), restored(), clock_).ok()) << file << ' ' << at;
            EXPECT_THAT(namesFrom("restored"), IsEmpty());
        }
        fs::remove(file);
        EXPECT_FALSE(restore(backup(), restored(), clock_).ok()) << file;
        EXPECT_THAT(namesFrom("restored"), IsEmpty());
        write(file, bytes);
    }
    EXPECT_THAT(restore(backup(), restored(), clock_), Succeeds());
}

TEST_F(Backup, IsNotRestoredFromAListThatWasAltered) {
    make();
    const std::string list = backup() + "/manifest";
    const std::string text = bytesOf(list);
    const auto with = [&](const std::string& from, const std::string& to) {
        std::string altered = text;
        const auto at = altered.find(from);
        EXPECT_NE(at, std::string::npos) << from;
        return altered.replace(at, from.size(), to);
    };
    // Left out: a certificate's file, which the database names.
    const std::string digest = toHex(sha256("%PDF second"));
    write(list, with(digest + "  archive.files/" + digest.substr(0, 2) + "/" + digest.substr(2) +
                         ".pdf\n",
                     ""));
    expectNotRestored(ErrorKind::Damaged, "certificate 2");
    // A file outside the backup.
    write(list, text + std::string(64, '0') + "  ../works.fettlemark\n");
    expectNotRestored(ErrorKind::Damaged, "the backup is damaged");
    write(list, text + std::string(64, '0') + "  archive.files/../../works.fettlemark\n");
    expectNotRestored(ErrorKind::Damaged, "the backup is damaged");
    write(list, text + text.substr(text.rfind('\n', text.size() - 2) + 1));
    expectNotRestored(ErrorKind::Damaged, "the backup is damaged");
    // Another head of the history.
    write(list, with("# head " + std::to_string(head_.sequence),
                     "# head " + std::to_string(head_.sequence + 1)));
    expectNotRestored(ErrorKind::Damaged, "rows are missing");
    write(list, with("# schema ", "# schema 99"));
    expectNotRestored(ErrorKind::Input, "newer Fettlemark");
    write(list, with("fettlemark-backup/1", "fettlemark-backup/2"));
    expectNotRestored(ErrorKind::Input, "newer Fettlemark");
    write(list, "any text");
    expectNotRestored(ErrorKind::Input, "is no list of a Fettlemark backup");
    fs::remove(list);
    expectNotRestored(ErrorKind::Input, "is no backup");
    EXPECT_THAT(restore(pathOf("none"), restored(), clock_), FailsWith(ErrorKind::Input));
}

TEST_F(Backup, IsNotRestoredOverAnything) {
    make();
    for (const char* suffix : {"", "-wal", "-shm", "-journal", ".files", ".key"}) {
        write(restored() + suffix, "something");
        EXPECT_THAT(restore(backup(), restored(), clock_), FailsWith(ErrorKind::Input)) << suffix;
        EXPECT_EQ(bytesOf(restored() + suffix), "something");
        EXPECT_THAT(namesFrom("restored"), ElementsAre("restored" + std::string(suffix)));
        fs::remove(restored() + suffix);
    }
    EXPECT_THAT(restore(backup(), pathOf("none/restored"), clock_), FailsWith(ErrorKind::Input));
}

TEST_F(Backup, OfAnOlderSchemaIsRestoredAsItIsAndBroughtUpToDateWhenOpened) {
    const std::string old = pathOf("old");
    {
        std::ifstream dump("data/schema_1.sql");
        std::stringstream script;
        script << dump.rdbuf();
        RawDatabase raw(old);
        ASSERT_EQ(raw.run(script.str()), SQLITE_OK) << raw.message();
    }
    ASSERT_THAT(storeFile(old + ".files", "%PDF of an old archive"), Succeeds());
    const auto made = backUp(old, backup(), clock_);
    ASSERT_THAT(made, Succeeds());
    EXPECT_EQ(made->certificates, 1);
    EXPECT_EQ(RawDatabase(old).value("PRAGMA user_version"), "1");
    ASSERT_THAT(restore(backup(), restored(), clock_), Succeeds());
    EXPECT_EQ(RawDatabase(restored()).value("PRAGMA user_version"), "1");
    EXPECT_EQ(RawDatabase(restored()).column("SELECT hash FROM history"),
              RawDatabase(old).column("SELECT hash FROM history"));
    const auto archive = Archive::open(restored(), clock_);
    ASSERT_THAT(archive, Succeeds());
    EXPECT_THAT(archive->verify(made->head)->findings, IsEmpty());
    EXPECT_EQ(*archive->certificateFile(1), "%PDF of an old archive");
}

}  // namespace
}  // namespace model
