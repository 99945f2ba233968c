// SPDX-License-Identifier: Apache-2.0
#include <algorithm>

#include "command.h"

namespace app {
namespace {

model::Error callError(const Command& command, std::string reason,
                       std::vector<std::string> arguments = {}) {
    return model::inputError("fettlemark-cli " + std::string(command.name), std::move(reason),
                             std::move(arguments));
}

}  // namespace

model::Result<Arguments> Arguments::parse(const Command& command,
                                          std::span<const std::string> given) {
    Arguments arguments;
    bool hasOperand = false;
    for (std::size_t i = 0; i < given.size(); ++i) {
        const std::string& word = given[i];
        if (word.empty()) return callError(command, "an argument is empty");
        // "-" alone is an operand: standard input.
        if (word.front() != '-' || word == "-") {
            if (command.operand.empty() || hasOperand)
                return callError(command, "\"%1\" is one argument too many", {word});
            hasOperand = true;
            arguments.operand_ = word;
            continue;
        }
        const auto option = std::ranges::find(command.options, word, &Option::name);
        if (option == command.options.end())
            return callError(command, "there is no option \"%1\"; see --help", {word});
        if (arguments.has(word)) return callError(command, "%1 is given twice", {word});
        std::string value;
        if (!option->value.empty()) {
            const bool there =
                i + 1 < given.size() && !given[i + 1].empty() && !given[i + 1].starts_with("--");
            if (!there)
                return callError(command, "%1 needs a value: %2",
                                 {word, std::string(option->value)});
            value = given[++i];
        }
        arguments.given_.push_back({option->name, std::move(value)});
    }
    if (!command.operand.empty() && !command.operandOptional && !hasOperand)
        return callError(command, "%1 is missing", {std::string(command.operand)});
    for (const Option& option : command.options)
        if (option.required && !arguments.has(option.name))
            return callError(command, "%1 %2 is missing",
                             {std::string(option.name), std::string(option.value)});
    return arguments;
}

const std::string* Arguments::value(std::string_view option) const {
    const auto found = std::ranges::find(given_, option, &Given::option);
    return found == given_.end() ? nullptr : &found->value;
}

}  // namespace app
