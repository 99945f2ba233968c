// SPDX-License-Identifier: Apache-2.0
// What the zone plan requires against what was examined.
#pragma once

#include <vector>

#include "judge/verdict.h"
#include "record/records.h"

namespace reports {

struct CoveredTest {
    const model::PlannedZone* zone = nullptr;
    const model::RequiredTest* test = nullptr;
    enum class State {
        Made,           ///< by the required table and levels
        OtherCriteria,  ///< made, but by another table or level
        Missing         ///< no examination of that zone, method and stage counts
    } state = State::Missing;
};

/// Every required test of the plan, in the plan's order. Only examinations that count (not
/// superseded) cover a test.
std::vector<CoveredTest> coverageOf(const model::CastingFile& file, const model::Verdict& verdict);

}  // namespace reports
