// SPDX-License-Identifier: Apache-2.0
// Two programs on one archive: one waits or says so, and no write is lost.
#include <QCoreApplication>
#include <QProcess>
#include <chrono>
#include <set>
#include <thread>

#include "archive_fixture.h"
#include "raw_database.h"

namespace model {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;
using testing::SizeIs;

class Sharing : public ArchiveTest {
protected:
    void start(QProcess& process, const QStringList& arguments) const {
        process.setProcessChannelMode(QProcess::SeparateChannels);
        process.start(QCoreApplication::applicationFilePath(), arguments);
        ASSERT_TRUE(process.waitForStarted());
    }
    [[nodiscard]] QString qPath() const { return QString::fromStdString(path()); }
    [[nodiscard]] std::set<std::string> storedOrders() const {
        std::set<std::string> numbers;
        const auto orders = reopened().orders();
        EXPECT_THAT(orders, Succeeds());
        if (orders)
            for (const Order& order : *orders) numbers.insert(order.number);
        return numbers;
    }
};

TEST_F(Sharing, LosesNoWriteOfThreeProgramsAtOnce) {
    QProcess second;
    QProcess third;
    start(second, {"--write-orders", qPath(), "second-", "60"});
    start(third, {"--write-orders", qPath(), "third-", "60"});
    for (int i = 1; i <= 60; ++i) {
        Order order = sampleOrder();
        order.number = "first-" + std::to_string(i);
        ASSERT_THAT(archive_->save(order, 0, actor_), Succeeds());
    }
    for (QProcess* process : {&second, &third}) {
        ASSERT_TRUE(process->waitForFinished(60'000));
        EXPECT_EQ(process->exitCode(), 0) << process->readAllStandardError().toStdString();
    }
    EXPECT_THAT(storedOrders(), SizeIs(180));
    EXPECT_EQ(archive_->head()->sequence, 182);
    EXPECT_THAT(findings(), IsEmpty());
}

TEST_F(Sharing, LosesNoWriteOfTwoThreadsEachWithItsOwnConnection) {
    const auto write = [this](const std::string& prefix) {
        auto archive = Archive::open(path(), clock_);
        ASSERT_THAT(archive, Succeeds());
        for (int i = 1; i <= 40; ++i) {
            Part part = samplePart();
            part.number = prefix + std::to_string(i);
            ASSERT_THAT(archive->save(part, 0, actor_), Succeeds());
        }
    };
    std::thread one(write, "one-");
    std::thread two(write, "two-");
    one.join();
    two.join();
    EXPECT_THAT(*reopened().parts(), SizeIs(80));
    EXPECT_THAT(findings(), IsEmpty());
}

// A killed program leaves every write that it reported, and nothing of one that it did not.
TEST_F(Sharing, KeepsWhatAKilledProgramReported) {
    QProcess second;
    start(second, {"--write-orders", qPath(), "n", "100000"});
    QByteArray printed;
    while (printed.count('\n') < 20) {
        ASSERT_TRUE(second.waitForReadyRead(60'000));
        printed += second.readAllStandardOutput();
    }
    second.kill();
    ASSERT_TRUE(second.waitForFinished());
    printed += second.readAllStandardOutput();
    const auto stored = storedOrders();
    std::size_t reported = 0;
    for (const QByteArray& line : printed.left(printed.lastIndexOf('\n')).split('\n')) {
        EXPECT_TRUE(stored.contains(line.toStdString())) << line.toStdString();
        ++reported;
    }
    EXPECT_GE(reported, 20u);
    EXPECT_LE(stored.size(), reported + 1);
    EXPECT_THAT(findings(), IsEmpty());
}

TEST_F(Sharing, WaitsForAnotherProgramsWrite) {
    RawDatabase other(path());
    ASSERT_EQ(other.run("BEGIN IMMEDIATE"), SQLITE_OK);
    std::thread later([&other] {
        std::this_thread::sleep_for(std::chrono::milliseconds(300));
        other.run("COMMIT");
    });
    const auto before = std::chrono::steady_clock::now();
    EXPECT_THAT(archive_->save(sampleOrder(), 0, actor_), Succeeds());
    EXPECT_GE(std::chrono::steady_clock::now() - before, std::chrono::milliseconds(250));
    later.join();
}

TEST_F(Sharing, SaysSoWhereAnotherProgramDoesNotFinish) {
    RawDatabase other(path());
    ASSERT_EQ(other.run("BEGIN IMMEDIATE"), SQLITE_OK);
    const auto saved = archive_->save(sampleOrder(), 0, actor_);
    ASSERT_THAT(saved, FailsWith(ErrorKind::Refused));
    EXPECT_THAT(saved.error().message(), HasSubstr("another program is writing"));
    // Reading goes on meanwhile.
    EXPECT_THAT(*archive_->orders(), IsEmpty());
    other.run("ROLLBACK");
    EXPECT_THAT(archive_->save(sampleOrder(), 0, actor_), Succeeds());
}

TEST_F(Sharing, ATransactionThatIsNotCommittedLeavesNothing) {
    fill();
    const Head head = *archive_->head();
    {
        // A program that dies inside its transaction.
        RawDatabase other(path());
        ASSERT_EQ(other.run("BEGIN IMMEDIATE; UPDATE casting SET heat = 'H 1';"
                            "DELETE FROM indication"),
                  SQLITE_OK);
    }
    EXPECT_EQ(*reopened().head(), head);
    EXPECT_THAT(findings(), IsEmpty());
    // A write of several steps whose last one fails.
    RawDatabase raw(path());
    ASSERT_EQ(raw.run("CREATE TRIGGER refuse BEFORE INSERT ON indication WHEN NEW.position = 2 "
                      "BEGIN SELECT RAISE(ABORT, 'not today'); END"),
              SQLITE_OK);
    ExaminationDraft draft = sampleDraft();
    draft.header.zone = "Z2";
    EXPECT_THAT(archive_->save(draft, actor_), FailsWith(ErrorKind::Refused));
    ASSERT_EQ(raw.run("DROP TRIGGER refuse"), SQLITE_OK);
    EXPECT_EQ(*reopened().head(), head);
    EXPECT_EQ(reopened().casting("S-17")->examinations.size(), 1u);
    EXPECT_THAT(findings(), IsEmpty());
}

TEST_F(Sharing, ADraftThatSomebodySavedMeanwhileIsAConflictAndNothingIsLost) {
    fill();
    Archive other = reopened();
    ExaminationDraft mine = *archive_->draft(1);
    ExaminationDraft theirs = *other.draft(1);
    theirs.rows[0].length = "9";
    ASSERT_THAT(other.save(theirs, Actor{"B. Second"}), Succeeds());
    mine.remarks = "mine";
    const auto saved = archive_->save(mine, actor_);
    ASSERT_THAT(saved, FailsWith(ErrorKind::Conflict));
    EXPECT_THAT(saved.error().message(), HasSubstr("saved by B. Second at 2026-11-25T09:30:00Z"));
    // Both can be shown: mine is still in hand, theirs is loaded; then mine goes on top of theirs.
    const auto stored = archive_->draft(1);
    ASSERT_THAT(stored, Succeeds());
    EXPECT_EQ(stored->version, 2);
    EXPECT_EQ(stored->rows, theirs.rows);
    EXPECT_EQ(stored->remarks, "UV-A");
    mine.version = stored->version;
    const auto again = archive_->save(mine, actor_);
    ASSERT_THAT(again, Succeeds());
    EXPECT_EQ(again->version, 3);
    EXPECT_EQ(described(*reopened().draft(1)), described(mine));
    EXPECT_THAT(findings(), IsEmpty());
}

// The archive remembers what it saved last; a version that another program made in between must
// not be taken for it.
TEST_F(Sharing, ADraftIsSavedAgainstWhatIsStoredNotAgainstWhatIsRemembered) {
    fill();
    ExaminationDraft mine = *archive_->draft(1);
    mine.rows[0].x = "11";
    mine.version = archive_->save(mine, actor_)->version;
    Archive other = reopened();
    ExaminationDraft theirs = *other.draft(1);
    theirs.rows.insert(theirs.rows.begin(), typedRow("0", "5"));
    ASSERT_THAT(other.save(theirs, actor_), Succeeds());
    EXPECT_THAT(archive_->save(mine, actor_), FailsWith(ErrorKind::Conflict));
    mine.version = 3;
    mine.rows[0].x = "12";
    ASSERT_THAT(archive_->save(mine, actor_), Succeeds());
    EXPECT_EQ(reopened().draft(1)->rows, mine.rows);
    EXPECT_THAT(findings(), IsEmpty());
}

TEST_F(Sharing, TheSameExaminationTwiceIsAConflict) {
    fill();
    const auto twice = archive_->save(sampleDraft(), actor_);
    ASSERT_THAT(twice, FailsWith(ErrorKind::Conflict));
    EXPECT_THAT(twice.error().message(), HasSubstr("saved by A. Bench"));
    ExaminationDraft draft = sampleDraft();
    draft.header.repeat = 2;
    const auto saved = archive_->save(draft, actor_);
    ASSERT_THAT(saved, Succeeds());
    EXPECT_EQ(saved->id, 2);
    draft.id = 2;
    draft.version = 1;
    draft.header.repeat = 1;
    EXPECT_THAT(archive_->save(draft, actor_), FailsWith(ErrorKind::Conflict));
    EXPECT_EQ(archive_->casting("S-17")->examinations.size(), 2u);
}

TEST_F(Sharing, ASaveThatChangesNothingWritesNothing) {
    fill();
    const Head head = *archive_->head();
    const ExaminationDraft draft = *archive_->draft(1);
    const auto saved = archive_->save(draft, actor_);
    ASSERT_THAT(saved, Succeeds());
    EXPECT_EQ(saved->version, 1);
    EXPECT_EQ(*archive_->head(), head);
}

TEST_F(Sharing, ADraftStaysWithItsCasting) {
    fill();
    Casting other = sampleCasting();
    other.serial = "S-18";
    ASSERT_THAT(archive_->save(other, 0, actor_), Succeeds());
    ExaminationDraft draft = *archive_->draft(1);
    draft.casting = "S-18";
    EXPECT_THAT(archive_->save(draft, actor_), FailsWith(ErrorKind::Input));
    draft.id = 7;
    EXPECT_THAT(archive_->save(draft, actor_), FailsWith(ErrorKind::Input));
}

TEST_F(Sharing, OrdersPartsAndCastingsKeepTheirVersions) {
    fill();
    Order order = sampleOrder();
    EXPECT_THAT(archive_->save(order, 0, actor_), FailsWith(ErrorKind::Conflict));
    order.forbiddenKinds = {Kind::Crack};
    order.customer = "Second Buyer";
    EXPECT_EQ(*archive_->save(order, 1, actor_), 2);
    EXPECT_THAT(archive_->save(order, 1, actor_), FailsWith(ErrorKind::Conflict));
    EXPECT_EQ(archive_->order("O-1")->version, 2);
    EXPECT_EQ(described(archive_->order("O-1")->value), described(order));
    order.number = "O-2";
    EXPECT_THAT(archive_->save(order, 1, actor_), FailsWith(ErrorKind::Input));

    Part part = samplePart();
    EXPECT_THAT(archive_->save(part, 0, actor_), FailsWith(ErrorKind::Conflict));
    part.drawingRevision = "D";
    EXPECT_EQ(*archive_->save(part, 1, actor_), 2);
    EXPECT_EQ(described(archive_->part("P-9")->value), described(part));

    Casting casting = sampleCasting();
    EXPECT_THAT(archive_->save(casting, 0, actor_), FailsWith(ErrorKind::Conflict));
    casting.heat = "H 205";
    EXPECT_EQ(*archive_->save(casting, 1, actor_), 2);
    EXPECT_THAT(archive_->save(casting, 1, actor_), FailsWith(ErrorKind::Conflict));
    EXPECT_EQ(described(archive_->castingEntry("S-17")->value), described(casting));
    EXPECT_THAT(findings(), IsEmpty());
}

TEST_F(Sharing, AFullDiskIsRefusedAndLeavesTheArchiveWhole) {
    fill();
    archive_.reset();
    QProcess second;
    start(second, {"--fill-small-disk", qPath()});
    ASSERT_TRUE(second.waitForFinished(60'000));
    const std::string said = second.readAllStandardOutput().toStdString();
    EXPECT_EQ(second.exitCode(), 0) << said;
    EXPECT_THAT(said, testing::StartsWith(std::to_string(static_cast<int>(ErrorKind::Refused))));
    EXPECT_THAT(findings(), IsEmpty());
    EXPECT_THAT(numbersIn(reopened()), IsEmpty());
    ExaminationDraft draft = *reopened().draft(1);
    draft.remarks = "there is room again";
    EXPECT_THAT(reopened().save(draft, actor_), Succeeds());
}

}  // namespace
}  // namespace model
