// SPDX-License-Identifier: Apache-2.0
// An archive that is broken, or lies where nothing can be written, is read as far as it goes; and
// nothing that is lost is taken for whole.
#include <QCoreApplication>
#include <QProcess>
#include <filesystem>
#include <fstream>
#include <map>
#include <sys/stat.h>

#include "archive/losses.h"
#include "archive/registers.h"
#include "archive/stored_file.h"
#include "archive_fixture.h"
#include "base/digest.h"
#include "foundry/filled.h"
#include "foundry/old_certificates.h"
#include "raw_database.h"

namespace model {
namespace {

namespace fs = std::filesystem;
using testing::AllOf;
using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;

constexpr std::size_t kPage = 4096;

std::string bytesOf(const std::string& path) {
    std::ifstream file(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(file), {}};
}

void write(const std::string& path, const std::string& bytes) {
    std::ofstream(path, std::ios::binary | std::ios::trunc) << bytes;
}

std::vector<std::string> messages(const std::vector<Error>& errors) {
    std::vector<std::string> all;
    for (const Error& error : errors) {
        EXPECT_EQ(error.kind, ErrorKind::Damaged);
        all.push_back(error.message());
    }
    return all;
}

/// A page of the database, and what it belongs to.
struct Page {
    std::size_t number = 0;  ///< from 1
    std::string object;      ///< table or index
    std::string kind;        ///< leaf, internal, overflow
};

/// An archive whose tables take several pages each.
class Damage : public ArchiveTest {
protected:
    void SetUp() override {
        fill();
        for (int i = 1; i <= 40; ++i) {
            Casting casting = sampleCasting();
            casting.serial = "S-" + std::to_string(100 + i);
            casting.heat = std::string(100, 'h');
            ASSERT_THAT(archive_->save(casting, 0, actor_), Succeeds());
            ExaminationDraft draft = sampleDraft();
            draft.casting = casting.serial;
            ASSERT_THAT(archive_->save(draft, actor_), Succeeds());
            IssueFacts facts = sampleFacts();
            facts.serial = casting.serial;
            facts.customer = std::string(200, 'c');
            ASSERT_THAT(foundry::addCertificate(*archive_, facts, "%PDF " + casting.serial, actor_),
                        Succeeds());
        }
        head_ = *archive_->head();
        archive_.reset();
        whole_ = bytesOf(path());
    }

    /// From SQLite's own account of the file.
    [[nodiscard]] std::vector<Page> pages() const {
        RawDatabase raw(path());
        std::vector<Page> all;
        const auto numbers = raw.column("SELECT pageno FROM dbstat ORDER BY pageno");
        const auto objects = raw.column("SELECT name FROM dbstat ORDER BY pageno");
        const auto kinds = raw.column("SELECT pagetype FROM dbstat ORDER BY pageno");
        for (std::size_t i = 0; i < numbers.size(); ++i)
            all.push_back({std::stoul(numbers[i]), objects[i], kinds[i]});
        return all;
    }
    void erase(const Page& page) {
        std::string bytes = whole_;
        bytes.replace((page.number - 1) * kPage, kPage, kPage, '\0');
        write(path(), bytes);
    }
    [[nodiscard]] std::vector<Page> pagesOf(const std::string& object,
                                            const std::string& kind) const {
        std::vector<Page> chosen;
        for (const Page& page : pages())
            if (page.object == object && page.kind == kind) chosen.push_back(page);
        return chosen;
    }
    [[nodiscard]] std::vector<std::string> losses() const {
        const auto archive = Archive::openForReading(path(), clock_);
        EXPECT_THAT(archive, Succeeds());
        if (!archive) return {};
        const auto lost = whatIsLost(*archive);
        EXPECT_THAT(lost, Succeeds());
        return lost ? messages(*lost) : std::vector<std::string>();
    }

