// SPDX-License-Identifier: Apache-2.0
#include "demo_db/scenario.h"

#include <algorithm>
#include <optional>
#include <string_view>
#include <utility>

#include "demo_db/scenario_files.h"
#include "demo_db/ultrasonic_fields.h"
#include "exchange/json_document.h"
#include "exchange/json_fields.h"
#include "judge/sheet_words.h"
#include "limits/words.h"

namespace demo {
namespace {

using model::Angle;
using model::Area;
using model::JsonFields;
using model::JsonProblem;
using model::JsonValue;
using model::Length;
using model::Sign;

constexpr std::size_t kMost = 100;  // of anything in one list

/// Reads one commission's file; the first thing wrong is kept in `problem`.
class CommissionReader {
public:
    explicit CommissionReader(JsonProblem& problem) : problem_(problem) {}

    Commission read(const JsonValue& document) {
        const JsonFields in(document, "", problem_,
                            {"commission", "order", "part", "zone_plan", "castings"});
        commission_.title = in.filledText("commission");
        if (const JsonValue* order = in.required("order")) readOrder(*order);
        if (const JsonValue* part = in.required("part")) readPart(*part);
        if (const JsonValue* plan = in.required("zone_plan")) readPlan(*plan);
        std::size_t index = 0;
        for (const JsonValue& casting : in.array("castings", kMost))
            readCasting(casting, model::elementPath("castings", index++));
        return std::move(commission_);
    }

private:
    void readOrder(const JsonValue& value) {
        const JsonFields in(
            value, "order", problem_,
            {"number", "entered_on", "entered_by", "customer", "customer_order", "certificate_type",
             "language", "forbidden_kinds", "decision_rule", "rounding_rule", "remarks", "terms"});
        model::Order& order = commission_.order;
        order.number = in.filledText("number");
        order.customer = in.filledText("customer");
        order.customerOrder = in.filledText("customer_order");
        order.certificateType = in.filledText("certificate_type");
        order.language = in.filledText("language");
        for (const std::string& text : in.texts("forbidden_kinds", kMost)) {
            const std::optional<model::Kind> kind = model::kindFrom(text);
            if (!kind) in.report("forbidden_kinds", "\"%1\" is not a kind", {text});
            order.forbiddenKinds.push_back(kind.value_or(model::Kind::Unknown));
        }
        order.decisionRule = in.filledText("decision_rule");
        order.roundingRule = in.filledText("rounding_rule");
        order.remarks = in.text("remarks");
        if (in.has("terms")) order.terms = readObject(in, "terms", model::orderTermsFrom);
        commission_.enteredOn = in.filledText("entered_on");
        commission_.enteredBy = in.filledText("entered_by");
    }

    void readPart(const JsonValue& value) {
        const JsonFields in(value, "part", problem_,
                            {"number", "description", "drawing", "drawing_revision", "material",
                             "material_grade", "pattern", "mass"});
        model::Part& part = commission_.part;
        part.number = in.filledText("number");
        part.description = in.filledText("description");
        part.drawing = in.filledText("drawing");
        part.drawingRevision = in.filledText("drawing_revision");
        part.material = in.word("material", model::materialFrom);
        part.materialGrade = in.filledText("material_grade");
        if (in.has("pattern")) part.pattern = in.filledText("pattern");
        if (in.has("mass")) part.mass = in.filledText("mass");
    }

    void readPlan(const JsonValue& value) {
        const JsonFields in(value, "zone_plan", problem_, {"revision", "zones"});
        commission_.plan.part = commission_.part.number;
        commission_.plan.revision = in.count("revision");
        std::size_t index = 0;
        for (const JsonValue& zone : in.array("zones", kMost))
            commission_.plan.zones.push_back(
                readZone(zone, model::elementPath("zone_plan.zones", index++)));
    }

