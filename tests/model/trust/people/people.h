// SPDX-License-Identifier: Apache-2.0
// The authority and the people of an invented foundry. Other programs judge certificates by the
// machine's clock, so everything is valid around now.
#pragma once

#include <string>

#include "trust/authority.h"
#include "trust/identity.h"
#include "trust/signature.h"

namespace people {

/// One moment for the whole test program.
model::UtcTime now();
inline constexpr std::chrono::days kDay{1};

inline constexpr const char* kPassphrase = "six casks of brine";
model::SecretBytes passphrase();

/// What everybody here is issued by. Made once.
const model::Authority& authority();
const model::Identity& authorityIdentity();
/// Inspector, with a P-256 key and a name that ASCII cannot write.
const model::Identity& inspector();
inline constexpr const char* kInspectorName = "Žofie Müller-Ørsted";
/// QA manager, with an RSA key of 3072 bits.
const model::Identity& manager();
inline constexpr const char* kManagerName = "Ansel Quarrie";
/// A customer's inspector, P-256.
const model::Identity& thirdParty();
inline constexpr const char* kThirdPartyName = "Δήμητρα Ωμέγα";

/// Unlocked at now().
const model::SigningKey& inspectorKey();
const model::SigningKey& managerKey();
const model::SigningKey& thirdPartyKey();

/// Only authority(), with an empty revocation list.
model::TrustedCertificates trust();
/// The same, with a list that revokes `identity` since `since`.
model::TrustedCertificates trustWithout(const model::Identity& identity, model::UtcTime since);

}  // namespace people
