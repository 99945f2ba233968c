// SPDX-License-Identifier: Apache-2.0
// Opening an identity without asking what it may be used for. For the .cpp files of this folder
// only.
#pragma once

#include <string>
#include <vector>

#include "trust/identity.h"
#include "trust/key_openssl.h"

namespace model::openssl {

/// At least one. Fails with ErrorKind::Damaged.
Result<std::vector<Certificate>> readCertificates(const std::vector<std::string>& certificates);

/// Fails with kWrongPassphrase, or Damaged where key and certificate do not belong together.
Result<HeldKey> openIdentity(const Identity& identity, const SecretBytes& passphrase);

/// checkUsable() of certificates that were read already.
Result<void> checkUsable(std::span<const Certificate> chain, UtcTime now,
                         std::span<const std::string> revocationLists);

}  // namespace model::openssl
