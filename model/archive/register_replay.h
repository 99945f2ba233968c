// SPDX-License-Identifier: Apache-2.0
// The part of Replay that follows the registers.
#pragma once

#include <cstdint>
#include <map>
#include <string>
#include <vector>

#include "archive/archive.h"
#include "archive/connection.h"
#include "base/digest.h"
#include "trust/canonical.h"

namespace model {

class RegisterReplay {
public:
    /// Whether the action is one that saves an entry.
    static bool follows(const std::string& action);
    /// Takes such a row; false where it is not understood.
    [[nodiscard]] bool take(const HistoryEntry& entry, const Canonical::Object& content);
    /// Adds everything stored that differs from what the rows say, and everything that is gone.
    Result<void> compare(const Connection& connection, std::vector<Error>& findings);

private:
    struct Expected {
        std::string name;  ///< "equipment E-1 version 2"
        Digest digest{};
    };
    std::map<std::int64_t, Expected> expected_;                  ///< by the row's number
    std::map<std::string, std::int64_t, std::less<>> versions_;  ///< the last of each entry
};

}  // namespace model
