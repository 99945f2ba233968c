// SPDX-License-Identifier: Apache-2.0
#include <algorithm>
#include <openssl/err.h>
#include <openssl/pkcs12.h>
#include <openssl/x509v3.h>

#include "trust/identity.h"
#include "trust/key_encryption.h"
#include "trust/key_openssl.h"

namespace model {
namespace {

using openssl::Certificate;
using Pkcs12 = openssl::Owned<PKCS12, PKCS12_free>;

constexpr std::size_t kLongestFile = 1U << 20U;
// Far above what any program writes; a file must not keep this one busy for minutes.
constexpr std::int64_t kMostIterations = 10'000'000;

bool iterationsBounded(const PKCS12* file) {
    const ASN1_INTEGER* iterations = nullptr;
    PKCS12_get0_mac(nullptr, nullptr, nullptr, &iterations, file);
    std::int64_t count = 1;
    return iterations == nullptr ||
           (ASN1_INTEGER_get_int64(&count, iterations) == 1 && count <= kMostIterations);
}

// The certificate and its issuers in order, as far as the file has them.
std::vector<std::string> ordered(X509* own, const STACK_OF(X509) * others) {
    std::vector<std::string> chain{openssl::der(own)};
    X509* last = own;
    for (int step = 0; step < sk_X509_num(others); ++step) {
        X509* issuer = nullptr;
        for (int i = 0; i < sk_X509_num(others) && issuer == nullptr; ++i) {
            X509* candidate = sk_X509_value(others, i);
            if (candidate != last && X509_cmp(candidate, last) != 0 &&
                X509_check_issued(candidate, last) == X509_V_OK &&
                X509_verify(last, X509_get0_pubkey(candidate)) == 1)
                issuer = candidate;
        }
        if (issuer == nullptr) break;
        std::string bytes = openssl::der(issuer);
        if (std::find(chain.begin(), chain.end(), bytes) != chain.end()) break;
        chain.push_back(std::move(bytes));
        last = issuer;
    }
    return chain;
}

Result<void> checkPurpose(X509* certificate, const EVP_PKEY* key) {
    if (openssl::keyText(key).empty())
        return inputError("", "the key must be P-256, P-384 or RSA of 3072 to 8192 bits");
    if (X509_check_ca(certificate) != 0)
        return inputError("", "the file holds an authority's certificate, not a person's");
    if ((X509_get_key_usage(certificate) & (KU_DIGITAL_SIGNATURE | KU_NON_REPUDIATION)) == 0)
        return inputError("", "the certificate does not allow signatures");
    return {};
}

}  // namespace

Result<Identity> importPkcs12(std::string_view file, const SecretBytes& filePassphrase,
                              const SecretBytes& newPassphrase) {
    if (auto allowed = checkNewPassphrase(newPassphrase); !allowed) return allowed.error();
    if (file.size() > kLongestFile)
        return inputError("", "the file is too long for a PKCS #12 identity");
    ERR_clear_error();
    const unsigned char* next = openssl::bytesOf(file);
    const Pkcs12 read(d2i_PKCS12(nullptr, &next, static_cast<long>(file.size())));
    ERR_clear_error();
    if (!read) return inputError("", "the file is no PKCS #12 identity, or is damaged");
    if (PKCS12_mac_present(read.get()) != 1 || !iterationsBounded(read.get()))
        return inputError("", "the PKCS #12 file has no integrity check that can be made");
    const std::string_view passphrase = filePassphrase.view();
    if (PKCS12_verify_mac(read.get(), passphrase.data() == nullptr ? "" : passphrase.data(),
                          static_cast<int>(passphrase.size())) != 1) {
        ERR_clear_error();
        return inputError("", std::string(kWrongPassphrase));
    }

    EVP_PKEY* key = nullptr;
    X509* certificate = nullptr;
    STACK_OF(X509)* others = nullptr;
    // Ends at a zero byte, which SecretBytes keeps behind what it holds.
    const int parsed =
        PKCS12_parse(read.get(), passphrase.data() == nullptr ? "" : passphrase.data(), &key,
                     &certificate, &others);
    const openssl::Key keyOwner(key);
    const Certificate certificateOwner(certificate);
    const openssl::Certificates othersOwner(others);
    ERR_clear_error();
    if (parsed != 1)
        return inputError("",
                          "the PKCS #12 file is encrypted with a cipher that is no longer "
                          "safe, or is damaged; export it again with AES");
    if (key == nullptr || certificate == nullptr)
        return inputError("", "the PKCS #12 file lacks the private key or its certificate");
    if (auto fit = checkPurpose(certificate, key); !fit) return fit.error();
    auto encrypted = openssl::encryptKey(key, newPassphrase);
    if (!encrypted) return encrypted.error();
    std::vector<std::string> chain = ordered(certificate, others);
    ERR_clear_error();
    return Identity{std::move(chain), std::move(*encrypted)};
}

}  // namespace model
