// SPDX-License-Identifier: Apache-2.0
// Distance, gain and size: how high an echo a disc across the beam's axis gives at a distance, and
// which disc gives an echo of a height. The near field is included.
//
// The model: a circular crystal of diameter D that vibrates as a piston with one frequency, in the
// Fresnel approximation; the reflector a flat-bottomed hole of diameter Df, its disc at right
// angles to the axis and centred on it (Kirchhoff). Without attenuation, which the caller takes off
// first. With A = path / N, N = D^2 / 4 lambda, G = Df / D and kappa = 2 pi / A:
//   field      p(r) = -i kappa exp(i kappa r^2 / 2) INT 0..1 J0(kappa r x) exp(i kappa x^2 / 2) x
//   dx disc       H = | 2 INT 0..G p(r)^2 r dr |        (reciprocity) back wall  H = | 1 - exp(-i
//   k) (J0(k) + i J1(k)) |, k = pi / A
// 0 dB is the echo of a flat back wall at no distance. Charts that probe makers print differ from
// these curves by a decibel or so: name the model beside a size.
//
// Rectangular crystals and angle probes are not this model.
#pragma once

#include <vector>

namespace model {

/// A below which nothing is sized: small discs fall into the nulls on the axis, where the pulse's
/// shape rules.
inline constexpr double kSmallestDistance = 0.7;

/// The echo of a flat back wall, dB (at most 0). `a` > 0.
double backWallEchoDb(double a);

/// The echo of a disc, dB. `a` >= 0.5, `g` > 0. A disc that reaches far beyond the beam (g > 4 a)
/// echoes as a back wall, from which it differs by less than 0.02 dB.
double discEchoDb(double a, double g);

/// A disc as large as an echo is high.
struct DiscSize {
    double g;      ///< Df / D, > 0
    bool clipped;  ///< the echo is as high as that of a back wall, or higher: `g` is the smallest
                   ///< disc that reaches the back wall's echo, the reflector at least that large
};

/// The smallest disc that gives the echo. `a` >= kSmallestDistance, `echoDb` finite, on the scale
/// of discEchoDb. The larger a disc, the higher its echo, until it is that of a back wall. Beyond,
/// the echo of ever larger discs falls and rises again by interference at their edge, so that
/// height no longer tells size: there the size is clipped.
DiscSize discOfEcho(double a, double echoDb);

/// The echoes of one disc.
struct DiagramCurve {
    double g;
    std::vector<double> echoDb;  ///< at each distance of the diagram
};

struct Diagram {
    std::vector<double> a;           ///< rising in equal ratios from kSmallestDistance to 100
    std::vector<double> backWallDb;  ///< at each distance
    std::vector<DiagramCurve> curves;
};

/// The general diagram, for drawing: twelve discs, the preferred numbers R10 (ISO 3) from 0.08 to
/// 1, rising, 4 dB from each other in the far field.
Diagram diagram();

}  // namespace model
