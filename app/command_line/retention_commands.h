// SPDX-License-Identifier: Apache-2.0
// keep, hold, retention and dispose: how long an order's certificates are kept, and their disposal.
#pragma once

#include "command.h"

namespace app {

Command keepCommand();
Command holdCommand();
Command retentionCommand();
Command disposeCommand();

}  // namespace app
