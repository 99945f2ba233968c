// SPDX-License-Identifier: Apache-2.0
#include "ultrasonic/gain.h"

#include <cmath>

#include "ultrasonic/distance_gain_size.h"

namespace model {

double gainStepDb(double firstPercent, double secondPercent) {
    return 20 * std::log10(firstPercent / secondPercent);
}

double amplitudeRatio(double stepDb) {
    return std::pow(10.0, stepDb / 20);
}

double echoHeightDb(double gainDb, double screenPercent) {
    return gainStepDb(screenPercent, kReferenceScreenPercent) - gainDb;
}

double backWallLossDb(double soundAreaEchoDb, double echoDb) {
    return soundAreaEchoDb - echoDb;
}

double attenuationLossDb(double attenuationDbPerM, double soundPathMm) {
    return 2 * attenuationDbPerM * soundPathMm / 1000;
}

Transfer transferOf(const BackWallEcho& onBlock, const BackWallEcho& onCasting) {
    Transfer transfer;
    double spreadingDb = gainStepDb(onCasting.thicknessMm, onBlock.thicknessMm);
    if (onBlock.nearFieldMm && onCasting.nearFieldMm) {
        transfer.spreading = SpreadingRule::DistanceGainSize;
        spreadingDb = backWallEchoDb(onBlock.thicknessMm / *onBlock.nearFieldMm) -
                      backWallEchoDb(onCasting.thicknessMm / *onCasting.nearFieldMm);
    }
    const double materialDb =
        attenuationLossDb(onCasting.attenuationDbPerM, onCasting.thicknessMm) -
        attenuationLossDb(onBlock.attenuationDbPerM, onBlock.thicknessMm);
    transfer.lossDb = onBlock.echoDb - onCasting.echoDb - spreadingDb - materialDb;
    return transfer;
}

}  // namespace model
