// SPDX-License-Identifier: Apache-2.0
// fettlemark-cli demo --db FILE
#pragma once

#include "command.h"

namespace app {

Command demoCommand();

}  // namespace app
