// SPDX-License-Identifier: Apache-2.0
// The works' registers: equipment, consumables, procedures, people's certificates, and what becomes
// of a casting that is not acceptable. An entry is never changed: a save adds its next version, and
// every version stays. T is one of the structs of registers/ that have a name (kRegister).
//
// Signed by whoever makes them, see signersOf(): qualifications, eye tests, authorisations,
// procedures, other results, dispositions, concessions, and attestations of condition sets. The
// others are saved in a name. Errors are those of archive.h, and those of checkMaySign()
// (sign_in.h) where something is signed.
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

/// Whose signature an entry of a register needs: one who has any of the roles; empty: nobody's.
/// Approving a procedure, and changing more of an approved one than that it is obsolete, needs
/// Level 3 of its method besides, by the person that it names as approving (id or name).
const std::set<Role>& signersOf(std::string_view registerName);

/// Adds an entry (`knownVersion` 0) or its next version, and returns the version. Input: a field is
/// wrong (place: its key), what the entry names is not there or belongs to another casting, or the
/// entry would change its casting; Refused: it needs a signature; Conflict: another version is
/// stored.
template <class T>
Result<std::int64_t> saveEntry(Archive& archive, const T& entry, std::int64_t knownVersion,
                               const Actor& actor);
/// Signed, where the register needs that. Refused: the person has not the role.
template <class T>
Result<std::int64_t> saveEntry(Archive& archive, const T& entry, std::int64_t knownVersion,
                               const SignedIn& signer);

/// Everything that an entry names and that is not there, or belongs to another casting;
/// saveEntry() tells the first.
template <class T>
Result<std::vector<FieldError>> wrongReferences(const Archive& archive, const T& entry);

/// The most bytes of a file that an entry names.
inline constexpr std::size_t kLargestEntryFile = 50'000'000;
/// Keeps a file's bytes with the archive's files and returns their SHA-256, for the entry's field
/// `file_sha256`; to be called right before saving the entry that names it. Input: empty, or above
/// kLargestEntryFile.
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
