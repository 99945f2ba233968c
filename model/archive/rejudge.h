// SPDX-License-Identifier: Apache-2.0
// Judging again what was presented: with today's program, and with the limit tables of then. A
// verdict that comes out otherwise says that the program changed, or that the record did.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "archive/archive.h"

namespace model {

/// A presentation whose verdict comes out otherwise, or that cannot be judged again.
struct RejudgedOtherwise {
    std::int64_t number = 0;
    std::string programVersion;  ///< which judged it then
    std::string difference;      ///< plain English: "was acceptable, is not acceptable today"
};

struct Rejudged {
    std::int64_t count = 0;  ///< how many were judged again
    std::vector<RejudgedOtherwise> otherwise;
};

/// The one with this number (Input where there is none), or all. Every check is compared, not the
/// word alone. Refused where it was stopped.
Result<Rejudged> rejudge(const Archive& archive,
                         const std::optional<std::int64_t>& number = std::nullopt,
                         const Progress& progress = {});

}  // namespace model
