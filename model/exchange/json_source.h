// SPDX-License-Identifier: Apache-2.0
// The bytes of a JSON document on their way to the parser: counted, limited, and with the place of
// the last one, so that a document of any size is refused in bounded time and memory.
#pragma once

#include <cstdio>
#include <iterator>
#include <optional>
#include <string_view>
#include <vector>

#include "base/result.h"

namespace model {

class JsonSource {
public:
    /// Reads from an open file; does not close it.
    explicit JsonSource(std::FILE* file);
    /// Reads from memory; `text` outlives the source.
    explicit JsonSource(std::string_view text);

    /// Whether there is one more byte. False at the end of the input, and for good once the source
    /// has failed.
    bool hasByte() { return at_ < size_ || refill(); }
    [[nodiscard]] char byte() const { return bytes_[at_]; }
    /// Goes on to the next byte. Call it when hasByte() said yes.
    void advance();

    /// Why the source gave up; empty where it did not.
    [[nodiscard]] const std::optional<Error>& failure() const { return failure_; }
    /// "line 3, column 17": of the byte that was taken last, both counted from 1; columns are
    /// bytes.
    [[nodiscard]] std::string place() const;

private:
    bool refill();
    void fail(Error error);
    void refuseByItsStart();

    std::FILE* file_ = nullptr;
    std::vector<char> buffer_;
    const char* bytes_ = nullptr;
    std::size_t at_ = 0;
    std::size_t size_ = 0;
    std::size_t taken_ = 0;
    std::size_t line_ = 1;
    std::size_t column_ = 0;
    bool newLine_ = false;
    bool inString_ = false;
    bool escaped_ = false;
    std::size_t token_ = 0;
    std::optional<Error> failure_;
};

/// A source as an input iterator; the default-made one is the end.
class JsonSourceIterator {
public:
    using iterator_category = std::input_iterator_tag;
    using value_type = char;
    using difference_type = std::ptrdiff_t;
    using pointer = const char*;
    using reference = char;

    JsonSourceIterator() = default;
    explicit JsonSourceIterator(JsonSource& source) : source_(&source) {}

    char operator*() const { return source_->byte(); }
    JsonSourceIterator& operator++() {
        source_->advance();
        return *this;
    }
    // Only ever compared with the end.
    friend bool operator==(const JsonSourceIterator& a, const JsonSourceIterator& b) {
        return a.atEnd() == b.atEnd();
    }
    friend bool operator!=(const JsonSourceIterator& a, const JsonSourceIterator& b) {
        return !(a == b);
    }

private:
    [[nodiscard]] bool atEnd() const { return source_ == nullptr || !source_->hasByte(); }
    JsonSource* source_ = nullptr;
};

}  // namespace model
