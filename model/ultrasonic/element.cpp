// SPDX-License-Identifier: Apache-2.0
#include "ultrasonic/element.h"

#include <algorithm>

#include "ultrasonic/field.h"

namespace model {

double longSideMm(const Probe& probe) {
    return probe.element == ElementShape::Round ? *probe.diameterMm
                                                : std::max(*probe.widthMm, *probe.lengthMm);
}

double shortSideMm(const Probe& probe) {
    return probe.element == ElementShape::Round ? *probe.diameterMm
                                                : std::min(*probe.widthMm, *probe.lengthMm);
}

double elementNearFieldMm(const Probe& probe, double wavelengthMm) {
    return probe.element == ElementShape::Round
               ? roundNearFieldMm(*probe.diameterMm, wavelengthMm)
               : rectangularNearFieldMm(*probe.lengthMm, *probe.widthMm, wavelengthMm);
}

double beamAngleDeg(const Probe& probe) {
    return probe.kind == ProbeKind::StraightBeam ? 0 : probe.angleDeg.value_or(0);
}

}  // namespace model
