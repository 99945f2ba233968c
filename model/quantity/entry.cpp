// SPDX-License-Identifier: Apache-2.0
#include "quantity/entry.h"

#include <algorithm>
#include <charconv>
#include <optional>

namespace model {
namespace {

constexpr std::int64_t kNanometresAnInch = 25'400'000;
constexpr std::int64_t kLargestNm = 1'000'000 * kMillion;

std::string_view trimmed(std::string_view text) {
    const auto first = text.find_first_not_of(" \t");
    if (first == std::string_view::npos) return {};
    return text.substr(first, text.find_last_not_of(" \t") - first + 1);
}

std::optional<std::int64_t> wholeNumber(std::string_view text) {
    std::int64_t value = 0;
    const auto [end, code] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (text.empty() || code != std::errc{} || end != text.data() + text.size() || value < 0 ||
        value > 1'000'000)
        return std::nullopt;
    return value;
}

/// "3/64" or "1 3/64", in nanometres.
Result<Length> parseInchFraction(std::string_view text, std::size_t slash) {
    std::string_view over = trimmed(text.substr(0, slash));
    std::int64_t whole = 0;
    if (const auto space = over.find(' '); space != std::string_view::npos) {
        const auto value = wholeNumber(over.substr(0, space));
        if (!value) return inputError("", "is not a length; write 1.25, 5/16 or 1 5/16");
        whole = *value;
        over = trimmed(over.substr(space));
    }
    const auto numerator = wholeNumber(over);
    const auto denominator = wholeNumber(trimmed(text.substr(slash + 1)));
    if (!numerator || !denominator || *denominator == 0)
        return inputError("", "is not a length; write 1.25, 5/16 or 1 5/16");
    const Int128 product =
        (static_cast<Int128>(whole) * *denominator + *numerator) * kNanometresAnInch;
    if (product % *denominator != 0)
        return inputError("", "is not a whole number of nanometres; use 64ths or decimals");
    return Length::fromMillionths(
        static_cast<std::int64_t>(std::min<Int128>(product / *denominator, kLargestNm + 1)));
}

}  // namespace

Result<LengthEntry> parseLength(std::string_view typed, LengthUnit unit) {
    const std::string_view text = trimmed(typed);
    const auto finish = [&](Length value) -> Result<LengthEntry> {
        if (value.millionths() > kLargestNm || value.millionths() < -kLargestNm)
            return inputError("", "is larger than 1000000 mm");
        return LengthEntry{value, std::string(text), unit};
    };
    const auto slash = text.find('/');
    if (unit == LengthUnit::Inch && slash != std::string_view::npos) {
        const auto value = parseInchFraction(text, slash);
        if (!value) return value.error();
        return finish(*value);
    }
    std::string number(text);
    std::replace(number.begin(), number.end(), ',', '.');
    if (number.find_first_of("eE") != std::string::npos)
        return inputError("", "is not a decimal number");
    // ".5" and "5." are how people write at the bench; JSON's grammar wants both sides.
    if (!number.empty() && number.front() == '.') number.insert(0, 1, '0');
    if (!number.empty() && number.back() == '.') number += '0';
    const auto millionths = parseMillionths(number);
    if (!millionths) return millionths.error();
    if (unit == LengthUnit::Millimetre) return finish(Length::fromMillionths(*millionths));
    const Int128 scaled = static_cast<Int128>(*millionths) * kNanometresAnInch;
    if (scaled % kMillion != 0)
        return inputError("", "has too many decimals; an inch value may have 5");
    return finish(Length::fromMillionths(static_cast<std::int64_t>(scaled / kMillion)));
}

std::string formatLength(Length length, LengthUnit unit) {
    if (unit == LengthUnit::Millimetre) return toText(length);
    const Int128 scaled = static_cast<Int128>(length.millionths()) * kMillion;
    if (scaled % kNanometresAnInch == 0)
        return formatMillionths(static_cast<std::int64_t>(scaled / kNanometresAnInch));
    const Int128 half = scaled < 0 ? -kNanometresAnInch / 2 : kNanometresAnInch / 2;
    return "~" + formatMillionths(static_cast<std::int64_t>((scaled + half) / kNanometresAnInch));
}

std::string_view symbol(LengthUnit unit) {
    return unit == LengthUnit::Inch ? "in" : "mm";
}

}  // namespace model
