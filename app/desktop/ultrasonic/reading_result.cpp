// SPDX-License-Identifier: Apache-2.0
#include "ultrasonic_bench/reading_result.h"

#include <QLabel>
#include <QVBoxLayout>

#include "looks/heading.h"
#include "looks/mark.h"
#include "looks/text.h"

namespace app {
namespace {

QString decimal(double value, int decimals = 1) {
    return QString::number(value, 'f', decimals);
}

QString decibels(double value) {
    return value < 0 ? QChar(0x2212) + decimal(-value) : "+" + decimal(value);
}

QString methodText(model::SizingMethod method) {
    return method == model::SizingMethod::DistanceGainSize
               ? ReadingResult::tr("by the distance-gain-size model")
               : ReadingResult::tr("by the far-field formulas");
}

QString extent(const QString& name, std::optional<double> mm, std::optional<bool> measurable,
               bool moved) {
    if (mm) return ReadingResult::tr("%1 %2 mm").arg(name, decimal(*mm));
    if (measurable && !*measurable) return ReadingResult::tr("%1 not measurable").arg(name);
    // A movement near the probe may be neither: the notes say why.
    return (moved ? ReadingResult::tr("%1 not known") : ReadingResult::tr("%1 not measured"))
        .arg(name);
}

}  // namespace

ReadingResult::ReadingResult(QWidget* parent)
    : QWidget(parent),
      headline_(new Heading(1.3, this)),
      method_(new QLabel(this)),
      facts_(new QLabel(this)),
      notes_(new QLabel(this)) {
    headline_->setObjectName("readingSize");
    facts_->setObjectName("readingFacts");
    notes_->setObjectName("readingNotes");
    headline_->setAccessibleName(tr("Result of the reading"));
    for (QLabel* text : {headline_, method_, facts_, notes_}) {
        text->setWordWrap(true);
        text->setTextFormat(Qt::PlainText);
        text->setTextInteractionFlags(Qt::TextSelectableByMouse);
    }
    notes_->setMargin(6);
    notes_->setBackgroundRole(QPalette::ToolTipBase);
    notes_->setForegroundRole(QPalette::ToolTipText);
    notes_->setAutoFillBackground(true);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(3);
    for (QLabel* text : {headline_, method_, facts_, notes_}) layout->addWidget(text);
}

void ReadingResult::showSize(const model::Size& size, const model::Reading& reading) {
    headline_->setPalette(palette());
    headline_->setText(size.fbhMm ? tr("FBH %1 mm").arg(decimal(*size.fbhMm))
                                  : tr("No equivalent size"));
    QStringList method;
    if (size.fbhMm && size.method) {
        method << tr("equivalent flat-bottomed hole, %1").arg(methodText(*size.method));
    }
    if (size.farFieldFbhMm && size.method != model::SizingMethod::FarField) {
        method << tr("far-field formulas: %1 mm").arg(decimal(*size.farFieldFbhMm));
    }
    method_->setText(method.join('\n'));
    method_->setVisible(!method.isEmpty());

    QStringList facts;
    if (size.echoDb) facts << tr("Echo %1 dB against the reference").arg(decibels(*size.echoDb));
    if (size.depthMm) {
        facts << (size.leg > 1
                      ? tr("Depth %1 mm, on leg %2").arg(decimal(*size.depthMm)).arg(size.leg)
                      : tr("Depth %1 mm").arg(decimal(*size.depthMm)));
    }
    if (size.surfaceDistanceMm && reading.probe.kind == model::ProbeKind::AngleBeam) {
        facts << tr("%1 mm ahead of the probe's %2")
                     .arg(decimal(*size.surfaceDistanceMm),
                          reading.probe.frontMm ? tr("front") : tr("index point"));
    }
    const auto movement = reading.movement.value_or(model::ProbeMovement());
    facts << extent(tr("Length"), size.lengthMm, size.alongMeasurable,
                    movement.alongMm.has_value()) +
                 ", " +
                 extent(tr("width"), size.widthMm, size.acrossMeasurable,
                        movement.acrossMm.has_value());
    if (size.beamWidthMm)
        facts << tr("Beam %1 mm wide here (−6 dB)").arg(decimal(*size.beamWidthMm));
    facts << tr("Wavelength %1 mm, near field %2 mm")
                 .arg(decimal(size.wavelengthMm, 2), decimal(size.nearFieldMm));
    facts_->setText(facts.join('\n'));
    facts_->show();

    QStringList notes;
    for (const auto& note : size.notes) notes << "• " + qt(note);
    notes_->setText(notes.join('\n'));
    notes_->setVisible(!notes.isEmpty());
}

void ReadingResult::showTrouble(const QString& text, bool wrong) {
    QPalette colours = palette();
    if (wrong) {
        colours.setColor(QPalette::WindowText,
                         colourOf(Mark::Fails, colours.color(QPalette::Window)));
    }
    headline_->setPalette(colours);
    headline_->setText(wrong ? tr("✗  Not a possible reading") : tr("No size yet"));
    method_->hide();
    facts_->setText(text);
    facts_->setVisible(!text.isEmpty());
    notes_->clear();
    notes_->hide();
}

QString ReadingResult::headline() const {
    return headline_->text();
}
QString ReadingResult::facts() const {
    return facts_->text();
}
QString ReadingResult::notes() const {
    return notes_->text();
}

}  // namespace app
