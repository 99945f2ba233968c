// SPDX-License-Identifier: Apache-2.0
// Echoes far from the crystal, by formula: the limits of the distance-gain-size model, and sizes in
// millimetres from a reference echo. From path >= 3 N on; nearer, the model rules.
//
// Source: J. and H. Krautkraemer, Ultrasonic Testing of Materials, 4th ed., p. 99 (disc, back
// wall); the hole's side by the echo of a long cylinder against that of a plane, sqrt(d / 2 s).
// Differences are the flaw's echo minus the reference's, dB, as read (corrected for transfer): the
// attenuation on both paths is taken off here. Lengths mm.
#pragma once

namespace model {

/// Echo of a disc and of a back wall, dB on the scale of discEchoDb: pi^2 G^2 / A^2, pi / 2 A.
double farDiscEchoDb(double a, double g);
double farBackWallEchoDb(double a);

/// How far away a reflector is, in which material.
struct EchoPath {
    double lengthMm;               ///< one way, > 0
    double wavelengthMm;           ///< of the wave in this material, > 0
    double attenuationDbPerM = 0;  ///< one way, >= 0: an echo loses it twice
};

/// What the flaw's echo would differ by without attenuation: `differenceDb` and what the flaw's
/// path lost more than the reference's.
double lossFreeDifferenceDb(double differenceDb, const EchoPath& flaw, const EchoPath& reference);

/// Diameter of the flat-bottomed hole that gives the flaw's echo; the reference is a back wall, or
/// a flat-bottomed hole of the given diameter.
double fbhFromBackWallMm(double differenceDb, const EchoPath& flaw, const EchoPath& backWall);
double fbhFromFbhMm(double differenceDb, const EchoPath& flaw, const EchoPath& hole,
                    double holeDiameterMm);

/// The flat-bottomed hole that echoes as a side-drilled one at the same place:
/// Df = sqrt((lambda / pi) sqrt(2 d s)). Through it a side-drilled hole is a reference, here and
/// for the distance-gain-size model. Holds where sideDrilledHoleFarEnough and -WideEnough.
double fbhEqualToSdhMm(const EchoPath& hole, double holeDiameterMm);

/// A side-drilled hole echoes as these formulas say from 0.7 N on, and from 1.5 wavelengths of
/// diameter on (ISO 16811, from memory).
bool sideDrilledHoleFarEnough(const EchoPath& hole, double nearFieldMm);
bool sideDrilledHoleWideEnough(const EchoPath& hole, double holeDiameterMm);

}  // namespace model
