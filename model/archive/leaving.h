// SPDX-License-Identifier: Apache-2.0
// What a disposal takes out of the archive, and whether it may. For the .cpp files of this folder
// only.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "archive/connection.h"
#include "archive/retention.h"
#include "trust/canonical.h"

namespace model {

/// Everything of a certificate that goes, or of a casting that was returned.
struct Leaving {
    std::int64_t number = 0;
    std::string order;
    std::string serial;
    std::string type;
    std::string at;                     ///< UTC: when it was issued or returned
    bool returned = false;              ///< instead of released
    std::vector<std::string> files;     ///< SHA-256, the last one first
    std::vector<std::int64_t> records;  ///< that it alone was made from
    Canonical::Object said;             ///< for the history
};

/// With numbers, dates and digests for the history; nothing of what the certificate states. Input:
/// there is no such number. Refused: it waits for release.
Result<Leaving> leavingOf(const Connection& connection, std::int64_t number);

/// Why it has to stay on `day`; nothing: it need not. `stated` is of its order.
Result<void> checkIsDue(const Connection& connection, const Leaving& leaving,
                        const Retention& stated, const std::string& day);

}  // namespace model
