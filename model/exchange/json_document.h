// SPDX-License-Identifier: Apache-2.0
// Reads one JSON document strictly: UTF-8 without a byte-order mark, no null, no member twice,
// numbers as exact decimals (at most 6 decimals, at most 1 000 000 in size), nothing behind it.
// Whatever the input, time and memory are bounded by the limits below.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

#include "base/result.h"
#include "exchange/json_value.h"

namespace model {

inline constexpr std::size_t kLargestJsonDocument = 64'000'000;  ///< bytes
inline constexpr std::size_t kLongestJsonToken = 100'000;        ///< bytes of a string or number
inline constexpr std::size_t kMostJsonValues = 2'000'000;        ///< of all kinds, in one document
inline constexpr std::size_t kMostJsonMembers = 256;             ///< of one object
inline constexpr std::size_t kDeepestJsonNesting = 32;  ///< objects and arrays within each other

/// How standard input is called where a file's name is asked for.
inline constexpr std::string_view kStandardInput = "-";

/// A file's name as errors show it: "standard input" for "-".
std::string documentName(const std::string& file);

/// The document in `text`. `name` stands for it in errors, whose place is "name: path" with a JSON
/// path such as examinations[2].zone, or "name: line 3, column 17" where the text is no JSON.
Result<JsonValue> parseJson(std::string_view text, const std::string& name);

/// The document in a file, or in standard input where `file` is "-". ErrorKind::Input where the
/// file is not there, is a folder or holds the wrong thing; Refused where it cannot be read.
Result<JsonValue> readJson(const std::string& file);

}  // namespace model
