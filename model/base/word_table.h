// SPDX-License-Identifier: Apache-2.0
// An enumeration's values and their words, one table for reading and writing them.
#pragma once

#include <cassert>
#include <cstddef>
#include <optional>
#include <string_view>
#include <utility>

namespace model {

template <class Value>
using WordEntry = std::pair<Value, std::string_view>;

/// The word of a value; every value must have one.
template <class Value, std::size_t Size>
std::string_view wordIn(const WordEntry<Value> (&entries)[Size], Value value) {
    for (const auto& [known, word] : entries)
        if (known == value) return word;
    assert(false && "a value without a word");
    return {};
}

/// The value of a word; nothing for an unknown one.
template <class Value, std::size_t Size>
std::optional<Value> valueIn(const WordEntry<Value> (&entries)[Size], std::string_view word) {
    for (const auto& [value, known] : entries)
        if (known == word) return value;
    return std::nullopt;
}

}  // namespace model
