// SPDX-License-Identifier: Apache-2.0
// The demonstration as plain values: what the invented foundry Quillmere was ordered, cast and
// examined in the autumn of 2026. The data are scenario/*.json, one commission a file; what is to
// be expected of them was worked by hand in EXPECTED.md.
#pragma once

#include <string>
#include <vector>

#include "base/result.h"
#include "demo_db/register_entries.h"
#include "record/records.h"

namespace demo {

/// An examination and what it is there to show.
struct SituatedExamination {
    std::string situation;  ///< "not accepted: only an oblique frame rejects"
    model::ExaminationDraft draft;
};

struct ScenarioCasting {
    model::Casting casting;
    std::string castOn;     ///< date
    std::string enteredBy;  ///< who entered it, on that date
    std::vector<SituatedExamination> examinations;
    std::vector<RegisterEntry> dossier;  ///< what follows "not acceptable", and what belongs to it
};

/// One order for castings of one part.
struct Commission {
    std::string title;
    model::Order order;
    std::string enteredOn;  ///< date of the order's, part's and zone plan's entry
    std::string enteredBy;
    model::Part part;
    model::ZonePlan plan;
    std::vector<ScenarioCasting> castings;
};

/// Every commission, in the order of the files. An examination has its zone's place, wall, stage,
/// table and levels from the zone plan. Fails, naming file and JSON path, where a file is wrong.
model::Result<std::vector<Commission>> readScenario();

}  // namespace demo
