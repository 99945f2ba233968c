// SPDX-License-Identifier: Apache-2.0
#include "exchange/json_text.h"

#include <algorithm>
#include <nlohmann/json.hpp>

#include "base/decimal.h"

namespace model {
namespace {

std::string quoted(const std::string& text) {
    return nlohmann::json(text).dump(-1, ' ', false, nlohmann::json::error_handler_t::replace);
}

bool isScalar(const JsonValue& value) {
    return value.type() != JsonValue::Type::Array && value.type() != JsonValue::Type::Object;
}

class Writer {
public:
    explicit Writer(std::string& text) : text_(text) {}

    void write(const JsonValue& value) {
        switch (value.type()) {
            case JsonValue::Type::Null:
                text_ += "null";
                break;
            case JsonValue::Type::Boolean:
                text_ += value.boolean() ? "true" : "false";
                break;
            case JsonValue::Type::Number:
                text_ += formatMillionths(value.millionths());
                break;
            case JsonValue::Type::String:
                text_ += quoted(value.string());
                break;
            case JsonValue::Type::Array:
                writeArray(value.elements());
                break;
            case JsonValue::Type::Object:
                writeObject(value.members());
                break;
        }
    }

private:
    void writeArray(const JsonValue::Elements& elements) {
        const bool oneLine = std::ranges::all_of(elements, isScalar);
        text_ += '[';
        ++depth_;
        for (std::size_t i = 0; i < elements.size(); ++i) {
            if (i > 0) text_ += oneLine ? ", " : ",";
            if (!oneLine) newLine();
            write(elements[i]);
        }
        --depth_;
        if (!oneLine) newLine();
        text_ += ']';
    }

    void writeObject(const JsonValue::Members& members) {
        text_ += '{';
        ++depth_;
        for (std::size_t i = 0; i < members.size(); ++i) {
            if (i > 0) text_ += ',';
            newLine();
            text_ += quoted(members[i].name) + ": ";
            write(members[i].value);
        }
        --depth_;
        if (!members.empty()) newLine();
        text_ += '}';
    }

    void newLine() {
        text_ += '\n';
        text_.append(2 * depth_, ' ');
    }

    std::string& text_;
    std::size_t depth_ = 0;
};

}  // namespace

std::string writeJson(const JsonValue& value) {
    std::string text;
    Writer(text).write(value);
    return text += '\n';
}

}  // namespace model
