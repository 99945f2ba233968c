// SPDX-License-Identifier: Apache-2.0
// Approval signatures in a PDF: PAdES baseline B-B (ETSI EN 319 142-1), with a time stamp B-T.
#pragma once

#include <span>
#include <string>
#include <string_view>

#include "base/clock.h"
#include "base/result.h"
#include "trust/key_signing.h"
#include "trust/signature_time_stamp.h"

namespace reports {

struct PdfSigning {
    std::string field;       ///< an empty field of addSignatureFields()
    std::string appearance;  ///< of drawAppearance(), shown in the field; empty: nothing
    std::string reason;      ///< what the signature means: "Release as 3.1"; may be empty
    std::string place;       ///< where it was signed; may be empty
    model::UtcTime time{};   ///< the signer's clock: a claim, not a proof
};

/// The signed file: `pdf`, byte for byte, and one more revision that fills the field. Fails where
/// the field is not there or is signed, the identity may not sign at that time (see checkUsable()),
/// the time-stamp service fails, or the file is encrypted, damaged or has cross-reference streams.
model::Result<std::string> signPdf(std::string_view pdf, const PdfSigning& signing,
                                   const model::SigningKey& key,
                                   std::span<const std::string> revocationLists = {},
                                   const model::TimeStampService* timeStamps = nullptr);

}  // namespace reports
