// SPDX-License-Identifier: Apache-2.0
// What must hold within a limit table as a whole, once each of its lines has been read.
#pragma once

#include <functional>
#include <map>
#include <string>

#include "base/result.h"
#include "limits/limit_table.h"

namespace model {

inline constexpr std::size_t kMostLevels = 32;  ///< of a key

/// Every level of every key has its threshold and its cell in each of the key's rules; the bands of
/// a level neither leave a gap nor overlap; no value grows stricter as the level rises, unless its
/// row says why; classes, definitions and rules fit together. `lineOf` has the lines of the table's
/// own statements by their names. Fails with "file:line" as place.
Result<void> checkTable(const LimitTable& table,
                        const std::map<std::string, int, std::less<>>& lineOf);

}  // namespace model
