// SPDX-License-Identifier: Apache-2.0
// fettlemark-cli export --db FILE --number N --out DIR
#pragma once

#include "command.h"

namespace app {

Command exportCommand();

}  // namespace app
