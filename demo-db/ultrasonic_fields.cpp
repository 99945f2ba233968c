// SPDX-License-Identifier: Apache-2.0
#include "demo_db/ultrasonic_fields.h"

#include <string_view>
#include <utility>
#include <vector>

namespace demo {
namespace {

using model::Area;
using model::GainStep;
using model::JsonFields;
using model::JsonProblem;
using model::JsonValue;
using model::Length;
using model::Sign;
using model::TypedReflector;
using model::TypedSetting;

constexpr std::size_t kMost = 100;  // of anything in one list

/// The text fields of a row by their names.
template <class Row>
using Texts = std::vector<std::pair<std::string_view, std::string Row::*>>;

const Texts<TypedSetting>& settingTexts() {
    using S = TypedSetting;
    static const Texts<S> kTexts = {{"name", &S::name},
                                    {"probe", &S::probe},
                                    {"kind", &S::kind},
                                    {"element", &S::element},
                                    {"diameter", &S::diameter},
                                    {"element_width", &S::elementWidth},
                                    {"element_length", &S::elementLength},
                                    {"front", &S::front},
                                    {"frequency", &S::frequency},
                                    {"probe_angle", &S::probeAngle},
                                    {"velocity", &S::velocity},
                                    {"attenuation", &S::attenuation},
                                    {"thickness", &S::thickness},
                                    {"surface", &S::surface},
                                    {"radius", &S::radius},
                                    {"reference", &S::reference},
                                    {"reference_on", &S::referenceOn},
                                    {"block", &S::block},
                                    {"reference_velocity", &S::referenceVelocity},
                                    {"reference_attenuation", &S::referenceAttenuation},
                                    {"reference_path", &S::referencePath},
                                    {"reference_diameter", &S::referenceDiameter},
                                    {"reference_gain", &S::referenceGain},
                                    {"reference_screen", &S::referenceScreen},
                                    {"transfer", &S::transfer},
                                    {"known_thickness", &S::knownThickness},
                                    {"shown_thickness", &S::shownThickness},
                                    {"set_velocity", &S::setVelocity},
                                    {"first_echo_number", &S::firstEchoNumber},
                                    {"first_echo_gain", &S::firstEchoGain},
                                    {"second_echo_number", &S::secondEchoNumber},
                                    {"second_echo_gain", &S::secondEchoGain}};
    return kTexts;
}

const Texts<TypedReflector>& reflectorTexts() {
    using R = TypedReflector;
    static const Texts<R> kTexts = {{"id", &R::id},
                                    {"x", &R::x},
                                    {"y", &R::y},
                                    {"heading", &R::heading},
                                    {"setting", &R::setting},
                                    {"sound_path", &R::soundPath},
                                    {"gain", &R::gain},
                                    {"screen", &R::screen},
                                    {"drop", &R::drop},
                                    {"along", &R::along},
                                    {"across", &R::across},
                                    {"depth", &R::depth},
                                    {"fbh", &R::fbh},
                                    {"length", &R::length},
                                    {"width", &R::width},
                                    {"through_wall", &R::throughWall},
                                    {"angle", &R::angle},
                                    {"area", &R::area},
                                    {"back_wall_loss", &R::backWallLoss},
                                    {"back_wall_loss_explained", &R::backWallLossExplained},
                                    {"over_reference", &R::overReference},
                                    {"after_check", &R::afterCheck},
                                    {"wall", &R::wall},
                                    {"not_measurable", &R::notMeasurable},
                                    {"kind", &R::kind},
                                    {"relevance", &R::relevance},
                                    {"reason", &R::reason}};
    return kTexts;
}

template <class Row>
std::vector<Row> readRows(const JsonFields& in, std::string_view name, JsonProblem& problem,
                          model::LengthUnit unit, const Texts<Row>& texts) {
    std::vector<Row> rows;
    if (!in.has(name)) return rows;
    std::vector<std::string_view> names;
    for (const auto& [key, member] : texts) names.push_back(key);
    std::size_t index = 0;
    for (const JsonValue& value : in.array(name, kMost)) {
        const JsonFields row(value, model::elementPath(in.pathOf(name), index++), problem, names);
        Row read;
        for (const auto& [key, member] : texts)
            if (row.has(key)) read.*member = row.text(key);
        read.unit = unit;
        rows.push_back(std::move(read));
    }
    return rows;
}

model::UltrasonicTest readTest(const JsonValue& value, const std::string& path,
                               JsonProblem& problem) {
    const JsonFields in(
        value, path, problem,
        {"zone_area_mm2", "smallest_fbh_mm", "signal_to_noise_db", "dead_zone_mm", "directions"});
    model::UltrasonicTest test;
    test.zoneArea = in.optionalQuantity<Area>("zone_area_mm2", Sign::Positive);
    model::Testability testability;
    testability.smallestFbh = in.optionalQuantity<Length>("smallest_fbh_mm", Sign::Positive);
    testability.signalToNoise = in.optionalQuantity<GainStep>("signal_to_noise_db", Sign::Any);
    if (testability.smallestFbh || testability.signalToNoise) test.testability = testability;
    test.deadZone = in.optionalQuantity<Length>("dead_zone_mm", Sign::NotNegative);
    if (in.has("directions")) test.directions = in.texts("directions", kMost);
    return test;
}

}  // namespace

void readUltrasonic(const JsonFields& in, JsonProblem& problem, model::LengthUnit unit,
                    model::ExaminationDraft& draft) {
    if (const JsonValue* test = in.find("ultrasonic"))
        draft.header.ultrasonic = readTest(*test, in.pathOf("ultrasonic"), problem);
    draft.settings = readRows(in, "settings", problem, unit, settingTexts());
    draft.reflectors = readRows(in, "reflectors", problem, unit, reflectorTexts());
}

}  // namespace demo
