// SPDX-License-Identifier: Apache-2.0
// The last day that a casting's record bears.
#pragma once

#include <string>

#include "record/records.h"

namespace model {

/// Of its examinations and of every entry of its dossier; a day up to which something holds is not
/// one on which something was done. Empty where there is none.
std::string lastDayOf(const CastingFile& file);

}  // namespace model
