// SPDX-License-Identifier: Apache-2.0
#include "archive/lifecycle.h"

#include "archive/archive_access.h"
#include "archive/holdings_store.h"
#include "archive/presentation_store.h"
#include "archive/stored_file.h"
#include "base/word_table.h"

namespace model {
namespace {

constexpr WordEntry<CertificateState> kStates[] = {
    {CertificateState::Waiting, "waiting for release"},
    {CertificateState::Returned, "returned"},
    {CertificateState::Released, "released"},
    {CertificateState::Superseded, "superseded"},
    {CertificateState::Withdrawn, "withdrawn"}};

Result<std::vector<Presented>> shownOf(Result<std::vector<StoredPresentation>> stored) {
    if (!stored) return stored.error();
    std::vector<Presented> all;
    for (StoredPresentation& one : *stored) all.push_back(std::move(one.shown));
    return all;
}

}  // namespace

std::string_view word(CertificateState state) {
    return wordIn(kStates, state);
}

CertificateState Presented::state() const {
    if (returned) return CertificateState::Returned;
    if (!released) return CertificateState::Waiting;
    if (withdrawn) return CertificateState::Withdrawn;
    return supersededBy ? CertificateState::Superseded : CertificateState::Released;
}

Result<std::vector<Presented>> presented(const Archive& archive) {
    return shownOf(loadWaiting(ArchiveAccess::connection(archive)));
}

Result<Presented> presented(const Archive& archive, std::int64_t number) {
    auto found = loadPresentation(ArchiveAccess::connection(archive), number);
    if (!found) return found.error();
    return std::move(found->shown);
}

Result<std::vector<Presented>> presentedOf(const Archive& archive, const std::string& serial) {
    return shownOf(loadPresentationsOf(ArchiveAccess::connection(archive), serial));
}

Result<std::string> presentedFile(const Archive& archive, std::int64_t number) {
    const auto shown = presented(archive, number);
    if (!shown) return shown.error();
    return loadStoredFile(ArchiveAccess::folder(archive), shown->fileDigest);
}

Result<std::string> presentedSheet(const Archive& archive, std::int64_t number) {
    return loadPresentedText(ArchiveAccess::connection(archive), number, "sheet");
}

Result<std::string> presentedVerdict(const Archive& archive, std::int64_t number) {
    return loadPresentedText(ArchiveAccess::connection(archive), number, "verdict");
}

Result<Dossier> presentedDossier(const Archive& archive, std::int64_t number) {
    const Connection& connection = ArchiveAccess::connection(archive);
    const auto found = loadPresentation(connection, number);
    if (!found) return found.error();
    auto dossier = dossierFrom(found->basis.dossier);
    if (!dossier)
        return connection.damaged("the dossier of certificate " + std::to_string(number),
                                  "is not understood");
    return std::move(*dossier);
}

}  // namespace model
