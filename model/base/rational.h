// SPDX-License-Identifier: Apache-2.0
// Exact fractions, for limits such as t/3 or 20 % of the wall: compared, never divided out.
#pragma once

#include <cassert>
#include <compare>
#include <cstdint>

namespace model {

__extension__ using Int128 = __int128;

/// numerator / denominator with denominator >= 1. Not reduced; equality is by value.
/// Magnitudes stay below 2^62 each, so that a comparison's products fit into 128 bits.
struct Rational {
    std::int64_t numerator = 0;
    std::int64_t denominator = 1;

    constexpr Rational() = default;
    constexpr Rational(std::int64_t whole) : numerator(whole) {}
    constexpr Rational(std::int64_t over, std::int64_t under)
        : numerator(over), denominator(under) {
        assert(under >= 1);
    }

    friend constexpr std::strong_ordering operator<=>(Rational a, Rational b) {
        const Int128 left = static_cast<Int128>(a.numerator) * b.denominator;
        const Int128 right = static_cast<Int128>(b.numerator) * a.denominator;
        return left < right   ? std::strong_ordering::less
               : left > right ? std::strong_ordering::greater
                              : std::strong_ordering::equal;
    }
    friend constexpr bool operator==(Rational a, Rational b) { return std::is_eq(a <=> b); }

    [[nodiscard]] constexpr bool isWhole() const { return numerator % denominator == 0; }
};

}  // namespace model
