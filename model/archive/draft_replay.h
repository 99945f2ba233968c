// SPDX-License-Identifier: Apache-2.0
// The part of Replay that follows draft examinations.
#pragma once

#include <cstdint>
#include <map>
#include <string>
#include <vector>

#include "archive/archive.h"
#include "archive/draft_walk.h"
#include "archive/replay_digest.h"
#include "base/digest.h"
#include "trust/canonical.h"

namespace model {

class DraftReplay {
public:
    /// Takes a row that says that an examination was saved; false where it is not understood.
    [[nodiscard]] bool take(const HistoryEntry& entry, const Canonical& content);
    /// Adds everything stored that differs from what the rows say, and everything that is gone.
    Result<void> compare(const Connection& connection, std::vector<Error>& findings);

private:
    struct State {
        Digest header{};
        Digest conditions = replayed::digestOf(Canonical());  ///< none, until a row tells of some
        std::vector<Digest> rows;
        std::vector<Digest> settings;
        std::vector<Digest> reflectors;
    };

    void compareOne(const Connection& connection, const WalkedDraft& walked,
                    std::vector<Error>& findings);

    std::map<std::int64_t, State> drafts_;
};

}  // namespace model
