// SPDX-License-Identifier: Apache-2.0
#include "ultrasonic/beam_path.h"

#include <algorithm>
#include <cassert>
#include <cmath>

#include "ultrasonic/angle_units.h"

namespace model {
namespace {

/// A path that ends this close behind a turning point, in half skips, ends at it: rounding must not
/// put the echo of a corner on the next leg.
constexpr double kAtTurningPoint = 1e-9;

struct Place {
    double depth;
    double along;
};

/// Where a beam in `radian` from the normal is after `path`, before it meets the opposite surface.
Place onFirstLeg(const ScannedPart& part, double radian, double path) {
    const double down = path * std::cos(radian);
    const double ahead = path * std::sin(radian);
    if (part.surface == ScanSurface::Flat) return {down, ahead};
    const double radius = *part.radiusMm;
    if (part.surface == ScanSurface::Outer)
        return {radius - std::hypot(radius - down, ahead),
                radius * std::atan2(ahead, radius - down)};
    return {std::hypot(radius + down, ahead) - radius, radius * std::atan2(ahead, radius + down)};
}

/// Where a beam is after `path` that turns every `halfSkip`, on `leg`: each leg is the mirror image
/// of the one before, in the normal through its turning point.
Place onLeg(const ScannedPart& part, double radian, double halfSkip, int leg, double path) {
    const double turn = onFirstLeg(part, radian, halfSkip).along;
    const double within = path - (leg - 1) * halfSkip;
    const bool inward = leg % 2 == 1;
    const Place first = onFirstLeg(part, radian, inward ? within : halfSkip - within);
    return {std::clamp(first.depth, 0.0, part.thicknessMm),
            inward ? (leg - 1) * turn + first.along : leg * turn - first.along};
}

/// A beam that passes the bore, followed until it comes out at the scanned surface again.
BeamTrace alongChord(const ScannedPart& part, double radian, double path) {
    const double chord = 2 * *part.radiusMm * std::cos(radian);
    const bool inside = path <= chord * (1 + kAtTurningPoint);
    const Place last = onFirstLeg(part, radian, std::min(path, chord));
    BeamTrace trace;
    trace.boreMissed = true;
    if (inside) trace.end = BeamPoint{std::max(0.0, last.depth), last.along, 1};
    trace.line = {{0, 0}, inCrossSection(part, last.depth, last.along)};
    return trace;
}

}  // namespace

std::optional<double> halfSkipPathMm(const ScannedPart& part, double angleDeg) {
    const double radian = radians(angleDeg);
    if (part.surface == ScanSurface::Flat) return part.thicknessMm / std::cos(radian);
    const double radius = *part.radiusMm;
    const double down = radius * std::cos(radian);
    const double ahead = radius * std::sin(radian);
    if (part.surface == ScanSurface::Inner) {
        const double outer = radius + part.thicknessMm;
        return std::sqrt(outer * outer - ahead * ahead) - down;
    }
    const double bore = radius - part.thicknessMm;
    if (ahead >= bore) return std::nullopt;
    return down - std::sqrt(bore * bore - ahead * ahead);
}

PathPoint inCrossSection(const ScannedPart& part, double depthMm, double surfaceDistanceMm) {
    if (part.surface == ScanSurface::Flat) return {surfaceDistanceMm, depthMm};
    const double radius = *part.radiusMm;
    const double turn = surfaceDistanceMm / radius;
    if (part.surface == ScanSurface::Outer)
        return {(radius - depthMm) * std::sin(turn), radius - (radius - depthMm) * std::cos(turn)};
    return {(radius + depthMm) * std::sin(turn), (radius + depthMm) * std::cos(turn) - radius};
}

BeamTrace traceBeam(const ScannedPart& part, double angleDeg, double soundPathMm) {
    assert(part.thicknessMm > 0 && angleDeg >= 0 && angleDeg < 90 && soundPathMm >= 0);
    assert(part.surface == ScanSurface::Flat || part.radiusMm);
    const double radian = radians(angleDeg);
    const auto halfSkip = halfSkipPathMm(part, angleDeg);
    if (!halfSkip) return alongChord(part, radian, soundPathMm);

    const double legs = std::max(1.0, std::ceil(soundPathMm / *halfSkip - kAtTurningPoint));
    BeamTrace trace;
    trace.beyondThirdLeg = legs > kLastLeg;
    const int leg = static_cast<int>(std::min<double>(legs, kLastLeg));
    trace.line.push_back({0, 0});
    const auto follow = [&](int onto, double path) {
        const Place place = onLeg(part, radian, *halfSkip, onto, path);
        trace.line.push_back(inCrossSection(part, place.depth, place.along));
        return place;
    };
    for (int turned = 1; turned < leg; ++turned) follow(turned, turned * *halfSkip);
    const Place last = follow(leg, std::min(soundPathMm, leg * *halfSkip));
    if (!trace.beyondThirdLeg) trace.end = BeamPoint{last.depth, last.along, leg};
    return trace;
}

}  // namespace model
