// SPDX-License-Identifier: Apache-2.0
// What the signatures of a PDF prove. Other readers show a signature as valid although pages were
// replaced behind it; here the last signature must cover the whole file, and nothing but
// signatures may have been added between one and the next.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/clock.h"
#include "base/result.h"
#include "trust/signature.h"

namespace reports {

struct PdfSignature {
    std::string field;
    std::string reason;                         ///< as signed; empty: not stated
    std::string place;                          ///< as signed; empty: not stated
    std::optional<model::UtcTime> claimedTime;  ///< by the signer's own clock
    std::size_t coveredBytes = 0;  ///< from the file's begin, all but the signature itself
    bool coversWholeFile = false;
    /// Of a kind that is checked here (ETSI.CAdES.detached, adbe.pkcs7.detached).
    bool checked = false;
    /// Certificate, digest, chain, dates, revocation, time stamp; none: not readable.
    std::optional<model::SignatureReport> signature;
    std::vector<std::string> changedAfter;  ///< up to the next signature, in plain English
    bool forbiddenChange = false;           ///< one of them is more than a further signature
    std::vector<std::string> faults;        ///< what stands against it, in plain English
    std::vector<std::string> notes;         ///< what to know beside, in plain English
};

enum class PdfOutcome {
    IntactAndTrusted,  ///< signed; nothing was altered; every signer is known and was entitled
    NotTrusted,        ///< no alteration was found, but unsigned, or a signature is not trusted
    Altered,           ///< changed after signing, or a signature is damaged
};

struct PdfReport {
    PdfOutcome outcome = PdfOutcome::NotTrusted;
    std::vector<PdfSignature> signatures;  ///< in the order in which they were made
    std::vector<std::string> emptyFields;  ///< prepared, not signed
    std::vector<std::string> findings;     ///< about the file as a whole, in plain English
};

/// Checks every signature at `now`. Fails (Input, Damaged) for what is no PDF or too damaged to
/// tell whether it was ever signed, and for encrypted files and cross-reference streams unless an
/// earlier signed revision in the file shows that they were added.
model::Result<PdfReport> verifyPdf(std::string_view pdf, const model::TrustedCertificates& trusted,
                                   model::UtcTime now);

}  // namespace reports
