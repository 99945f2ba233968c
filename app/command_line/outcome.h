// SPDX-License-Identifier: Apache-2.0
// What a command leaves behind: its exit code, and what it prints.
#pragma once

#include <string>

#include "base/result.h"

namespace app {

/// The exit codes that other programs rely on; described by exitCodeHelp().
enum class ExitCode {
    Done = 0,
    NotAcceptable = 1,
    WrongInput = 2,
    NotJudged = 3,
    Refused = 4,
};

/// A command's result. `text` goes to standard output, whole, before the program ends.
struct Outcome {
    ExitCode code = ExitCode::Done;
    std::string text;
};

/// The exit code for what stood in a command's way.
ExitCode exitCodeFor(const model::Error& error);

}  // namespace app
