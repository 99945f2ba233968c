// SPDX-License-Identifier: Apache-2.0
// From a reading to place, equivalent size and extent: the contract's fettlemark-size/1.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/result.h"
#include "ultrasonic/reading.h"

namespace model {

enum class SizingMethod { DistanceGainSize, FarField };

/// What does not follow from the reading is empty, never zero; a note says why. Lengths mm, dB.
/// Where an angle probe's front is not given, the surface distance counts from its index point, and
/// a note says so.
struct Size {
    double wavelengthMm = 0;
    double nearFieldMm = 0;
    std::optional<double> beamWidthMm;        ///< -6 dB echo width at the path
    std::optional<double> depthMm;            ///< below the scanned surface
    std::optional<double> surfaceDistanceMm;  ///< ahead of the probe's front, see below
    int leg = 1;                              ///< 1 to 3
    std::optional<double> echoDb;             ///< flaw minus reference, corrected for transfer
    std::optional<double> fbhMm;              ///< equivalent flat-bottomed hole by `method`
    std::optional<SizingMethod> method;
    std::optional<double> farFieldFbhMm;  ///< by the far-field formulas, beside the model's
    std::optional<double> lengthMm;
    std::optional<double> widthMm;
    std::optional<bool> alongMeasurable;   ///< none: not measured
    std::optional<bool> acrossMeasurable;  ///< none: not measured
    std::vector<std::string> notes;        ///< every limit of the method that was met
};

/// Fails with ErrorKind::Input and the field ("echo.screen_percent") as place where the reading is
/// impossible: angle past critical, screen 0 or above 100, path past the third leg, gain outside
/// -20 to 120, a field that its kind needs and that is not there.
Result<Size> sizeOf(const Reading& reading);

}  // namespace model
