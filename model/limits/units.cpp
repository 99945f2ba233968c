// SPDX-License-Identifier: Apache-2.0
#include "limits/units.h"

#include <algorithm>

#include "base/decimal.h"

namespace model {
namespace {

// An inch is 25.4 mm by definition (international yard and pound agreement of 1959).
constexpr Unit kUnits[] = {{"mm", Measured::Mm, 1},
                           {"in", Measured::Mm, Rational(127, 5)},
                           {"mm2", Measured::SquareMm, 1},
                           {"cm2", Measured::SquareMm, 100},
                           {"in2", Measured::SquareMm, Rational(16'129, 25)}};

}  // namespace

const Unit* unitFrom(std::string_view word) {
    const auto* const found = std::ranges::find(kUnits, word, &Unit::word);
    return found == std::end(kUnits) ? nullptr : found;
}

std::optional<std::int64_t> inOwnUnit(std::int64_t millionths, const Unit& unit) {
    const std::int64_t times = millionths * unit.own.numerator;
    const std::int64_t own = times / unit.own.denominator;
    if (times % unit.own.denominator != 0 || own > kMillion * kMillion) return std::nullopt;
    return own;
}

}  // namespace model
