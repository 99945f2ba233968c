// SPDX-License-Identifier: Apache-2.0
// Whether a test was valid on its day (conditions/validity.h): asked of a draft before it is
// signed, and as it was frozen in a signed record. Errors are those of archive.h.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "archive/archive.h"
#include "conditions/validity.h"

namespace model {

/// A set of limits on test conditions that a test was held against.
struct UsedConditionSet {
    std::string id;
    int revision = 0;
    std::string digest;  ///< SHA-256, hexadecimal
    bool attested = false;

    friend bool operator==(const UsedConditionSet&, const UsedConditionSet&) = default;
};

/// A test as its record holds it: what its conditions were, what was said of them, and what the
/// registers said then of whatever it names.
struct SignedTest {
    TestConditions conditions;
    Testers testers;
    Holdings used;
    std::vector<UsedConditionSet> sets;
    std::vector<ConditionFinding> findings;
};

/// What is to be said of a draft, as it stands at the bench, if the person of the id `examiner`
/// signed it now; signRecord() refuses where one of the findings stands(). Input: it has no casting
/// that is stored.
Result<std::vector<ConditionFinding>> validityOf(const Archive& archive,
                                                 const ExaminationDraft& draft,
                                                 const std::string& examiner);

/// All empty for a record that was signed before conditions were kept. Fails as
/// signedRecordContent().
Result<SignedTest> signedTest(const Archive& archive, std::int64_t record);

}  // namespace model
