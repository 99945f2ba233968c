// SPDX-License-Identifier: Apache-2.0
#include <QUrl>
#include <filesystem>
#include <sqlite3.h>

#include "archive/dialect.h"
#include "archive/disk.h"

namespace model::dialect {
namespace {

Result<std::int64_t> pragmaValue(const Connection& connection, const char* pragma) {
    SqlStatement statement(connection, pragma);
    const auto row = statement.first();
    if (!row) return row.error();
    if (!*row) return connection.damaged(pragma, "gives no value");
    return statement.whole(0);
}

Result<void> setTextPragma(const Connection& connection, const char* pragma,
                           const std::string& expected) {
    SqlStatement statement(connection, pragma);
    const auto row = statement.first();
    if (!row) return row.error();
    if (!*row || statement.text(0) != expected)
        return refusal(connection.place(), "cannot be used safely on this disk: %1 has no effect",
                       {pragma});
    return {};
}

/// One statement of a script, cut off its front. Semicolons inside a trigger do not end it.
std::string takeStatement(std::string_view& script) {
    std::string statement;
    while (!script.empty()) {
        const auto end = script.find(';');
        const auto length = end == std::string_view::npos ? script.size() : end + 1;
        statement += script.substr(0, length);
        script.remove_prefix(length);
        if (sqlite3_complete(statement.c_str()) != 0) break;
    }
    return statement;
}

/// Nothing but spaces and comments; what is left after a script's last statement.
bool isEmptyStatement(std::string_view text) {
    while (!text.empty()) {
        const auto start = text.find_first_not_of(" \t\r\n;");
        if (start == std::string_view::npos) return true;
        text.remove_prefix(start);
        if (!text.starts_with("--")) return false;
        const auto end = text.find('\n');
        if (end == std::string_view::npos) return true;
        text.remove_prefix(end);
    }
    return true;
}

Result<std::unique_ptr<Connection>> openUri(const std::string& path, const char* parameters) {
    const QByteArray encoded = QUrl::toPercentEncoding(QString::fromStdString(path), "/");
    return Connection::open(
        "QSQLITE", "file:" + QString::fromLatin1(encoded) + "?" + parameters,
        QStringLiteral("QSQLITE_OPEN_URI;QSQLITE_BUSY_TIMEOUT=%1").arg(kWaitMilliseconds), path);
}

}  // namespace

Result<std::unique_ptr<Connection>> openDatabase(const std::string& path) {
    // As a URI, because only its mode keeps SQLite from making a file that is not there.
    return openUri(path, "mode=rw");
}

Result<std::unique_ptr<Connection>> openUnchanging(const std::string& path) {
    return openUri(path, "mode=ro&immutable=1");
}

bool hasLog(const std::string& path) {
    std::error_code missing;
    const auto size = std::filesystem::file_size(path + "-wal", missing);
    return !missing && size > 0;
}

Result<void> keepFromWriting(const Connection& connection) {
    for (const char* pragma : {"PRAGMA query_only = ON", "PRAGMA cell_size_check = ON"})
        if (auto done = connection.execute(pragma); !done) return done;
    return {};
}

Result<void> settle(const Connection& connection) {
    if (auto done = setTextPragma(connection, "PRAGMA journal_mode = WAL", "wal"); !done)
        return done;
    for (const char* pragma : {"PRAGMA synchronous = FULL", "PRAGMA recursive_triggers = ON"})
        if (auto done = connection.execute(pragma); !done) return done;
    return checkForeignKeys(connection, true);
}

Result<std::int64_t> applicationId(const Connection& connection) {
    return pragmaValue(connection, "PRAGMA application_id");
}

Result<std::int64_t> schemaVersion(const Connection& connection) {
    return pragmaValue(connection, "PRAGMA user_version");
}

Result<void> overwriteDeleted(const Connection& connection) {
    // The pragma answers with its new value.
    SqlStatement statement(connection, "PRAGMA secure_delete = ON");
    const auto row = statement.first();
    if (!row) return row.error();
    return {};
}

Result<void> setApplicationId(const Connection& connection) {
    return connection.execute(QStringLiteral("PRAGMA application_id = %1").arg(kApplicationId));
}

Result<void> setSchemaVersion(const Connection& connection, int version) {
    return connection.execute(QStringLiteral("PRAGMA user_version = %1").arg(version));
}

Result<void> checkForeignKeys(const Connection& connection, bool check) {
    // The pragma is silently without effect where it cannot be obeyed.
    if (auto done =
            connection.execute(QStringLiteral("PRAGMA foreign_keys = %1").arg(check ? 1 : 0));
        !done)
        return done;
    const auto now = pragmaValue(connection, "PRAGMA foreign_keys");
    if (!now) return now.error();
    if (*now != check)
        return refusal(connection.place(), "cannot be used safely: foreign keys stay unchecked");
    return {};
}

Result<void> beginWriting(const Connection& connection) {
    // A plain BEGIN would fail at once, without waiting, where it reads before it writes and
    // another program wrote in between.
    return connection.execute("BEGIN IMMEDIATE");
}

bool isWriting(const Connection& connection) {
    // There is no question for it, but a second transaction is refused within one.
    if (!connection.execute("BEGIN")) return true;
    static_cast<void>(connection.execute("ROLLBACK"));
    return false;
}

Result<void> runScript(const Connection& connection, std::string_view script) {
    while (!script.empty()) {
        const std::string statement = takeStatement(script);
        if (isEmptyStatement(statement)) continue;
        if (auto done = connection.execute(QString::fromStdString(statement)); !done) return done;
    }
    return {};
}

Result<void> copyDatabase(const Connection& connection, const std::string& target) {
    SqlStatement statement(connection, "VACUUM INTO ?");
    if (auto done = statement.run(target); !done) return done;
    return syncFile(target);
}

Result<std::vector<std::string>> brokenThings(const Connection& connection) {
    std::vector<std::string> broken;
    SqlStatement pages(connection, "PRAGMA integrity_check");
    if (auto done = pages.run(); !done) return done.error();
    while (true) {
        const auto row = pages.next();
        if (!row) return row.error();
        if (!*row) break;
        if (std::string text = pages.text(0); text != "ok") broken.push_back(std::move(text));
    }
    SqlStatement references(connection, "PRAGMA foreign_key_check");
    if (auto done = references.run(); !done) return done.error();
    while (true) {
        const auto row = references.next();
        if (!row) return row.error();
        if (!*row) break;
        broken.push_back("a row of " + references.text(0) + " refers to a row of " +
                         references.text(2) + " that is not there");
    }
    return broken;
}

Result<std::map<std::string, std::string>> schemaObjects(const Connection& connection) {
    std::map<std::string, std::string> objects;
    SqlStatement statement(connection,
                           "SELECT type, name, sql FROM sqlite_schema WHERE sql IS NOT NULL");
    if (auto done = statement.run(); !done) return done.error();
    while (true) {
        const auto row = statement.next();
        if (!row) return row.error();
        if (!*row) return objects;
        objects[statement.text(0) + " " + statement.text(1)] = statement.text(2);
    }
}

Result<std::vector<std::string>> tablesWithColumn(const Connection& connection,
                                                  const std::string& column) {
    SqlStatement statement(connection,
                           "SELECT s.name FROM sqlite_schema AS s JOIN pragma_table_info(s.name) "
                           "AS c WHERE s.type = 'table' AND c.name = ? ORDER BY s.name");
    if (auto done = statement.run(column); !done) return done.error();
    std::vector<std::string> tables;
    while (true) {
        const auto row = statement.next();
        if (!row) return row.error();
        if (!*row) return tables;
        tables.push_back(statement.text(0));
    }
}

Result<std::map<std::string, std::string>> schemaObjectsOf(
    const std::vector<std::string_view>& scripts) {
    auto connection = Connection::open("QSQLITE", ":memory:", "", "schema");
    if (!connection) return connection.error();
    for (const std::string_view script : scripts)
        if (auto done = runScript(**connection, script); !done) return done.error();
    return schemaObjects(**connection);
}

}  // namespace model::dialect
