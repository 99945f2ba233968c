// SPDX-License-Identifier: Apache-2.0
#include "measure_machine.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>

#include "exchange/json_text.h"
#include "measure/measure.h"
#include "qt_core.h"

namespace app {
namespace {

using model::JsonValue;

/// To six decimals; null where there is no value.
JsonValue numberOrNull(std::optional<double> value) {
    if (!value || !(std::abs(*value) < 1e12)) return {};
    return JsonValue::number(std::llround(*value * 1e6));
}

JsonValue measurementToJson(const Measurement& result) {
    JsonValue::Members members{{"name", JsonValue::string(result.name)},
                               {"value", numberOrNull(result.value)},
                               {"yardstick", numberOrNull(result.yardstick)},
                               {"ratio", numberOrNull(result.ratio())},
                               {"unit", JsonValue::string(result.unit)},
                               {"size", JsonValue::count(static_cast<std::int64_t>(result.size))},
                               {"peak_mb", numberOrNull(result.peakMb)}};
    if (!result.note.empty()) members.push_back({"note", JsonValue::string(result.note)});
    return JsonValue::object(std::move(members));
}

std::string fixed(std::optional<double> value) {
    if (!value) return "-";
    std::array<char, 64> text{};
    std::snprintf(text.data(), text.size(), "%.3f", *value);
    return text.data();
}

/// `text` with blanks before it up to `width`.
std::string right(std::string text, std::size_t width) {
    text.insert(0, width - std::min(width, text.size()), ' ');
    return text;
}

std::string tableOf(const std::vector<Measurement>& results) {
    std::size_t names = 4;
    for (const Measurement& result : results) names = std::max(names, result.name.size());
    constexpr std::size_t kNumber = 12;
    const auto row = [&](std::string name, const std::vector<std::string>& numbers,
                         const std::string& note) {
        name.resize(names, ' ');
        for (const std::string& number : numbers) name += right(number, kNumber);
        return name + (note.empty() ? "" : "  " + note) + "\n";
    };
    std::string text = row("name", {"value", "unit", "yardstick", "ratio", "size", "peak MB"}, "");
    for (const Measurement& result : results)
        text += row(result.name,
                    {fixed(result.value), result.unit, fixed(result.yardstick),
                     fixed(result.ratio()), std::to_string(result.size), fixed(result.peakMb)},
                    result.note);
    return text;
}

model::Result<Outcome> measure(const Arguments& arguments) {
    const QtCore qt;
    std::optional<std::string> only;
    if (const std::string* name = arguments.value("--only")) only = *name;
    const auto results = runMeasurements(builtInMeasurements(), only);
    if (!results) return results.error();
    if (!arguments.has("--json")) return Outcome{ExitCode::Done, tableOf(*results)};
    return Outcome{ExitCode::Done,
                   model::writeJson(JsonValue::object(
                       {{"format", JsonValue::string("fettlemark-measure/1")},
                        {"results", JsonValue::arrayOf(results.value(), measurementToJson)}}))};
}

std::string measurementNames() {
    std::string names;
    for (const MeasurementMaker& maker : builtInMeasurements())
        names += (names.empty() ? "" : ", ") + maker.name;
    return names;
}

}  // namespace

Command measureCommand() {
    return {.name = "measure",
            .operand = "",
            .summary = "measures how fast the program's heavy parts run on this machine",
            .details =
                "Runs the built-in measurements, each where possible against a plain\n"
                "yardstick in the same process, and prints value, yardstick and ratio.\n"
                "Measurements: " +
                measurementNames() + "\n",
            .options = {{"--json", "", "prints fettlemark-measure/1 instead of a table"},
                        {"--only", "NAME", "runs one measurement"}},
            .run = &measure};
}

}  // namespace app
