// SPDX-License-Identifier: Apache-2.0
// A command of fettlemark-cli: its name, what can be given to it, and what it does.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"
#include "outcome.h"

namespace app {

/// An option such as "--db FILE".
struct Option {
    std::string_view name;     ///< "--db"
    std::string_view value;    ///< "FILE"; empty: a switch, which takes no value
    std::string_view meaning;  ///< for the help
    bool required = false;
};

class Arguments;

struct Command {
    std::string_view name;
    std::string_view operand;  ///< "SHEET.json"; empty: none is taken
    bool operandOptional = false;
    std::string_view summary;  ///< one line
    std::string details;       ///< for the command's help; lines end with "\n"
    std::vector<Option> options;
    model::Result<Outcome> (*run)(const Arguments& arguments);
};

/// What was given to a command; agrees with its description.
class Arguments {
public:
    /// Refuses (Input) an unknown option, one that is given twice or without its value, and a
    /// missing or superfluous option or operand.
    static model::Result<Arguments> parse(const Command& command,
                                          std::span<const std::string> given);

    [[nodiscard]] bool has(std::string_view option) const { return value(option) != nullptr; }
    /// The value of an option, empty for a switch; null where it was not given.
    [[nodiscard]] const std::string* value(std::string_view option) const;
    /// The operand; empty where the command takes none or it was left out.
    [[nodiscard]] const std::string& operand() const { return operand_; }

private:
    struct Given {
        std::string_view option;
        std::string value;
    };
    std::vector<Given> given_;
    std::string operand_;
};

}  // namespace app
