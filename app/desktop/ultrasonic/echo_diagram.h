// SPDX-License-Identifier: Apache-2.0
// The distance-gain-size diagram of a probe: echo height over distance for the back wall and for
// flat-bottomed holes as the model computes them, with the points of the flaw and the reference.
#pragma once

#include <QPalette>
#include <QRectF>
#include <QString>
#include <optional>

#include "ultrasonic/distance_gain_size.h"
#include "ultrasonic/size.h"

class QPainter;

namespace app {

/// A point of the diagram.
struct EchoPoint {
    double a = 0;       ///< distance, in near fields
    double echoDb = 0;  ///< against a flat back wall at no distance, attenuation taken off
};

struct EchoDiagram {
    double nearFieldMm = 0;  ///< 0: nothing can be shown
    double diameterMm = 0;   ///< of the element
    double flawPathMm = 0;
    std::optional<EchoPoint> flaw;
    std::optional<EchoPoint> reference;  ///< in the reference's own near fields
    std::optional<double> flawFbhMm;     ///< whose curve runs through the flaw's point
    QString message;                     ///< why there is nothing to show, or less
};

/// Of a reading, and its size where it could be sized. The curves hold for a straight-beam probe
/// with a round element.
EchoDiagram echoDiagramOf(const model::Reading& reading, const model::Size* size);

/// The model's curves; computed once.
const model::Diagram& modelDiagram();

struct EchoDiagramStyle {
    QPalette palette;
    QRectF area;
    bool focused = false;
};

void paintEchoDiagram(QPainter& painter, const EchoDiagram& diagram, const EchoDiagramStyle& style);

}  // namespace app
