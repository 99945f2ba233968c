// SPDX-License-Identifier: Apache-2.0
// How a beam spreads in the far field of its element: sin g = k lambda / D, with g between the axis
// and the edge where the amplitude has dropped by a stated number of dB.
// A drop means two things: "-20 dB" is k = 0.87 for the echo of a small reflector, which the beam
// weakens going and coming, and 1.09 for the free field, which it weakens once. So each is named.
#pragma once

#include <optional>

#include "ultrasonic/reading.h"

namespace model {

enum class BeamField {
    Echo,  ///< pulse echo from a small reflector
    Free,  ///< the field itself, as another probe receives it
};

/// k of sin g = k lambda / D (round: D the diameter; rectangular: per side, D that side) where the
/// amplitude has dropped by `dropDb` (> 0) from the axis. Computed from the field of a piston,
/// 2 J1(x) / x or sin(x) / x with x = pi k; agrees with Krautkraemer, Ultrasonic Testing of
/// Materials, 4th edition, Table 4.2.
double divergenceFactor(ElementShape shape, BeamField field, double dropDb);

/// k of the first null, the edge of the main beam: 1.22 round, 1 rectangular.
double nullFactor(ElementShape shape);

/// The half angle g, degrees; `sideMm` is the diameter or side. None where k lambda >= D: the
/// element is too small to have such an edge.
std::optional<double> divergenceDeg(double factor, double wavelengthMm, double sideMm);

/// The whole width 2 z tan g at `pathMm` from the element's face or index point. None nearer than
/// `nearFieldMm`: there the beam has no such edge (it narrows to about a quarter of the diameter at
/// the end of the near field), and a width would be invented.
std::optional<double> beamWidthMm(double halfAngleDeg, double pathMm, double nearFieldMm);

/// Both steps at once: the width at which the echo has dropped by `dropDb`.
std::optional<double> echoBeamWidthMm(ElementShape shape, double sideMm, double wavelengthMm,
                                      double nearFieldMm, double pathMm, double dropDb);

}  // namespace model
