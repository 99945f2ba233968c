// SPDX-License-Identifier: Apache-2.0
#include "exchange/json_fields.h"

#include <algorithm>

#include "base/decimal.h"

namespace model {

void JsonProblem::report(const std::string& path, std::string reason,
                         std::vector<std::string> arguments) {
    if (first_) return;
    first_ = inputError(path.empty() ? document_ : document_ + ": " + path, std::move(reason),
                        std::move(arguments));
}

JsonFields::JsonFields(const JsonValue& value, std::string path, JsonProblem& problem,
                       const std::vector<std::string_view>& allowed)
    : path_(std::move(path)), problem_(problem) {
    if (value.type() != JsonValue::Type::Object) {
        problem_.report(path_, "must be an object, not %1", {std::string(typeName(value.type()))});
        return;
    }
    object_ = &value;
    for (const JsonMember& member : value.members())
        if (std::ranges::find(allowed, member.name) == allowed.end())
            report(member.name, "is not a field that is known here");
}

std::string JsonFields::text(std::string_view name) const {
    const JsonValue* value = required(name, JsonValue::Type::String);
    return value == nullptr ? std::string() : value->string();
}

std::string JsonFields::filledText(std::string_view name) const {
    std::string value = text(name);
    if (has(name) && value.find_first_not_of(" \t\r\n") == std::string::npos)
        report(name, "must not be empty");
    return value;
}

std::int64_t JsonFields::number(std::string_view name, Sign sign) const {
    const JsonValue* value = required(name, JsonValue::Type::Number);
    if (value == nullptr) return 0;
    if (sign == Sign::Positive && value->millionths() <= 0)
        report(name, "must be greater than 0, not %1", {formatMillionths(value->millionths())});
    if (sign == Sign::NotNegative && value->millionths() < 0)
        report(name, "must not be negative, as %1 is", {formatMillionths(value->millionths())});
    return value->millionths();
}

int JsonFields::count(std::string_view name) const {
    const std::int64_t value = number(name, Sign::NotNegative);
    if (value % kMillion != 0) report(name, "must be a whole number");
    return static_cast<int>(value / kMillion);
}

bool JsonFields::boolean(std::string_view name) const {
    const JsonValue* value = required(name, JsonValue::Type::Boolean);
    return value != nullptr && value->boolean();
}

const JsonValue::Elements& JsonFields::array(std::string_view name, std::size_t most) const {
    static const JsonValue::Elements kNone;
    const JsonValue* value = required(name, JsonValue::Type::Array);
    if (value == nullptr) return kNone;
    if (value->elements().size() > most) {
        report(name, "holds more than %1 entries", {std::to_string(most)});
        return kNone;
    }
    return value->elements();
}

std::vector<std::string> JsonFields::texts(std::string_view name, std::size_t most) const {
    std::vector<std::string> texts;
    for (const JsonValue& element : array(name, most)) {
        if (element.type() != JsonValue::Type::String) {
            problem_.report(elementPath(pathOf(name), texts.size()), "must be a string, not %1",
                            {std::string(typeName(element.type()))});
            break;
        }
        texts.push_back(element.string());
    }
    return texts;
}

const JsonValue* JsonFields::required(std::string_view name) const {
    const JsonValue* value = find(name);
    if (value == nullptr) report(name, "is missing");
    return value;
}

void JsonFields::report(std::string_view name, std::string reason,
                        std::vector<std::string> arguments) const {
    problem_.report(pathOf(name), std::move(reason), std::move(arguments));
}

const JsonValue* JsonFields::find(std::string_view name) const {
    return object_ == nullptr ? nullptr : object_->find(name);
}

const JsonValue* JsonFields::required(std::string_view name, JsonValue::Type type) const {
    const JsonValue* value = required(name);
    if (value == nullptr || value->type() == type) return value;
    report(name, "must be %1, not %2",
           {std::string(typeName(type)), std::string(typeName(value->type()))});
    return nullptr;
}

}  // namespace model
