// SPDX-License-Identifier: Apache-2.0
// The outer form of a CMS SignedData. Not everything in it is covered by the signature; what is
// not must have the one value that the standard allows, so that no byte can be changed unseen. For
// the .cpp files of this folder only.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "trust/key_openssl.h"

namespace model::openssl {

/// What is wrong with the form of a SignedData (DER) of one signer; empty for nothing. Checked are
/// the encoding, versions (RFC 5652, 5.1 and 5.3), the digest algorithms, and that no certificate
/// in it was altered, as far as its issuer or the original is in it or among `others`.
std::string formFault(std::string_view signedData, const std::vector<Certificate>& others);
/// The same of a SignedData that was read from `signedData` and is written back as the same bytes;
/// null: it was not.
std::string formFault(CMS_ContentInfo* read, std::string_view signedData,
                      const std::vector<Certificate>& others);

/// The certificates in a SignedData.
std::vector<Certificate> certificatesIn(CMS_ContentInfo* signedData);

/// The only signer, or null.
CMS_SignerInfo* onlySigner(CMS_ContentInfo* signedData);

}  // namespace model::openssl
