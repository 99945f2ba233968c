// SPDX-License-Identifier: Apache-2.0
#include "archive/archive_access.h"
#include "archive/history_store.h"
#include "archive/identities.h"
#include "archive/identity_store.h"
#include "archive/sign_ins.h"

namespace model {
namespace {

/// Of one person, still in use.
std::vector<IdentityRow> inUse(const std::vector<IdentityRow>& rows, const std::string& personId) {
    std::vector<IdentityRow> found;
    for (const IdentityRow& row : rows)
        if (row.kind == IdentityKind::Person && row.personId == personId && !row.withdrawal)
            found.push_back(row);
    return found;
}

Result<RevokedCertificate> revoked(const IdentityRow& row, UtcTime since, RevocationReason reason) {
    const auto facts = describeCertificate(row.identity.certificates.front());
    if (!facts) return facts.error();
    return RevokedCertificate{facts->serial, since, reason};
}

/// Everything that the own authority revoked before, and `ending` since `now`.
Result<std::vector<RevokedCertificate>> allRevoked(const Connection& connection,
                                                   const std::vector<IdentityRow>& rows,
                                                   const std::vector<IdentityRow>& ending,
                                                   UtcTime now, RevocationReason reason) {
    std::vector<RevokedCertificate> all;
    for (const IdentityRow& row : rows) {
        if (!row.withdrawal || !isOwnIssued(row, rows)) continue;
        const auto why = revocationReasonFrom(row.withdrawal->reason);
        if (!why)
            return connection.damaged("withdrawal of identity " + std::to_string(row.number),
                                      "has an unknown reason");
        auto entry = revoked(row, row.withdrawal->since, *why);
        if (!entry) return entry.error();
        all.push_back(std::move(*entry));
    }
    for (const IdentityRow& row : ending) {
        if (!isOwnIssued(row, rows)) continue;
        auto entry = revoked(row, now, reason);
        if (!entry) return entry.error();
        all.push_back(std::move(*entry));
    }
    return all;
}

Result<RevocationListRow> nextList(const Connection& connection, const Authority& authority,
                                   const std::vector<RevokedCertificate>& all, UtcTime now) {
    const auto lists = loadRevocationLists(connection);
    if (!lists) return lists.error();
    const auto facts = describeCertificate(authority.certificate());
    if (!facts) return facts.error();
    RevocationListRow row;
    row.number = lists->empty() ? 1 : lists->back().number + 1;
    // A list is made whenever one is needed, so none is ever due before the authority's end.
    auto list = authority.revocationList(all, row.number, now, facts->validUntil);
    if (!list) return list.error();
    row.list = std::move(*list);
    return row;
}

}  // namespace

Result<void> withdrawIdentity(Archive& archive, const std::string& personId,
                              RevocationReason reason, const std::string& remark,
                              const SecretBytes& authorityPassphrase,
                              const SignedIn& administrator) {
    if (auto may = checkRole(administrator, Role::Administrator); !may) return may;
    const Connection& connection = ArchiveAccess::connection(archive);
    const auto before = loadIdentities(connection);
    if (!before) return before.error();
    const auto needsList = [&](const IdentityRow& row) { return isOwnIssued(row, *before); };
    const std::vector<IdentityRow> now = inUse(*before, personId);
    std::optional<Authority> authority;
    if (std::ranges::any_of(now, needsList)) {
        const auto row = ownAuthority(connection);
        if (!row) return row.error();
        const UtcTime moment = ArchiveAccess::clock(archive).now();
        auto opened = SignIns::open(archive, **row, "authority", [&](const Identity& stored) {
            return Authority::unlock(stored, authorityPassphrase, moment);
        });
        if (!opened) return opened.error();
        authority = std::move(*opened);
    }
    return ArchiveAccess::write(
        archive, administrator.actor(), [&](WriteTransaction& transaction) -> Result<void> {
            const auto rows = loadIdentities(connection);
            if (!rows) return rows.error();
            const std::vector<IdentityRow> ending = inUse(*rows, personId);
            if (ending.empty())
                return inputError(connection.place(), "has no identity of %1 in use", {personId});
            if (ending.size() != now.size())
                return Error{ErrorKind::Conflict,
                             connection.place(),
                             "got or lost an identity of %1 meanwhile",
                             {personId}};
            Canonical::Object content;
            content["reason"] = wordOf(reason);
            if (!remark.empty()) content["remark"] = remark;
            Canonical::Array numbers;
            for (const IdentityRow& row : ending) numbers.emplace_back(row.number);
            content["identities"] = std::move(numbers);
            std::optional<RevocationListRow> list;
            if (authority) {
                const auto all =
                    allRevoked(connection, *rows, ending, transaction.moment(), reason);
                if (!all) return all.error();
                auto made = nextList(connection, *authority, *all, transaction.moment());
                if (!made) return made.error();
                list = std::move(*made);
                content["revocation_list"] = canonicalOf(*list);
            }
            // Signed first: what ends may be the administrator's own.
            if (auto done = transaction.recordSigned(action::kIdentityWithdrawn, personId,
                                                     std::move(content), administrator);
                !done)
                return done;
            for (const IdentityRow& row : ending)
                if (auto done = addWithdrawal(connection, row.number,
                                              {transaction.head().sequence, transaction.moment(),
                                               std::string(wordOf(reason)), remark});
                    !done)
                    return done;
            if (auto left = checkAdministratorLeft(connection); !left) return left;
            return list ? addRevocationList(connection, *list) : Result<void>();
        });
}

}  // namespace model
