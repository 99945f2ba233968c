// SPDX-License-Identifier: Apache-2.0
#include "certificate/figure_geometry.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "certificate/phrases.h"
#include "certificate/printed_scale.h"
#include "certificate/printed_values.h"

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

/// A bar of 1, 2 or 5 x 10^n mm, about a fifth of the greatest width of a certificate's figure.
void setBar(Figure& figure) {
    const double most = kFigureWidthMm / 5 / figure.scale;
    double length = std::pow(10.0, std::floor(std::log10(most)));
    if (length * 5 <= most)
        length *= 5;
    else if (length * 2 <= most)
        length *= 2;
    figure.barLength = length;
    figure.barText = filled(phrases::kMillimetres, {placeText(length)});
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

FigureCapsule capsuleOf(const model::Indication& indication, const std::string& label) {
    return {label,
            indication.x.approximately(),
            indication.y.approximately(),
            indication.length.approximately(),
            indication.width ? indication.width->approximately() : 0,
            indication.angle.approximately(),
            FigureCapsule::Role::Counted};
}

FigureCapsule capsuleOf(const model::Reflector& reflector, const std::string& label) {
    const auto shown = [](const std::optional<model::Length>& length) {
        return length ? length->approximately() : 0;
    };
    return {label,
            reflector.x.approximately(),
            reflector.y.approximately(),
            shown(reflector.length),
            reflector.length ? shown(reflector.width) : 0,
            reflector.angle.approximately(),
            FigureCapsule::Role::Counted};
}

void lookThrough(const Window& window, Figure& figure, double mostWidthMm, double mostHeightMm) {
    const PrintedScale scale = printedScale(window.right - window.left, window.top - window.bottom,
                                            mostWidthMm, mostHeightMm);
    figure.left = window.left;
    figure.right = window.right;
    figure.bottom = window.bottom;
    figure.top = window.top;
    figure.scale = scale.factor;
    figure.scaleText = scale.text;
    setBar(figure);
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
