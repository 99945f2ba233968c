// SPDX-License-Identifier: Apache-2.0
// The published schemas, checked by Python's jsonschema, which has nothing to do with this program:
// documents of the program keep them, altered ones do not.
#include "exchange/schemas.h"

#include <algorithm>
#include <array>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>
#include <unistd.h>

#include "exchange/json_document.h"
#include "exchange/json_text.h"
#include "exchange/register_rows.h"
#include "exchange/sheet_json.h"
#include "exchange/verdict_json.h"
#include "exchange/what_if_json.h"
#include "limits/table_set.h"
#include "registers/every_register.h"

namespace model {
namespace {

using Json = nlohmann::ordered_json;
using testing::Contains;
using testing::StartsWith;

/// Checks schemas, and documents against them, all in one process: it takes a second to start.
class Validator {
public:
    /// Expects a document to keep the schema, or not to.
    void expect(const std::string& schema, const Json& document, bool kept,
                const std::string& what) {
        jobs_.push_back(
            {{"schema", schema}, {"document", document}, {"kept", kept}, {"what", what}});
    }
    /// What came out otherwise, a line each; empty: nothing.
    std::string run() {
        Json all{{"schemas", Json::object()}, {"jobs", jobs_}};
        for (const std::string& name : schemaNames()) {
            const auto schema = publishedSchema(name);
            EXPECT_TRUE(schema.ok()) << name;
            if (schema) all["schemas"][name] = Json::parse(writeJson(*schema));
        }
        const std::string path = testing::TempDir() + "schemas_" + std::to_string(::getpid());
        std::ofstream(path, std::ios::binary) << all.dump();
        const std::string command =
            "python3 -W ignore -c 'import json,sys,jsonschema\n"
            "all=json.load(open(sys.argv[1],encoding=\"utf-8\"))\n"
            "V=jsonschema.Draft202012Validator\n"
            "for n,s in all[\"schemas\"].items(): V.check_schema(s)\n"
            "v={n:V(s) for n,s in all[\"schemas\"].items()}\n"
            "for j in all[\"jobs\"]:\n"
            " e=list(v[j[\"schema\"]].iter_errors(j[\"document\"]))\n"
            " if bool(e)==j[\"kept\"]: "
            "print(j[\"schema\"],j[\"what\"],[(x.json_path,x.message[:200])"
            " for x in e[:3]])\n"
            "print(\"checked\",len(all[\"jobs\"]))' " +
            path + " 2>&1";
        FILE* pipe = ::popen(command.c_str(), "r");
        if (pipe == nullptr) return "no python3";
        std::string printed;
        std::array<char, 4096> piece{};
        while (const std::size_t size = std::fread(piece.data(), 1, piece.size(), pipe))
            printed.append(piece.data(), size);
        ::pclose(pipe);
        std::filesystem::remove(path);
        return printed;
    }
    [[nodiscard]] std::string allDone() const {
        return "checked " + std::to_string(jobs_.size()) + "\n";
    }

private:
    Json jobs_ = Json::array();
};

/// The table of the second examination is put in below.
constexpr char kSheet[] = R"({"format": "fettlemark-sheet/1",
  "casting": {"serial": "S", "heat": "H", "part": "P", "drawing": "D", "material": "cast steel"},
  "examinations": [
    {"zone": "Z1", "method": "MT", "stage": "as cast", "repair_cycle": 0, "repeat": 0,
     "thickness_mm": 40,
     "surface": {"id": "S1", "x_mm": 0, "y_mm": 0, "angle_deg": 0, "width_mm": 600,
                 "height_mm": 400, "period_x_mm": 1570.8},
     "table": "EN 1369:2012", "levels": {"non-linear": "SM 2", "linear": "LM 4"},
     "forbidden_kinds": ["crack"], "no_indications": false,
     "not_examined": [{"area_mm2": 400, "reason": "lug", "agreed": "A-1"}],
     "indications": [
       {"id": "1", "x_mm": 10.0, "y_mm": 22.5, "length_mm": 3.0, "width_mm": 0.5, "angle_deg": 30,
        "area_mm2": 1.2, "kind": "porosity", "class": "linear"},
       {"id": "2", "x_mm": 60, "y_mm": 22.5, "length_mm": 3.0, "class": "linear",
        "kind": "shrinkage", "relevance": "false", "reason": "edge"}]},
    {"zone": "Z2", "method": "UT", "stage": "heat treated", "thickness_mm": 60,
     "table": "", "levels": {"all": "3"},
     "zone_area_mm2": 5000, "testability": {"smallest_fbh_mm": 3, "signal_to_noise_db": 6},
     "dead_zone_mm": 5, "directions": ["from above"],
     "indications": [
       {"id": "u1", "x_mm": 120, "y_mm": 80, "depth_mm": 45, "fbh_mm": 2.7, "length_mm": 22,
        "width_mm": 9, "angle_deg": 0, "area_mm2": 155, "back_wall_loss_db": 6,
        "back_wall_loss_explained": "rib", "over_reference_db": 2.5, "wall_mm": 60,
        "not_measurable": ["through_wall"], "kind": "volumetric"}]}]})";

