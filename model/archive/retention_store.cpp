// SPDX-License-Identifier: Apache-2.0
#include "archive/retention_store.h"

#include <algorithm>

#include "archive/dialect.h"
#include "archive/stored_words.h"

namespace model {
namespace {

Result<std::vector<Retention>> loadWhere(const Connection& connection, const std::string& condition,
                                         const SqlStatement::Values& values) {
    SqlStatement statement(connection,
                           "SELECT order_number, version, keep_until, hold FROM retention WHERE " +
                               condition + " ORDER BY order_number");
    if (auto done = statement.runWith(values); !done) return done.error();
    std::vector<Retention> all;
    auto read = eachRow(statement, [&](const SqlStatement& row) -> Result<void> {
        all.push_back({row.text(0), row.whole(1), row.textOrNone(2), row.textOrNone(3)});
        return {};
    });
    if (!read) return read.error();
    return all;
}

}  // namespace

Result<void> checkOrder(const Connection& connection, const std::string& order) {
    SqlStatement statement(connection, "SELECT count(*) FROM customer_order WHERE number = ?");
    const auto row = statement.first(order);
    if (!row) return row.error();
    if (statement.whole(0) == 0) return inputError(connection.place(), "has no order %1", {order});
    return {};
}

Result<Retention> loadRetention(const Connection& connection, const std::string& order) {
    auto found = loadWhere(connection, "order_number = ?", {order});
    if (!found) return found.error();
    if (found->empty()) return Retention{order, 0, {}, {}};
    return std::move(found->front());
}

Result<std::vector<Retention>> loadRetentions(const Connection& connection) {
    return loadWhere(connection, "version >= 1", {});
}

Result<void> storeRetention(const Connection& connection, const Retention& retention) {
    if (retention.version == 1) {
        SqlStatement add(connection,
                         "INSERT INTO retention (order_number, version, keep_until, hold) "
                         "VALUES (?, ?, ?, ?)");
        return add.run(retention.order, retention.version, retention.keepUntil, retention.hold);
    }
    SqlStatement change(
        connection,
        "UPDATE retention SET version = ?, keep_until = ?, hold = ? WHERE order_number = ?");
    return change.run(retention.version, retention.keepUntil, retention.hold, retention.order);
}

Canonical::Object canonicalOf(const Retention& retention) {
    Canonical::Object object;
    object["version"] = retention.version;
    if (retention.keepUntil) object["keep_until"] = *retention.keepUntil;
    if (retention.hold) object["hold"] = *retention.hold;
    return object;
}

Result<std::vector<std::string>> namedFiles(const Connection& connection) {
    const auto tables = dialect::tablesWithColumn(connection, "file_sha256");
    if (!tables) return tables.error();
    std::vector<std::string> digests;
    for (const std::string& table : *tables) {
        SqlStatement statement(
            connection, "SELECT file_sha256 FROM " + table + " WHERE file_sha256 IS NOT NULL");
        auto row = statement.first();
        for (; row && *row; row = statement.next()) digests.push_back(statement.text(0));
        if (!row) return row.error();
    }
    std::ranges::sort(digests);
    digests.erase(std::unique(digests.begin(), digests.end()), digests.end());
    return digests;
}

Result<std::vector<DisposedFile>> disposedFiles(const Connection& connection,
                                                std::optional<std::int64_t> number) {
    SqlStatement statement(connection,
                           std::string("SELECT number, bytes FROM history JOIN disposal "
                                       "ON history_sequence = sequence") +
                               (number ? " WHERE number = ?" : ""));
    auto row = number ? statement.first(*number) : statement.first();
    std::vector<DisposedFile> gone;
    for (; row && *row; row = statement.next()) {
        const auto said = parseCanonical(statement.blob(1));
        if (!said) return said.error();
        const Canonical* content = said->member("content");
        const Canonical* files = content ? content->member("files") : nullptr;
        if (!files || !files->array())
            return connection.damaged("disposal " + std::to_string(statement.whole(0)),
                                      "names no files");
        for (const Canonical& digest : *files->array())
            if (digest.text()) gone.push_back({statement.whole(0), *digest.text()});
    }
    if (!row) return row.error();
    if (gone.empty()) return gone;
    const auto named = namedFiles(connection);
    if (!named) return named.error();
    std::erase_if(gone, [&](const DisposedFile& file) {
        return std::ranges::binary_search(*named, file.digest);
    });
    return gone;
}

}  // namespace model
