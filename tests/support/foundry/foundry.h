// SPDX-License-Identifier: Apache-2.0
// A working archive that is set up, with people who have identities; and those people signed in
// without waiting for their passphrases.
#pragma once

#include <string>

#include "archive/identities.h"
#include "foundry/people.h"

namespace foundry {

/// When the archive was made; nobody's certificate is valid before. 2026-11-25T09:30:00Z.
model::UtcTime madeAt();
/// When the people's certificates end; the authority's ends a year later.
model::UtcTime validUntil();

/// Of everybody, and another one of the authority.
model::SecretBytes passphrase();
model::SecretBytes authorityPassphrase();
inline constexpr const char* kPassphrase = "green sand and clay";
inline constexpr const char* kAuthorityPassphrase = "one ladle of iron";

model::AuthorityRequest authorityRequest();

/// Copies the archive and its key file to `path`, where nothing may be yet.
void copyTo(const std::string& path);

/// A person of people.h signed in to a copy of the archive, or to one that grew out of it.
model::SignedIn signedIn(const model::Archive& archive, const std::string& personId);

/// The private number of a person's P-256 key, 32 bytes: nobody else may know it.
std::string privateNumber(const std::string& personId);

/// For the program that makes the archive: where it is, and keeping a key for signedIn().
std::string archiveIn(const std::string& folder);
void keepKey(const std::string& folder, const model::SignedIn& person);

}  // namespace foundry