Sheet sheetFrom(const std::string& text) {
    const auto document = parseJson(text, "sheet");
    EXPECT_TRUE(document.ok());
    const auto sheet = sheetFromJson(*document, "sheet");
    EXPECT_TRUE(sheet.ok()) << (sheet.ok() ? "" : sheet.error().message());
    return sheet ? *sheet : Sheet();
}

/// The id under which the program ships such a table.
std::string ultrasonicTable(const TableSet& tables) {
    for (const LimitTable* table : tables.all())
        if (table->method == Method::Ultrasonic && table->key("all") &&
            std::ranges::count(table->key("all")->levels, "3") == 1)
            return table->id;
    return "";
}

TEST(Schemas, OracleAreKeptByDocumentsAndNotByAlteredOnes) {
    const auto tables = TableSet::shipped();
    ASSERT_TRUE(tables.ok());
    Json typed = Json::parse(kSheet);
    typed["examinations"][1]["table"] = ultrasonicTable(*tables);
    const Sheet sheet = sheetFrom(typed.dump());
    const auto verdict = judge(sheet, *tables);
    ASSERT_TRUE(verdict.ok()) << verdict.error().message();
    const OtherCriteria other{"", "", {{"non-linear", "SM 3"}}};
    const auto again = judgedAgain(sheet, *tables, other);
    ASSERT_TRUE(again.ok());
    const Json written = Json::parse(writeJson(sheetToJson(sheet)));
    const Json judged = Json::parse(writeJson(verdictToJson(*verdict)));
    const Json whatIf = Json::parse(writeJson(whatIfToJson(*again, other)));

    Validator validator;
    validator.expect("sheet", typed, true, "as typed");
    validator.expect("sheet", written, true, "as written");
    validator.expect("verdict", judged, true, "as judged");
    validator.expect("what-if", whatIf, true, "as judged");
    validator.expect("verdict", whatIf, false, "a what-if");
    validator.expect("sheet", judged, false, "a verdict");

    const auto altered = [&](const std::string& schema, const Json& document,
                             const std::string& pointer, const Json& value) {
        Json other_ = document;
        other_[Json::json_pointer(pointer)] = value;
        validator.expect(schema, other_, false, pointer);
    };
    altered("sheet", written, "/format", "fettlemark-sheet/2");
    altered("sheet", written, "/examinations/0/thickness_mm", 0);
    altered("sheet", written, "/examinations/0/thickness_mm", "40");
    altered("sheet", written, "/examinations/0/method", "RT");
    altered("sheet", written, "/examinations/0/no_indications", true);
    altered("sheet", written, "/examinations/0/indications/0/colour", "red");
    altered("sheet", written, "/examinations/0/indications/0/kind", "planar");
    altered("sheet", written, "/examinations/0/indications/1/reason", " ");
    altered("sheet", written, "/examinations/0/indications/1/class", "non-linear");
    altered("sheet", written, "/examinations/1/indications/0/fbh_mm", 0);
    altered("sheet", written, "/examinations/1/forbidden_kinds", Json::array({"crack"}));
    altered("sheet", written, "/examinations/0/dead_zone_mm", 5);
    altered("verdict", judged, "/verdict", "accepted");
    altered("verdict", judged, "/verdict", "acceptable");
    altered("verdict", judged, "/examinations/0/verdict", nullptr);
    altered("verdict", judged, "/examinations/0/checks/0/passes", "yes");
    altered("verdict", judged, "/examinations/0/table/status", "unknown");
    altered("what-if", whatIf, "/warning", "");
    altered("what-if", whatIf, "/verdict", "acceptable");
    EXPECT_NE(verdict->word, Word::Acceptable);
    EXPECT_EQ(validator.run(), validator.allDone());
}

