// SPDX-License-Identifier: Apache-2.0
// fettlemark-cli judge SHEET.json
#pragma once

#include "command.h"
#include "judge/verdict.h"

namespace app {

Command judgeCommand();

/// The exit code that a verdict gives. An acceptable one is Done only if every table that it rests
/// on is attested, or if that does not matter.
ExitCode exitCodeOf(const model::Verdict& verdict, bool unattestedToo);

}  // namespace app
