// SPDX-License-Identifier: Apache-2.0
// Whether a reading can be: what its kinds need is there, and every value is possible.
#pragma once

#include "base/result.h"
#include "ultrasonic/reading.h"

namespace model {

/// Fails with ErrorKind::Input and the field as place, named as in fettlemark-reading/1:
/// "echo.gain_db". Whether the path ends in the part is for the beam's trace to say.
Result<void> checkReading(const Reading& reading);

}  // namespace model
