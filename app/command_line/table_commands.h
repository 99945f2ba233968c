// SPDX-License-Identifier: Apache-2.0
// fettlemark-cli tables, attest
#pragma once

#include "command.h"

namespace app {

Command tablesCommand();
Command attestCommand();

}  // namespace app
