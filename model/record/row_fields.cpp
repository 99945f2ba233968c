// SPDX-License-Identifier: Apache-2.0
#include "record/row_fields.h"

#include <algorithm>

#include "judge/sheet_words.h"

namespace model {

std::string_view trimmed(std::string_view text) {
    const auto first = text.find_first_not_of(" \t");
    if (first == std::string_view::npos) return {};
    return text.substr(first, text.find_last_not_of(" \t") - first + 1);
}

bool areEmpty(std::initializer_list<const std::string*> texts) {
    return std::ranges::all_of(texts, [](const std::string* text) { return isEmpty(*text); });
}

Result<std::int64_t> millionthsOf(std::string_view text) {
    const auto entry = parseLength(text, LengthUnit::Millimetre);
    if (!entry) return entry.error();
    return entry->value.millionths();
}

void RowFields::fail(std::string field, std::string reason, std::vector<std::string> arguments) {
    errors_.push_back({std::move(field), inputError("", std::move(reason), std::move(arguments))});
}

void RowFields::add(std::vector<FieldError> errors) {
    for (FieldError& error : errors) errors_.push_back(std::move(error));
}

std::optional<std::int64_t> RowFields::within(const std::string& field, std::int64_t millionths,
                                              Allowed allowed) {
    if (allowed == Allowed::Positive && millionths <= 0)
        fail(field, "must be more than 0");
    else if (allowed == Allowed::NotNegative && millionths < 0)
        fail(field, "must not be below 0");
    else
        return millionths;
    return std::nullopt;
}

std::optional<std::int64_t> RowFields::number(const std::string& field, const std::string& text,
                                              Allowed allowed) {
    if (isEmpty(text)) return std::nullopt;
    const auto value = millionthsOf(text);
    if (value) return within(field, *value, allowed);
    errors_.push_back({field, value.error()});
    return std::nullopt;
}

std::optional<Length> RowFields::length(const std::string& field, const std::string& text,
                                        Allowed allowed) {
    if (isEmpty(text)) return std::nullopt;
    const auto entry = parseLength(text, unit_);
    if (!entry) {
        errors_.push_back({field, entry.error()});
        return std::nullopt;
    }
    const auto millionths = within(field, entry->value.millionths(), allowed);
    if (!millionths) return std::nullopt;
    return entry->value;
}

bool RowFields::require(const std::string& field, const std::string& text) {
    if (!isEmpty(text)) return true;
    fail(field, "is missing");
    return false;
}

Relevance RowFields::relevance(const std::string& text, const std::string& reason) {
    auto relevance = Relevance::Relevant;
    if (const auto stated = trimmed(text); !stated.empty()) {
        if (const auto known = relevanceFrom(stated))
            relevance = *known;
        else
            fail("relevance", "must be relevant, non-relevant, false or empty, not: %1", {text});
    }
    if (relevance != Relevance::Relevant && isEmpty(reason))
        fail("reason", "is missing; why the indication is %1 must be stated",
             {std::string(word(relevance))});
    return relevance;
}

}  // namespace model
