// SPDX-License-Identifier: Apache-2.0
// When and by whom the versions of a register's entry were made, as the history has it.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "archive/archive.h"

namespace model {

struct EntrySave {
    std::int64_t version = 0;
    std::string time;    ///< UTC, 2026-11-25T09:30:00Z
    std::string person;  ///< name
};

/// Of every version, rising; empty: there is no such entry. `key`: keyOf() of field.h. Errors are
/// those of archive.h.
Result<std::vector<EntrySave>> savesOf(const Archive& archive, std::string_view registerName,
                                       const std::string& key);

}  // namespace model
