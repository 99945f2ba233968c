// SPDX-License-Identifier: Apache-2.0
#include "trust/identity_certificate.h"

#include <openssl/err.h>
#include <openssl/pem.h>
#include <openssl/x509v3.h>

#include "base/digest.h"
#include "trust/key_encryption.h"
#include "trust/key_openssl.h"

namespace model {

Result<CertificateFacts> describeCertificate(std::string_view der) {
    const openssl::Certificate certificate = openssl::readCertificate(der);
    const auto from =
        certificate ? openssl::toTime(X509_get0_notBefore(certificate.get())) : std::nullopt;
    const auto until =
        certificate ? openssl::toTime(X509_get0_notAfter(certificate.get())) : std::nullopt;
    ERR_clear_error();
    if (!from || !until)
        return Error{ErrorKind::Damaged, "", "the bytes are no readable X.509 certificate", {}};

    CertificateFacts facts;
    const X509_NAME* subject = X509_get_subject_name(certificate.get());
    facts.name = openssl::nameEntry(subject, NID_commonName);
    facts.organisation = openssl::nameEntry(subject, NID_organizationName);
    facts.personId = openssl::nameEntry(subject, NID_serialNumber);
    facts.issuer = openssl::nameEntry(X509_get_issuer_name(certificate.get()), NID_commonName);
    facts.serial = openssl::serialText(X509_get0_serialNumber(certificate.get()));
    facts.fingerprint = toHex(sha256(der));
    const EVP_PKEY* key = X509_get0_pubkey(certificate.get());
    facts.key = key == nullptr ? "" : openssl::keyText(key);
    facts.validFrom = *from;
    facts.validUntil = *until;
    facts.isAuthority = X509_check_ca(certificate.get()) != 0;
    ERR_clear_error();
    return facts;
}

std::string certificateToPem(std::string_view der) {
    const openssl::Memory out(BIO_new(BIO_s_mem()));
    std::string pem;
    if (out && PEM_write_bio(out.get(), PEM_STRING_X509, "", openssl::bytesOf(der),
                             static_cast<long>(der.size())) > 0) {
        char* text = nullptr;
        const long size = BIO_get_mem_data(out.get(), &text);
        pem.assign(text, static_cast<std::size_t>(size));
    }
    ERR_clear_error();
    return pem;
}

Result<std::vector<std::string>> certificatesFromPem(std::string_view pem) {
    constexpr std::size_t kLongest = 16U << 20U;
    if (pem.size() > kLongest) return inputError("", "the file is too long for certificates");
    const openssl::Memory in(BIO_new_mem_buf(pem.data(), static_cast<int>(pem.size())));
    std::vector<std::string> all;
    while (in) {
        const openssl::Certificate next(
            PEM_read_bio_X509(in.get(), nullptr, openssl::noPassphrase, nullptr));
        if (!next) break;
        all.push_back(openssl::der(next.get()));
    }
    const unsigned long last = ERR_peek_last_error();
    ERR_clear_error();
    if (ERR_GET_LIB(last) != ERR_LIB_PEM || ERR_GET_REASON(last) != PEM_R_NO_START_LINE)
        return inputError("", "certificate %1 of the file is damaged",
                          {std::to_string(all.size() + 1)});
    if (all.empty()) return inputError("", "the file holds no certificate in PEM form");
    return all;
}

}  // namespace model
