// SPDX-License-Identifier: Apache-2.0
// verify --db FILE: whether anything in an archive was altered.
#pragma once

#include "command.h"

namespace app {

/// Checks the archive of "--db" against the head of "--head", and every verdict with "--rejudge".
model::Result<Outcome> verifyArchiveFile(const Arguments& arguments);

}  // namespace app
