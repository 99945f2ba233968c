// SPDX-License-Identifier: Apache-2.0
#include "registers/field.h"

#include <algorithm>
#include <charconv>
#include <chrono>

#include "base/clock.h"
#include "quantity/entry.h"

namespace model {
namespace {

constexpr std::string_view kBlanks = " \t\r\n";

std::string_view trimmed(std::string_view text) {
    const auto first = text.find_first_not_of(kBlanks);
    if (first == std::string_view::npos) return {};
    return text.substr(first, text.find_last_not_of(kBlanks) - first + 1);
}

std::vector<std::string> parts(std::string_view text, char separator) {
    std::vector<std::string> found;
    while (!text.empty()) {
        const std::size_t end = std::min(text.find(separator), text.size());
        if (const auto part = trimmed(text.substr(0, end)); !part.empty()) found.emplace_back(part);
        text.remove_prefix(std::min(end + 1, text.size()));
    }
    return found;
}

std::optional<std::chrono::year_month_day> dateFrom(std::string_view text) {
    // A date is the start of a moment; timeFrom() knows the calendar.
    const auto moment = timeFrom(std::string(text) + "T00:00:00Z");
    if (!moment) return std::nullopt;
    return std::chrono::year_month_day(std::chrono::floor<std::chrono::days>(*moment));
}

std::string textOf(const std::chrono::year_month_day& date) {
    return toText(std::chrono::sys_days(date)).substr(0, 10);
}

bool isWhole(std::string_view text) {
    std::int64_t value = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    return error == std::errc() && end == text.data() + text.size() && value >= 0;
}

bool isDigest(std::string_view text) {
    return text.size() == 64 &&
           text.find_first_not_of("0123456789abcdef") == std::string_view::npos;
}

}  // namespace

std::vector<std::string> itemsOf(std::string_view list) {
    return parts(list, ',');
}

std::string listOf(const std::vector<std::string>& items) {
    std::string list;
    for (const std::string& item : items) {
        if (!list.empty()) list += ", ";
        list += item;
    }
    return list;
}

std::optional<std::int64_t> numberOf(std::string_view text) {
    const auto entry = parseLength(trimmed(text), LengthUnit::Millimetre);
    if (!entry) return std::nullopt;
    return entry->value.millionths();
}

bool isDate(std::string_view text) {
    return dateFrom(text).has_value();
}

std::string monthsAfter(std::string_view date, int months) {
    const auto from = dateFrom(date);
    if (!from) return {};
    auto then = *from + std::chrono::months(months);
    if (!then.ok()) then = then.year() / then.month() / std::chrono::last;
    return textOf(then);
}

std::string daysAfter(std::string_view date, int days) {
    const auto from = dateFrom(date);
    if (!from) return {};
    return textOf(
        std::chrono::year_month_day(std::chrono::sys_days(*from) + std::chrono::days(days)));
}

std::optional<Error> wrongText(const FieldInfo& field, std::string_view text) {
    if (trimmed(text).empty()) {
        if (field.need == FieldInfo::Need::Optional) return std::nullopt;
        return inputError("", "is missing");
    }
    switch (field.kind) {
        case FieldKind::Line:
        case FieldKind::List:
            if (text.find_first_of("\r\n") != std::string_view::npos)
                return inputError("", "takes one line");
            return std::nullopt;
        case FieldKind::Paragraph:
            return std::nullopt;
        case FieldKind::Date:
            if (isDate(text)) return std::nullopt;
            return inputError("", "takes a date such as 2026-11-25, not: %1", {std::string(text)});
        case FieldKind::Moment:
            if (timeFrom(text)) return std::nullopt;
            return inputError("", "takes a time in UTC such as 2026-11-25T09:30:00Z, not: %1",
                              {std::string(text)});
        case FieldKind::Number:
            if (auto entry = parseLength(trimmed(text), LengthUnit::Millimetre); !entry)
                return inputError("", "takes a decimal number, not: %1", {std::string(text)});
            return std::nullopt;
        case FieldKind::Whole:
            if (isWhole(text)) return std::nullopt;
            return inputError("", "takes a whole number from 0 on, not: %1", {std::string(text)});
        case FieldKind::Choice: {
            const auto choices = parts(field.choices, '|');
            if (std::ranges::find(choices, text) != choices.end()) return std::nullopt;
            return inputError("", "takes one of: %1; not: %2",
                              {listOf(choices), std::string(text)});
        }
        case FieldKind::YesNo:
            if (text == "yes" || text == "no") return std::nullopt;
            return inputError("", "takes yes or no, not: %1", {std::string(text)});
        case FieldKind::Sha256:
            if (isDigest(text)) return std::nullopt;
            return inputError("", "takes the SHA-256 of a file, 64 hexadecimal digits");
    }
    return std::nullopt;
}

}  // namespace model
