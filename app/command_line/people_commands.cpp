// SPDX-License-Identifier: Apache-2.0
#include "people_commands.h"

#include <map>

#include "archive/identities.h"
#include "archive/people.h"
#include "limits/words.h"
#include "qt_core.h"
#include "signing_in.h"

namespace app {
namespace {

constexpr std::string_view kColumns =
    "One line each, columns between tabs: id, name, roles, levels, department, state, and\n"
    "the identity: its last day, or why there is none.\n";

std::vector<std::string> parts(const std::string& list) {
    std::vector<std::string> all;
    std::size_t start = 0;
    while (true) {
        const std::size_t end = list.find(',', start);
        std::string part = list.substr(start, end == std::string::npos ? end : end - start);
        const std::size_t first = part.find_first_not_of(' ');
        if (first != std::string::npos)
            all.push_back(part.substr(first, part.find_last_not_of(' ') - first + 1));
        if (end == std::string::npos) return all;
        start = end + 1;
    }
}

template <class Values, class Text>
std::string joined(const Values& values, Text text) {
    std::string all;
    for (const auto& value : values) all += (all.empty() ? "" : ", ") + text(value);
    return all;
}

model::Result<std::set<model::Role>> rolesFrom(const std::string& list) {
    std::set<model::Role> roles;
    for (const std::string& word : parts(list)) {
        const auto role = model::roleFrom(word);
        if (!role)
            return model::inputError("--roles",
                                     "there is no role \"%1\"; there are inspector, QA manager, "
                                     "auditor, administrator and third party",
                                     {word});
        roles.insert(*role);
    }
    return roles;
}

model::Result<std::map<model::Method, int>> levelsFrom(const std::string& list) {
    std::map<model::Method, int> levels;
    for (const std::string& text : parts(list)) {
        const std::size_t blank = text.find(' ');
        const auto method = model::methodFrom(text.substr(0, blank));
        const std::string level = blank == std::string::npos ? "" : text.substr(blank + 1);
        if (!method || level.size() != 1 || level[0] < '1' || level[0] > '3')
            return model::inputError("--levels", "\"%1\" is no level like \"MT 2\"", {text});
        levels[*method] = level[0] - '0';
    }
    return levels;
}

/// The identity that each person signs with, by id: the newest.
std::map<std::string, std::string> identityTexts(const std::vector<model::StoredIdentity>& all) {
    std::map<std::string, std::string> texts;
    for (const model::StoredIdentity& one : all)
        if (!one.person.empty())
            texts[one.person] = one.withdrawn.empty()
                                    ? "until " + model::toText(one.facts.validUntil).substr(0, 10)
                                    : "withdrawn: " + one.withdrawn;
    return texts;
}

model::Result<Outcome> listPeople(const Arguments& arguments) {
    const QtCore qt;
    const auto archive = model::Archive::openForReading(*arguments.value("--db"));
    if (!archive) return archive.error();
    const auto people = model::people(*archive);
    if (!people) return people.error();
    const auto identities = model::identities(*archive);
    if (!identities) return identities.error();
    const auto texts = identityTexts(*identities);
    std::string lines;
    for (const auto& stored : *people) {
        const model::Person& person = stored.value;
        const auto identity = texts.find(person.id);
        lines +=
            person.id + "\t" + person.name + "\t" +
            joined(person.roles, [](model::Role role) { return std::string(word(role)); }) + "\t" +
            joined(person.levels,
                   [](const auto& level) {
                       return std::string(word(level.first)) + " " + std::to_string(level.second);
                   }) +
            "\t" +
            (person.manufacturing  ? "manufacturing"
             : person.body.empty() ? ""
                                   : "for " + person.body) +
            "\t" + (person.active ? "active" : "inactive") + "\t" +
            (identity == texts.end() ? "none" : identity->second) + "\n";
    }
    return Outcome{ExitCode::Done, lines.empty() ? "no people\n" : lines};
}

model::Result<model::Person> personFrom(const Arguments& arguments) {
    model::Person person;
    person.id = *arguments.value("--id");
    person.name = *arguments.value("--name");
    auto roles = rolesFrom(*arguments.value("--roles"));
    if (!roles) return roles.error();
    person.roles = std::move(*roles);
    if (const std::string* list = arguments.value("--levels")) {
        auto levels = levelsFrom(*list);
        if (!levels) return levels.error();
        person.levels = std::move(*levels);
    }
    if (const std::string* body = arguments.value("--body")) person.body = *body;
    person.manufacturing = arguments.has("--manufacturing");
    person.active = !arguments.has("--inactive");
    return person;
}

model::Result<Outcome> addPerson(const Arguments& arguments) {
    const auto person = personFrom(arguments);
    if (!person) return person.error();
    const QtCore qt;
    auto archive = model::Archive::open(*arguments.value("--db"));
    if (!archive) return archive.error();
    const auto administrator = signedInFrom(*archive, arguments);
    if (!administrator) return administrator.error();
    std::int64_t version = 0;
    if (arguments.has("--change")) {
        const auto stored = model::person(*archive, person->id);
        if (!stored) return stored.error();
        version = stored->version;
    }
    const auto saved = model::savePerson(*archive, *person, version, *administrator);
    if (!saved) return saved.error();
    return Outcome{ExitCode::Done, "stored " + person->id + "\t" + person->name + "\n"};
}

}  // namespace

Command peopleCommand() {
    return {.name = "people",
            .operand = "",
            .summary = "lists the people of an archive",
            .details = std::string(kColumns),
            .options = {kDatabaseOption},
            .run = &listPeople};
}

Command addPersonCommand() {
    return {.name = "add-person",
            .operand = "",
            .summary = "adds a person, or changes one",
            .details =
                "Signed by an administrator. Nobody is ever taken out; --change --inactive keeps\n"
                "a person from signing in. An identity is given by issue-identity or\n"
                "import-identity.\n",
            .options = {kDatabaseOption,
                        {"--id", "ID", "the person's, for good", true},
                        {"--name", "NAME", "the person's", true},
                        {"--roles", "LIST",
                         "of inspector, QA manager, auditor, administrator, third party", true},
                        {"--levels", "LIST", "of qualification, such as \"MT 2, PT 3\""},
                        {"--manufacturing", "", "belongs to the manufacturing department"},
                        {"--body", "NAME", "whom a third party acts for"},
                        {"--inactive", "", "neither signs in nor signs"},
                        {"--change", "", "the person is there already: all of this replaces it"},
                        kPersonOption,
                        kPassphraseOption},
            .run = &addPerson};
}

}  // namespace app
