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
    "written_procedure, remarks";
inline constexpr int kDraftColumnCount = 22;

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

/// Of the table `indication`, as typedFrom() takes them.
inline constexpr char kTypedColumns[] =
    "id, unit, x, y, length, width, removed, angle, area, kind, stated, relevance, reason";
inline constexpr int kTypedColumnCount = 13;
TypedIndication typedFrom(const SqlStatement& row, int column);

/// Of the same table, as exactFrom() takes them.
inline constexpr char kExactColumns[] =
    "x_nm, y_nm, length_nm, width_nm, removed_nm, angle_millionth_deg, area_millionth_mm2";
ExactFields exactFrom(const SqlStatement& row, int column);

}  // namespace model
