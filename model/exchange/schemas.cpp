// SPDX-License-Identifier: Apache-2.0
#include "exchange/schemas.h"

#include <algorithm>
#include <map>
#include <set>

#include "exchange/json_document.h"
#include "exchange/register_rows.h"
#include "exchange/shipped_schemas.h"
#include "registers/every_register.h"

namespace model {
namespace {

using Members = JsonValue::Members;

constexpr std::string_view kDefinitions = "#/$defs/";
constexpr std::string_view kEnding = ".schema.json";

JsonValue text(std::string_view utf8) {
    return JsonValue::string(utf8);
}

std::vector<std::string> choicesOf(std::string_view choices) {
    std::vector<std::string> words;
    while (!choices.empty()) {
        const std::size_t end = std::min(choices.find('|'), choices.size());
        words.emplace_back(choices.substr(0, end));
        choices.remove_prefix(std::min(end + 1, choices.size()));
    }
    return words;
}

/// What wrongText() demands of a text that is not empty, as a regular expression; empty: anything.
std::string patternOf(FieldKind kind) {
    switch (kind) {
        case FieldKind::Line:
        case FieldKind::List:
            return "[^\\r\\n]*";
        case FieldKind::Date:
            return "[0-9]{4}-[0-9]{2}-[0-9]{2}";
        case FieldKind::Moment:
            return "[0-9]{4}-[0-9]{2}-[0-9]{2}T[0-9]{2}:[0-9]{2}:[0-9]{2}Z";
        case FieldKind::Number:
            return "[ \\t]*(-?(0|[1-9][0-9]*)([.,][0-9]*)?|[.,][0-9]+)[ \\t]*";
        case FieldKind::Whole:
            return "[0-9]+";
        case FieldKind::Sha256:
            return "[0-9a-f]{64}";
        case FieldKind::Paragraph:
        case FieldKind::Choice:
        case FieldKind::YesNo:
            return "";
    }
    return "";
}

/// Typed at the bench: stored as it is, right or half done.
JsonValue schemaOfTyped(const FieldInfo& field) {
    return JsonValue::object({{"title", text(field.label)},
                              {"type", text("string")},
                              {"minLength", JsonValue::count(1)}});
}

JsonValue schemaOf(const FieldInfo& field, bool mayBeEmpty) {
    Members members{{"title", text(field.label)}};
    std::string description(field.help);
    if (!field.unit.empty())
        description += (description.empty() ? "" : "; ") + std::string(field.unit);
    if (!description.empty()) members.push_back({"description", text(description)});
    members.push_back({"type", text("string")});
    std::vector<std::string> words = choicesOf(field.choices);
    if (field.kind == FieldKind::YesNo) words = {"yes", "no"};
    if (!words.empty()) {
        if (mayBeEmpty) words.emplace_back();
        members.push_back({"enum", JsonValue::strings(words)});
    } else if (const std::string pattern = patternOf(field.kind); !pattern.empty()) {
        members.push_back(
            {"pattern", text(mayBeEmpty ? "^(" + pattern + ")?$" : "^" + pattern + "$")});
    }
    if (!mayBeEmpty && words.empty()) members.push_back({"minLength", JsonValue::count(1)});
    return JsonValue::object(std::move(members));
}

JsonValue listOf(std::string_view definition) {
    return JsonValue::object(
        {{"type", text("array")},
         {"items", JsonValue::object(
                       {{"$ref", text(std::string(kDefinitions) + std::string(definition))}})}});
}

/// The name of a register or list in "$defs".
std::string definitionOf(std::string_view name) {
    std::string definition(name);
    std::ranges::replace(definition, ' ', '_');
    return definition;
}

/// Lists beside the fields: name and what they are of.
using Lists = std::vector<std::pair<std::string, std::string>>;

enum class Text { Checked, AsTyped };

template <class T>
JsonValue schemaOf(Text texts = Text::Checked, const Lists& lists = {}) {
    const bool checked = texts == Text::Checked;
    Members properties;
    std::vector<std::string> required;
    for (const Field<T>& field : T::fields()) {
        const bool mayBeEmpty =
            field.info.need == FieldInfo::Need::Optional || mayStandElsewhere<T>(field.info);
        properties.push_back({std::string(field.info.key), checked
                                                               ? schemaOf(field.info, mayBeEmpty)
                                                               : schemaOfTyped(field.info)});
        if (checked && !mayBeEmpty) required.emplace_back(field.info.key);
    }
    for (const auto& [name, of] : lists) properties.push_back({name, listOf(of)});
    return JsonValue::object({{"type", text("object")},
                              {"properties", JsonValue::object(std::move(properties))},
                              {"required", JsonValue::strings(required)},
                              {"additionalProperties", JsonValue::boolean(false)}});
}

/// Lists of entries under the plural of their register's name.
template <class... T>
JsonValue schemaOfLists(const std::vector<std::string>& names) {
    Members properties;
    std::size_t index = 0;
    (properties.push_back({names[index++], listOf(definitionOf(T::kRegister))}), ...);
    return JsonValue::object({{"type", text("object")},
                              {"properties", JsonValue::object(std::move(properties))},
                              {"additionalProperties", JsonValue::boolean(false)}});
}

using Definitions = std::map<std::string, JsonValue>;

/// What follows from the lists of fields.
Definitions generated() {
    Definitions definitions;
    const auto add = [&]<class T>() { definitions[definitionOf(T::kRegister)] = schemaOf<T>(); };
    forEachRegister(add);
    add.operator()<PersonLine>();
    add.operator()<PartLine>();
    add.operator()<ZonePlanLine>();
    add.operator()<OrderLine>();
    add.operator()<CastingLine>();
    definitions["ordered_test"] = schemaOf<OrderedTest>(Text::AsTyped);
    definitions["witness_point"] = schemaOf<WitnessPoint>(Text::AsTyped);
    definitions["order_terms"] = schemaOf<OrderTerms>(
        Text::AsTyped, {{"tests", "ordered_test"}, {"witness_points", "witness_point"}});
    definitions["measurement"] = schemaOf<Measurement>(Text::AsTyped);
    definitions["setting_check"] = schemaOf<SettingCheck>(Text::AsTyped);
    definitions["scan"] = schemaOf<Scan>(Text::AsTyped);
    definitions["acknowledgement"] = schemaOf<Acknowledgement>(Text::AsTyped);
    definitions["test_conditions"] =
        schemaOf<TestConditions>(Text::AsTyped, {{"measurements", "measurement"},
                                                 {"setting_checks", "setting_check"},
                                                 {"scans", "scan"},
                                                 {"acknowledgements", "acknowledgement"}});
    definitions["dossier"] = schemaOfLists<Nonconformance, Disposition, Excavation, WeldRepair,
                                           HeatTreatment, Concession, OtherResult, Attachment>(
        {"nonconformances", "dispositions", "excavations", "weld_repairs", "heat_treatments",
         "concessions", "other_results", "attachments"});
    definitions["holdings"] =
        schemaOfLists<Equipment, EquipmentCheck, Consumable, Procedure, Qualification, EyeTest,
                      Authorisation>({"equipment", "equipment_checks", "consumables", "procedures",
                                      "qualifications", "eye_tests", "authorisations"});
    return definitions;
}

struct Files {
    std::map<std::string, JsonValue> documents;  ///< by name
    Definitions definitions;                     ///< of all files, and those generated
};

Result<Files> allFiles() {
    Files files;
    files.definitions = generated();
    for (const EmbeddedFile& file : shippedSchemas()) {
        auto document = parseJson(file.text, std::string(file.name));
        if (!document) return document.error();
        if (const JsonValue* definitions = document->find("$defs"))
            for (const auto& [name, definition] : definitions->members())
                files.definitions.insert_or_assign(name, definition);
        std::string name(file.name.substr(0, file.name.size() - kEnding.size()));
        files.documents.emplace(std::move(name), std::move(*document));
    }
    return files;
}

/// The definitions that a value refers to, and those that they refer to.
void collect(const JsonValue& value, const Definitions& all, std::set<std::string>& names) {
    if (value.type() == JsonValue::Type::Array)
        for (const JsonValue& element : value.elements()) collect(element, all, names);
    if (value.type() != JsonValue::Type::Object) return;
    for (const auto& [name, member] : value.members()) {
        collect(member, all, names);
        if (name != "$ref" || member.type() != JsonValue::Type::String) continue;
        const std::string_view target = member.string();
        if (!target.starts_with(kDefinitions)) continue;
        const auto found = all.find(std::string(target.substr(kDefinitions.size())));
        if (found != all.end() && names.insert(found->first).second)
            collect(found->second, all, names);
    }
}

JsonValue withDefinitions(Members members, const Definitions& all) {
    std::erase_if(members, [](const JsonMember& member) { return member.name == "$defs"; });
    std::set<std::string> names;
    collect(JsonValue::object(members), all, names);
    Members definitions;
    for (const std::string& name : names) definitions.push_back({name, all.at(name)});
    members.push_back({"$defs", JsonValue::object(std::move(definitions))});
    return JsonValue::object(std::move(members));
}

/// Of a fettlemark-entry/1 of one register.
Members entrySchema(const std::string& registerName) {
    const std::string definition = definitionOf(registerName);
    Members rows = listOf(definition).members();
    rows.push_back({"minItems", JsonValue::count(1)});
    return {{"$schema", text("https://json-schema.org/draft/2020-12/schema")},
            {"$id", text("urn:fettlemark:schema:entry:" + definition)},
            {"title", text("Fettlemark entry: " + registerName)},
            {"description", text("One entry of a register, in as many rows as it takes.")},
            {"type", text("object")},
            {"properties",
             JsonValue::object({{"format", JsonValue::object({{"const", text(kEntryFormat)}})},
                                {"register", JsonValue::object({{"const", text(registerName)}})},
                                {"rows", JsonValue::object(std::move(rows))}})},
            {"required", JsonValue::strings({"format", "register", "rows"})},
            {"additionalProperties", JsonValue::boolean(false)}};
}

}  // namespace

std::vector<std::string> schemaNames() {
    std::vector<std::string> names;
    for (const EmbeddedFile& file : shippedSchemas())
        names.emplace_back(file.name.substr(0, file.name.size() - kEnding.size()));
    for (std::string& name : registerNames()) names.push_back(std::move(name));
    return names;
}

Result<JsonValue> publishedSchema(std::string_view name) {
    const auto files = allFiles();
    if (!files) return files.error();
    const std::string wanted(name);
    if (const auto found = files->documents.find(wanted); found != files->documents.end())
        return withDefinitions(found->second.members(), files->definitions);
    const auto registers = registerNames();
    if (std::ranges::find(registers, wanted) != registers.end())
        return withDefinitions(entrySchema(wanted), files->definitions);
    std::string names;
    for (const std::string& each : schemaNames()) names += (names.empty() ? "" : ", ") + each;
    return inputError("", "there is no schema \"%1\"; there are: %2", {wanted, names});
}

}  // namespace model
