// SPDX-License-Identifier: Apache-2.0
// Settings and rows as an inspector types them.
#pragma once

#include "record/typed_reflector.h"

namespace model {

/// A 24 mm straight probe of 2 MHz against the back wall of the casting, 300 mm of steel.
inline TypedSetting straightSetting() {
    TypedSetting setting;
    setting.name = "S24";
    setting.probe = "S24-2, number 117";
    setting.kind = "straight";
    setting.element = "round";
    setting.diameter = "24";
    setting.frequency = "2";
    setting.velocity = "5920";
    setting.thickness = "300";
    setting.surface = "flat";
    setting.reference = "back wall";
    setting.referencePath = "300";
    setting.referenceGain = "30";
    setting.referenceScreen = "80";
    return setting;
}

/// A 45 degree probe on the outside of a ring, against a hole drilled into a block's side.
inline TypedSetting angleSetting() {
    TypedSetting setting;
    setting.name = "A45";
    setting.probe = "A45-2, number 9";
    setting.kind = "angle";
    setting.element = "rectangular";
    setting.elementWidth = "8";
    setting.elementLength = "9";
    setting.front = "12";
    setting.frequency = "2.25";
    setting.probeAngle = "45";
    setting.velocity = "3080";
    setting.thickness = "60";
    setting.surface = "outer";
    setting.radius = "500";
    setting.reference = "side-drilled hole";
    setting.referenceOn = "block";
    setting.block = "B 12";
    setting.referencePath = "80";
    setting.referenceDiameter = "3";
    setting.referenceGain = "-3.5";
    setting.referenceScreen = "80";
    setting.transfer = "2";
    return setting;
}

inline TypedReflector straightRow() {
    TypedReflector row;
    row.id = "u1";
    row.x = "120";
    row.y = "80,5";
    row.setting = "S24";
    row.soundPath = "200";
    row.gain = "40";
    row.screen = "80";
    return row;
}

inline TypedReflector angleRow() {
    TypedReflector row = straightRow();
    row.setting = "A45";
    row.soundPath = "70";
    row.screen = "60";
    return row;
}

}  // namespace model
