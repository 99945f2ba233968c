// SPDX-License-Identifier: Apache-2.0
// Revocation lists (RFC 5280 clause 5) that an authority hands out in files.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "base/clock.h"
#include "base/result.h"
#include "trust/signature.h"

namespace model {

struct RevocationListFacts {
    std::string issuer;             ///< common name
    std::string issuerCertificate;  ///< DER: the one of those given that signed it
    UtcTime issued{};
    std::optional<UtcTime> next;  ///< when its successor is due
    std::size_t revoked = 0;      ///< how many certificates it lists
};

/// The list of a file in DER or PEM, as DER. Input where it is none.
Result<std::string> revocationListFrom(std::string_view file);

/// Reads a list (DER) that one of `issuers` (DER certificates) signed. Input: it is none, none of
/// them did, or it lists only some of what its issuer revoked.
Result<RevocationListFacts> describeRevocationList(std::string_view list,
                                                   std::span<const std::string> issuers);

/// Whether it names this certificate's holder as its issuer; its signature is not looked at.
bool isOfIssuer(std::string_view list, std::string_view certificate);

/// Since when and why the lists revoke certificates (as in Identity): the first of all. Fails
/// (Damaged) where a certificate or a list cannot be used.
Result<std::optional<Revocation>> revocationOf(const std::vector<std::string>& certificates,
                                               std::span<const std::string> lists);

/// Certificates (as in Identity) with those of their issuers up to an anchor, as far as a PKCS #12
/// file left them out; unchanged where they lead to no anchor.
Result<std::vector<std::string>> upToAnchor(const std::vector<std::string>& certificates,
                                            const TrustedCertificates& trusted);

}  // namespace model
