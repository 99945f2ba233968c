// SPDX-License-Identifier: Apache-2.0
// All that is particular to the database in use, SQLite; every other statement in this folder is
// SQL that PostgreSQL takes as well. Another database gets its own dialect_*.cpp and schema files.
#pragma once

#include <map>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "archive/connection.h"

namespace model::dialect {

/// Marks a database as a Fettlemark archive: "FtMk".
inline constexpr std::int64_t kApplicationId = 0x46744d6b;

/// How long a write waits for another program's.
inline constexpr int kWaitMilliseconds = 5000;

/// Opens the existing database at the absolute path; never makes one.
Result<std::unique_ptr<Connection>> openDatabase(const std::string& path);

/// Opens an existing database that nobody writes to meanwhile, without writing anything beside
/// it: no log, no lock. What stands in a log beside it is not seen.
Result<std::unique_ptr<Connection>> openUnchanging(const std::string& path);

/// Whether a log with entries lies beside the database.
bool hasLog(const std::string& path);

/// Nothing can be written through this connection any more; damaged pages are looked for with
/// more care.
Result<void> keepFromWriting(const Connection& connection);

/// Sets up a connection for work: foreign keys checked, every commit on the disk before it
/// returns, readers beside one writer. Only once the database is known to be an archive.
Result<void> settle(const Connection& connection);

Result<std::int64_t> applicationId(const Connection& connection);
Result<std::int64_t> schemaVersion(const Connection& connection);
/// Outside a transaction: from now on what is deleted is overwritten in the file.
Result<void> overwriteDeleted(const Connection& connection);

/// Within a transaction.
Result<void> setApplicationId(const Connection& connection);
/// Within a transaction.
Result<void> setSchemaVersion(const Connection& connection, int version);

/// Outside a transaction: whether foreign keys are checked. A migration may rebuild tables.
Result<void> checkForeignKeys(const Connection& connection, bool check);

/// Starts a transaction that holds the right to write from its first statement on.
Result<void> beginWriting(const Connection& connection);
/// Whether what that began is still open: the database ends it by itself where the disk is full.
bool isWriting(const Connection& connection);

/// Runs a script of several statements, within the caller's transaction.
Result<void> runScript(const Connection& connection, std::string_view script);

/// Writes a copy of the database to `target`, which must not exist, as of one moment and while
/// others write; the copy is on the disk when this returns.
Result<void> copyDatabase(const Connection& connection, const std::string& target);

/// What the database itself finds broken: pages, indexes, constraints, references.
Result<std::vector<std::string>> brokenThings(const Connection& connection);

/// Tables, indexes and triggers ("trigger history_never_changes") with the text that made them.
Result<std::map<std::string, std::string>> schemaObjects(const Connection& connection);

/// The tables that have a column of this name, in the order of their names.
Result<std::vector<std::string>> tablesWithColumn(const Connection& connection,
                                                  const std::string& column);

/// The schema objects that `script` makes, in an empty database of its own.
Result<std::map<std::string, std::string>> schemaObjectsOf(
    const std::vector<std::string_view>& scripts);

}  // namespace model::dialect
