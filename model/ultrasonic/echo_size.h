// SPDX-License-Identifier: Apache-2.0
// The flat-bottomed hole that would give the flaw's echo.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "ultrasonic/reading.h"
#include "ultrasonic/size.h"

namespace model {

struct EchoSize {
    std::optional<double> fbhMm;
    std::optional<SizingMethod> method;   ///< where fbhMm is
    std::optional<double> farFieldFbhMm;  ///< where fbhMm is, unless clipped in the far field too
    std::vector<std::string> notes;       ///< limits of the method that were met
};

/// Sizes the echo of a reading that checkReading() let pass, and whose path ends in the part.
/// `echoDb`: flaw minus reference as read, corrected for transfer.
EchoSize sizeOfEcho(const Reading& reading, double echoDb);

}  // namespace model
