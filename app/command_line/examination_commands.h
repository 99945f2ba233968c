// SPDX-License-Identifier: Apache-2.0
// fettlemark-cli examinations, sign, invalidate
#pragma once

#include "command.h"

namespace app {

Command examinationsCommand();
Command signCommand();
Command invalidateCommand();

}  // namespace app
