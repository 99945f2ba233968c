// SPDX-License-Identifier: Apache-2.0
// fettlemark-cli order-touches
#pragma once

#include "command.h"

namespace app {

Command orderTouchesCommand();

}  // namespace app
