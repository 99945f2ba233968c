// SPDX-License-Identifier: Apache-2.0
#include "ultrasonic/far_field.h"

#include <cmath>
#include <numbers>

namespace model {
namespace {

constexpr double kPi = std::numbers::pi;
constexpr double kMetre = 1000;

/// An echo's amplitude falls with both on the way to a reflector and back: only their product
/// counts.
double spread(const EchoPath& path) {
    return path.wavelengthMm * path.lengthMm;
}

double lossDb(const EchoPath& path) {
    return 2 * path.attenuationDbPerM * path.lengthMm / kMetre;
}

}  // namespace

double farDiscEchoDb(double a, double g) {
    return 40 * std::log10(kPi * g / a);
}

double farBackWallEchoDb(double a) {
    return 20 * std::log10(kPi / (2 * a));
}

double lossFreeDifferenceDb(double differenceDb, const EchoPath& flaw, const EchoPath& reference) {
    return differenceDb + lossDb(flaw) - lossDb(reference);
}

// Disc over back wall: pi Df^2 (lambda s)_wall / 2 (lambda s)_flaw^2.
double fbhFromBackWallMm(double differenceDb, const EchoPath& flaw, const EchoPath& backWall) {
    const double ratio = std::pow(10, lossFreeDifferenceDb(differenceDb, flaw, backWall) / 20);
    return spread(flaw) * std::sqrt(2 * ratio / (kPi * spread(backWall)));
}

double fbhFromFbhMm(double differenceDb, const EchoPath& flaw, const EchoPath& hole,
                    double holeDiameterMm) {
    return holeDiameterMm * spread(flaw) / spread(hole) *
           std::pow(10, lossFreeDifferenceDb(differenceDb, flaw, hole) / 40);
}

double fbhEqualToSdhMm(const EchoPath& hole, double holeDiameterMm) {
    return std::sqrt(hole.wavelengthMm / kPi * std::sqrt(2 * holeDiameterMm * hole.lengthMm));
}

bool sideDrilledHoleFarEnough(const EchoPath& hole, double nearFieldMm) {
    return hole.lengthMm >= 0.7 * nearFieldMm;
}

bool sideDrilledHoleWideEnough(const EchoPath& hole, double holeDiameterMm) {
    return holeDiameterMm >= 1.5 * hole.wavelengthMm;
}

}  // namespace model
