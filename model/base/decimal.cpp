// SPDX-License-Identifier: Apache-2.0
#include "base/decimal.h"

#include <algorithm>

namespace model {
namespace {

constexpr int kDecimals = 6;
constexpr std::int64_t kLargest = 1'000'000 * kMillion;

bool isDigit(char c) {
    return c >= '0' && c <= '9';
}

Error notANumber() {
    return inputError("", "is not a decimal number");
}
Error tooLarge() {
    return inputError("", "is larger than 1000000");
}
Error tooFine() {
    return inputError("", "has more than 6 decimals");
}

}  // namespace

Result<std::int64_t> parseMillionths(std::string_view text) {
    std::size_t at = 0;
    const auto peek = [&] { return at < text.size() ? text[at] : '\0'; };
    const bool negative = peek() == '-';
    if (negative) ++at;

    // The significant digits, and where the decimal point stands among them.
    std::string digits;
    const std::size_t wholeStart = at;
    while (isDigit(peek())) digits += text[at++];
    const std::size_t wholeDigits = at - wholeStart;
    if (wholeDigits == 0 || (wholeDigits > 1 && text[wholeStart] == '0')) return notANumber();
    auto point = static_cast<std::int64_t>(wholeDigits);
    if (peek() == '.') {
        ++at;
        const std::size_t start = at;
        while (isDigit(peek())) digits += text[at++];
        if (at == start) return notANumber();
    }
    if (peek() == 'e' || peek() == 'E') {
        ++at;
        const bool down = peek() == '-';
        if (peek() == '-' || peek() == '+') ++at;
        const std::size_t start = at;
        std::int64_t exponent = 0;
        // Beyond a billion the sign alone decides; no text long enough to balance it is read.
        while (isDigit(peek())) {
            exponent = std::min<std::int64_t>(exponent * 10 + (text[at] - '0'), 1'000'000'000);
            ++at;
        }
        if (at == start) return notANumber();
        point += down ? -exponent : exponent;
    }
    if (at != text.size()) return notANumber();

    const std::size_t first = digits.find_first_not_of('0');
    if (first == std::string::npos) return std::int64_t{0};
    const std::size_t last = digits.find_last_not_of('0');
    const auto decimals = static_cast<std::int64_t>(last) + 1 - point;
    if (point - static_cast<std::int64_t>(first) > 7) return tooLarge();
    if (decimals > kDecimals) return tooFine();

    std::int64_t value = 0;
    for (std::size_t i = first; i <= last; ++i) value = value * 10 + (digits[i] - '0');
    for (std::int64_t i = decimals; i < kDecimals; ++i) value *= 10;
    if (value > kLargest) return tooLarge();
    return negative ? -value : value;
}

std::string formatMillionths(std::int64_t millionths) {
    const bool negative = millionths < 0;
    const auto magnitude =
        negative ? -static_cast<std::uint64_t>(millionths) : static_cast<std::uint64_t>(millionths);
    std::string text = std::to_string(magnitude / kMillion);
    std::string fraction = std::to_string(magnitude % kMillion);
    fraction.insert(0, static_cast<std::size_t>(kDecimals) - fraction.size(), '0');
    fraction.erase(fraction.find_last_not_of('0') + 1);
    if (!fraction.empty()) text += "." + fraction;
    return negative ? "-" + text : text;
}

std::string formatMillionths(Rational millionths) {
    return formatMillionths(millionths.numerator / millionths.denominator);
}

}  // namespace model
