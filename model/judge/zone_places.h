// SPDX-License-Identifier: Apache-2.0
// What must hold of zones on shared surfaces: placed once, on one period, sharing no area.
#pragma once

#include "base/result.h"
#include "judge/sheet.h"

namespace model {

/// Fails with the JSON path of the examination whose zone is placed wrongly.
Result<void> validatePlaces(const Sheet& sheet);

}  // namespace model
