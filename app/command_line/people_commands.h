// SPDX-License-Identifier: Apache-2.0
// fettlemark-cli people, add-person
#pragma once

#include "command.h"

namespace app {

Command peopleCommand();
Command addPersonCommand();

}  // namespace app
