// SPDX-License-Identifier: Apache-2.0
// The rows of the history. What each action's content holds is described in HISTORY.md.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "archive/archive.h"
#include "archive/connection.h"
#include "trust/canonical.h"
#include "trust/seal_key.h"

namespace model {

namespace action {
inline constexpr char kArchiveCreated[] = "archive created";
inline constexpr char kArchiveMigrated[] = "archive migrated";
inline constexpr char kOrderSaved[] = "order saved";
inline constexpr char kPartSaved[] = "part saved";
inline constexpr char kZonePlanAdded[] = "zone plan added";
inline constexpr char kCastingSaved[] = "casting saved";
inline constexpr char kExaminationSaved[] = "examination saved";
inline constexpr char kTableAdded[] = "limit table added";
inline constexpr char kNumberReserved[] = "certificate number reserved";
inline constexpr char kCertificateAdded[] = "certificate added";
inline constexpr char kEntrySaved[] = "register entry saved";
inline constexpr char kSearchIndexRebuilt[] = "search index rebuilt";
inline constexpr char kArchiveKeyMade[] = "archive key made";
inline constexpr char kArchiveKeyReplaced[] = "archive key replaced";
inline constexpr char kAuthorityMade[] = "authority made";
inline constexpr char kAuthorityTrusted[] = "authority trusted";
inline constexpr char kRevocationListTaken[] = "revocation list taken over";
inline constexpr char kPersonSaved[] = "person saved";
inline constexpr char kIdentityIssued[] = "identity issued";
inline constexpr char kIdentityImported[] = "identity imported";
inline constexpr char kIdentityWithdrawn[] = "identity withdrawn";
inline constexpr char kPassphraseChanged[] = "passphrase changed";
inline constexpr char kAuthorityPassphraseChanged[] = "authority's passphrase changed";
inline constexpr char kPassphraseWrong[] = "wrong passphrase given";
inline constexpr char kPassphraseRight[] = "right passphrase given";
}  // namespace action

/// Who signed a row: the member "signer" of its content, a person's id. Null where nobody did.
const std::string* signerOf(const Canonical& content);

/// The bytes of a row, as CANONICAL.md of trust/ lays them down.
Result<std::string> historyBytes(std::int64_t sequence, const std::string& time,
                                 const std::string& person, const std::string& action,
                                 const std::string& subject, Canonical::Object content);

/// Whether `row`, read from the entry's bytes, says the same as its columns and nothing beside.
bool saysTheSame(const Canonical& row, const HistoryEntry& entry);

/// Adds a row, within a write transaction, and returns the head with it; only WriteTransaction
/// calls this and the two below.
Result<Head> appendHistory(const Connection& connection, const std::string& time,
                           const std::string& person, const std::string& action,
                           const std::string& subject, Canonical::Object content);

/// Seals the row that is `head`.
Result<void> appendSeal(const Connection& connection, const Head& head, const SealKey& key);
/// Stores a person's signature of a row by an identity.
Result<void> appendSignature(const Connection& connection, std::int64_t sequence,
                             std::int64_t identity, std::string_view signature);

Result<Head> historyHead(const Connection& connection);

/// What lies beside a row for proving who wrote it.
struct Proofs {
    std::optional<std::string> seal;
    std::optional<std::string> signature;
    std::int64_t identity = 0;  ///< that signed; 0 where there is no signature
};

/// Every row with its proofs, rising, until `take` returns false.
Result<void> readHistoryWithProofs(
    const Connection& connection,
    const std::function<bool(const HistoryEntry&, const Proofs&)>& take);

/// The rows from number `from` on, rising, until `take` returns false.
Result<void> readHistory(const Connection& connection, std::int64_t from,
                         const std::function<bool(HistoryEntry)>& take);

}  // namespace model
