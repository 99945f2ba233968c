// SPDX-License-Identifier: Apache-2.0
// The text of every limit table that an archive has seen, by id and revision.
#pragma once

#include <set>

#include "archive/transaction.h"
#include "limits/table_set.h"

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

/// The one with this SHA-256; Input where there is none.
Result<StoredTable> loadLimitTable(const Connection& connection, const std::string& digest);

/// The tables that the program ships and those of the archive, with its attestations.
Result<TableSet> loadTableSet(const Connection& connection);

/// SHA-256 of every table that a QA manager attested and none withdrew.
Result<std::set<std::string>> attestedDigests(const Connection& connection);

/// By id and revision.
Result<std::vector<StoredTable>> loadLimitTables(const Connection& connection);

}  // namespace model
