// SPDX-License-Identifier: Apache-2.0
// What is measured on the casting itself: velocity from a known thickness, attenuation from two
// back-wall echoes, and whether the velocity puts the nodularity of the iron in doubt.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/result.h"
#include "ultrasonic/gain.h"

namespace model {

/// Velocity, m/s, out of the time between two successive back-wall echoes, all > 0.
double velocityFromTime(double thicknessMm, double roundTripUs);

/// Velocity, m/s, where an instrument set to `setVelocityMPerS` shows `shownThicknessMm` on a part
/// that a calliper finds `thicknessMm` thick; all > 0.
double velocityFromThickness(double thicknessMm, double shownThicknessMm, double setVelocityMPerS);

/// Two back-wall echoes out of one train, read on parallel surfaces.
struct BackWallTrain {
    double thicknessMm = 0;             ///< > 0
    int first = 1;                      ///< number of the earlier echo, >= 1
    int second = 2;                     ///< number of the later echo, > first
    double dropDb = 0;                  ///< how much lower the later one is
    double lossPerBounceDb = 0;         ///< lost at the surfaces per round trip, >= 0; often 0.5
    std::optional<double> nearFieldMm;  ///< of a round straight-beam probe, > 0; none: unknown
};

struct Attenuation {
    double dbPerM = 0;  ///< one way, per metre of path; never below zero
    /// The model's curve wherever the near field is known. By the far-field rule the value comes
    /// out low unless the first echo's path is well above three near fields.
    SpreadingRule spreading = SpreadingRule::FarField;
    double farFieldDbPerM = 0;       ///< by the far-field rule, beside it; may be below zero
    double lossPerBounceDb = 0;      ///< what was taken off for the surfaces
    std::vector<std::string> notes;  ///< every limit of the method that was met
};

/// alpha = (drop - spreading - bounces) / (2 (n - m) t). Fails with ErrorKind::Input where the
/// numbers are impossible, where the first echo lies nearer than 0.7 near fields, or where the
/// result is below zero: then a reading, the thickness or the loss per bounce is wrong.
Result<Attenuation> attenuationOf(const BackWallTrain& train);

/// The warning for a longitudinal velocity measured on spheroidal graphite iron that puts its
/// nodularity in doubt, with the guide values' sources and grades; none from 5500 m/s up, which is
/// no proof of nodularity either: this program never certifies nodularity.
std::optional<std::string> nodularityWarning(double longitudinalVelocityMPerS);

}  // namespace model
