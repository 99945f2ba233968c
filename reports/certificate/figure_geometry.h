// SPDX-License-Identifier: Apache-2.0
// Where things lie in a figure, in the coordinates of its zone, mm.
#pragma once

#include "certificate/document.h"
#include "judge/sheet.h"

namespace reports {

struct Point {
    double x = 0;
    double y = 0;
};

/// A window that grows around what must be seen.
struct Window {
    double left = 0;
    double bottom = 0;
    double right = 0;
    double top = 0;
    bool empty = true;

    void include(Point centre, double reachX, double reachY);
    void include(const FigureCapsule& capsule);
    void include(const FigureFrame& frame);
    /// On all sides by a share of the larger side.
    void widen(double share);
    [[nodiscard]] bool touches(const FigureCapsule& capsule) const;
};

/// An indication in plan, labelled. A reflector without a width is a segment, without a length a
/// point.
FigureCapsule capsuleOf(const model::Indication& indication, const std::string& label);
FigureCapsule capsuleOf(const model::Reflector& reflector, const std::string& label);

/// Shows `figure` through a window at the greatest scale that fits into that much paper, with a
/// scale bar.
void lookThrough(const Window& window, Figure& figure, double mostWidthMm = kFigureWidthMm,
                 double mostHeightMm = kFigureHeightMm);

/// `capsule`, given in the zone at `from`, in the coordinates of the zone at `to`.
FigureCapsule movedBetween(FigureCapsule capsule, const model::Placement& from,
                           const model::Placement& to);

/// On a round surface the copy of `capsule`, a whole number of turns away, that lies nearest to
/// `near`; on a flat one `capsule` itself.
FigureCapsule nearestCopy(FigureCapsule capsule, const model::SurfacePlace& zone, Point near);

}  // namespace reports
