// SPDX-License-Identifier: Apache-2.0
#include "set_up_archive.h"

#include <filesystem>

#include "archive/identities.h"
#include "qt_core.h"
#include "signing_in.h"

namespace app {
namespace {

/// A new archive whose set-up failed is taken away again, and nothing else.
void takeAway(const std::string& file) {
    std::error_code ignored;
    for (const char* suffix : {"-wal", "-shm", ".key", ""})
        std::filesystem::remove(file + suffix, ignored);
}

model::Result<std::string> fingerprint(const model::Archive& archive) {
    const auto trusted = model::trustedCertificates(archive);
    if (!trusted) return trusted.error();
    const auto facts = model::describeCertificate(trusted->anchors.front());
    if (!facts) return facts.error();
    return facts->fingerprint;
}

model::Result<Outcome> setUpArchive(const Arguments& arguments) {
    const auto authorityPassphrase = passphraseFrom(arguments, "--authority-passphrase");
    if (!authorityPassphrase) return authorityPassphrase.error();
    const auto passphrase = passphraseFrom(arguments);
    if (!passphrase) return passphrase.error();
    const auto until = dayFrom(arguments, "--until");
    if (!until) return until.error();
    const std::string& file = *arguments.value("--db");
    model::Person person;
    person.id = *arguments.value("--person");
    person.name = *arguments.value("--name");
    const std::string* country = arguments.value("--country");
    // The authority's own certificate outlasts those of the people by a year.
    const model::AuthorityRequest authority{
        *arguments.value("--authority"), *arguments.value("--organisation"),
        country ? *country : "", model::systemClock().now(), *until + std::chrono::days(365)};

    const QtCore qt;
    std::error_code ignored;
    const bool isNew = !std::filesystem::exists(file, ignored);
    bool wasMade = false;
    const auto done = [&]() -> model::Result<std::string> {
        auto archive = isNew ? model::Archive::create(file, model::ArchiveKind::Working,
                                                      model::Actor{person.name})
                             : model::Archive::open(file);
        if (!archive) return archive.error();
        wasMade = isNew;
        const auto ready =
            model::setUp(*archive, authority, *authorityPassphrase, person, *passphrase, *until);
        if (!ready) return ready.error();
        return fingerprint(*archive);
    }();
    if (!done) {
        if (wasMade) takeAway(file);
        return done.error();
    }
    return Outcome{ExitCode::Done,
                   "set up " + file + "\nauthority's certificate (SHA-256)\t" + *done + "\n"};
}

}  // namespace

Command setUpCommand() {
    return {.name = "set-up",
            .operand = "",
            .summary = "makes an archive's authority and its first administrator",
            .details =
                "Makes the archive where there is none. The authority issues the identities with\n"
                "which people sign. Note the printed SHA-256 of its certificate elsewhere: it\n"
                "tells this archive from another one made under the same names. Beside the\n"
                "archive lies FILE.key, the archive's own key: back it up, show it to nobody.\n",
            .options = {{"--db", "FILE", "the archive", true},
                        {"--organisation", "NAME", "the company, as certificates name it", true},
                        {"--authority", "NAME", "the authority's name", true},
                        {"--country", "XX", "two letters, ISO 3166-1"},
                        {"--person", "ID", "the administrator's id, for good", true},
                        {"--name", "NAME", "the administrator's name", true},
                        {"--until", "DATE", "last day of the administrator's identity", true},
                        {"--authority-passphrase", "FILE",
                         "file with the authority's passphrase; - for standard input", true},
                        {"--passphrase", "FILE",
                         "file with the administrator's passphrase; - for standard input", true}},
            .run = &setUpArchive};
}

}  // namespace app
