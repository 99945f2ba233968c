// SPDX-License-Identifier: Apache-2.0
// Length and width of a flaw out of the movement of the probe.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "ultrasonic/reading.h"

namespace model {

/// The widths of a beam at a path between the points where a small reflector's echo has dropped.
/// Where the element is rectangular its shorter side makes the wider beam.
struct BeamWidths {
    std::optional<double> widestMm;  ///< none nearer than the near field, or without a -6 dB edge
    std::optional<double> narrowestMm;
};
BeamWidths echoBeamWidths(const Probe& probe, double wavelengthMm, double soundPathMm,
                          double dropDb);

struct Extent {
    std::optional<double> lengthMm;
    std::optional<double> widthMm;
    std::optional<bool> alongMeasurable;
    std::optional<bool> acrossMeasurable;
    std::vector<std::string> notes;
};

/// From the movement of a reading that checkReading() let pass, for a flaw at `depthMm`.
Extent extentOf(const Reading& reading, double depthMm);

}  // namespace model
