// SPDX-License-Identifier: Apache-2.0
#include "trust/identity.h"

#include <algorithm>
#include <openssl/err.h>
#include <openssl/x509v3.h>

#include "trust/identity_certificate.h"
#include "trust/identity_open.h"
#include "trust/identity_revocation.h"
#include "trust/key_encryption.h"

namespace model {
namespace {

Error damaged(std::string reason) {
    return {ErrorKind::Damaged, "", std::move(reason), {}};
}

// Valid UTF-8's number of characters.
std::optional<std::size_t> characters(std::string_view utf8) {
    std::size_t count = 0;
    const unsigned char* next = openssl::bytesOf(utf8);
    auto left = static_cast<int>(utf8.size());
    while (left > 0) {
        unsigned long code = 0;
        const int used = UTF8_getc(next, left, &code);
        if (used <= 0) return std::nullopt;
        next += used;
        left -= used;
        ++count;
    }
    return count;
}

Result<void> checkValidity(X509* certificate, UtcTime now) {
    const auto from = openssl::toTime(X509_get0_notBefore(certificate));
    const auto until = openssl::toTime(X509_get0_notAfter(certificate));
    if (!from || !until) return damaged("a stored certificate has no readable dates");
    if (now >= *from && now <= *until) return {};
    const std::string name = openssl::nameEntry(X509_get_subject_name(certificate), NID_commonName);
    if (now < *from)
        return inputError("", "the certificate of %1 is not valid before %2",
                          {name, toText(*from)});
    return inputError("", "the certificate of %1 expired on %2", {name, toText(*until)});
}

}  // namespace

namespace openssl {

Result<std::vector<Certificate>> readCertificates(const std::vector<std::string>& certificates) {
    std::vector<Certificate> all;
    for (const std::string& bytes : certificates) {
        all.push_back(readCertificate(bytes));
        if (!all.back()) return damaged("a stored certificate cannot be read");
    }
    if (all.empty()) return damaged("the identity has no certificate");
    return all;
}

Result<HeldKey> openIdentity(const Identity& identity, const SecretBytes& passphrase) {
    auto certificates = readCertificates(identity.certificates);
    if (!certificates) return certificates.error();
    auto key = decryptKey(identity.encryptedKey, passphrase);
    if (!key) return key.error();
    const bool fits = X509_check_private_key(certificates->front().get(), key->get()) == 1;
    ERR_clear_error();
    if (!fits) return damaged("the stored private key does not belong to the certificate");
    return HeldKey{std::move(*key), std::move(*certificates)};
}

Result<void> checkUsable(std::span<const Certificate> chain, UtcTime now,
                         std::span<const std::string> revocationLists) {
    for (std::size_t i = 0; i < chain.size(); ++i) {
        X509* certificate = chain[i].get();
        if (auto valid = checkValidity(certificate, now); !valid) return valid;
        if (i + 1 == chain.size()) break;
        const auto found = lookUp(certificate, chain[i + 1].get(), revocationLists, now);
        if (found.damaged) return damaged("a revocation list is damaged or of an unknown kind");
        if (found.revoked)
            return inputError("", "the certificate of %1 was revoked on %2: %3",
                              {nameEntry(X509_get_subject_name(certificate), NID_commonName),
                               toText(found.revoked->since), found.revoked->reason});
    }
    return {};
}

}  // namespace openssl

Result<void> checkNewPassphrase(const SecretBytes& passphrase) {
    const auto count = characters(passphrase.view());
    if (!count || passphrase.view().find('\0') != std::string_view::npos)
        return inputError("", "a passphrase must be text");
    if (*count < kShortestPassphrase)
        return inputError("", "a passphrase must have at least %1 characters",
                          {std::to_string(kShortestPassphrase)});
    if (passphrase.view().size() > kLongestPassphraseBytes)
        return inputError("", "a passphrase must have at most %1 bytes",
                          {std::to_string(kLongestPassphraseBytes)});
    return {};
}

bool isWrongPassphrase(const Error& error) {
    return error.reason == kWrongPassphrase;
}

Result<void> checkUsable(const std::vector<std::string>& certificates, UtcTime now,
                         std::span<const std::string> revocationLists) {
    auto chain = openssl::readCertificates(certificates);
    if (!chain) return chain.error();
    return openssl::checkUsable(*chain, now, revocationLists);
}

Result<SigningKey> unlock(const Identity& identity, const SecretBytes& passphrase, UtcTime now,
                          std::span<const std::string> revocationLists) {
    auto held = openssl::openIdentity(identity, passphrase);
    if (!held) return held.error();
    if (X509_check_ca(held->certificates.front().get()) != 0)
        return inputError("", "an authority's key signs certificates only");
    if (auto usable = checkUsable(identity.certificates, now, revocationLists); !usable)
        return usable.error();
    return openssl::holding(std::move(*held));
}

Result<Identity> changePassphrase(const Identity& identity, const SecretBytes& passphrase,
                                  const SecretBytes& newPassphrase) {
    if (auto allowed = checkNewPassphrase(newPassphrase); !allowed) return allowed.error();
    const auto held = openssl::openIdentity(identity, passphrase);
    if (!held) return held.error();
    auto encrypted = openssl::encryptKey(held->key.get(), newPassphrase);
    if (!encrypted) return encrypted.error();
    return Identity{identity.certificates, std::move(*encrypted)};
}

}  // namespace model
