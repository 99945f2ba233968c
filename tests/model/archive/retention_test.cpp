// SPDX-License-Identifier: Apache-2.0
// Certificates are kept until their day is over, and go without hiding that they were there.
#include "archive/retention.h"

#include <filesystem>
#include <fstream>

#include "archive/backup.h"
#include "archive/losses.h"
#include "archive/stored_file.h"
#include "lifecycle_fixture.h"

namespace model {
namespace {

using testing::AllOf;
using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;

UtcTime day(int year, unsigned month, unsigned dayOfMonth) {
    return std::chrono::sys_days(std::chrono::year(year) / month / dayOfMonth) +
           std::chrono::hours(12);
}

class RetentionTest : public LifecycleTest {
protected:
    /// A released certificate of type 3.2, with all three files.
    void SetUp() override {
        number_ = presentedCasting("3.2");
        presented_ = presented(*archive_, number_)->fileDigest;
        ASSERT_THAT(endorse(*archive_, number_, endorsedPdf(number_), thirdParty_), Succeeds());
        endorsed_ = presented(*archive_, number_)->fileDigest;
        ASSERT_THAT(release(number_, qaManager_), Succeeds());
        released_ = archive_->certificate(number_)->fileDigest;
        record_ = presented(*archive_, number_)->records.at(0);
    }
    void keepUntilYearsEnd() {
        ASSERT_THAT(keepUntil(*archive_, "O-1", "2026-12-31", "", qaManager_), Succeeds());
    }
    void disposeAfterwards() {
        keepUntilYearsEnd();
        clock_.set(day(2027, 1, 1));
        ASSERT_THAT(dispose(*archive_, number_, "day is over", qaManager_), Succeeds());
    }
    void expectStays(const std::string& reason) {
        const auto done = dispose(*archive_, number_, "no room", qaManager_);
        ASSERT_THAT(done, FailsWith(ErrorKind::Refused));
        EXPECT_THAT(done.error().message(), HasSubstr(reason));
        EXPECT_THAT(archive_->certificateFile(number_), Succeeds());
        EXPECT_THAT(findings(), IsEmpty());
    }
    [[nodiscard]] bool isStored(const std::string& digest) const {
        return std::filesystem::exists(storedFilePath(path() + ".files", digest));
    }

