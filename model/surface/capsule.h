// SPDX-License-Identifier: Apache-2.0
// An indication's shape on a surface, and the distances between such shapes.
//
// A capsule is a segment widened on all sides: for an indication of length L and width W a segment
// of length L - W along its angle, widened by W / 2. A round spot is a segment of length 0, a
// hairline one of width 0.
#pragma once

#include <span>

#include "quantity/quantities.h"

namespace model {

/// Working precision of the geometry (on amd64 a 64-bit mantissa: coordinates of 10 m are held
/// to 1e-15 mm). Only results, rounded once to 0.001, leave the surface folder.
using Real = long double;

/// A typed length as geometry reckons with it, mm.
inline Real millimetresOf(Length length) {
    return static_cast<Real>(length.millionths()) / 1e6L;
}

/// A direction as its unit vector.
struct Direction {
    Real x = 1;
    Real y = 0;
};

/// The unit vector at `angle` from the x axis; exact at multiples of 90 degrees.
Direction directionOf(Angle angle);

/// Where a zone lies on its developed surface: datum and the turn of its x axis.
struct Placement {
    Length x;
    Length y;
    Angle angle;
};

struct Capsule {
    Real x = 0;       ///< centre, mm
    Real y = 0;       ///< centre, mm
    Direction along;  ///< direction of the segment
    Real half = 0;    ///< half of the segment's length, mm, >= 0
    Real radius = 0;  ///< widening, mm, >= 0

    [[nodiscard]] Capsule movedBy(Real dx, Real dy) const {
        Capsule moved = *this;
        moved.x += dx;
        moved.y += dy;
        return moved;
    }
};

/// The capsule of an indication centred on (x, y) of a zone, on the zone's surface.
/// 0 <= width <= length.
Capsule makeCapsule(Length x, Length y, Length length, Length width, Angle angle,
                    const Placement& zone);

/// The shortest distance between two capsules, mm, not rounded; 0 where they touch or overlap.
Real distance(const Capsule& a, const Capsule& b);

/// The greatest distance between any point of one and any point of the other (or of the same),
/// mm, not rounded.
Real reach(const Capsule& a, const Capsule& b);

/// A gap is rounded down to 0.001 mm, so that rounding never opens it. A distance within 1e-7 mm
/// of a thousandth is that thousandth: typed coordinates decide, not the last bit of a square root.
Length roundedGap(Real millimetres);

/// A computed length is rounded half-up, once, to 0.001 mm; within 1e-7 mm of the half it goes up.
Length roundedLength(Real millimetres);

/// A computed area is rounded half-up, once, to 0.001 mm2.
Area roundedArea(Real squareMillimetres);

/// The greatest distance between any two points of the capsules, rounded; `capsules` not empty.
Length greatestExtent(std::span<const Capsule> capsules);

}  // namespace model
