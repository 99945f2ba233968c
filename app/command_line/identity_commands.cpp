// SPDX-License-Identifier: Apache-2.0
#include "identity_commands.h"

#include "archive/identities.h"
#include "base/word_table.h"
#include "qt_core.h"
#include "signing_in.h"
#include "whole_file.h"

namespace app {
namespace {

constexpr std::size_t kLargestFile = 1U << 20U;

constexpr Option kForOption{"--for", "ID", "whose identity it is", true};
constexpr Option kNewPassphraseOption{
    "--new-passphrase", "FILE", "file with the identity's new passphrase; - for standard input",
    true};
constexpr Option kAuthorityPassphraseOption{
    "--authority-passphrase", "FILE", "file with the authority's passphrase; - for standard input",
    true};

constexpr model::WordEntry<model::RevocationReason> kReasons[] = {
    {model::RevocationReason::Unspecified, "unspecified"},
    {model::RevocationReason::KeyCompromise, "key-compromise"},
    {model::RevocationReason::PositionChanged, "position-changed"},
    {model::RevocationReason::Superseded, "superseded"},
    {model::RevocationReason::NotNeeded, "not-needed"},
};

/// Opens the archive, signs the administrator in, runs work(archive, administrator), which returns
/// Result<void>, and says `text`.
template <class Work>
model::Result<Outcome> asAdministrator(const Arguments& arguments, const std::string& text,
                                       Work work) {
    const QtCore qt;
    auto archive = model::Archive::open(*arguments.value("--db"));
    if (!archive) return archive.error();
    const auto administrator = signedInFrom(*archive, arguments);
    if (!administrator) return administrator.error();
    if (const model::Result<void> done = work(*archive, *administrator); !done) return done.error();
    return Outcome{ExitCode::Done, text + "\n"};
}

model::Result<Outcome> issue(const Arguments& arguments) {
    const auto until = dayFrom(arguments, "--until");
    if (!until) return until.error();
    const auto newPassphrase = passphraseFrom(arguments, "--new-passphrase");
    if (!newPassphrase) return newPassphrase.error();
    const auto authorityPassphrase = passphraseFrom(arguments, "--authority-passphrase");
    if (!authorityPassphrase) return authorityPassphrase.error();
    const std::string& person = *arguments.value("--for");
    const auto kind = arguments.has("--rsa") ? model::KeyKind::Rsa3072 : model::KeyKind::P256;
    return asAdministrator(arguments, "issued an identity to " + person,
                           [&](model::Archive& archive, const model::SignedIn& administrator) {
                               return model::issueIdentity(archive, person, kind, *until,
                                                           *newPassphrase, *authorityPassphrase,
                                                           administrator);
                           });
}

model::Result<Outcome> import(const Arguments& arguments) {
    const auto file = readWholeFile(*arguments.value("--file"), kLargestFile);
    if (!file) return file.error();
    const auto filePassphrase = passphraseFrom(arguments, "--file-passphrase");
    if (!filePassphrase) return filePassphrase.error();
    const auto newPassphrase = passphraseFrom(arguments, "--new-passphrase");
    if (!newPassphrase) return newPassphrase.error();
    const std::string& person = *arguments.value("--for");
    return asAdministrator(arguments, "imported an identity of " + person,
                           [&](model::Archive& archive, const model::SignedIn& administrator) {
                               return model::importIdentity(archive, person, *file, *filePassphrase,
                                                            *newPassphrase, administrator);
                           });
}

/// DER, or the only certificate of a PEM file.
model::Result<std::string> certificateIn(const std::string& file) {
    auto bytes = readWholeFile(file, kLargestFile);
    if (!bytes || model::describeCertificate(*bytes)) return bytes;
    const auto all = model::certificatesFromPem(*bytes);
    if (!all) return model::inputError(file, all.error().reason, all.error().arguments);
    if (all->size() != 1)
        return model::inputError(file, "holds %1 certificates; give one authority's",
                                 {std::to_string(all->size())});
    return all->front();
}

model::Result<Outcome> trust(const Arguments& arguments) {
    const auto certificate = certificateIn(*arguments.value("--file"));
    if (!certificate) return certificate.error();
    return asAdministrator(arguments, "trusts the authority in " + *arguments.value("--file"),
                           [&](model::Archive& archive, const model::SignedIn& administrator) {
                               return model::trustAuthority(archive, *certificate, administrator);
                           });
}

model::Result<Outcome> takeRevocationList(const Arguments& arguments) {
    const std::string& file = *arguments.value("--file");
    const auto bytes = readWholeFile(file, kLargestFile);
    if (!bytes) return bytes.error();
    const auto list = model::revocationListFrom(*bytes);
    if (!list) return model::inputError(file, list.error().reason, list.error().arguments);
    std::string done;
    auto outcome = asAdministrator(
        arguments, "",
        [&](model::Archive& archive, const model::SignedIn& administrator) -> model::Result<void> {
            const auto taken = model::takeRevocationList(archive, *list, administrator);
            if (!taken) return taken.error();
            done = "took over the list of " + taken->issuer + " of " +
                   model::toText(taken->issued) + ", which revokes " +
                   std::to_string(taken->revoked) + "; its next is due " +
                   (taken->next ? "on " + model::toText(*taken->next) : "at no stated time");
            return {};
        });
    if (outcome) outcome->text = done + "\n";
    return outcome;
}

model::Result<Outcome> changePassphrase(const Arguments& arguments) {
    const auto passphrase = passphraseFrom(arguments);
    if (!passphrase) return passphrase.error();
    const auto newPassphrase = passphraseFrom(arguments, "--new-passphrase");
    if (!newPassphrase) return newPassphrase.error();
    const std::string& person = *arguments.value("--person");
    const QtCore qt;
    auto archive = model::Archive::open(*arguments.value("--db"));
    if (!archive) return archive.error();
    const auto done = model::changePassphrase(*archive, person, *passphrase, *newPassphrase);
    if (!done) return done.error();
    return Outcome{ExitCode::Done, "changed the passphrase of " + person + "\n"};
}

model::Result<Outcome> changeAuthorityPassphrase(const Arguments& arguments) {
    const auto passphrase = passphraseFrom(arguments, "--authority-passphrase");
    if (!passphrase) return passphrase.error();
    const auto newPassphrase = passphraseFrom(arguments, "--new-passphrase");
    if (!newPassphrase) return newPassphrase.error();
    return asAdministrator(arguments, "changed the authority's passphrase",
                           [&](model::Archive& archive, const model::SignedIn& administrator) {
                               return model::changeAuthorityPassphrase(
                                   archive, *passphrase, *newPassphrase, administrator);
                           });
}

model::Result<Outcome> withdraw(const Arguments& arguments) {
    const std::string& word = *arguments.value("--reason");
    const auto reason = model::valueIn(kReasons, word);
    if (!reason)
        return model::inputError("--reason",
                                 "\"%1\" is none of unspecified, key-compromise, "
                                 "position-changed, superseded, not-needed",
                                 {word});
    const auto authorityPassphrase = passphraseFrom(arguments, "--authority-passphrase");
    if (!authorityPassphrase) return authorityPassphrase.error();
    const std::string* remark = arguments.value("--remark");
    const std::string& person = *arguments.value("--for");
    return asAdministrator(arguments, "withdrew the identity of " + person,
                           [&](model::Archive& archive, const model::SignedIn& administrator) {
                               return model::withdrawIdentity(archive, person, *reason,
                                                              remark ? *remark : "",
                                                              *authorityPassphrase, administrator);
                           });
}

model::Result<Outcome> replaceKey(const Arguments& arguments) {
    return asAdministrator(arguments, "made " + *arguments.value("--db") + ".key",
                           [](model::Archive& archive, const model::SignedIn& administrator) {
                               return model::replaceArchiveKey(archive, administrator);
                           });
}

}  // namespace

Command issueIdentityCommand() {
    return {.name = "issue-identity",
            .operand = "",
            .summary = "gives a person an identity by the archive's own authority",
            .details =
                "The person's passphrase is theirs alone: let them change it at once with\n"
                "\"passphrase\". An identity that the person had before signs no more.\n",
            .options = {kDatabaseOption,
                        kForOption,
                        {"--until", "DATE", "its last day", true},
                        {"--rsa", "", "an RSA key of 3072 bits instead of P-256"},
                        kNewPassphraseOption,
                        kAuthorityPassphraseOption,
                        kPersonOption,
                        kPassphraseOption},
            .run = &issue};
}

Command importIdentityCommand() {
    return {.name = "import-identity",
            .operand = "",
            .summary = "takes over a person's identity from a PKCS #12 file",
            .details = "Its authority must be trusted first: trust-authority.\n",
            .options = {kDatabaseOption,
                        kForOption,
                        {"--file", "FILE.p12", "the identity", true},
                        {"--file-passphrase", "FILE",
                         "file with its passphrase; - for standard input", true},
                        kNewPassphraseOption,
                        kPersonOption,
                        kPassphraseOption},
            .run = &import};
}

Command trustAuthorityCommand() {
    return {.name = "trust-authority",
            .operand = "",
            .summary = "trusts the people of another authority from now on",
            .details = "Compare its certificate with one that you got on another way first.\n",
            .options = {kDatabaseOption,
                        {"--file", "FILE", "its certificate, PEM or DER", true},
                        kPersonOption,
                        kPassphraseOption},
            .run = &trust};
}

Command takeRevocationListCommand() {
    return {.name = "take-revocation-list",
            .operand = "",
            .summary = "takes over a company authority's list of revoked certificates",
            .details =
                "The complete list (RFC 5280), in PEM or DER, of an authority that the archive\n"
                "trusts; for its own authority withdraw-identity makes the lists. Whom it\n"
                "revokes signs no more, and \"verify\" names what was signed since the date of\n"
                "the revocation.\n",
            .options = {kDatabaseOption,
                        {"--file", "FILE", "the list, in PEM or DER", true},
                        kPersonOption,
                        kPassphraseOption},
            .run = &takeRevocationList};
}

Command passphraseCommand() {
    return {.name = "passphrase",
            .operand = "",
            .summary = "changes a person's passphrase",
            .details = "By the person: no administrator can.\n",
            .options = {kDatabaseOption, kPersonOption, kPassphraseOption, kNewPassphraseOption},
            .run = &changePassphrase};
}

Command authorityPassphraseCommand() {
    return {.name = "authority-passphrase",
            .operand = "",
            .summary = "changes the passphrase of the archive's own authority",
            .details = "Signed by an administrator, who has to know the one that it is now.\n",
            .options = {kDatabaseOption,
                        kAuthorityPassphraseOption,
                        {"--new-passphrase", "FILE",
                         "file with the authority's new passphrase; - for standard input", true},
                        kPersonOption,
                        kPassphraseOption},
            .run = &changeAuthorityPassphrase};
}

Command withdrawIdentityCommand() {
    return {.name = "withdraw-identity",
            .operand = "",
            .summary = "ends the use of a person's identity, for good",
            .details = "What it signed before stays signed. Makes the next revocation list.\n",
            .options = {kDatabaseOption,
                        kForOption,
                        {"--reason", "WORD",
                         "unspecified, key-compromise, position-changed, superseded or not-needed",
                         true},
                        {"--remark", "TEXT", "in your words"},
                        kAuthorityPassphraseOption,
                        kPersonOption,
                        kPassphraseOption},
            .run = &withdraw};
}

Command replaceArchiveKeyCommand() {
    return {.name = "replace-archive-key",
            .operand = "",
            .summary = "makes an archive writable again whose key file is lost",
            .details =
                "Look for FILE.key in your backups first: only where it is gone for good is\n"
                "another made. What the lost one sealed stays sealed.\n",
            .options = {kDatabaseOption, kPersonOption, kPassphraseOption},
            .run = &replaceKey};
}

}  // namespace app
