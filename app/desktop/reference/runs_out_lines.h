// SPDX-License-Identifier: Apache-2.0
// What runs out, as lines to be shown.
#pragma once

#include <QString>
#include <string>
#include <vector>

#include "archive/archive.h"

namespace app {

struct RunsOutLine {
    std::string registerName;  ///< "eye test"
    std::string key;           ///< of the entry
    QString what;              ///< "calibration"
    QString of;                ///< "E-7, light meter"
    std::string until;         ///< the last day on which it holds
    int daysLeft = 0;          ///< from today; below 0: overdue
};

/// By day, what is overdue first; of the next `days` days.
model::Result<std::vector<RunsOutLine>> runsOutLines(const model::Archive& archive,
                                                     const std::string& today, int days);

}  // namespace app
