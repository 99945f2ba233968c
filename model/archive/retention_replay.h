// SPDX-License-Identifier: Apache-2.0
// The part of Replay that follows what is stated about retention, and disposals.
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

/// A certificate that was disposed of.
struct Disposal {
    std::int64_t number = 0;
    std::vector<std::string> files;               ///< SHA-256 of each that went
    std::map<std::int64_t, std::string> records;  ///< whose content went, with its SHA-256
};

class RetentionReplay {
public:
    /// Whether the action is one of these.
    static bool follows(const std::string& action);
    /// Takes such a row; false where it is not understood.
    [[nodiscard]] bool take(const HistoryEntry& entry, const Canonical::Object& content);
    /// Adds everything stored that differs from what the rows say, and everything that is gone.
    Result<void> compare(const Connection& connection, std::vector<Error>& findings);

    /// In the order of the history.
    [[nodiscard]] const std::vector<Disposal>& disposals() const { return disposals_; }

private:
    bool takeDisposal(const HistoryEntry& entry, const Canonical::Object& content);
    Result<void> compareDisposals(const Connection& connection, std::vector<Error>& findings);

    std::map<std::string, Digest> retentions_;  ///< by order
    std::map<std::int64_t, Digest> rows_;       ///< of the table disposal, by number
    std::vector<Disposal> disposals_;
};

}  // namespace model
