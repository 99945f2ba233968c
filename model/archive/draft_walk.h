// SPDX-License-Identifier: Apache-2.0
// Every stored draft, one after the other. Each table is read once, as asking for a draft at a time
// takes long where there are many. For the .cpp files of this folder only.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "archive/typed_rows.h"

namespace model {

struct WalkedDraft {
    ExaminationDraft draft;
    // As stored beside each row of the draft's lists.
    std::vector<ExactValues> rows;
    std::vector<ExactValues> settings;
    std::vector<ExactValues> reflectors;
    std::string savedAt;
    std::string savedBy;
};

/// By id, rising.
Result<void> eachDraft(const Connection& connection,
                       const std::function<Result<void>(const WalkedDraft&)>& take);

}  // namespace model
