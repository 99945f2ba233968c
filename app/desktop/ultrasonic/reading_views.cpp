// SPDX-License-Identifier: Apache-2.0
#include "ultrasonic_bench/reading_views.h"

#include <QPainter>

namespace app {
namespace {

QString decimal(double value) {
    return QString::number(value, 'f', 1);
}

}  // namespace

EchoDiagramView::EchoDiagramView(QWidget* parent) : QWidget(parent) {
    setAccessibleName(tr("Distance-gain-size diagram"));
    setToolTip(
        tr("Echo heights of the back wall (thick) and of flat-bottomed holes over the sound path, "
           "computed for this probe: a circular piston and a disc across its axis, near field "
           "included. 0 dB: a flat back wall at no distance. Hatched: nearer than one near field, "
           "where a size is only indicative. Printed diagrams of probe makers "
           "differ by a decibel or so."));
    show(EchoDiagram());
}

void EchoDiagramView::show(EchoDiagram diagram) {
    diagram_ = std::move(diagram);
    QStringList said;
    if (diagram_.reference) {
        said << tr("Reference at %1 near fields, %2 dB")
                    .arg(decimal(diagram_.reference->a), decimal(diagram_.reference->echoDb));
    }
    if (diagram_.flaw) {
        said << tr("flaw at %1 mm, %2 near fields, %3 dB")
                    .arg(decimal(diagram_.flawPathMm), decimal(diagram_.flaw->a),
                         decimal(diagram_.flaw->echoDb));
    }
    if (!diagram_.message.isEmpty()) said << diagram_.message;
    setAccessibleDescription(said.join("; "));
    update();
}

void EchoDiagramView::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    paintEchoDiagram(painter, diagram_, {palette(), rect(), hasFocus()});
}

BeamSectionView::BeamSectionView(QWidget* parent) : QWidget(parent) {
    setAccessibleName(tr("Cross-section of the part with the beam"));
    setToolTip(
        tr("The part in the plane of the beam, to scale; the beam's axis leg by leg. Rim and core "
           "as the limit table defines them."));
    show(BeamSection());
}

void BeamSectionView::show(BeamSection section) {
    section_ = std::move(section);
    QStringList said;
    if (section_.trace.end && section_.part) {
        said << tr("Flaw %1 mm deep, %2 mm from the index point along the surface, leg %3")
                    .arg(decimal(section_.trace.end->depthMm),
                         decimal(section_.trace.end->surfaceDistanceMm))
                    .arg(section_.trace.end->leg);
    }
    if (!section_.message.isEmpty()) said << section_.message;
    setAccessibleDescription(said.join("; "));
    update();
}

void BeamSectionView::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    paintBeamSection(painter, section_, {palette(), rect()});
}

}  // namespace app
