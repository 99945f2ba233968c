// SPDX-License-Identifier: Apache-2.0
// fettlemark-cli certificate --db FILE --number N --out FILE.pdf
#pragma once

#include "command.h"

namespace app {

Command certificateCommand();

}  // namespace app
