// SPDX-License-Identifier: Apache-2.0
#include "help.h"

#include <algorithm>

namespace app {
namespace {

constexpr std::string_view kExitCodes =
    "Exit codes:\n"
    "  0  done; judged: everything is acceptable\n"
    "  1  done; judged: something is not acceptable\n"
    "  2  the input or the call is wrong: one line on standard error with file, JSON path or\n"
    "     line, and reason; nothing was written\n"
    "  3  done, nothing failed, but something could not be judged, or was judged by a limit\n"
    "     table that nobody attested\n"
    "  4  the machine refused: disk full, no permission, locked, a file that is there but\n"
    "     cannot be read; nothing half-written is left\n";

std::string callOf(const Command& command) {
    std::string call(command.name);
    if (!command.operand.empty())
        call += command.operandOptional ? " [" + std::string(command.operand) + "]"
                                        : " " + std::string(command.operand);
    for (const Option& option : command.options) {
        std::string text(option.name);
        if (!option.value.empty()) text += " " + std::string(option.value);
        call += option.required ? " " + text : " [" + text + "]";
    }
    return call;
}

/// `left` and `right` as two columns, the right one starting at `column`.
std::string row(std::string left, std::size_t column, std::string_view right) {
    left.insert(0, 2, ' ');
    left.resize(std::max(left.size() + 2, column), ' ');
    return left + std::string(right) + "\n";
}

}  // namespace

std::string programHelp(std::span<const Command> commands) {
    std::string text =
        "fettlemark-cli: judges and records the non-destructive testing of castings.\n"
        "\n"
        "Usage: fettlemark-cli COMMAND [ARGUMENTS]\n"
        "       fettlemark-cli COMMAND --help\n"
        "       fettlemark-cli --help | --version\n"
        "\n"
        "Commands:\n";
    for (const Command& command : commands)
        text += "  " + callOf(command) + "\n      " + std::string(command.summary) + "\n";
    return text + "\n" + std::string(kExitCodes);
}

std::string commandHelp(const Command& command) {
    std::string text =
        "Usage: fettlemark-cli " + callOf(command) + "\n\n" + command.details + "\nOptions:\n";
    constexpr std::size_t kColumn = 18;
    for (const Option& option : command.options) {
        std::string left(option.name);
        if (!option.value.empty()) left += " " + std::string(option.value);
        text += row(std::move(left), kColumn, option.meaning);
    }
    text += row("--help", kColumn, "prints this");
    return text + "\n" + std::string(kExitCodes);
}

}  // namespace app
