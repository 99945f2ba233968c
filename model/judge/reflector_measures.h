// SPDX-License-Identifier: Apache-2.0
// How large an ultrasonic indication is. What was not measured is never zero: it is at least
// nothing, and how much is open.
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <vector>

#include "judge/reflector_class.h"

namespace model {

/// A measure in millionths of its unit: this much, or at least this much.
struct Extent {
    std::int64_t atLeast = 0;
    bool exact = false;
};

/// The sum, within what 62 bits hold.
Extent operator+(Extent a, Extent b);

/// Two values of one measure as one: the larger, exact where both are.
Extent larger(Extent a, Extent b);

/// The through-wall extent: measured, or what the table takes for one that is not measurable.
std::optional<Length> throughWallOf(const LimitTable& table, const Reflector& reflector);

Extent throughWallExtent(const LimitTable& table, const Reflector& reflector);

/// The typed area, else pi/4 x length x width, else what the table takes where the extent is not
/// measurable. That stands for an indication without a measured length only: for a long one it
/// could be too little.
Extent areaExtent(const LimitTable& table, const Reflector& reflector);

/// A typed measure, or nothing known.
template <class Quantity>
Extent extentOf(const std::optional<Quantity>& quantity) {
    if (!quantity) return {};
    return {quantity->millionths(), true};
}

inline constexpr std::size_t kReflectorMeasures = 5;

/// A measure that recording limits and conditions look at: this, or at least this.
struct Measured {
    Rational atLeast;
    bool exact = false;
};

/// By ReflectorMeasure. What is not there is at least less than any limit.
using MeasuredAll = std::array<Measured, kReflectorMeasures>;
MeasuredAll measuredOf(const Reflector& reflector);

/// Whether `measured` `comparison` `value`.
Certainty holdsFor(Measured measured, Comparison comparison, Rational value);

/// Whether all of a rule's conditions hold.
Certainty conditionsHold(const std::vector<Condition>& conditions, const MeasuredAll& measured);

/// Whether a length or width that was not measured leaves open how far the indication reaches. One
/// that is not measurable does not: it is a point, or a segment.
bool hasOpenShape(const Reflector& reflector);

}  // namespace model
