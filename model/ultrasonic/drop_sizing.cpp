// SPDX-License-Identifier: Apache-2.0
#include "ultrasonic/drop_sizing.h"

#include <cassert>
#include <cmath>

#include "ultrasonic/beam_path.h"

namespace model {

std::optional<double> extentMm(double dropDb, double movementMm, double beamWidthMm) {
    assert(dropDb == 6 || dropDb == 20);
    if (movementMm <= beamWidthMm) return std::nullopt;
    return dropDb == 6 ? movementMm : movementMm - beamWidthMm;
}

double lengthScaleAtDepth(const ScannedPart& part, double depthMm) {
    if (part.surface == ScanSurface::Flat) return 1;
    const double radius = *part.radiusMm;
    return (part.surface == ScanSurface::Outer ? radius - depthMm : radius + depthMm) / radius;
}

std::optional<double> circumferentialExtentMm(const ScannedPart& part, double depthMm,
                                              double dropDb, double movementMm,
                                              double beamWidthMm) {
    const auto onSurface = extentMm(dropDb, movementMm, beamWidthMm);
    if (!onSurface) return std::nullopt;
    const double scale = lengthScaleAtDepth(part, depthMm);
    if (part.surface == ScanSurface::Inner)
        return extentMm(dropDb, movementMm * scale, beamWidthMm);
    return *onSurface * scale;
}

std::optional<double> heightBetweenEdgesMm(const ScannedPart& part, double angleDeg,
                                           double firstPathMm, double secondPathMm) {
    const auto first = traceBeam(part, angleDeg, firstPathMm).end;
    const auto second = traceBeam(part, angleDeg, secondPathMm).end;
    if (!first || !second || first->depthMm == second->depthMm) return std::nullopt;
    return std::abs(first->depthMm - second->depthMm);
}

}  // namespace model
