// SPDX-License-Identifier: Apache-2.0
#include "ultrasonic_bench/setting_fields.h"

#include <QCoreApplication>

namespace app {
namespace {

using model::TypedSetting;

QString tr(const char* text) {
    return QCoreApplication::translate("SettingFields", text);
}

SettingField text(std::string TypedSetting::*member, const char* field, const QString& label,
                  const QString& help) {
    return {member, {field, label, {}, help, {}}};
}

SettingField number(std::string TypedSetting::*member, const char* field, const QString& label,
                    const QString& unit, const QString& help) {
    return {member, {field, label, unit, help, {}}};
}

SettingField length(std::string TypedSetting::*member, const char* field, const QString& label,
                    const QString& help) {
    return {member, {field, label, QStringLiteral("mm"), help, {}}, true};
}

SettingField choice(std::string TypedSetting::*member, const char* field, const QString& label,
                    const QString& help, Choices choices) {
    return {member, {field, label, {}, help, std::move(choices)}};
}

}  // namespace

SettingGroup probeGroup() {
    using S = TypedSetting;
    return {
        tr("Probe"),
        {text(&S::name, "name", tr("Name of the setting"),
              tr("Short, and unique in this examination: readings refer to it.")),
         text(&S::probe, "probe", tr("Type and number"), tr("As marked on the probe.")),
         choice(&S::kind, "probe.kind", tr("Kind"),
                tr("Straight: one element, beam along the normal. Angle: with a wedge. Twin: "
                   "sender and receiver apart."),
                {{"straight", tr("straight beam")},
                 {"angle", tr("angle beam")},
                 {"twin", tr("twin element")}}),
         choice(&S::element, "probe.element", tr("Element"), tr("Shape of the vibrating element."),
                {{"round", tr("round")}, {"rectangular", tr("rectangular")}}),
         length(&S::diameter, "probe.diameter_mm", tr("Diameter"),
                tr("Effective diameter D of the element; near field N = D²/4λ (all textbooks).")),
         length(&S::elementWidth, "probe.width_mm", tr("Width"),
                tr("Of the element, across the plane of the beam.")),
         length(&S::elementLength, "probe.length_mm", tr("Length"),
                tr("Of the element, in the plane of the beam.")),
         number(&S::frequency, "probe.frequency_mhz", tr("Frequency"), tr("MHz"),
                tr("Nominal frequency; wavelength λ = velocity / frequency.")),
         number(&S::probeAngle, "probe.angle_deg", tr("Beam angle"), tr("°"),
                tr("In this material, from the normal. An angle marked for steel is another one in "
                   "iron, by Snell's law: 45° at 3255 m/s is 42° at 3080 m/s.")),
         length(&S::front, "probe.front_mm", tr("Index to front"),
                tr("From the index point, where the beam leaves the probe, to the probe's front; "
                   "measured on a block."))}};
}

SettingGroup materialGroup() {
    using S = TypedSetting;
    return {
        tr("Material and part"),
        {number(&S::velocity, "material.velocity_m_s", tr("Velocity"), tr("m/s"),
                tr("Of the wave that the probe uses, in this material. Steel about 5930 "
                   "(longitudinal) and 3230 to 3250 (transverse); spheroidal graphite iron 5300 "
                   "to 5700 (longitudinal): measure it on the casting.")),
         number(&S::attenuation, "material.attenuation_db_per_m", tr("Attenuation"), tr("dB/m"),
                tr("One way, per metre of path: an echo loses twice this over its sound path. "
                   "Empty: not known, which is not zero.")),
         length(&S::thickness, "part.thickness_mm", tr("Wall"),
                tr("Thickness of the part where it is scanned.")),
         choice(&S::surface, "part.surface", tr("Scanned surface"),
                tr("Outer or inner: around a curved part, from outside or from its bore."),
                {{"flat", tr("flat")},
                 {"outer", tr("outer, curved")},
                 {"inner", tr("inner, curved")}}),
         length(&S::radius, "part.radius_mm", tr("Radius"), tr("Of the scanned surface."))}};
}

SettingGroup referenceGroup() {
    using S = TypedSetting;
    return {
        tr("Reference echo"),
        {choice(&S::reference, "reference.kind", tr("Reflector"),
                tr("What the reference echo came from."),
                {{"back wall", tr("back wall")},
                 {"flat-bottomed hole", tr("flat-bottomed hole")},
                 {"side-drilled hole", tr("side-drilled hole")}}),
         choice(&S::referenceOn, "reference.on", tr("Taken on"),
                tr("On a block the coupling differs from the casting's: state the transfer."),
                {{"casting", tr("the casting")}, {"block", tr("a block")}}),
         text(&S::block, "block", tr("Block number"), tr("As marked on the block.")),
         number(&S::referenceVelocity, "reference.velocity_m_s", tr("Velocity"), tr("m/s"),
                tr("In the block. Empty: as in the casting.")),
         number(&S::referenceAttenuation, "reference.attenuation_db_per_m", tr("Attenuation"),
                tr("dB/m"), tr("In the block, one way. Empty: as in the casting.")),
         length(&S::referencePath, "reference.sound_path_mm", tr("Sound path"),
                tr("One way, to the reference reflector.")),
         length(&S::referenceDiameter, "reference.diameter_mm", tr("Diameter"),
                tr("Of the hole. A side-drilled hole counts as a flat-bottomed one of equal echo "
                   "from 0.7 near fields and 1.5 wavelengths on (ISO 16811, from memory).")),
         number(&S::referenceGain, "reference.gain_db", tr("Gain"), tr("dB"),
                tr("The instrument's gain when the echo had the screen height below.")),
         number(&S::referenceScreen, "reference.screen_percent", tr("Screen height"), tr("%"),
                tr("Of the screen's height, above 0 and at most 100.")),
         number(&S::transfer, "transfer_db", tr("Transfer"), tr("dB"),
                tr("Coupling loss of the casting against the block: how much lower an equal back "
                   "wall shows on the casting. 0 where the reference is on the casting."))}};
}

SettingGroup measuredGroup() {
    using S = TypedSetting;
    return {
        tr("Measured on the casting"),
        {length(&S::knownThickness, "known_thickness", tr("Wall by calliper"),
                tr("A place with parallel faces, its thickness measured by calliper.")),
         length(&S::shownThickness, "shown_thickness", tr("Wall as shown"),
                tr("What the instrument shows for the same place.")),
         number(&S::setVelocity, "set_velocity", tr("Set velocity"), tr("m/s"),
                tr("The velocity to which the instrument was set then.")),
         number(&S::firstEchoNumber, "first_echo_number", tr("Earlier echo: number"), {},
                tr("Number of the earlier back-wall echo: 1 is the first.")),
         number(&S::firstEchoGain, "first_echo_gain", tr("Earlier echo: gain"), tr("dB"),
                tr("Gain that brings it to a screen height.")),
         number(&S::secondEchoNumber, "second_echo_number", tr("Later echo: number"), {},
                tr("Number of a later back-wall echo of the same place.")),
         number(&S::secondEchoGain, "second_echo_gain", tr("Later echo: gain"), tr("dB"),
                tr("Gain that brings it to the same screen height. Spreading in the near field is "
                   "taken off by the model's back-wall curve."))}};
}

QString settingFieldName(const std::string& field) {
    for (const auto& group : {probeGroup(), materialGroup(), referenceGroup(), measuredGroup()}) {
        for (const auto& known : group.fields) {
            if (known.facts.field != field) continue;
            return tr("%1: %2").arg(group.heading.toLower(), known.facts.label.toLower());
        }
    }
    return QString::fromStdString(field);
}

const std::string* settingText(const TypedSetting& setting, const std::string& field) {
    for (const auto& group : {probeGroup(), materialGroup(), referenceGroup(), measuredGroup()}) {
        for (const auto& known : group.fields) {
            if (known.facts.field == field) return &(setting.*known.text);
        }
    }
    return nullptr;
}

bool isNeeded(const TypedSetting& setting, const std::string& field) {
    const bool round = setting.element != "rectangular";
    const bool angle = setting.kind == "angle";
    const bool block = setting.referenceOn == "block";
    if (field == "probe.diameter_mm") return round;
    if (field == "probe.width_mm" || field == "probe.length_mm") return !round;
    if (field == "probe.angle_deg" || field == "probe.front_mm") return angle;
    if (field == "part.radius_mm") return setting.surface == "outer" || setting.surface == "inner";
    if (field == "reference.diameter_mm") return setting.reference != "back wall";
    if (field == "block" || field == "reference.velocity_m_s" ||
        field == "reference.attenuation_db_per_m" || field == "transfer_db") {
        return block;
    }
    return true;
}

}  // namespace app
