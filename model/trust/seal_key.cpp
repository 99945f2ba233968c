// SPDX-License-Identifier: Apache-2.0
#include "trust/seal_key.h"

#include <openssl/err.h>
#include <openssl/pem.h>

#include "trust/key_encryption.h"
#include "trust/key_openssl.h"

namespace model {
namespace openssl {

using KeyUse = Owned<EVP_PKEY_CTX, EVP_PKEY_CTX_free>;

struct HeldSealKey {
    Key key;
    KeyUse use;  ///< ready to sign or to verify, again and again
};

namespace {

using Start = int (*)(EVP_PKEY_CTX*);

/// Null where the library refuses.
std::unique_ptr<HeldSealKey> held(Key key, Start start) {
    KeyUse use(EVP_PKEY_CTX_new(key.get(), nullptr));
    if (!use || start(use.get()) != 1 ||
        EVP_PKEY_CTX_set_signature_md(use.get(), EVP_sha256()) != 1)
        return nullptr;
    return std::make_unique<HeldSealKey>(HeldSealKey{std::move(key), std::move(use)});
}

Error noKey(const char* what) {
    ERR_clear_error();
    return {ErrorKind::Damaged, "", what, {}};
}

}  // namespace
}  // namespace openssl

SealKey::SealKey(std::unique_ptr<openssl::HeldSealKey> held) : held_(std::move(held)) {}
SealKey::SealKey(SealKey&&) noexcept = default;
SealKey& SealKey::operator=(SealKey&&) noexcept = default;
SealKey::~SealKey() = default;

Result<SealKey> SealKey::make() {
    auto key = openssl::makeKey(KeyKind::P256);
    if (!key) return key.error();
    auto held = openssl::held(std::move(*key), EVP_PKEY_sign_init);
    if (!held) return openssl::failure("making a key");
    return SealKey(std::move(held));
}

Result<SealKey> SealKey::fromPem(const SecretBytes& pem) {
    const openssl::Memory in(
        BIO_new_mem_buf(pem.view().data(), static_cast<int>(pem.view().size())));
    openssl::Key key(in ? PEM_read_bio_PrivateKey(in.get(), nullptr, openssl::noPassphrase, nullptr)
                        : nullptr);
    auto held = key && openssl::keyText(key.get()) == "P-256"
                    ? openssl::held(std::move(key), EVP_PKEY_sign_init)
                    : nullptr;
    if (!held) return openssl::noKey("holds no private key that can be read");
    return SealKey(std::move(held));
}

Result<SecretBytes> SealKey::toPem() const {
    const openssl::Memory out(BIO_new(BIO_s_secmem()));
    char* text = nullptr;
    if (!out || PEM_write_bio_PKCS8PrivateKey(out.get(), held_->key.get(), nullptr, nullptr, 0,
                                              nullptr, nullptr) != 1)
        return openssl::failure("writing a key");
    const long size = BIO_get_mem_data(out.get(), &text);
    return SecretBytes(std::string_view(text, static_cast<std::size_t>(size)));
}

std::string SealKey::publicKey() const {
    return openssl::encoded(i2d_PUBKEY, held_->key.get());
}

Result<std::string> SealKey::seal(const Digest& hash) const {
    std::string signature(static_cast<std::size_t>(EVP_PKEY_get_size(held_->key.get())), '\0');
    std::size_t size = signature.size();
    if (EVP_PKEY_sign(held_->use.get(), reinterpret_cast<unsigned char*>(signature.data()), &size,
                      hash.data(), hash.size()) != 1)
        return openssl::failure("sealing");
    signature.resize(size);
    return signature;
}

SealCheck::SealCheck(std::unique_ptr<openssl::HeldSealKey> held) : held_(std::move(held)) {}
SealCheck::SealCheck(SealCheck&&) noexcept = default;
SealCheck& SealCheck::operator=(SealCheck&&) noexcept = default;
SealCheck::~SealCheck() = default;

Result<SealCheck> SealCheck::read(std::string_view publicKey) {
    auto key = openssl::decodedExactly<openssl::Key>(
        publicKey,
        [](EVP_PKEY** into, const unsigned char** at, long size) {
            return d2i_PUBKEY(into, at, size);
        },
        i2d_PUBKEY);
    auto held = key && openssl::keyText(key.get()) == "P-256"
                    ? openssl::held(std::move(key), EVP_PKEY_verify_init)
                    : nullptr;
    if (!held) return openssl::noKey("is no public key that can be read");
    return SealCheck(std::move(held));
}

bool SealCheck::fits(const Digest& hash, std::string_view seal) const {
    const bool fits = EVP_PKEY_verify(held_->use.get(), openssl::bytesOf(seal), seal.size(),
                                      hash.data(), hash.size()) == 1;
    if (!fits) ERR_clear_error();
    return fits;
}

}  // namespace model
