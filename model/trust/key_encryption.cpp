// SPDX-License-Identifier: Apache-2.0
#include "trust/key_encryption.h"

#include <openssl/err.h>
#include <openssl/pkcs12.h>
#include <openssl/rsa.h>

namespace model::openssl {
namespace {

using PrivateKeyInfo = Owned<PKCS8_PRIV_KEY_INFO, PKCS8_PRIV_KEY_INFO_free>;
using EncryptedKey = Owned<X509_SIG, X509_SIG_free>;
using Algorithm = Owned<X509_ALGOR, X509_ALGOR_free>;
using Pbes2 = Owned<PBE2PARAM, PBE2PARAM_free>;
using Scrypt = Owned<SCRYPT_PARAMS, SCRYPT_PARAMS_free>;

// 16 MiB and some 0.2 s a try. The library decrypts nothing above 32 MiB unless told to, so more
// work is asked for by p. The same work as N = 2^17, p = 1 of the usual recommendations (common
// practice: N = 2^14, r = 8, p = 5).
constexpr std::uint64_t kScryptN = 1U << 14U;
constexpr std::uint64_t kScryptR = 8;
constexpr std::uint64_t kScryptP = 5;
constexpr int kSaltBytes = 16;

bool is(const ASN1_INTEGER* number, std::uint64_t value) {
    std::uint64_t held = 0;
    return number != nullptr && ASN1_INTEGER_get_uint64(&held, number) == 1 && held == value;
}

// Stored bytes decide neither how weak the derivation is nor how long it takes.
bool asWritten(const X509_SIG* encrypted) {
    const X509_ALGOR* algorithm = nullptr;
    X509_SIG_get0(encrypted, &algorithm, nullptr);
    if (OBJ_obj2nid(algorithm->algorithm) != NID_pbes2 || algorithm->parameter == nullptr)
        return false;
    const Pbes2 pbes2(static_cast<PBE2PARAM*>(
        ASN1_TYPE_unpack_sequence(ASN1_ITEM_rptr(PBE2PARAM), algorithm->parameter)));
    if (!pbes2 || OBJ_obj2nid(pbes2->keyfunc->algorithm) != NID_id_scrypt ||
        pbes2->keyfunc->parameter == nullptr ||
        OBJ_obj2nid(pbes2->encryption->algorithm) != NID_aes_256_cbc)
        return false;
    const Scrypt scrypt(static_cast<SCRYPT_PARAMS*>(
        ASN1_TYPE_unpack_sequence(ASN1_ITEM_rptr(SCRYPT_PARAMS), pbes2->keyfunc->parameter)));
    return scrypt && is(scrypt->costParameter, kScryptN) && is(scrypt->blockSize, kScryptR) &&
           is(scrypt->parallelizationParameter, kScryptP);
}

}  // namespace

Result<Key> makeKey(KeyKind kind) {
    Key key(kind == KeyKind::P256 ? EVP_EC_gen("P-256") : EVP_RSA_gen(3072U));
    if (!key) return failure("making a key");
    return key;
}

std::string keyText(const EVP_PKEY* key) {
    if (EVP_PKEY_is_a(key, "RSA") == 1) {
        const int bits = EVP_PKEY_get_bits(key);
        return bits >= 3072 && bits <= 8192 ? "RSA-" + std::to_string(bits) : "";
    }
    char curve[64] = "";
    if (EVP_PKEY_is_a(key, "EC") != 1 ||
        EVP_PKEY_get_group_name(key, curve, sizeof curve, nullptr) != 1)
        return {};
    switch (OBJ_txt2nid(curve)) {
        case NID_X9_62_prime256v1:
            return "P-256";
        case NID_secp384r1:
            return "P-384";
        default:
            return {};
    }
}

Result<std::string> encryptKey(const EVP_PKEY* key, const SecretBytes& passphrase) {
    const PrivateKeyInfo plain(EVP_PKEY2PKCS8(key));
    Algorithm scheme(PKCS5_pbe2_set_scrypt(EVP_aes_256_cbc(), nullptr, kSaltBytes, nullptr,
                                           kScryptN, kScryptR, kScryptP));
    if (!plain || !scheme) return failure("encrypting a private key");
    const EncryptedKey encrypted(PKCS8_set0_pbe(passphrase.view().data(),
                                                static_cast<int>(passphrase.view().size()),
                                                plain.get(), scheme.get()));
    if (!encrypted) return failure("encrypting a private key");
    static_cast<void>(scheme.release());  // is part of `encrypted` now
    std::string bytes = encoded(i2d_X509_SIG, encrypted.get());
    if (bytes.empty()) return failure("encrypting a private key");
    return bytes;
}

Result<Key> decryptKey(std::string_view encrypted, const SecretBytes& passphrase) {
    const auto read = decodedExactly<EncryptedKey>(encrypted, d2i_X509_SIG, i2d_X509_SIG);
    if (!read || !asWritten(read.get())) {
        ERR_clear_error();
        return Error{ErrorKind::Damaged,
                     "",
                     "the stored private key is not in the form in which this program stores keys",
                     {}};
    }
    const PrivateKeyInfo plain(PKCS8_decrypt(read.get(), passphrase.view().data(),
                                             static_cast<int>(passphrase.view().size())));
    Key key(plain ? EVP_PKCS82PKEY(plain.get()) : nullptr);
    ERR_clear_error();
    if (!key) return inputError("", std::string(kWrongPassphrase));
    return key;
}

}  // namespace model::openssl
