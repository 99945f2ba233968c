// SPDX-License-Identifier: Apache-2.0
// Revocation lists of authorities other than the archive's own.
#include <algorithm>

#include "archive/archive_access.h"
#include "archive/history_store.h"
#include "archive/identities.h"
#include "archive/identity_store.h"
#include "archive/person_store.h"
#include "trust/revocation_list.h"

namespace model {
namespace {

/// Every authority's certificate that somebody's identity may lead to, but the own one.
std::vector<std::string> foreignIssuers(const TrustedCertificates& trusted,
                                        const std::optional<IdentityRow>& own) {
    std::vector<std::string> issuers = trusted.anchors;
    issuers.insert(issuers.end(), trusted.intermediates.begin(), trusted.intermediates.end());
    if (own) std::erase(issuers, own->identity.certificates.front());
    return issuers;
}

/// Input: an administrator has to be left whom no list revokes.
Result<void> checkAdministratorNotRevoked(const Connection& connection) {
    const auto people = loadPeople(connection, std::nullopt);
    if (!people) return people.error();
    const auto lists = revocationListsInForce(connection);
    if (!lists) return lists.error();
    for (const auto& person : *people) {
        if (!person.value.active || !person.value.roles.contains(Role::Administrator)) continue;
        const auto identity = currentIdentity(connection, person.value.id);
        if (!identity) return identity.error();
        if (!*identity) continue;
        const auto revoked = revocationOf((*identity)->identity.certificates, *lists);
        if (!revoked) return revoked.error();
        if (!*revoked) return {};
    }
    return inputError(connection.place(),
                      "would be left without an administrator: the list revokes the identity of "
                      "the last one; make another person one first");
}

}  // namespace

Result<RevocationListFacts> takeRevocationList(Archive& archive, std::string_view list,
                                               const SignedIn& administrator) {
    if (auto may = checkRole(administrator, Role::Administrator); !may) return may.error();
    const Connection& connection = ArchiveAccess::connection(archive);
    const UtcTime now = ArchiveAccess::clock(archive).now();
    std::optional<RevocationListFacts> taken;
    auto written = ArchiveAccess::write(
        archive, administrator.actor(), [&](WriteTransaction& transaction) -> Result<void> {
            const auto trusted = loadTrusted(connection);
            if (!trusted) return trusted.error();
            const auto own = ownAuthority(connection);
            if (!own) return own.error();
            auto facts = describeRevocationList(list, foreignIssuers(*trusted, *own));
            if (!facts) return facts.error();
            if (facts->issued > now)
                return inputError("",
                                  "the list of %1 says that it was issued on %2, which is to "
                                  "come",
                                  {facts->issuer, toText(facts->issued)});
            const auto rows = loadRevocationLists(connection);
            if (!rows) return rows.error();
            for (const RevocationListRow& row : *rows) {
                const auto before =
                    describeRevocationList(row.list, {&facts->issuerCertificate, 1});
                if (before && before->issued >= facts->issued)
                    return inputError(connection.place(),
                                      "has a list of %1 already that was issued on %2",
                                      {facts->issuer, toText(before->issued)});
            }
            const RevocationListRow row{rows->empty() ? 1 : rows->back().number + 1,
                                        std::string(list)};
            Canonical::Object content;
            content["revocation_list"] = canonicalOf(row);
            // Signed first: whom it revokes may be the administrator.
            if (auto done = transaction.recordSigned(action::kRevocationListTaken, facts->issuer,
                                                     std::move(content), administrator);
                !done)
                return done;
            if (auto done = addRevocationList(connection, row); !done) return done;
            taken = std::move(*facts);
            return checkAdministratorNotRevoked(connection);
        });
    if (!written) return written.error();
    return std::move(*taken);
}

}  // namespace model
