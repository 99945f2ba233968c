// SPDX-License-Identifier: Apache-2.0
// The cross-section of the part in the plane of the beam, to scale: surfaces, rim and core, probe,
// the beam's path leg by leg, and where the flaw lies.
#pragma once

#include <QPalette>
#include <QRectF>
#include <QString>
#include <optional>

#include "limits/limit_table.h"
#include "ultrasonic/beam_path.h"
#include "ultrasonic/reading.h"

class QPainter;

namespace app {

struct BeamSection {
    std::optional<model::ScannedPart> part;  ///< none: nothing can be shown
    model::BeamTrace trace;
    double probeBackMm = 0;       ///< the probe reaches from the index point so far back
    double probeFrontMm = 0;      ///< and so far ahead
    bool wedge = false;           ///< an angle probe
    std::optional<double> rimMm;  ///< depth of the rim on each side; none: not known
    QString message;              ///< what the picture does not show
};

BeamSection beamSectionOf(const model::Reading& reading, const model::RimZone* rim);

struct BeamSectionStyle {
    QPalette palette;
    QRectF area;
};

void paintBeamSection(QPainter& painter, const BeamSection& section, const BeamSectionStyle& style);

}  // namespace app
