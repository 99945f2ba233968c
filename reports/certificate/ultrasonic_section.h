// SPDX-License-Identifier: Apache-2.0
// What an ultrasonic examination has beside others; each appends its blocks.
#pragma once

#include <vector>

#include "certificate/document.h"
#include "certificate/examined.h"

namespace reports {

/// Sensitivity and testability, and each setting: probe, sound, reference, transfer.
void addUltrasonicTest(std::vector<Block>& blocks, const Examined& examined);

/// The indications with place, size and extent, their readings, and the limits of the sizing.
void addReflectors(std::vector<Block>& blocks, const Examined& examined);

}  // namespace reports
