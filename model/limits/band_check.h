// SPDX-License-Identifier: Apache-2.0
// How the thickness bands of a limit table's rows fit together.
#pragma once

#include <optional>

#include "base/result.h"
#include "limits/limit_table.h"

namespace model {

inline constexpr std::size_t kMostBandsOfLevel = 32;  ///< in a rule or a recording limit

/// A row's band and where the row stands.
struct BandAt {
    const Band* band = nullptr;
    int line = 0;
};

/// Why `next` cannot follow `previous` as the next band of a level, without gap and overlap.
std::optional<Error> follows(const LimitTable& table, BandAt previous, BandAt next);

/// Whether a thickness lies in both.
bool overlap(const Band& a, const Band& b);

/// A failure in that line of the table.
Error failureAt(const LimitTable& table, int line, std::string reason,
                std::vector<std::string> arguments = {});

}  // namespace model
