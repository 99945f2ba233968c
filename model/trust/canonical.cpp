// SPDX-License-Identifier: Apache-2.0
#include "trust/canonical.h"

#include <algorithm>
#include <charconv>

namespace model {
namespace {

/// Numbers of a larger size are not the same in every reader of JSON (RFC 8785, 3.2.2.3).
constexpr std::int64_t kLargestWhole = 9'007'199'254'740'991;
constexpr int kDeepest = 64;

/// The length of the UTF-8 sequence that starts `text`; 0 where there is none (RFC 3629).
std::size_t sequenceLength(std::string_view text) {
    const auto byte = [&](std::size_t i) {
        return i < text.size() ? static_cast<unsigned char>(text[i]) : 0u;
    };
    const auto continues = [&](std::size_t i) { return byte(i) >= 0x80 && byte(i) <= 0xbf; };
    const unsigned first = byte(0);
    if (first < 0x80) return 1;
    if (first >= 0xc2 && first <= 0xdf) return continues(1) ? 2 : 0;
    if (first >= 0xe0 && first <= 0xef) {
        const unsigned lowest = first == 0xe0 ? 0xa0 : 0x80;
        const unsigned highest = first == 0xed ? 0x9f : 0xbf;  // no surrogates
        return byte(1) >= lowest && byte(1) <= highest && continues(2) ? 3 : 0;
    }
    if (first >= 0xf0 && first <= 0xf4) {
        const unsigned lowest = first == 0xf0 ? 0x90 : 0x80;
        const unsigned highest = first == 0xf4 ? 0x8f : 0xbf;
        return byte(1) >= lowest && byte(1) <= highest && continues(2) && continues(3) ? 4 : 0;
    }
    return 0;
}

/// The characters that have an escape of two characters, and the second one of it.
constexpr std::string_view kEscaped = "\b\t\n\f\r\"\\";
constexpr std::string_view kEscapes = "btnfr\"\\";

/// How many bytes at the start of `text` are UTF-8 that is written as it is.
std::size_t plainLength(std::string_view text) {
    std::size_t at = 0;
    while (at < text.size()) {
        const auto byte = static_cast<unsigned char>(text[at]);
        if (byte < 0x20 || byte == '"' || byte == '\\') break;
        const std::size_t length = byte < 0x80 ? 1 : sequenceLength(text.substr(at));
        if (length == 0) break;
        at += length;
    }
    return at;
}

class Writer {
public:
    Result<std::string> write(const Canonical& value) {
        if (!append(value, 0)) return inputError(std::move(place_), reason_);
        return std::move(bytes_);
    }

private:
    // Each append...() is false where the value has no bytes; on the way out place_ becomes its
    // path.
    bool fail(const char* reason) {
        reason_ = reason;
        return false;
    }

    bool append(const Canonical& value, int depth) {
        if (depth > kDeepest) return fail("is nested too deeply");
        if (const std::string* text = value.text()) return appendText(*text);
        if (const Canonical::Array* array = value.array()) return appendArray(*array, depth);
        if (const Canonical::Object* object = value.object()) return appendObject(*object, depth);
        if (const bool* truth = value.truth()) {
            bytes_ += *truth ? "true" : "false";
            return true;
        }
        const std::int64_t whole = *value.whole();
        if (whole > kLargestWhole || whole < -kLargestWhole)
            return fail("is a number too large to be stored");
        bytes_ += std::to_string(whole);
        return true;
    }

    bool appendArray(const Canonical::Array& array, int depth) {
        bytes_ += '[';
        for (std::size_t i = 0; i < array.size(); ++i) {
            if (i != 0) bytes_ += ',';
            if (append(array[i], depth + 1)) continue;
            if (!place_.empty() && place_.front() != '[') place_.insert(0, ".");
            place_.insert(0, "[" + std::to_string(i) + "]");
            return false;
        }
        bytes_ += ']';
        return true;
    }

    bool appendObject(const Canonical::Object& object, int depth) {
        bytes_ += '{';
        bool first = true;
        for (const auto& [key, value] : object) {
            if (!first) bytes_ += ',';
            first = false;
            const bool keyDone = appendText(key);
            bytes_ += ':';
            if (keyDone && append(value, depth + 1)) continue;
            if (!place_.empty() && place_.front() != '[') place_.insert(0, ".");
            place_.insert(0, key);
            return false;
        }
        bytes_ += '}';
        return true;
    }

    bool appendText(std::string_view text) {
        bytes_ += '"';
        while (!text.empty()) {
            const std::size_t length = plainLength(text);
            bytes_ += text.substr(0, length);
            text.remove_prefix(length);
            if (text.empty()) break;
            if (static_cast<unsigned char>(text.front()) >= 0x80) return fail("is not UTF-8 text");
            appendEscaped(text.front());
            text.remove_prefix(1);
        }
        bytes_ += '"';
        return true;
    }

