// SPDX-License-Identifier: Apache-2.0
// fettlemark-cli size READING.json
#pragma once

#include "command.h"

namespace app {

Command sizeCommand();

}  // namespace app
