// SPDX-License-Identifier: Apache-2.0
// How long the search of the most unfavourable frame takes: random indications 1 to 12 mm long, a
// frame of 105 x 148 mm, each weighing its length. The yardstick is one axisSweep() over the same.
#pragma once

#include "measure/measure.h"

namespace app {

model::Result<std::vector<Measurement>> measureFrameSpread();  ///< 10 000 over 8 x 3 m
model::Result<std::vector<Measurement>> measureFrameZone();    ///< 300 in 600 x 600 mm
model::Result<std::vector<Measurement>> measureFrameDense();   ///< 2 000 in 300 x 300 mm

/// After one indication is added, moved or removed: the longest time until it is known on which
/// side of a limit the worst frame lies (frame-edit: of all three sets; then each set), and until
/// the worst frame itself is known (frame-edit-exact and the set).
model::Result<std::vector<Measurement>> measureFrameEdit();

}  // namespace app
