// SPDX-License-Identifier: Apache-2.0
// Which ultrasonic indications a table's recording limits take up.
#pragma once

#include "judge/reflector_class.h"

namespace model {

/// Whether an indication in a wall is considered: where any recording limit holds. An absent
/// measure, an unknown limit and a wall without one leave it open.
Certainty recorded(const LimitTable& table, const Reflector& reflector, Length wall);

/// Whether it has an extent above the beam's width; open where none was measured.
Certainty hasMeasurableExtent(const Reflector& reflector);

/// Whether its back-wall loss reaches the level from which it must be explained: that of a
/// recording limit, or where the table records none, that of its rules for the loss.
Certainty reachesEvaluationLoss(const LimitTable& table, const Reflector& reflector, Length wall);

}  // namespace model
