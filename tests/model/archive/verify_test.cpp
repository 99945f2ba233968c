// SPDX-License-Identifier: Apache-2.0
// What was altered past the program is found.
#include <filesystem>
#include <fstream>

#include "archive_fixture.h"
#include "base/digest.h"
#include "foundry/old_certificates.h"
#include "raw_database.h"

namespace model {
namespace {

using testing::AllOf;
using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

class Verify : public ArchiveTest {
protected:
    void SetUp() override {
        fill();
        ASSERT_THAT(foundry::addCertificate(*archive_, sampleFacts(), "%PDF first", actor_),
                    Succeeds());
        ASSERT_THAT(archive_->reserveCertificateNumber(actor_), Succeeds());
        // One that verify() reads as another program's would be.
        archive_.reset();
    }
    /// Runs `sql` with all triggers gone and put back, as a careful forger would.
    void alter(const std::string& sql) {
        RawDatabase raw(path());
        const auto triggers = raw.column("SELECT sql FROM sqlite_schema WHERE type = 'trigger'");
        raw.dropTriggers();
        ASSERT_EQ(raw.run(sql), SQLITE_OK) << raw.message();
        for (const std::string& trigger : triggers) ASSERT_EQ(raw.run(trigger), SQLITE_OK);
    }
    struct Alteration {
        const char* sql;
        const char* finding;
    };
    /// Makes each alteration alone.
    void expectFindings(const std::vector<Alteration>& alterations) {
        const std::string original = pathOf("original");
        std::filesystem::copy_file(path(), original);
        for (const auto& one : alterations) {
            std::filesystem::copy_file(original, path(),
                                       std::filesystem::copy_options::overwrite_existing);
            alter(one.sql);
            EXPECT_THAT(findings(), Contains(HasSubstr(one.finding))) << one.sql;
        }
    }
    [[nodiscard]] std::string certificatePath() const {
        const std::string digest = toHex(sha256("%PDF first"));
        return path() + ".files/" + digest.substr(0, 2) + "/" + digest.substr(2) + ".pdf";
    }
};

TEST_F(Verify, FindsNothingInAnUntouchedArchive) {
    EXPECT_THAT(findings(), IsEmpty());
    const auto verification = reopened().verify();
    EXPECT_EQ(verification->head.sequence, 10);
    EXPECT_EQ(verification->head, *reopened().head());
    EXPECT_EQ(verification->certificates, 1);
}

TEST_F(Verify, FindsAnAlteredHistoryRow) {
    alter(
        "UPDATE history SET bytes = CAST(replace(CAST(bytes AS TEXT), 'H 204', 'H 205') AS BLOB)"
        " WHERE sequence = 6");
    EXPECT_THAT(findings(), ElementsAre(HasSubstr("history row 6: was altered")));
}

TEST_F(Verify, FindsADeletedHistoryRow) {
    alter("DELETE FROM history WHERE sequence = 6");
    EXPECT_THAT(findings(), Contains(HasSubstr("history row 6: is missing")));
}

TEST_F(Verify, FindsHistoryColumnsThatDifferFromTheirBytes) {
    alter("UPDATE history SET person = 'C. Other' WHERE sequence = 6");
    EXPECT_THAT(findings(),
                Contains(HasSubstr("history row 6: has columns that differ from its bytes")));
}

TEST_F(Verify, FindsARollbackOnlyByAHeadHeldElsewhere) {
    const Head held = *reopened().head();
    EXPECT_THAT(findings(held), IsEmpty());
    EXPECT_THAT(findings(Head()), IsEmpty());
    alter(
        "DELETE FROM certificate_number WHERE number = 2;"
        "DELETE FROM history_seal WHERE sequence = 10;"
        "DELETE FROM history WHERE sequence = 10");
    EXPECT_THAT(findings(), IsEmpty());
    EXPECT_THAT(findings(held), ElementsAre(HasSubstr("history: ends before the row")));
    Head other = *reopened().head();
    other.hash[0] ^= 1;
    EXPECT_THAT(findings(other), ElementsAre(HasSubstr("history: has another row")));
}

TEST_F(Verify, FindsEveryValueThatIsNotWhatTheHistorySays) {
    expectFindings({
        {"UPDATE customer_order SET customer = 'Other'", "order O-1: is not what"},
        {"UPDATE customer_order SET version = 2", "order O-1: is not what"},
        {"DELETE FROM order_forbidden_kind WHERE kind = 'crack'", "order O-1: is not what"},
        {"UPDATE part SET material = 'cast steel'", "part P-9: is not what"},
        {"UPDATE planned_zone SET thickness_nm = 2 WHERE name = 'Z2'",
         "zone plan of P-9 revision 1: is not what"},
        {"UPDATE planned_zone SET surface_period_nm = NULL",
         "zone plan of P-9 revision 1: is not what"},
        {"UPDATE required_level SET level = 'LM 5' WHERE level_key = 'linear'",
         "zone plan of P-9 revision 1: is not what"},
        {"UPDATE casting SET heat = 'H 1'", "casting S-17: is not what"},
        {"UPDATE examination SET no_indications = 1", "examination 1: is not what"},
        {"UPDATE examination SET version = 2", "examination 1: is not what"},
        {"UPDATE examination_level SET level = 'SM 5' WHERE level_key = 'non-linear'",
         "examination 1: is not what"},
        {"DELETE FROM examination_forbidden_kind", "examination 1: is not what"},
        {"UPDATE not_examined SET agreed = 'A-2'", "examination 1: is not what"},
        {"UPDATE indication SET length = '2', length_nm = 2000000 WHERE position = 1",
         "examination 1, row 1: is not what"},
        {"UPDATE indication SET length_nm = 2000000 WHERE position = 1",
         "examination 1, row 1: is not what"},
        {"UPDATE indication SET unit = 'mm' WHERE position = 2",
         "examination 1, row 2: is not what"},
        {"DELETE FROM indication WHERE position = 4", "examination 1: has not the rows"},
        {"UPDATE certificate SET verdict = 'not acceptable'", "certificate 1: is not what"},
        {"UPDATE certificate SET issued_at = '2020-01-01T00:00:00Z'", "certificate 1: is not what"},
        {"UPDATE certificate SET issued_by = 'C. Other'", "certificate 1: is not what"},
        {"DELETE FROM certificate", "certificate 1: is gone"},
        {"DELETE FROM certificate_number WHERE number = 2", "certificate numbers: are not those"},
        {"INSERT INTO certificate_number VALUES (3)", "certificate numbers: are not those"},
        {"INSERT INTO customer_order SELECT 'O-9', 1, '', '', '3.1', 'en', '', '', '', '{}'",
         "order O-9: is stored, but not in the history"},
        {"INSERT INTO examination (id, version, casting_serial, zone, method, stage, "
         "repair_cycle, repeat_number, thickness_nm, limit_table, no_indications, examined_by, "
         "examined_on, written_procedure, remarks, saved_at, saved_by) "
         "SELECT 2, version, casting_serial, 'Z9', method, stage, repair_cycle, repeat_number, "
         "thickness_nm, limit_table, no_indications, examined_by, examined_on, "
         "written_procedure, remarks, saved_at, saved_by FROM examination",
         "examination 2: is stored, but not in the history"},
    });
}

TEST_F(Verify, FindsEveryChangeOfAnUltrasonicExamination) {
    ASSERT_THAT(reopened().save(sampleUltrasonicDraft(), actor_), Succeeds());
    expectFindings({
        {"UPDATE examination SET zone_area_millionth_mm2 = 1 WHERE id = 2",
         "examination 2: is not what"},
        {"UPDATE examination SET testability_stated = 1 WHERE id = 1",
         "examination 1: is not what"},
        {"UPDATE examination SET smallest_fbh_nm = NULL WHERE id = 2",
         "examination 2: is not what"},
        {"UPDATE examination SET signal_to_noise_millionth_db = NULL WHERE id = 2",
         "examination 2: is not what"},
        {"UPDATE examination SET dead_zone_nm = 0 WHERE id = 2", "examination 2: is not what"},
        {"UPDATE examination_direction SET direction = 'x' WHERE position = 2",
         "examination 2: is not what"},
        {"DELETE FROM examination_direction WHERE position = 3", "examination 2: is not what"},
        {"UPDATE ultrasonic_setting SET velocity = '3081', velocity_millionth_m_s = 3081000000 "
         "WHERE position = 1",
         "examination 2, setting 1: is not what"},
        {"UPDATE ultrasonic_setting SET velocity_millionth_m_s = 3081000000 WHERE position = 1",
         "examination 2, setting 1: is not what"},
        {"DELETE FROM ultrasonic_setting WHERE position = 3",
         "examination 2: has not the settings"},
        {"UPDATE reflector SET fbh = '1' WHERE position = 1",
         "examination 2, reflector 1: is not what"},
        {"UPDATE reflector SET gain_millionth_db = 0 WHERE position = 2",
         "examination 2, reflector 2: is not what"},
        {"DELETE FROM reflector WHERE position = 3", "examination 2: has not the reflectors"},
        {"UPDATE reflector SET position = position + 10",
         "entries of reflector, examination_id 2: are not numbered"},
    });
}

TEST_F(Verify, FindsADroppedAndAChangedTrigger) {
    {
        RawDatabase raw(path());
        ASSERT_EQ(raw.run("DROP TRIGGER history_never_changes; DROP TRIGGER history_never_shrinks;"
                          "CREATE TRIGGER history_never_shrinks BEFORE DELETE ON history BEGIN "
                          "SELECT 1; END; CREATE TABLE more (a)"),
                  SQLITE_OK);
    }
    EXPECT_THAT(findings(), ElementsAre(HasSubstr("trigger history_never_changes: is missing"),
                                        HasSubstr("trigger history_never_shrinks: is not the one"),
                                        HasSubstr("table more: was not made by Fettlemark")));
}

TEST_F(Verify, FindsAnAlteredCertificateFile) {
    {
        std::ofstream file(certificatePath(), std::ios::app);
        file << ' ';
    }
    EXPECT_THAT(findings(),
                ElementsAre(AllOf(HasSubstr("certificate 1"), HasSubstr("was altered"))));
    EXPECT_THAT(reopened().certificateFile(1), FailsWith(ErrorKind::Damaged));
    std::filesystem::remove(certificatePath());
    EXPECT_THAT(findings(), ElementsAre(AllOf(HasSubstr("certificate 1"), HasSubstr("is gone"))));
    EXPECT_THAT(reopened().certificateFile(1), FailsWith(ErrorKind::Damaged));
}

TEST_F(Verify, ChecksAllItCanReadOfABrokenDatabase) {
    // An index whose entries are gone is no longer the table's: integrity_check's own case.
    {
        RawDatabase raw(path());
        raw.dropTriggers();
        ASSERT_EQ(raw.run("PRAGMA writable_schema = ON;"
                          "UPDATE sqlite_schema SET sql = replace(sql, '(heat)', '(language)') "
                          "WHERE name = 'certificate_by_heat'"),
                  SQLITE_OK);
    }
    EXPECT_THAT(findings(), Contains(HasSubstr("database: ")));
}

TEST_F(Verify, ShowsProgressAndCanBeStopped) {
    std::vector<std::int64_t> seen;
    const auto whole = reopened().verify(std::nullopt, [&](std::int64_t done, std::int64_t total) {
        seen.push_back(done);
        EXPECT_EQ(total, 11);
        return true;
    });
    EXPECT_THAT(whole, Succeeds());
    EXPECT_THAT(seen, ElementsAre(11));
    EXPECT_THAT(reopened().verify(std::nullopt, [](auto, auto) { return false; }),
                FailsWith(ErrorKind::Refused));
}

TEST_F(Verify, FollowsADraftThroughManyEdits) {
    Archive archive = reopened();
    ExaminationDraft draft = *archive.draft(1);
    unsigned state = 1;
    const auto random = [&](unsigned below) {
        state = state * 1664525U + 1013904223U;
        return (state >> 16) % below;
    };
    for (int i = 0; i < 200; ++i) {
        const auto size = static_cast<unsigned>(draft.rows.size());
        const auto at = draft.rows.begin() + random(size + 1);
        const unsigned what = random(3);
        if (what == 0)
            draft.rows.insert(at, typedRow(std::to_string(i), std::to_string(random(5))));
        else if (at != draft.rows.end() && what == 1)
            draft.rows.erase(at);
        else if (at != draft.rows.end())
            at->x = std::to_string(random(1000));
        if (random(4) == 0) draft.header.thickness = millimetres(1 + random(50));
        // Now and then by a program that does not hold the stored draft.
        if (random(8) == 0) archive = reopened();
        const auto saved = archive.save(draft, actor_);
        ASSERT_THAT(saved, Succeeds());
        draft.version = saved->version;
        ASSERT_EQ(reopened().draft(1)->rows, draft.rows) << i;
    }
    EXPECT_EQ(described(*reopened().draft(1)), described(draft));
    EXPECT_THAT(findings(), IsEmpty());
}

}  // namespace
}  // namespace model
