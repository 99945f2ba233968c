// SPDX-License-Identifier: Apache-2.0
#include "surface/capsule.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>
#include <vector>

namespace model {
namespace {

constexpr Real kThousandsSnap = 1e-4L;  // 1e-7 mm, in thousandths

struct Point {
    Real x;
    Real y;
};

/// Exact where the sum of squares is: a 3-4-5 triangle has no rounding.
Real lengthOf(Real x, Real y) {
    return std::sqrt(x * x + y * y);
}

Point endOf(const Capsule& c, Real at) {
    return {c.x + at * c.along.x, c.y + at * c.along.y};
}

Real distanceToSegment(Point p, const Capsule& c) {
    const Real dx = p.x - c.x;
    const Real dy = p.y - c.y;
    const Real along = dx * c.along.x + dy * c.along.y;
    if (along > c.half) return lengthOf(dx - c.half * c.along.x, dy - c.half * c.along.y);
    if (along < -c.half) return lengthOf(dx + c.half * c.along.x, dy + c.half * c.along.y);
    return std::fabs(dx * c.along.y - dy * c.along.x);
}

bool segmentsCross(const Capsule& a, const Capsule& b) {
    // Each segment's ends lie on both sides of the other's line. Touching ends are found by the
    // distances from ends to segments.
    const auto splits = [](const Capsule& line, const Capsule& other) {
        const auto side = [&](Point p) {
            return (p.x - line.x) * line.along.y - (p.y - line.y) * line.along.x;
        };
        return side(endOf(other, other.half)) * side(endOf(other, -other.half)) < 0;
    };
    return splits(a, b) && splits(b, a);
}

}  // namespace

Direction directionOf(Angle angle) {
    constexpr std::int64_t kRightAngle = 90 * kMillion;
    std::int64_t turn = angle.millionths() % (4 * kRightAngle);
    if (turn < 0) turn += 4 * kRightAngle;
    const std::int64_t quarter = turn / kRightAngle;
    const Real rest = static_cast<Real>(turn % kRightAngle) / 1e6L * std::numbers::pi_v<Real> / 180;
    const Direction inFirst{turn % kRightAngle == 0 ? 1 : std::cos(rest),
                            turn % kRightAngle == 0 ? 0 : std::sin(rest)};
    switch (quarter) {
        case 0:
            return inFirst;
        case 1:
            return {-inFirst.y, inFirst.x};
        case 2:
            return {-inFirst.x, -inFirst.y};
        default:
            return {inFirst.y, -inFirst.x};
    }
}

Capsule makeCapsule(Length x, Length y, Length length, Length width, Angle angle,
                    const Placement& zone) {
    const Direction turn = directionOf(zone.angle);
    const Real zoneX = millimetresOf(x);
    const Real zoneY = millimetresOf(y);
    Capsule capsule;
    capsule.x = millimetresOf(zone.x) + turn.x * zoneX - turn.y * zoneY;
    capsule.y = millimetresOf(zone.y) + turn.y * zoneX + turn.x * zoneY;
    capsule.along = directionOf(angle + zone.angle);
    capsule.half = millimetresOf(length - width) / 2;
    capsule.radius = millimetresOf(width) / 2;
    return capsule;
}

Real distance(const Capsule& a, const Capsule& b) {
    if (segmentsCross(a, b)) return 0;
    const Real between =
        std::min({distanceToSegment(endOf(a, a.half), b), distanceToSegment(endOf(a, -a.half), b),
                  distanceToSegment(endOf(b, b.half), a), distanceToSegment(endOf(b, -b.half), a)});
    return std::max<Real>(0, between - a.radius - b.radius);
}

Real reach(const Capsule& a, const Capsule& b) {
    Real farthest = 0;
    for (const Real endA : {a.half, -a.half})
        for (const Real endB : {b.half, -b.half}) {
            const Point p = endOf(a, endA);
            const Point q = endOf(b, endB);
            farthest = std::max(farthest, lengthOf(p.x - q.x, p.y - q.y));
        }
    return farthest + a.radius + b.radius;
}

Length roundedGap(Real millimetres) {
    return nanometres(1000 *
                      static_cast<std::int64_t>(std::floor(millimetres * 1000 + kThousandsSnap)));
}

Length roundedLength(Real millimetres) {
    return nanometres(
        1000 * static_cast<std::int64_t>(std::floor(millimetres * 1000 + 0.5L + kThousandsSnap)));
}

Area roundedArea(Real squareMillimetres) {
    return Area::fromMillionths(1000 * static_cast<std::int64_t>(std::floor(
                                           squareMillimetres * 1000 + 0.5L + kThousandsSnap)));
}

Length greatestExtent(std::span<const Capsule> capsules) {
    // Every capsule lies within `far` of the common centre, so a pair reaches at most the sum
    // of its two: with the capsules in falling order of it, most pairs are never looked at.
    std::vector<std::pair<Real, const Capsule*>> byFar;
    byFar.reserve(capsules.size());
    Real sumX = 0;
    Real sumY = 0;
    for (const Capsule& c : capsules) {
        sumX += c.x;
        sumY += c.y;
    }
    const auto count = static_cast<Real>(capsules.size());
    for (const Capsule& c : capsules)
        byFar.emplace_back(lengthOf(c.x - sumX / count, c.y - sumY / count) + c.half + c.radius,
                           &c);
    std::sort(byFar.begin(), byFar.end(),
              [](const auto& a, const auto& b) { return a.first > b.first; });
    Real greatest = 0;
    for (std::size_t i = 0; i < byFar.size(); ++i) {
        if (2 * byFar[i].first <= greatest) break;
        for (std::size_t j = i; j < byFar.size(); ++j) {
            if (byFar[i].first + byFar[j].first <= greatest) break;
            greatest = std::max(greatest, reach(*byFar[i].second, *byFar[j].second));
        }
    }
    return roundedLength(greatest);
}

}  // namespace model
