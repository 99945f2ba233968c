// SPDX-License-Identifier: Apache-2.0
// Zone plans in the database: revisions are added and never change.
#pragma once

#include "archive/transaction.h"

namespace model {

Result<void> addZonePlan(WriteTransaction& transaction, const ZonePlan& plan);
Result<ZonePlan> loadZonePlan(const Connection& connection, const std::string& part, int revision);
Result<std::vector<int>> loadZonePlanRevisions(const Connection& connection,
                                               const std::string& part);

}  // namespace model
