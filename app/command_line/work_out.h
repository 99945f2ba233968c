// SPDX-License-Identifier: Apache-2.0
// fettlemark-cli workings WORKING.json
#pragma once

#include "command.h"

namespace app {

Command workingsCommand();

}  // namespace app
