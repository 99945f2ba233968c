// SPDX-License-Identifier: Apache-2.0
#include "judge/reflector_measures.h"

#include <algorithm>
#include <numbers>

#include "surface/capsule.h"

namespace model {
namespace {

constexpr std::int64_t kMost = std::int64_t{1} << 61;
/// Below every decibel and every length.
constexpr std::int64_t kNothingKnown = -kMost;

template <class Quantity>
Measured measured(const std::optional<Quantity>& quantity) {
    if (!quantity) return {Rational(kNothingKnown), false};
    return {Rational(quantity->millionths()), true};
}

Measured& at(MeasuredAll& all, ReflectorMeasure measure) {
    return all[static_cast<std::size_t>(measure)];
}

}  // namespace

Extent operator+(Extent a, Extent b) {
    const Int128 sum = static_cast<Int128>(a.atLeast) + b.atLeast;
    return {static_cast<std::int64_t>(std::min<Int128>(sum, kMost)), a.exact && b.exact};
}

Extent larger(Extent a, Extent b) {
    return {std::max(a.atLeast, b.atLeast), a.exact && b.exact};
}

std::optional<Length> throughWallOf(const LimitTable& table, const Reflector& reflector) {
    if (reflector.throughWall) return reflector.throughWall;
    if (reflector.throughWallNotMeasurable) return table.notMeasurable.throughWall;
    return std::nullopt;
}

Extent throughWallExtent(const LimitTable& table, const Reflector& reflector) {
    return extentOf(throughWallOf(table, reflector));
}

Extent areaExtent(const LimitTable& table, const Reflector& reflector) {
    if (reflector.area) return extentOf(reflector.area);
    if (reflector.length && reflector.width) {
        const Real length = millimetresOf(*reflector.length);
        const Real width = millimetresOf(*reflector.width);
        return {roundedArea(std::numbers::pi_v<Real> / 4 * length * width).millionths(), true};
    }
    if (reflector.lengthNotMeasurable && !reflector.width)
        return extentOf(table.notMeasurable.area);
    return {};
}

MeasuredAll measuredOf(const Reflector& reflector) {
    MeasuredAll all;
    at(all, ReflectorMeasure::Fbh) = measured(reflector.fbh);
    at(all, ReflectorMeasure::IndicationLength) = measured(reflector.length);
    at(all, ReflectorMeasure::OverReference) = measured(reflector.overReference);
    at(all, ReflectorMeasure::BackWallLoss) = measured(reflector.backWallLoss);
    at(all, ReflectorMeasure::LengthToWidth) =
        reflector.length && reflector.width
            ? Measured{Rational(reflector.length->millionths(), reflector.width->millionths()),
                       true}
            : Measured{Rational(kNothingKnown), false};
    return all;
}

Certainty holdsFor(Measured measured, Comparison comparison, Rational value) {
    const bool asKnown = holds(measured.atLeast, comparison, value);
    if (measured.exact) return asKnown ? Certainty::Yes : Certainty::No;
    // What is larger than known still is above, but may no longer be below.
    if (comparison == Comparison::AtLeast || comparison == Comparison::More)
        return asKnown ? Certainty::Yes : Certainty::Open;
    return asKnown ? Certainty::Open : Certainty::No;
}

Certainty conditionsHold(const std::vector<Condition>& conditions, const MeasuredAll& measured) {
    Certainty all = Certainty::Yes;
    for (const Condition& condition : conditions)
        all = std::min(all, holdsFor(measured[static_cast<std::size_t>(condition.of)],
                                     condition.comparison, condition.value));
    return all;
}

bool hasOpenShape(const Reflector& reflector) {
    if (!reflector.length) return !reflector.lengthNotMeasurable;
    return !reflector.width && !reflector.widthNotMeasurable;
}

}  // namespace model
