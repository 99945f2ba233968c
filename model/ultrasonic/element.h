// SPDX-License-Identifier: Apache-2.0
// A probe's element as beams and near fields need it. For probes that checkReading() let pass.
#pragma once

#include "ultrasonic/reading.h"

namespace model {

/// The diameter, or the longer or shorter side.
double longSideMm(const Probe& probe);
double shortSideMm(const Probe& probe);

/// The near field of the bare element in a material of that wavelength. An angle probe's wedge,
/// which shortens what remains of it in the part, is not known.
double elementNearFieldMm(const Probe& probe, double wavelengthMm);

/// The beam's angle in the part, from the normal: 0 for a straight probe, whatever is stated.
double beamAngleDeg(const Probe& probe);

}  // namespace model
