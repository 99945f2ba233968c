// SPDX-License-Identifier: Apache-2.0
#include "archive/lifecycle.h"
#include "columns.h"
#include "judge/sheet_words.h"
#include "qt_core.h"
#include "release_commands.h"
#include "signing_in.h"

namespace app {
namespace {

using model::Result;

Result<std::string> obstacleLines(const model::Archive& archive, std::int64_t number,
                                  const model::Person& person) {
    const auto obstacles = model::obstacles(archive, number, person);
    if (!obstacles) return obstacles.error();
    std::string lines;
    for (const model::Obstacle& obstacle : *obstacles)
        lines += lineOf({std::to_string(number), "obstacle", obstacle.sentence});
    return lines;
}

std::string waitingLine(const model::Presented& shown) {
    return lineOf({std::to_string(shown.number), shown.facts.serial, shown.facts.type,
                   std::string(word(shown.facts.verdict)), shown.presented.name,
                   shown.presented.time, shown.endorsed ? shown.endorsed->name : ""});
}

Result<Outcome> listQueue(const Arguments& arguments) {
    const QtCore qt;
    const auto archive = model::Archive::openForReading(*arguments.value("--db"));
    if (!archive) return archive.error();
    std::optional<model::Person> person;
    if (const std::string* id = arguments.value("--person")) {
        auto stored = model::person(*archive, *id);
        if (!stored) return stored.error();
        person = std::move(stored->value);
    }
    const auto waiting = model::presented(*archive);
    if (!waiting) return waiting.error();
    Outcome outcome;
    for (const model::Presented& shown : *waiting) {
        outcome.text += waitingLine(shown);
        if (!person) continue;
        const auto obstacles = obstacleLines(*archive, shown.number, *person);
        if (!obstacles) return obstacles.error();
        outcome.text += *obstacles;
    }
    if (waiting->empty()) outcome.text = "nothing waits for release\n";
    return outcome;
}

}  // namespace

Command queueCommand() {
    return {.name = "queue",
            .operand = "",
            .summary = "lists the certificates that wait for release",
            .details =
                "One line each, columns between tabs: number, serial number, certificate type,\n"
                "verdict, who presented it, when, who signed it as the third party. With --person\n"
                "follows a line for everything that stands in the way of a release by this\n"
                "person: number, \"obstacle\", a sentence. A column without content holds \"-\".\n",
            .options = {kDatabaseOption, {"--person", "ID", "whose release to ask about"}},
            .run = &listQueue};
}

}  // namespace app
