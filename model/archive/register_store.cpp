// SPDX-License-Identifier: Apache-2.0
#include "archive/register_store.h"

#include "archive/stored_words.h"

namespace model {
namespace {

/// What comes after every text that begins with `start`, a text of more than no characters.
std::string after(std::string start) {
    ++start.back();
    return start;
}

std::string statementFor(const EntryChoice& choice, SqlStatement::Values& values) {
    std::string sql =
        "SELECT now.history_sequence, now.register, now.entry, now.version, now.casting_serial, "
        "now.file_sha256, now.content FROM register_entry AS now ";
    if (!choice.byKey)
        sql +=
            "JOIN register_entry AS made ON made.register = now.register "
            "AND made.entry = now.entry AND made.version = 1 ";
    sql += "WHERE now.version >= 1";
    const auto require = [&](const char* condition, const std::optional<std::string>& value) {
        if (!value) return;
        sql += condition;
        values.emplace_back(*value);
    };
    require(" AND now.register = ?", choice.registerName);
    require(" AND now.entry = ?", choice.key);
    require(" AND now.entry >= ?", choice.keysFrom);
    if (choice.keysFrom) require(" AND now.entry < ?", after(*choice.keysFrom));
    require(" AND now.casting_serial = ?", choice.casting);
    if (!choice.allVersions)
        sql +=
            " AND NOT EXISTS (SELECT 1 FROM register_entry AS later WHERE later.register = "
            "now.register AND later.entry = now.entry AND later.version > now.version)";
    return sql + (choice.byKey ? " ORDER BY now.register, now.entry, now.version"
                               : " ORDER BY made.history_sequence, now.version");
}

}  // namespace

std::string textIn(const Canonical::Object& content, std::string_view key) {
    const auto found = content.find(key);
    const std::string* text = found == content.end() ? nullptr : found->second.text();
    return text ? *text : std::string();
}

Result<void> addEntry(const Connection& connection, const StoredEntry& entry) {
    const auto content = canonicalBytes(entry.content);
    if (!content) return content.error();
    SqlStatement add(connection,
                     "INSERT INTO register_entry (history_sequence, register, entry, version, "
                     "casting_serial, file_sha256, content) VALUES (?, ?, ?, ?, ?, ?, ?)");
    return add.run(entry.sequence, entry.registerName, entry.key, entry.version, entry.casting,
                   entry.file, *content);
}

Result<std::vector<StoredEntry>> loadEntries(const Connection& connection,
                                             const EntryChoice& choice) {
    SqlStatement::Values values;
    SqlStatement statement(connection, statementFor(choice, values));
    if (auto done = statement.runWith(values); !done) return done.error();
    std::vector<StoredEntry> entries;
    auto read = eachRow(statement, [&](const SqlStatement& row) -> Result<void> {
        StoredEntry entry{row.whole(0),      row.text(1),       row.text(2), row.whole(3),
                          row.textOrNone(4), row.textOrNone(5), {}};
        const auto content = parseCanonical(row.text(6));
        if (!content || !content->object())
            return connection.damaged(entry.registerName + " " + entry.key, "is not understood");
        entry.content = *content->object();
        entries.push_back(std::move(entry));
        return {};
    });
    if (!read) return read.error();
    return entries;
}

}  // namespace model
