// SPDX-License-Identifier: Apache-2.0
// Owners of OpenSSL's objects and small conversions, for the .cpp files of this folder only.
#pragma once

#include <memory>
#include <openssl/asn1.h>
#include <openssl/bio.h>
#include <openssl/cms.h>
#include <openssl/evp.h>
#include <openssl/x509.h>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/clock.h"
#include "base/result.h"
#include "trust/key_signing.h"

namespace model::openssl {

template <auto Free>
struct Freed {
    template <class T>
    void operator()(T* object) const {
        Free(object);
    }
};
template <class T, auto Free>
using Owned = std::unique_ptr<T, Freed<Free>>;

using Certificate = Owned<X509, X509_free>;
using Key = Owned<EVP_PKEY, EVP_PKEY_free>;
using RevocationList = Owned<X509_CRL, X509_CRL_free>;
using SignedData = Owned<CMS_ContentInfo, CMS_ContentInfo_free>;
using Hashing = Owned<EVP_MD_CTX, EVP_MD_CTX_free>;
using Memory = Owned<BIO, BIO_free_all>;
inline void freeCertificates(STACK_OF(X509) * stack) {
    sk_X509_pop_free(stack, X509_free);
}
using Certificates = Owned<STACK_OF(X509), freeCertificates>;
inline void freeBytes(unsigned char* bytes) {
    OPENSSL_free(bytes);
}
using Bytes = Owned<unsigned char, freeBytes>;

inline const unsigned char* bytesOf(std::string_view bytes) {
    return reinterpret_cast<const unsigned char*>(bytes.data());
}
inline std::string_view view(const ASN1_STRING* text) {
    return {reinterpret_cast<const char*>(ASN1_STRING_get0_data(text)),
            static_cast<std::size_t>(ASN1_STRING_length(text))};
}

/// DER by one of OpenSSL's i2d functions; empty when it fails.
template <class T, class Encode>
std::string encoded(Encode encode, T* object) {
    unsigned char* bytes = nullptr;
    const int size = encode(object, &bytes);
    const Bytes owner(bytes);
    if (size <= 0) return {};
    return {reinterpret_cast<const char*>(bytes), static_cast<std::size_t>(size)};
}

/// Reads DER by one of OpenSSL's d2i functions; null unless all of `der` is one object that is
/// written back as the same bytes.
template <class Owner, class Decode, class Encode>
Owner decodedExactly(std::string_view der, Decode decode, Encode encode) {
    constexpr std::size_t kLongest = 64U << 20U;
    if (der.empty() || der.size() > kLongest) return nullptr;
    const unsigned char* next = bytesOf(der);
    Owner object(decode(nullptr, &next, static_cast<long>(der.size())));
    if (!object || next != bytesOf(der) + der.size()) return nullptr;
    if (encoded(encode, object.get()) != der) return nullptr;
    return object;
}
Certificate readCertificate(std::string_view der);
RevocationList readRevocationList(std::string_view der);

std::string der(const X509* certificate);

/// For PEM that is not encrypted: the library would ask for a passphrase on the terminal.
int noPassphrase(char* buffer, int size, int writing, void* data);

/// Nothing where it is no time, or a date before 1950 or after 9999.
std::optional<UtcTime> toTime(const ASN1_TIME* time);
bool setTime(ASN1_TIME* field, UtcTime time);

/// The first value of an attribute of a name, in UTF-8; empty where there is none.
std::string nameEntry(const X509_NAME* name, int nid);

std::string serialText(const ASN1_INTEGER* serial);

/// `what` failed inside the cryptographic library, which says why. Empties its list of errors.
Error failure(std::string_view what);

/// What is inside a SigningKey.
struct HeldKey {
    Key key;
    std::vector<Certificate> certificates;  ///< the key's own first, then its issuers
};
SigningKey holding(HeldKey held);

}  // namespace model::openssl
