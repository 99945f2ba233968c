// SPDX-License-Identifier: Apache-2.0
#include "exchange/ultrasonic_fields.h"

#include <algorithm>
#include <optional>
#include <string_view>

#include "judge/sheet_words.h"
#include "limits/words.h"

namespace model {
namespace {

constexpr std::size_t kMostKinds = 100;

std::optional<Kind> ultrasonicKindFrom(std::string_view word) {
    const std::optional<Kind> kind = kindFrom(word);
    return kind && isUltrasonic(*kind) ? kind : std::nullopt;
}

/// A dimension that may be not measurable: its word, its field, and where it is kept.
struct Dimension {
    std::string_view word;
    const char* field;
    std::optional<Length> Reflector::*value;
    bool Reflector::*notMeasurable;
};
constexpr Dimension kDimensions[] = {
    {"length", "length_mm", &Reflector::length, &Reflector::lengthNotMeasurable},
    {"width", "width_mm", &Reflector::width, &Reflector::widthNotMeasurable},
    {"through_wall", "through_wall_mm", &Reflector::throughWall,
     &Reflector::throughWallNotMeasurable}};

void readNotMeasurable(const JsonFields& in, Reflector& reflector) {
    if (!in.has("not_measurable")) return;
    std::size_t index = 0;
    for (const std::string& given : in.texts("not_measurable", std::size(kDimensions))) {
        const std::string path = elementPath(in.pathOf("not_measurable"), index++);
        const auto* const known = std::ranges::find(kDimensions, given, &Dimension::word);
        if (known == std::end(kDimensions)) {
            in.problem().report(path, "\"%1\" is not a word for it", {given});
            continue;
        }
        if (reflector.*known->notMeasurable)
            in.problem().report(path, "\"%1\" stands there already", {given});
        if (reflector.*known->value)
            in.problem().report(path, "\"%1\" is not measurable, but %2 gives it",
                                {given, known->field});
        reflector.*known->notMeasurable = true;
    }
}

}  // namespace

UltrasonicTest readUltrasonicTest(const JsonFields& in) {
    UltrasonicTest test;
    test.zoneArea = in.optionalQuantity<Area>("zone_area_mm2", Sign::Positive);
    if (const JsonValue* given = in.find("testability")) {
        const JsonFields fields(*given, in.pathOf("testability"), in.problem(),
                                {"smallest_fbh_mm", "signal_to_noise_db"});
        test.testability.emplace();
        test.testability->smallestFbh =
            fields.optionalQuantity<Length>("smallest_fbh_mm", Sign::Positive);
        test.testability->signalToNoise =
            fields.optionalQuantity<GainStep>("signal_to_noise_db", Sign::Any);
    }
    test.deadZone = in.optionalQuantity<Length>("dead_zone_mm", Sign::NotNegative);
    if (!in.has("directions")) return test;
    test.directions = in.texts("directions", kMostDirections);
    for (std::size_t i = 0; i < test.directions.size(); ++i) {
        const std::string& direction = test.directions[i];
        const std::string path = elementPath(in.pathOf("directions"), i);
        if (direction.find_first_not_of(" \t\r\n") == std::string::npos)
            in.problem().report(path, "must not be empty");
        const auto end = test.directions.begin() + static_cast<std::ptrdiff_t>(i);
        // The same direction twice covers no dead zone.
        if (std::find(test.directions.begin(), end, direction) != end)
            in.problem().report(path, "\"%1\" stands there already", {direction});
    }
    return test;
}

Reflector readReflector(const JsonValue& value, const std::string& path, JsonProblem& problem) {
    const JsonFields in(
        value, path, problem,
        {"id", "x_mm", "y_mm", "depth_mm", "fbh_mm", "length_mm", "width_mm", "through_wall_mm",
         "angle_deg", "area_mm2", "back_wall_loss_db", "back_wall_loss_explained",
         "over_reference_db", "wall_mm", "not_measurable", "kind", "relevance", "reason"});
    Reflector reflector;
    reflector.id = in.filledText("id");
    reflector.x = in.quantity<Length>("x_mm", Sign::Any);
    reflector.y = in.quantity<Length>("y_mm", Sign::Any);
    reflector.depth = in.optionalQuantity<Length>("depth_mm", Sign::NotNegative);
    reflector.fbh = in.optionalQuantity<Length>("fbh_mm", Sign::Positive);
    for (const Dimension& dimension : kDimensions)
        reflector.*dimension.value = in.optionalQuantity<Length>(dimension.field, Sign::Positive);
    if (in.has("angle_deg")) reflector.angle = in.quantity<Angle>("angle_deg", Sign::Any);
    reflector.area = in.optionalQuantity<Area>("area_mm2", Sign::Positive);
    reflector.backWallLoss = in.optionalQuantity<GainStep>("back_wall_loss_db", Sign::NotNegative);
    if (in.has("back_wall_loss_explained")) {
        reflector.backWallLossExplained = in.filledText("back_wall_loss_explained");
        if (!reflector.backWallLoss)
            in.report("back_wall_loss_explained",
                      "explains a loss that back_wall_loss_db does not give");
    }
    reflector.overReference = in.optionalQuantity<GainStep>("over_reference_db", Sign::Any);
    reflector.wall = in.optionalQuantity<Length>("wall_mm", Sign::Positive);
    readNotMeasurable(in, reflector);
    if (in.has("kind")) reflector.kind = in.word("kind", ultrasonicKindFrom);
    if (in.has("relevance")) reflector.relevance = in.word("relevance", relevanceFrom);
    if (in.has("reason")) reflector.reason = in.text("reason");
    if (reflector.relevance != Relevance::Relevant) in.filledText("reason");
    if (reflector.length && reflector.width && *reflector.width > *reflector.length)
        in.report("width_mm", "is %1, above length_mm, which is %2",
                  {toText(*reflector.width), toText(*reflector.length)});
    return reflector;
}

std::vector<Kind> readUltrasonicKinds(const JsonFields& in) {
    std::vector<Kind> kinds;
    if (!in.has("forbidden_kinds")) return kinds;
    for (const std::string& text : in.texts("forbidden_kinds", kMostKinds)) {
        const std::optional<Kind> kind = ultrasonicKindFrom(text);
        if (!kind)
            in.problem().report(elementPath(in.pathOf("forbidden_kinds"), kinds.size()),
                                "\"%1\" is not a word for it", {text});
        kinds.push_back(kind.value_or(Kind::Planar));
    }
    return kinds;
}

void addIfGiven(JsonValue::Members& members, const char* name, const std::string& text) {
    if (!text.empty()) members.push_back({name, JsonValue::string(text)});
}

void addUltrasonicTest(JsonValue::Members& members, const UltrasonicTest& test) {
    addIfGiven(members, "zone_area_mm2", test.zoneArea);
    if (test.testability) {
        JsonValue::Members stated;
        addIfGiven(stated, "smallest_fbh_mm", test.testability->smallestFbh);
        addIfGiven(stated, "signal_to_noise_db", test.testability->signalToNoise);
        members.push_back({"testability", JsonValue::object(std::move(stated))});
    }
    addIfGiven(members, "dead_zone_mm", test.deadZone);
    members.push_back({"directions", JsonValue::strings(test.directions)});
}

JsonValue reflectorToJson(const Reflector& reflector) {
    JsonValue::Members members{{"id", JsonValue::string(reflector.id)},
                               {"x_mm", JsonValue::number(reflector.x.millionths())},
                               {"y_mm", JsonValue::number(reflector.y.millionths())}};
    addIfGiven(members, "depth_mm", reflector.depth);
    addIfGiven(members, "fbh_mm", reflector.fbh);
    for (const Dimension& dimension : kDimensions)
        addIfGiven(members, dimension.field, reflector.*dimension.value);
    members.push_back({"angle_deg", JsonValue::number(reflector.angle.millionths())});
    addIfGiven(members, "area_mm2", reflector.area);
    addIfGiven(members, "back_wall_loss_db", reflector.backWallLoss);
    addIfGiven(members, "back_wall_loss_explained", reflector.backWallLossExplained);
    addIfGiven(members, "over_reference_db", reflector.overReference);
    addIfGiven(members, "wall_mm", reflector.wall);
    JsonValue::Elements notMeasurable;
    for (const Dimension& dimension : kDimensions)
        if (reflector.*dimension.notMeasurable)
            notMeasurable.push_back(JsonValue::string(dimension.word));
    if (!notMeasurable.empty())
        members.push_back({"not_measurable", JsonValue::array(std::move(notMeasurable))});
    if (reflector.kind) members.push_back({"kind", JsonValue::string(word(*reflector.kind))});
    members.push_back({"relevance", JsonValue::string(word(reflector.relevance))});
    addIfGiven(members, "reason", reflector.reason);
    return JsonValue::object(std::move(members));
}

}  // namespace model