/// An entry with a sound text in every field.
template <class T>
Json filledEntry() {
    Json row;
    for (const Field<T>& field : T::fields()) {
        std::string text = "x";
        const auto& choices = field.info.choices;
        if (!choices.empty()) text = choices.substr(0, choices.find('|'));
        if (field.info.kind == FieldKind::Date) text = "2026-11-25";
        if (field.info.kind == FieldKind::Moment) text = "2026-11-25T09:30:00Z";
        if (field.info.kind == FieldKind::Number) text = "-1,5";
        if (field.info.kind == FieldKind::Whole) text = "7";
        if (field.info.kind == FieldKind::YesNo) text = "no";
        if (field.info.kind == FieldKind::Sha256) text = std::string(64, '0');
        row[std::string(field.info.key)] = text;
        EXPECT_FALSE(wrongText(field.info, text)) << T::kRegister << " " << field.info.key;
    }
    return {{"format", kEntryFormat}, {"register", T::kRegister}, {"rows", Json::array({row})}};
}

TEST(Schemas, OracleSayOfEachRegisterWhatItsFieldsSay) {
    Validator validator;
    const auto check = [&]<class T>() {
        const std::string name(T::kRegister);
        const Json entry = filledEntry<T>();
        validator.expect(name, entry, true, "filled");
        for (const Field<T>& field : T::fields()) {
            const std::string key(field.info.key);
            const auto with = [&](const char* text) {
                Json other = entry;
                other["rows"][0][key] = text;
                // What is wrong to the program is wrong to the schema, and the other way round;
                // but for days that the calendar has not, which a pattern does not know, and
                // blanks.
                const bool kept = !wrongText(field.info, text) ||
                                  (*text == '\0' && mayStandElsewhere<T>(field.info));
                validator.expect(name, other, kept, key + "=" + text);
            };
            for (const char* text : {"", "x", "yes", "12", "1.5", ".5", "-.5", "01", "a\nb", "1e3",
                                     "2026-11-25", "2026-11-25T09:30:00Z"})
                with(text);
            Json without = entry;
            without["rows"][0].erase(key);
            validator.expect(
                name, without,
                field.info.need == FieldInfo::Need::Optional || mayStandElsewhere<T>(field.info),
                "without " + key);
        }
        Json more = entry;
        more["rows"][0]["no_such_field"] = "x";
        validator.expect(name, more, false, "with another field");
        Json none = entry;
        none["rows"] = Json::array();
        validator.expect(name, none, false, "without a row");
    };
    forEachRegister(check);
    check.operator()<PersonLine>();
    check.operator()<PartLine>();
    check.operator()<ZonePlanLine>();
    check.operator()<OrderLine>();
    check.operator()<CastingLine>();
    EXPECT_EQ(validator.run(), validator.allDone());
}

TEST(Schemas, AreNamed) {
    EXPECT_THAT(schemaNames(), Contains("sheet"));
    EXPECT_THAT(schemaNames(), Contains("casting-record"));
    EXPECT_THAT(schemaNames(), Contains("equipment check"));
    const auto none = publishedSchema("no such");
    ASSERT_FALSE(none.ok());
    EXPECT_THAT(none.error().message(), StartsWith("there is no schema \"no such\"; there are: "));
}

/// Every "#/$defs/..." that a schema refers to is in it.
void expectWhole(const Json& value, const Json& definitions, const std::string& schema) {
    if (value.is_object() && value.contains("$ref")) {
        const auto target = value["$ref"].get<std::string>();
        ASSERT_THAT(target, StartsWith("#/$defs/"));
        EXPECT_TRUE(definitions.contains(target.substr(8))) << schema << " " << target;
    }
    if (value.is_structured())
        for (const auto& each : value) expectWhole(each, definitions, schema);
}

TEST(Schemas, AreWhole) {
    for (const std::string& name : schemaNames()) {
        const auto schema = publishedSchema(name);
        ASSERT_TRUE(schema.ok()) << name;
        const Json parsed = Json::parse(writeJson(*schema));
        EXPECT_EQ(parsed["$schema"], "https://json-schema.org/draft/2020-12/schema");
        expectWhole(parsed, parsed["$defs"], name);
    }
}

}  // namespace
}  // namespace model
