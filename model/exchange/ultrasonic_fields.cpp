// SPDX-License-Identifier: Apache-2.0
#include "exchange/ultrasonic_fields.h"

#include <optional>
#include <span>
#include <string_view>

#include "judge/sheet_words.h"

namespace model {
namespace {

constexpr std::string_view kKinds[] = {"volumetric", "planar", "dross"};
constexpr std::string_view kExtents[] = {"length", "width", "through_wall"};

void checkWords(const JsonFields& in, std::string_view name,
                std::span<const std::string_view> words) {
    if (!in.has(name)) return;
    std::size_t index = 0;
    for (const std::string& given : in.texts(name, words.size())) {
        bool known = false;
        for (const std::string_view word : words) known = known || word == given;
        const std::string path = elementPath(in.pathOf(name), index++);
        if (!known) in.problem().report(path, "\"%1\" is not a word for it", {given});
    }
}

void checkNumbers(const JsonFields& in, std::span<const std::string_view> names, Sign sign) {
    for (const std::string_view name : names)
        if (in.has(name)) in.number(name, sign);
}

std::optional<std::string_view> ultrasonicKindFrom(std::string_view word) {
    for (const std::string_view kind : kKinds)
        if (kind == word) return kind;
    return std::nullopt;
}

}  // namespace

void checkUltrasonicExamination(const JsonFields& in) {
    constexpr std::string_view kSizes[] = {"zone_area_mm2"};
    constexpr std::string_view kDepths[] = {"dead_zone_mm"};
    checkNumbers(in, kSizes, Sign::Positive);
    checkNumbers(in, kDepths, Sign::NotNegative);
    if (in.has("directions")) in.array("directions", 1'000);
    if (const JsonValue* given = in.find("testability")) {
        const JsonFields testability(*given, in.pathOf("testability"), in.problem(),
                                     {"smallest_fbh_mm", "signal_to_noise_db"});
        testability.number("smallest_fbh_mm", Sign::Positive);
        testability.number("signal_to_noise_db", Sign::Any);
    }
}

void checkUltrasonicIndication(const JsonValue& value, const std::string& path,
                               JsonProblem& problem) {
    const JsonFields in(
        value, path, problem,
        {"id", "x_mm", "y_mm", "depth_mm", "fbh_mm", "length_mm", "width_mm", "through_wall_mm",
         "angle_deg", "area_mm2", "back_wall_loss_db", "back_wall_loss_explained",
         "over_reference_db", "wall_mm", "not_measurable", "kind", "relevance", "reason"});
    in.filledText("id");
    in.number("x_mm", Sign::Any);
    in.number("y_mm", Sign::Any);
    constexpr std::string_view kSizes[] = {"fbh_mm",          "length_mm", "width_mm",
                                           "through_wall_mm", "area_mm2",  "wall_mm"};
    constexpr std::string_view kNotNegative[] = {"depth_mm", "back_wall_loss_db"};
    constexpr std::string_view kAny[] = {"angle_deg", "over_reference_db"};
    checkNumbers(in, kSizes, Sign::Positive);
    checkNumbers(in, kNotNegative, Sign::NotNegative);
    checkNumbers(in, kAny, Sign::Any);
    if (in.has("back_wall_loss_explained")) in.text("back_wall_loss_explained");
    checkWords(in, "not_measurable", kExtents);
    if (in.has("kind")) in.word("kind", ultrasonicKindFrom);
    if (in.has("relevance") && in.word("relevance", relevanceFrom) != Relevance::Relevant)
        in.filledText("reason");
    if (in.has("reason")) in.text("reason");
}

void checkUltrasonicKinds(const JsonFields& in) {
    checkWords(in, "forbidden_kinds", kKinds);
}

}  // namespace model
