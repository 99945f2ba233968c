// SPDX-License-Identifier: Apache-2.0
#include "archive/draft_header.h"

#include "archive/details.h"
#include "archive/draft_columns.h"
#include "archive/stored_words.h"
#include "judge/sheet_words.h"
#include "limits/words.h"

namespace model {
namespace {

template <class Quantity>
std::optional<std::int64_t> millionthsOf(const std::optional<Quantity>& quantity) {
    if (!quantity) return std::nullopt;
    return quantity->millionths();
}

/// A list in the order of its positions.
template <class List, class Run>
Result<void> writeList(const List& list, Run run) {
    int position = 0;
    for (const auto& entry : list)
        if (auto done = run(++position, entry); !done) return done;
    return {};
}

}  // namespace

Result<void> writeHeader(WriteTransaction& transaction, const ExaminationDraft& draft) {
    const Examination& header = draft.header;
    const SurfaceColumns surface = columnsOf(header.surface);
    const UltrasonicTest& ultrasonic = header.ultrasonic;
    const Testability testability = ultrasonic.testability.value_or(Testability());
    const auto details = detailsText(canonicalOf(draft.conditions));
    if (!details) return details.error();
    SqlStatement write(
        transaction.connection(),
        "INSERT INTO examination (id, version, casting_serial, zone, method, stage, "
        "repair_cycle, repeat_number, thickness_nm, surface, surface_x_nm, "
        "surface_y_nm, surface_angle_millionth_deg, surface_width_nm, "
        "surface_height_nm, surface_period_nm, limit_table, no_indications, "
        "examined_by, examined_on, written_procedure, remarks, "
        "zone_area_millionth_mm2, testability_stated, smallest_fbh_nm, "
        "signal_to_noise_millionth_db, dead_zone_nm, details, saved_at, saved_by) "
        "VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, "
        "?, ?, ?, ?, ?, ?) ON CONFLICT (id) DO UPDATE SET version = excluded.version, "
        "zone = excluded.zone, method = excluded.method, stage = excluded.stage, "
        "repair_cycle = excluded.repair_cycle, "
        "repeat_number = excluded.repeat_number, "
        "thickness_nm = excluded.thickness_nm, surface = excluded.surface, "
        "surface_x_nm = excluded.surface_x_nm, surface_y_nm = excluded.surface_y_nm, "
        "surface_angle_millionth_deg = excluded.surface_angle_millionth_deg, "
        "surface_width_nm = excluded.surface_width_nm, "
        "surface_height_nm = excluded.surface_height_nm, "
        "surface_period_nm = excluded.surface_period_nm, "
        "limit_table = excluded.limit_table, "
        "no_indications = excluded.no_indications, "
        "examined_by = excluded.examined_by, examined_on = excluded.examined_on, "
        "written_procedure = excluded.written_procedure, "
        "remarks = excluded.remarks, "
        "zone_area_millionth_mm2 = excluded.zone_area_millionth_mm2, "
        "testability_stated = excluded.testability_stated, "
        "smallest_fbh_nm = excluded.smallest_fbh_nm, "
        "signal_to_noise_millionth_db = excluded.signal_to_noise_millionth_db, "
        "dead_zone_nm = excluded.dead_zone_nm, details = excluded.details, "
        "saved_at = excluded.saved_at, "
        "saved_by = excluded.saved_by");
    return write.run(draft.id, draft.version, draft.casting, header.zone, word(header.method),
                     word(header.stage), header.repairCycle, header.repeat,
                     header.thickness.millionths(), surface.id, surface.x, surface.y, surface.angle,
                     surface.width, surface.height, surface.period, header.table,
                     header.noIndications, draft.examinedBy, draft.examinedOn, draft.procedure,
                     draft.remarks, millionthsOf(ultrasonic.zoneArea),
                     ultrasonic.testability.has_value(), millionthsOf(testability.smallestFbh),
                     millionthsOf(testability.signalToNoise), millionthsOf(ultrasonic.deadZone),
                     *details, transaction.time(), transaction.person());
}

Result<void> writeLists(const Connection& connection, const ExaminationDraft& draft) {
    for (const char* table : {"examination_level", "examination_forbidden_kind", "not_examined",
                              "examination_direction"}) {
        SqlStatement clear(connection,
                           std::string("DELETE FROM ") + table + " WHERE examination_id = ?");
        if (auto done = clear.run(draft.id); !done) return done;
    }
    const Examination& header = draft.header;
    SqlStatement addLevel(connection,
                          "INSERT INTO examination_level (examination_id, level_key, level) "
                          "VALUES (?, ?, ?)");
    for (const auto& [key, level] : header.levels)
        if (auto done = addLevel.run(draft.id, key, level); !done) return done;
    SqlStatement addKind(connection,
                         "INSERT INTO examination_forbidden_kind (examination_id, position, kind) "
                         "VALUES (?, ?, ?)");
    auto done = writeList(header.forbiddenKinds, [&](int position, Kind kind) {
        return addKind.run(draft.id, position, word(kind));
    });
    if (!done) return done;
    SqlStatement addArea(connection,
                         "INSERT INTO not_examined (examination_id, position, area_millionth_mm2, "
                         "reason, agreed) VALUES (?, ?, ?, ?, ?)");
    done = writeList(header.notExamined, [&](int position, const NotExamined& area) {
        return addArea.run(draft.id, position, area.area.millionths(), area.reason, area.agreed);
    });
    if (!done) return done;
    SqlStatement addDirection(connection,
                              "INSERT INTO examination_direction (examination_id, position, "
                              "direction) VALUES (?, ?, ?)");
    return writeList(header.ultrasonic.directions, [&](int position, const std::string& text) {
        return addDirection.run(draft.id, position, text);
    });
}

Result<void> readLists(const Connection& connection, ExaminationDraft& draft) {
    SqlStatement levels(connection,
                        "SELECT level_key, level FROM examination_level WHERE examination_id = ?");
    if (auto done = levels.run(draft.id); !done) return done;
    auto read = eachRow(levels, [&](const SqlStatement& row) -> Result<void> {
        takeLevel(row, 0, draft);
        return {};
    });
    if (!read) return read;
    SqlStatement kinds(connection,
                       "SELECT kind FROM examination_forbidden_kind WHERE examination_id = ? "
                       "ORDER BY position");
    if (auto done = kinds.run(draft.id); !done) return done;
    read = eachRow(kinds, [&](const SqlStatement& row) {
        return takeForbiddenKind(connection, row, 0, draft);
    });
    if (!read) return read;
    SqlStatement areas(connection,
                       "SELECT area_millionth_mm2, reason, agreed FROM not_examined "
                       "WHERE examination_id = ? ORDER BY position");
    if (auto done = areas.run(draft.id); !done) return done;
    read = eachRow(areas, [&](const SqlStatement& row) -> Result<void> {
        takeNotExamined(row, 0, draft);
        return {};
    });
    if (!read) return read;
    SqlStatement directions(connection,
                            "SELECT direction FROM examination_direction "
                            "WHERE examination_id = ? ORDER BY position");
    if (auto done = directions.run(draft.id); !done) return done;
    return eachRow(directions, [&](const SqlStatement& row) -> Result<void> {
        takeDirection(row, 0, draft);
        return {};
    });
}

}  // namespace model
