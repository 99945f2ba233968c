// SPDX-License-Identifier: Apache-2.0
// Whether a repair is minor or major by the order's rule.
#pragma once

#include <string>

#include "record/records.h"
#include "repair/repair_rule.h"

namespace model {

/// What is not known is treated as major.
enum class Severity { Minor, Major, NotKnown };
std::string_view word(Severity severity);  ///< "minor", "major", "not known, treated as major"

struct RepairSeverity {
    Severity severity = Severity::NotKnown;
    std::string reason;  ///< "depth 12 mm > 20 % of the wall of 40 mm", or what is not known
    Source source;       ///< of the criterion that decides; empty where none does

    [[nodiscard]] bool treatedAsMajor() const { return severity != Severity::Minor; }
};

/// Of one cavity. `rule` null: the order names none, or one that is not known. Whether the casting
/// leaked is taken from the pressure tests among its other results.
RepairSeverity severityOf(const Excavation& excavation, const CastingFile& file,
                          const RepairRule* rule);

}  // namespace model
