// SPDX-License-Identifier: Apache-2.0
#include "judge/plan_hull.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

namespace model {
namespace {

constexpr int kCorners = 64;

struct Point {
    Real x;
    Real y;
};

Real cross(const Point& o, const Point& a, const Point& b) {
    return (a.x - o.x) * (b.y - o.y) - (a.y - o.y) * (b.x - o.x);
}

/// Corners of a polygon round each end of each capsule, at `scale` radii from it.
std::vector<Point> cornersOf(std::span<const Capsule> capsules, Real scale) {
    std::vector<Point> corners;
    for (const Capsule& capsule : capsules)
        for (const Real end : {-capsule.half, capsule.half})
            for (int i = 0; i < kCorners; ++i) {
                const Real turn = 2 * std::numbers::pi_v<Real> * i / kCorners;
                const Real radius = scale * capsule.radius;
                corners.push_back({capsule.x + end * capsule.along.x + radius * std::cos(turn),
                                   capsule.y + end * capsule.along.y + radius * std::sin(turn)});
            }
    return corners;
}

/// By Andrew's monotone chain.
Real hullArea(std::vector<Point> points) {
    std::sort(points.begin(), points.end(),
              [](const Point& a, const Point& b) { return a.x != b.x ? a.x < b.x : a.y < b.y; });
    std::vector<Point> hull;
    for (const bool upper : {false, true}) {
        const std::size_t from = hull.size();
        for (std::size_t i = 0; i < points.size(); ++i) {
            const Point& next = points[upper ? points.size() - 1 - i : i];
            while (hull.size() >= from + 2 && cross(hull[hull.size() - 2], hull.back(), next) <= 0)
                hull.pop_back();
            hull.push_back(next);
        }
        hull.pop_back();
    }
    Real twice = 0;
    for (std::size_t i = 0; i < hull.size(); ++i) {
        const Point& a = hull[i];
        const Point& b = hull[(i + 1) % hull.size()];
        twice += a.x * b.y - a.y * b.x;
    }
    return std::abs(twice) / 2;
}

}  // namespace

Area outerHullArea(std::span<const Capsule> capsules) {
    const Real round = std::cos(std::numbers::pi_v<Real> / kCorners);
    return roundedArea(hullArea(cornersOf(capsules, 1 / round)));
}

Area innerHullArea(std::span<const Capsule> capsules) {
    return roundedArea(hullArea(cornersOf(capsules, 1)));
}

}  // namespace model
