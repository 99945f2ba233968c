// SPDX-License-Identifier: Apache-2.0
#include "exchange/record_csv.h"

#include <initializer_list>
#include <nlohmann/json.hpp>
#include <optional>
#include <vector>

#include "exchange/csv_reader.h"

namespace model {
namespace {

using Json = nlohmann::json;

/// A line of fields.
class Line {
public:
    Line& add(std::string field) {
        fields_.push_back(std::move(field));
        return *this;
    }
    Line& addAll(const Json& object, std::initializer_list<const char*> names) {
        for (const char* name : names) add(fieldOf(object, name));
        return *this;
    }
    [[nodiscard]] std::string text() const { return csvLine(fields_); }

    /// Empty where it is missing or null; the elements of a list with blanks between them.
    static std::string fieldOf(const Json& object, const char* name) {
        const auto found = object.find(name);
        if (found == object.end() || found->is_null()) return "";
        if (found->is_string()) return found->get<std::string>();
        if (!found->is_array()) return found->dump();
        std::string list;
        for (const Json& element : *found)
            list += (list.empty() ? "" : " ") + element.get<std::string>();
        return list;
    }

private:
    std::vector<std::string> fields_;
};

Error notUnderstood(const char* what) {
    return {ErrorKind::Damaged, "", "the stored %1 is not understood", {what}};
}

std::optional<Json> examinationsOf(std::string_view document) {
    Json parsed = Json::parse(document, nullptr, false);
    if (!parsed.is_object()) return std::nullopt;
    const auto found = parsed.find("examinations");
    if (found == parsed.end() || !found->is_array()) return std::nullopt;
    return std::move(*found);
}

using Names = std::initializer_list<const char*>;

constexpr Names kExamination = {"zone", "method", "stage", "repair_cycle", "repeat"};

constexpr Names kTyped = {"id",       "x_mm", "y_mm",  "length_mm",  "width_mm",  "angle_deg",
                          "area_mm2", "kind", "class", "removed_mm", "relevance", "reason"};
/// Of ultrasonic indications beside those; behind the judged ones, as tables of surface
/// indications began without them.
constexpr Names kReflector = {"depth_mm",          "fbh_mm",
                              "through_wall_mm",   "not_measurable",
                              "back_wall_loss_db", "back_wall_loss_explained",
                              "over_reference_db", "wall_mm"};
constexpr Names kSetting = {"name",
                            "unit",
                            "probe",
                            "kind",
                            "element",
                            "diameter",
                            "element_width",
                            "element_length",
                            "front",
                            "frequency",
                            "probe_angle",
                            "velocity",
                            "attenuation",
                            "thickness",
                            "surface",
                            "radius",
                            "reference",
                            "reference_on",
                            "block",
                            "reference_velocity",
                            "reference_attenuation",
                            "reference_path",
                            "reference_diameter",
                            "reference_gain",
                            "reference_screen",
                            "transfer",
                            "known_thickness",
                            "shown_thickness",
                            "set_velocity",
                            "first_echo_number",
                            "first_echo_gain",
                            "second_echo_number",
                            "second_echo_gain"};
constexpr Names kReading = {"id",
                            "unit",
                            "x",
                            "y",
                            "heading",
                            "setting",
                            "sound_path",
                            "gain",
                            "screen",
                            "echo_drop",
                            "moved_along",
                            "moved_across",
                            "depth",
                            "fbh",
                            "length",
                            "width",
                            "through_wall",
                            "angle",
                            "area",
                            "back_wall_loss",
                            "back_wall_loss_explained",
                            "over_reference",
                            "wall",
                            "not_measurable",
                            "kind",
                            "relevance",
                            "reason"};
constexpr Names kSize = {
    "wavelength_mm",       "near_field_mm", "beam_width_mm", "depth_mm",
    "surface_distance_mm", "leg",           "echo_db",       "fbh_mm",
    "fbh_method",          "length_mm",     "width_mm",      "far_field_fbh_mm"};
constexpr Names kCheck = {"rule",  "class",    "key",        "level",  "locator",
                          "grade", "measured", "comparison", "limit",  "limit_exact",
                          "unit",  "passes",   "members",    "reason", "note"};

std::string namesOf(std::initializer_list<Names> groups) {
    Line line;
    for (const auto& group : groups)
        for (const char* name : group) line.add(name);
    return line.text();
}

std::string indicationLines(const Json& sheet, const Json& verdict) {
    std::string text =
        namesOf({kExamination, kTyped, {"judged_class", "considered", "group"}, kReflector});
    for (std::size_t i = 0; i < sheet.size(); ++i) {
        const Json& judged = verdict.at(i).at("indications");
        const Json& typed = sheet.at(i).at("indications");
        for (std::size_t row = 0; row < typed.size(); ++row) {
            Line line;
            line.addAll(verdict.at(i), kExamination).addAll(typed.at(row), kTyped);
            line.addAll(judged.at(row), {"class", "considered", "group"});
            text += line.addAll(typed.at(row), kReflector).text();
        }
    }
    return text;
}

std::string checkLines(const Json& verdict) {
    std::string text = namesOf({kExamination, {"table", "table_revision"}, kCheck});
    for (const Json& examination : verdict)
        for (const Json& check : examination.at("checks")) {
            Line line;
            line.addAll(examination, kExamination);
            line.addAll(examination.at("table"), {"id", "revision"});
            text += line.addAll(check, kCheck).text();
        }
    return text;
}

std::string settingLines(const Json& examinations) {
    std::string text = namesOf({kExamination, kSetting});
    for (const Json& examination : examinations)
        for (const Json& setting : examination.at("settings"))
            text += Line().addAll(examination, kExamination).addAll(setting, kSetting).text();
    return text;
}

std::string readingLines(const Json& examinations) {
    std::string text = namesOf({kExamination, kReading});
    text.resize(text.size() - std::string_view("\r\n").size());
    for (const char* name : kSize) text += std::string(",computed_") + name;
    text += ",computed_notes\r\n";
    for (const Json& examination : examinations)
        for (const Json& reading : examination.at("readings")) {
            const Json& size = reading.at("size");
            Line line;
            line.addAll(examination, kExamination).addAll(reading.at("typed"), kReading);
            line.addAll(size.is_null() ? Json::object() : size, kSize);
            std::string notes;
            if (!size.is_null())
                for (const Json& note : size.at("notes"))
                    notes += (notes.empty() ? "" : "\n") + note.get<std::string>();
            text += line.add(notes).text();
        }
    return text;
}

constexpr Names kHeader = {"zone", "method", "stage", "repair_cycle", "repeat"};

/// The object's own texts and numbers, each as a line behind `before`; lists within it are left to
/// the caller.
void addTexts(const Json& object, const Line& before, std::string& text) {
    for (const auto& [name, value] : object.items()) {
        if (value.is_object() || value.is_array()) continue;
        Line line = before;
        text += line.add(name).add(Line::fieldOf(object, name.c_str())).text();
    }
}

std::string recordLines(const Json& record) {
    std::string text =
        namesOf({{"record", "revision"},
                 kHeader,
                 {"word", "judged_word", "table", "table_revision", "examined_by", "examined_on",
                  "procedure", "signed_by", "signed_name", "signed_level", "signed_at", "rejection",
                  "declared_invalid", "given_back", "remarks", "content_sha256"}});
    for (const Json& each : record.at("records")) {
        const Json& content = each.at("content");
        const Json& header = content.at("header");
        const auto reasonOf = [&](const char* act) {
            const auto found = each.find(act);
            return found == each.end() ? std::string() : Line::fieldOf(*found, "reason");
        };
        Line line;
        line.addAll(each, {"id", "revision"}).addAll(header, kHeader).addAll(each, {"word"});
        line.addAll(content.at("judged"), {"word", "table", "table_revision"});
        line.addAll(header, {"examined_by", "examined_on", "procedure"});
        line.addAll(content.at("inspector"), {"id", "name", "level"});
        line.addAll(each.at("recorded"), {"time"}).addAll(content, {"rejection"});
        line.add(reasonOf("invalid")).add(reasonOf("given_back"));
        text += line.addAll(header, {"remarks"}).addAll(each, {"content_sha256"}).text();
    }
    return text;
}

/// A list of objects, each text a line.
void addList(const Json& list, const Line& before, const char* part, std::string& text) {
    std::size_t number = 0;
    for (const Json& entry : list) {
        Line line = before;
        line.add(part).add(std::to_string(++number));
        addTexts(entry, line, text);
    }
}

std::string conditionLines(const Json& record) {
    std::string text = namesOf({{"record"}, kHeader, {"part", "number", "field", "text"}});
    for (const Json& each : record.at("records")) {
        const Json& content = each.at("content");
        Line before;
        before.addAll(each, {"id"}).addAll(content.at("header"), kHeader);
        if (const auto conditions = content.find("conditions"); conditions != content.end()) {
            Line line = before;
            addTexts(*conditions, line.add("conditions").add(""), text);
            for (const char* part : {"measurements", "setting_checks", "scans", "acknowledgements"})
                if (const auto list = conditions->find(part); list != conditions->end())
                    addList(*list, before, part, text);
        }
        if (const auto findings = content.find("findings"); findings != content.end())
            addList(*findings, before, "findings", text);
    }
    return text;
}

/// Lists of entries, by the plural of their register's name.
void addRegisters(const Json& registers, const std::string& record, std::string& text) {
    for (const auto& [name, entries] : registers.items())
        addList(entries, Line().add(record), name.c_str(), text);
}

std::string registerLines(const Json& record) {
    std::string text = namesOf({{"record", "register", "number", "field", "text"}});
    addRegisters(record.at("dossier"), "", text);
    for (const Json& each : record.at("records"))
        if (const auto used = each.at("content").find("used"); used != each.at("content").end())
            addRegisters(*used, Line::fieldOf(each, "id"), text);
    return text;
}

/// nlohmann's accessors throw where a document has another shape.
template <class Make>
Result<std::string> understood(const char* what, Make make) {
    try {
        return make();
    } catch (const Json::exception&) {
        return notUnderstood(what);
    }
}

}  // namespace

Result<std::string> indicationsCsv(std::string_view sheet, std::string_view verdict) {
    const auto typed = examinationsOf(sheet);
    if (!typed) return notUnderstood("sheet");
    const auto judged = examinationsOf(verdict);
    if (!judged) return notUnderstood("verdict");
    return understood("record", [&] { return indicationLines(*typed, *judged); });
}

Result<std::string> settingsCsv(std::string_view readings) {
    const auto examinations = examinationsOf(readings);
    if (!examinations) return notUnderstood("readings");
    return understood("readings", [&] { return settingLines(*examinations); });
}

Result<std::string> readingsCsv(std::string_view readings) {
    const auto examinations = examinationsOf(readings);
    if (!examinations) return notUnderstood("readings");
    return understood("readings", [&] { return readingLines(*examinations); });
}

Result<std::string> recordsCsv(std::string_view record) {
    return understood("record", [&] { return recordLines(Json::parse(record)); });
}

Result<std::string> conditionsCsv(std::string_view record) {
    return understood("record", [&] { return conditionLines(Json::parse(record)); });
}

Result<std::string> registersCsv(std::string_view record) {
    return understood("record", [&] { return registerLines(Json::parse(record)); });
}

Result<std::string> checksCsv(std::string_view verdict) {
    const auto judged = examinationsOf(verdict);
    if (!judged) return notUnderstood("verdict");
    return understood("verdict", [&] { return checkLines(*judged); });
}

}  // namespace model
