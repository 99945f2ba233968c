// SPDX-License-Identifier: Apache-2.0
// fettlemark-cli judge-again
#pragma once

#include "command.h"

namespace app {

Command judgeAgainCommand();

}  // namespace app
