// SPDX-License-Identifier: Apache-2.0
#include "archive/sql_error.h"

#include <QSqlError>
#include <sqlite3.h>

namespace model {
namespace {

int extendedCode(const QSqlError& error) {
    return error.nativeErrorCode().toInt();
}

int primaryCode(const QSqlError& error) {
    return extendedCode(error) & 0xff;
}

/// Our own statements fit the schema that we made; where one does not, the schema is another.
bool saysThatTheSchemaIsAnother(const std::string& text) {
    for (const char* start : {"no such table", "no such column", "foreign key mismatch"})
        if (text.starts_with(start)) return true;
    return false;
}

Error constraintError(const QSqlError& error, const std::string& place) {
    std::string text = error.databaseText().toStdString();
    switch (extendedCode(error)) {
        case SQLITE_CONSTRAINT_TRIGGER:
            return refusal(place, "was not changed: %1", {std::move(text)});
        case SQLITE_CONSTRAINT_UNIQUE:
        case SQLITE_CONSTRAINT_PRIMARYKEY:
        case SQLITE_CONSTRAINT_ROWID:
            return {
                ErrorKind::Conflict, place, "has such an entry already (%1)", {std::move(text)}};
        case SQLITE_CONSTRAINT_FOREIGNKEY:
            return inputError(place, "has no entry that the new one refers to (%1)",
                              {std::move(text)});
        default:
            return inputError(place, "does not take this value (%1)", {std::move(text)});
    }
}

}  // namespace

Error sqlError(const QSqlError& error, const std::string& place) {
    std::string text = error.databaseText().toStdString();
    if (text.empty()) text = error.driverText().toStdString();
    switch (primaryCode(error)) {
        case SQLITE_BUSY:
        case SQLITE_LOCKED:
            return refusal(place, "is in use: another program is writing to it; try again");
        case SQLITE_FULL:
            return refusal(place, "cannot be written: the disk is full");
        case SQLITE_READONLY:
        case SQLITE_PERM:
        case SQLITE_AUTH:
            return refusal(place, "cannot be written: it is read-only for this user");
        case SQLITE_CANTOPEN:
            return refusal(place,
                           "cannot be opened: no permission, or its folder cannot be written");
        case SQLITE_NOMEM:
            return refusal(place, "cannot be used: there is not enough memory");
        case SQLITE_IOERR:
            if (extendedCode(error) == SQLITE_IOERR_CORRUPTFS) break;
            return refusal(place,
                           "cannot be read or written: the disk reports an error (%1, code %2)",
                           {std::move(text), std::to_string(extendedCode(error))});
        case SQLITE_CONSTRAINT:
            return constraintError(error, place);
        case SQLITE_TOOBIG:
            return inputError(place, "does not take a value of this size");
        case SQLITE_NOTADB:
            return inputError(place,
                              "is not a Fettlemark archive: it is no database, or its "
                              "beginning is destroyed");
        case SQLITE_CORRUPT:
            break;
        case SQLITE_ERROR:
            if (saysThatTheSchemaIsAnother(text)) break;
            [[fallthrough]];
        default:
            return refusal(place, "was not read or written (%1, code %2)",
                           {std::move(text), error.nativeErrorCode().toStdString()});
    }
    return {ErrorKind::Damaged, place, "is damaged (%1)", {std::move(text)}};
}

}  // namespace model
