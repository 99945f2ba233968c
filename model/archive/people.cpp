// SPDX-License-Identifier: Apache-2.0
#include "archive/people.h"

#include "archive/archive_access.h"
#include "archive/history_store.h"
#include "archive/identity_store.h"
#include "archive/person_store.h"
#include "archive/sign_in.h"

namespace model {
Result<std::int64_t> savePerson(Archive& archive, const Person& person, std::int64_t knownVersion,
                                const SignedIn& administrator) {
    if (auto may = checkRole(administrator, Role::Administrator); !may) return may.error();
    return ArchiveAccess::write(
        archive, administrator.actor(), [&](WriteTransaction& transaction) -> Result<std::int64_t> {
            const Connection& connection = transaction.connection();
            auto version = checkPerson(connection, person, knownVersion);
            if (!version) return version;
            const Stored<Person> saved{person, *version};
            // Signed before it is stored: what changes may be the administrator.
            auto recorded = transaction.recordSigned(action::kPersonSaved, person.id,
                                                     canonicalOf(saved), administrator);
            if (!recorded) return recorded.error();
            if (auto stored = storePerson(connection, saved); !stored) return stored.error();
            if (auto left = checkAdministratorLeft(connection); !left) return left.error();
            return version;
        });
}

Result<std::vector<Stored<Person>>> people(const Archive& archive) {
    const Connection& connection = ArchiveAccess::connection(archive);
    const auto reading = ReadTransaction::begin(connection);
    if (!reading) return reading.error();
    return loadPeople(connection, std::nullopt);
}

Result<Stored<Person>> person(const Archive& archive, const std::string& id) {
    const Connection& connection = ArchiveAccess::connection(archive);
    const auto reading = ReadTransaction::begin(connection);
    if (!reading) return reading.error();
    return loadPerson(connection, id);
}

}  // namespace model
