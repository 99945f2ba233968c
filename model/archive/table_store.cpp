// SPDX-License-Identifier: Apache-2.0
#include "archive/table_store.h"

#include "archive/history_store.h"
#include "archive/lifecycle_actions.h"
#include "archive/stored_words.h"
#include "base/digest.h"
#include "limits/parser.h"
#include "limits/shipped_tables.h"

namespace model {
namespace {

template <class... Values>
Result<std::vector<StoredTable>> loadWhere(const Connection& connection,
                                           const std::string& condition, const Values&... values) {
    SqlStatement statement(
        connection, "SELECT id, revision, sha256, name, content FROM limit_table " + condition +
                        "ORDER BY id, revision");
    if (auto done = statement.run(values...); !done) return done.error();
    std::vector<StoredTable> tables;
    auto read = eachRow(statement, [&](const SqlStatement& row) -> Result<void> {
        StoredTable table{row.text(0), row.whole(1), row.text(2), row.text(3), row.text(4)};
        if (toHex(sha256(table.text)) != table.digest)
            return connection.damaged("limit table " + table.id, "was altered");
        tables.push_back(std::move(table));
        return {};
    });
    if (!read) return read.error();
    return tables;
}

}  // namespace

Result<void> addLimitTable(WriteTransaction& transaction, const std::string& text,
                           const std::string& name) {
    const Connection& connection = transaction.connection();
    const auto table = parseTable(text, name);
    if (!table) return table.error();
    const std::string digest = toHex(sha256(text));
    SqlStatement find(connection, "SELECT sha256 FROM limit_table WHERE id = ? AND revision = ?");
    const auto row = find.first(table->id, table->revision);
    if (!row) return row.error();
    if (*row && find.text(0) == digest) {
        transaction.leaveAsIs();
        return {};
    }
    if (*row)
        return inputError(name,
                          "differs from the revision %1 of %2 that the archive %3 has; a changed "
                          "table gets a new revision",
                          {std::to_string(table->revision), table->id, connection.place()});
    SqlStatement add(connection,
                     "INSERT INTO limit_table (id, revision, sha256, name, content) "
                     "VALUES (?, ?, ?, ?, ?)");
    if (auto done = add.run(table->id, table->revision, digest, name, text); !done) return done;
    Canonical::Object content;
    content["revision"] = table->revision;
    content["sha256"] = digest;
    content["name"] = name;
    content["text"] = text;
    return transaction.record(action::kTableAdded, table->id, std::move(content));
}

Result<void> keepLimitTable(WriteTransaction& transaction, const std::string& digest) {
    const Connection& connection = transaction.connection();
    SqlStatement find(connection, "SELECT count(*) FROM limit_table WHERE sha256 = ?");
    const auto row = find.first(digest);
    if (!row) return row.error();
    if (find.whole(0) != 0) return {};
    for (const EmbeddedFile& table : shippedTables())
        if (toHex(sha256(table.text)) == digest)
            return addLimitTable(transaction, std::string(table.text), std::string(table.name));
    return inputError(connection.place(), "has no limit table with the SHA-256 %1", {digest});
}

Result<std::vector<StoredTable>> loadLimitTables(const Connection& connection) {
    return loadWhere(connection, "");
}

Result<StoredTable> loadLimitTable(const Connection& connection, const std::string& digest) {
    auto found = loadWhere(connection, "WHERE sha256 = ? ", digest);
    if (!found) return found.error();
    if (found->empty())
        return inputError(connection.place(), "has no limit table with the SHA-256 %1", {digest});
    return std::move(found->front());
}

Result<TableSet> loadTableSet(const Connection& connection) {
    auto tables = TableSet::shipped();
    if (!tables) return tables;
    const auto stored = loadLimitTables(connection);
    if (!stored) return stored.error();
    for (const StoredTable& entry : *stored) {
        auto table = parseTable(entry.text, connection.place() + ": " + entry.name);
        if (!table) return table.error();
        if (auto added = tables->add(std::move(*table)); !added) return added.error();
    }
    auto attested = attestedDigests(connection);
    if (!attested) return attested.error();
    for (const std::string& digest : *attested) tables->setAttested(digest);
    return tables;
}

Result<std::set<std::string>> attestedDigests(const Connection& connection) {
    SqlStatement statement(connection,
                           "SELECT limit_table_sha256 FROM attestation "
                           "JOIN history ON history.sequence = attestation.history_sequence "
                           "WHERE history.action = ? AND NOT EXISTS (SELECT 1 FROM "
                           "attestation_withdrawal WHERE attestation_withdrawal.attestation = "
                           "attestation.history_sequence)");
    if (auto done = statement.run(action::kTableAttested); !done) return done.error();
    std::set<std::string> digests;
    auto read = eachRow(statement, [&](const SqlStatement& row) -> Result<void> {
        digests.insert(row.text(0));
        return {};
    });
    if (!read) return read.error();
    return digests;
}

}  // namespace model
