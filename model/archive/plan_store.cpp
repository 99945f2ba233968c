// SPDX-License-Identifier: Apache-2.0
#include "archive/plan_store.h"

#include <set>

#include "archive/canonical_records.h"
#include "archive/details.h"
#include "archive/history_store.h"
#include "archive/stored_words.h"
#include "judge/sheet_words.h"
#include "limits/words.h"

namespace model {
namespace {

Result<void> checkZone(const std::string& place, const PlannedZone& zone) {
    if (zone.name.empty()) return inputError(place, "stores no zone without a name");
    if (zone.width <= Length() || zone.height <= Length() || zone.thickness <= Length())
        return inputError(place, "stores no zone without width, height and thickness above 0: %1",
                          {zone.name});
    if (zone.drawingMinimum && *zone.drawingMinimum <= Length())
        return inputError(place,
                          "stores no smallest wall of a drawing that is not above 0: zone %1",
                          {zone.name});
    if (!zone.surface) return {};
    const SurfacePlace& surface = *zone.surface;
    if (surface.id.empty() || surface.width <= Length() || surface.height <= Length() ||
        (surface.period && *surface.period <= Length()))
        return inputError(place,
                          "stores no surface without a name, a size and a period above 0: zone %1",
                          {zone.name});
    return {};
}

Result<void> checkPlan(const Connection& connection, const ZonePlan& plan) {
    std::set<std::string> names;
    for (const PlannedZone& zone : plan.zones) {
        if (auto checked = checkZone(connection.place(), zone); !checked) return checked;
        if (!names.insert(zone.name).second)
            return inputError(connection.place(), "stores each zone of a plan once: %1",
                              {zone.name});
    }
    SqlStatement statement(
        connection,
        "SELECT (SELECT count(*) FROM part WHERE number = ?), "
        "(SELECT coalesce(max(revision), 0) FROM zone_plan WHERE part_number = ?)");
    const auto row = statement.first(plan.part, plan.part);
    if (!row) return row.error();
    if (statement.whole(0) == 0)
        return inputError(connection.place(), "has no part %1", {plan.part});
    const std::int64_t next = statement.whole(1) + 1;
    if (plan.revision < next && plan.revision >= 1)
        return Error{ErrorKind::Conflict,
                     connection.place(),
                     "has a zone plan revision %1 of the part %2 already",
                     {std::to_string(plan.revision), plan.part}};
    if (plan.revision != next)
        return inputError(connection.place(), "takes as next zone plan of the part %1 revision %2",
                          {plan.part, std::to_string(next)});
    return {};
}

Result<void> writeTests(const Connection& connection, const ZonePlan& plan, const PlannedZone& zone,
                        int zonePosition) {
    SqlStatement addTest(
        connection,
        "INSERT INTO required_test (part_number, revision, zone_position, position, "
        "method, stage, limit_table) VALUES (?, ?, ?, ?, ?, ?, ?)");
    SqlStatement addLevel(connection,
                          "INSERT INTO required_level (part_number, revision, zone_position, "
                          "test_position, level_key, level) VALUES (?, ?, ?, ?, ?, ?)");
    int position = 0;
    for (const RequiredTest& test : zone.tests) {
        ++position;
        if (auto done = addTest.run(plan.part, plan.revision, zonePosition, position,
                                    word(test.method), word(test.stage), test.table);
            !done)
            return done;
        for (const auto& [key, level] : test.levels)
            if (auto done =
                    addLevel.run(plan.part, plan.revision, zonePosition, position, key, level);
                !done)
                return done;
    }
    return {};
}

Result<void> writeZones(const Connection& connection, const ZonePlan& plan) {
    SqlStatement addZone(connection,
                         "INSERT INTO planned_zone (part_number, revision, position, name, "
                         "description, width_nm, height_nm, thickness_nm, surface, surface_x_nm, "
                         "surface_y_nm, surface_angle_millionth_deg, surface_width_nm, "
                         "surface_height_nm, surface_period_nm, details) "
                         "VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)");
    int position = 0;
    for (const PlannedZone& zone : plan.zones) {
        ++position;
        const SurfaceColumns surface = columnsOf(zone.surface);
        const auto details = detailsText(detailsOf(zone));
        if (!details) return details.error();
        if (auto done =
                addZone.run(plan.part, plan.revision, position, zone.name, zone.description,
                            zone.width.millionths(), zone.height.millionths(),
                            zone.thickness.millionths(), surface.id, surface.x, surface.y,
                            surface.angle, surface.width, surface.height, surface.period, *details);
            !done)
            return done;
        if (auto done = writeTests(connection, plan, zone, position); !done) return done;
    }
    return {};
}

Result<void> readLevels(const Connection& connection, ZonePlan& plan) {
    SqlStatement statement(
        connection,
        "SELECT zone_position, test_position, level_key, level FROM required_level "
        "WHERE part_number = ? AND revision = ?");
    if (auto done = statement.run(plan.part, plan.revision); !done) return done;
    return eachRow(statement, [&](const SqlStatement& row) -> Result<void> {
        const auto zone = static_cast<std::size_t>(row.whole(0)) - 1;
        const auto test = static_cast<std::size_t>(row.whole(1)) - 1;
        if (zone >= plan.zones.size() || test >= plan.zones[zone].tests.size())
            return connection.damaged("zone plan of " + plan.part, "has a level without a test");
        plan.zones[zone].tests[test].levels[row.text(2)] = row.text(3);
        return {};
    });
}

Result<void> readTests(const Connection& connection, ZonePlan& plan) {
    SqlStatement statement(
        connection,
        "SELECT zone_position, method, stage, limit_table FROM required_test "
        "WHERE part_number = ? AND revision = ? ORDER BY zone_position, position");
    if (auto done = statement.run(plan.part, plan.revision); !done) return done;
    return eachRow(statement, [&](const SqlStatement& row) -> Result<void> {
        const std::string what = "zone plan of " + plan.part;
        const auto zone = static_cast<std::size_t>(row.whole(0)) - 1;
        if (zone >= plan.zones.size()) return connection.damaged(what, "has a test without a zone");
        const auto method = known(connection, methodFrom(row.text(1)), what, row.text(1));
        if (!method) return method.error();
        const auto stage = known(connection, stageFrom(row.text(2)), what, row.text(2));
        if (!stage) return stage.error();
        plan.zones[zone].tests.push_back({*method, *stage, row.text(3), {}});
        return {};
    });
}

Result<void> readZones(const Connection& connection, ZonePlan& plan) {
    SqlStatement statement(connection,
                           "SELECT name, description, width_nm, height_nm, thickness_nm, surface, "
                           "surface_x_nm, surface_y_nm, surface_angle_millionth_deg, "
                           "surface_width_nm, surface_height_nm, surface_period_nm, details "
                           "FROM planned_zone WHERE part_number = ? AND revision = ? "
                           "ORDER BY position");
    if (auto done = statement.run(plan.part, plan.revision); !done) return done;
    return eachRow(statement, [&](const SqlStatement& row) -> Result<void> {
        PlannedZone zone;
        zone.name = row.text(0);
        zone.description = row.text(1);
        zone.width = nanometres(row.whole(2));
        zone.height = nanometres(row.whole(3));
        zone.thickness = nanometres(row.whole(4));
        zone.surface = surfaceFrom(row, 5);
        if (auto taken = takeDetails(connection, row.text(12), "zone plan of " + plan.part, zone);
            !taken)
            return taken;
        plan.zones.push_back(std::move(zone));
        return {};
    });
}

}  // namespace

Result<void> addZonePlan(WriteTransaction& transaction, const ZonePlan& plan) {
    const Connection& connection = transaction.connection();
    if (auto checked = checkPlan(connection, plan); !checked) return checked;
    SqlStatement add(connection, "INSERT INTO zone_plan (part_number, revision) VALUES (?, ?)");
    if (auto done = add.run(plan.part, plan.revision); !done) return done;
    if (auto done = writeZones(connection, plan); !done) return done;
    return transaction.record(action::kZonePlanAdded, plan.part, canonicalOf(plan));
}

Result<ZonePlan> loadZonePlan(const Connection& connection, const std::string& part, int revision) {
    SqlStatement statement(connection,
                           "SELECT count(*) FROM zone_plan WHERE part_number = ? AND revision = ?");
    const auto row = statement.first(part, revision);
    if (!row) return row.error();
    if (statement.whole(0) == 0)
        return inputError(connection.place(), "has no zone plan revision %1 of a part %2",
                          {std::to_string(revision), part});
    ZonePlan plan{part, revision, {}};
    if (auto done = readZones(connection, plan); !done) return done.error();
    if (auto done = readTests(connection, plan); !done) return done.error();
    if (auto done = readLevels(connection, plan); !done) return done.error();
    return plan;
}

Result<std::vector<int>> loadZonePlanRevisions(const Connection& connection,
                                               const std::string& part) {
    SqlStatement statement(
        connection, "SELECT revision FROM zone_plan WHERE part_number = ? ORDER BY revision");
    if (auto done = statement.run(part); !done) return done.error();
    std::vector<int> revisions;
    auto read = eachRow(statement, [&](const SqlStatement& row) -> Result<void> {
        revisions.push_back(static_cast<int>(row.whole(0)));
        return {};
    });
    if (!read) return read.error();
    return revisions;
}

}  // namespace model
