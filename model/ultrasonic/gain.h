// SPDX-License-Identifier: Apache-2.0
// Echo heights out of screen heights and gains, and the differences between them that correct a
// size. Decibels of amplitude: 20 lg of a ratio of screen heights.
#pragma once

#include <optional>

namespace model {

/// The screen height that echo heights are stated at.
constexpr double kReferenceScreenPercent = 80;

/// 20 lg(first / second) of two screen heights at equal gain, both > 0.
double gainStepDb(double firstPercent, double secondPercent);

/// The ratio of screen heights that a difference in dB stands for.
double amplitudeRatio(double stepDb);

/// 20 lg(screen / 80) - gain, dB: a higher echo needs less gain. Only differences of two of them
/// mean anything. `screenPercent` > 0.
double echoHeightDb(double gainDb, double screenPercent);

/// How much lower a back-wall echo is than on a sound area of equal thickness, from the echo
/// heights of both; below zero where it is higher.
double backWallLossDb(double soundAreaEchoDb, double echoDb);

/// What material takes from an echo: twice the attenuation (dB/m one way) over the path.
double attenuationLossDb(double attenuationDbPerM, double soundPathMm);

/// By what the spreading of the beam between two back walls was taken off.
enum class SpreadingRule {
    FarField,          ///< 20 lg of the ratio of the distances
    DistanceGainSize,  ///< the model's back-wall curve, the near field included
};

/// A back-wall echo on the block or on the casting.
struct BackWallEcho {
    double thicknessMm = 0;             ///< > 0
    double echoDb = 0;                  ///< echo height
    double attenuationDbPerM = 0;       ///< one way, >= 0
    std::optional<double> nearFieldMm;  ///< of a round straight-beam probe in this material, > 0
};

struct Transfer {
    double lossDb = 0;  ///< the casting's coupling loss against the block's; > 0: casting worse
    SpreadingRule spreading = SpreadingRule::FarField;
};

/// The transfer correction: what remains of the difference of the back-wall echoes, block minus
/// casting, when the spreading and the attenuation of their thicknesses are taken off. At equal
/// thickness and attenuation in the far field it is the plain difference. The model's curve is used
/// when both near fields are known. An attenuation left at 0 stays within the loss.
Transfer transferOf(const BackWallEcho& onBlock, const BackWallEcho& onCasting);

}  // namespace model
