// SPDX-License-Identifier: Apache-2.0
// Takes a JSON object apart into typed fields. The first thing that is wrong is kept, with its
// path; what is read after it is of no use, but harmless, so that a reader needs no branches.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"
#include "exchange/json_value.h"

namespace model {

/// The first failure of one document.
class JsonProblem {
public:
    /// `document` names the file; errors get the place "document: path".
    explicit JsonProblem(std::string document) : document_(std::move(document)) {}

    void report(const std::string& path, std::string reason,
                std::vector<std::string> arguments = {});
    [[nodiscard]] const std::optional<Error>& first() const { return first_; }

private:
    std::string document_;
    std::optional<Error> first_;
};

/// What a number may be.
enum class Sign { Any, NotNegative, Positive };

/// One object, read field by field.
class JsonFields {
public:
    /// Reports `value` if it is no object or has a member that is not in `allowed`.
    JsonFields(const JsonValue& value, std::string path, JsonProblem& problem,
               const std::vector<std::string_view>& allowed);

    [[nodiscard]] bool has(std::string_view name) const { return find(name) != nullptr; }

    // Each reports a field that is missing or not of its type, and then returns an empty value.
    std::string text(std::string_view name) const;
    /// A text of which at least one character is no blank.
    std::string filledText(std::string_view name) const;
    std::int64_t number(std::string_view name, Sign sign) const;  ///< in millionths
    int count(std::string_view name) const;                       ///< whole, >= 0
    bool boolean(std::string_view name) const;
    const JsonValue::Elements& array(std::string_view name, std::size_t most) const;
    /// An array of texts only.
    std::vector<std::string> texts(std::string_view name, std::size_t most) const;
    /// A member of any type; null where it is missing, which is then reported.
    const JsonValue* required(std::string_view name) const;
    /// A member of any type; null where it is missing.
    [[nodiscard]] const JsonValue* find(std::string_view name) const;

    /// A quantity (Length, Area, Angle, GainStep) in its own unit.
    template <class Quantity>
    Quantity quantity(std::string_view name, Sign sign) const {
        return Quantity::fromMillionths(number(name, sign));
    }
    template <class Quantity>
    std::optional<Quantity> optionalQuantity(std::string_view name, Sign sign) const {
        if (!has(name)) return std::nullopt;
        return quantity<Quantity>(name, sign);
    }

    /// One of a set of words: `from` gives the value of a word, or nothing.
    template <class Word>
    Word word(std::string_view name, std::optional<Word> (*from)(std::string_view)) const {
        const std::string given = text(name);
        const std::optional<Word> value = from(given);
        if (!value && has(name)) report(name, "\"%1\" is not a word for it", {given});
        return value.value_or(Word{});
    }

    void report(std::string_view name, std::string reason,
                std::vector<std::string> arguments = {}) const;
    [[nodiscard]] std::string pathOf(std::string_view name) const {
        return memberPath(path_, name);
    }
    [[nodiscard]] JsonProblem& problem() const { return problem_; }

private:
    const JsonValue* required(std::string_view name, JsonValue::Type type) const;

    const JsonValue* object_ = nullptr;  ///< null where it was none
    std::string path_;
    JsonProblem& problem_;
};

}  // namespace model
