// SPDX-License-Identifier: Apache-2.0
#include "exchange/record_csv.h"

#include <initializer_list>
#include <nlohmann/json.hpp>
#include <optional>

namespace model {
namespace {

using Json = nlohmann::json;

/// A line of fields; each is quoted where RFC 4180 asks for it.
class Line {
public:
    Line& add(const std::string& field) {
        if (!first_) text_ += ',';
        first_ = false;
        if (field.find_first_of(",\"\r\n") == std::string::npos) {
            text_ += field;
            return *this;
        }
        text_ += '"';
        for (const char c : field) {
            if (c == '"') text_ += '"';
            text_ += c;
        }
        text_ += '"';
        return *this;
    }
    Line& addAll(const Json& object, std::initializer_list<const char*> names) {
        for (const char* name : names) add(fieldOf(object, name));
        return *this;
    }
    [[nodiscard]] std::string take() { return std::move(text_) + "\r\n"; }

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
    std::string text_;
    bool first_ = true;
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
constexpr Names kCheck = {"rule",  "class",    "key",        "level",  "locator",
                          "grade", "measured", "comparison", "limit",  "limit_exact",
                          "unit",  "passes",   "members",    "reason", "note"};

std::string namesOf(std::initializer_list<Names> groups) {
    Line line;
    for (const auto& group : groups)
        for (const char* name : group) line.add(name);
    return line.take();
}

std::string indicationLines(const Json& sheet, const Json& verdict) {
    std::string text = namesOf({kExamination, kTyped, {"judged_class", "considered", "group"}});
    for (std::size_t i = 0; i < sheet.size(); ++i) {
        const Json& judged = verdict.at(i).at("indications");
        const Json& typed = sheet.at(i).at("indications");
        for (std::size_t row = 0; row < typed.size(); ++row) {
            Line line;
            line.addAll(verdict.at(i), kExamination).addAll(typed.at(row), kTyped);
            text += line.addAll(judged.at(row), {"class", "considered", "group"}).take();
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
            text += line.addAll(check, kCheck).take();
        }
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

Result<std::string> checksCsv(std::string_view verdict) {
    const auto judged = examinationsOf(verdict);
    if (!judged) return notUnderstood("verdict");
    return understood("verdict", [&] { return checkLines(*judged); });
}

}  // namespace model
