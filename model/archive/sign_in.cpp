// SPDX-License-Identifier: Apache-2.0
#include "archive/sign_in.h"

#include <algorithm>

#include "archive/archive_access.h"
#include "archive/history_store.h"
#include "archive/person_store.h"
#include "archive/sign_ins.h"

namespace model {
namespace {

const Actor kProgram{"Fettlemark"};

Result<IdentityRow> identityFor(const Connection& connection, const Person& person) {
    if (!person.active)
        return inputError(connection.place(), "lets %1 no longer sign in: the person is inactive",
                          {person.name});
    auto identity = currentIdentity(connection, person.id);
    if (!identity) return identity.error();
    if (!*identity)
        return inputError(connection.place(),
                          "has no identity of %1 in use; an administrator issues one",
                          {person.name});
    return std::move(**identity);
}

Error refusedSigner(const Connection& connection, const SignedIn& signer, std::string why,
                    std::vector<std::string> more = {}) {
    more.insert(more.begin(), signer.person().name);
    return refusal(connection.place(), "takes no signature of %1: " + std::move(why),
                   std::move(more));
}

}  // namespace

Result<void> SignIns::checkWait(const Archive& archive, const IdentityRow& row) {
    const auto wait = remainingWait(row.attempts, ArchiveAccess::clock(archive).now());
    if (wait.count() == 0) return {};
    return refusal(archive.path(),
                   "takes no passphrase now, after %1 wrong ones; try again in %2 s",
                   {std::to_string(row.attempts.count), std::to_string(wait.count())});
}

Result<void> SignIns::count(Archive& archive, std::int64_t identity, const std::string& holder,
                            bool wrong) {
    return ArchiveAccess::write(
        archive, kProgram, [&](WriteTransaction& transaction) -> Result<void> {
            const Connection& connection = transaction.connection();
            auto rows = loadIdentities(connection);
            if (!rows) return rows.error();
            const auto found = std::ranges::find(*rows, identity, &IdentityRow::number);
            if (found == rows->end())
                return connection.damaged("identity " + std::to_string(identity), "is gone");
            IdentityRow& row = *found;
            row.attempts =
                wrong ? afterWrongPassphrase(row.attempts, transaction.moment()) : FailedAttempts();
            if (auto saved = saveKey(connection, row); !saved) return saved;
            Canonical::Object content = canonicalKeyOf(row);
            content["identity"] = row.number;
            return transaction.record(wrong ? action::kPassphraseWrong : action::kPassphraseRight,
                                      holder, std::move(content));
        });
}

Result<SignedIn> signIn(Archive& archive, const std::string& personId,
                        const SecretBytes& passphrase) {
    const Connection& connection = ArchiveAccess::connection(archive);
    auto person = loadPerson(connection, personId);
    if (!person) return person.error();
    const auto identity = identityFor(connection, person->value);
    if (!identity) return identity.error();
    const auto lists = revocationListsInForce(connection);
    if (!lists) return lists.error();
    const UtcTime now = ArchiveAccess::clock(archive).now();
    auto key = SignIns::open(archive, *identity, personId, [&](const Identity& stored) {
        return unlock(stored, passphrase, now, *lists);
    });
    if (!key) return key.error();
    return SignIns::make(std::move(*person), identity->number, std::move(*key));
}

Result<std::chrono::seconds> waitBeforeSignIn(const Archive& archive, const std::string& personId) {
    const auto identity = currentIdentity(ArchiveAccess::connection(archive), personId);
    if (!identity) return identity.error();
    if (!*identity) return std::chrono::seconds(0);
    return remainingWait((*identity)->attempts, ArchiveAccess::clock(archive).now());
}

Result<void> checkMaySign(const Connection& connection, const SignedIn& signer, UtcTime now) {
    const auto person = loadPerson(connection, signer.person().id);
    if (!person) return person.error();
    if (!person->value.active) return refusedSigner(connection, signer, "the person is inactive");
    if (person->version != signer.personVersion())
        return refusedSigner(connection, signer,
                             "what is stored of the person has changed; sign in again");
    const auto identity = currentIdentity(connection, person->value.id);
    if (!identity) return identity.error();
    if (!*identity || (*identity)->number != signer.identity())
        return refusedSigner(connection, signer,
                             "the identity was withdrawn or replaced; sign in again");
    const auto lists = revocationListsInForce(connection);
    if (!lists) return lists.error();
    if (auto usable = checkUsable((*identity)->identity.certificates, now, *lists); !usable)
        return refusedSigner(connection, signer, "%2", {usable.error().message()});
    return {};
}

Result<void> checkRole(const SignedIn& signer, Role role) {
    if (signer.has(role)) return {};
    return refusal("", "%1 is not signed in as %2",
                   {signer.person().name, std::string(word(role))});
}

}  // namespace model
