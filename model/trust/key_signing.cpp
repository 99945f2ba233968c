// SPDX-License-Identifier: Apache-2.0
#include "trust/key_signing.h"

#include <openssl/err.h>

#include "trust/key_openssl.h"

namespace model {

SigningKey::SigningKey(std::unique_ptr<openssl::HeldKey> held) : held_(std::move(held)) {}
SigningKey::SigningKey(SigningKey&&) noexcept = default;
SigningKey& SigningKey::operator=(SigningKey&&) noexcept = default;
SigningKey::~SigningKey() = default;

std::vector<std::string> SigningKey::certificates() const {
    std::vector<std::string> all;
    for (const auto& certificate : held_->certificates)
        all.push_back(openssl::der(certificate.get()));
    return all;
}

std::string SigningKey::name() const {
    return openssl::nameEntry(X509_get_subject_name(held_->certificates.front().get()),
                              NID_commonName);
}

Result<std::string> signBare(std::string_view bytes, const SigningKey& key) {
    const openssl::Hashing hashing(EVP_MD_CTX_new());
    std::size_t size = 0;
    if (!hashing ||
        EVP_DigestSignInit(hashing.get(), nullptr, EVP_sha256(), nullptr, key.held().key.get()) !=
            1 ||
        EVP_DigestSign(hashing.get(), nullptr, &size, openssl::bytesOf(bytes), bytes.size()) != 1)
        return openssl::failure("signing");
    std::string signature(size, '\0');
    if (EVP_DigestSign(hashing.get(), reinterpret_cast<unsigned char*>(signature.data()), &size,
                       openssl::bytesOf(bytes), bytes.size()) != 1)
        return openssl::failure("signing");
    signature.resize(size);
    return signature;
}

bool bareSignatureFits(std::string_view bytes, std::string_view signature,
                       std::string_view certificate) {
    const openssl::Certificate signer = openssl::readCertificate(certificate);
    EVP_PKEY* key = signer ? X509_get0_pubkey(signer.get()) : nullptr;
    const openssl::Hashing hashing(EVP_MD_CTX_new());
    const bool fits =
        key != nullptr && hashing &&
        EVP_DigestVerifyInit(hashing.get(), nullptr, EVP_sha256(), nullptr, key) == 1 &&
        EVP_DigestVerify(hashing.get(), openssl::bytesOf(signature), signature.size(),
                         openssl::bytesOf(bytes), bytes.size()) == 1;
    ERR_clear_error();
    return fits;
}

}  // namespace model
