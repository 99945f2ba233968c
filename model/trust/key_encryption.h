// SPDX-License-Identifier: Apache-2.0
// Private keys at rest: PKCS #8 (RFC 5958) encrypted by PBES2 (RFC 8018) with scrypt (RFC 7914)
// and AES-256-CBC, which `openssl pkcs8` reads. For the .cpp files of this folder only.
#pragma once

#include <string>
#include <string_view>

#include "trust/identity.h"
#include "trust/key_openssl.h"
#include "trust/key_secret.h"

namespace model::openssl {

/// A new key.
Result<Key> makeKey(KeyKind kind);

/// "P-256", "RSA-3072" ...; empty for a key that may not sign here: neither P-256, P-384 nor RSA of
/// 3072 to 8192 bits.
std::string keyText(const EVP_PKEY* key);

/// DER of an EncryptedPrivateKeyInfo.
Result<std::string> encryptKey(const EVP_PKEY* key, const SecretBytes& passphrase);

/// Fails with kWrongPassphrase for a wrong passphrase and, which cannot be told apart, for damaged
/// encrypted bytes; with ErrorKind::Damaged for bytes not written by encryptKey().
Result<Key> decryptKey(std::string_view encrypted, const SecretBytes& passphrase);

}  // namespace model::openssl
