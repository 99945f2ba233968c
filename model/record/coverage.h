// SPDX-License-Identifier: Apache-2.0
// What zone plan and order require against what was examined.
#pragma once

#include <string>
#include <vector>

#include "judge/verdict.h"
#include "record/records.h"

namespace model {

/// A test by MT, PT or UT that a zone of the plan requires.
struct ZoneTest {
    const PlannedZone* zone = nullptr;  ///< never null; points into the file
    RequiredTest test;
    bool ordered = false;  ///< by the order, beside the plan or in its place
};

struct RequiredTests {
    std::vector<ZoneTest> tests;
    /// Tests that the order asks for and that cannot be read, and what the order asks for twice.
    /// What they would take the place of stays required, and the casting is not judged.
    std::vector<Error> errors;
};

/// By zone in the plan's order. A test of the order takes the place of the plan's of the same zone,
/// method and stage, or is added; one for a named zone goes before one for every zone.
RequiredTests requiredTestsOf(const CastingFile& file);

struct CoveredTest {
    const PlannedZone* zone = nullptr;  ///< never null; points into the file
    RequiredTest test;
    enum class State {
        Made,           ///< by the required table and levels
        OtherCriteria,  ///< made, but by another table or level
        Missing         ///< no examination of that zone, method and stage counts
    } state = State::Missing;
    bool ordered = false;                  ///< as in ZoneTest
    std::vector<NotExamined> notExamined;  ///< parts of the zone, as the examinations state them
};

/// Every required test, as requiredTestsOf() has them. Only examinations that count (not
/// superseded) cover a test.
std::vector<CoveredTest> coverageOf(const CastingFile& file, const Verdict& verdict);

/// A test by others that a zone requires (PlannedZone::otherTests).
struct CoveredOther {
    const PlannedZone* zone = nullptr;  ///< never null
    std::string test;
    const OtherResult* result = nullptr;  ///< the worst that stands; null: there is none
    Word word = Word::NotJudged;
};

/// Covered by results of that test that stand (other_results.h), for the zone or the whole casting.
std::vector<CoveredOther> otherCoverageOf(const CastingFile& file);

/// The result for the casting: the verdict's word, or what is worse. "Not acceptable" where a
/// result of another test that stands is; "not judged" where a test that the zone plan or the order
/// requires is missing, not judged, or was made to another table or level, where the order cannot
/// be read, or where nothing was examined.
Word castingWord(const CastingFile& file, const Verdict& verdict);

}  // namespace model
