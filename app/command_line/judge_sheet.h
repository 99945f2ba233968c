// SPDX-License-Identifier: Apache-2.0
// fettlemark-cli judge SHEET.json
#pragma once

#include "command.h"
#include "judge/verdict.h"
#include "limits/table_set.h"

namespace app {

Command judgeCommand();

/// The program's tables with those of --db and --tables, which `arguments` may have.
model::Result<model::TableSet> tablesFor(const Arguments& arguments);

/// The exit code that a verdict gives. An acceptable one is Done only if every table that it rests
/// on is attested, or if that does not matter.
ExitCode exitCodeOf(const model::Verdict& verdict, bool unattestedToo);

}  // namespace app
