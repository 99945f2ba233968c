// SPDX-License-Identifier: Apache-2.0
// What a certificate says, and certificates in files.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/clock.h"
#include "base/result.h"

namespace model {

/// Texts are UTF-8 and empty where the certificate does not say.
struct CertificateFacts {
    std::string name;          ///< subject's common name
    std::string organisation;  ///< subject's
    std::string personId;      ///< subject's X.520 serial number: tells people of one name apart
    std::string issuer;        ///< common name
    std::string serial;        ///< of the certificate, hexadecimal
    std::string fingerprint;   ///< SHA-256 of the DER, hexadecimal
    std::string key;           ///< "P-256", "RSA-3072"; empty for other kinds
    UtcTime validFrom{};
    UtcTime validUntil{};  ///< inclusive
    bool isAuthority = false;

    friend bool operator==(const CertificateFacts&, const CertificateFacts&) = default;
};

/// Reads a certificate in DER. Fails with ErrorKind::Damaged.
Result<CertificateFacts> describeCertificate(std::string_view der);

/// "-----BEGIN CERTIFICATE-----" ... with lines of 64 characters (RFC 7468).
std::string certificateToPem(std::string_view der);

/// The certificates of a PEM file, at least one; text around them is passed over. Fails with
/// ErrorKind::Input.
Result<std::vector<std::string>> certificatesFromPem(std::string_view pem);

}  // namespace model
