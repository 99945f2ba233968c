// SPDX-License-Identifier: Apache-2.0
// A casting of the invented foundry Quillmere that MT found not acceptable, and what was done about
// it, step by step. Tests change one thing and ask again.
#pragma once

#include <string>

#include "judge/verdict.h"
#include "record/records.h"
#include "repair/repair_case.h"

namespace repaired {

/// The verdict on the file's examinations by the tables of the program.
model::Verdict judged(const model::CastingFile& file);

/// Z1 (600 x 400 mm, wall 40, drawing minimum 32) examined by MT as cast on 2026-03-02: 1 is a
/// crack, 30 mm long, which the order forbids; 2 is a pore within the limits. Z2 beside it
/// (300 x 400 mm): nothing found. The order names the rule "ASTM A216".
model::CastingFile cracked();
/// cracked(), and nonconformance N-1 on indication 1, opened that day, nothing decided.
model::CastingFile held();
/// held(), ground out on 2026-03-04 to 34 mm of wall (E-1), its cavity tested by MT, and
/// examined again on 2026-03-05 with nothing found.
model::CastingFile ground();
/// held(), excavated 12 mm deep on 2026-03-04 with the purchaser's agreement AG-7, its cavity
/// tested on the 5th, welded on the 6th (W-1), stress relieved on the 8th (H-1), and examined again
/// on the 10th with nothing found.
model::CastingFile welded();
/// held(), and a concession C-1 on indication 1 of 2026-03-04, until 2026-12-31.
model::CastingFile conceded();

/// An examination of Z1 after a repair, naming N-1, nothing found.
model::ExaminationDraft reexamination(const std::string& day, int repairCycle = 1);
/// Acceptable, of Z1, performed on a day.
model::OtherResult otherResult(const std::string& number, const std::string& test,
                               const std::string& day);
model::TypedIndication crack(const std::string& id, const std::string& x, const std::string& y);

/// Z1 required by UT too, and examined by it as cast on a day: a planar echo u1 of 30 mm, which is
/// not acceptable, or nothing found.
void requireUltrasonic(model::CastingFile& file);
model::ExaminationDraft ultrasonic(const std::string& day, bool planar, int repairCycle = 0);

}  // namespace repaired
