// SPDX-License-Identifier: Apache-2.0
#include "ultrasonic_bench/echo_diagram.h"

#include <QCoreApplication>

#include "ultrasonic/far_field.h"
#include "ultrasonic/field.h"
#include "ultrasonic/gain.h"

namespace app {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("EchoDiagram", text);
}

/// The reference reflector as the model has it; none where the model does not hold for it.
std::optional<EchoPoint> referencePoint(const model::Reading& reading, double diameterMm) {
    const auto& reference = reading.reference;
    const double path = reference.echo.soundPathMm;
    const double wave =
        model::wavelengthMm(reference.medium.velocityMPerS, reading.probe.frequencyMhz);
    const double near = model::roundNearFieldMm(diameterMm, wave);
    const double a = path / near;
    if (!(a >= model::kSmallestDistance)) return std::nullopt;
    if (reference.kind == model::ReferenceKind::BackWall) {
        return EchoPoint{a, model::backWallEchoDb(a)};
    }
    if (!reference.diameterMm) return std::nullopt;
    double hole = *reference.diameterMm;
    if (reference.kind == model::ReferenceKind::SideDrilledHole) {
        const model::EchoPath at{path, wave, reference.medium.attenuationDbPerM.value_or(0)};
        if (!model::sideDrilledHoleFarEnough(at, near)) return std::nullopt;
        hole = model::fbhEqualToSdhMm(at, hole);
    }
    const double g = hole / diameterMm;
    if (!(g > 0) || g / a > 3) return std::nullopt;
    return EchoPoint{a, model::discEchoDb(a, g)};
}

}  // namespace

EchoDiagram echoDiagramOf(const model::Reading& reading, const model::Size* size) {
    EchoDiagram shown;
    const auto& probe = reading.probe;
    if (probe.kind != model::ProbeKind::StraightBeam ||
        probe.element != model::ElementShape::Round || !probe.diameterMm) {
        shown.message =
            tr("The curves hold for a straight-beam probe with a round element. This "
               "probe's readings are sized without them.");
        return shown;
    }
    const double wave = model::wavelengthMm(reading.medium.velocityMPerS, probe.frequencyMhz);
    shown.diameterMm = *probe.diameterMm;
    shown.nearFieldMm = model::roundNearFieldMm(shown.diameterMm, wave);
    shown.flawPathMm = reading.echo.soundPathMm;
    shown.reference = referencePoint(reading, shown.diameterMm);
    const double a = reading.echo.soundPathMm / shown.nearFieldMm;
    if (a < model::kSmallestDistance) {
        shown.message = tr("The flaw lies nearer than 0.7 near fields: nothing is sized there.");
    }
    if (!size || !size->echoDb || !shown.reference) return shown;
    // What the instrument showed, with the known losses on both ways put back.
    const auto loss = [](const model::WaveMedium& medium, const model::EchoReading& echo) {
        return model::attenuationLossDb(medium.attenuationDbPerM.value_or(0), echo.soundPathMm);
    };
    const double height = shown.reference->echoDb + *size->echoDb +
                          loss(reading.medium, reading.echo) -
                          loss(reading.reference.medium, reading.reference.echo);
    shown.flaw = EchoPoint{a, height};
    if (size->method == model::SizingMethod::DistanceGainSize) shown.flawFbhMm = size->fbhMm;
    return shown;
}

const model::Diagram& modelDiagram() {
    static const model::Diagram kDiagram = model::diagram();
    return kDiagram;
}

}  // namespace app
