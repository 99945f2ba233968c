// SPDX-License-Identifier: Apache-2.0
// Looking a certificate up in revocation lists (RFC 5280 clause 5). For the .cpp files of this
// folder only.
#pragma once

#include <optional>
#include <span>
#include <string>

#include "trust/key_openssl.h"
#include "trust/signature.h"

namespace model::openssl {

struct RevocationLookup {
    bool listed = false;     ///< a list of the issuer was among the given ones
    bool damaged = false;    ///< a given list is unreadable, or its issuer's signature does not fit
    bool outOfDate = false;  ///< the newest list of the issuer announced its successor before `at`
    std::optional<Revocation> revoked;
};

/// Whether a list is about everything that its issuer revoked. Lists for a part of the certificates
/// only, of changes only, or by somebody else than the issuer say so in a critical extension.
bool isUnderstood(const X509_CRL* list);

/// Takes every list that `issuer` signed; revoked is what any of them says, as an entry may be left
/// out once its certificate has ended. Only that a certificate is on hold is the newest's to say.
RevocationLookup lookUp(X509* certificate, X509* issuer,
                        std::span<const std::string> revocationLists, UtcTime at);

}  // namespace model::openssl
