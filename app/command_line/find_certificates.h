// SPDX-License-Identifier: Apache-2.0
// fettlemark-cli find --db FILE
#pragma once

#include "command.h"

namespace app {

Command findCommand();

}  // namespace app
