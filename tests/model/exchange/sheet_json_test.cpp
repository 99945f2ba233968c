// SPDX-License-Identifier: Apache-2.0
#include "exchange/sheet_json.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include "exchange/json_document.h"
#include "exchange/json_text.h"

namespace model {
namespace {

using Json = nlohmann::ordered_json;
using testing::HasSubstr;

/// A sheet with every field of the format that a surface method has.
Json fullSheet() {
    return Json::parse(R"({
        "format": "fettlemark-sheet/1",
        "casting": {"serial": "Q-1", "heat": "H 7", "part": "P 9", "drawing": "D 3 rev B",
                    "material": "spheroidal graphite iron"},
        "examinations": [
          {"zone": "Z1", "method": "MT", "stage": "rough machined", "repair_cycle": 2, "repeat": 1,
           "thickness_mm": 40.5,
           "surface": {"id": "S1", "x_mm": -10, "y_mm": 0.25, "angle_deg": 90, "width_mm": 600,
                       "height_mm": 400, "period_x_mm": 1570.8},
           "table": "EN 1369:2012",
           "levels": {"non-linear": "SM 2", "linear": "LM 4", "aligned": "AM 4"},
           "forbidden_kinds": ["crack", "hot tear"],
           "no_indications": false,
           "not_examined": [{"area_mm2": 400, "reason": "clamp", "agreed": "A 12"},
                            {"area_mm2": 1, "reason": "lug"}],
           "rejected": {"by": "L. Two", "reason": "shape of a tear"},
           "invalid": {"by": "L. Three", "reason": "lamp below its limit"},
           "indications": [
             {"id": "1", "x_mm": 10.0, "y_mm": 22.5, "length_mm": 3.0, "width_mm": 0.5,
              "angle_deg": 30, "area_mm2": 1.2, "kind": "cold shut", "class": "linear",
              "removed_mm": 6, "relevance": "non-relevant", "reason": "tool mark"},
             {"id": "2", "x_mm": 1, "y_mm": 2, "length_mm": 4.000001, "class": "linear"},
             {"id": "3", "x_mm": 1, "y_mm": 2, "length_mm": 4, "width_mm": 4}]},
          {"zone": "Z2", "method": "PT", "stage": "as cast", "thickness_mm": 8,
           "table": "EN 1371-1:2011", "levels": {}, "no_indications": true, "indications": []}]})");
}

Json& examinationIn(Json& sheet) {
    return sheet["examinations"][0];
}
Json& indicationIn(Json& sheet, int index = 0) {
    return sheet["examinations"][0]["indications"][static_cast<std::size_t>(index)];
}

Result<Sheet> read(const Json& sheet) {
    Result<JsonValue> document = parseJson(sheet.dump(), "s.json");
    if (!document) return document.error();
    return sheetFromJson(*document, "s.json");
}

Sheet sheetOf(const Json& json) {
    Result<Sheet> sheet = read(json);
    EXPECT_TRUE(sheet.ok()) << (sheet.ok() ? "" : sheet.error().message());
    return sheet.ok() ? std::move(sheet).value() : Sheet{};
}

std::string refused(const Json& json) {
    const Result<Sheet> sheet = read(json);
    EXPECT_FALSE(sheet.ok()) << json.dump(2);
    if (sheet.ok()) return "";
    EXPECT_EQ(sheet.error().kind, ErrorKind::Input);
    return sheet.error().message();
}

TEST(SheetJson, ReadsEveryFieldExactly) {
    const Sheet sheet = sheetOf(fullSheet());
    EXPECT_EQ(sheet.casting.serial, "Q-1");
    EXPECT_EQ(sheet.casting.heat, "H 7");
    EXPECT_EQ(sheet.casting.part, "P 9");
    EXPECT_EQ(sheet.casting.drawing, "D 3 rev B");
    EXPECT_EQ(sheet.casting.material, Material::SpheroidalGraphiteIron);
    ASSERT_EQ(sheet.examinations.size(), 2U);

    const Examination& first = sheet.examinations[0];
    EXPECT_EQ(first.zone, "Z1");
    EXPECT_EQ(first.method, Method::Magnetic);
    EXPECT_EQ(first.stage, Stage::RoughMachined);
    EXPECT_EQ(first.repairCycle, 2);
    EXPECT_EQ(first.repeat, 1);
    EXPECT_EQ(first.thickness, Length::fromMillionths(40'500'000));
    ASSERT_TRUE(first.surface);
    EXPECT_EQ(first.surface->id, "S1");
    EXPECT_EQ(first.surface->placement.x, millimetres(-10));
    EXPECT_EQ(first.surface->placement.y, Length::fromMillionths(250'000));
    EXPECT_EQ(first.surface->placement.angle, degrees(90));
    EXPECT_EQ(first.surface->width, millimetres(600));
    EXPECT_EQ(first.surface->height, millimetres(400));
    EXPECT_EQ(first.surface->period, Length::fromMillionths(1'570'800'000));
    EXPECT_EQ(first.table, "EN 1369:2012");
    EXPECT_EQ(first.levels, (std::map<std::string, std::string>{
                                {"non-linear", "SM 2"}, {"linear", "LM 4"}, {"aligned", "AM 4"}}));
    EXPECT_EQ(first.forbiddenKinds, (std::vector{Kind::Crack, Kind::HotTear}));
    EXPECT_FALSE(first.noIndications);
    ASSERT_EQ(first.notExamined.size(), 2U);
    EXPECT_EQ(first.notExamined[0].area, squareMillimetres(400));
    EXPECT_EQ(first.notExamined[0].reason, "clamp");
    EXPECT_EQ(first.notExamined[0].agreed, "A 12");
    EXPECT_EQ(first.notExamined[1].agreed, "");

    ASSERT_EQ(first.indications.size(), 3U);
    const Indication& indication = first.indications[0];
    EXPECT_EQ(indication.id, "1");
    EXPECT_EQ(indication.x, millimetres(10));
    EXPECT_EQ(indication.y, Length::fromMillionths(22'500'000));
    EXPECT_EQ(indication.length, millimetres(3));
    EXPECT_EQ(indication.width, Length::fromMillionths(500'000));
    EXPECT_EQ(indication.angle, degrees(30));
    EXPECT_EQ(indication.area, Area::fromMillionths(1'200'000));
    EXPECT_EQ(indication.kind, Kind::ColdShut);
    EXPECT_EQ(indication.stated, StatedClass::Linear);
    EXPECT_EQ(indication.removed, millimetres(6));
    EXPECT_EQ(indication.relevance, Relevance::NonRelevant);
    EXPECT_EQ(indication.reason, "tool mark");
    EXPECT_EQ(first.indications[1].length, Length::fromMillionths(4'000'001));
}

TEST(SheetJson, TakesDefaultsOnlyWhereTheFormatHasThem) {
    const Sheet sheet = sheetOf(fullSheet());
    const Indication& hairline = sheet.examinations[0].indications[1];
    EXPECT_FALSE(hairline.width.has_value());
    EXPECT_EQ(hairline.angle, degrees(0));
    EXPECT_FALSE(hairline.area.has_value());
    EXPECT_FALSE(hairline.kind.has_value());
    EXPECT_FALSE(hairline.removed.has_value());
    EXPECT_EQ(hairline.relevance, Relevance::Relevant);
    const Examination& second = sheet.examinations[1];
    EXPECT_EQ(second.repairCycle, 0);
    EXPECT_EQ(second.repeat, 0);
    EXPECT_FALSE(second.surface.has_value());
    EXPECT_TRUE(second.noIndications);
}

TEST(SheetJson, NamesEveryMissingField) {
    for (const char* name : {"format", "casting", "examinations"}) {
        Json sheet = fullSheet();
        sheet.erase(name);
        EXPECT_EQ(refused(sheet), std::string("s.json: ") + name + ": is missing");
    }
    for (const char* name : {"serial", "heat", "part", "drawing", "material"}) {
        Json sheet = fullSheet();
        sheet["casting"].erase(name);
        EXPECT_EQ(refused(sheet), std::string("s.json: casting.") + name + ": is missing");
    }
    for (const char* name :
         {"zone", "method", "stage", "thickness_mm", "table", "levels", "indications"}) {
        Json sheet = fullSheet();
        examinationIn(sheet).erase(name);
        EXPECT_EQ(refused(sheet), std::string("s.json: examinations[0].") + name + ": is missing");
    }
    for (const char* name : {"id", "x_mm", "y_mm", "angle_deg", "width_mm", "height_mm"}) {
        Json sheet = fullSheet();
        examinationIn(sheet)["surface"].erase(name);
        EXPECT_EQ(refused(sheet),
                  std::string("s.json: examinations[0].surface.") + name + ": is missing");
    }
    for (const char* name : {"id", "x_mm", "y_mm", "length_mm"}) {
        Json sheet = fullSheet();
        indicationIn(sheet).erase(name);
        EXPECT_EQ(refused(sheet),
                  std::string("s.json: examinations[0].indications[0].") + name + ": is missing");
    }
    for (const char* name : {"area_mm2", "reason"}) {
        Json sheet = fullSheet();
        examinationIn(sheet)["not_examined"][0].erase(name);
        EXPECT_EQ(refused(sheet),
                  std::string("s.json: examinations[0].not_examined[0].") + name + ": is missing");
    }
}

TEST(SheetJson, NamesEveryFieldOfAnotherType) {
    // Pointers (RFC 6901) to a field of each type, and the path that must be named.
    const std::pair<const char*, const char*> fields[] = {
        {"/format", "format"},
        {"/casting", "casting"},
        {"/casting/serial", "casting.serial"},
        {"/casting/material", "casting.material"},
        {"/examinations", "examinations"},
        {"/examinations/1", "examinations[1]"},
        {"/examinations/0/method", "examinations[0].method"},
        {"/examinations/0/repair_cycle", "examinations[0].repair_cycle"},
        {"/examinations/0/thickness_mm", "examinations[0].thickness_mm"},
        {"/examinations/0/surface", "examinations[0].surface"},
        {"/examinations/0/surface/period_x_mm", "examinations[0].surface.period_x_mm"},
        {"/examinations/0/levels", "examinations[0].levels"},
        {"/examinations/0/levels/linear", "examinations[0].levels.linear"},
        {"/examinations/0/forbidden_kinds", "examinations[0].forbidden_kinds"},
        {"/examinations/0/forbidden_kinds/1", "examinations[0].forbidden_kinds[1]"},
        {"/examinations/0/not_examined/0", "examinations[0].not_examined[0]"},
        {"/examinations/0/indications", "examinations[0].indications"},
        {"/examinations/0/indications/2", "examinations[0].indications[2]"},
        {"/examinations/0/indications/0/id", "examinations[0].indications[0].id"},
        {"/examinations/0/indications/0/x_mm", "examinations[0].indications[0].x_mm"},
        {"/examinations/0/indications/0/kind", "examinations[0].indications[0].kind"},
        {"/examinations/0/indications/0/area_mm2", "examinations[0].indications[0].area_mm2"}};
    for (const auto& [pointer, path] : fields) {
        Json sheet = fullSheet();
        sheet[Json::json_pointer(pointer)] = true;
        EXPECT_THAT(refused(sheet),
                    testing::StartsWith(std::string("s.json: ") + path + ": must be "));
    }
    Json sheet = fullSheet();
    examinationIn(sheet)["no_indications"] = "false";
    EXPECT_EQ(refused(sheet),
              "s.json: examinations[0].no_indications: must be true or false, not a string");
    sheet = fullSheet();
    indicationIn(sheet)["x_mm"] = "10";
    EXPECT_EQ(refused(sheet),
              "s.json: examinations[0].indications[0].x_mm: must be a number, not a string");
}

TEST(SheetJson, NamesEveryUnknownField) {
    for (const char* pointer :
         {"/extra", "/casting/extra", "/examinations/0/extra", "/examinations/0/surface/extra",
          "/examinations/0/not_examined/0/extra", "/examinations/0/indications/0/extra"}) {
        Json sheet = fullSheet();
        sheet[Json::json_pointer(pointer)] = 1;
        EXPECT_THAT(refused(sheet), HasSubstr("extra: is not a field that is known here"));
    }
    Json sheet = fullSheet();
    indicationIn(sheet)["fbh_mm"] = 2;  // ultrasonic only
    EXPECT_THAT(refused(sheet), HasSubstr("indications[0].fbh_mm: is not a field"));
}

TEST(SheetJson, RefusesWordsThatItDoesNotKnow) {
    for (const char* pointer :
         {"/casting/material", "/examinations/0/method", "/examinations/0/stage",
          "/examinations/0/forbidden_kinds/0", "/examinations/0/indications/0/kind",
          "/examinations/0/indications/0/class", "/examinations/0/indications/0/relevance"}) {
        Json sheet = fullSheet();
        sheet[Json::json_pointer(pointer)] = "Crack";
        EXPECT_THAT(refused(sheet), HasSubstr(": \"Crack\" is not a word for it")) << pointer;
    }
    Json sheet = fullSheet();
    sheet["format"] = "fettlemark-sheet/2";
    EXPECT_EQ(refused(sheet),
              "s.json: format: must be \"fettlemark-sheet/1\", not \"fettlemark-sheet/2\"");
}

TEST(SheetJson, RefusesSizesThatAreNone) {
    const char* const positive[] = {"/examinations/0/thickness_mm",
                                    "/examinations/0/surface/width_mm",
                                    "/examinations/0/surface/height_mm",
                                    "/examinations/0/surface/period_x_mm",
                                    "/examinations/0/not_examined/0/area_mm2",
                                    "/examinations/0/indications/0/length_mm",
                                    "/examinations/0/indications/0/width_mm",
                                    "/examinations/0/indications/0/area_mm2",
                                    "/examinations/0/indications/0/removed_mm"};
    for (const char* pointer : positive) {
        for (const double value : {0.0, -3.0}) {
            Json sheet = fullSheet();
            sheet[Json::json_pointer(pointer)] = value;
            EXPECT_THAT(refused(sheet), HasSubstr("must be greater than 0")) << pointer;
        }
    }
    for (const char* name : {"repair_cycle", "repeat"}) {
        Json sheet = fullSheet();
        examinationIn(sheet)[name] = -1;
        EXPECT_THAT(refused(sheet), HasSubstr("must not be negative"));
        examinationIn(sheet)[name] = 1.5;
        EXPECT_THAT(refused(sheet), HasSubstr("must be a whole number"));
    }
}

TEST(SheetJson, RefusesAWidthAboveTheLength) {
    Json sheet = fullSheet();
    indicationIn(sheet, 2)["width_mm"] = 4.000001;
    EXPECT_EQ(refused(sheet),
              "s.json: examinations[0].indications[2].width_mm: is 4.000001, above length_mm, "
              "which is 4");
}

TEST(SheetJson, WantsAClassWhereThereIsNoWidth) {
    Json sheet = fullSheet();
    indicationIn(sheet, 1).erase("class");
    EXPECT_THAT(refused(sheet), HasSubstr("indications[1].width_mm: is missing"));
    indicationIn(sheet, 1)["class"] = "non-linear";
    EXPECT_THAT(refused(sheet), HasSubstr("indications[1].width_mm: is missing"));
}

TEST(SheetJson, WantsAReasonWhereNotRelevant) {
    for (const char* relevance : {"non-relevant", "false"}) {
        Json sheet = fullSheet();
        indicationIn(sheet)["relevance"] = relevance;
        indicationIn(sheet).erase("reason");
        EXPECT_THAT(refused(sheet), HasSubstr("indications[0].reason: is missing"));
        indicationIn(sheet)["reason"] = " \t";
        EXPECT_THAT(refused(sheet), HasSubstr("indications[0].reason: must not be empty"));
    }
}

TEST(SheetJson, RefusesFindingsBesideNothingFound) {
    Json sheet = fullSheet();
    examinationIn(sheet)["no_indications"] = true;
    EXPECT_THAT(refused(sheet), HasSubstr("examinations[0].no_indications: is true"));
}

TEST(SheetJson, TakesAnAgreementWithoutANumberAsNone) {
    Json sheet = fullSheet();
    examinationIn(sheet)["not_examined"][0]["agreed"] = " ";
    EXPECT_EQ(sheetOf(sheet).examinations[0].notExamined[0].agreed, "");
}

TEST(SheetJson, IsReadBackAsWritten) {
    const std::string written = writeJson(sheetToJson(sheetOf(fullSheet())));
    // What was left out comes back as its default; everything else as it was.
    Json expected = fullSheet();
    Json& second = expected["examinations"][1];
    second = Json{{"zone", "Z2"},
                  {"method", "PT"},
                  {"stage", "as cast"},
                  {"repair_cycle", 0},
                  {"repeat", 0},
                  {"thickness_mm", 8},
                  {"table", "EN 1371-1:2011"},
                  {"levels", Json::object()},
                  {"forbidden_kinds", Json::array()},
                  {"no_indications", true},
                  {"not_examined", Json::array()},
                  {"indications", Json::array()}};
    for (const int index : {1, 2}) {
        indicationIn(expected, index)["angle_deg"] = 0;
        indicationIn(expected, index)["relevance"] = "relevant";
    }
    EXPECT_EQ(nlohmann::json::parse(written), nlohmann::json(expected));
    EXPECT_EQ(writeJson(sheetToJson(sheetOf(Json::parse(written)))), written);
}

TEST(SheetJson, ReadsWhatPersonsStateAgainstAnExamination) {
    const Sheet sheet = sheetOf(fullSheet());
    EXPECT_EQ(sheet.examinations[0].rejected, (Objection{"L. Two", "shape of a tear"}));
    EXPECT_EQ(sheet.examinations[0].invalid, (Objection{"L. Three", "lamp below its limit"}));
    EXPECT_EQ(sheet.examinations[1].rejected, std::nullopt);
    EXPECT_EQ(sheet.examinations[1].invalid, std::nullopt);
    for (const char* name : {"rejected", "invalid"})
        for (const char* member : {"by", "reason"}) {
            Json bad = fullSheet();
            examinationIn(bad)[name][member] = " ";
            EXPECT_THAT(refused(bad), HasSubstr(std::string("[0].") + name + "." + member));
            examinationIn(bad)[name].erase(member);
            EXPECT_THAT(refused(bad), HasSubstr(std::string("[0].") + name + "." + member));
        }
}

TEST(SheetJson, RefusesMoreIndicationsThanItCanJudge) {
    Json sheet = fullSheet();
    Json& list = examinationIn(sheet)["indications"];
    const Json one = {{"id", "1"}, {"x_mm", 1}, {"y_mm", 1}, {"length_mm", 1}, {"width_mm", 1}};
    for (std::size_t i = list.size(); i <= kMostIndications; ++i) list.push_back(one);
    EXPECT_EQ(refused(sheet),
              "s.json: examinations[0].indications: holds more than 100000 entries");
}

}  // namespace
}  // namespace model
