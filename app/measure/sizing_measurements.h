// SPDX-License-Identifier: Apache-2.0
// How long sizing a reflector takes, which the reading form does at each key, and drawing up the
// distance-gain-size diagram behind it. No yardstick: both are held to a time.
#pragma once

#include "measure/measure.h"

namespace app {

/// The longest of many readings of a straight-beam probe, from the near field to forty times it and
/// from far below the back wall's echo to above it.
model::Result<std::vector<Measurement>> measureSizeReading();

/// The whole diagram, the first time that it is called for: nothing is kept from one to the next.
model::Result<std::vector<Measurement>> measureDiagram();

}  // namespace app
