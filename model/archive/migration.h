// SPDX-License-Identifier: Apache-2.0
// The steps from one schema of the database to the next.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "archive/archive.h"
#include "archive/connection.h"

namespace model {

struct Migration {
    int version = 1;          ///< the schema that it makes, from the one before
    std::string description;  ///< written into the history
    std::string_view script;
};

/// All of them, from 1 without a gap. A released one never changes.
const std::vector<Migration>& migrations();

/// Brings an archive up to the last of `steps`; nothing happens where it is there already.
///
/// Holds the right to write throughout; copies the database to PATH.schema-N.backup first (or
/// ...backup-2 and so on, never over an existing one) and checks the copy; compares what must not
/// change before and after; and commits all steps at once or none. Input where the database is
/// newer than the last step.
Result<void> migrate(const Connection& connection, const std::vector<Migration>& steps,
                     const Clock& clock);

}  // namespace model
