// SPDX-License-Identifier: Apache-2.0
// What follows from a drifted ultrasonic setting. Each scan and each recorded indication names the
// setting check before it. A check that shows a loss of sensitivity, or a drift of range, makes
// every scan since the last good check void, with what was recorded in it; a gain of sensitivity
// reopens the recorded indications. How much drift a setting may have comes from the condition set
// that the procedure names.
//
// A check is good when it states no more drift than that; the check with which a setting begins
// needs to state none. After a drifted check that was corrected the setting is good again; after
// one that was not, it stays drifted up to the next check that is good or was corrected.
#pragma once

#include <string>
#include <vector>

#include "base/result.h"
#include "conditions/condition_set.h"
#include "record/records.h"

namespace model {

/// A scan that counts as not made.
struct VoidScan {
    std::string scan;
    std::string check;                    ///< that showed it
    std::string why;                      ///< "loss of 6 dB", "drift of range not stated"
    std::string again;                    ///< the scan that repeats it; empty: none does yet
    const ConditionRule* rule = nullptr;  ///< never null; of the set
};

/// A recorded indication that has to be evaluated again; it is, once its row names a later check.
struct ReopenedIndication {
    std::string indication;
    std::string check;
    std::string why;
    const ConditionRule* rule = nullptr;  ///< never null; of the set
};

struct DriftConsequences {
    std::vector<VoidScan> voidScans;           ///< in the order of the draft's scans
    std::vector<ReopenedIndication> reopened;  ///< in the order of the draft's reflectors
    /// What leaves open which scans and indications are meant: ids that are not there or stand
    /// twice, times that cannot be read or contradict each other.
    std::vector<Error> unclear;
    /// Indications that do not say after which check they were found.
    std::vector<std::string> withoutCheck;

    [[nodiscard]] bool none() const {
        return voidScans.empty() && reopened.empty() && unclear.empty() && withoutCheck.empty();
    }
};

/// `rule` has limits of drift (ConditionSet::hasDrift()).
DriftConsequences consequencesOf(const ExaminationDraft& draft, const ConditionSet& rule);

}  // namespace model
