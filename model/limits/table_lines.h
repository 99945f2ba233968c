// SPDX-License-Identifier: Apache-2.0
// A limit table's text as lines of words: UTF-8, bounded, without comments and empty lines.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"

namespace model {

inline constexpr std::size_t kLongestTableLine = 2'000;      ///< bytes
inline constexpr std::size_t kLargestTableFile = 1'000'000;  ///< bytes

/// A word of a line, without its quotation marks.
struct TableWord {
    std::string_view text;
    bool quoted = false;
};

/// A line that says something: at least one word.
struct TableLine {
    int number = 0;  ///< from 1
    std::vector<TableWord> words;
};

/// The lines of `text`, which must outlive them. Fails, with "file:line" as place, on a text or a
/// line that is too long, on what is not UTF-8 or a control character, and on quotation marks that
/// do not pair. Takes time linear in the text.
Result<std::vector<TableLine>> readTableLines(std::string_view text, const std::string& file);

/// `file:line`, the place of an error in a table.
std::string placeInTable(const std::string& file, int line);

/// A text from a table as an error shows it: cut to its first 60 bytes or so.
std::string shownInError(std::string_view text);

}  // namespace model
