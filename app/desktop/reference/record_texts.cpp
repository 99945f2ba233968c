// SPDX-License-Identifier: Apache-2.0
#include "reference/record_texts.h"

#include <algorithm>
#include <array>

#include "exchange/register_lines.h"

namespace app {
namespace {

using model::FieldError;
using model::FieldInfo;
using model::LineError;
using model::OrderLine;
using model::ZonePlanLine;

template <class T>
std::vector<EntryTexts> rowsFrom(const std::vector<T>& values) {
    std::vector<EntryTexts> rows;
    for (const T& value : values) rows.push_back(textsOf(value));
    return rows;
}

template <class T>
std::vector<T> valuesFrom(const std::vector<EntryTexts>& rows) {
    std::vector<T> values;
    for (const EntryTexts& row : rows) values.push_back(entryFrom<T>(row));
    return values;
}

std::string place(const std::string& table, std::size_t row, const std::string& field) {
    return table + "." + std::to_string(row) + "." + field;
}

/// Whether a field of a plan's line is one of a zone.
bool isOfZone(std::string_view key) {
    return key != "part" && key != "revision" && !ZonePlanLine::isOfLine(key);
}

/// The same words as OtherResult::test.
const std::vector<std::string>& wordsOfOtherTests() {
    static const std::vector<std::string> kWords = [] {
        std::vector<std::string> words;
        for (const auto& field : model::OtherResult::fields()) {
            if (field.info.key != "test") continue;
            std::string_view left = field.info.choices;
            while (!left.empty()) {
                const auto end = std::min(left.find('|'), left.size());
                words.emplace_back(left.substr(0, end));
                left.remove_prefix(std::min(end + 1, left.size()));
            }
        }
        return words;
    }();
    return kWords;
}

void checkZones(const std::vector<EntryTexts>& zones, std::vector<FieldError>& errors) {
    std::set<std::string> names;
    for (std::size_t i = 0; i < zones.size(); ++i) {
        const std::string& name = textOf(zones[i], "zone");
        if (!name.empty() && !names.insert(name).second) {
            errors.push_back(
                {place("zones", i, "zone"), model::inputError("", "is there twice: %1", {name})});
        }
        for (const auto& item : model::itemsOf(textOf(zones[i], "other_tests"))) {
            if (std::ranges::find(wordsOfOtherTests(), item) != wordsOfOtherTests().end()) continue;
            errors.push_back({place("zones", i, "other_tests"),
                              model::inputError("", "takes one of: %1; not: %2",
                                                {model::listOf(wordsOfOtherTests()), item})});
        }
    }
}

void addErrors(const std::vector<LineError>& found, std::vector<FieldError>& errors) {
    for (const auto& error : found) errors.push_back(error.error);
}

}  // namespace

const std::vector<EntryTexts>& rowsOf(const Entry& entry, const std::string& key) {
    static const std::vector<EntryTexts> kNone;
    const auto found = entry.rows.find(key);
    return found == entry.rows.end() ? kNone : found->second;
}

std::vector<FieldInfo> orderFields() {
    auto fields = fieldInfos<OrderLine>();
    std::erase_if(fields, [](const FieldInfo& field) { return OrderLine::isOfLine(field.key); });
    return fields;
}

std::vector<FieldInfo> zoneFields() {
    auto fields = fieldInfos<ZonePlanLine>();
    std::erase_if(fields, [](const FieldInfo& field) { return !isOfZone(field.key); });
    // What is only needed where zones share a surface comes last.
    std::stable_partition(fields.begin(), fields.end(),
                          [](const FieldInfo& field) { return !field.key.starts_with("surface"); });
    return fields;
}

/// A test is ordered in the same words as it is planned.
std::vector<FieldInfo> zoneTestFields() {
    auto fields = fieldInfos<model::OrderedTest>();
    std::erase_if(fields, [](const FieldInfo& field) { return field.key == "reason"; });
    for (auto& field : fields) {
        if (field.key != "zone") continue;
        field.need = FieldInfo::Need::Required;
        field.help = "A zone of this plan";
    }
    return fields;
}

Entry entryOf(const model::Order& order) {
    Entry entry;
    entry.texts = textsOf(model::linesOf(order).front());
    std::erase_if(entry.texts, [](const auto& text) { return OrderLine::isOfLine(text.first); });
    entry.rows["tests"] = rowsFrom(order.terms.tests);
    entry.rows["witness_points"] = rowsFrom(order.terms.witnessPoints);
    return entry;
}

model::Order orderFrom(const Entry& entry, std::vector<FieldError>& errors) {
    const std::array lines{entryFrom<OrderLine>(entry.texts)};
    std::vector<LineError> found;
    auto order = model::orderFrom(lines, found);
    addErrors(found, errors);
    order.terms.tests = valuesFrom<model::OrderedTest>(rowsOf(entry, "tests"));
    order.terms.witnessPoints = valuesFrom<model::WitnessPoint>(rowsOf(entry, "witness_points"));
    for (std::size_t i = 0; i < order.terms.tests.size(); ++i) {
        const std::string& levels = order.terms.tests[i].levels;
        if (!levels.empty() && !model::levelsFrom(levels)) {
            errors.push_back(
                {place("tests", i, "levels"),
                 model::inputError("", "takes key=level parted by commas, not: %1", {levels})});
        }
    }
    std::set<std::string> points;
    for (std::size_t i = 0; i < order.terms.witnessPoints.size(); ++i) {
        const std::string& what = order.terms.witnessPoints[i].what;
        if (!what.empty() && !points.insert(what).second) {
            errors.push_back({place("witness_points", i, "what"),
                              model::inputError("", "is there twice: %1", {what})});
        }
    }
    return order;
}

void addPlan(Entry& entry, const model::ZonePlan& plan) {
    auto& zones = entry.rows["zones"];
    auto& tests = entry.rows["tests"];
    for (const auto& line : model::linesOf(plan)) {
        EntryTexts zone;
        EntryTexts test;
        for (const auto& [key, text] : textsOf(line)) {
            if (isOfZone(key)) zone[key] = text;
            if (ZonePlanLine::isOfLine(key)) test[key] = text;
        }
        if (!test.empty()) {
            test["zone"] = line.zone;
            tests.push_back(std::move(test));
        }
        // A zone's further lines state nothing but further tests.
        if (zones.empty() || textOf(zones.back(), "zone") != line.zone) {
            zones.push_back(std::move(zone));
        }
    }
}

model::ZonePlan planFrom(const Entry& entry, int revision, std::vector<FieldError>& errors) {
    const auto& zones = rowsOf(entry, "zones");
    const auto& tests = rowsOf(entry, "tests");
    checkZones(zones, errors);
    std::vector<ZonePlanLine> lines;
    std::vector<std::pair<std::string, std::size_t>> places;  // of each line: table and row
    for (std::size_t i = 0; i < zones.size(); ++i) {
        lines.push_back(entryFrom<ZonePlanLine>(zones[i]));
        places.emplace_back("zones", i);
        for (std::size_t t = 0; t < tests.size(); ++t) {
            if (textOf(tests[t], "zone") != lines.back().zone) continue;
            lines.push_back(entryFrom<ZonePlanLine>(tests[t]));
            places.emplace_back("tests", t);
        }
    }
    for (std::size_t t = 0; t < tests.size(); ++t) {
        const std::string& zone = textOf(tests[t], "zone");
        if (!zone.empty() && std::ranges::find(lines, zone, &ZonePlanLine::zone) == lines.end()) {
            errors.push_back({place("tests", t, "zone"),
                              model::inputError("", "is no zone of this plan: %1", {zone})});
        }
    }
    if (lines.empty()) return {textOf(entry.texts, "number"), revision, {}};
    for (auto& line : lines) {
        line.part = textOf(entry.texts, "number");
        line.revision = std::to_string(revision);
    }
    std::vector<LineError> found;
    auto plan = model::zonePlanFrom(lines, found);
    for (auto& error : found) {
        const auto& [table, row] = places[error.line];
        errors.push_back({place(table, row, error.error.field), std::move(error.error.error)});
    }
    return plan;
}

model::Part partFrom(const Entry& entry, std::vector<FieldError>& errors) {
    std::vector<LineError> found;
    auto part = model::partFrom(entryFrom<model::PartLine>(entry.texts), found);
    addErrors(found, errors);
    return part;
}

model::Casting castingFrom(const Entry& entry, std::vector<FieldError>& errors) {
    std::vector<LineError> found;
    auto casting = model::castingFrom(entryFrom<model::CastingLine>(entry.texts), found);
    addErrors(found, errors);
    return casting;
}

}  // namespace app