    void appendEscaped(char c) {
        bytes_ += '\\';
        if (const auto at = kEscaped.find(c); at != std::string_view::npos) {
            bytes_ += kEscapes[at];
        } else {
            constexpr char kHex[] = "0123456789abcdef";
            bytes_ += "u00";
            bytes_ += kHex[c >> 4];
            bytes_ += kHex[c & 15];
        }
    }

    std::string bytes_;
    std::string place_;
    const char* reason_ = "";
};

/// Reads what Writer writes. What it takes beside that, or in another way, is found by writing the
/// value again.
class Reader {
public:
    explicit Reader(std::string_view bytes) : left_(bytes) {}

    bool read(Canonical& value) { return readValue(value, 0) && left_.empty(); }

private:
    bool skip(std::string_view token) {
        if (!left_.starts_with(token)) return false;
        left_.remove_prefix(token.size());
        return true;
    }

    bool readValue(Canonical& value, int depth) {
        if (depth > kDeepest || left_.empty()) return false;
        switch (left_.front()) {
            case '"':
                return readText(value.emplace<std::string>());
            case '{':
                return readObject(value.emplace<Canonical::Object>(), depth);
            case '[':
                return readArray(value.emplace<Canonical::Array>(), depth);
            case 't':
                value = Canonical(true);
                return skip("true");
            case 'f':
                value = Canonical(false);
                return skip("false");
            default:
                return readWhole(value);
        }
    }

    bool readWhole(Canonical& value) {
        std::int64_t whole = 0;
        const auto [end, code] = std::from_chars(left_.data(), left_.data() + left_.size(), whole);
        if (code != std::errc()) return false;
        left_.remove_prefix(static_cast<std::size_t>(end - left_.data()));
        value = Canonical(whole);
        return true;
    }

    bool readArray(Canonical::Array& array, int depth) {
        if (!skip("[")) return false;
        if (skip("]")) return true;
        do {
            if (!readValue(array.emplace_back(), depth + 1)) return false;
        } while (skip(","));
        return skip("]");
    }

    bool readObject(Canonical::Object& object, int depth) {
        if (!skip("{")) return false;
        if (skip("}")) return true;
        do {
            std::string key;
            if (!readText(key) || !skip(":")) return false;
            // In their order each key comes last.
            const auto member = object.emplace_hint(object.end(), std::move(key), Canonical());
            if (!readValue(member->second, depth + 1)) return false;
        } while (skip(","));
        return skip("}");
    }

    bool readText(std::string& text) {
        if (!skip("\"")) return false;
        while (true) {
            const std::size_t length = plainLength(left_);
            text += left_.substr(0, length);
            left_.remove_prefix(length);
            if (skip("\"")) return true;
            if (!skip("\\") || !readEscape(text)) return false;
        }
    }

    bool readEscape(std::string& text) {
        if (left_.empty()) return false;
        if (const auto at = kEscapes.find(left_.front()); at != std::string_view::npos) {
            text += kEscaped[at];
            left_.remove_prefix(1);
            return true;
        }
        unsigned code = 0;
        constexpr std::size_t kDigits = 2;
        if (!skip("u00") || left_.size() < kDigits) return false;
        const char* const end = left_.data() + kDigits;
        const auto [stop, error] = std::from_chars(left_.data(), end, code, 16);
        if (error != std::errc() || stop != end) return false;
        text += static_cast<char>(code);
        left_.remove_prefix(kDigits);
        return true;
    }

    std::string_view left_;
};

}  // namespace

bool KeyOrder::operator()(std::string_view a, std::string_view b) const {
    const auto [left, right] = std::mismatch(a.begin(), a.end(), b.begin(), b.end());
    if (left == a.end() || right == b.end()) return left == a.end() && right != b.end();
    // In UTF-16 the code points from U+10000 (lead bytes F0 to F4) are surrogate pairs and come
    // before U+E000 to U+FFFF (lead bytes EE and EF).
    const auto rank = [](char c) {
        const auto byte = static_cast<unsigned char>(c);
        return byte == 0xee || byte == 0xef ? byte + 0x100 : byte;
    };
    return rank(*left) < rank(*right);
}

const Canonical* Canonical::member(std::string_view key) const {
    const Object* members = object();
    if (!members) return nullptr;
    const auto found = members->find(key);
    return found == members->end() ? nullptr : &found->second;
}

Result<std::string> canonicalBytes(const Canonical& value) {
    return Writer().write(value);
}

Result<Canonical> parseCanonical(std::string_view bytes) {
    const Error damaged{ErrorKind::Damaged, "", "is not in canonical form", {}};
    Result<Canonical> value = Canonical();
    if (!Reader(bytes).read(*value)) return damaged;
    const auto again = canonicalBytes(*value);
    if (!again || *again != bytes) return damaged;
    return value;
}

}  // namespace model
