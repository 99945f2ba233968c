// SPDX-License-Identifier: Apache-2.0
// Every write leaves its row, and no row can be changed unseen.
#include <QCryptographicHash>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>

#include "archive_fixture.h"
#include "base/digest.h"
#include "foundry/old_certificates.h"
#include "limits/shipped_tables.h"
#include "raw_database.h"

namespace model {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;
using testing::SizeIs;

using History = ArchiveTest;

QByteArray bytesOf(const std::string& text) {
    return {text.data(), static_cast<qsizetype>(text.size())};
}

// Source: Qt's QCryptographicHash and QJsonDocument, which share no code with trust/.
TEST_F(History, ChainIsThatOfAnIndependentRecomputation) {
    fill();
    RawDatabase raw(path());
    const auto bytes = raw.column("SELECT bytes FROM history ORDER BY sequence");
    const auto hashes = raw.column("SELECT hash FROM history ORDER BY sequence");
    ASSERT_THAT(bytes, SizeIs(7));
    QByteArray previous(32, '\0');
    for (std::size_t i = 0; i < bytes.size(); ++i) {
        previous =
            QCryptographicHash::hash(previous + bytesOf(bytes[i]), QCryptographicHash::Sha256);
        EXPECT_EQ(previous, bytesOf(hashes[i])) << i + 1;
        const auto json = QJsonDocument::fromJson(bytesOf(bytes[i])).object();
        EXPECT_EQ(json["sequence"].toInt(), static_cast<int>(i) + 1);
        EXPECT_EQ(json["format"].toString(), "fettlemark-history/1");
        EXPECT_EQ(json["person"].toString(), "A. Bench");
        EXPECT_EQ(json["time"].toString(), "2026-11-25T09:30:00Z");
    }
    const auto head = archive_->head();
    ASSERT_THAT(head, Succeeds());
    EXPECT_EQ(toText(*head), "7:" + previous.toHex().toStdString());
}

TEST_F(History, SaysWhoDidWhatAndWhen) {
    clock_.set(std::chrono::sys_days(std::chrono::year(2027) / 1 / 2) + std::chrono::hours(3));
    ASSERT_THAT(archive_->save(sampleOrder(), 0, Actor{"B. Office"}), Succeeds());
    const auto rows = archive_->history();
    ASSERT_THAT(rows, Succeeds());
    ASSERT_THAT(*rows, SizeIs(3));
    EXPECT_EQ((*rows)[0].action, "archive created");
    EXPECT_EQ((*rows)[0].time, "2026-11-25T09:30:00Z");
    EXPECT_EQ((*rows)[1].action, "archive key made");
    EXPECT_EQ((*rows)[2].sequence, 3);
    EXPECT_EQ((*rows)[2].action, "order saved");
    EXPECT_EQ((*rows)[2].subject, "O-1");
    EXPECT_EQ((*rows)[2].person, "B. Office");
    EXPECT_EQ((*rows)[2].time, "2027-01-02T03:00:00Z");
    const auto json = QJsonDocument::fromJson(bytesOf((*rows)[2].bytes)).object();
    const auto content = json["content"].toObject();
    EXPECT_EQ(content["version"].toInt(), 1);
    EXPECT_EQ(content["customer"].toString(), "First Buyer");
    EXPECT_EQ(content["remarks"].toString(), "witness point: \"final MT\"\nsecond line");
    EXPECT_EQ(content["forbidden_kinds"].toArray(), QJsonArray({"hot tear", "crack"}));
}

TEST_F(History, IsReadInPieces) {
    fill();
    EXPECT_THAT(*archive_->history(3, 2), SizeIs(2));
    EXPECT_EQ(archive_->history(3, 2)->front().sequence, 3);
    EXPECT_THAT(*archive_->history(8, 10), IsEmpty());
    EXPECT_THAT(*archive_->history(1, 0), IsEmpty());
    // A history that was left in the middle does not stop the next write.
    EXPECT_THAT(archive_->save(sampleOrder(), 1, actor_), Succeeds());
}

TEST_F(History, KeepsEveryVersionOfADraft) {
    fill();
    ExaminationDraft draft = *archive_->draft(1);
    draft.rows[2] = typedRow("3", "30");
    ASSERT_THAT(archive_->save(draft, actor_), Succeeds());
    const auto rows = *archive_->history(8);
    ASSERT_THAT(rows, SizeIs(1));
    const auto content =
        QJsonDocument::fromJson(bytesOf(rows[0].bytes)).object()["content"].toObject();
    EXPECT_EQ(content["version"].toInt(), 2);
    const auto change = content["rows"].toObject();
    EXPECT_EQ(change["from"].toInt(), 3);
    EXPECT_EQ(change["removed"].toInt(), 1);
    ASSERT_EQ(change["added"].toArray().size(), 1);
    EXPECT_EQ(change["added"].toArray()[0].toObject(), QJsonObject({{"id", "3"},
                                                                    {"x", "30"},
                                                                    {"y", "22,50"},
                                                                    {"length", "3"},
                                                                    {"width", "0.5"},
                                                                    {"unit", "mm"}}));
}

TEST_F(History, HoldsOfALongListOnlyWhatChanged) {
    fill();
    ExaminationDraft draft = *archive_->draft(1);
    for (int i = 0; i < 2000; ++i) draft.rows.push_back(typedRow(std::to_string(i), "1"));
    draft.version = archive_->save(draft, actor_)->version;
    draft.rows[1000].x = "2";
    draft.version = archive_->save(draft, actor_)->version;
    draft.rows.push_back(typedRow("last", "3"));
    ASSERT_THAT(archive_->save(draft, actor_), Succeeds());
    const auto rows = *archive_->history(8);
    ASSERT_THAT(rows, SizeIs(3));
    EXPECT_GT(rows[0].bytes.size(), 2000u * 50);
    EXPECT_LT(rows[1].bytes.size(), 2000u);
    EXPECT_LT(rows[2].bytes.size(), 2000u);
    EXPECT_EQ(reopened().draft(1)->rows, draft.rows);
}

TEST_F(History, RefusesEveryClientsChange) {
    fill();
    IssueFacts facts = sampleFacts();
    facts.tableDigests = {toHex(sha256(shippedTables()[0].text))};
    ASSERT_THAT(foundry::addCertificate(*archive_, facts, "%PDF", actor_), Succeeds());
    ASSERT_THAT(archive_->reserveCertificateNumber(actor_), Succeeds());
    RawDatabase raw(path());
    ASSERT_EQ(raw.run("INSERT INTO limit_table VALUES ('T', 1, printf('%064d', 0), 'n', 'c');"
                      "INSERT INTO attestation VALUES (1, printf('%064d', 0))"),
              SQLITE_OK);
    for (const char* table : {"history", "certificate", "certificate_number", "certificate_table",
                              "archive", "zone_plan", "planned_zone", "required_test",
                              "required_level", "limit_table", "attestation"}) {
        const std::string name = table;
        const auto rows = raw.value("SELECT count(*) FROM " + name);
        ASSERT_NE(rows, "0") << name;
        const auto column = raw.value("SELECT name FROM pragma_table_info('" + name + "')");
        // Without a trigger of its own the last would delete the old row, as recursive_triggers is
        // off in other programs.
        for (const char* sql :
             {"DELETE FROM %1", "UPDATE %1 SET %2 = %2", "UPDATE OR REPLACE %1 SET %2 = %2",
              "INSERT OR REPLACE INTO %1 SELECT * FROM %1"}) {
            const QString statement =
                QString(sql).replace("%1", table).replace("%2", QString::fromStdString(column));
            EXPECT_EQ(raw.run(statement.toStdString()), SQLITE_CONSTRAINT_TRIGGER)
                << statement.toStdString();
        }
        EXPECT_EQ(raw.value("SELECT count(*) FROM " + name), rows) << name;
    }
    EXPECT_EQ(raw.run("INSERT INTO history SELECT sequence + 20, happened_at, person, action, "
                      "subject, bytes, hash FROM history"),
              SQLITE_CONSTRAINT_TRIGGER);
    EXPECT_EQ(raw.run("INSERT INTO certificate_number VALUES (9)"), SQLITE_CONSTRAINT_TRIGGER);
}

TEST_F(History, ADemonstrationStaysOne) {
    const std::string name = pathOf("demonstration");
    {
        const auto archive = Archive::create(name, ArchiveKind::Demonstration, actor_, clock_);
        ASSERT_THAT(archive, Succeeds());
        EXPECT_EQ(archive->kind(), ArchiveKind::Demonstration);
    }
    EXPECT_EQ(archive_->kind(), ArchiveKind::Working);
    RawDatabase raw(name);
    for (const char* sql : {"UPDATE archive SET kind = 'working'", "DELETE FROM archive",
                            "INSERT OR REPLACE INTO archive VALUES (1, 'working', '')"})
        EXPECT_EQ(raw.run(sql), SQLITE_CONSTRAINT_TRIGGER) << sql;
    raw.dropTriggers();
    ASSERT_EQ(raw.run("UPDATE archive SET kind = 'working'"), SQLITE_OK);
    const auto archive = Archive::open(name, clock_);
    ASSERT_THAT(archive, Succeeds());
    const auto verification = archive->verify();
    ASSERT_THAT(verification, Succeeds());
    std::vector<std::string> messages;
    for (const Error& error : verification->findings) messages.push_back(error.message());
    EXPECT_THAT(messages, testing::Contains(HasSubstr("archive: is not what the history says")));
}

}  // namespace
}  // namespace model
