// SPDX-License-Identifier: Apache-2.0
#include "trust/canonical.h"

#include <algorithm>
#include <nlohmann/json.hpp>
#include <optional>

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
            const std::size_t length = sequenceLength(text);
            if (length == 0) return fail("is not UTF-8 text");
            if (length == 1)
                appendAscii(text.front());
            else
                bytes_ += text.substr(0, length);
            text.remove_prefix(length);
        }
        bytes_ += '"';
        return true;
    }

    void appendAscii(char c) {
        constexpr std::string_view kShort = "\b\t\n\f\r\"\\";
        constexpr std::string_view kLetter = "btnfr\"\\";
        if (const auto at = kShort.find(c); at != std::string_view::npos) {
            bytes_ += '\\';
            bytes_ += kLetter[at];
        } else if (static_cast<unsigned char>(c) < 0x20) {
            constexpr char kHex[] = "0123456789abcdef";
            bytes_ += "\\u00";
            bytes_ += kHex[c >> 4];
            bytes_ += kHex[c & 15];
        } else {
            bytes_ += c;
        }
    }

    std::string bytes_;
    std::string place_;
    const char* reason_ = "";
};

/// None for null, fractions and what is nested too deeply; the caller compares the bytes.
std::optional<Canonical> valueOf(const nlohmann::json& json, int depth) {
    if (depth > kDeepest) return std::nullopt;
    if (json.is_string()) return Canonical(json.get<std::string>());
    if (json.is_boolean()) return Canonical(json.get<bool>());
    if (json.is_number_integer()) return Canonical(json.get<std::int64_t>());
    if (json.is_array()) {
        Canonical::Array array;
        for (const auto& element : json) {
            auto value = valueOf(element, depth + 1);
            if (!value) return std::nullopt;
            array.push_back(std::move(*value));
        }
        return Canonical(std::move(array));
    }
    if (!json.is_object()) return std::nullopt;
    Canonical::Object object;
    for (const auto& [key, element] : json.items()) {
        auto value = valueOf(element, depth + 1);
        if (!value) return std::nullopt;
        object.emplace(key, std::move(*value));
    }
    return Canonical(std::move(object));
}

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
    const auto found = members->find(std::string(key));
    return found == members->end() ? nullptr : &found->second;
}

Result<std::string> canonicalBytes(const Canonical& value) {
    return Writer().write(value);
}

Result<Canonical> parseCanonical(std::string_view bytes) {
    const Error damaged{ErrorKind::Damaged, "", "is not in canonical form", {}};
    const auto json = nlohmann::json::parse(bytes, nullptr, false);
    if (json.is_discarded()) return damaged;
    auto value = valueOf(json, 0);
    if (!value) return damaged;
    const auto again = canonicalBytes(*value);
    if (!again || *again != bytes) return damaged;
    return std::move(*value);
}

}  // namespace model
