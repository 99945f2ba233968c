// SPDX-License-Identifier: Apache-2.0
// fettlemark-cli set-up
#pragma once

#include "command.h"

namespace app {

Command setUpCommand();

}  // namespace app
