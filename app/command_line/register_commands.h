// SPDX-License-Identifier: Apache-2.0
// fettlemark-cli import, enter, entries
#pragma once

#include "command.h"

namespace app {

Command importCommand();
Command enterCommand();
Command entriesCommand();

}  // namespace app
