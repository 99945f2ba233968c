// SPDX-License-Identifier: Apache-2.0
// Which verdicts of other tests stand: visual, radiographic, pressure and so on, by the works or by
// others.
#pragma once

#include <vector>

#include "judge/verdict.h"
#include "record/records.h"

namespace model {

/// The word of a result; a verdict that is none of the contract's words is not judged.
Word wordOf(const OtherResult& result);

/// Results that count, in the dossier's order. One that is not judged gives way to a later one of
/// the same test and zone. One that is not acceptable gives way only where metal was taken out
/// between the two: in that zone, under a nonconformance of that test, or under any for MT and PT,
/// which follow every step of a repair. Days decide; what has no day neither gives way nor
/// replaces.
std::vector<const OtherResult*> standingResultsOf(const CastingFile& file);

/// Whether an excavation names it as the record of its cavity's test: such a record says nothing
/// about the zone as a whole.
bool isCavityTest(const CastingFile& file, const OtherResult& result);

/// The word of OtherResult::test that a nonconformance's method is: "VT" is "visual"; empty for
/// "other".
std::string_view otherTestOf(std::string_view method);

}  // namespace model
