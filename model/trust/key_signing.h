// SPDX-License-Identifier: Apache-2.0
// An unlocked private key with its certificates.
#pragma once

#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "base/clock.h"
#include "base/result.h"

namespace model {
namespace openssl {
struct HeldKey;
}

/// A private key, ready to sign. It can be moved, not copied, and is wiped on destruction; keep it
/// no longer than the person's session. Made by unlock() or Authority::unlock().
class SigningKey {
public:
    explicit SigningKey(std::unique_ptr<openssl::HeldKey> held);
    SigningKey(SigningKey&&) noexcept;
    SigningKey& operator=(SigningKey&&) noexcept;
    ~SigningKey();

    /// DER, the key's own first, then its issuers.
    [[nodiscard]] std::vector<std::string> certificates() const;
    /// Whose it is: the common name in its own certificate, UTF-8; empty where there is none.
    [[nodiscard]] std::string name() const;

    [[nodiscard]] const openssl::HeldKey& held() const { return *held_; }

private:
    std::unique_ptr<openssl::HeldKey> held_;
};

/// A signature of `bytes` by the bare key, with SHA-256: ECDSA (DER) or RSA PKCS #1 v1.5. It says
/// nothing of who signed or when; for rows whose certificate is stored beside them. Whether the
/// identity may still sign is the caller's to ask (checkUsable()).
Result<std::string> signBare(std::string_view bytes, const SigningKey& key);

/// Whether `signature` is signBare()'s of `bytes` by the key of `certificate` (DER). False also
/// where certificate or signature cannot be read.
bool bareSignatureFits(std::string_view bytes, std::string_view signature,
                       std::string_view certificate);

}  // namespace model
