// SPDX-License-Identifier: Apache-2.0
// What must hold within a limit table for ultrasonic testing, once each of its lines has been read.
#pragma once

#include <functional>
#include <map>
#include <optional>
#include <string>

#include "base/result.h"
#include "limits/limit_table.h"

namespace model {

/// The bands of a recording limit neither leave a gap nor overlap; no indication escapes recording
/// for want of a measurable extent; rim and clusters fit the classes and rules. `lineOf` has the
/// lines of the table's own statements by their names. Says what is wrong, with "file:line".
std::optional<Error> checkUltrasonic(const LimitTable& table,
                                     const std::map<std::string, int, std::less<>>& lineOf);

}  // namespace model
