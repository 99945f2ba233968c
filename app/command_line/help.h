// SPDX-License-Identifier: Apache-2.0
// What --help prints.
#pragma once

#include <span>
#include <string>

#include "command.h"

namespace app {

/// All commands and the exit codes.
std::string programHelp(std::span<const Command> commands);

/// One command with its options and the exit codes.
std::string commandHelp(const Command& command);

}  // namespace app
