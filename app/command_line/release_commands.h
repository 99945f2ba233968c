// SPDX-License-Identifier: Apache-2.0
// fettlemark-cli queue, present, endorse, release, return, withdraw, reopen
#pragma once

#include "command.h"

namespace app {

Command queueCommand();
Command presentCommand();
Command endorseCommand();
Command releaseCommand();
Command returnCommand();
Command withdrawCommand();
Command reopenCommand();

}  // namespace app
