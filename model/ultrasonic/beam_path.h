// SPDX-License-Identifier: Apache-2.0
// Where the axis of a beam is after a given sound path: depth below the scanned surface, distance
// along it, and leg; and the line that it took, for drawing. Curved parts are scanned around their
// circumference: along its axis a cylinder is flat. Lengths mm, angles degrees.
//
// Cross-section for drawing, the same for every surface: origin at the index point; x along the
// surface's tangent there, in the beam's direction; y along the inward normal, so that y is the
// depth on a flat part. The centre of a curved part is at (0, R) when scanned from outside and at
// (0, -R) from the bore, with R the radius of the scanned surface.
#pragma once

#include <optional>
#include <vector>

#include "ultrasonic/reading.h"

namespace model {

/// The beam is followed to the end of this leg.
constexpr int kLastLeg = 3;

struct PathPoint {
    double xMm = 0;
    double yMm = 0;
};

struct BeamPoint {
    double depthMm = 0;            ///< below the scanned surface
    double surfaceDistanceMm = 0;  ///< from the index point, along the scanned surface (arc)
    int leg = 1;                   ///< 1 to kLastLeg; a turning point ends its leg
};

struct BeamTrace {
    /// None where the path ends past the third leg, or past the point where a beam that missed the
    /// bore comes out at the scanned surface again.
    std::optional<BeamPoint> end;
    /// Scanned from outside, the beam passes the bore and crosses the wall as a chord; up to the
    /// chord's end `end` is still where the axis is.
    bool boreMissed = false;
    bool beyondThirdLeg = false;
    /// Index point, turning points, end (or the last point that was followed).
    std::vector<PathPoint> line;
};

/// The axis of a beam at `angleDeg` (0 <= angle < 90; 0: straight) after `soundPathMm` (>= 0).
/// `part` has thickness > 0 and, unless flat, a radius > 0 (outer: > thickness). A straight beam is
/// folded at the back wall like any other: what lies past it has leg 2.
BeamTrace traceBeam(const ScannedPart& part, double angleDeg, double soundPathMm);

/// The sound path from the index point to the opposite surface, half a skip; none where the bore
/// is missed.
std::optional<double> halfSkipPathMm(const ScannedPart& part, double angleDeg);

/// A place in the part as a point of the cross-section for drawing.
PathPoint inCrossSection(const ScannedPart& part, double depthMm, double surfaceDistanceMm);

}  // namespace model
