// SPDX-License-Identifier: Apache-2.0
#include "pdf/convex_hull.h"

#include <algorithm>
#include <span>
#include <tuple>

namespace reports {

namespace {

/// Positive where o, a, b turn left.
double turn(PaperPoint o, PaperPoint a, PaperPoint b) {
    return (a.x - o.x) * (b.y - o.y) - (a.y - o.y) * (b.x - o.x);
}

/// One half of Andrew's monotone chain; the last point belongs to the other half.
template <class Points>
void addChain(std::vector<PaperPoint>& hull, const Points& points) {
    std::vector<PaperPoint> chain;
    for (const PaperPoint& point : points) {
        while (chain.size() >= 2 && turn(chain[chain.size() - 2], chain.back(), point) <= 0)
            chain.pop_back();
        chain.push_back(point);
    }
    chain.pop_back();
    hull.insert(hull.end(), chain.begin(), chain.end());
}

}  // namespace

std::vector<PaperPoint> convexHull(std::vector<PaperPoint> points) {
    if (points.size() < 3) return points;
    std::ranges::sort(points, {}, [](PaperPoint p) { return std::tuple(p.x, p.y); });
    std::vector<PaperPoint> hull;
    addChain(hull, points);
    addChain(hull, std::vector<PaperPoint>(points.rbegin(), points.rend()));
    return hull;
}

}  // namespace reports
