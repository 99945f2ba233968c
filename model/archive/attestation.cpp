// SPDX-License-Identifier: Apache-2.0
#include "archive/attestation.h"

#include <algorithm>
#include <map>

#include "archive/archive_access.h"
#include "archive/given_reason.h"
#include "archive/lifecycle_actions.h"
#include "archive/signed_record_store.h"
#include "archive/stored_words.h"
#include "archive/table_store.h"
#include "limits/cell_lines.h"
#include "limits/parser.h"
#include "limits/words.h"

namespace model {
namespace {

Result<std::vector<Attestation>> loadAttestations(const Connection& connection) {
    SqlStatement statement(
        connection,
        "SELECT attestation.history_sequence, limit_table_sha256, "
        "history.person, history.happened_at, history.bytes, withdrawal.history_sequence, "
        "withdrawal.person, withdrawn_row.person, withdrawn_row.happened_at, "
        "withdrawal.reason FROM attestation "
        "JOIN history ON history.sequence = attestation.history_sequence "
        "LEFT JOIN attestation_withdrawal AS withdrawal "
        "ON withdrawal.attestation = attestation.history_sequence "
        "LEFT JOIN history AS withdrawn_row "
        "ON withdrawn_row.sequence = withdrawal.history_sequence "
        "ORDER BY attestation.history_sequence");
    if (auto done = statement.run(); !done) return done.error();
    std::vector<Attestation> all;
    auto read = eachRow(statement, [&](const SqlStatement& row) -> Result<void> {
        const auto bytes = parseCanonical(row.blob(4));
        const Canonical* content = bytes ? bytes->member("content") : nullptr;
        const Canonical* copy = content ? content->member("company_copy") : nullptr;
        const Canonical* signer = content ? content->member("signer") : nullptr;
        if (!copy || !copy->text() || !signer || !signer->text())
            return connection.damaged("attestation " + std::to_string(row.whole(0)),
                                      "is not what was signed");
        all.push_back({row.text(1),
                       *copy->text(),
                       {row.whole(0), *signer->text(), row.text(2), row.text(3), ""},
                       actOrNone(row, 5)});
        return {};
    });
    if (!read) return read.error();
    return all;
}

/// How many cells of each grade were in view.
Canonical::Object gradesOf(const LimitTable& table) {
    std::map<std::string, int> counts;
    for (const CellLine& line : cellsOf(table))
        ++counts[line.grade ? std::string(word(*line.grade)) : "unknown"];
    Canonical::Object object;
    for (const auto& [grade, count] : counts) object[grade] = count;
    return object;
}

Result<void> checkNew(const Connection& connection, const std::string& digest) {
    const auto all = loadAttestations(connection);
    if (!all) return all.error();
    for (const Attestation& attested : *all)
        if (attested.tableDigest == digest && !attested.withdrawn)
            return Error{ErrorKind::Conflict,
                         connection.place(),
                         "has this limit table attested already, by %1 at %2",
                         {attested.act.name, attested.act.time}};
    return {};
}

}  // namespace

Result<std::vector<Attestation>> attestations(const Archive& archive) {
    auto all = allAttestations(archive);
    if (all) std::erase_if(*all, [](const Attestation& one) { return one.withdrawn.has_value(); });
    return all;
}

Result<std::vector<Attestation>> allAttestations(const Archive& archive) {
    return loadAttestations(ArchiveAccess::connection(archive));
}

Result<void> attest(Archive& archive, const std::string& tableDigest,
                    const std::string& companyCopy, const SignedIn& qaManager) {
    if (auto checked = checkRole(qaManager, Role::QaManager); !checked) return checked;
    const auto copy = trimmed(companyCopy);
    if (copy.empty())
        return inputError("", "name the company's copy of the standard that it was compared with");
    return ArchiveAccess::write(
        archive, qaManager.actor(), [&](WriteTransaction& transaction) -> Result<void> {
            const Connection& connection = transaction.connection();
            if (auto checked = checkNew(connection, tableDigest); !checked) return checked;
            if (auto kept = keepLimitTable(transaction, tableDigest); !kept) return kept;
            const auto stored = loadLimitTable(connection, tableDigest);
            if (!stored) return stored.error();
            const auto table = parseTable(stored->text, stored->name);
            if (!table) return table.error();
            Canonical::Object content;
            content["revision"] = table->revision;
            content["sha256"] = tableDigest;
            content["cells"] = gradesOf(*table);
            content["company_copy"] = copy;
            if (auto done = transaction.recordSigned(action::kTableAttested, table->id,
                                                     std::move(content), qaManager);
                !done)
                return done;
            SqlStatement add(connection,
                             "INSERT INTO attestation (history_sequence, limit_table_sha256) "
                             "VALUES (?, ?)");
            return add.run(transaction.head().sequence, tableDigest);
        });
}

Result<void> withdrawAttestation(Archive& archive, const std::string& tableDigest,
                                 const std::string& reason, const SignedIn& qaManager) {
    if (auto checked = checkRole(qaManager, Role::QaManager); !checked) return checked;
    const auto given = givenReason(reason);
    if (!given) return given.error();
    return ArchiveAccess::write(
        archive, qaManager.actor(), [&](WriteTransaction& transaction) -> Result<void> {
            const Connection& connection = transaction.connection();
            const auto all = loadAttestations(connection);
            if (!all) return all.error();
            const auto standing = std::ranges::find_if(*all, [&](const Attestation& one) {
                return one.tableDigest == tableDigest && !one.withdrawn;
            });
            if (standing == all->end())
                return inputError(connection.place(),
                                  "has no attestation of a limit table with the SHA-256 %1",
                                  {tableDigest});
            const auto table = loadLimitTable(connection, tableDigest);
            if (!table) return table.error();
            Canonical::Object content;
            content["revision"] = table->revision;
            content["sha256"] = tableDigest;
            content["attestation"] = standing->act.sequence;
            content["reason"] = *given;
            if (auto done = transaction.recordSigned(action::kAttestationWithdrawn, table->id,
                                                     std::move(content), qaManager);
                !done)
                return done;
            SqlStatement add(connection,
                             "INSERT INTO attestation_withdrawal (attestation, history_sequence, "
                             "person, reason) VALUES (?, ?, ?, ?)");
            return add.run(standing->act.sequence, transaction.head().sequence,
                           qaManager.person().id, *given);
        });
}

}  // namespace model
