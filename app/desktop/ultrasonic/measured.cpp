// SPDX-License-Identifier: Apache-2.0
#include "ultrasonic_bench/measured.h"

#include <QCoreApplication>
#include <QStringList>
#include <cmath>

#include "looks/text.h"
#include "ultrasonic/beam.h"
#include "ultrasonic/field.h"
#include "ultrasonic/material.h"

namespace app {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("MeasuredMaterial", text);
}

/// A number above zero as typed; none: empty, or no such number.
std::optional<double> above(const std::string& text) {
    const auto read = model::parseLength(text, model::LengthUnit::Millimetre);
    if (!read || !(read->value > model::Length())) return std::nullopt;
    return read->value.approximately();
}

std::optional<double> lengthAbove(const std::string& text, model::LengthUnit unit) {
    const auto read = model::parseLength(text, unit);
    if (!read || !(read->value > model::Length())) return std::nullopt;
    return read->value.approximately();
}

/// A gain: any number.
std::optional<double> gain(const std::string& text) {
    const auto read = model::parseLength(text, model::LengthUnit::Millimetre);
    return read ? std::optional(read->value.approximately()) : std::nullopt;
}

std::optional<int> echoNumber(const std::string& text) {
    bool whole = false;
    const int number = qt(text).trimmed().toInt(&whole);
    return whole && number >= 1 ? std::optional(number) : std::nullopt;
}

bool anyTyped(std::initializer_list<const std::string*> texts) {
    for (const auto* text : texts) {
        if (!qt(*text).trimmed().isEmpty()) return true;
    }
    return false;
}

std::optional<double> nearFieldOf(const model::TypedSetting& setting,
                                  std::optional<double> velocity) {
    const auto diameter = lengthAbove(setting.diameter, setting.unit);
    const auto frequency = above(setting.frequency);
    if (setting.element == "rectangular" || setting.kind == "angle" || !diameter || !frequency ||
        !velocity) {
        return std::nullopt;
    }
    return model::roundNearFieldMm(*diameter, model::wavelengthMm(*velocity, *frequency));
}

void measureVelocity(const model::TypedSetting& setting, MeasuredMaterial& measured) {
    const auto known = lengthAbove(setting.knownThickness, setting.unit);
    const auto shown = lengthAbove(setting.shownThickness, setting.unit);
    const auto set = above(setting.setVelocity);
    if (!known || !shown || !set) {
        if (anyTyped({&setting.knownThickness, &setting.shownThickness, &setting.setVelocity})) {
            measured.velocityText =
                tr("Velocity: needs the wall by calliper, the wall as shown and "
                   "the set velocity, each above zero.");
        }
        return;
    }
    measured.velocityMPerS = model::velocityFromThickness(*known, *shown, *set);
    measured.velocityText =
        tr("Velocity measured: %1 m/s").arg(std::round(*measured.velocityMPerS));
}

/// By the velocity measured, else by the one typed; the guide values are of longitudinal waves.
QString nodularityOf(const model::TypedSetting& setting, model::Material material,
                     std::optional<double> measured) {
    if (material != model::Material::SpheroidalGraphiteIron || setting.kind == "angle") return {};
    const auto velocity = measured ? measured : above(setting.velocity);
    const auto warning = velocity ? model::nodularityWarning(*velocity) : std::nullopt;
    QString text = warning ? qt(*warning) : QString();
    if (!text.isEmpty()) text[0] = text[0].toUpper();
    return text;
}

void measureAttenuation(const model::TypedSetting& setting, MeasuredMaterial& measured) {
    const auto first = echoNumber(setting.firstEchoNumber);
    const auto second = echoNumber(setting.secondEchoNumber);
    const auto firstGain = gain(setting.firstEchoGain);
    const auto secondGain = gain(setting.secondEchoGain);
    const auto thickness = lengthAbove(setting.knownThickness, setting.unit);
    if (!first || !second || !firstGain || !secondGain || !thickness || *second <= *first) {
        if (anyTyped({&setting.firstEchoNumber, &setting.firstEchoGain, &setting.secondEchoNumber,
                      &setting.secondEchoGain})) {
            measured.attenuationText =
                tr("Attenuation: needs the wall by calliper, the numbers of two back-wall echoes "
                   "(the later the higher) and the gain of each.");
        }
        return;
    }
    model::BackWallTrain train;
    train.thicknessMm = *thickness;
    train.first = *first;
    train.second = *second;
    train.dropDb = *secondGain - *firstGain;
    train.nearFieldMm = nearFieldOf(
        setting, measured.velocityMPerS ? measured.velocityMPerS : above(setting.velocity));
    const auto attenuation = model::attenuationOf(train);
    if (!attenuation) {
        measured.attenuationText = tr("Attenuation: %1").arg(reasonText(attenuation.error()));
        return;
    }
    measured.attenuationDbPerM = attenuation->dbPerM;
    QStringList said{tr("Attenuation measured: %1 dB/m one way")
                         .arg(QString::number(attenuation->dbPerM, 'f', 1))};
    for (const auto& note : attenuation->notes) said << qt(note);
    measured.attenuationText = said.join("\n• ");
}

}  // namespace

MeasuredMaterial measuredOn(const model::TypedSetting& setting, model::Material material) {
    MeasuredMaterial measured;
    measureVelocity(setting, measured);
    measured.nodularity = nodularityOf(setting, material, measured.velocityMPerS);
    measureAttenuation(setting, measured);
    return measured;
}

QString beamText(const model::TypedSetting& setting) {
    const auto velocity = above(setting.velocity);
    const auto frequency = above(setting.frequency);
    if (!velocity || !frequency) return {};
    const double wave = model::wavelengthMm(*velocity, *frequency);
    QStringList said{tr("Wavelength %1 mm").arg(QString::number(wave, 'f', 2))};
    const auto near = nearFieldOf(setting, velocity);
    if (near) said << tr("near field %1 mm").arg(QString::number(*near, 'f', 1));
    const auto diameter = lengthAbove(setting.diameter, setting.unit);
    if (setting.element != "rectangular" && diameter) {
        QStringList edges;
        for (const double drop : {6.0, 20.0}) {
            const double factor =
                model::divergenceFactor(model::ElementShape::Round, model::BeamField::Echo, drop);
            if (const auto half = model::divergenceDeg(factor, wave, *diameter)) {
                edges << tr("−%1 dB at ±%2°").arg(drop).arg(QString::number(*half, 'f', 1));
            }
        }
        if (!edges.isEmpty()) said << tr("echo %1").arg(edges.join(", "));
    }
    return said.join(" · ");
}

}  // namespace app
