// SPDX-License-Identifier: Apache-2.0
// What the columns of a draft's tables mean, whatever statement reads them. For the .cpp files of
// this folder only.
#pragma once

#include "archive/connection.h"
#include "record/records.h"

namespace model {

/// Of the table `examination`, as draftFrom() takes them from column 0 on.
inline constexpr char kDraftColumns[] =
    "id, version, casting_serial, zone, method, stage, repair_cycle, repeat_number, thickness_nm, "
    "surface, surface_x_nm, surface_y_nm, surface_angle_millionth_deg, surface_width_nm, "
    "surface_height_nm, surface_period_nm, limit_table, no_indications, examined_by, examined_on, "
    "written_procedure, remarks, zone_area_millionth_mm2, testability_stated, smallest_fbh_nm, "
    "signal_to_noise_millionth_db, dead_zone_nm, details";
inline constexpr int kDraftColumnCount = 28;

/// The draft without its lists and rows.
Result<ExaminationDraft> draftFrom(const Connection& connection, const SqlStatement& row);

// Add to a draft what a row of one of its lists says, from `column` on.
/// level_key, level
void takeLevel(const SqlStatement& row, int column, ExaminationDraft& draft);
/// kind
Result<void> takeForbiddenKind(const Connection& connection, const SqlStatement& row, int column,
                               ExaminationDraft& draft);
/// area_millionth_mm2, reason, agreed
void takeNotExamined(const SqlStatement& row, int column, ExaminationDraft& draft);
/// direction
void takeDirection(const SqlStatement& row, int column, ExaminationDraft& draft);

}  // namespace model
