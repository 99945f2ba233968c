// SPDX-License-Identifier: Apache-2.0
// No client changes what is stored of people and proofs, and what was changed past the triggers is
// found.
#include "foundry_fixture.h"

namespace model {
namespace {

using testing::Contains;
using testing::HasSubstr;
using testing::IsEmpty;

class PeopleTables : public FoundryTest {
protected:
    /// One row at least in each of the tables.
    void SetUp() override {
        ASSERT_THAT(
            withdrawIdentity(*archive_, foundry::kTrainee, RevocationReason::NotNeeded,
                             "went to sea", foundry::authorityPassphrase(), administrator()),
            Succeeds());
        static_cast<void>(signIn(*archive_, foundry::kInspector, SecretBytes("a wrong one")));
        EXPECT_THAT(findings(), IsEmpty());
        archive_.reset();
    }
};

TEST_F(PeopleTables, RefuseEveryClientsChange) {
    RawDatabase raw(path());
    for (const char* table : {"history_seal", "history_signature", "archive_key", "identity",
                              "identity_certificate", "identity_withdrawal", "revocation_list"}) {
        const std::string name = table;
        const auto rows = raw.value("SELECT CAST(count(*) AS TEXT) FROM " + name);
        ASSERT_NE(rows, "0") << name;
        const auto column = raw.value("SELECT name FROM pragma_table_info('" + name + "')");
        for (const char* sql :
             {"DELETE FROM %1", "UPDATE %1 SET %2 = %2", "UPDATE OR REPLACE %1 SET %2 = %2",
              "INSERT OR REPLACE INTO %1 SELECT * FROM %1"}) {
            const QString statement =
                QString(sql).replace("%1", table).replace("%2", QString::fromStdString(column));
            EXPECT_EQ(raw.run(statement.toStdString()), SQLITE_CONSTRAINT_TRIGGER)
                << statement.toStdString();
        }
        EXPECT_EQ(raw.value("SELECT CAST(count(*) AS TEXT) FROM " + name), rows) << name;
    }
    // People change, but stay, and stay themselves.
    for (const char* sql :
         {"DELETE FROM person", "UPDATE person SET id = 'P-99' WHERE id = 'P-8'",
          "UPDATE OR REPLACE person SET id = 'P-99' WHERE id = 'P-8'",
          "UPDATE OR REPLACE person SET name = 'Ada Ferrous' WHERE id = 'P-8'",
          "INSERT OR REPLACE INTO person SELECT * FROM person",
          "INSERT OR REPLACE INTO person VALUES ('P-99', 1, 'Ada Ferrous', 0, '', 1)"})
        EXPECT_EQ(raw.run(sql), SQLITE_CONSTRAINT_TRIGGER) << sql;
    // A second identity by the same certificate.
    EXPECT_EQ(raw.run("INSERT OR REPLACE INTO identity SELECT 99, kind, person_id, fingerprint "
                      "FROM identity WHERE number = 3"),
              SQLITE_CONSTRAINT_TRIGGER);
}

TEST_F(PeopleTables, AreWhatTheHistorySays) {
    const struct {
        const char* sql;
        const char* finding;
    } kCases[] = {
        {"UPDATE person SET version = 2 WHERE id = 'P-2'", "person P-2: is not what"},
        {"UPDATE person SET name = 'Other' WHERE id = 'P-2'", "person P-2: is not what"},
        {"UPDATE person SET manufacturing = 0 WHERE id = 'P-5'", "person P-5: is not what"},
        {"UPDATE person SET body = 'Second Buyer' WHERE id = 'P-6'", "person P-6: is not what"},
        {"UPDATE person SET active = 0 WHERE id = 'P-2'", "person P-2: is not what"},
        {"UPDATE person_role SET role = 'QA manager' WHERE person_id = 'P-2'",
         "person P-2: is not what"},
        {"INSERT INTO person_role VALUES ('P-2', 'QA manager')", "person P-2: is not what"},
        {"DELETE FROM person_role WHERE person_id = 'P-4'", "person P-4: is not what"},
        {"UPDATE person_level SET level = 3 WHERE person_id = 'P-7'", "person P-7: is not what"},
        {"UPDATE person_level SET method = 'PT' WHERE person_id = 'P-7'",
         "person P-7: is not what"},
        {"UPDATE person_level SET method = 'XT' WHERE person_id = 'P-7'",
         "person P-7: holds the unknown word"},
        {"UPDATE person_role SET role = 'king' WHERE person_id = 'P-7'",
         "person P-7: holds the unknown word"},
        {"INSERT INTO person VALUES ('P-99', 1, 'Nobody', 0, '', 1)",
         "person P-99: is stored, but not in the history"},
        {"UPDATE identity SET person_id = 'P-4' WHERE number = 3", "identity 3: is not what"},
        {"UPDATE identity SET kind = 'trusted authority', person_id = NULL WHERE number = 3",
         "identity 3: is not what"},
        {"UPDATE identity SET fingerprint = printf('%064d', 0) WHERE number = 3",
         "identity 3: has not the fingerprint"},
        {"UPDATE identity_certificate SET certificate = x'3000' WHERE identity = 3 AND position = "
         "1",
         "identity 3: has not the fingerprint"},
        {"UPDATE identity_certificate SET certificate = x'3000' WHERE identity = 3 AND position = "
         "2",
         "identity 3: is not what"},
        {"DELETE FROM identity_certificate WHERE identity = 3 AND position = 2",
         "identity 3: is not what"},
        {"DELETE FROM identity_certificate WHERE identity = 3", "identity 3: has no certificate"},
        {"UPDATE identity_key SET encrypted_key = (SELECT encrypted_key FROM identity_key WHERE "
         "identity = 4) WHERE identity = 3",
         "key of identity 3: is not what"},
        {"UPDATE identity_key SET wrong_passphrases = 0, last_wrong_at = NULL",
         "key of identity 3: is not what"},
        {"UPDATE identity_key SET last_wrong_at = '2026-11-25T09:30:01Z' WHERE identity = 3",
         "key of identity 3: is not what"},
        {"UPDATE identity_key SET last_wrong_at = 'once' WHERE identity = 3",
         "identity 3: holds a time that is none"},
        {"DELETE FROM identity_key WHERE identity = 4", "key of identity 4: is gone"},
        {"DELETE FROM identity_withdrawal", "withdrawal of identity 8: is gone"},
        {"UPDATE identity_withdrawal SET reason = 'replaced'",
         "withdrawal of identity 8: is not what"},
        {"UPDATE identity_withdrawal SET remark = ''", "withdrawal of identity 8: is not what"},
        {"UPDATE identity_withdrawal SET history_sequence = 1",
         "withdrawal of identity 8: is not what"},
        {"UPDATE identity_withdrawal SET identity = 7", "withdrawal of identity 8: is gone"},
        {"UPDATE revocation_list SET list = x'3000' WHERE number = 2",
         "revocation list 2: is not what"},
        {"DELETE FROM revocation_list WHERE number = 2", "revocation list 2: is gone"},
        {"INSERT INTO revocation_list VALUES (3, x'3000')",
         "revocation list 3: is stored, but not in the history"},
        {"UPDATE archive_key SET public_key = x'3000'", "archive key 1: is not what"},
        {"UPDATE archive_key SET sealed_from = 2", "archive key 1: is not what"},
        {"INSERT INTO archive_key VALUES (2, x'3000', 999)",
         "archive key 2: is stored, but not in the history"},
    };
    const QString original = QString::fromStdString(pathOf("original"));
    const QString file = QString::fromStdString(path());
    ASSERT_TRUE(QFile::copy(file, original));
    for (const auto& one : kCases) {
        QFile::remove(file);
        ASSERT_TRUE(QFile::copy(original, file));
        alter(one.sql);
        EXPECT_THAT(findings(), Contains(HasSubstr(one.finding))) << one.sql;
    }
}

}  // namespace
}  // namespace model
