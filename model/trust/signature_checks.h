// SPDX-License-Identifier: Apache-2.0
// The single checks that make up the verification of a signature. For the .cpp files of this folder
// only.
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "trust/key_openssl.h"

namespace model::openssl {

inline constexpr int kExactlyOne =
    -3;  ///< asks OpenSSL for the value of an attribute that occurs once

Certificates stackOf(std::span<const Certificate> certificates);

/// Whether the signed attributes are about the parts, one after the other, as plain data.
bool contentFits(std::span<const std::string_view> parts, const CMS_SignerInfo* signer,
                 const X509_ALGOR* algorithm);

/// Whether signing-certificate-v2 names this certificate.
enum class Named { Yes, No, NotStated };
Named named(const CMS_SignerInfo* signer, X509* certificate);

/// The signed attributes as they are hashed (RFC 5652, 5.4): a DER SET OF, thus sorted.
std::string signedAttributes(const CMS_SignerInfo* signer);

/// The chain from the signer to an anchor, or as far as it goes. `fault`: why it is not trusted, in
/// plain English; empty: it is. Dates and revocation are looked at afterwards, so that each is a
/// fact of its own.
Certificates chainOf(X509* signer, const std::vector<Certificate>& helpers,
                     const std::vector<Certificate>& anchors, std::string& fault);

}  // namespace model::openssl
