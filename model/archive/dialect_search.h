// SPDX-License-Identifier: Apache-2.0
// The full-text search of the database in use. Another database gets its own dialect_*_search.cpp.
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "archive/connection.h"

namespace model::dialect {

/// How the table `certificate` is read, newest first, through the index of its words.
struct WordSearch {
    std::string from;       ///< the tables; the certificate is called c
    std::string number;     ///< the certificate's number, by which to bound and to order
    std::string condition;  ///< with one "?"
    std::string value;      ///< for the "?"
};

/// What to look for. Nothing in it is taken for a sign of the database's query language.
struct SearchedWords {
    std::vector<std::string> words;  ///< each is somewhere in the certificate
    bool lastBegins = false;         ///< the last one is the beginning of a word
    /// Columns of `certificate` and what they state; what casting_serial states may be in series.
    /// Every certificate that states it is found; one that states only something like it may be.
    std::vector<std::pair<std::string, std::string>> stated;
};

/// Empty where there is nothing in it that the index knows: no words, and nothing stated that has
/// a letter or a digit.
std::optional<WordSearch> wordSearch(const SearchedWords& searched);

/// Whether the index agrees with the certificates, as of one moment. Keeps nobody from writing and
/// writes nothing into the database, which has the schema that its scripts make.
Result<bool> wordsAgree(const Connection& connection);

/// Makes the index anew, within the caller's transaction.
Result<void> rebuildWords(const Connection& connection);

}  // namespace model::dialect
