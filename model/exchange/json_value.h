// SPDX-License-Identifier: Apache-2.0
// A JSON value (RFC 8259) as the program reads and writes it: numbers are exact decimals, never
// binary fractions, and an object keeps the order of its members.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

namespace model {

struct JsonMember;

/// One value; not changed once made. Each accessor asserts the type it belongs to.
class JsonValue {
public:
    using Members = std::vector<JsonMember>;
    using Elements = std::vector<JsonValue>;
    enum class Type { Null, Boolean, Number, String, Array, Object };

    JsonValue();  ///< null: written where a value is not there, refused when read
    JsonValue(const JsonValue& other);
    JsonValue(JsonValue&& other) noexcept;
    JsonValue& operator=(const JsonValue& other);
    JsonValue& operator=(JsonValue&& other) noexcept;
    ~JsonValue();

    static JsonValue boolean(bool value);
    /// A number given in millionths.
    static JsonValue number(std::int64_t millionths);
    /// A whole number.
    static JsonValue count(std::int64_t whole);
    static JsonValue string(std::string utf8);
    static JsonValue string(std::string_view utf8);
    static JsonValue string(const char* utf8);
    static JsonValue strings(const std::vector<std::string>& texts);
    static JsonValue array(Elements elements);
    /// An array of what `toValue` makes of each of `items`.
    template <class Items, class ToValue>
    static JsonValue arrayOf(const Items& items, ToValue toValue);
    static JsonValue object(Members members);

    [[nodiscard]] Type type() const { return static_cast<Type>(held_.index()); }
    [[nodiscard]] bool isNull() const { return type() == Type::Null; }

    [[nodiscard]] bool boolean() const;
    [[nodiscard]] std::int64_t millionths() const;
    [[nodiscard]] const std::string& string() const;
    [[nodiscard]] const Elements& elements() const;
    [[nodiscard]] const Members& members() const;

    /// The member of that name of an object; null where there is none.
    [[nodiscard]] const JsonValue* find(std::string_view name) const;

private:
    // In the order of Type.
    using Held = std::variant<std::monostate, bool, std::int64_t, std::string, Elements, Members>;
    explicit JsonValue(Held held);

    Held held_;
};

struct JsonMember {
    std::string name;
    JsonValue value;
};

template <class Items, class ToValue>
JsonValue JsonValue::arrayOf(const Items& items, ToValue toValue) {
    Elements elements;
    elements.reserve(items.size());
    for (const auto& item : items) elements.push_back(toValue(item));
    return array(std::move(elements));
}

/// "a number", "an object" ...: for messages.
std::string_view typeName(JsonValue::Type type);

/// `path` with an object's member or an array's element behind it: "examinations[2].zone".
std::string memberPath(const std::string& path, std::string_view name);
std::string elementPath(const std::string& path, std::size_t index);

}  // namespace model
