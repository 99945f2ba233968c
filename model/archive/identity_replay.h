// SPDX-License-Identifier: Apache-2.0
// The part of Replay that follows people, identities, revocation lists and the archive's keys.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "archive/archive.h"
#include "archive/connection.h"
#include "trust/canonical.h"

namespace model {

class IdentityReplay {
public:
    /// Whether the action is one of these.
    static bool follows(const std::string& action);
    /// Takes such a row, whose content is without its signer; false where it is not understood.
    [[nodiscard]] bool take(const HistoryEntry& entry, const Canonical::Object& content);
    /// Adds everything stored that differs from what the rows say, and everything that is gone.
    Result<void> compare(const Connection& connection, std::vector<Error>& findings);

private:
    bool takeIdentity(const HistoryEntry& entry, Canonical::Object content);
    bool takeWithdrawal(const HistoryEntry& entry, const Canonical::Object& content);
    bool takeRevocationList(const Canonical::Object& content);
    Result<void> compareIdentities(const Connection& connection, std::vector<Error>& findings);
    void compareOne(const Connection& connection, const std::string& name, const Canonical& content,
                    std::vector<Error>& findings);

    std::map<std::string, Canonical> expected_;
};

}  // namespace model