    model::PlannedZone readZone(const JsonValue& value, const std::string& path) {
        const JsonFields in(value, path, problem_,
                            {"name", "description", "width_mm", "height_mm", "thickness_mm",
                             "surface", "tests", "drawing_minimum_mm", "other_tests"});
        model::PlannedZone zone;
        zone.name = in.filledText("name");
        zone.description = in.filledText("description");
        zone.width = in.quantity<Length>("width_mm", Sign::Positive);
        zone.height = in.quantity<Length>("height_mm", Sign::Positive);
        zone.thickness = in.quantity<Length>("thickness_mm", Sign::Positive);
        if (const JsonValue* given = in.find("surface")) {
            const JsonFields surface(*given, in.pathOf("surface"), problem_,
                                     {"id", "x_mm", "y_mm", "angle_deg", "period_x_mm"});
            zone.surface = model::SurfacePlace{
                surface.filledText("id"),
                {surface.quantity<Length>("x_mm", Sign::Any),
                 surface.quantity<Length>("y_mm", Sign::Any),
                 surface.quantity<Angle>("angle_deg", Sign::Any)},
                zone.width,
                zone.height,
                surface.optionalQuantity<Length>("period_x_mm", Sign::Positive)};
        }
        zone.drawingMinimum = in.optionalQuantity<Length>("drawing_minimum_mm", Sign::Positive);
        if (in.has("other_tests")) zone.otherTests = in.texts("other_tests", kMost);
        std::size_t index = 0;
        for (const JsonValue& test : in.array("tests", kMost))
            zone.tests.push_back(readTest(test, model::elementPath(in.pathOf("tests"), index++)));
        return zone;
    }

    model::RequiredTest readTest(const JsonValue& value, const std::string& path) {
        const JsonFields in(value, path, problem_, {"method", "stage", "table", "levels"});
        model::RequiredTest test;
        test.method = in.word("method", model::methodFrom);
        test.stage = in.word("stage", model::stageFrom);
        test.table = in.filledText("table");
        const JsonValue* levels = in.required("levels");
        if (levels != nullptr && levels->type() == JsonValue::Type::Object) {
            std::vector<std::string_view> keys;
            for (const auto& [key, level] : levels->members()) keys.emplace_back(key);
            const JsonFields fields(*levels, in.pathOf("levels"), problem_, keys);
            for (const std::string_view key : keys)
                test.levels.emplace(key, fields.filledText(key));
        } else if (levels != nullptr) {
            in.report("levels", "must be an object");
        }
        return test;
    }

    void readCasting(const JsonValue& value, const std::string& path) {
        const JsonFields in(value, path, problem_,
                            {"serial", "heat", "cast_on", "entered_by", "examinations", "marking",
                             "condition_on_receipt", "dossier"});
        ScenarioCasting casting;
        casting.casting = {in.filledText("serial"), in.filledText("heat"), commission_.order.number,
                           commission_.part.number, commission_.plan.revision};
        if (in.has("marking")) casting.casting.marking = in.filledText("marking");
        if (in.has("condition_on_receipt"))
            casting.casting.conditionOnReceipt = in.filledText("condition_on_receipt");
        casting.castOn = in.filledText("cast_on");
        casting.enteredBy = in.filledText("entered_by");
        std::size_t index = 0;
        for (const JsonValue& examination : in.array("examinations", kMost)) {
            casting.examinations.push_back(readExamination(
                examination, model::elementPath(in.pathOf("examinations"), index++)));
            casting.examinations.back().draft.casting = casting.casting.serial;
        }
        if (in.has("dossier"))
            for (const JsonValue& entry : in.array("dossier", kMost))
                casting.dossier.push_back(readRegisterEntry(
                    entry, model::elementPath(in.pathOf("dossier"), casting.dossier.size()),
                    casting.casting.serial, problem_));
        commission_.castings.push_back(std::move(casting));
    }

    SituatedExamination readExamination(const JsonValue& value, const std::string& path) {
        const JsonFields in(
            value, path, problem_,
            {"situation", "zone", "method", "repair_cycle", "thickness_mm", "unit", "examined_by",
             "examined_on", "procedure", "remarks", "no_indications", "not_examined", "rows",
             "ultrasonic", "settings", "reflectors", "conditions"});
        SituatedExamination read;
        read.situation = in.filledText("situation");
        model::ExaminationDraft& draft = read.draft;
        readPlanned(in, draft.header);
        if (in.has("repair_cycle")) draft.header.repairCycle = in.count("repair_cycle");
        if (in.has("thickness_mm"))
            draft.header.thickness = in.quantity<Length>("thickness_mm", Sign::Positive);
        if (in.has("no_indications")) draft.header.noIndications = in.boolean("no_indications");
        if (in.has("not_examined")) readNotExamined(in, draft.header);
        draft.examinedBy = in.filledText("examined_by");
        draft.examinedOn = in.filledText("examined_on");
        draft.procedure = in.filledText("procedure");
        draft.remarks = in.text("remarks");
        if (in.has("conditions"))
            draft.conditions = readObject(in, "conditions", model::testConditionsFrom);
        const model::LengthUnit unit = readUnit(in);
        if (in.has("rows")) {
            std::size_t index = 0;
            for (const JsonValue& row : in.array("rows", kMost)) {
                draft.rows.push_back(readRow(row, model::elementPath(in.pathOf("rows"), index++)));
                draft.rows.back().unit = unit;
            }
        }
        readUltrasonic(in, problem_, unit, draft);
        return read;
    }

