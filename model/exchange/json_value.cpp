// SPDX-License-Identifier: Apache-2.0
#include "exchange/json_value.h"

#include <algorithm>
#include <cassert>

#include "base/decimal.h"

namespace model {

JsonValue::JsonValue() = default;
JsonValue::JsonValue(const JsonValue& other) = default;
JsonValue::JsonValue(JsonValue&& other) noexcept = default;
JsonValue& JsonValue::operator=(const JsonValue& other) = default;
JsonValue& JsonValue::operator=(JsonValue&& other) noexcept = default;
JsonValue::~JsonValue() = default;
JsonValue::JsonValue(Held held) : held_(std::move(held)) {}

JsonValue JsonValue::boolean(bool value) {
    return JsonValue(Held(value));
}
JsonValue JsonValue::number(std::int64_t millionths) {
    return JsonValue(Held(millionths));
}
JsonValue JsonValue::string(std::string utf8) {
    return JsonValue(Held(std::move(utf8)));
}
JsonValue JsonValue::string(std::string_view utf8) {
    return string(std::string(utf8));
}
JsonValue JsonValue::string(const char* utf8) {
    return string(std::string(utf8));
}
JsonValue JsonValue::count(std::int64_t whole) {
    return number(whole * kMillion);
}

JsonValue JsonValue::strings(const std::vector<std::string>& texts) {
    return arrayOf(texts, [](const std::string& text) { return string(text); });
}

JsonValue JsonValue::array(Elements elements) {
    return JsonValue(Held(std::move(elements)));
}
JsonValue JsonValue::object(Members members) {
    return JsonValue(Held(std::move(members)));
}

bool JsonValue::boolean() const {
    assert(type() == Type::Boolean);
    return *std::get_if<bool>(&held_);
}

std::int64_t JsonValue::millionths() const {
    assert(type() == Type::Number);
    return *std::get_if<std::int64_t>(&held_);
}

const std::string& JsonValue::string() const {
    assert(type() == Type::String);
    return *std::get_if<std::string>(&held_);
}

const JsonValue::Elements& JsonValue::elements() const {
    assert(type() == Type::Array);
    return *std::get_if<Elements>(&held_);
}

const JsonValue::Members& JsonValue::members() const {
    assert(type() == Type::Object);
    return *std::get_if<Members>(&held_);
}

const JsonValue* JsonValue::find(std::string_view name) const {
    const auto found = std::ranges::find(members(), name, &JsonMember::name);
    return found == members().end() ? nullptr : &found->value;
}

std::string_view typeName(JsonValue::Type type) {
    switch (type) {
        case JsonValue::Type::Null:
            return "null";
        case JsonValue::Type::Boolean:
            return "true or false";
        case JsonValue::Type::Number:
            return "a number";
        case JsonValue::Type::String:
            return "a string";
        case JsonValue::Type::Array:
            return "an array";
        case JsonValue::Type::Object:
            return "an object";
    }
    return "";
}

std::string memberPath(const std::string& path, std::string_view name) {
    const bool plain = !name.empty() && std::ranges::all_of(name, [](char c) {
        return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') ||
               c == '_' || c == '-';
    });
    if (!plain) {
        // A member's name may be anything, and as long as it likes.
        constexpr std::size_t kShown = 60;
        std::string shown(name.substr(0, kShown));
        if (name.size() > kShown) {
            while (!shown.empty() && (static_cast<unsigned char>(shown.back()) & 0xC0) == 0x80)
                shown.pop_back();
            if (!shown.empty() && static_cast<unsigned char>(shown.back()) >= 0xC0)
                shown.pop_back();
            shown += "...";
        }
        return path + "[\"" + shown + "\"]";
    }
    return path.empty() ? std::string(name) : path + "." + std::string(name);
}

std::string elementPath(const std::string& path, std::size_t index) {
    return path + "[" + std::to_string(index) + "]";
}

}  // namespace model
