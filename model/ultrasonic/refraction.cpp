// SPDX-License-Identifier: Apache-2.0
#include "ultrasonic/refraction.h"

#include <cmath>

#include "ultrasonic/angle_units.h"

namespace model {

std::optional<double> refractedDeg(double incidentDeg, double incidentVelocityMPerS,
                                   double refractedVelocityMPerS) {
    const double sine =
        std::sin(radians(incidentDeg)) * refractedVelocityMPerS / incidentVelocityMPerS;
    if (sine >= 1) return std::nullopt;
    return inDegrees(std::asin(sine));
}

std::optional<double> criticalAngleDeg(double incidentVelocityMPerS,
                                       double refractedVelocityMPerS) {
    if (incidentVelocityMPerS >= refractedVelocityMPerS) return std::nullopt;
    return inDegrees(std::asin(incidentVelocityMPerS / refractedVelocityMPerS));
}

Result<double> reAngledDeg(double markedDeg, double markedVelocityMPerS, double velocityMPerS) {
    if (const auto angle = refractedDeg(markedDeg, markedVelocityMPerS, velocityMPerS))
        return *angle;
    return inputError("",
                      "the beam is past critical: at this velocity it does not enter the part; "
                      "take a probe of a smaller angle");
}

double projectedSideMm(double sideMm, double incidentDeg, double refractedDeg) {
    return sideMm * std::cos(radians(refractedDeg)) / std::cos(radians(incidentDeg));
}

}  // namespace model
