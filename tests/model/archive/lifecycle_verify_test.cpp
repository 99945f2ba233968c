// SPDX-License-Identifier: Apache-2.0
// Whoever goes past the program is stopped by the database, or found by verify().
#include <filesystem>
#include <fstream>

#include "archive/rejudge.h"
#include "lifecycle_fixture.h"

namespace model {
namespace {

using testing::AllOf;
using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::SizeIs;

/// Certificate 1 (type 3.2) was returned, 2 released and withdrawn; 3 waits.
class LifecycleVerify : public LifecycleTest {
protected:
    void SetUp() override {
        order("3.2");
        first_ = sign(save(draft()));
        ExaminationDraft second = draft();
        second.header.repeat = 1;
        sign(save(second));
        attestTable();
        ASSERT_THAT(invalidateRecord(*archive_, first_, "lamp broken", level3_), Succeeds());
        ASSERT_THAT(returnCasting(*archive_, present(), "look again", qaManager_), Succeeds());
        sign(1);
        const auto rejected =
            signRecord(*archive_, 2, archive_->draft(2)->version, Rejection{"torn"}, inspector_);
        ASSERT_THAT(rejected, Succeeds());
        released_ = present();
        ASSERT_THAT(endorse(*archive_, released_, endorsedPdf(released_), thirdParty_), Succeeds());
        ASSERT_THAT(release(released_, qaManager_), Succeeds());
        ASSERT_THAT(withdraw(*archive_, released_, "wrong casting", qaManager_), Succeeds());
        waiting_ = present();
        ASSERT_THAT(findings(), IsEmpty());
    }

    /// Alters a copy of the database; what verify() finds in it.
    [[nodiscard]] std::vector<std::string> findingsAfter(const std::string& sql) {
        const std::string kept = pathOf("kept");
        archive_.reset();
        {
            RawDatabase raw(path());
            raw.run("PRAGMA wal_checkpoint(TRUNCATE)");
        }
        std::filesystem::copy_file(path(), kept);
        alter(sql);
        auto found = findings();
        for (const char* suffix : {"-wal", "-shm"}) std::filesystem::remove(path() + suffix);
        std::filesystem::rename(kept, path());
        return found;
    }
    [[nodiscard]] std::string fileOf(const std::string& digest) const {
        return path() + ".files/" + digest.substr(0, 2) + "/" + digest.substr(2) + ".pdf";
    }

