// SPDX-License-Identifier: Apache-2.0
#include "archive/draft_replay.h"

#include <algorithm>
#include <cstdlib>

#include "archive/canonical_records.h"
#include "archive/replay_digest.h"

namespace model {
namespace {

using replayed::digestOf;
using replayed::signedContent;

/// Does to the rows' digests what a save did to the rows; false where that cannot be.
bool applySplice(const Canonical& splice, std::vector<Digest>& rows) {
    const Canonical* from = splice.member("from");
    const Canonical* removed = splice.member("removed");
    const Canonical* added = splice.member("added");
    if (!from || !from->whole() || !removed || !removed->whole() || !added || !added->array())
        return false;
    const auto size = static_cast<std::int64_t>(rows.size());
    const std::int64_t first = *from->whole() - 1;
    if (first < 0 || *removed->whole() < 0 || first > size || *removed->whole() > size - first)
        return false;
    std::vector<Digest> digests;
    for (const Canonical& row : *added->array()) digests.push_back(digestOf(row));
    const auto begin = rows.begin() + first;
    rows.insert(rows.erase(begin, begin + *removed->whole()), digests.begin(), digests.end());
    return true;
}

/// A save tells only of the lists that it changed.
bool applyMember(const Canonical& content, const char* list, std::vector<Digest>& rows) {
    const Canonical* splice = content.member(list);
    return !splice || applySplice(*splice, rows);
}

Canonical::Object headerContent(const WalkedDraft& walked) {
    Canonical::Object content;
    content["version"] = walked.draft.version;
    content["header"] = canonicalHeader(walked.draft);
    return signedContent(std::move(content), walked.savedAt, walked.savedBy);
}

/// One list of a draft held against the digests of what was written.
template <class Row>
class RowComparison {
public:
    RowComparison(const std::vector<Row>& rows, const std::vector<ExactValues>& exact,
                  const std::vector<Digest>& expected)
        : rows_(rows), exact_(exact), expected_(expected) {}

    /// `what`: "row".
    void run(const Connection& connection, const std::string& name, const std::string& what,
             std::vector<Error>& findings) const {
        if (rows_.size() != expected_.size())
            findings.push_back(
                connection.damaged(name, "has not the " + what + "s that were written"));
        const std::string row = name + ", " + what + " ";
        for (std::size_t i = 0; i < std::min(rows_.size(), expected_.size()); ++i)
            if (digestOf(canonicalOf(rows_[i])) != expected_[i] ||
                exactValuesOf(rows_[i]) != exact_[i])
                findings.push_back(
                    connection.damaged(row + std::to_string(i + 1), replayed::kAltered));
    }

private:
    const std::vector<Row>& rows_;
    const std::vector<ExactValues>& exact_;
    const std::vector<Digest>& expected_;
};

}  // namespace

bool DraftReplay::take(const HistoryEntry& entry, const Canonical& content) {
    const Canonical* version = content.member("version");
    const Canonical* header = content.member("header");
    if (!version || !header || !content.member("rows")) return false;
    State& draft = drafts_[std::atoll(entry.subject.c_str())];
    Canonical::Object state;
    state["version"] = *version;
    state["header"] = *header;
    draft.header = digestOf(signedContent(std::move(state), entry.time, entry.person));
    // A save tells of the conditions only where it changed them, and then of all.
    if (const Canonical* conditions = content.member("conditions"))
        draft.conditions = digestOf(*conditions);
    return applyMember(content, "rows", draft.rows) &&
           applyMember(content, "settings", draft.settings) &&
           applyMember(content, "reflectors", draft.reflectors);
}

void DraftReplay::compareOne(const Connection& connection, const WalkedDraft& walked,
                             std::vector<Error>& findings) {
    const ExaminationDraft& draft = walked.draft;
    const std::string name = "examination " + std::to_string(draft.id);
    const auto expected = drafts_.find(draft.id);
    if (expected == drafts_.end()) {
        findings.push_back(connection.damaged(name, replayed::kUnknown));
        return;
    }
    const State& state = expected->second;
    if (digestOf(headerContent(walked)) != state.header)
        findings.push_back(connection.damaged(name, replayed::kAltered));
    if (digestOf(canonicalOf(draft.conditions)) != state.conditions)
        findings.push_back(connection.damaged(name + ", test conditions", replayed::kAltered));
    RowComparison(draft.rows, walked.rows, state.rows).run(connection, name, "row", findings);
    RowComparison(draft.settings, walked.settings, state.settings)
        .run(connection, name, "setting", findings);
    RowComparison(draft.reflectors, walked.reflectors, state.reflectors)
        .run(connection, name, "reflector", findings);
    drafts_.erase(expected);
}

Result<void> DraftReplay::compare(const Connection& connection, std::vector<Error>& findings) {
    auto walked = eachDraft(connection, [&](const WalkedDraft& draft) -> Result<void> {
        compareOne(connection, draft, findings);
        return {};
    });
    if (!walked) return walked;
    for (const auto& [id, draft] : drafts_)
        findings.push_back(connection.damaged("examination " + std::to_string(id), "is gone"));
    return {};
}

}  // namespace model
