// SPDX-License-Identifier: Apache-2.0
// The text of every limit table that an archive has seen, by id and revision.
#pragma once

#include "archive/transaction.h"

namespace model {

struct StoredTable {
    std::string id;
    std::int64_t revision = 0;
    std::string digest;  ///< SHA-256 of the text, hexadecimal
    std::string name;    ///< of the file it came from
    std::string text;
};

Result<void> addLimitTable(WriteTransaction& transaction, const std::string& text,
                           const std::string& name);

/// Sees to it that the table with this SHA-256 is stored; one that the program ships is added.
Result<void> keepLimitTable(WriteTransaction& transaction, const std::string& digest);

/// By id and revision.
Result<std::vector<StoredTable>> loadLimitTables(const Connection& connection);

}  // namespace model