    std::int64_t first_ = 0;
    std::int64_t released_ = 0;
    std::int64_t waiting_ = 0;
};

constexpr const char* kTables[] = {
    "record",      "record_invalidation",   "record_return", "presentation",
    "endorsement", "presentation_return",   "certificate",   "certificate_release",
    "attestation", "certificate_withdrawal"};

TEST_F(LifecycleVerify, RowsAreNeitherChangedNorTakenOutNorReplaced) {
    RawDatabase raw(path());
    for (const std::string table : kTables) {
        SCOPED_TRACE(table);
        ASSERT_NE(raw.value("SELECT count(*) FROM " + table), "0");
        for (const std::string& column :
             raw.column("SELECT name FROM pragma_table_info('" + table + "')"))
            EXPECT_EQ(raw.run("UPDATE " + table + " SET " + column + " = " + column),
                      SQLITE_CONSTRAINT_TRIGGER)
                << column;
        EXPECT_EQ(raw.run("DELETE FROM " + table), SQLITE_CONSTRAINT_TRIGGER);
        EXPECT_EQ(raw.run("INSERT OR REPLACE INTO " + table + " SELECT * FROM " + table),
                  SQLITE_CONSTRAINT_TRIGGER);
    }
    EXPECT_THAT(findings(), IsEmpty());
}

TEST_F(LifecycleVerify, EachColumnIsHeldAgainstTheHistory) {
    struct Change {
        const char* what;
        const char* sql;
    };
    const Change changes[] = {
        {"record", "UPDATE record SET revision = revision + 7"},
        {"record", "UPDATE record SET examination_id = 3 - examination_id, revision = id"},
        {"record",
         "UPDATE record SET word = 'acceptable', rejection = NULL "
         "WHERE rejection IS NOT NULL"},
        {"record", "UPDATE record SET rejection = 'another' WHERE rejection IS NOT NULL"},
        {"record", "UPDATE record SET person = 'P-3'"},
        {"record",
         "UPDATE record SET content = CAST(replace(CAST(content AS TEXT), "
         "'\"no_indications\":true', '\"no_indications\":false') AS BLOB)"},
        {"declaration that a record is invalid", "UPDATE record_invalidation SET reason = 'x'"},
        {"declaration that a record is invalid", "UPDATE record_invalidation SET person = 'P-2'"},
        {"declaration that a record is invalid",
         "UPDATE record_invalidation SET history_sequence = 1"},
        {"declaration that a record is invalid", "DELETE FROM record_invalidation"},
        {"return of record", "UPDATE record_return SET reason = 'x'"},
        {"return of record", "UPDATE record_return SET person = 'P-2'"},
        {"return of record", "UPDATE record_return SET history_sequence = 1"},
        {"return of record", "DELETE FROM record_return"},
        {"return of presentation", "UPDATE presentation_return SET reason = 'x'"},
        {"return of presentation", "UPDATE presentation_return SET person = 'P-2'"},
        {"return of presentation", "UPDATE presentation_return SET history_sequence = 1"},
        {"return of presentation", "DELETE FROM presentation_return"},
        {"presentation", "UPDATE presentation SET history_sequence = number"},
        {"presentation", "UPDATE presentation SET person = 'P-3'"},
        {"presentation",
         "UPDATE presentation SET file_sha256 = replace(hex(zeroblob(32)), '', '')"},
        {"presentation", "UPDATE presentation SET file_bytes = file_bytes + 1"},
        {"presentation",
         "UPDATE presentation SET content = CAST(replace(CAST(content AS TEXT), "
         "'\"attested\":true', '\"attested\":false') AS BLOB)"},
        {"presentation", "UPDATE presentation SET sheet = replace(sheet, '600', '601') || ' '"},
        {"presentation",
         "UPDATE presentation SET verdict = replace(verdict, 'not acceptable', "
         "'acceptable') || ' '"},
        {"third party's signature", "UPDATE endorsement SET person = 'P-2'"},
        {"third party's signature", "UPDATE endorsement SET history_sequence = 1"},
        {"third party's signature", "UPDATE endorsement SET file_bytes = file_bytes + 1"},
        {"third party's signature", "DELETE FROM endorsement"},
        {"release of certificate", "UPDATE certificate_release SET person = 'P-2'"},
        {"release of certificate", "UPDATE certificate_release SET history_sequence = 1"},
        {"release of certificate", "DELETE FROM certificate_release"},
        {"withdrawal of certificate", "UPDATE certificate_withdrawal SET reason = 'x'"},
        {"withdrawal of certificate", "UPDATE certificate_withdrawal SET person = 'P-2'"},
        {"withdrawal of certificate", "UPDATE certificate_withdrawal SET history_sequence = 1"},
        {"withdrawal of certificate", "DELETE FROM certificate_withdrawal"},
        {"attestation", "DELETE FROM attestation"},
        {"attestation", "UPDATE attestation SET limit_table_sha256 = hex(zeroblob(32))"},
        {"attestation", "INSERT INTO attestation SELECT 1, limit_table_sha256 FROM attestation"},
        {"release queue", "DELETE FROM release_queue"},
        {"release queue", "INSERT INTO release_queue VALUES (1)"},
        {"certificate", "UPDATE certificate SET verdict = 'acceptable'"},
    };
    for (const Change& change : changes)
        EXPECT_THAT(findingsAfter(change.sql), Contains(HasSubstr(change.what))) << change.sql;
    EXPECT_THAT(findings(), IsEmpty());
}

TEST_F(LifecycleVerify, EachFileIsTheBeginningOfTheNext) {
    const auto shown = presented(*archive_, released_);
    const std::string file = fileOf(shown->fileDigest);
    ASSERT_TRUE(std::filesystem::exists(file));
    std::ofstream(file, std::ios::app) << ' ';
    EXPECT_THAT(findings(),
                ElementsAre(AllOf(HasSubstr("before its release"), HasSubstr("was altered"))));
    EXPECT_THAT(presentedFile(*archive_, released_), FailsWith(ErrorKind::Damaged));
    std::filesystem::remove(file);
    EXPECT_THAT(findings(),
                ElementsAre(AllOf(HasSubstr("before its release"), HasSubstr("is gone"))));
}

TEST_F(LifecycleVerify, FilesOfWhatWaitsAreCheckedToo) {
    // The waiting one's file is that of the returned one as well: nothing else was ever stored
    // under that name.
    const std::string file = fileOf(presented(*archive_, waiting_)->fileDigest);
    std::filesystem::remove(file);
    EXPECT_THAT(findings(), Contains(AllOf(HasSubstr("certificate " + std::to_string(waiting_)),
                                           HasSubstr("is gone"))));
}

TEST_F(LifecycleVerify, JudgesEverythingAgainAsItWasJudged) {
    const auto all = rejudge(*archive_);
    ASSERT_THAT(all, Succeeds());
    EXPECT_EQ(all->count, 3);
    EXPECT_THAT(all->otherwise, IsEmpty());
    EXPECT_EQ(rejudge(*archive_, released_)->count, 1);
    EXPECT_THAT(rejudge(*archive_, 99), FailsWith(ErrorKind::Input));
    EXPECT_THAT(rejudge(*archive_, std::nullopt, [](auto, auto) { return false; }),
                FailsWith(ErrorKind::Refused));
}

// An older program that judged otherwise is played by a verdict, or a sheet, that was altered.
TEST_F(LifecycleVerify, SaysWhatIsJudgedOtherwiseToday) {
    archive_.reset();
    alter(
        "UPDATE presentation SET sheet = replace(sheet, '\"no_indications\": true', "
        "'\"no_indications\": false'), verdict = verdict WHERE number = 1");
    alter(
        "UPDATE presentation SET verdict = replace(verdict, 'edges not joined', 'edges joined') "
        "WHERE number = " +
        std::to_string(released_));
    alter("UPDATE presentation SET sheet = 'no sheet' WHERE number = " + std::to_string(waiting_));
    archive_ = reopened();
    const auto all = rejudge(*archive_);
    ASSERT_THAT(all, Succeeds());
    EXPECT_EQ(all->count, 3);
    ASSERT_THAT(all->otherwise, SizeIs(3));
    EXPECT_EQ(all->otherwise[0].number, 1);
    EXPECT_EQ(all->otherwise[0].difference, "was acceptable, is not judged today");
    EXPECT_EQ(all->otherwise[1].number, released_);
    EXPECT_THAT(all->otherwise[1].difference, HasSubstr("other checks or measured values"));
    EXPECT_THAT(all->otherwise[2].difference, HasSubstr("cannot be judged today"));
}

}  // namespace
}  // namespace model
