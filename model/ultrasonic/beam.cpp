// SPDX-License-Identifier: Apache-2.0
#include "ultrasonic/beam.h"

#include <cmath>
#include <limits>
#include <numbers>

#include "ultrasonic/angle_units.h"

namespace model {
namespace {

/// First zeros: of J1 and of the sine.
constexpr double kRoundNull = 3.8317059702075123;
constexpr double kRectangularNull = std::numbers::pi;

double nullArgument(ElementShape shape) {
    return shape == ElementShape::Round ? kRoundNull : kRectangularNull;
}

/// 2 J1(x) / x, or sin(x) / x: the sum over n of (-q)^n / (n! (n + 1)!) with q = x^2 / 4, or of
/// (-x^2)^n / (2n + 1)!. Up to the first null no term exceeds 3, so nothing is lost by cancelling.
double pressure(ElementShape shape, double x) {
    double sum = 0;
    double term = 1;
    for (int n = 1; std::abs(term) > std::numeric_limits<double>::epsilon() / 8; ++n) {
        sum += term;
        term *= shape == ElementShape::Round ? -x * x / 4 / (n * (n + 1.0))
                                             : -x * x / ((2.0 * n) * (2.0 * n + 1));
    }
    return sum;
}

}  // namespace

double divergenceFactor(ElementShape shape, BeamField field, double dropDb) {
    const double oneWayDb = field == BeamField::Echo ? dropDb / 2 : dropDb;
    const double wanted = std::pow(10.0, -oneWayDb / 20);
    double above = 0;
    double below = nullArgument(shape);
    for (int i = 0; i < std::numeric_limits<double>::digits; ++i) {
        const double middle = (above + below) / 2;
        (pressure(shape, middle) > wanted ? above : below) = middle;
    }
    return (above + below) / 2 / std::numbers::pi;
}

double nullFactor(ElementShape shape) {
    return nullArgument(shape) / std::numbers::pi;
}

std::optional<double> divergenceDeg(double factor, double wavelengthMm, double sideMm) {
    const double sine = factor * wavelengthMm / sideMm;
    if (sine >= 1) return std::nullopt;
    return inDegrees(std::asin(sine));
}

std::optional<double> beamWidthMm(double halfAngleDeg, double pathMm, double nearFieldMm) {
    if (pathMm < nearFieldMm) return std::nullopt;
    return 2 * pathMm * std::tan(radians(halfAngleDeg));
}

std::optional<double> echoBeamWidthMm(ElementShape shape, double sideMm, double wavelengthMm,
                                      double nearFieldMm, double pathMm, double dropDb) {
    const double factor = divergenceFactor(shape, BeamField::Echo, dropDb);
    const auto halfAngle = divergenceDeg(factor, wavelengthMm, sideMm);
    if (!halfAngle) return std::nullopt;
    return beamWidthMm(*halfAngle, pathMm, nearFieldMm);
}

}  // namespace model
