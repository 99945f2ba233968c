// SPDX-License-Identifier: Apache-2.0
// A limit table line by line, so that a person can hold it against the company's copy of the
// standard.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "limits/limit_table.h"

namespace model {

/// One definition, threshold or limit.
struct CellLine {
    std::string what;   ///< "ratio", "rows", "threshold", "cumulative length" ...
    std::string key;    ///< level key it belongs to; empty: the whole table's
    std::string level;  ///< empty: every level
    std::string band;   ///< of thickness, in mm: "> 16, <= 30"; empty: every thickness
    std::string value;  ///< "at most 18 mm", "none", "unknown", "as agreed" ...
    std::string locator;
    std::optional<Grade> grade;  ///< none: the value is unknown
};

/// All of them, in the table's order.
std::vector<CellLine> cellsOf(const LimitTable& table);

}  // namespace model
