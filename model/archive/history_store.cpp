// SPDX-License-Identifier: Apache-2.0
#include "archive/history_store.h"

#include <algorithm>

namespace model {
namespace {

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

std::string_view asBytes(const Digest& digest) {
    return {reinterpret_cast<const char*>(digest.data()), digest.size()};
}

}  // namespace

Result<std::string> historyBytes(std::int64_t sequence, const std::string& time,
                                 const std::string& person, const std::string& action,
                                 const std::string& subject, Canonical::Object content) {
    Canonical::Object row;
    row["format"] = "fettlemark-history/1";
    row["sequence"] = sequence;
    row["time"] = time;
    row["person"] = person;
    row["action"] = action;
    row["subject"] = subject;
    row["content"] = std::move(content);
    return canonicalBytes(row);
}

bool isSignedAct(std::string_view action) {
    static constexpr std::string_view kSigned[] = {
        action::kAuthorityMade,    action::kAuthorityTrusted, action::kPersonSaved,
        action::kIdentityIssued,   action::kIdentityImported, action::kIdentityWithdrawn,
        action::kPassphraseChanged};
    return std::ranges::find(kSigned, action) != std::end(kSigned);
}

const std::string* signerOf(const Canonical& content) {
    const Canonical* signer = content.member("signer");
    return signer ? signer->text() : nullptr;
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
        const auto hash = digestFrom(connection, statement.whole(0), statement.blob(6));
        if (!hash) return hash.error();
        HistoryEntry entry{statement.whole(0),
                           statement.text(1),
                           statement.text(2),
                           statement.text(3),
                           statement.text(4),
                           statement.blob(5),
                           *hash};
        if (!take(std::move(entry))) return {};
    }
}

}  // namespace model
