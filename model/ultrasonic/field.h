// SPDX-License-Identifier: Apache-2.0
// Wavelength, and the near field: how far from the probe the last maximum on the beam's axis lies.
// All arguments > 0; lengths mm.
#pragma once

namespace model {

double wavelengthMm(double velocityMPerS, double frequencyMhz);

/// D^2 / 4 lambda, the value that distances are counted in. Source: common to all textbooks.
double roundNearFieldMm(double diameterMm, double wavelengthMm);

/// (D^2 - lambda^2) / 4 lambda, where the last maximum of a round piston lies exactly; 0 for an
/// element not larger than a wavelength, which has none.
double roundLastMaximumMm(double diameterMm, double wavelengthMm);

/// 1.37 L^2 / 4 lambda for a square of side L.
double squareNearFieldMm(double sideMm, double wavelengthMm);

/// Approximate: k L^2 / 4 lambda with L the longer side and k from 1.37 (square) to 0.99 (slender).
/// k was computed for this program as the last axial maximum of a rectangular piston in the Fresnel
/// approximation, at ratios of the sides in steps of a tenth, and is interpolated between them.
double rectangularNearFieldMm(double sideMm, double otherSideMm, double wavelengthMm);

/// An angle probe with its wedge: incident angle `incidentDeg` in the wedge, `refractedDeg` in the
/// part, both > 0 and < 90.
struct WedgeProbe {
    double elementAreaMm2 = 0;
    double wedgePathMm = 0;  ///< from the element to the index point, >= 0
    double incidentDeg = 0;
    double refractedDeg = 0;
};

/// What remains of the near field in the part, of the given wavelength in the part:
/// F cos b / (pi lambda cos a) - L tan a / tan b. Approximate, common practice from memory (grade
/// M). 0 where the near field ends within the wedge.
double wedgeNearFieldMm(const WedgeProbe& probe, double wavelengthMm);

}  // namespace model
