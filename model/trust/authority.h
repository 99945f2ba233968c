// SPDX-License-Identifier: Apache-2.0
// The foundry's own certificate authority, made when the archive is set up: it issues the
// identities of people and revokes them. Whoever trusts its certificate trusts all of them.
#pragma once

#include <chrono>
#include <cstdint>
#include <span>
#include <string>
#include <vector>

#include "base/clock.h"
#include "base/result.h"
#include "trust/identity.h"
#include "trust/key_secret.h"
#include "trust/key_signing.h"

namespace model {

/// Names are UTF-8, 1 to 64 characters (X.520's bound).
struct AuthorityRequest {
    std::string name;          ///< "Quillmere inspection authority"
    std::string organisation;  ///< the company, as it stands in every certificate
    std::string country;       ///< two letters, ISO 3166-1; empty: not stated
    UtcTime from{};
    UtcTime until{};
};

struct PersonRequest {
    std::string name;
    std::string personId;  ///< never given to a second person; 1 to 64 characters of ASCII
    UtcTime from{};
    UtcTime until{};  ///< not after the authority's own end
    KeyKind key = KeyKind::P256;
};

enum class RevocationReason { Unspecified, KeyCompromise, PositionChanged, Superseded, NotNeeded };

struct RevokedCertificate {
    std::string serial;  ///< CertificateFacts::serial
    UtcTime since{};
    RevocationReason reason = RevocationReason::Unspecified;
};

class Authority {
public:
    /// A self-signed P-256 authority. By name constraints its certificate stands for people of this
    /// organisation only, never for web servers or mail addresses, wherever it may be trusted; nor
    /// can it make further authorities.
    static Result<Identity> create(const AuthorityRequest& request, const SecretBytes& passphrase);

    /// Fails as model::unlock() does, and for an identity that is no authority.
    static Result<Authority> unlock(const Identity& stored, const SecretBytes& passphrase,
                                    UtcTime now);

    /// A person's identity with a new key under the person's own passphrase. For signatures only.
    [[nodiscard]] Result<Identity> issue(const PersonRequest& request,
                                         const SecretBytes& personPassphrase) const;

    /// The list of all revoked certificates (DER, RFC 5280 clause 5). `number` grows by each list;
    /// the next list is due at `next`. Serial numbers that are none fail.
    [[nodiscard]] Result<std::string> revocationList(std::span<const RevokedCertificate> revoked,
                                                     std::int64_t number, UtcTime now,
                                                     UtcTime next) const;

    /// DER.
    [[nodiscard]] std::string certificate() const;

private:
    explicit Authority(SigningKey key) : key_(std::move(key)) {}

    SigningKey key_;
};

}  // namespace model
