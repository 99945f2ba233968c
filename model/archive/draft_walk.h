// SPDX-License-Identifier: Apache-2.0
// Every stored draft, one after the other. Each table is read once, as asking for a draft at a time
// takes long where there are many. For the .cpp files of this folder only.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "archive/connection.h"
#include "record/records.h"

namespace model {

struct WalkedDraft {
    ExaminationDraft draft;
    std::vector<ExactFields> exact;  ///< as stored beside each of draft.rows
    std::string savedAt;
    std::string savedBy;
};

/// By id, rising.
Result<void> eachDraft(const Connection& connection,
                       const std::function<Result<void>(const WalkedDraft&)>& take);

}  // namespace model
