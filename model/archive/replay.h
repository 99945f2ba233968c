// SPDX-License-Identifier: Apache-2.0
// What the history says is stored, held against what is stored. So a value that was changed past
// the history is found, not only a change of the history itself.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <unordered_map>
#include <vector>

#include "archive/archive.h"
#include "archive/connection.h"
#include "archive/draft_replay.h"
#include "archive/identity_replay.h"
#include "archive/lifecycle_replay.h"
#include "archive/register_replay.h"
#include "archive/retention_replay.h"
#include "trust/canonical.h"

namespace model {

class Replay {
public:
    /// Takes the next row of the history; false where its content is not understood.
    [[nodiscard]] bool take(const HistoryEntry& entry, const Canonical& row);

    /// Everything stored that differs from what the rows taken say, and everything that is gone.
    Result<std::vector<Error>> compare(const Connection& connection);

private:
    bool takeRetention(const HistoryEntry& entry, const Canonical::Object& content);
    bool takeCertificate(const HistoryEntry& entry, const Canonical::Object& content);
    /// Compares one stored thing, named as in the history, and takes it off the list.
    void compareOne(const Connection& connection, const std::string& name,
                    const Canonical::Object& content);
    Result<void> compareRecords(const Connection& connection);
    Result<void> comparePlans(const Connection& connection, const std::string& part);
    Result<void> compareDrafts(const Connection& connection);
    Result<void> comparePositions(const Connection& connection);
    Result<void> compareTables(const Connection& connection);
    Result<void> compareCertificates(const Connection& connection);
    Result<void> compareArchive(const Connection& connection);
    Result<void> compareIdentities(const Connection& connection);
    Result<void> compareLifecycle(const Connection& connection);
    Result<void> compareRetention(const Connection& connection);
    Result<void> compareRegisters(const Connection& connection);

    std::map<std::string, Digest> expected_;
    std::unordered_map<std::int64_t, Digest> certificates_;
    std::int64_t numbers_ = 0;
    DraftReplay drafts_;
    IdentityReplay identities_;
    LifecycleReplay lifecycle_;
    RetentionReplay retention_;
    RegisterReplay registers_;
    std::vector<Error> findings_;
};

}  // namespace model
