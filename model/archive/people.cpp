// SPDX-License-Identifier: Apache-2.0
#include "archive/people.h"

#include "archive/archive_access.h"
#include "archive/history_store.h"
#include "archive/person_store.h"
#include "archive/sign_in.h"

namespace model {
namespace {

/// Nobody could be added or helped any more.
Result<void> checkAnAdministratorIsLeft(const Connection& connection) {
    SqlStatement statement(connection,
                           "SELECT count(*) FROM person, person_role "
                           "WHERE person_id = id AND active = 1 AND role = ?");
    const auto row = statement.first(word(Role::Administrator));
    if (!row) return row.error();
    if (statement.whole(0) == 0)
        return inputError(connection.place(),
                          "needs an active administrator: make another person one first");
    return {};
}

}  // namespace

Result<std::int64_t> savePerson(Archive& archive, const Person& person, std::int64_t knownVersion,
                                const SignedIn& administrator) {
    if (auto may = checkRole(administrator, Role::Administrator); !may) return may.error();
    return ArchiveAccess::write(
        archive, administrator.actor(), [&](WriteTransaction& transaction) -> Result<std::int64_t> {
            const Connection& connection = transaction.connection();
            const auto version = checkPerson(connection, person, knownVersion);
            if (!version) return version;
            const Stored<Person> saved{person, *version};
            // Signed before it is stored: what changes may be the administrator.
            auto recorded = transaction.recordSigned(action::kPersonSaved, person.id,
                                                     canonicalOf(saved), administrator);
            if (!recorded) return recorded.error();
            if (auto stored = storePerson(connection, saved); !stored) return stored.error();
            if (auto left = checkAnAdministratorIsLeft(connection); !left) return left.error();
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
