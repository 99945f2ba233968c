// SPDX-License-Identifier: Apache-2.0
// What both papers of the workshop have in common. For this folder only.
#pragma once

#include <string>
#include <vector>

#include "certificate/document.h"
#include "repair/repair_case.h"
#include "sheets/sheet_input.h"

namespace reports {

/// Head, foot and the facts of the casting.
Document beginSheet(const SheetInput& input, const std::string& title, const std::string& subtitle);

/// The zone in the plan; null where it is not in it.
const model::PlannedZone* plannedZone(const model::CastingFile& file, const std::string& name);

/// A zone to scale with what lies in it, as large as a page of text has room for. `planned` null:
/// without outline.
Figure zoneSheetFigure(const std::string& name, const model::PlannedZone* planned,
                       std::vector<FigureCapsule> capsules, const std::string& legend);

/// An excavation in plan; none where its place or size cannot be read.
std::optional<FigureCapsule> capsuleOf(const model::Excavation& excavation,
                                       const std::string& label, FigureCapsule::Role role);

/// "8.5 mm", or "not measured" where the text is empty; as typed.
std::string millimetresText(const std::string& typed);
std::string millimetresText(const std::optional<model::Length>& length);
/// "x 100 mm, y 50 mm"
std::string placeText(const std::string& x, const std::string& y);
/// "50 x 20 x 6 mm": length, width and depth as typed.
std::string sizeText(const model::Excavation& excavation);
/// "Z1 MT, as cast, after repair 1"
std::string examinationText(const model::Examination& header);
/// "N-1, N-2", or a dash.
std::string listedOrDash(const std::vector<std::string>& texts);
/// The state of a case with its mark.
Mark markOf(const model::RepairCase& c);

}  // namespace reports
