// SPDX-License-Identifier: Apache-2.0
// What must hold within an ultrasonic examination, and of other methods' that they are none.
#pragma once

#include <string>

#include "base/result.h"
#include "judge/sheet.h"

namespace model {

/// Fails with the JSON path of the field that is wrong; `path` is the examination's. Depth is
/// compared with the wall that the indication states, else with the zone's thickness.
Result<void> validateUltrasonic(const Examination& examination, const std::string& path);

}  // namespace model
