// SPDX-License-Identifier: Apache-2.0
#include "archive/person_store.h"

#include <algorithm>

#include "archive/record_store.h"
#include "archive/stored_words.h"
#include "base/word_table.h"
#include "limits/words.h"

namespace model {
namespace {

constexpr WordEntry<Role> kRoles[] = {
    {Role::Inspector, "inspector"},    {Role::QaManager, "QA manager"},
    {Role::Auditor, "auditor"},        {Role::Administrator, "administrator"},
    {Role::ThirdParty, "third party"},
};

constexpr std::size_t kLongestText = 64;  // X.520's bound, as both stand in certificates

Result<void> checkFields(const Connection& connection, const Person& person) {
    const auto refused = [&](const char* reason) { return inputError(connection.place(), reason); };
    const auto printable = [](char c) { return c > ' ' && c <= '~'; };
    if (person.id.empty() || person.id.size() > kLongestText ||
        !std::ranges::all_of(person.id, printable))
        return refused("takes as a person's id 1 to 64 characters of ASCII without blanks");
    const auto control = [](char c) { return static_cast<unsigned char>(c) < 0x20 || c == 0x7F; };
    const auto starts = [](char c) { return (c & '\xC0') != '\x80'; };
    if (person.name.find_first_not_of(' ') == std::string::npos || person.name.front() == ' ' ||
        person.name.back() == ' ' || std::ranges::any_of(person.name, control) ||
        std::ranges::count_if(person.name, starts) > std::ptrdiff_t{kLongestText})
        return refused("takes as a person's name a line of 1 to 64 characters");
    for (const auto& [method, level] : person.levels)
        if (level < 1 || level > 3) return refused("knows the levels of qualification 1, 2 and 3");
    const bool acts = person.roles.contains(Role::ThirdParty);
    if (acts && person.body.find_first_not_of(' ') == std::string::npos)
        return refused("needs to know whom a third party acts for");
    if (!acts && !person.body.empty())
        return refused("takes only of a third party whom it acts for");
    // Whoever inspects for the purchaser decides nothing for the works.
    if (acts && person.roles.size() > 1) return refused("gives a third party no other role beside");
    return {};
}

Result<void> checkName(const Connection& connection, const Person& person) {
    SqlStatement statement(connection, "SELECT id FROM person WHERE name = ? AND id <> ?");
    const auto row = statement.first(person.name, person.id);
    if (!row) return row.error();
    if (*row)
        return inputError(connection.place(), "has another person named %1: %2",
                          {person.name, statement.text(0)});
    return {};
}

Result<void> replaceLists(const Connection& connection, const Person& person) {
    for (const char* sql : {"DELETE FROM person_role WHERE person_id = ?",
                            "DELETE FROM person_level WHERE person_id = ?"}) {
        SqlStatement clear(connection, sql);
        if (auto done = clear.run(person.id); !done) return done;
    }
    SqlStatement role(connection, "INSERT INTO person_role (person_id, role) VALUES (?, ?)");
    for (const Role one : person.roles)
        if (auto done = role.run(person.id, word(one)); !done) return done;
    SqlStatement level(connection,
                       "INSERT INTO person_level (person_id, method, level) VALUES (?, ?, ?)");
    for (const auto& [method, grade] : person.levels)
        if (auto done = level.run(person.id, word(method), grade); !done) return done;
    return {};
}

Result<void> readLists(const Connection& connection, Person& person) {
    SqlStatement roles(connection, "SELECT role FROM person_role WHERE person_id = ?");
    if (auto done = roles.run(person.id); !done) return done;
    auto read = eachRow(roles, [&](const SqlStatement& row) -> Result<void> {
        const auto role =
            known(connection, roleFrom(row.text(0)), "person " + person.id, row.text(0));
        if (!role) return role.error();
        person.roles.insert(*role);
        return {};
    });
    if (!read) return read;
    SqlStatement levels(connection, "SELECT method, level FROM person_level WHERE person_id = ?");
    if (auto done = levels.run(person.id); !done) return done;
    return eachRow(levels, [&](const SqlStatement& row) -> Result<void> {
        const auto method =
            known(connection, methodFrom(row.text(0)), "person " + person.id, row.text(0));
        if (!method) return method.error();
        person.levels[*method] = static_cast<int>(row.whole(1));
        return {};
    });
}

}  // namespace

std::string_view word(Role role) {
    return wordIn(kRoles, role);
}

std::optional<Role> roleFrom(std::string_view word) {
    return valueIn(kRoles, word);
}

Result<std::int64_t> checkPerson(const Connection& connection, const Person& person,
                                 std::int64_t knownVersion) {
    if (auto checked = checkFields(connection, person); !checked) return checked.error();
    if (auto checked = checkName(connection, person); !checked) return checked.error();
    return nextVersion(connection, "SELECT version FROM person WHERE id = ?", "person", person.id,
                       knownVersion);
}

Result<void> storePerson(const Connection& connection, const Stored<Person>& person) {
    const Person& value = person.value;
    SqlStatement save(connection,
                      person.version == 1
                          ? "INSERT INTO person (version, name, manufacturing, body, active, id) "
                            "VALUES (?, ?, ?, ?, ?, ?)"
                          : "UPDATE person SET version = ?, name = ?, manufacturing = ?, "
                            "body = ?, active = ? WHERE id = ?");
    if (auto done = save.run(person.version, value.name, value.manufacturing, value.body,
                             value.active, value.id);
        !done)
        return done;
    return replaceLists(connection, value);
}

Result<std::vector<Stored<Person>>> loadPeople(const Connection& connection,
                                               const std::optional<std::string>& id) {
    SqlStatement statement(
        connection,
        std::string("SELECT id, version, name, manufacturing, body, active FROM person") +
            (id ? " WHERE id = ?" : " ORDER BY id"));
    if (auto done = id ? statement.run(*id) : statement.run(); !done) return done.error();
    std::vector<Stored<Person>> people;
    auto read = eachRow(statement, [&](const SqlStatement& row) -> Result<void> {
        Stored<Person> one;
        one.value.id = row.text(0);
        one.version = row.whole(1);
        one.value.name = row.text(2);
        one.value.manufacturing = row.whole(3) != 0;
        one.value.body = row.text(4);
        one.value.active = row.whole(5) != 0;
        if (auto done = readLists(connection, one.value); !done) return done;
        people.push_back(std::move(one));
        return {};
    });
    if (!read) return read.error();
    return people;
}

Result<Stored<Person>> loadPerson(const Connection& connection, const std::string& id) {
    return onlyOne(connection, loadPeople(connection, id), "person", id);
}

Canonical::Object canonicalOf(const Stored<Person>& person) {
    Canonical::Object object;
    object["version"] = person.version;
    object["name"] = person.value.name;
    Canonical::Array roles;
    for (const Role role : person.value.roles) roles.emplace_back(word(role));
    object["roles"] = std::move(roles);
    object["manufacturing"] = person.value.manufacturing;
    Canonical::Object levels;
    for (const auto& [method, level] : person.value.levels)
        levels[std::string(word(method))] = level;
    object["levels"] = std::move(levels);
    if (!person.value.body.empty()) object["body"] = person.value.body;
    object["active"] = person.value.active;
    return object;
}

}  // namespace model
