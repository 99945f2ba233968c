// SPDX-License-Identifier: Apache-2.0
#include "ultrasonic/material.h"

#include <cmath>

#include "ultrasonic/distance_gain_size.h"
#include "ultrasonic/number_text.h"

namespace model {
namespace {

/// Up to here, in near fields, the far-field rule for back walls is not to be used.
constexpr double kFarField = 3;

/// Below these velocities, m/s, the two guides doubt the nodularity.
constexpr double kFoundryRule = 5500;
constexpr double kVelocityStudy = 5300;

/// The next lower tenth: 5499.99 must not read 5500 in a warning that it is below, nor -0.01 read
/// 0.
double lowerTenth(double value) {
    return std::floor(value * 10) / 10;
}

bool positive(double value) {
    return std::isfinite(value) && value > 0;
}

Result<void> check(const BackWallTrain& train) {
    if (!positive(train.thicknessMm))
        return inputError("thickness", "the thickness must be above 0 mm: measure it");
    if (train.first < 1 || train.second <= train.first)
        return inputError("echoes", "count the back-wall echoes from 1, the later one second");
    if (!std::isfinite(train.dropDb))
        return inputError("drop", "the drop between the echoes is no number: read it again");
    if (!std::isfinite(train.lossPerBounceDb) || train.lossPerBounceDb < 0)
        return inputError("loss_per_bounce", "the loss per bounce is 0 dB or more");
    if (!train.nearFieldMm) return {};
    if (!positive(*train.nearFieldMm))
        return inputError("near_field", "the near field must be above 0 mm");
    if (train.first * train.thicknessMm < kSmallestDistance * *train.nearFieldMm)
        return inputError("echoes",
                          "the first echo lies nearer than %1 near fields, where its height says "
                          "nothing about attenuation: take a later echo or a smaller probe",
                          {plainText(kSmallestDistance)});
    return {};
}

std::vector<std::string> notesOn(const BackWallTrain& train, double farFieldDbPerM) {
    std::vector<std::string> notes;
    if (!train.nearFieldMm)
        notes.emplace_back(
            "far-field rule: the near field is not known; with the first echo's path at 3 near "
            "fields or less the attenuation comes out low");
    else if (train.first * train.thicknessMm <= kFarField * *train.nearFieldMm)
        notes.push_back(
            "near field: corrected by the model's back-wall curve; the far-field rule "
            "alone would give " +
            tenthsText(farFieldDbPerM) + " dB/m");
    if (train.lossPerBounceDb == 0)
        notes.emplace_back("no loss at the surfaces was taken off: the attenuation includes it");
    return notes;
}

}  // namespace

double velocityFromTime(double thicknessMm, double roundTripUs) {
    return 2 * thicknessMm / roundTripUs * 1000;
}

double velocityFromThickness(double thicknessMm, double shownThicknessMm, double setVelocityMPerS) {
    return setVelocityMPerS * thicknessMm / shownThicknessMm;
}

Result<Attenuation> attenuationOf(const BackWallTrain& train) {
    if (const auto checked = check(train); !checked) return checked.error();
    const double bounces = train.second - train.first;
    const double bothWaysM = 2 * bounces * train.thicknessMm / 1000;
    const double lost = train.dropDb - bounces * train.lossPerBounceDb;
    Attenuation result;
    result.lossPerBounceDb = train.lossPerBounceDb;
    result.farFieldDbPerM = (lost - gainStepDb(train.second, train.first)) / bothWaysM;
    result.dbPerM = result.farFieldDbPerM;
    if (train.nearFieldMm) {
        const double a = train.thicknessMm / *train.nearFieldMm;
        const double spreading = backWallEchoDb(train.first * a) - backWallEchoDb(train.second * a);
        result.spreading = SpreadingRule::DistanceGainSize;
        result.dbPerM = (lost - spreading) / bothWaysM;
    }
    if (result.dbPerM < 0)
        return inputError("drop",
                          "the attenuation comes out below zero (%1 dB/m): the later echo is "
                          "higher than spreading alone leaves it; check the readings, the "
                          "thickness and the loss per bounce",
                          {tenthsText(lowerTenth(result.dbPerM))});
    result.notes = notesOn(train, result.farFieldDbPerM);
    return result;
}

std::optional<std::string> nodularityWarning(double longitudinalVelocityMPerS) {
    if (longitudinalVelocityMPerS >= kFoundryRule) return std::nullopt;
    std::string text =
        "longitudinal velocity " + tenthsText(lowerTenth(longitudinalVelocityMPerS)) + " m/s: ";
    text += longitudinalVelocityMPerS < kVelocityStudy
                ? "the nodularity is in serious doubt, as neither guide expects a good one here. "
                : "the nodularity is in doubt, as the guides disagree here. ";
    text +=
        "Sources: a foundry guide (grade R) has nodularity above 90 % over 5600 m/s, 75 to 90 % "
        "from 5500 to 5600 m/s, possibly below 75 % under 5500 m/s; a velocity study (its "
        "abstract, grade P) has more than 80 % from 5300 to 5500 m/s and less below. Calibrate on "
        "the foundry's own castings. This program never certifies nodularity.";
    return text;
}

}  // namespace model
