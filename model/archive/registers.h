// SPDX-License-Identifier: Apache-2.0
// The works' registers: equipment, consumables, procedures, people's certificates, and what becomes
// of a casting that is not acceptable. An entry is never changed: a save adds its next version, and
// every version stays. T is one of the structs of registers/ that have a name (kRegister).
//
// Some entries are signed by whoever makes them, see signersOf(): the others are saved in a name.
// Errors are those of archive.h, and those of checkMaySign() (sign_in.h) where something is signed.
#pragma once

#include <cstdint>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "archive/archive.h"
#include "archive/people.h"
#include "archive/sign_in.h"

namespace model {

/// Whose signature an entry of a register needs; empty: nobody's. Approving a procedure needs
/// Level 3 of its method besides.
const std::set<Role>& signersOf(std::string_view registerName);

/// Adds an entry (`knownVersion` 0) or its next version, and returns the version. Input: a field is
/// wrong (place: its key) or what the entry names is not there; Refused: it needs a signature.
template <class T>
Result<std::int64_t> saveEntry(Archive& archive, const T& entry, std::int64_t knownVersion,
                               const Actor& actor);
/// Signed. Refused: the person has not the role.
template <class T>
Result<std::int64_t> saveEntry(Archive& archive, const T& entry, std::int64_t knownVersion,
                               const SignedIn& signer);

/// Keeps a file's bytes with the archive's files and returns their SHA-256, for the entry's field
/// `file_sha256`; to be called right before saving the entry that names it. Input: empty, or above
/// 50 MB.
Result<std::string> keepFile(Archive& archive, std::string_view bytes);
/// The bytes of a file that an entry names. Damaged: gone or altered.
Result<std::string> entryFile(const Archive& archive, const std::string& digest);

/// The current version of every entry, by key.
template <class T>
Result<std::vector<Stored<T>>> entries(const Archive& archive);
/// The same of one casting, in the order in which they were first made.
template <class T>
Result<std::vector<Stored<T>>> entriesOf(const Archive& archive, const std::string& casting);
/// The current version; Input: there is none. `key`: keyOf() of field.h.
template <class T>
Result<Stored<T>> entry(const Archive& archive, const std::string& key);
/// Every version, rising.
template <class T>
Result<std::vector<Stored<T>>> versionsOf(const Archive& archive, const std::string& key);

/// Everything that the works has and who may test, as it is now.
Result<Holdings> holdings(const Archive& archive);

}  // namespace model
