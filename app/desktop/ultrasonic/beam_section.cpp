// SPDX-License-Identifier: Apache-2.0
#include "ultrasonic_bench/beam_section.h"

#include <QCoreApplication>
#include <algorithm>

namespace app {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("BeamSection", text);
}

std::optional<double> rimOf(const model::RimZone* rim, double thicknessMm) {
    if (!rim || rim->known != model::Known::Given) return std::nullopt;
    const double share = static_cast<double>(rim->share.numerator) /
                         static_cast<double>(rim->share.denominator) * thicknessMm;
    return rim->atMost ? std::min(share, rim->atMost->approximately()) : share;
}

}  // namespace

BeamSection beamSectionOf(const model::Reading& reading, const model::RimZone* rim) {
    BeamSection shown;
    const auto& probe = reading.probe;
    const auto& part = reading.part;
    const bool curved = part.surface != model::ScanSurface::Flat;
    if (curved && !part.radiusMm) {
        shown.message = tr("The radius of the scanned surface is missing.");
        return shown;
    }
    shown.part = part;
    shown.wedge = probe.kind == model::ProbeKind::AngleBeam;
    const double along = probe.element == model::ElementShape::Round ? probe.diameterMm.value_or(10)
                                                                     : probe.lengthMm.value_or(10);
    shown.probeFrontMm = shown.wedge ? probe.frontMm.value_or(along) : along / 2;
    shown.probeBackMm = shown.wedge ? along * 1.4 : along / 2;
    shown.trace = model::traceBeam(part, shown.wedge ? probe.angleDeg.value_or(0) : 0,
                                   reading.echo.soundPathMm);
    shown.rimMm = rimOf(rim, part.thicknessMm);
    if (shown.trace.boreMissed) shown.message = tr("The beam misses the bore.");
    if (!shown.wedge && shown.trace.end && shown.trace.end->leg > 1) {
        shown.message = tr("The path is longer than the wall: beyond the back wall.");
    }
    if (shown.trace.beyondThirdLeg) shown.message = tr("The path ends past the third leg.");
    return shown;
}

}  // namespace app
