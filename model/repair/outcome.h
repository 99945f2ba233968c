// SPDX-License-Identifier: Apache-2.0
// What the certificate says of a casting as a whole, beside the verdict's word.
#pragma once

#include <string_view>

#include "judge/verdict.h"
#include "record/records.h"

namespace model {

enum class Outcome { Conforms, ConformsAfterRepair, UnderConcession, DoesNotConform, NotJudged };

std::string_view word(Outcome outcome);  ///< "conforms", "conforms after repair" ...

/// Conforms, also after repair: castingWord() is acceptable, every nonconformance is closed, and
/// none was scrapped or regraded. UnderConcession: it is not acceptable, and every indication that
/// fails is covered by a concession that holds; the word itself stays "not acceptable". NotJudged:
/// as castingWord(). DoesNotConform: anything else, an open nonconformance included. `today`: see
/// repairCasesOf().
Outcome outcomeOf(const CastingFile& file, const Verdict& verdict, std::string_view today = {});

}  // namespace model
