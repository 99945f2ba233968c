// SPDX-License-Identifier: Apache-2.0
// The papers of the workshop: marking-out and weld-map.
#pragma once

#include "command.h"

namespace app {

Command markingOutCommand();
Command weldMapCommand();

}  // namespace app
