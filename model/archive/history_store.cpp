// SPDX-License-Identifier: Apache-2.0
#include "archive/history_store.h"

#include <algorithm>

namespace model {
namespace {

constexpr char kFormat[] = "fettlemark-history/1";

Result<Digest> digestFrom(const Connection& connection, std::int64_t sequence,
                          const std::string& blob) {
    Digest digest;
    if (blob.size() != digest.size())
        return connection.damaged("history row " + std::to_string(sequence),
                                  "has a hash of a wrong length");
    std::ranges::transform(blob, digest.begin(),
                           [](char c) { return static_cast<std::uint8_t>(c); });
    return digest;
}

/// From the first seven columns: sequence, happened_at, person, action, subject, bytes, hash.
Result<HistoryEntry> entryFrom(const Connection& connection, const SqlStatement& row) {
    const auto hash = digestFrom(connection, row.whole(0), row.blob(6));
    if (!hash) return hash.error();
    return HistoryEntry{row.whole(0), row.text(1), row.text(2), row.text(3),
                        row.text(4),  row.blob(5), *hash};
}

std::string_view asBytes(const Digest& digest) {
    return {reinterpret_cast<const char*>(digest.data()), digest.size()};
}

}  // namespace

Result<std::string> historyBytes(std::int64_t sequence, const std::string& time,
                                 const std::string& person, const std::string& action,
                                 const std::string& subject, Canonical::Object content) {
    Canonical::Object row;
    row["format"] = kFormat;
    row["sequence"] = sequence;
    row["time"] = time;
    row["person"] = person;
    row["action"] = action;
    row["subject"] = subject;
    row["content"] = std::move(content);
    return canonicalBytes(row);
}

const std::string* signerOf(const Canonical& content) {
    const Canonical* signer = content.member("signer");
    return signer ? signer->text() : nullptr;
}

bool saysTheSame(const Canonical& row, const HistoryEntry& entry) {
    const auto says = [&](const char* key, std::string_view text) {
        const Canonical* member = row.member(key);
        return member && member->text() && *member->text() == text;
    };
    const Canonical* sequence = row.member("sequence");
    const Canonical* content = row.member("content");
    constexpr std::size_t kMembers = 7;
    return sequence && sequence->whole() && *sequence->whole() == entry.sequence &&
           says("format", kFormat) && says("time", entry.time) && says("person", entry.person) &&
           says("action", entry.action) && says("subject", entry.subject) && content &&
           content->object() && row.object()->size() == kMembers;
}

Result<Head> appendHistory(const Connection& connection, const std::string& time,
                           const std::string& person, const std::string& action,
                           const std::string& subject, Canonical::Object content) {
    const auto head = historyHead(connection);
    if (!head) return head.error();
    const std::int64_t sequence = head->sequence + 1;
    const auto bytes = historyBytes(sequence, time, person, action, subject, std::move(content));
    if (!bytes) return bytes.error();
    const Digest hash = chained(head->hash, *bytes);
    SqlStatement statement(connection,
                           "INSERT INTO history (sequence, happened_at, person, action, subject, "
                           "bytes, hash) VALUES (?, ?, ?, ?, ?, ?, ?)");
    auto added =
        statement.run(sequence, time, person, action, subject, Blob{*bytes}, Blob{asBytes(hash)});
    if (!added) return added.error();
    return Head{sequence, hash};
}

Result<void> appendSeal(const Connection& connection, const Head& head, const SealKey& key) {
    const auto signature = key.seal(head.hash);
    if (!signature) return signature.error();
    SqlStatement statement(connection,
                           "INSERT INTO history_seal (sequence, signature) VALUES (?, ?)");
    return statement.run(head.sequence, Blob{*signature});
}

Result<void> appendSignature(const Connection& connection, std::int64_t sequence,
                             std::int64_t identity, std::string_view signature) {
    SqlStatement statement(connection,
                           "INSERT INTO history_signature (sequence, identity, signature) "
                           "VALUES (?, ?, ?)");
    return statement.run(sequence, identity, Blob{signature});
}

Result<Head> historyHead(const Connection& connection) {
    SqlStatement statement(connection,
                           "SELECT sequence, hash FROM history ORDER BY sequence DESC LIMIT 1");
    const auto row = statement.first();
    if (!row) return row.error();
    if (!*row) return Head();
    const auto hash = digestFrom(connection, statement.whole(0), statement.blob(1));
    if (!hash) return hash.error();
    return Head{statement.whole(0), *hash};
}

Result<void> readHistory(const Connection& connection, std::int64_t from,
                         const std::function<bool(HistoryEntry)>& take) {
    SqlStatement statement(connection,
                           "SELECT sequence, happened_at, person, action, subject, bytes, hash "
                           "FROM history WHERE sequence >= ? ORDER BY sequence");
    if (auto done = statement.run(from); !done) return done;
    while (true) {
        const auto row = statement.next();
        if (!row) return row.error();
        if (!*row) return {};
        auto entry = entryFrom(connection, statement);
        if (!entry) return entry.error();
        if (!take(std::move(*entry))) return {};
    }
}

Result<void> readHistoryWithProofs(
    const Connection& connection,
    const std::function<bool(const HistoryEntry&, const Proofs&)>& take) {
    SqlStatement statement(
        connection,
        "SELECT history.sequence, happened_at, person, action, subject, bytes, hash, "
        "history_seal.signature, history_signature.signature, identity FROM history "
        "LEFT JOIN history_seal ON history_seal.sequence = history.sequence "
        "LEFT JOIN history_signature ON history_signature.sequence = history.sequence "
        "ORDER BY history.sequence");
    if (auto done = statement.run(); !done) return done;
    while (true) {
        const auto row = statement.next();
        if (!row) return row.error();
        if (!*row) return {};
        const auto entry = entryFrom(connection, statement);
        if (!entry) return entry.error();
        Proofs proofs;
        if (!statement.isNone(7)) proofs.seal = statement.blob(7);
        if (!statement.isNone(8)) proofs.signature = statement.blob(8);
        proofs.identity = statement.wholeOrNone(9).value_or(0);
        if (!take(*entry, proofs)) return {};
    }
}

}  // namespace model
