// SPDX-License-Identifier: Apache-2.0
// Gathers what is to be said of a test: ids are made unique, reactions capped, reasons typed at the
// bench attached.
#pragma once

#include <set>
#include <string>
#include <vector>

#include "conditions/condition_set.h"
#include "conditions/validity.h"

namespace model {

class FindingList {
public:
    /// Both must outlive it.
    FindingList(const ExaminationDraft& draft, const std::set<std::string>& attestedSets)
        : draft_(draft), attestedSets_(attestedSets) {}

    /// What the registers, the order or the record itself say, without a standard's limit.
    ConditionFinding& add(const std::string& id, Reaction reaction, Error reason);
    /// What a set's rule asks. `about`: which of several things it is about; empty: there is one.
    ConditionFinding& addByRule(const ConditionSet& set, const ConditionRule& rule,
                                const std::string& about, Error reason);
    /// The reaction that a rule has here.
    [[nodiscard]] Reaction reactionOf(const ConditionSet& set, const ConditionRule& rule) const {
        return capped(rule.reaction, rule.source.grade, attestedSets_.contains(set.digest));
    }

    std::vector<ConditionFinding> take();

private:
    const ExaminationDraft& draft_;
    const std::set<std::string>& attestedSets_;
    std::vector<ConditionFinding> findings_;
    std::set<std::string> ids_;
};

}  // namespace model
