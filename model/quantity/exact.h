// SPDX-License-Identifier: Apache-2.0
// A quantity held as a whole number of millionths of its unit. Each kind is a type of its own:
// a length and an area neither add nor compare.
#pragma once

#include <compare>
#include <cstdint>

#include "base/decimal.h"
#include "base/rational.h"

namespace model {

template <class Kind>
class Exact {
public:
    constexpr Exact() = default;

    static constexpr Exact fromMillionths(std::int64_t millionths) {
        Exact result;
        result.millionths_ = millionths;
        return result;
    }
    [[nodiscard]] constexpr std::int64_t millionths() const { return millionths_; }

    /// The nearest double, for geometry and drawing; never for comparing with a limit.
    [[nodiscard]] constexpr double approximately() const {
        return static_cast<double>(millionths_) / 1e6;
    }

    friend constexpr Exact operator+(Exact a, Exact b) {
        return fromMillionths(a.millionths_ + b.millionths_);
    }
    friend constexpr Exact operator-(Exact a, Exact b) {
        return fromMillionths(a.millionths_ - b.millionths_);
    }
    friend constexpr Exact operator-(Exact a) { return fromMillionths(-a.millionths_); }
    friend constexpr Exact operator*(std::int64_t factor, Exact a) {
        return fromMillionths(factor * a.millionths_);
    }
    constexpr Exact& operator+=(Exact other) {
        millionths_ += other.millionths_;
        return *this;
    }
    friend constexpr auto operator<=>(Exact a, Exact b) = default;

private:
    std::int64_t millionths_ = 0;
};

/// The shortest decimal text in the quantity's own unit, without the unit.
template <class Kind>
std::string toText(Exact<Kind> quantity) {
    return formatMillionths(quantity.millionths());
}

}  // namespace model
