// SPDX-License-Identifier: Apache-2.0
// A person's X.509 identity: certificates that anybody may see, and a private key encrypted under
// a passphrase that only the person knows. Whoever does not know it cannot sign for the person, the
// administrator included.
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "base/clock.h"
#include "base/result.h"
#include "trust/key_secret.h"
#include "trust/key_signing.h"

namespace model {

enum class KeyKind { P256, Rsa3072 };

/// As it is stored; nothing in it is secret without the passphrase.
struct Identity {
    std::vector<std::string> certificates;  ///< DER, the person's own first, then its issuers
    std::string encryptedKey;  ///< DER, PKCS #8 encrypted by PBES2 with scrypt and AES-256

    friend bool operator==(const Identity&, const Identity&) = default;
};

/// In characters of UTF-8. NIST SP 800-63B 5.1.1.2; grade M.
inline constexpr std::size_t kShortestPassphrase = 8;
inline constexpr std::size_t kLongestPassphraseBytes = 1024;

/// Whether a new passphrase is long enough and UTF-8.
Result<void> checkNewPassphrase(const SecretBytes& passphrase);

/// The reason of the error that a wrong passphrase gives; see isWrongPassphrase().
inline constexpr std::string_view kWrongPassphrase = "the passphrase is wrong";

/// To be counted by afterWrongPassphrase(); any other failure of unlock() is not.
bool isWrongPassphrase(const Error& error);

/// Unlocks a person's key for signing at `now`. Fails with kWrongPassphrase; and as checkUsable().
/// Takes some 0.2 s on purpose: call it away from the window's thread.
Result<SigningKey> unlock(const Identity& identity, const SecretBytes& passphrase, UtcTime now,
                          std::span<const std::string> revocationLists = {});

/// Whether certificates (as in Identity) may be used to sign at `now`. Fails when one of them is
/// not valid yet, has expired or is revoked by a list (DER) of its issuer, or when such a list is
/// damaged; the reason names the certificate and the date.
Result<void> checkUsable(const std::vector<std::string>& certificates, UtcTime now,
                         std::span<const std::string> revocationLists = {});

/// The same identity under another passphrase; an expired one too.
Result<Identity> changePassphrase(const Identity& identity, const SecretBytes& passphrase,
                                  const SecretBytes& newPassphrase);

/// Takes over the company's own identity from a PKCS #12 file (RFC 7292), at most 1 MiB: its key
/// (P-256, P-384 or RSA of 3072 to 8192 bits), its certificate and those of its issuers which the
/// file holds. Fails with kWrongPassphrase, and for files without integrity check, with an
/// authority's certificate, with a key for other uses, or in ciphers no longer safe.
Result<Identity> importPkcs12(std::string_view file, const SecretBytes& filePassphrase,
                              const SecretBytes& newPassphrase);

}  // namespace model