    Head head_;
    std::string whole_;
};

TEST_F(Damage, LosesNothingOfAWholeArchive) {
    EXPECT_THAT(losses(), IsEmpty());
    EXPECT_EQ(bytesOf(path()), whole_);
}

// Pages of every kind of every table and index are erased, as a bad sector would: it is found,
// or the archive cannot be opened at all. Nothing is written, and nothing crashes.
TEST_F(Damage, IsFoundInEveryKindOfPage) {
    int opened = 0;
    std::map<std::string, int> seen;
    for (const Page& page : pages()) {
        if (++seen[page.object + " " + page.kind] > 2) continue;
        erase(page);
        const std::string broken = bytesOf(path());
        const std::string what = std::to_string(page.number) + " " + page.object + " " + page.kind;
        {
            auto archive = Archive::openForReading(path(), clock_);
            if (!archive) {
                // The first page says what the file is; the rest of the schema is in others.
                EXPECT_EQ(page.object, "sqlite_schema") << archive.error().message();
                continue;
            }
            ++opened;
            EXPECT_EQ(archive->kind(), ArchiveKind::Working) << what;
            const auto verification = archive->verify();
            ASSERT_THAT(verification, Succeeds()) << what;
            EXPECT_FALSE(verification->findings.empty()) << what;
            EXPECT_THAT(archive->save(sampleOrder(), 1, actor_), FailsWith(ErrorKind::Refused));
            ASSERT_THAT(whatIsLost(*archive), Succeeds());
        }
        EXPECT_TRUE(bytesOf(path()) == broken) << what;
        EXPECT_FALSE(fs::exists(path() + "-wal")) << what;
    }
    EXPECT_GT(opened, 20);
}

// A byte that changes is found, or it changed nothing that is stored.
TEST_F(Damage, OfSingleBytesIsFoundOrWithoutEffect) {
    const auto contents = [this] {
        RawDatabase raw(path());
        std::vector<std::string> all;
        for (const std::string& table :
             raw.column("SELECT name FROM sqlite_schema WHERE type = 'table' ORDER BY name"))
            for (const std::string& names :
                 raw.column("SELECT group_concat('quote(\"' || name || '\")', ' || '',''|| ') FROM "
                            "pragma_table_info('" +
                            table + "')"))
                for (std::string& row : raw.column("SELECT " + names + " FROM " + table))
                    all.push_back(std::move(row));
        return all;
    };
    const auto before = contents();
    unsigned state = 1;
    int found = 0;
    for (int i = 0; i < 60; ++i) {
        state = state * 1664525U + 1013904223U;
        const std::size_t at = kPage + (state >> 8) % (whole_.size() - kPage);
        std::string bytes = whole_;
        bytes[at] = static_cast<char>(bytes[at] ^ (1 << (state % 8)));
        write(path(), bytes);
        const auto archive = Archive::openForReading(path(), clock_);
        if (!archive) continue;
        const auto verification = archive->verify();
        ASSERT_THAT(verification, Succeeds()) << at;
        if (verification->findings.empty())
            EXPECT_EQ(contents(), before) << at;
        else
            ++found;
    }
    EXPECT_GT(found, 10);
}

TEST_F(Damage, NamesTheCertificatesThatAreLostAndTheirFilesThatAreNot) {
    erase(pagesOf("certificate", "leaf").at(1));
    const auto lost = losses();
    const std::string file = storedFilePath(path() + ".files", toHex(sha256("%PDF S-120")));
    // Which rows stood on the page depends on their sizes; those on the first did not.
    EXPECT_THAT(lost,
                Contains(AllOf(HasSubstr("certificate "),
                               HasSubstr("cannot be read, but its PDF is whole: " + path()))));
    EXPECT_THAT(lost, Not(Contains(HasSubstr("certificate 1:"))));
    EXPECT_THAT(lost, Contains(HasSubstr("table certificate: holds entries that cannot be read")));
    EXPECT_TRUE(fs::exists(file));
    // Every one that is not named can be read, with its file.
    const auto archive = Archive::openForReading(path(), clock_);
    ASSERT_THAT(archive, Succeeds());
    int readable = 0;
    for (int number = 1; number <= 40; ++number) {
        const bool isLost = std::ranges::any_of(lost, [&](const std::string& message) {
            return message.find(": certificate " + std::to_string(number) + ":") !=
                   std::string::npos;
        });
        EXPECT_EQ(archive->certificateFile(number).ok(), !isLost) << number;
        readable += isLost ? 0 : 1;
    }
    EXPECT_GT(readable, 5);
    EXPECT_LT(readable, 40);
    // verify() names them too.
    EXPECT_THAT(messages(archive->verify()->findings), Contains(HasSubstr("but its PDF is whole")));
}

TEST_F(Damage, NamesTheCastingsAndExaminationsThatAreLost) {
    erase(pagesOf("casting", "leaf").at(1));
    EXPECT_THAT(losses(), AllOf(Contains(HasSubstr(": casting S-1")),
                                Not(Contains(HasSubstr("casting S-101:"))),
                                Not(Contains(HasSubstr("order O-1")))));
    erase(pagesOf("examination", "leaf").at(1));
    EXPECT_THAT(losses(), AllOf(Contains(testing::ContainsRegex(
                                    "examination [0-9]+ of casting S-1[0-9]+: cannot be read")),
                                Not(Contains(HasSubstr("examination 1 of")))));
}

TEST_F(Damage, NamesTheEntriesOfRegistersThatAreLost) {
    {
        Archive archive = reopened();
        for (int i = 1; i <= 60; ++i) {
            auto thing = foundry::filled<Equipment>();
            thing.id = "E-" + std::to_string(100 + i);
            thing.remarks = std::string(200, 'r');
            ASSERT_THAT(saveEntry(archive, thing, 0, actor_), Succeeds());
        }
    }
    whole_ = bytesOf(path());
    EXPECT_THAT(losses(), IsEmpty());
    erase(pagesOf("register_entry", "leaf").at(1));
    EXPECT_THAT(losses(),
                AllOf(Contains(testing::ContainsRegex("equipment E-1[0-9]+: cannot be read")),
                      Not(Contains(HasSubstr("equipment E-101:"))),
                      Contains(HasSubstr("table register_entry: holds entries that cannot be"))));
}

TEST_F(Damage, NamesTheRowsOfTheHistoryThatAreLostAndReadsTheRest) {
    erase(pagesOf("history", "leaf").at(2));
    const auto lost = losses();
    EXPECT_THAT(lost, Contains(testing::ContainsRegex("history rows [0-9]+ to [0-9]+: cannot be")));
    EXPECT_THAT(lost, Not(Contains(HasSubstr("casting S-140"))));
    // With its last page nobody can say how many there were.
    erase(pagesOf("history", "leaf").back());
    EXPECT_THAT(losses(), Contains(AllOf(HasSubstr("history rows from "),
                                         HasSubstr("how many there were is not known"))));
}

TEST_F(Damage, NamesEverythingWhereTheLimitsOfAFileAreCut) {
    for (const std::size_t kept :
         {whole_.size() / kPage - 1, whole_.size() / kPage / 2, std::size_t{3}}) {
        write(path(), whole_.substr(0, kept * kPage));
        const auto archive = Archive::openForReading(path(), clock_);
        if (!archive) {
            EXPECT_EQ(archive.error().kind, ErrorKind::Damaged) << archive.error().message();
            continue;
        }
        const auto verification = archive->verify();
        ASSERT_THAT(verification, Succeeds());
        EXPECT_FALSE(verification->findings.empty());
        const auto lost = whatIsLost(*archive);
        ASSERT_THAT(lost, Succeeds());
    }
    // In the middle of a page.
    write(path(), whole_.substr(0, whole_.size() - 100));
    EXPECT_FALSE(Archive::openForReading(path(), clock_)->verify()->findings.empty());
    write(path(), "");
    EXPECT_THAT(Archive::openForReading(path(), clock_), FailsWith(ErrorKind::Input));
}

TEST_F(Damage, OfTheKindIsMadeGoodFromTheHistory) {
    erase(pagesOf("archive", "leaf").at(0));
    EXPECT_THAT(Archive::open(path(), clock_), FailsWith(ErrorKind::Damaged));
    const auto archive = Archive::openForReading(path(), clock_);
    ASSERT_THAT(archive, Succeeds());
    EXPECT_EQ(archive->kind(), ArchiveKind::Working);
}

TEST_F(Damage, OfALogThatIsGoneIsShownByAHeadHeldElsewhere) {
    const std::string copy = pathOf("copy");
    {
        Archive archive = reopened();
        Order order = sampleOrder();
        order.number = "O-2";
        ASSERT_THAT(archive.save(order, 0, actor_), Succeeds());
        head_ = *archive.head();
        // What somebody copies who does not know that the log belongs to the file.
        fs::copy_file(path(), copy);
        ASSERT_TRUE(fs::exists(path() + "-wal"));
    }
    fs::copy(path() + ".files", copy + ".files", fs::copy_options::recursive);
    const auto archive = Archive::openForReading(copy, clock_);
    ASSERT_THAT(archive, Succeeds());
    EXPECT_THAT(archive->order("O-2"), FailsWith(ErrorKind::Input));
    EXPECT_THAT(messages(archive->verify(head_)->findings),
                Contains(HasSubstr("rows are missing")));
}

using ReadOnly = ArchiveTest;

/// The names in a folder.
std::vector<std::string> namesIn(const std::string& folder) {
    std::vector<std::string> names;
    for (const auto& entry : fs::directory_iterator(folder))
        names.push_back(entry.path().filename().string());
    std::ranges::sort(names);
    return names;
}

/// Takes the right to write from a folder and all in it, and gives it back.
class WithoutRightToWrite {
public:
    explicit WithoutRightToWrite(std::string folder) : folder_(std::move(folder)) { set(false); }
    WithoutRightToWrite(const WithoutRightToWrite&) = delete;
    WithoutRightToWrite& operator=(const WithoutRightToWrite&) = delete;
    ~WithoutRightToWrite() { set(true); }

private:
    void set(bool canWrite) {
        if (canWrite) ::chmod(folder_.c_str(), 0755);
        for (const auto& entry : fs::directory_iterator(folder_))
            if (entry.is_regular_file()) ::chmod(entry.path().c_str(), canWrite ? 0644 : 0444);
        if (!canWrite) ::chmod(folder_.c_str(), 0555);
    }
    const std::string folder_;
};

TEST_F(ReadOnly, IsReadWithoutMakingAnythingBesideIt) {
    fill();
    ASSERT_THAT(foundry::addCertificate(*archive_, sampleFacts(), "%PDF", actor_), Succeeds());
    const Head head = *archive_->head();
    archive_.reset();
    const auto before = namesIn(folder_.path().toStdString());
    const WithoutRightToWrite guard(folder_.path().toStdString());
    QProcess process;
    process.start(QCoreApplication::applicationFilePath(),
                  {"--read-only", QString::fromStdString(path())});
    ASSERT_TRUE(process.waitForFinished());
    const std::string output = process.readAllStandardOutput().toStdString();
    EXPECT_EQ(process.exitCode(), 0) << output;
    EXPECT_THAT(output, AllOf(testing::StartsWith(std::to_string(head.sequence) + " "),
                              HasSubstr("was opened for reading only")));
    EXPECT_EQ(namesIn(folder_.path().toStdString()), before);
}

TEST_F(ReadOnly, IsReadWithWhatAnotherProgramIsWriting) {
    fill();
    ASSERT_THAT(foundry::addCertificate(*archive_, sampleFacts(), "%PDF", actor_), Succeeds());
    const Head head = *archive_->head();
    ASSERT_TRUE(fs::exists(path() + "-wal"));
    const WithoutRightToWrite guard(folder_.path().toStdString());
    QProcess process;
    process.start(QCoreApplication::applicationFilePath(),
                  {"--read-only", QString::fromStdString(path())});
    ASSERT_TRUE(process.waitForFinished());
    const std::string output = process.readAllStandardOutput().toStdString();
    EXPECT_EQ(process.exitCode(), 0) << output;
    EXPECT_THAT(output, testing::StartsWith(std::to_string(head.sequence) + " "));
}

TEST_F(ReadOnly, SaysThatALogCannotBeRead) {
    fill();
    fs::create_directory(pathOf("copy"));
    fs::copy_file(path(), pathOf("copy/a"));
    fs::copy_file(path() + "-wal", pathOf("copy/a-wal"));
    const WithoutRightToWrite guard(pathOf("copy"));
    ::chmod(folder_.path().toStdString().c_str(), 0755);
    QProcess process;
    process.start(QCoreApplication::applicationFilePath(),
                  {"--read-only", QString::fromStdString(pathOf("copy/a"))});
    ASSERT_TRUE(process.waitForFinished());
    EXPECT_EQ(process.exitCode(), 6);
    EXPECT_THAT(process.readAllStandardOutput().toStdString(),
                HasSubstr("its latest entries are still in " + pathOf("copy/a-wal")));
}

TEST_F(ReadOnly, IsReadWhereItsKeyIsGoneAndNotWritten) {
    fill();
    archive_.reset();
    fs::remove(path() + ".key");
    const auto archive = Archive::openForReading(path(), clock_);
    ASSERT_THAT(archive, Succeeds());
    EXPECT_THAT(archive->verify()->findings, IsEmpty());
    EXPECT_EQ(described(archive->order("O-1")->value), described(sampleOrder()));
    auto writable = Archive::open(path(), clock_);
    if (writable)
        EXPECT_THAT(writable->save(sampleOrder(), 1, actor_), FailsWith(ErrorKind::Refused));
    else
        EXPECT_EQ(writable.error().kind, ErrorKind::Refused);
    EXPECT_FALSE(fs::exists(path() + ".key"));
}

TEST_F(ReadOnly, OfAnOlderSchemaIsBroughtUpToDateFirst) {
    const std::string old = pathOf("old");
    {
        RawDatabase raw(old);
        ASSERT_EQ(raw.run(bytesOf("data/schema_1.sql")), SQLITE_OK) << raw.message();
    }
    ASSERT_THAT(storeFile(old + ".files", "%PDF of an old archive"), Succeeds());
    auto archive = Archive::openForReading(old, clock_);
    ASSERT_THAT(archive, Succeeds());
    EXPECT_THAT(archive->verify()->findings, IsEmpty());
    EXPECT_THAT(archive->save(sampleOrder(), 1, actor_), FailsWith(ErrorKind::Refused));
}

TEST_F(ReadOnly, IsNoOtherFileAndNoNewerOne) {
    write(pathOf("text"), std::string(5000, 'x'));
    EXPECT_THAT(Archive::openForReading(pathOf("text"), clock_), FailsWith(ErrorKind::Input));
    EXPECT_THAT(Archive::openForReading(pathOf("none"), clock_), FailsWith(ErrorKind::Input));
    archive_.reset();
    RawDatabase(path()).run("PRAGMA user_version = 99");
    EXPECT_THAT(Archive::openForReading(path(), clock_), FailsWith(ErrorKind::Input));
}

}  // namespace
}  // namespace model
