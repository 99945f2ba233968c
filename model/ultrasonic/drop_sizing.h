// SPDX-License-Identifier: Apache-2.0
// Extent from the movement of the probe between the points where the echo dropped by 6 or 20 dB,
// and height from the two edges that an angle probe showed. Lengths mm. Nothing here is ever zero:
// a movement within the beam's width, or edges that coincide, are "not measurable", an empty value.
#pragma once

#include <optional>

#include "ultrasonic/reading.h"

namespace model {

/// The extent on a flat surface. `dropDb` is 6 or 20; `beamWidthMm` is the echo width for that drop
/// at the flaw's path. 6 dB: the movement itself. 20 dB: the movement less the beam's width. None
/// (not measurable) unless the movement is above the width.
std::optional<double> extentMm(double dropDb, double movementMm, double beamWidthMm);

/// What a length along the scanned surface is at `depthMm` below it, around the circumference:
/// outer (R - depth) / R, inner (R + depth) / R, flat 1. Depth below the radius on an outer
/// surface.
double lengthScaleAtDepth(const ScannedPart& part, double depthMm);

/// `extentMm` of a movement around the circumference of a curved part, brought to the flaw's depth.
/// Outer: the extent times the scale. Inner: the movement is scaled first, as the beam's width is
/// already that at the depth and scaling both would come out short. On flat parts as `extentMm`.
/// Measurable by the movement as read, like `extentMm`.
std::optional<double> circumferentialExtentMm(const ScannedPart& part, double depthMm,
                                              double dropDb, double movementMm, double beamWidthMm);

/// Through-wall height between two edges that an angle probe showed at two sound paths: the
/// difference of their depths, each on its own leg; on one leg of a flat part
/// |s1 cos b - s2 cos b|. None where either path has no place in the part, or the depths are equal.
std::optional<double> heightBetweenEdgesMm(const ScannedPart& part, double angleDeg,
                                           double firstPathMm, double secondPathMm);

}  // namespace model
