// SPDX-License-Identifier: Apache-2.0
// The people who work with an archive: what each may do. Errors are those of archive.h.
#pragma once

#include <cstdint>
#include <map>
#include <set>
#include <string>
#include <vector>

#include "archive/archive.h"

namespace model {

class SignedIn;

/// What a person may sign. ThirdParty: the purchaser's authorised representative or the inspector
/// designated by official regulations (EN 10204:2004, type 3.2).
enum class Role { Inspector, QaManager, Auditor, Administrator, ThirdParty };

std::string_view word(Role role);  ///< "inspector", "QA manager", "third party" ...
std::optional<Role> roleFrom(std::string_view word);

struct Person {
    std::string id;    ///< 1 to 64 printable characters of ASCII; never given to a second person
    std::string name;  ///< UTF-8, 1 to 64 characters; no two people have the same
    std::set<Role> roles;
    bool manufacturing = false;    ///< belongs to the manufacturing department (EN 10204:2004, 3.1)
    std::map<Method, int> levels;  ///< of qualification, 1 to 3 (ISO 9712), by method
    std::string body;              ///< whom a third party acts for; empty for everybody else
    bool active = true;            ///< whoever is not neither signs in nor signs

    friend bool operator==(const Person&, const Person&) = default;
};

/// Adds a person (`knownVersion` 0) or changes the one of this version; signed by an administrator.
/// Whoever is signed in and is changed has to sign in again. Returns the new version. Input: a
/// person that cannot be, a name that somebody else has, or the last active administrator would
/// cease to be one. People are never taken out, only made inactive.
Result<std::int64_t> savePerson(Archive& archive, const Person& person, std::int64_t knownVersion,
                                const SignedIn& administrator);

Result<std::vector<Stored<Person>>> people(const Archive& archive);  ///< by id
Result<Stored<Person>> person(const Archive& archive, const std::string& id);

}  // namespace model
