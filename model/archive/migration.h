// SPDX-License-Identifier: Apache-2.0
// The steps from one schema of the database to the next.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "archive/archive.h"
#include "archive/archive_key.h"
#include "archive/connection.h"

namespace model {

struct Migration {
    int version = 1;          ///< the schema that it makes, from the one before
    std::string description;  ///< written into the history
    std::string_view script;
};

/// All of them, from 1 without a gap. A released one never changes.
const std::vector<Migration>& migrations();

/// The database's schema. Input: newer than the last of `steps`. Damaged: it has no number.
Result<std::int64_t> knownSchema(const Connection& connection, const std::vector<Migration>& steps);

/// The first schema whose rows of the history are sealed.
inline constexpr int kFirstSealedSchema = 2;

/// Brings an archive up to the last of `steps`; nothing happens where it is there already.
///
/// Holds the right to write throughout; copies the database to PATH.schema-N.backup first (or
/// ...backup-2 and so on, never over an existing one) and checks the copy; compares what must not
/// change before and after; and commits all steps at once or none. An archive that had no key of
/// its own yet is given one; another's key file has to be there, as for every write. Input where
/// the database is newer than the last step.
Result<void> migrate(const Connection& connection, const std::vector<Migration>& steps,
                     ArchiveKey& key, const Clock& clock);

}  // namespace model
