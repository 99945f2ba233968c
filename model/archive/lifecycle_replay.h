// SPDX-License-Identifier: Apache-2.0
// The part of Replay that follows records, attestations, presentations and what became of them.
#pragma once

#include <array>
#include <map>
#include <set>
#include <string>
#include <unordered_map>
#include <vector>

#include "archive/archive.h"
#include "archive/connection.h"
#include "base/digest.h"
#include "trust/canonical.h"

namespace model {

class LifecycleReplay {
public:
    /// Whether the action is one of these.
    static bool follows(const std::string& action);
    /// Takes such a row; false where it is not understood.
    [[nodiscard]] bool take(const HistoryEntry& entry, const Canonical::Object& content);
    /// Adds everything stored that differs from what the rows say, and everything that is gone.
    Result<void> compare(const Connection& connection, std::vector<Error>& findings);
    /// A certificate was disposed of, with the contents of `records`, by id with their SHA-256.
    /// Whether it had been returned instead of released.
    [[nodiscard]] bool dispose(std::int64_t number,
                               const std::map<std::int64_t, std::string>& records);

    /// The kinds of rows that the acts leave, one table each.
    enum class Kind {
        Record,
        Invalidation,
        RecordReturn,
        Presentation,
        PresentationReturn,
        Endorsement,
        Release,
        Withdrawal,
        Attestation,
        AttestationWithdrawal
    };
    static constexpr std::size_t kKinds = 10;

private:
    bool expect(Kind kind, std::int64_t key, const Canonical::Object& content);
    bool takeReturns(const HistoryEntry& entry, const Canonical::Object& content);
    Result<void> compareQueue(const Connection& connection, std::vector<Error>& findings) const;

    std::array<std::unordered_map<std::int64_t, Digest>, kKinds> expected_;
    std::set<std::int64_t> waiting_;
    std::map<std::int64_t, std::string> disposed_;  ///< records whose content is empty by now
};

}  // namespace model