    std::int64_t number_ = 0;
    std::int64_t record_ = 0;
    std::string presented_, endorsed_, released_;
};

TEST_F(RetentionTest, IsForEverUntilADayIsStated) {
    EXPECT_EQ(*retention(*archive_, "O-1"), (Retention{"O-1", 0, {}, {}}));
    clock_.set(day(2027, 6, 1));
    expectStays("stays for ever");
    EXPECT_THAT(retention(*archive_, "O-9"), FailsWith(ErrorKind::Input));
}

TEST_F(RetentionTest, EndsAfterTheLastDayAndNotBefore) {
    keepUntilYearsEnd();
    EXPECT_EQ(*retention(*archive_, "O-1"), (Retention{"O-1", 1, "2026-12-31", {}}));
    expectStays("is to be kept until 2026-12-31");
    clock_.set(day(2026, 12, 31));
    expectStays("is to be kept until 2026-12-31");
    clock_.set(day(2027, 1, 1));
    EXPECT_THAT(dispose(*archive_, number_, "day is over", qaManager_), Succeeds());
}

TEST_F(RetentionTest, IsShortenedOnlyWithAReason) {
    keepUntilYearsEnd();
    EXPECT_THAT(keepUntil(*archive_, "O-1", "2027-12-31", "", qaManager_), Succeeds());
    const auto shortened = keepUntil(*archive_, "O-1", "2026-12-30", " ", qaManager_);
    ASSERT_THAT(shortened, FailsWith(ErrorKind::Input));
    EXPECT_THAT(shortened.error().message(), HasSubstr("an earlier day needs a reason"));
    EXPECT_EQ(*retention(*archive_, "O-1")->keepUntil, "2027-12-31");
    EXPECT_THAT(keepUntil(*archive_, "O-1", "2026-12-30", "typing error", qaManager_), Succeeds());
    EXPECT_EQ(*retention(*archive_, "O-1"), (Retention{"O-1", 3, "2026-12-30", {}}));
    EXPECT_THAT(archive_->history(archive_->head()->sequence, 1)->at(0).bytes,
                AllOf(HasSubstr("typing error"), HasSubstr("\"signer\":\"P-4\"")));
    for (const char* date : {"", "2026-02-30", "31.12.2026", "2026-12-31T00:00:00Z", "2026-1-1"})
        EXPECT_THAT(keepUntil(*archive_, "O-1", date, "", qaManager_), FailsWith(ErrorKind::Input))
            << date;
    EXPECT_THAT(keepUntil(*archive_, "O-9", "2030-01-01", "", qaManager_),
                FailsWith(ErrorKind::Input));
    EXPECT_THAT(findings(), IsEmpty());
}

TEST_F(RetentionTest, YieldsToALegalHold) {
    keepUntilYearsEnd();
    clock_.set(day(2027, 1, 1));
    EXPECT_THAT(hold(*archive_, "O-1", " ", qaManager_), FailsWith(ErrorKind::Input));
    EXPECT_THAT(endHold(*archive_, "O-1", "none", qaManager_), FailsWith(ErrorKind::Conflict));
    ASSERT_THAT(hold(*archive_, "O-1", "claim 12", administrator()), Succeeds());
    EXPECT_EQ(*retention(*archive_, "O-1"), (Retention{"O-1", 2, "2026-12-31", "claim 12"}));
    EXPECT_THAT(hold(*archive_, "O-1", "again", qaManager_), FailsWith(ErrorKind::Conflict));
    expectStays("is on hold: claim 12");
    EXPECT_THAT(endHold(*archive_, "O-1", "", qaManager_), FailsWith(ErrorKind::Input));
    ASSERT_THAT(endHold(*archive_, "O-1", "settled", qaManager_), Succeeds());
    EXPECT_EQ(retention(*archive_, "O-1")->hold, std::nullopt);
    EXPECT_THAT(dispose(*archive_, number_, "day is over", administrator()), Succeeds());
}

TEST_F(RetentionTest, IsStatedByQaManagersAndAdministratorsAlone) {
    keepUntilYearsEnd();
    clock_.set(day(2027, 1, 1));
    for (const char* id : {foundry::kInspector, foundry::kThirdParty, foundry::kAuditor}) {
        const SignedIn other = signedIn(id);
        EXPECT_THAT(keepUntil(*archive_, "O-1", "2040-01-01", "", other),
                    FailsWith(ErrorKind::Refused));
        EXPECT_THAT(hold(*archive_, "O-1", "x", other), FailsWith(ErrorKind::Refused));
        EXPECT_THAT(endHold(*archive_, "O-1", "x", other), FailsWith(ErrorKind::Refused));
        EXPECT_THAT(dispose(*archive_, number_, "x", other), FailsWith(ErrorKind::Refused));
    }
    EXPECT_THAT(dispose(*archive_, number_, " ", qaManager_), FailsWith(ErrorKind::Input));
    EXPECT_THAT(dispose(*archive_, number_ + 7, "x", qaManager_), FailsWith(ErrorKind::Input));
    EXPECT_THAT(archive_->certificateFile(number_), Succeeds());
}

TEST_F(RetentionTest, SaysBeforehandWhatWouldGoAndWhatStaysYet) {
    const auto listed = [&] {
        const auto all = disposables(*archive_, "O-1");
        EXPECT_THAT(all, Succeeds());
        return all.ok() && all->size() == 1 ? all->front() : Disposable();
    };
    Disposable one = listed();
    EXPECT_EQ(one.number, number_);
    EXPECT_EQ(one.type, "3.2");
    EXPECT_THAT(one.files, ElementsAre(released_, endorsed_, presented_));
    EXPECT_THAT(one.records, ElementsAre(record_));
    ASSERT_TRUE(one.stays);
    EXPECT_THAT(one.stays->message(), HasSubstr("stays for ever"));
    keepUntilYearsEnd();
    clock_.set(day(2026, 12, 31));
    EXPECT_THAT(listed().stays->message(), HasSubstr("is to be kept until 2026-12-31"));
    clock_.set(day(2027, 1, 1));
    one = listed();
    EXPECT_FALSE(one.stays);
    ASSERT_THAT(dispose(*archive_, number_, "day is over", qaManager_), Succeeds());
    EXPECT_THAT(*disposables(*archive_, "O-1"), IsEmpty());
    for (const std::string& digest : one.files) EXPECT_FALSE(isStored(digest));
    EXPECT_THAT(disposables(*archive_, "O-9"), FailsWith(ErrorKind::Input));
}

TEST_F(RetentionTest, HoldsForWhatWasReturnedAsForWhatWasReleased) {
    ASSERT_THAT(reopen(*archive_, "S-17", "customer's complaint", qaManager_), Succeeds());
    sign(1);
    const auto prepared = prepare(*archive_, "S-17", inspector_);
    ASSERT_THAT(prepared, Succeeds());
    const std::int64_t again = prepared->number();
    ASSERT_THAT(model::present(*archive_, *prepared, "%PDF-1.7 once more\n", inspector_),
                Succeeds());
    keepUntilYearsEnd();
    clock_.set(day(2027, 1, 1));
    const auto waiting = dispose(*archive_, again, "day is over", qaManager_);
    ASSERT_THAT(waiting, FailsWith(ErrorKind::Refused));
    EXPECT_THAT(waiting.error().message(), HasSubstr("it waits for release"));
    EXPECT_THAT(*disposables(*archive_, "O-1"), testing::SizeIs(1));

    const Presented shown = *presented(*archive_, again);
    ASSERT_THAT(returnCasting(*archive_, again, "wrong heat", qaManager_), Succeeds());
    const auto listed = disposables(*archive_, "O-1");
    ASSERT_THAT(listed, Succeeds());
    ASSERT_THAT(*listed, testing::SizeIs(2));
    const Disposable& one = listed->front();
    EXPECT_EQ(one.number, again);
    EXPECT_TRUE(one.returned);
    EXPECT_EQ(one.at.substr(0, 10), "2027-01-01");
    EXPECT_THAT(one.files, ElementsAre(shown.fileDigest));
    EXPECT_EQ(one.records, shown.records);
    EXPECT_FALSE(one.stays);
    ASSERT_THAT(hold(*archive_, "O-1", "claim 12", qaManager_), Succeeds());
    EXPECT_THAT(dispose(*archive_, again, "day is over", qaManager_),
                FailsWith(ErrorKind::Refused));
    ASSERT_THAT(endHold(*archive_, "O-1", "settled", qaManager_), Succeeds());

    ASSERT_THAT(dispose(*archive_, again, "day is over", qaManager_), Succeeds());
    EXPECT_FALSE(isStored(shown.fileDigest));
    EXPECT_TRUE(isStored(released_));
    EXPECT_THAT(presented(*archive_, again), FailsWith(ErrorKind::Input));
    EXPECT_THAT(findings(), IsEmpty());
    RawDatabase raw(path());
    for (const char* table : {"presentation", "presentation_return"})
        EXPECT_EQ(raw.value(std::string("SELECT count(*) FROM ") + table +
                            " WHERE number = " + std::to_string(again)),
                  "0")
            << table;
    EXPECT_THAT(archive_->history(archive_->head()->sequence, 1)->at(0).bytes,
                AllOf(HasSubstr("\"returned_at\":\"2027-01-01"), HasSubstr(shown.fileDigest)));
    // The one that was released goes by itself.
    EXPECT_THAT(dispose(*archive_, number_, "day is over", qaManager_), Succeeds());
    EXPECT_THAT(findings(), IsEmpty());
    alter("DELETE FROM disposal WHERE number = " + std::to_string(again));
    EXPECT_THAT(findings(), Not(IsEmpty()));
}

TEST_F(RetentionTest, OfWhatWasReturnedIsKeptByTheDatabaseItselfToo) {
    ASSERT_THAT(reopen(*archive_, "S-17", "customer's complaint", qaManager_), Succeeds());
    sign(1);
    const std::int64_t again = LifecycleTest::present();
    ASSERT_THAT(returnCasting(*archive_, again, "wrong heat", qaManager_), Succeeds());
    RawDatabase raw(path());
    const std::string number = std::to_string(again);
    EXPECT_NE(raw.run("DELETE FROM presentation_return WHERE number = " + number), SQLITE_OK);
    EXPECT_NE(raw.run("INSERT INTO disposal (number, history_sequence, person, reason) VALUES (" +
                      number + ", 1, 'P-4', 'no room')"),
              SQLITE_OK);
    EXPECT_THAT(raw.message(), HasSubstr("is to be kept"));
}

TEST_F(RetentionTest, DisposalTakesEverythingOutAndTheHistoryKeepsItsDigests) {
    const std::string content = *signedRecordContent(*archive_, record_);
    disposeAfterwards();
    const auto certificate = archive_->certificate(number_);
    ASSERT_THAT(certificate, FailsWith(ErrorKind::Input));
    EXPECT_THAT(certificate.error().message(),
                HasSubstr("Quentin Marsh disposed of it at 2027-01-01T12:00:00Z: day is over"));
    EXPECT_THAT(archive_->certificateFile(number_), FailsWith(ErrorKind::Input));
    EXPECT_THAT(numbersIn(*archive_), IsEmpty());
    EXPECT_THAT(presented(*archive_, number_), FailsWith(ErrorKind::Input));
    for (const std::string& digest : {presented_, endorsed_, released_})
        EXPECT_FALSE(isStored(digest));
    const auto row = archive_->history(archive_->head()->sequence, 1);
    ASSERT_EQ(row->size(), 1u);
    EXPECT_EQ(row->at(0).action, "certificate disposed");
    EXPECT_EQ(row->at(0).person, "Quentin Marsh");
    for (const std::string& said :
         {presented_, endorsed_, released_, toHex(sha256(content)), std::string("2026-12-31"),
          std::string("\"certificate_type\":\"3.2\""), std::string("day is over")})
        EXPECT_THAT(row->at(0).bytes, HasSubstr(said));
    // Explained, and nothing is taken for lost.
    EXPECT_THAT(findings(), IsEmpty());
    EXPECT_THAT(*whatIsLost(*archive_), IsEmpty());
    // The examination stays signed, and its record says that its content is gone.
    EXPECT_EQ(examinationStates(*archive_, "S-17")->at(0).standing()->id, record_);
    const auto gone = signedRecordContent(*archive_, record_);
    ASSERT_THAT(gone, FailsWith(ErrorKind::Input));
    EXPECT_THAT(gone.error().message(), HasSubstr("which was disposed of"));
    // Its number is not given out again.
    EXPECT_GT(*archive_->reserveCertificateNumber(actor_), number_);
    // A second time there is nothing left to do.
    const Head head = *archive_->head();
    EXPECT_THAT(dispose(*archive_, number_, "again", qaManager_), Succeeds());
    EXPECT_EQ(*archive_->head(), head);
}

TEST_F(RetentionTest, DisposalLeavesNoBytesOfWhatWentInTheDatabase) {
    const std::string sheet = *presentedSheet(*archive_, number_);
    ASSERT_GT(sheet.size(), 100u);
    const auto bytes = [this] {
        archive_.reset();
        RawDatabase(path()).run("PRAGMA wal_checkpoint(TRUNCATE)");
        std::ifstream file(path(), std::ios::binary);
        std::string all{std::istreambuf_iterator<char>(file), {}};
        archive_ = reopened();
        return all;
    };
    EXPECT_THAT(bytes(), HasSubstr("fettlemark-sheet/1"));
    disposeAfterwards();
    EXPECT_THAT(bytes(), Not(HasSubstr("fettlemark-sheet/1")));
}

TEST_F(RetentionTest, DisposalOfWhatIsSupersededComesAfterItsSuccessor) {
    ASSERT_THAT(reopen(*archive_, "S-17", "wrong heat", qaManager_), Succeeds());
    sign(1);
    const std::int64_t second = present();
    ASSERT_THAT(endorse(*archive_, second, endorsedPdf(second), thirdParty_), Succeeds());
    ASSERT_THAT(release(second, qaManager_), Succeeds());
    keepUntilYearsEnd();
    clock_.set(day(2027, 1, 1));
    expectStays("certificate " + std::to_string(second) + " supersedes it");
    EXPECT_THAT(dispose(*archive_, second, "day is over", qaManager_), Succeeds());
    EXPECT_THAT(findings(), IsEmpty());
    EXPECT_THAT(dispose(*archive_, number_, "day is over", qaManager_), Succeeds());
    EXPECT_THAT(findings(), IsEmpty());
}

TEST_F(RetentionTest, DisposalLeavesRecordsThatAnotherPresentationWasMadeFrom) {
    ASSERT_THAT(withdraw(*archive_, number_, "wrong address", qaManager_), Succeeds());
    const std::int64_t second = present();
    disposeAfterwards();
    EXPECT_THAT(signedRecordContent(*archive_, record_), Succeeds());
    EXPECT_THAT(presentedFile(*archive_, second), Succeeds());
    EXPECT_THAT(findings(), IsEmpty());
}

TEST_F(RetentionTest, DisposalIsWhollyUndoneWhereItCannotBeWritten) {
    keepUntilYearsEnd();
    clock_.set(day(2027, 1, 1));
    const Head head = *archive_->head();
    {
        RawDatabase raw(path());
        ASSERT_EQ(raw.run("CREATE TRIGGER refuse BEFORE DELETE ON presentation BEGIN "
                          "SELECT RAISE(ABORT, 'not today'); END"),
                  SQLITE_OK);
    }
    EXPECT_THAT(dispose(*archive_, number_, "day is over", qaManager_),
                FailsWith(ErrorKind::Refused));
    RawDatabase(path()).run("DROP TRIGGER refuse");
    EXPECT_EQ(*archive_->head(), head);
    EXPECT_THAT(archive_->certificateFile(number_), Succeeds());
    EXPECT_THAT(findings(), IsEmpty());
}

TEST_F(RetentionTest, ADisposedFileThatCouldNotBeDeletedGoesTheNextTime) {
    keepUntilYearsEnd();
    clock_.set(day(2027, 1, 1));
    // In the file's place stands what cannot be deleted as a file.
    const std::string file = storedFilePath(path() + ".files", presented_);
    const std::string aside = pathOf("aside");
    std::filesystem::rename(file, aside);
    std::filesystem::create_directories(file + "/inside");
    const auto done = dispose(*archive_, number_, "day is over", qaManager_);
    ASSERT_THAT(done, FailsWith(ErrorKind::Refused));
    EXPECT_THAT(done.error().message(), AllOf(HasSubstr(file), HasSubstr("could not be deleted")));
    std::filesystem::remove_all(file);
    std::filesystem::rename(aside, file);
    EXPECT_THAT(findings(), Contains(AllOf(HasSubstr("certificate 1: was disposed of"),
                                           HasSubstr(file + " is still there"))));
    EXPECT_THAT(dispose(*archive_, number_, "day is over", qaManager_), Succeeds());
    EXPECT_FALSE(std::filesystem::exists(file));
    EXPECT_THAT(findings(), IsEmpty());
}

TEST_F(RetentionTest, ADisposedFileThatCameBackIsFound) {
    disposeAfterwards();
    ASSERT_THAT(findings(), IsEmpty());
    for (const std::string& digest : {presented_, endorsed_, released_}) {
        const std::string file = storedFilePath(path() + ".files", digest);
        std::filesystem::create_directories(std::filesystem::path(file).parent_path());
        std::ofstream(file) << "whatever it holds";
        EXPECT_THAT(findings(), ElementsAre(AllOf(HasSubstr("certificate 1: was disposed of"),
                                                  HasSubstr(file + " is still there"))));
        std::filesystem::remove(file);
    }
}

TEST_F(RetentionTest, OnlyADueDisposalLetsAnythingBeDeleted) {
    keepUntilYearsEnd();
    ASSERT_THAT(hold(*archive_, "O-1", "claim 12", qaManager_), Succeeds());
    RawDatabase raw(path());
    const std::string number = std::to_string(number_);
    const std::string all = "DELETE FROM certificate WHERE number = " + number;
    EXPECT_EQ(raw.run(all), SQLITE_CONSTRAINT_TRIGGER);
    for (const std::string sql :
         {"DELETE FROM certificate_table", "DELETE FROM certificate_release",
          "DELETE FROM endorsement", "DELETE FROM presentation", "DELETE FROM retention",
          "UPDATE record SET content = x''", "UPDATE retention SET hold = NULL",
          "UPDATE retention SET version = version + 1, order_number = 'O-2'"})
        EXPECT_EQ(raw.run(sql), SQLITE_CONSTRAINT_TRIGGER) << sql;
    // Neither a row of another action nor one before its day is over will do.
    EXPECT_EQ(raw.run("INSERT INTO disposal SELECT " + number +
                      ", max(sequence), 'P-4', 'no room' FROM history"),
              SQLITE_CONSTRAINT_TRIGGER);
    const std::string early =
        "INSERT INTO history SELECT max(sequence) + 1, '2027-06-01T00:00:00Z', 'Quentin Marsh', "
        "'certificate disposed', '" +
        number + "', x'7b7d', zeroblob(32) FROM history;";
    ASSERT_EQ(raw.run("BEGIN;" + early), SQLITE_OK) << raw.message();
    EXPECT_EQ(raw.run("INSERT INTO disposal SELECT " + number +
                      ", max(sequence), 'P-4', 'no room' FROM history"),
              SQLITE_CONSTRAINT_TRIGGER);  // on hold
    raw.run("ROLLBACK");
    EXPECT_THAT(findings(), IsEmpty());
}

TEST_F(RetentionTest, WhatIsAlteredPastTheHistoryIsFound) {
    ASSERT_THAT(hold(*archive_, "O-1", "claim 12", qaManager_), Succeeds());
    ASSERT_THAT(endHold(*archive_, "O-1", "settled", qaManager_), Succeeds());
    disposeAfterwards();
    archive_.reset();
    const std::string kept = pathOf("kept");
    std::filesystem::copy_file(path(), kept);
    const struct {
        const char* sql;
        const char* finding;
    } kCases[] = {
        {"UPDATE retention SET keep_until = '2025-12-31'", "retention of order O-1: is not what"},
        {"UPDATE retention SET keep_until = NULL", "retention of order O-1: is not what"},
        {"UPDATE retention SET hold = 'other'", "retention of order O-1: is not what"},
        {"UPDATE retention SET version = 9", "retention of order O-1: is not what"},
        {"UPDATE retention SET order_number = 'O-7'", "retention of order O-1: is gone"},
        {"DELETE FROM retention", "retention of order O-1: is gone"},
        {"UPDATE disposal SET reason = 'other'", "disposal of certificate 1: is not what"},
        {"UPDATE disposal SET person = 'P-1'", "disposal of certificate 1: is not what"},
        {"UPDATE disposal SET history_sequence = 1", "disposal of certificate 1: is not what"},
        {"UPDATE disposal SET number = 2", "disposal of certificate 1: is gone"},
        {"DELETE FROM disposed_record; DELETE FROM disposal", "disposal of certificate 1: is gone"},
        {"DELETE FROM disposed_record", "contents of records that were disposed of"},
        {"UPDATE disposed_record SET number = 2", "contents of records that were disposed of"},
        {"UPDATE disposed_record SET record_id = 1", "contents of records that were disposed of"},
        {"UPDATE record SET content = x'7b7d'", "has a content still"},
        {"UPDATE record SET word = 'not acceptable'", "is not what the history says"},
    };
    for (const auto& one : kCases) {
        std::filesystem::copy_file(kept, path(), std::filesystem::copy_options::overwrite_existing);
        alter(std::string("PRAGMA foreign_keys = OFF;") + one.sql);
        EXPECT_THAT(findings(), Contains(HasSubstr(one.finding))) << one.sql;
    }
}

TEST_F(RetentionTest, AGapThatNobodyExplainedIsFound) {
    archive_.reset();
    alter(
        "DELETE FROM certificate_release; DELETE FROM certificate_table; "
        "DELETE FROM certificate");
    EXPECT_THAT(findings(), Contains(HasSubstr("certificate 1: is gone")));
}

TEST_F(RetentionTest, ABackupIsMadeAfterADisposalAndHasNoneOfTheFiles) {
    disposeAfterwards();
    const auto made = backUp(path(), pathOf("backup"), clock_);
    ASSERT_THAT(made, Succeeds());
    EXPECT_EQ(made->certificates, 0);
    EXPECT_THAT(restore(pathOf("backup"), pathOf("restored"), clock_), Succeeds());
    EXPECT_THAT(std::filesystem::is_empty(pathOf("restored.files")), true);
}

}  // namespace
}  // namespace model
