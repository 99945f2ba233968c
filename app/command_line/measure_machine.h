// SPDX-License-Identifier: Apache-2.0
// fettlemark-cli measure
#pragma once

#include "command.h"

namespace app {

Command measureCommand();

}  // namespace app
