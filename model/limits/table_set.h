// SPDX-License-Identifier: Apache-2.0
// The limit tables at hand: the program's own, an archive's, a folder's. The highest revision of an
// id wins; the same revision with another digest is an error.
#pragma once

#include <map>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"
#include "limits/limit_table.h"

namespace model {

class TableSet {
public:
    /// The tables that the program ships, parsed from the copies embedded in it.
    static Result<TableSet> shipped();

    /// Adds one parsed table. Fails when the same id and revision is there with another digest.
    Result<void> add(LimitTable table);

    /// Adds every "*.table" of a folder, in the order of their names. Fails at the first that is
    /// broken, naming file and line; then nothing is added.
    Result<void> addFolder(const std::string& folder);

    /// The highest revision of a table; null if there is none of that id.
    [[nodiscard]] const LimitTable* find(std::string_view id) const;
    /// A given revision; null if it is not there.
    [[nodiscard]] const LimitTable* find(std::string_view id, int revision) const;
    /// The highest revision of every id, by id.
    [[nodiscard]] std::vector<const LimitTable*> all() const;

    /// A QA manager attested the table with this digest.
    void setAttested(std::string digest);
    [[nodiscard]] bool isAttested(const LimitTable& table) const;

private:
    std::map<std::string, std::map<int, LimitTable>, std::less<>> tables_;
    std::set<std::string> attested_;
};

}  // namespace model
