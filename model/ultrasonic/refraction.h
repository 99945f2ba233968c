// SPDX-License-Identifier: Apache-2.0
// Refraction, sin(a1) / c1 = sin(a2) / c2. Angles in degrees from the normal, 0 <= angle < 90 where
// given; velocities m/s, > 0.
#pragma once

#include <optional>

#include "base/result.h"

namespace model {

/// The angle in the second medium; none past the critical angle, where no such wave enters it.
std::optional<double> refractedDeg(double incidentDeg, double incidentVelocityMPerS,
                                   double refractedVelocityMPerS);

/// The incident angle at which the refracted wave runs along the surface; none where the second
/// medium is not faster, so that every angle enters it. With the longitudinal velocity of the part
/// it is the first critical angle, with its transverse velocity the second.
std::optional<double> criticalAngleDeg(double incidentVelocityMPerS, double refractedVelocityMPerS);

/// The angle in the part of an angle probe that is marked `markedDeg` for a material of
/// `markedVelocityMPerS`. Fails with ErrorKind::Input and the words "past critical" where no such
/// wave enters the part.
Result<double> reAngledDeg(double markedDeg, double markedVelocityMPerS, double velocityMPerS);

/// The side of an element as the refracted beam sees it in the plane of incidence:
/// L cos(refracted) / cos(incident).
double projectedSideMm(double sideMm, double incidentDeg, double refractedDeg);

}  // namespace model
