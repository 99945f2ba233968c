// SPDX-License-Identifier: Apache-2.0
// What a disposal takes out of the archive, and whether it may. For the .cpp files of this folder
// only.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "archive/certificate_store.h"
#include "archive/connection.h"
#include "archive/retention.h"
#include "trust/canonical.h"

namespace model {

/// Everything of a certificate that goes.
struct Leaving {
    Certificate certificate;
    std::vector<std::string> files;     ///< SHA-256, the released one first
    std::vector<std::int64_t> records;  ///< that it alone was made from
    Canonical::Object said;             ///< for the history
};

/// Why it has to stay on `day`; nothing: it need not.
Result<void> checkIsDue(const Connection& connection, const Certificate& certificate,
                        const Retention& stated, const std::string& day);

/// Numbers, dates and digests for the history; nothing of what the certificate states.
Result<Leaving> leavingOf(const Connection& connection, const Certificate& certificate);

}  // namespace model
