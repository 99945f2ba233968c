// SPDX-License-Identifier: Apache-2.0
#include "ultrasonic/field.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <numbers>

#include "ultrasonic/angle_units.h"

namespace model {
namespace {

/// k at shorter / longer side 0, 0.1 ... 1: the last maximum over z of |F(u) F(h u)|, with F the
/// Fresnel integral from 0, h the ratio, u^2 = L^2 / 2 lambda z and k = 4 lambda z / L^2. The
/// square's, 1.368, is rounded to the 1.37 that is in use.
constexpr std::array kRectangle{0.988, 0.988, 0.988, 0.991, 0.998, 1.014,
                                1.042, 1.086, 1.153, 1.246, 1.37};

double rectangleFactor(double ratio) {
    const double steps = ratio * static_cast<double>(kRectangle.size() - 1);
    const auto below = std::min(static_cast<std::size_t>(steps), kRectangle.size() - 2);
    return std::lerp(kRectangle[below], kRectangle[below + 1], steps - static_cast<double>(below));
}

}  // namespace

double wavelengthMm(double velocityMPerS, double frequencyMhz) {
    return velocityMPerS / frequencyMhz / 1000;
}

double roundNearFieldMm(double diameterMm, double wavelengthMm) {
    return diameterMm * diameterMm / (4 * wavelengthMm);
}

double roundLastMaximumMm(double diameterMm, double wavelengthMm) {
    return std::max(0.0, roundNearFieldMm(diameterMm, wavelengthMm) - wavelengthMm / 4);
}

double squareNearFieldMm(double sideMm, double wavelengthMm) {
    return rectangularNearFieldMm(sideMm, sideMm, wavelengthMm);
}

double rectangularNearFieldMm(double sideMm, double otherSideMm, double wavelengthMm) {
    const auto [shorter, longer] = std::minmax(sideMm, otherSideMm);
    return rectangleFactor(shorter / longer) * roundNearFieldMm(longer, wavelengthMm);
}

double wedgeNearFieldMm(const WedgeProbe& probe, double wavelengthMm) {
    const double incident = radians(probe.incidentDeg);
    const double refracted = radians(probe.refractedDeg);
    const double whole = probe.elementAreaMm2 * std::cos(refracted) /
                         (std::numbers::pi * wavelengthMm * std::cos(incident));
    const double inWedge = probe.wedgePathMm * std::tan(incident) / std::tan(refracted);
    return std::max(0.0, whole - inWedge);
}

}  // namespace model