    /// What `from` makes of a member's texts.
    template <class Value>
    static Value readObject(const JsonFields& in, std::string_view name,
                            std::optional<Value> (*from)(const model::Canonical::Object&)) {
        const model::Canonical fields = canonicalFrom(in, name);
        std::optional<Value> value =
            fields.object() == nullptr ? std::nullopt : from(*fields.object());
        if (!value) in.report(name, "has members that it cannot have");
        return value.value_or(Value{});
    }

    /// What the zone plan says about the zone and the method of an examination.
    void readPlanned(const JsonFields& in, model::Examination& header) {
        header.zone = in.filledText("zone");
        header.method = in.word("method", model::methodFrom);
        const auto& zones = commission_.plan.zones;
        const auto zone = std::ranges::find(zones, header.zone, &model::PlannedZone::name);
        if (zone == zones.end()) {
            in.report("zone", "is not in the zone plan: %1", {header.zone});
            return;
        }
        header.thickness = zone->thickness;
        header.surface = zone->surface;
        const auto test =
            std::ranges::find(zone->tests, header.method, &model::RequiredTest::method);
        if (test == zone->tests.end()) {
            in.report("method", "is not planned for zone %1", {header.zone});
            return;
        }
        header.stage = test->stage;
        header.table = test->table;
        header.levels = test->levels;
    }

    void readNotExamined(const JsonFields& in, model::Examination& header) {
        std::size_t index = 0;
        for (const JsonValue& value : in.array("not_examined", kMost)) {
            const JsonFields area(value, model::elementPath(in.pathOf("not_examined"), index++),
                                  problem_, {"area_mm2", "reason", "agreed"});
            header.notExamined.push_back({area.quantity<Area>("area_mm2", Sign::Positive),
                                          area.filledText("reason"), area.text("agreed")});
        }
    }

    static model::LengthUnit readUnit(const JsonFields& in) {
        if (!in.has("unit")) return model::LengthUnit::Millimetre;
        const std::string unit = in.text("unit");
        if (unit == model::symbol(model::LengthUnit::Inch)) return model::LengthUnit::Inch;
        if (unit != model::symbol(model::LengthUnit::Millimetre))
            in.report("unit", "must be mm or in, not: %1", {unit});
        return model::LengthUnit::Millimetre;
    }

    model::TypedIndication readRow(const JsonValue& value, const std::string& path) {
        const JsonFields in(value, path, problem_,
                            {"id", "x", "y", "length", "width", "angle", "area", "kind", "stated",
                             "removed", "relevance", "reason"});
        const auto typed = [&](std::string_view name) {
            return in.has(name) ? in.text(name) : std::string();
        };
        model::TypedIndication row;
        row.id = typed("id");
        row.x = typed("x");
        row.y = typed("y");
        row.length = typed("length");
        row.width = typed("width");
        row.angle = typed("angle");
        row.area = typed("area");
        row.kind = typed("kind");
        row.stated = typed("stated");
        row.removed = typed("removed");
        row.relevance = typed("relevance");
        row.reason = typed("reason");
        return row;
    }

    JsonProblem& problem_;
    Commission commission_;
};

model::Result<Commission> readCommission(const model::EmbeddedFile& file) {
    const std::string name(file.name);
    const model::Result<JsonValue> document = model::parseJson(file.text, name);
    if (!document) return document.error();
    JsonProblem problem(name);
    Commission commission = CommissionReader(problem).read(*document);
    if (problem.first()) return *problem.first();
    return commission;
}

}  // namespace

model::Result<std::vector<Commission>> readScenario() {
    std::vector<Commission> commissions;
    for (const model::EmbeddedFile& file : scenarioFiles()) {
        model::Result<Commission> commission = readCommission(file);
        if (!commission) return commission.error();
        commissions.push_back(std::move(*commission));
    }
    return commissions;
}

}  // namespace demo
