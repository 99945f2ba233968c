// SPDX-License-Identifier: Apache-2.0
// The quantities of the trade, each in one unit: mm, mm2, degrees, dB.
#pragma once

#include "quantity/exact.h"

namespace model {

/// A length; whole nanometres, so that mm with 6 decimals and inch with 5 (or 1/64 in =
/// 396 875 nm) are exact.
using Length = Exact<struct LengthKind>;
/// An area; whole millionths of a square millimetre.
using Area = Exact<struct AreaKind>;
/// An angle, counter-clockwise; whole millionths of a degree.
using Angle = Exact<struct AngleKind>;
/// A difference between two echo heights; whole millionths of a decibel.
using GainStep = Exact<struct GainStepKind>;

constexpr Length millimetres(std::int64_t whole) {
    return Length::fromMillionths(whole * kMillion);
}
constexpr Length nanometres(std::int64_t whole) {
    return Length::fromMillionths(whole);
}
constexpr Area squareMillimetres(std::int64_t whole) {
    return Area::fromMillionths(whole * kMillion);
}
constexpr Angle degrees(std::int64_t whole) {
    return Angle::fromMillionths(whole * kMillion);
}
constexpr GainStep decibels(std::int64_t whole) {
    return GainStep::fromMillionths(whole * kMillion);
}

/// An echo height against the record's reference. Two of them subtract to a GainStep; their sum
/// means nothing and does not compile.
class EchoHeight {
public:
    constexpr EchoHeight() = default;
    static constexpr EchoHeight aboveReference(GainStep step) {
        EchoHeight result;
        result.above_ = step;
        return result;
    }
    [[nodiscard]] constexpr GainStep aboveReference() const { return above_; }

    friend constexpr GainStep operator-(EchoHeight a, EchoHeight b) { return a.above_ - b.above_; }
    friend constexpr EchoHeight operator+(EchoHeight a, GainStep step) {
        return aboveReference(a.above_ + step);
    }
    friend constexpr auto operator<=>(EchoHeight a, EchoHeight b) = default;

private:
    GainStep above_;
};

}  // namespace model
