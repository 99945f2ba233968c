// SPDX-License-Identifier: Apache-2.0
// fettlemark-cli castings --db FILE
#pragma once

#include "command.h"

namespace app {

Command castingsCommand();

}  // namespace app
