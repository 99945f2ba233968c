// SPDX-License-Identifier: Apache-2.0
#include "archive/identity_store.h"

#include <algorithm>

#include "archive/people.h"
#include "archive/stored_words.h"
#include "base/clock.h"
#include "base/digest.h"
#include "base/word_table.h"
#include "trust/revocation_list.h"

namespace model {
namespace {

constexpr WordEntry<IdentityKind> kKinds[] = {
    {IdentityKind::Person, "person"},
    {IdentityKind::OwnAuthority, "own authority"},
    {IdentityKind::TrustedAuthority, "trusted authority"},
};

constexpr WordEntry<RevocationReason> kReasons[] = {
    {RevocationReason::Unspecified, "not stated"},
    {RevocationReason::KeyCompromise, "key may be known to others"},
    {RevocationReason::PositionChanged, "position changed"},
    {RevocationReason::Superseded, "replaced"},
    {RevocationReason::NotNeeded, "no longer needed"},
};

std::string nameOf(std::int64_t number) {
    return "identity " + std::to_string(number);
}

Result<std::vector<std::string>> certificatesOf(const Connection& connection,
                                                std::int64_t identity) {
    SqlStatement statement(connection,
                           "SELECT certificate FROM identity_certificate WHERE identity = ? "
                           "ORDER BY position");
    if (auto done = statement.run(identity); !done) return done.error();
    std::vector<std::string> certificates;
    auto read = eachRow(statement, [&](const SqlStatement& row) -> Result<void> {
        certificates.push_back(row.blob(0));
        return {};
    });
    if (!read) return read.error();
    if (certificates.empty()) return connection.damaged(nameOf(identity), "has no certificate");
    return certificates;
}

Result<IdentityRow> rowFrom(const Connection& connection, const SqlStatement& columns) {
    IdentityRow row;
    row.number = columns.whole(0);
    const auto kind =
        known(connection, valueIn(kKinds, columns.text(1)), nameOf(row.number), columns.text(1));
    if (!kind) return kind.error();
    row.kind = *kind;
    row.personId = columns.textOrNone(2).value_or("");
    row.identity.encryptedKey = columns.isNone(4) ? "" : columns.blob(4);
    row.attempts.count = static_cast<int>(columns.wholeOrNone(5).value_or(0));
    if (const auto last = columns.textOrNone(6)) {
        const auto time = timeFrom(*last);
        if (!time) return connection.damaged(nameOf(row.number), "holds a time that is none");
        row.attempts.last = *time;
    }
    if (!columns.isNone(7)) {
        const auto since = timeFrom(columns.text(8));
        if (!since) return connection.damaged(nameOf(row.number), "holds a time that is none");
        row.withdrawal = Withdrawal{columns.whole(7), *since, columns.text(9), columns.text(10)};
    }
    auto certificates = certificatesOf(connection, row.number);
    if (!certificates) return certificates.error();
    row.identity.certificates = std::move(*certificates);
    if (fingerprintOf(row) != columns.text(3))
        return connection.damaged(nameOf(row.number), "has not the fingerprint of its certificate");
    return row;
}

constexpr char kSelect[] =
    "SELECT number, kind, person_id, fingerprint, encrypted_key, wrong_passphrases, "
    "last_wrong_at, history_sequence, happened_at, reason, remark FROM identity "
    "LEFT JOIN identity_key ON identity_key.identity = number "
    "LEFT JOIN identity_withdrawal ON identity_withdrawal.identity = number "
    "LEFT JOIN history ON sequence = history_sequence ";

Result<std::optional<IdentityRow>> oneOf(const Connection& connection, SqlStatement& statement,
                                         const Result<bool>& there) {
    if (!there) return there.error();
    if (!*there) return std::optional<IdentityRow>();
    auto row = rowFrom(connection, statement);
    if (!row) return row.error();
    return std::optional(std::move(*row));
}

}  // namespace

std::string_view wordOf(RevocationReason reason) {
    return wordIn(kReasons, reason);
}

std::optional<RevocationReason> revocationReasonFrom(std::string_view word) {
    return valueIn(kReasons, word);
}

std::string fingerprintOf(const IdentityRow& row) {
    return toHex(sha256(row.identity.certificates.front()));
}

bool isOwnIssued(const IdentityRow& row, const std::vector<IdentityRow>& rows) {
    const auto own = std::ranges::find(rows, IdentityKind::OwnAuthority, &IdentityRow::kind);
    const auto& certificates = row.identity.certificates;
    return row.kind == IdentityKind::Person && own != rows.end() && certificates.size() > 1 &&
           certificates[1] == own->identity.certificates.front();
}

Result<std::int64_t> nextIdentityNumber(const Connection& connection) {
    SqlStatement statement(connection, "SELECT coalesce(max(number), 0) + 1 FROM identity");
    const auto row = statement.first();
    if (!row) return row.error();
    return statement.whole(0);
}

Result<void> addIdentity(const Connection& connection, const IdentityRow& row) {
    const std::string fingerprint = fingerprintOf(row);
    SqlStatement find(connection, "SELECT count(*) FROM identity WHERE fingerprint = ?");
    const auto found = find.first(fingerprint);
    if (!found) return found.error();
    if (find.whole(0) != 0)
        return inputError(connection.place(), "has the certificate %1 already", {fingerprint});
    SqlStatement add(connection,
                     "INSERT INTO identity (number, kind, person_id, fingerprint) "
                     "VALUES (?, ?, ?, ?)");
    const auto person = row.personId.empty() ? std::nullopt : std::optional(row.personId);
    if (auto done = add.run(row.number, wordIn(kKinds, row.kind), person, fingerprint); !done)
        return done;
    SqlStatement certificate(connection,
                             "INSERT INTO identity_certificate (identity, position, certificate) "
                             "VALUES (?, ?, ?)");
    std::int64_t position = 0;
    for (const std::string& bytes : row.identity.certificates)
        if (auto done = certificate.run(row.number, ++position, Blob{bytes}); !done) return done;
    if (row.identity.encryptedKey.empty()) return {};
    SqlStatement key(connection,
                     "INSERT INTO identity_key (identity, encrypted_key, wrong_passphrases, "
                     "last_wrong_at) VALUES (?, ?, 0, NULL)");
    return key.run(row.number, Blob{row.identity.encryptedKey});
}

Result<void> addWithdrawal(const Connection& connection, std::int64_t identity,
                           const Withdrawal& withdrawal) {
    SqlStatement add(connection,
                     "INSERT INTO identity_withdrawal (identity, history_sequence, reason, "
                     "remark) VALUES (?, ?, ?, ?)");
    return add.run(identity, withdrawal.row, withdrawal.reason, withdrawal.remark);
}

Result<std::vector<IdentityRow>> loadIdentities(const Connection& connection) {
    SqlStatement statement(connection, std::string(kSelect) + "ORDER BY number");
    if (auto done = statement.run(); !done) return done.error();
    std::vector<IdentityRow> rows;
    auto read = eachRow(statement, [&](const SqlStatement& columns) -> Result<void> {
        auto row = rowFrom(connection, columns);
        if (!row) return row.error();
        rows.push_back(std::move(*row));
        return {};
    });
    if (!read) return read.error();
    return rows;
}

Result<std::optional<IdentityRow>> currentIdentity(const Connection& connection,
                                                   const std::string& personId) {
    SqlStatement statement(connection, std::string(kSelect) +
                                           "WHERE number = (SELECT max(number) FROM identity "
                                           "WHERE person_id = ?) AND history_sequence IS NULL");
    return oneOf(connection, statement, statement.first(personId));
}

Result<std::optional<IdentityRow>> ownAuthority(const Connection& connection) {
    SqlStatement statement(connection, std::string(kSelect) + "WHERE kind = ?");
    return oneOf(connection, statement,
                 statement.first(wordIn(kKinds, IdentityKind::OwnAuthority)));
}

Result<void> checkAdministratorLeft(const Connection& connection) {
    SqlStatement statement(
        connection,
        "SELECT count(*) FROM person, person_role, identity WHERE active = 1 AND role = ? "
        "AND person_role.person_id = person.id AND identity.person_id = person.id "
        "AND number = (SELECT max(number) FROM identity WHERE identity.person_id = person.id) "
        "AND number NOT IN (SELECT identity FROM identity_withdrawal)");
    const auto row = statement.first(word(Role::Administrator));
    if (!row) return row.error();
    if (statement.whole(0) == 0)
        return inputError(connection.place(),
                          "needs an active administrator with an identity: make another person one "
                          "first");
    return {};
}

Result<void> saveKey(const Connection& connection, const IdentityRow& row) {
    SqlStatement statement(connection,
                           "UPDATE identity_key SET encrypted_key = ?, wrong_passphrases = ?, "
                           "last_wrong_at = ? WHERE identity = ?");
    const std::optional<std::string> last =
        row.attempts.count == 0 ? std::nullopt : std::optional(toText(row.attempts.last));
    return statement.run(Blob{row.identity.encryptedKey}, row.attempts.count, last, row.number);
}

Result<std::vector<RevocationListRow>> loadRevocationLists(const Connection& connection) {
    SqlStatement statement(connection, "SELECT number, list FROM revocation_list ORDER BY number");
    if (auto done = statement.run(); !done) return done.error();
    std::vector<RevocationListRow> lists;
    auto read = eachRow(statement, [&](const SqlStatement& row) -> Result<void> {
        lists.push_back({row.whole(0), row.blob(1)});
        return {};
    });
    if (!read) return read.error();
    return lists;
}

Result<std::vector<std::string>> revocationListsInForce(const Connection& connection) {
    auto rows = loadRevocationLists(connection);
    if (!rows) return rows.error();
    const auto own = ownAuthority(connection);
    if (!own) return own.error();
    std::vector<std::string> lists;
    bool hasOwn = false;
    for (auto row = rows->rbegin(); row != rows->rend(); ++row) {
        const bool isOwn = *own && isOfIssuer(row->list, (*own)->identity.certificates.front());
        if (!(isOwn && hasOwn)) lists.push_back(std::move(row->list));
        hasOwn = hasOwn || isOwn;
    }
    return lists;
}

Result<void> addRevocationList(const Connection& connection, const RevocationListRow& row) {
    SqlStatement add(connection, "INSERT INTO revocation_list (number, list) VALUES (?, ?)");
    return add.run(row.number, Blob{row.list});
}

Result<TrustedCertificates> loadTrusted(const Connection& connection) {
    const auto rows = loadIdentities(connection);
    if (!rows) return rows.error();
    auto lists = revocationListsInForce(connection);
    if (!lists) return lists.error();
    TrustedCertificates trusted;
    trusted.revocationLists = std::move(*lists);
    for (const IdentityRow& row : *rows) {
        const auto& certificates = row.identity.certificates;
        if (row.kind == IdentityKind::Person)
            trusted.intermediates.insert(trusted.intermediates.end(), certificates.begin() + 1,
                                         certificates.end());
        else
            trusted.anchors.push_back(certificates.front());
    }
    return trusted;
}

Canonical::Object canonicalOf(const RevocationListRow& row) {
    Canonical::Object object;
    object["number"] = row.number;
    object["sha256"] = toHex(sha256(row.list));
    return object;
}

Canonical::Object canonicalOf(const IdentityRow& row) {
    Canonical::Object object;
    object["kind"] = wordIn(kKinds, row.kind);
    if (!row.personId.empty()) object["person"] = row.personId;
    Canonical::Array certificates;
    for (const std::string& bytes : row.identity.certificates)
        certificates.emplace_back(toHex(sha256(bytes)));
    object["certificates"] = std::move(certificates);
    return object;
}

Canonical::Object canonicalKeyOf(const IdentityRow& row) {
    Canonical::Object object;
    object["encrypted_key_sha256"] = toHex(sha256(row.identity.encryptedKey));
    object["wrong_passphrases"] = row.attempts.count;
    if (row.attempts.count != 0) object["last_wrong_at"] = toText(row.attempts.last);
    return object;
}

}  // namespace model
