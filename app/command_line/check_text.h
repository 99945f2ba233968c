// SPDX-License-Identifier: Apache-2.0
// What decided a verdict, in one sentence for a terminal.
#pragma once

#include <string>

#include "judge/verdict.h"

namespace app {

/// "total area, non-linear: 40 mm2, at most 35 mm2 (Table 1, R)". A check that could not be made
/// says why instead.
std::string checkText(const model::Check& check);

/// The check or reason that decided: of a failed examination the first failed check, of one that is
/// not judged the first open one, of an acceptable one the check that comes closest to its limit.
std::string decidingText(const model::ExaminationVerdict& verdict);

}  // namespace app
