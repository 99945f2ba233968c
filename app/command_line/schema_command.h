// SPDX-License-Identifier: Apache-2.0
// fettlemark-cli schema
#pragma once

#include "command.h"

namespace app {

Command schemaCommand();

}  // namespace app
