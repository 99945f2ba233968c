// SPDX-License-Identifier: Apache-2.0
// The calculations of workings.h, each of an entry that was checked against its fields.
#pragma once

#include "ultrasonic/workings.h"

namespace model::working {

Result<WorkedOut> heightOfEdges(const WorkingEntry& entry);
Result<WorkedOut> transferOfBackWalls(const WorkingEntry& entry);
Result<WorkedOut> backWallLoss(const WorkingEntry& entry);
Result<WorkedOut> angleInMaterial(const WorkingEntry& entry);
Result<WorkedOut> criticalAngles(const WorkingEntry& entry);
Result<WorkedOut> nearField(const WorkingEntry& entry);
Result<WorkedOut> spread(const WorkingEntry& entry);

}  // namespace model::working
