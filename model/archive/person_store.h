// SPDX-License-Identifier: Apache-2.0
// People in the database. For the .cpp files of this folder only.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "archive/people.h"
#include "archive/transaction.h"

namespace model {

/// Whether a person can be stored as savePerson() says, and the version that it would get.
Result<std::int64_t> checkPerson(const Connection& connection, const Person& person,
                                 std::int64_t knownVersion);
/// Stores a checked one; the row of the history is the caller's to write.
Result<void> storePerson(const Connection& connection, const Stored<Person>& person);

// One by id, or all by id where none is given.
Result<std::vector<Stored<Person>>> loadPeople(const Connection& connection,
                                               const std::optional<std::string>& id);
/// Input where there is none.
Result<Stored<Person>> loadPerson(const Connection& connection, const std::string& id);

/// As in the history's content, with its version; see HISTORY.md.
Canonical::Object canonicalOf(const Stored<Person>& person);

}  // namespace model
