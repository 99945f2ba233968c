// SPDX-License-Identifier: Apache-2.0
// verify: whether a signed PDF is what was signed.
#pragma once

#include "command.h"

namespace app {

Command verifyCommand();

}  // namespace app
