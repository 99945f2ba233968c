// SPDX-License-Identifier: Apache-2.0
// Reads a table as CSV (RFC 4180): fields parted by commas, or by semicolons where the first line
// is; quoted fields with "" for a quote, commas and line ends in them; lines end with CR LF or LF.
// UTF-8, with or without a byte-order mark; nothing else.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"

namespace model {

inline constexpr std::size_t kLargestCsv = 64'000'000;     ///< bytes
inline constexpr std::size_t kMostCsvRows = 200'000;       ///< beneath the first line
inline constexpr std::size_t kMostCsvColumns = 256;        ///< of any line
inline constexpr std::size_t kLongestCsvField = 100'000;   ///< bytes
inline constexpr std::size_t kMostCsvFields = 20'000'000;  ///< of all rows together

/// One line of fields.
struct CsvRow {
    std::size_t line = 1;             ///< where it starts, as an editor counts
    std::vector<std::string> fields;  ///< as many as it has
};

struct CsvTable {
    CsvRow names;  ///< the first line
    std::vector<CsvRow> rows;
    char separator = ',';  ///< ',' or ';'
};

/// The table in `text`, which was read from `name`. Lines with nothing on them are left out. Input,
/// with the place "name: line 3, column 17" (columns are bytes, from 1): a quote that stands within
/// a field, text behind a closing quote, a quote that is never closed, a CR that ends no line, a
/// byte that is 0, another encoding, no line at all, or one of the limits above.
Result<CsvTable> readCsv(std::string_view text, const std::string& name);

/// The position of the first byte that is no UTF-8 (surrogates and overlong forms are none); the
/// text's size where there is no such byte.
std::size_t utf8End(std::string_view text);

/// A line of fields as RFC 4180 wants it, parted by commas, with CR LF; fields are quoted where
/// they must be.
std::string csvLine(const std::vector<std::string>& fields);

}  // namespace model
