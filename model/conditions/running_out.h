// SPDX-License-Identifier: Apache-2.0
// What the works' registers hold that has run out or soon will: calibrations, checks, batches,
// certificates, eye tests, permissions, procedures.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "record/registers.h"

namespace model {

/// Something that holds up to a day. What a later entry has replaced is left out.
struct RunsOut {
    std::string lastDay;         ///< on which it still holds
    std::string_view registers;  ///< the register's name: Equipment::kRegister
    std::string key;             ///< of the entry, keyOf()
    std::string what;            ///< "calibration", "yoke pull", "near vision"
    std::string who;             ///< person, equipment or batch that it is about
    bool isOver = false;         ///< `lastDay` lies before the day asked for

    friend bool operator==(const RunsOut&, const RunsOut&) = default;
};

/// What is over on `today` or will be after at most `days` more days, the earliest first. Things
/// that are withdrawn, used up or obsolete are left out. `today` is a date; else nothing is found.
std::vector<RunsOut> runningOut(const Holdings& holdings, std::string_view today, int days);

}  // namespace model
