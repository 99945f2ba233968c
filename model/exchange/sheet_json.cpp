// SPDX-License-Identifier: Apache-2.0
#include "exchange/sheet_json.h"

#include "exchange/json_fields.h"
#include "exchange/ultrasonic_fields.h"
#include "judge/sheet_words.h"
#include "limits/words.h"

namespace model {
namespace {

constexpr std::size_t kMostKinds = 100;
constexpr std::size_t kMostAreas = 10'000;

/// The words for what is found on a surface.
std::optional<Kind> surfaceKindFrom(std::string_view word) {
    const std::optional<Kind> kind = kindFrom(word);
    return kind && !isUltrasonic(*kind) ? kind : std::nullopt;
}

SheetCasting readCasting(const JsonValue& value, const std::string& path, JsonProblem& problem) {
    const JsonFields in(value, path, problem, {"serial", "heat", "part", "drawing", "material"});
    SheetCasting casting;
    casting.serial = in.text("serial");
    casting.heat = in.text("heat");
    casting.part = in.text("part");
    casting.drawing = in.text("drawing");
    casting.material = in.word("material", materialFrom);
    return casting;
}

SurfacePlace readSurface(const JsonValue& value, const std::string& path, JsonProblem& problem) {
    const JsonFields in(
        value, path, problem,
        {"id", "x_mm", "y_mm", "angle_deg", "width_mm", "height_mm", "period_x_mm"});
    SurfacePlace surface;
    surface.id = in.filledText("id");
    surface.placement.x = in.quantity<Length>("x_mm", Sign::Any);
    surface.placement.y = in.quantity<Length>("y_mm", Sign::Any);
    surface.placement.angle = in.quantity<Angle>("angle_deg", Sign::Any);
    surface.width = in.quantity<Length>("width_mm", Sign::Positive);
    surface.height = in.quantity<Length>("height_mm", Sign::Positive);
    surface.period = in.optionalQuantity<Length>("period_x_mm", Sign::Positive);
    return surface;
}

std::map<std::string, std::string> readLevels(const JsonFields& in) {
    std::map<std::string, std::string> levels;
    const JsonValue* given = in.required("levels");
    if (given == nullptr) return levels;
    if (given->type() != JsonValue::Type::Object) {
        in.report("levels", "must be an object, not %1", {std::string(typeName(given->type()))});
        return levels;
    }
    // Which keys there are is the limit table's to say.
    for (const auto& [key, level] : given->members()) {
        const std::string path = memberPath(in.pathOf("levels"), key);
        if (level.type() != JsonValue::Type::String)
            in.problem().report(path, "must be a string, not %1",
                                {std::string(typeName(level.type()))});
        else
            levels.emplace(key, level.string());
    }
    return levels;
}

std::vector<Kind> readForbiddenKinds(const JsonFields& in) {
    std::vector<Kind> kinds;
    if (!in.has("forbidden_kinds")) return kinds;
    for (const std::string& text : in.texts("forbidden_kinds", kMostKinds)) {
        const std::optional<Kind> kind = surfaceKindFrom(text);
        const std::string path = elementPath(in.pathOf("forbidden_kinds"), kinds.size());
        if (!kind) in.problem().report(path, "\"%1\" is not a word for it", {text});
        if (kind == Kind::Unknown)
            in.problem().report(path, "cannot be \"unknown\": name the kinds that are forbidden");
        kinds.push_back(kind.value_or(Kind::Unknown));
    }
    return kinds;
}

std::vector<NotExamined> readNotExamined(const JsonFields& in) {
    std::vector<NotExamined> areas;
    if (!in.has("not_examined")) return areas;
    for (const JsonValue& value : in.array("not_examined", kMostAreas)) {
        const JsonFields area(value, elementPath(in.pathOf("not_examined"), areas.size()),
                              in.problem(), {"area_mm2", "reason", "agreed"});
        NotExamined& read = areas.emplace_back();
        read.area = area.quantity<Area>("area_mm2", Sign::Positive);
        read.reason = area.filledText("reason");
        if (area.has("agreed")) read.agreed = area.text("agreed");
        // An agreement without a number is none.
        if (read.agreed.find_first_not_of(" \t\r\n") == std::string::npos) read.agreed.clear();
    }
    return areas;
}

std::optional<Objection> readObjection(const JsonFields& in, std::string_view name) {
    const JsonValue* value = in.find(name);
    if (value == nullptr) return std::nullopt;
    const JsonFields objection(*value, in.pathOf(name), in.problem(), {"by", "reason"});
    return Objection{objection.filledText("by"), objection.filledText("reason")};
}

Indication readIndication(const JsonValue& value, const std::string& path, JsonProblem& problem) {
    const JsonFields in(value, path, problem,
                        {"id", "x_mm", "y_mm", "length_mm", "width_mm", "angle_deg", "area_mm2",
                         "kind", "class", "removed_mm", "relevance", "reason"});
    Indication indication;
    indication.id = in.filledText("id");
    indication.x = in.quantity<Length>("x_mm", Sign::Any);
    indication.y = in.quantity<Length>("y_mm", Sign::Any);
    indication.length = in.quantity<Length>("length_mm", Sign::Positive);
    indication.width = in.optionalQuantity<Length>("width_mm", Sign::Positive);
    if (in.has("angle_deg")) indication.angle = in.quantity<Angle>("angle_deg", Sign::Any);
    indication.area = in.optionalQuantity<Area>("area_mm2", Sign::Positive);
    if (in.has("kind")) indication.kind = in.word("kind", surfaceKindFrom);
    if (in.has("class")) indication.stated = in.word("class", statedClassFrom);
    indication.removed = in.optionalQuantity<Length>("removed_mm", Sign::Positive);
    if (in.has("relevance")) indication.relevance = in.word("relevance", relevanceFrom);
    if (in.has("reason")) indication.reason = in.text("reason");

    if (indication.width && *indication.width > indication.length)
        in.report("width_mm", "is %1, above length_mm, which is %2",
                  {toText(*indication.width), toText(indication.length)});
    if (!indication.width && indication.stated != StatedClass::Linear)
        in.report("width_mm", "is missing; only with \"class\": \"linear\" may it be");
    if (indication.relevance != Relevance::Relevant) in.filledText("reason");
    return indication;
}

void readIndications(const JsonFields& in, Examination& examination) {
    std::size_t index = 0;
    for (const JsonValue& value : in.array("indications", kMostIndications)) {
        const std::string path = elementPath(in.pathOf("indications"), index++);
        if (examination.method == Method::Ultrasonic)
            examination.reflectors.push_back(readReflector(value, path, in.problem()));
        else
            examination.indications.push_back(readIndication(value, path, in.problem()));
        if (in.problem().first()) return;
    }
    if (examination.noIndications && index > 0)
        in.report("no_indications", "is true, but indications are listed");
}

/// The method of an examination that may be anything; what is wrong with it is reported later.
std::optional<Method> methodOf(const JsonValue& examination) {
    if (examination.type() != JsonValue::Type::Object) return std::nullopt;
    const JsonValue* method = examination.find("method");
    if (method == nullptr || method->type() != JsonValue::Type::String) return std::nullopt;
    return methodFrom(method->string());
}

Examination readExamination(const JsonValue& value, const std::string& path, JsonProblem& problem) {
    const bool ultrasonic = methodOf(value) == Method::Ultrasonic;
    std::vector<std::string_view> allowed{
        "zone",           "method",       "stage",    "repair_cycle", "repeat",
        "thickness_mm",   "surface",      "table",    "levels",       "forbidden_kinds",
        "no_indications", "not_examined", "rejected", "invalid",      "indications"};
    if (ultrasonic)
        allowed.insert(allowed.end(),
                       {"zone_area_mm2", "testability", "dead_zone_mm", "directions"});
    const JsonFields in(value, path, problem, allowed);

    Examination examination;
    examination.zone = in.filledText("zone");
    examination.method = in.word("method", methodFrom);
    examination.stage = in.word("stage", stageFrom);
    if (in.has("repair_cycle")) examination.repairCycle = in.count("repair_cycle");
    if (in.has("repeat")) examination.repeat = in.count("repeat");
    examination.thickness = in.quantity<Length>("thickness_mm", Sign::Positive);
    if (const JsonValue* surface = in.find("surface"))
        examination.surface = readSurface(*surface, in.pathOf("surface"), problem);
    examination.table = in.filledText("table");
    examination.levels = readLevels(in);
    if (in.has("no_indications")) examination.noIndications = in.boolean("no_indications");
    examination.notExamined = readNotExamined(in);
    examination.rejected = readObjection(in, "rejected");
    examination.invalid = readObjection(in, "invalid");
    if (ultrasonic) {
        examination.forbiddenKinds = readUltrasonicKinds(in);
        examination.ultrasonic = readUltrasonicTest(in);
    } else {
        examination.forbiddenKinds = readForbiddenKinds(in);
    }
    readIndications(in, examination);
    return examination;
}

// Writing.

JsonValue number(std::int64_t millionths) {
    return JsonValue::number(millionths);
}

JsonValue surfaceToJson(const SurfacePlace& surface) {
    JsonValue::Members members{{"id", JsonValue::string(surface.id)},
                               {"x_mm", number(surface.placement.x.millionths())},
                               {"y_mm", number(surface.placement.y.millionths())},
                               {"angle_deg", number(surface.placement.angle.millionths())},
                               {"width_mm", number(surface.width.millionths())},
                               {"height_mm", number(surface.height.millionths())}};
    addIfGiven(members, "period_x_mm", surface.period);
    return JsonValue::object(std::move(members));
}

JsonValue indicationToJson(const Indication& indication) {
    JsonValue::Members members{{"id", JsonValue::string(indication.id)},
                               {"x_mm", number(indication.x.millionths())},
                               {"y_mm", number(indication.y.millionths())},
                               {"length_mm", number(indication.length.millionths())}};
    addIfGiven(members, "width_mm", indication.width);
    members.push_back({"angle_deg", number(indication.angle.millionths())});
    addIfGiven(members, "area_mm2", indication.area);
    if (indication.kind) members.push_back({"kind", JsonValue::string(word(*indication.kind))});
    if (indication.stated)
        members.push_back({"class", JsonValue::string(word(*indication.stated))});
    addIfGiven(members, "removed_mm", indication.removed);
    members.push_back({"relevance", JsonValue::string(word(indication.relevance))});
    addIfGiven(members, "reason", indication.reason);
    return JsonValue::object(std::move(members));
}

JsonValue areaToJson(const NotExamined& area) {
    JsonValue::Members members{{"area_mm2", number(area.area.millionths())},
                               {"reason", JsonValue::string(area.reason)}};
    addIfGiven(members, "agreed", area.agreed);
    return JsonValue::object(std::move(members));
}

JsonValue examinationToJson(const Examination& examination) {
    JsonValue::Members members{{"zone", JsonValue::string(examination.zone)},
                               {"method", JsonValue::string(word(examination.method))},
                               {"stage", JsonValue::string(word(examination.stage))},
                               {"repair_cycle", JsonValue::count(examination.repairCycle)},
                               {"repeat", JsonValue::count(examination.repeat)},
                               {"thickness_mm", number(examination.thickness.millionths())}};
    if (examination.surface) members.push_back({"surface", surfaceToJson(*examination.surface)});
    members.push_back({"table", JsonValue::string(examination.table)});
    JsonValue::Members levels;
    for (const auto& [key, level] : examination.levels)
        levels.push_back({key, JsonValue::string(level)});
    members.push_back({"levels", JsonValue::object(std::move(levels))});
    members.push_back(
        {"forbidden_kinds", JsonValue::arrayOf(examination.forbiddenKinds, [](Kind kind) {
             return JsonValue::string(word(kind));
         })});
    members.push_back({"no_indications", JsonValue::boolean(examination.noIndications)});
    members.push_back({"not_examined", JsonValue::arrayOf(examination.notExamined, areaToJson)});
    if (examination.rejected)
        members.push_back({"rejected", objectionToJson(*examination.rejected)});
    if (examination.invalid) members.push_back({"invalid", objectionToJson(*examination.invalid)});
    if (examination.method == Method::Ultrasonic) {
        addUltrasonicTest(members, examination.ultrasonic);
        members.push_back(
            {"indications", JsonValue::arrayOf(examination.reflectors, reflectorToJson)});
    } else {
        members.push_back(
            {"indications", JsonValue::arrayOf(examination.indications, indicationToJson)});
    }
    return JsonValue::object(std::move(members));
}

}  // namespace

Result<Sheet> sheetFromJson(const JsonValue& document, const std::string& file) {
    JsonProblem problem(file);
    const JsonFields in(document, "", problem, {"format", "casting", "examinations"});
    if (const std::string format = in.text("format"); format != kSheetFormat)
        in.report("format", "must be \"%1\", not \"%2\"", {std::string(kSheetFormat), format});
    Sheet sheet;
    if (const JsonValue* casting = in.required("casting"))
        sheet.casting = readCasting(*casting, in.pathOf("casting"), problem);
    for (const JsonValue& value : in.array("examinations", kMostExaminations)) {
        const std::string path = elementPath(in.pathOf("examinations"), sheet.examinations.size());
        sheet.examinations.push_back(readExamination(value, path, problem));
        if (problem.first()) return *problem.first();
    }
    if (problem.first()) return *problem.first();
    return sheet;
}

JsonValue objectionToJson(const Objection& objection) {
    return JsonValue::object(
        {{"by", JsonValue::string(objection.by)}, {"reason", JsonValue::string(objection.reason)}});
}

JsonValue sheetToJson(const Sheet& sheet) {
    const SheetCasting& casting = sheet.casting;
    return JsonValue::object(
        {{"format", JsonValue::string(kSheetFormat)},
         {"casting", JsonValue::object({{"serial", JsonValue::string(casting.serial)},
                                        {"heat", JsonValue::string(casting.heat)},
                                        {"part", JsonValue::string(casting.part)},
                                        {"drawing", JsonValue::string(casting.drawing)},
                                        {"material", JsonValue::string(word(casting.material))}})},
         {"examinations", JsonValue::arrayOf(sheet.examinations, examinationToJson)}});
}

}  // namespace model
