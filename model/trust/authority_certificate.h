// SPDX-License-Identifier: Apache-2.0
// A certificate in the making. For the .cpp files of this folder only.
#pragma once

#include <string>
#include <vector>

#include "trust/key_openssl.h"

namespace model::openssl {

/// One part of a name: NID_commonName and its text.
struct NamePart {
    int nid = 0;
    std::string text;
};

/// Collects what goes into a certificate; the first failure is kept and told by signed().
class CertificateDraft {
public:
    /// With a random serial number of 127 bits.
    CertificateDraft();

    void subject(const std::vector<NamePart>& parts);
    void issuer(const X509_NAME* name);
    void validity(UtcTime from, UtcTime until);
    void publicKey(EVP_PKEY* key);
    /// In OpenSSL's own notation, x509v3_config(5).
    void extension(int nid, const char* value, X509* issuer);
    /// Permitted: names that begin with `subject`. Excluded: DNS names and addresses. Mail
    /// addresses: only below .invalid, which is nobody's.
    void nameConstraints(const std::vector<NamePart>& subject);

    [[nodiscard]] X509* get() const { return certificate_.get(); }
    Result<Certificate> signedBy(EVP_PKEY* key);

private:
    void require(bool done) { sound_ = sound_ && done; }

    Certificate certificate_;
    bool sound_ = true;
};

}  // namespace model::openssl
