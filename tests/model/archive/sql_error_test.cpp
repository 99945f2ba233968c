// SPDX-License-Identifier: Apache-2.0
#include "archive/sql_error.h"

#include <QSqlError>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace model {
namespace {

using testing::HasSubstr;

// Source: "Result and Extended Result Codes", sqlite.org/rescode.html: the numbers are part of
// SQLite's interface.
TEST(SqlErrorOracle, SaysWhatThePersonCanDo) {
    const struct {
        int code;
        ErrorKind kind;
        const char* says;
    } kCases[] = {
        {5, ErrorKind::Refused, "another program"},           // SQLITE_BUSY
        {517, ErrorKind::Refused, "another program"},         // SQLITE_BUSY_SNAPSHOT
        {6, ErrorKind::Refused, "another program"},           // SQLITE_LOCKED
        {13, ErrorKind::Refused, "disk is full"},             // SQLITE_FULL
        {8, ErrorKind::Refused, "read-only"},                 // SQLITE_READONLY
        {1544, ErrorKind::Refused, "read-only"},              // SQLITE_READONLY_DIRECTORY
        {3, ErrorKind::Refused, "read-only"},                 // SQLITE_PERM
        {14, ErrorKind::Refused, "cannot be opened"},         // SQLITE_CANTOPEN
        {7, ErrorKind::Refused, "memory"},                    // SQLITE_NOMEM
        {266, ErrorKind::Refused, "disk reports"},            // SQLITE_IOERR_READ
        {778, ErrorKind::Refused, "disk reports"},            // SQLITE_IOERR_WRITE
        {8458, ErrorKind::Damaged, "damaged"},                // SQLITE_IOERR_CORRUPTFS
        {11, ErrorKind::Damaged, "damaged"},                  // SQLITE_CORRUPT
        {779, ErrorKind::Damaged, "damaged"},                 // SQLITE_CORRUPT_INDEX
        {26, ErrorKind::Input, "not a Fettlemark archive"},   // SQLITE_NOTADB
        {1811, ErrorKind::Refused, "was not changed: text"},  // SQLITE_CONSTRAINT_TRIGGER
        {2067, ErrorKind::Conflict, "already"},               // SQLITE_CONSTRAINT_UNIQUE
        {1555, ErrorKind::Conflict, "already"},               // SQLITE_CONSTRAINT_PRIMARYKEY
        {787, ErrorKind::Input, "refers to"},                 // SQLITE_CONSTRAINT_FOREIGNKEY
        {275, ErrorKind::Input, "does not take"},             // SQLITE_CONSTRAINT_CHECK
        {3091, ErrorKind::Input, "does not take"},            // SQLITE_CONSTRAINT_DATATYPE
        {18, ErrorKind::Input, "size"},                       // SQLITE_TOOBIG
        {1, ErrorKind::Refused, "code 1"},                    // SQLITE_ERROR
    };
    for (const auto& one : kCases) {
        const Error error = sqlError(
            QSqlError("driver", "text", QSqlError::StatementError, QString::number(one.code)),
            "works.fettlemark");
        EXPECT_EQ(error.kind, one.kind) << one.code;
        EXPECT_THAT(error.message(), HasSubstr("works.fettlemark: ")) << one.code;
        EXPECT_THAT(error.message(), HasSubstr(one.says)) << one.code;
    }
}

TEST(SqlErrors, ThatSpeakOfAnotherSchemaAreDamage) {
    for (const char* text : {"no such table: casting", "no such column: heat",
                             "foreign key mismatch - \"a\" referencing \"b\""}) {
        const Error error =
            sqlError(QSqlError("driver", text, QSqlError::StatementError, "1"), "works.fettlemark");
        EXPECT_EQ(error.kind, ErrorKind::Damaged);
        EXPECT_THAT(error.message(), HasSubstr(text));
    }
}

}  // namespace
}  // namespace model
