// SPDX-License-Identifier: Apache-2.0
// fettlemark-cli runs-out
#pragma once

#include "command.h"

namespace app {

Command runsOutCommand();

}  // namespace app
