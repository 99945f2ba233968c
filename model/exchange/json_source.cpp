// SPDX-License-Identifier: Apache-2.0
#include "exchange/json_source.h"

#include <cerrno>
#include <cstring>

#include "exchange/json_document.h"

namespace model {
namespace {

constexpr std::size_t kBufferSize = 65'536;

}  // namespace

JsonSource::JsonSource(std::FILE* file) : file_(file), buffer_(kBufferSize) {
    bytes_ = buffer_.data();
    refill();
    refuseByItsStart();
}

JsonSource::JsonSource(std::string_view text) : bytes_(text.data()), size_(text.size()) {
    refuseByItsStart();
}

void JsonSource::refuseByItsStart() {
    const std::string_view start(bytes_, size_);
    if (start.starts_with("\xEF\xBB\xBF"))
        fail(inputError("", "starts with a byte-order mark; must be UTF-8 without one"));
    else if (start.starts_with("\xFE\xFF") || start.starts_with("\xFF\xFE"))
        fail(inputError("", "is UTF-16; must be UTF-8"));
    else if (start.empty() && !failure_)
        fail(inputError("", "is empty"));
}

void JsonSource::advance() {
    const char c = bytes_[at_++];
    if (++taken_ > kLargestJsonDocument) {
        fail(inputError("", "is larger than %1 bytes", {std::to_string(kLargestJsonDocument)}));
        return;
    }
    if (newLine_) {
        ++line_;
        column_ = 0;
    }
    ++column_;
    newLine_ = c == '\n';
    if (c == '\0') {
        // The parser would take it for the end of the document and leave the rest unread.
        fail(inputError(place(), "is not JSON in UTF-8: a byte is 0"));
        return;
    }

    // Enough of the grammar to know how long the current string or number has grown.
    if (inString_) {
        if (!escaped_ && c == '"') inString_ = false;
        escaped_ = !escaped_ && c == '\\';
        ++token_;
    } else if (std::strchr(" \t\r\n[]{},:", c) != nullptr) {
        token_ = 0;
    } else {
        inString_ = c == '"';
        ++token_;
    }
    if (token_ > kLongestJsonToken)
        fail(inputError(place(), "a string or number is longer than %1 bytes",
                        {std::to_string(kLongestJsonToken)}));
}

bool JsonSource::refill() {
    if (failure_ || file_ == nullptr) return false;
    at_ = 0;
    size_ = std::fread(buffer_.data(), 1, buffer_.size(), file_);
    if (std::ferror(file_) != 0) {
        const int cause = errno;
        fail(refusal("", "cannot be read: %1", {std::strerror(cause)}));
        return false;
    }
    return size_ > 0;
}

void JsonSource::fail(Error error) {
    if (!failure_) failure_ = std::move(error);
    at_ = size_ = 0;
}

std::string JsonSource::place() const {
    return "line " + std::to_string(line_) + ", column " + std::to_string(column_);
}

}  // namespace model
