// SPDX-License-Identifier: Apache-2.0
#include "archive/identities.h"

#include <algorithm>

#include "archive/archive_access.h"
#include "archive/disk.h"
#include "archive/history_store.h"
#include "archive/identity_store.h"
#include "archive/person_store.h"
#include "archive/sign_ins.h"

namespace model {
namespace {

Canonical::Object identityContent(const IdentityRow& row) {
    Canonical::Object content = canonicalOf(row);
    content["identity"] = row.number;
    if (!row.identity.encryptedKey.empty())
        for (auto& [key, value] : canonicalKeyOf(row)) content[key] = value;
    return content;
}

/// Signed before it is stored: a new identity of the signer's own takes the place of the one that
/// signs.
Result<void> recordAndAdd(WriteTransaction& transaction, const char* action, IdentityRow row,
                          const SignedIn& signer) {
    const Connection& connection = transaction.connection();
    const auto number = nextIdentityNumber(connection);
    if (!number) return number.error();
    row.number = *number;
    const std::string subject = row.personId.empty() ? "authority" : row.personId;
    if (auto done = transaction.recordSigned(action, subject, identityContent(row), signer); !done)
        return done;
    return addIdentity(connection, row);
}

Result<void> checkActive(const Connection& connection, const std::string& personId) {
    const auto person = loadPerson(connection, personId);
    if (!person) return person.error();
    if (!person->value.active)
        return inputError(connection.place(), "gives no identity to %1: the person is inactive",
                          {person->value.name});
    return {};
}

Result<IdentityRow> authorityOf(const Connection& connection) {
    auto authority = ownAuthority(connection);
    if (!authority) return authority.error();
    if (!*authority)
        return inputError(connection.place(), "has no authority of its own: set it up first");
    return std::move(**authority);
}

Result<Authority> openAuthority(Archive& archive, const IdentityRow& row,
                                const SecretBytes& passphrase) {
    const UtcTime now = ArchiveAccess::clock(archive).now();
    return SignIns::open(archive, row, "authority", [&](const Identity& stored) {
        return Authority::unlock(stored, passphrase, now);
    });
}

/// Stores what was `before` under another passphrase by now, with no wrong tries.
Result<void> storeKey(Archive& archive, const IdentityRow& before, Identity changed,
                      const char* action, const std::string& subject, const SignedIn& signer) {
    const Connection& connection = ArchiveAccess::connection(archive);
    return ArchiveAccess::write(
        archive, signer.actor(), [&](WriteTransaction& transaction) -> Result<void> {
            const auto now = before.kind == IdentityKind::OwnAuthority
                                 ? ownAuthority(connection)
                                 : currentIdentity(connection, before.personId);
            if (!now) return now.error();
            if (!*now || (*now)->identity.encryptedKey != before.identity.encryptedKey)
                return Error{ErrorKind::Conflict,
                             connection.place(),
                             "got another passphrase of %1 meanwhile",
                             {subject}};
            IdentityRow next = **now;
            next.identity = std::move(changed);
            next.attempts = {};
            if (auto saved = saveKey(connection, next); !saved) return saved;
            Canonical::Object content = canonicalKeyOf(next);
            content["identity"] = next.number;
            return transaction.recordSigned(action, subject, std::move(content), signer);
        });
}

/// Whether its signatures would be trusted here.
Result<void> checkTrusted(const Archive& archive, const Identity& identity,
                          const SecretBytes& passphrase) {
    const UtcTime now = ArchiveAccess::clock(archive).now();
    const auto trusted = trustedCertificates(archive);
    if (!trusted) return trusted.error();
    const auto key = unlock(identity, passphrase, now, trusted->revocationLists);
    if (!key) return key.error();
    constexpr std::string_view kTrial = "a signature to try the identity with";
    const auto signature = signDetached(kTrial, *key, now, trusted->revocationLists);
    if (!signature) return signature.error();
    const auto report = verifyDetached(kTrial, *signature, *trusted, now);
    if (!report) return report.error();
    if (!report->trusted())
        return inputError(
            archive.path(),
            "does not trust the identity in the file: %1; trust its authority first",
            {report->remarks.empty() ? "its authority is unknown" : report->remarks.front()});
    return {};
}

}  // namespace

Result<void> setUp(Archive& archive, const AuthorityRequest& request,
                   const SecretBytes& authorityPassphrase, Person administrator,
                   const SecretBytes& passphrase, UtcTime until) {
    const Connection& connection = ArchiveAccess::connection(archive);
    const auto checkNew = [&]() -> Result<void> {
        const auto there = ownAuthority(connection);
        if (!there) return there.error();
        if (*there) return inputError(connection.place(), "was set up already");
        return {};
    };
    if (auto fresh = checkNew(); !fresh) return fresh;
    administrator.roles.insert(Role::Administrator);
    if (auto fits = checkPerson(connection, administrator, 0); !fits) return fits.error();
    const UtcTime now = ArchiveAccess::clock(archive).now();
    IdentityRow authorityRow{1, IdentityKind::OwnAuthority, "", {}};
    IdentityRow personRow{2, IdentityKind::Person, administrator.id, {}};
    auto made = Authority::create(request, authorityPassphrase);
    if (!made) return made.error();
    authorityRow.identity = std::move(*made);
    const auto authority = Authority::unlock(authorityRow.identity, authorityPassphrase, now);
    if (!authority) return authority.error();
    auto issued = authority->issue({administrator.name, administrator.id, now, until}, passphrase);
    if (!issued) return issued.error();
    personRow.identity = std::move(*issued);
    auto key = unlock(personRow.identity, passphrase, now);
    if (!key) return key.error();
    auto list = authority->revocationList({}, 1, now, request.until);
    if (!list) return list.error();
    const RevocationListRow listRow{1, std::move(*list)};
    const SignedIn signer = SignIns::make({administrator, 1}, personRow.number, std::move(*key));
    return ArchiveAccess::write(
        archive, signer.actor(), [&](WriteTransaction& transaction) -> Result<void> {
            if (auto fresh = checkNew(); !fresh) return fresh;
            // Stored before it is signed: the first administrator has to be there to sign.
            if (auto done = storePerson(connection, {administrator, 1}); !done) return done;
            if (auto done = addIdentity(connection, authorityRow); !done) return done;
            if (auto done = addIdentity(connection, personRow); !done) return done;
            if (auto done = addRevocationList(connection, listRow); !done) return done;
            // Who may do the rest comes first.
            if (auto done =
                    transaction.recordSigned(action::kPersonSaved, administrator.id,
                                             canonicalOf(Stored<Person>{administrator, 1}), signer);
                !done)
                return done;
            Canonical::Object content = identityContent(authorityRow);
            content["revocation_list"] = canonicalOf(listRow);
            if (auto done = transaction.recordSigned(action::kAuthorityMade, "authority",
                                                     std::move(content), signer);
                !done)
                return done;
            return transaction.recordSigned(action::kIdentityIssued, administrator.id,
                                            identityContent(personRow), signer);
        });
}

Result<void> issueIdentity(Archive& archive, const std::string& personId, KeyKind kind,
                           UtcTime until, const SecretBytes& personPassphrase,
                           const SecretBytes& authorityPassphrase, const SignedIn& administrator) {
    if (auto may = checkRole(administrator, Role::Administrator); !may) return may;
    const Connection& connection = ArchiveAccess::connection(archive);
    if (auto active = checkActive(connection, personId); !active) return active;
    const auto person = loadPerson(connection, personId);
    if (!person) return person.error();
    const auto row = authorityOf(connection);
    if (!row) return row.error();
    const auto authority = openAuthority(archive, *row, authorityPassphrase);
    if (!authority) return authority.error();
    const UtcTime now = ArchiveAccess::clock(archive).now();
    auto issued =
        authority->issue({person->value.name, personId, now, until, kind}, personPassphrase);
    if (!issued) return issued.error();
    return ArchiveAccess::write(
        archive, administrator.actor(), [&](WriteTransaction& transaction) -> Result<void> {
            if (auto active = checkActive(connection, personId); !active) return active;
            return recordAndAdd(transaction, action::kIdentityIssued,
                                {0, IdentityKind::Person, personId, std::move(*issued)},
                                administrator);
        });
}

Result<void> importIdentity(Archive& archive, const std::string& personId, std::string_view pkcs12,
                            const SecretBytes& filePassphrase, const SecretBytes& newPassphrase,
                            const SignedIn& administrator) {
    if (auto may = checkRole(administrator, Role::Administrator); !may) return may;
    const Connection& connection = ArchiveAccess::connection(archive);
    if (auto active = checkActive(connection, personId); !active) return active;
    auto identity = importPkcs12(pkcs12, filePassphrase, newPassphrase);
    if (!identity) return identity.error();
    if (auto trusted = checkTrusted(archive, *identity, newPassphrase); !trusted) return trusted;
    // A file may leave issuers out; the lists that revoke are looked up by them.
    const auto known = trustedCertificates(archive);
    if (!known) return known.error();
    auto whole = upToAnchor(identity->certificates, *known);
    if (!whole) return whole.error();
    identity->certificates = std::move(*whole);
    if (auto usable = checkUsable(identity->certificates, ArchiveAccess::clock(archive).now(),
                                  known->revocationLists);
        !usable)
        return usable;
    return ArchiveAccess::write(
        archive, administrator.actor(), [&](WriteTransaction& transaction) -> Result<void> {
            if (auto active = checkActive(connection, personId); !active) return active;
            return recordAndAdd(transaction, action::kIdentityImported,
                                {0, IdentityKind::Person, personId, std::move(*identity)},
                                administrator);
        });
}

Result<void> trustAuthority(Archive& archive, std::string_view certificate,
                            const SignedIn& administrator) {
    if (auto may = checkRole(administrator, Role::Administrator); !may) return may;
    const auto facts = describeCertificate(certificate);
    if (!facts) return inputError("", facts.error().reason);
    if (!facts->isAuthority)
        return inputError("", "the certificate of %1 is a person's, not an authority's",
                          {facts->name});
    if (auto usable = checkUsable({std::string(certificate)}, ArchiveAccess::clock(archive).now());
        !usable)
        return usable;
    return ArchiveAccess::write(
        archive, administrator.actor(), [&](WriteTransaction& transaction) -> Result<void> {
            return recordAndAdd(
                transaction, action::kAuthorityTrusted,
                {0, IdentityKind::TrustedAuthority, "", {{std::string(certificate)}, ""}},
                administrator);
        });
}

Result<void> changePassphrase(Archive& archive, const std::string& personId,
                              const SecretBytes& passphrase, const SecretBytes& newPassphrase) {
    // Before the old one is tried.
    if (auto allowed = checkNewPassphrase(newPassphrase); !allowed) return allowed;
    const auto signer = signIn(archive, personId, passphrase);
    if (!signer) return signer.error();
    const Connection& connection = ArchiveAccess::connection(archive);
    auto row = currentIdentity(connection, personId);
    if (!row) return row.error();
    if (!*row) return inputError(connection.place(), "has no identity of %1 in use", {personId});
    auto changed = model::changePassphrase((*row)->identity, passphrase, newPassphrase);
    if (!changed) return changed.error();
    return storeKey(archive, **row, std::move(*changed), action::kPassphraseChanged, personId,
                    *signer);
}

Result<void> changeAuthorityPassphrase(Archive& archive, const SecretBytes& passphrase,
                                       const SecretBytes& newPassphrase,
                                       const SignedIn& administrator) {
    if (auto may = checkRole(administrator, Role::Administrator); !may) return may;
    if (auto allowed = checkNewPassphrase(newPassphrase); !allowed) return allowed;
    const auto row = authorityOf(ArchiveAccess::connection(archive));
    if (!row) return row.error();
    auto changed = SignIns::open(archive, *row, "authority", [&](const Identity& stored) {
        return model::changePassphrase(stored, passphrase, newPassphrase);
    });
    if (!changed) return changed.error();
    return storeKey(archive, *row, std::move(*changed), action::kAuthorityPassphraseChanged,
                    "authority", administrator);
}

Result<void> replaceArchiveKey(Archive& archive, const SignedIn& administrator) {
    if (auto may = checkRole(administrator, Role::Administrator); !may) return may;
    ArchiveKey& key = ArchiveAccess::key(archive);
    auto replaced = [&]() -> Result<void> {
        auto transaction =
            WriteTransaction::beginUnsealed(ArchiveAccess::connection(archive),
                                            ArchiveAccess::clock(archive), administrator.actor());
        if (!transaction) return transaction.error();
        if (isThere(key.file()))
            return inputError(key.file(),
                              "is there; only an archive without its key file gets another key");
        const auto made = key.make();
        if (!made) return made.error();
        (*transaction)->sealWith(**made);
        if (auto done = replaceKey(**transaction, **made, administrator); !done) return done;
        return (*transaction)->commit();
    }();
    if (replaced)
        key.keep();
    else
        key.discard();
    return replaced;
}

Result<std::vector<StoredIdentity>> identities(const Archive& archive) {
    const Connection& connection = ArchiveAccess::connection(archive);
    const auto reading = ReadTransaction::begin(connection);
    if (!reading) return reading.error();
    const auto rows = loadIdentities(connection);
    if (!rows) return rows.error();
    const auto lists = revocationListsInForce(connection);
    if (!lists) return lists.error();
    std::vector<StoredIdentity> all;
    for (const IdentityRow& row : *rows) {
        StoredIdentity one;
        one.number = row.number;
        one.person = row.personId;
        one.own = row.kind == IdentityKind::OwnAuthority || isOwnIssued(row, *rows);
        auto facts = describeCertificate(row.identity.certificates.front());
        if (!facts) return facts.error();
        one.facts = std::move(*facts);
        const auto revoked = revocationOf(row.identity.certificates, *lists);
        if (!revoked) return revoked.error();
        if (row.withdrawal)
            one.withdrawn = row.withdrawal->reason;
        else if (*revoked)
            one.withdrawn = "revoked by " + one.facts.issuer + " on " +
                            toText((*revoked)->since).substr(0, 10) + ": " + (*revoked)->reason;
        all.push_back(std::move(one));
    }
    return all;
}

Result<TrustedCertificates> trustedCertificates(const Archive& archive) {
    const Connection& connection = ArchiveAccess::connection(archive);
    const auto reading = ReadTransaction::begin(connection);
    if (!reading) return reading.error();
    return loadTrusted(connection);
}

}  // namespace model
