// SPDX-License-Identifier: Apache-2.0
// Whether a test was valid on the day it was made: people, equipment, consumables, procedure, order
// and test conditions. Validity never changes the verdict's word: it says whether a record of the
// test may be signed, and what is printed beside it.
#pragma once

#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"
#include "conditions/reaction.h"
#include "limits/limit_table.h"
#include "record/records.h"

namespace model {

/// One condition that is not kept or not known, or that is only noted.
struct ConditionFinding {
    std::string id;  ///< of the rule, unique in the examination: "MT-10", "near vision Q-1"
    Reaction reaction = Reaction::Log;
    Error reason;          ///< place: what it is about; argument texts with their units
    std::string measured;  ///< "8 W/m2"; empty: not measured, or no measurement
    std::string limit;     ///< ">= 10 W/m2"; empty: none
    /// Locator with the standard and edition; an empty one: no standard's limit, but what the
    /// registers or the order themselves say.
    Source source;
    std::string acknowledged;  ///< the reason typed at the bench; empty: none
    std::string acknowledgedBy;
    /// Nothing is to be typed: the finding only says that the conditions are not stated.
    bool onlySaid = false;

    /// Whether it stands in the way of signing.
    [[nodiscard]] bool stands() const {
        return reaction == Reaction::Block ||
               (reaction == Reaction::Warn && !onlySaid && acknowledged.empty());
    }
};

/// Who stands for the test: ids of people, as in Qualification::person.
struct Testers {
    std::string examiner;   ///< who made the test and signs its record
    std::string evaluator;  ///< of Level 2 or 3, where the examiner is of Level 1; may be empty
};

/// Everything that is to be said of the test on its day (`draft.examinedOn`), in the order in which
/// an inspector would put it right. A draft that names no procedure of the register has exactly one
/// finding, "test conditions not stated" (Warn, onlySaid). `file.used` holds what the draft names;
/// `attestedSets` the SHA-256 of every condition set that a QA manager attested.
std::vector<ConditionFinding> validityOf(const CastingFile& file, const ExaminationDraft& draft,
                                         const Testers& testers,
                                         const std::set<std::string>& attestedSets);

}  // namespace model
