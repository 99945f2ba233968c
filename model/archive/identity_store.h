// SPDX-License-Identifier: Apache-2.0
// Identities, their keys and the revocation lists in the database. For the .cpp files of this
// folder only.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "archive/connection.h"
#include "trust/authority.h"
#include "trust/canonical.h"
#include "trust/identity.h"
#include "trust/key_attempts.h"
#include "trust/signature.h"

namespace model {

enum class IdentityKind { Person, OwnAuthority, TrustedAuthority };

struct Withdrawal {
    std::int64_t row = 0;  ///< of the history
    UtcTime since{};       ///< that row's time
    std::string reason;    ///< a word of wordOf()
    std::string remark;    ///< the administrator's; may be empty
};

struct IdentityRow {
    std::int64_t number = 0;
    IdentityKind kind = IdentityKind::Person;
    std::string personId;  ///< empty for authorities
    Identity identity;     ///< encryptedKey empty: the archive has none
    FailedAttempts attempts = {};
    std::optional<Withdrawal> withdrawal = {};
};

std::string_view wordOf(RevocationReason reason);
std::optional<RevocationReason> revocationReasonFrom(std::string_view word);

/// SHA-256 of the own certificate, hexadecimal.
std::string fingerprintOf(const IdentityRow& row);

/// Whether the own authority, which is among `rows`, issued it.
bool isOwnIssued(const IdentityRow& row, const std::vector<IdentityRow>& rows);

Result<std::int64_t> nextIdentityNumber(const Connection& connection);
/// Stores one of the next number. Input where its certificate is stored already.
Result<void> addIdentity(const Connection& connection, const IdentityRow& row);
Result<void> addWithdrawal(const Connection& connection, std::int64_t identity,
                           const Withdrawal& withdrawal);

/// All, by number.
Result<std::vector<IdentityRow>> loadIdentities(const Connection& connection);
/// The one a person signs with: the newest, where it was not withdrawn.
Result<std::optional<IdentityRow>> currentIdentity(const Connection& connection,
                                                   const std::string& personId);
Result<std::optional<IdentityRow>> ownAuthority(const Connection& connection);

/// Whether an active administrator is left with an identity in use: nobody could be added or helped
/// any more otherwise (Input).
Result<void> checkAdministratorLeft(const Connection& connection);

/// What may change of an identity: its key's encryption and the tries to open it.
Result<void> saveKey(const Connection& connection, const IdentityRow& row);

struct RevocationListRow {
    std::int64_t number = 0;
    std::string list;  ///< DER
};
/// Rising.
Result<std::vector<RevocationListRow>> loadRevocationLists(const Connection& connection);
/// Those that say all there is to say: the own authority's newest, which holds everything that it
/// ever revoked, and all of other authorities.
Result<std::vector<std::string>> revocationListsInForce(const Connection& connection);
/// trustedCertificates() of identities.h.
Result<TrustedCertificates> loadTrusted(const Connection& connection);
Result<void> addRevocationList(const Connection& connection, const RevocationListRow& row);

// As in the history's content; see HISTORY.md.
Canonical::Object canonicalOf(const IdentityRow& row);     ///< without its key
Canonical::Object canonicalKeyOf(const IdentityRow& row);  ///< digest and tries
Canonical::Object canonicalOf(const RevocationListRow& row);

}  // namespace model
