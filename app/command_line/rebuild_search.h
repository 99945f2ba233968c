// SPDX-License-Identifier: Apache-2.0
// fettlemark-cli rebuild-search --db FILE
#pragma once

#include "command.h"

namespace app {

Command rebuildSearchCommand();

}  // namespace app
