// SPDX-License-Identifier: Apache-2.0
#include "foundry/ultrasonic_rows.h"

namespace foundry {

model::TypedSetting filledSetting() {
    model::TypedSetting setting;
    setting.name = "A45";
    setting.probe = "A45-2, number 9";
    setting.kind = "angle";
    setting.element = "rectangular";
    setting.diameter = " 1/2";
    setting.elementWidth = "8";
    setting.elementLength = "9,5";
    setting.front = "1 3/8";
    setting.frequency = "2.25";
    setting.probeAngle = "45,5";
    setting.velocity = "3080";
    setting.attenuation = "4.5";
    setting.thickness = "60";
    setting.surface = "outer";
    setting.radius = "500";
    setting.reference = "side-drilled hole";
    setting.referenceOn = "block";
    setting.block = "B 12";
    setting.referenceVelocity = "3230";
    setting.referenceAttenuation = "0.5";
    setting.referencePath = "80";
    setting.referenceDiameter = "1/8";
    setting.referenceGain = "-3.5";
    setting.referenceScreen = "79";
    setting.transfer = "2.1";
    setting.knownThickness = "2";
    setting.shownThickness = "2.05";
    setting.setVelocity = "5920";
    setting.firstEchoNumber = "1";
    setting.firstEchoGain = "30,5";
    setting.secondEchoNumber = "2";
    setting.secondEchoGain = "41";
    setting.unit = model::LengthUnit::Inch;
    return setting;
}

model::TypedReflector filledReflector() {
    model::TypedReflector row;
    row.id = " u1 ";
    row.x = " 1 3/8 ";
    row.y = "0.0625";
    row.heading = "-90";
    row.setting = "A45";
    row.afterCheck = "K 3";
    row.soundPath = "70";
    row.gain = "40,5";
    row.screen = "60";
    row.drop = "6";
    row.along = "35";
    row.across = "1/64";
    row.depth = "45";
    row.fbh = "2.7";
    row.length = "22";
    row.width = "9";
    row.throughWall = "5/64";
    row.angle = "30.5";
    row.area = "155";
    row.backWallLoss = "6,5";
    row.backWallLossExplained = "by the rib";
    row.overReference = "-2.5";
    row.wall = "61";
    row.notMeasurable = "width";
    row.kind = "planar";
    row.relevance = "non-relevant";
    row.reason = "the rib's corner, \xc3\xa9t\xc3\xa9";
    row.unit = model::LengthUnit::Inch;
    return row;
}

}  // namespace foundry
