// SPDX-License-Identifier: Apache-2.0
// Forbidden kinds: never acceptable, at any size.
#pragma once

#include <optional>

#include "judge/counted.h"
#include "judge/verdict.h"

namespace model {

/// Crack, hot tear or cold shut: in a surface method linear, in UT planar.
bool isCrackLike(Kind kind);

/// The check of the table's and the order's forbidden kinds over a zone's relevant indications,
/// whatever their size; none where nothing is forbidden. A kind that is absent or unknown leaves it
/// open: for a linear or an ultrasonic indication always, for a non-linear one where a kind is
/// forbidden that a non-linear indication can be (anything but crack, hot tear, cold shut).
std::optional<Check> forbiddenKindCheck(const ZoneView& view);

}  // namespace model
