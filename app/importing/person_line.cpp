// SPDX-License-Identifier: Apache-2.0
#include "importing/person_line.h"

#include "limits/words.h"

namespace app {
namespace {

void fail(std::vector<model::FieldError>& errors, const char* field, std::string reason,
          const std::string& text) {
    errors.push_back({field, model::inputError("", std::move(reason), {text})});
}

}  // namespace

model::Person personFrom(const model::PersonLine& line, std::vector<model::FieldError>& errors) {
    model::Person person;
    person.id = line.id;
    person.name = line.name;
    for (const std::string& word : model::itemsOf(line.roles)) {
        const auto role = model::roleFrom(word);
        if (!role)
            fail(errors, "roles",
                 "there is no role \"%1\"; there are inspector, QA manager, auditor, "
                 "administrator and third party",
                 word);
        else
            person.roles.insert(*role);
    }
    for (const std::string& text : model::itemsOf(line.levels)) {
        const std::size_t blank = text.find(' ');
        const auto method = model::methodFrom(text.substr(0, blank));
        const std::string level = blank == std::string::npos ? "" : text.substr(blank + 1);
        if (!method || level.size() != 1 || level[0] < '1' || level[0] > '3')
            fail(errors, "levels", "\"%1\" is no level like \"MT 2\"", text);
        else if (!person.levels.emplace(*method, level[0] - '0').second)
            fail(errors, "levels", "states a method twice: %1", text);
    }
    person.manufacturing = line.manufacturing == "yes";
    person.body = line.body;
    person.active = line.active != "no";
    return person;
}

model::PersonLine lineOf(const model::Person& person) {
    std::vector<std::string> roles;
    for (const model::Role role : person.roles) roles.emplace_back(word(role));
    std::vector<std::string> levels;
    for (const auto& [method, level] : person.levels)
        levels.push_back(std::string(word(method)) + " " + std::to_string(level));
    return {person.id,
            person.name,
            model::listOf(roles),
            model::listOf(levels),
            person.manufacturing ? "yes" : "no",
            person.body,
            person.active ? "yes" : "no"};
}

}  // namespace app
