// SPDX-License-Identifier: Apache-2.0
#include "people_commands.h"

#include <map>

#include "archive/identities.h"
#include "archive/people.h"
#include "importing/person_line.h"
#include "qt_core.h"
#include "signing_in.h"

namespace app {
namespace {

constexpr std::string_view kColumns =
    "One line each, columns between tabs: id, name, roles, levels, department, state, and\n"
    "the identity: its last day, or why there is none.\n";

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
        const model::PersonLine line = lineOf(person);
        lines += line.id + "\t" + line.name + "\t" + line.roles + "\t" + line.levels + "\t" +
                 (person.manufacturing  ? "manufacturing"
                  : person.body.empty() ? ""
                                        : "for " + person.body) +
                 "\t" + (person.active ? "active" : "inactive") + "\t" +
                 (identity == texts.end() ? "none" : identity->second) + "\n";
    }
    return Outcome{ExitCode::Done, lines.empty() ? "no people\n" : lines};
}

model::Result<model::Person> givenPerson(const Arguments& arguments) {
    model::PersonLine line;
    line.id = *arguments.value("--id");
    line.name = *arguments.value("--name");
    line.roles = *arguments.value("--roles");
    if (const std::string* list = arguments.value("--levels")) line.levels = *list;
    if (const std::string* body = arguments.value("--body")) line.body = *body;
    line.manufacturing = arguments.has("--manufacturing") ? "yes" : "no";
    line.active = arguments.has("--inactive") ? "no" : "yes";
    std::vector<model::FieldError> errors;
    model::Person person = personFrom(line, errors);
    if (errors.empty()) return person;
    model::Error first = std::move(errors.front().error);
    first.place = "--" + errors.front().field;
    return first;
}

model::Result<Outcome> addPerson(const Arguments& arguments) {
    const auto person = givenPerson(arguments);
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
