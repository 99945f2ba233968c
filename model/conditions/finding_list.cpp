// SPDX-License-Identifier: Apache-2.0
#include "conditions/finding_list.h"

namespace model {

ConditionFinding& FindingList::add(const std::string& id, Reaction reaction, Error reason) {
    std::string unique = id;
    for (int number = 2; !ids_.insert(unique).second; ++number)
        unique = id + " (" + std::to_string(number) + ")";
    ConditionFinding& finding = findings_.emplace_back();
    finding.id = std::move(unique);
    finding.reaction = reaction;
    finding.reason = std::move(reason);
    finding.source.grade = Grade::Read;
    return finding;
}

ConditionFinding& FindingList::addByRule(const ConditionSet& set, const ConditionRule& rule,
                                         const std::string& about, Error reason) {
    if (!rule.note.empty()) {
        reason.arguments.push_back(rule.note);
        reason.reason += " (%" + std::to_string(reason.arguments.size()) + ")";
    }
    ConditionFinding& finding = add(about.empty() ? rule.id : rule.id + " " + about,
                                    reactionOf(set, rule), std::move(reason));
    finding.source = rule.source;
    return finding;
}

std::vector<ConditionFinding> FindingList::take() {
    for (ConditionFinding& finding : findings_) {
        if (finding.reaction != Reaction::Warn || finding.onlySaid) continue;
        for (const Acknowledgement& given : draft_.conditions.acknowledgements) {
            if (given.finding != finding.id ||
                given.reason.find_first_not_of(" \t\r\n") == std::string::npos)
                continue;
            finding.acknowledged = given.reason;
            finding.acknowledgedBy = given.by;
        }
    }
    return std::move(findings_);
}

}  // namespace model
