// SPDX-License-Identifier: Apache-2.0
// Values that are hashed and signed, and the one sequence of bytes that each of them has. The
// format is described in CANONICAL.md beside this file and never changes.
#pragma once

#include <cstdint>
#include <map>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "base/result.h"

namespace model {

/// RFC 8785's order of keys, by UTF-16 code units, for valid UTF-8.
struct KeyOrder {
    using is_transparent = void;
    bool operator()(std::string_view a, std::string_view b) const;
};

/// A text, a whole number, a boolean, an array or an object; what is missing is left out, there
/// is no null. The default is an empty object.
class Canonical {
public:
    using Array = std::vector<Canonical>;
    using Object = std::map<std::string, Canonical, KeyOrder>;

    Canonical() = default;
    Canonical(std::string text) : held_(std::move(text)) {}
    Canonical(std::string_view text) : held_(std::string(text)) {}
    Canonical(const char* text) : held_(std::string(text)) {}
    Canonical(bool truth) : held_(truth) {}
    Canonical(int whole) : held_(std::int64_t{whole}) {}
    Canonical(std::int64_t whole) : held_(whole) {}
    Canonical(Array array) : held_(std::move(array)) {}
    Canonical(Object object) : held_(std::move(object)) {}

    /// What is held, null where it is something else.
    [[nodiscard]] const std::string* text() const { return std::get_if<std::string>(&held_); }
    [[nodiscard]] const std::int64_t* whole() const { return std::get_if<std::int64_t>(&held_); }
    [[nodiscard]] const bool* truth() const { return std::get_if<bool>(&held_); }
    [[nodiscard]] const Array* array() const { return std::get_if<Array>(&held_); }
    [[nodiscard]] const Object* object() const { return std::get_if<Object>(&held_); }

    /// Becomes an empty T, one of those above, to be filled.
    template <class T>
    T& emplace() {
        return held_.emplace<T>();
    }

    /// An object's member; null where it is no object or has no such key.
    [[nodiscard]] const Canonical* member(std::string_view key) const;

    friend bool operator==(const Canonical&, const Canonical&) = default;

private:
    std::variant<Object, Array, std::string, std::int64_t, bool> held_;
};

/// The value's bytes. Fails (Input, with the JSON path as place) for a text that is not UTF-8 and
/// for a whole number beyond 2^53 - 1 either way.
Result<std::string> canonicalBytes(const Canonical& value);

/// Reads canonical bytes; anything that canonicalBytes() would not write is refused (Damaged).
Result<Canonical> parseCanonical(std::string_view bytes);

}  // namespace model
