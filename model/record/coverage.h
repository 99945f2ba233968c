// SPDX-License-Identifier: Apache-2.0
// What the zone plan requires against what was examined.
#pragma once

#include <vector>

#include "judge/verdict.h"
#include "record/records.h"

namespace model {

struct CoveredTest {
    const PlannedZone* zone = nullptr;
    const RequiredTest* test = nullptr;
    enum class State {
        Made,           ///< by the required table and levels
        OtherCriteria,  ///< made, but by another table or level
        Missing         ///< no examination of that zone, method and stage counts
    } state = State::Missing;
};

/// Every required test of the plan, in the plan's order, pointing into `file`. Only examinations
/// that count (not superseded) cover a test.
std::vector<CoveredTest> coverageOf(const CastingFile& file, const Verdict& verdict);

/// The result for the casting: the verdict's word, or "not judged" where that is better than what
/// was examined allows (a test that the zone plan requires is missing or was made to another table
/// or level, or nothing was examined).
Word castingWord(const CastingFile& file, const Verdict& verdict);

}  // namespace model
