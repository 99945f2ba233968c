// SPDX-License-Identifier: Apache-2.0
#include "certificate/figure_geometry.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace reports {

namespace {

double radians(double degrees) {
    return degrees * std::numbers::pi / 180;
}

Point turned(Point p, double degrees) {
    const double c = std::cos(radians(degrees));
    const double s = std::sin(radians(degrees));
    return {c * p.x - s * p.y, s * p.x + c * p.y};
}

}  // namespace

void Window::include(Point centre, double reachX, double reachY) {
    if (empty) {
        left = right = centre.x;
        bottom = top = centre.y;
        empty = false;
    }
    left = std::min(left, centre.x - reachX);
    right = std::max(right, centre.x + reachX);
    bottom = std::min(bottom, centre.y - reachY);
    top = std::max(top, centre.y + reachY);
}

void Window::include(const FigureCapsule& capsule) {
    const double half = (capsule.length - capsule.width) / 2;
    const double radius = capsule.width / 2;
    include({capsule.x, capsule.y},
            half * std::abs(std::cos(radians(capsule.angleDegrees))) + radius,
            half * std::abs(std::sin(radians(capsule.angleDegrees))) + radius);
}

void Window::include(const FigureFrame& frame) {
    const double c = std::abs(std::cos(radians(frame.angleDegrees)));
    const double s = std::abs(std::sin(radians(frame.angleDegrees)));
    const double reachX = frame.circle ? frame.width / 2 : (c * frame.width + s * frame.height) / 2;
    const double reachY = frame.circle ? frame.width / 2 : (s * frame.width + c * frame.height) / 2;
    include({frame.x, frame.y}, reachX, reachY);
}

void Window::widen(double share) {
    const double margin = std::max({right - left, top - bottom, 1.0}) * share;
    left -= margin;
    right += margin;
    bottom -= margin;
    top += margin;
}

bool Window::touches(const FigureCapsule& capsule) const {
    Window own;
    own.include(capsule);
    return own.right >= left && own.left <= right && own.top >= bottom && own.bottom <= top;
}

FigureCapsule movedBetween(FigureCapsule capsule, const model::Placement& from,
                           const model::Placement& to) {
    const Point onSurface = turned({capsule.x, capsule.y}, from.angle.approximately());
    const Point local = turned({onSurface.x + from.x.approximately() - to.x.approximately(),
                                onSurface.y + from.y.approximately() - to.y.approximately()},
                               -to.angle.approximately());
    capsule.x = local.x;
    capsule.y = local.y;
    capsule.angleDegrees += from.angle.approximately() - to.angle.approximately();
    return capsule;
}

FigureCapsule nearestCopy(FigureCapsule capsule, const model::SurfacePlace& zone, Point near) {
    if (!zone.period) return capsule;
    const Point step =
        turned({zone.period->approximately(), 0}, -zone.placement.angle.approximately());
    const double length = step.x * step.x + step.y * step.y;
    const double turns =
        std::round(((near.x - capsule.x) * step.x + (near.y - capsule.y) * step.y) / length);
    capsule.x += turns * step.x;
    capsule.y += turns * step.y;
    return capsule;
}

}  // namespace reports
