// SPDX-License-Identifier: Apache-2.0
// One placed frame, and whether it touches a part: the exact test on which every count rests.
#pragma once

#include "surface/frame_parts.h"

namespace model {

/// A frame's size as the search uses it, mm.
struct FrameSize {
    double halfWidth = 0;  ///< of a circle: the radius
    double halfHeight = 0;
    bool circle = false;

    explicit FrameSize(const FrameShape& shape)
        : halfWidth(shape.width.approximately() / 2),
          halfHeight(shape.height.approximately() / 2),
          circle(shape.circle) {}

    /// The size after every side is moved outwards.
    [[nodiscard]] FrameSize enlargedBy(double outwards) const {
        FrameSize larger = *this;
        larger.halfWidth += outwards;
        larger.halfHeight += outwards;
        return larger;
    }
    /// No point of the frame is further from its centre.
    [[nodiscard]] double reach() const;
};

/// Centre, and the direction of the width side.
struct FramePose {
    double x = 0;
    double y = 0;
    double cosine = 1;
    double sine = 0;
};

/// Whether any point of the part lies in or on the frame.
bool touches(const FrameSize& size, const FramePose& pose, const FramePart& part);

/// The distance from the part's segment to a point.
double distanceToPoint(const FramePart& part, double x, double y);

/// A part as seen along the sides of a frame.
struct SeenPart {
    double x, y;            ///< the part's centre from the frame's
    double alongX, alongY;  ///< from the part's centre to one end of its segment
};

/// The shortest distance from the part's segment to a rectangle; 0 where they touch.
double distanceToRectangle(const SeenPart& part, double halfWidth, double halfHeight);

}  // namespace model
