// SPDX-License-Identifier: Apache-2.0
// Reads a limit table's text. The grammar is described in tables/FORMAT.md beside this file.
#pragma once

#include <string>
#include <string_view>

#include "base/result.h"
#include "limits/limit_table.h"

namespace model {

/// The table in `text`; `file` names it in errors and in the table. Refuses, with "file:line" as
/// place: an unknown or missing key, a gap or an overlap between bands, a comparison missing at a
/// band's end, a row without locator or grade, a level without a row, and values that grow
/// stricter as the level rises unless the row says why.
Result<LimitTable> parseTable(std::string_view text, const std::string& file);

}  // namespace model
