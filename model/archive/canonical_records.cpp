// SPDX-License-Identifier: Apache-2.0
#include "archive/canonical_records.h"

#include "archive/details.h"
#include "judge/sheet_words.h"
#include "limits/words.h"

namespace model {
namespace {

Canonical::Array canonicalOf(const std::vector<Kind>& kinds) {
    Canonical::Array array;
    for (const Kind kind : kinds) array.emplace_back(word(kind));
    return array;
}

Canonical::Object canonicalOf(const std::map<std::string, std::string>& levels) {
    Canonical::Object object;
    for (const auto& [key, level] : levels) object[key] = level;
    return object;
}

Canonical::Object canonicalOf(const SurfacePlace& surface) {
    Canonical::Object object;
    object["id"] = surface.id;
    object["x_nm"] = surface.placement.x.millionths();
    object["y_nm"] = surface.placement.y.millionths();
    object["angle_millionth_deg"] = surface.placement.angle.millionths();
    object["width_nm"] = surface.width.millionths();
    object["height_nm"] = surface.height.millionths();
    if (surface.period) object["period_nm"] = surface.period->millionths();
    return object;
}

Canonical::Object canonicalOf(const RequiredTest& test) {
    Canonical::Object object;
    object["method"] = word(test.method);
    object["stage"] = word(test.stage);
    object["table"] = test.table;
    object["levels"] = canonicalOf(test.levels);
    return object;
}

Canonical::Object canonicalOf(const PlannedZone& zone) {
    Canonical::Object object;
    object["name"] = zone.name;
    object["description"] = zone.description;
    object["width_nm"] = zone.width.millionths();
    object["height_nm"] = zone.height.millionths();
    object["thickness_nm"] = zone.thickness.millionths();
    if (zone.surface) object["surface"] = canonicalOf(*zone.surface);
    Canonical::Array tests;
    for (const RequiredTest& test : zone.tests) tests.emplace_back(canonicalOf(test));
    object["tests"] = std::move(tests);
    object.merge(detailsOf(zone));
    return object;
}

Canonical::Object canonicalOf(const UltrasonicTest& test) {
    Canonical::Object object;
    if (test.zoneArea) object["zone_area_millionth_mm2"] = test.zoneArea->millionths();
    if (test.testability) {
        const auto& [smallestFbh, signalToNoise] = *test.testability;
        Canonical::Object testability;
        if (smallestFbh) testability["smallest_fbh_nm"] = smallestFbh->millionths();
        if (signalToNoise)
            testability["signal_to_noise_millionth_db"] = signalToNoise->millionths();
        object["testability"] = std::move(testability);
    }
    if (test.deadZone) object["dead_zone_nm"] = test.deadZone->millionths();
    if (test.directions.empty()) return object;
    Canonical::Array directions;
    for (const std::string& direction : test.directions) directions.emplace_back(direction);
    object["directions"] = std::move(directions);
    return object;
}

}  // namespace

Canonical::Object canonicalOf(const Order& order) {
    Canonical::Object object;
    object["number"] = order.number;
    object["customer"] = order.customer;
    object["customer_order"] = order.customerOrder;
    object["certificate_type"] = order.certificateType;
    object["language"] = order.language;
    object["forbidden_kinds"] = canonicalOf(order.forbiddenKinds);
    object["decision_rule"] = order.decisionRule;
    object["rounding_rule"] = order.roundingRule;
    object["remarks"] = order.remarks;
    if (auto terms = canonicalOf(order.terms); !terms.empty()) object["terms"] = std::move(terms);
    return object;
}

Canonical::Object canonicalOf(const Part& part) {
    Canonical::Object object;
    object["number"] = part.number;
    object["description"] = part.description;
    object["drawing"] = part.drawing;
    object["drawing_revision"] = part.drawingRevision;
    object["material"] = word(part.material);
    object["material_grade"] = part.materialGrade;
    object.merge(detailsOf(part));
    return object;
}

Canonical::Object canonicalOf(const ZonePlan& plan) {
    Canonical::Object object;
    object["part"] = plan.part;
    object["revision"] = plan.revision;
    Canonical::Array zones;
    for (const PlannedZone& zone : plan.zones) zones.emplace_back(canonicalOf(zone));
    object["zones"] = std::move(zones);
    return object;
}

Canonical::Object canonicalOf(const Casting& casting) {
    Canonical::Object object;
    object["serial"] = casting.serial;
    object["heat"] = casting.heat;
    object["order"] = casting.order;
    object["part"] = casting.part;
    object["zone_plan_revision"] = casting.zonePlanRevision;
    object.merge(detailsOf(casting));
    return object;
}

Canonical::Object canonicalHeader(const ExaminationDraft& draft) {
    const Examination& header = draft.header;
    Canonical::Object object;
    object["casting"] = draft.casting;
    object["zone"] = header.zone;
    object["method"] = word(header.method);
    object["stage"] = word(header.stage);
    object["repair_cycle"] = header.repairCycle;
    object["repeat"] = header.repeat;
    object["thickness_nm"] = header.thickness.millionths();
    if (header.surface) object["surface"] = canonicalOf(*header.surface);
    object["table"] = header.table;
    object["levels"] = canonicalOf(header.levels);
    object["forbidden_kinds"] = canonicalOf(header.forbiddenKinds);
    object["no_indications"] = header.noIndications;
    Canonical::Array areas;
    for (const NotExamined& area : header.notExamined) {
        Canonical::Object entry;
        entry["area_millionth_mm2"] = area.area.millionths();
        entry["reason"] = area.reason;
        entry["agreed"] = area.agreed;
        areas.emplace_back(std::move(entry));
    }
    object["not_examined"] = std::move(areas);
    // Left out where it is empty, as the rows of earlier schemas have none.
    if (auto ultrasonic = canonicalOf(header.ultrasonic); !ultrasonic.empty())
        object["ultrasonic"] = std::move(ultrasonic);
    object["examined_by"] = draft.examinedBy;
    object["examined_on"] = draft.examinedOn;
    object["procedure"] = draft.procedure;
    object["remarks"] = draft.remarks;
    return object;
}

Canonical::Object canonicalOf(const IssueFacts& facts) {
    Canonical::Object object;
    object["serial"] = facts.serial;
    object["heat"] = facts.heat;
    object["part"] = facts.part;
    object["order"] = facts.order;
    object["customer"] = facts.customer;
    object["customer_order"] = facts.customerOrder;
    object["certificate_type"] = facts.type;
    object["language"] = facts.language;
    object["verdict"] = word(facts.verdict);
    Canonical::Array tables;
    for (const std::string& digest : facts.tableDigests) tables.emplace_back(digest);
    object["limit_tables"] = std::move(tables);
    if (facts.printedHead) object["printed_head"] = toText(*facts.printedHead);
    if (facts.supersedes) object["supersedes"] = *facts.supersedes;
    if (!facts.series.empty()) object["series"] = facts.series;
    return object;
}

Canonical::Object canonicalOf(const Certificate& certificate) {
    Canonical::Object object = canonicalOf(certificate.facts);
    object["file_sha256"] = certificate.fileDigest;
    object["file_bytes"] = certificate.fileSize;
    return object;
}

}  // namespace model
