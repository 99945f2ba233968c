// SPDX-License-Identifier: Apache-2.0
// A casting with all that belongs to it. For the .cpp files of this folder only.
#pragma once

#include <string>

#include "archive/connection.h"
#include "record/records.h"

namespace model {

struct StoredCasting {
    CastingFile file;
    std::int64_t castingVersion = 0;
    std::int64_t partVersion = 0;
    std::int64_t orderVersion = 0;
};

/// Within a transaction. Examinations carry what was stated against their standing records.
Result<StoredCasting> loadCastingFile(const Connection& connection, const std::string& serial);

}  // namespace model
