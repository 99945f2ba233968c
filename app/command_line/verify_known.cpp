// SPDX-License-Identifier: Apache-2.0
#include "verify_known.h"

#include <algorithm>

#include "archive/lifecycle.h"
#include "base/digest.h"

namespace app {
namespace {

using model::Result;

std::string actText(const char* what, const std::optional<model::SignedAct>& act) {
    if (!act) return "";
    std::string text = std::string(", ") + what + " by " + act->name + " on " + act->time;
    if (!act->reason.empty()) text += " because: " + act->reason;
    return text;
}

std::string historyText(const model::Presented& presented) {
    if (presented.state() == model::CertificateState::Waiting)
        return ", " + std::string(word(presented.state()));
    std::string text = actText("released", presented.released) +
                       actText("returned", presented.returned) +
                       actText("withdrawn", presented.withdrawn);
    if (presented.supersededBy)
        text += ", superseded by certificate " + std::to_string(*presented.supersededBy);
    return text;
}

/// Issued by an older program: there was nobody who could sign.
Result<KnownFile> unsignedFile(const model::Archive& archive, std::int64_t number) {
    const auto certificate = archive.certificate(number);
    if (!certificate) return certificate.error();
    return KnownFile{"this is certificate " + std::to_string(number) + " of casting " +
                         certificate->facts.serial + ", issued by " + certificate->issuedBy +
                         " on " + certificate->issuedAt + " before this archive knew people",
                     std::nullopt};
}

}  // namespace

Result<KnownFile> findKnownFile(const model::Archive& archive, std::string_view bytes) {
    const std::string digest = model::toHex(model::sha256(bytes));
    const auto number = model::certificateOfFile(archive, digest);
    if (!number) return number.error();
    if (!*number) return KnownFile{"no certificate of it is this file, byte for byte", {}};
    auto last = model::signedFile(archive, **number);
    if (!last) return last.error();
    if (!*last) return unsignedFile(archive, **number);
    const auto presented = model::presented(archive, **number);
    if (!presented) return presented.error();

    KnownFile known;
    known.signatures = std::move((*last)->signatures);
    const std::string certificate =
        "certificate " + std::to_string(**number) + " of casting " + presented->facts.serial;
    if ((*last)->digest == digest) {
        known.text = "this is " + certificate;
    } else {
        // Of the signatures that were made since, it has none.
        const std::size_t own = presented->endorsed && presented->fileDigest == digest ? 2 : 1;
        known.signatures->resize(std::min(own, known.signatures->size()));
        known.text =
            "this is what was signed on the way to " + certificate + ", not the certificate itself";
    }
    known.text += historyText(*presented);
    return known;
}

}  // namespace app
