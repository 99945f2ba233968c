// SPDX-License-Identifier: Apache-2.0
// backup and restore: a verified copy of an archive, and an archive from it.
#pragma once

#include "command.h"

namespace app {

Command backupCommand();
Command restoreCommand();

}  // namespace app
