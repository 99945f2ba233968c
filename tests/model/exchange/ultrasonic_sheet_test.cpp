// SPDX-License-Identifier: Apache-2.0
// Ultrasonic examinations of a sheet: read field by field, refused with the path of what is wrong.
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include "exchange/json_document.h"
#include "exchange/json_text.h"
#include "exchange/sheet_json.h"

namespace model {
namespace {

using Json = nlohmann::ordered_json;
using testing::ElementsAre;
using testing::HasSubstr;

/// A sheet with every field that an ultrasonic examination has.
Json fullSheet() {
    return Json::parse(R"({
        "format": "fettlemark-sheet/1",
        "casting": {"serial": "Q-1", "heat": "H 7", "part": "P 9", "drawing": "D 3",
                    "material": "spheroidal graphite iron"},
        "examinations": [
          {"zone": "Z1", "method": "UT", "stage": "as cast", "thickness_mm": 60,
           "table": "EN 12680-3:2003", "levels": {"all": "2"}, "zone_area_mm2": 10000.5,
           "testability": {"smallest_fbh_mm": 2, "signal_to_noise_db": -1.5}, "dead_zone_mm": 5,
           "directions": ["from above", "from below"], "forbidden_kinds": ["planar", "dross"],
           "indications": [
             {"id": "u1", "x_mm": 120, "y_mm": 80, "depth_mm": 45, "fbh_mm": 2.7,
              "length_mm": 22, "width_mm": 9, "angle_deg": 30, "area_mm2": 155,
              "back_wall_loss_db": 6, "back_wall_loss_explained": "edge",
              "over_reference_db": -2.5, "wall_mm": 80, "not_measurable": ["through_wall"],
              "kind": "volumetric"},
             {"id": "u2", "x_mm": 1, "y_mm": 2, "depth_mm": 0, "through_wall_mm": 4,
              "not_measurable": ["width", "length"], "relevance": "false", "reason": "couplant"},
             {"id": "u3", "x_mm": 1, "y_mm": 2}]}]})");
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

std::string refused(const Json& json) {
    const Result<Sheet> sheet = read(json);
    EXPECT_FALSE(sheet.ok()) << json.dump(2);
    return sheet.ok() ? "" : sheet.error().message();
}

TEST(UltrasonicSheet, IsReadFieldByField) {
    const Result<Sheet> sheet = read(fullSheet());
    ASSERT_TRUE(sheet.ok()) << sheet.error().message();
    const Examination& e = sheet->examinations.at(0);
    EXPECT_EQ(e.method, Method::Ultrasonic);
    EXPECT_THAT(e.forbiddenKinds, ElementsAre(Kind::Planar, Kind::Dross));
    EXPECT_EQ(e.ultrasonic.zoneArea, Area::fromMillionths(10'000'500'000));
    EXPECT_EQ(e.ultrasonic.testability->smallestFbh, millimetres(2));
    EXPECT_EQ(e.ultrasonic.testability->signalToNoise, GainStep::fromMillionths(-1'500'000));
    EXPECT_EQ(e.ultrasonic.deadZone, millimetres(5));
    EXPECT_THAT(e.ultrasonic.directions, ElementsAre("from above", "from below"));
    EXPECT_TRUE(e.indications.empty());
    ASSERT_EQ(e.reflectors.size(), 3U);

    const Reflector& first = e.reflectors[0];
    EXPECT_EQ(first.id, "u1");
    EXPECT_EQ(first.x, millimetres(120));
    EXPECT_EQ(first.y, millimetres(80));
    EXPECT_EQ(first.depth, millimetres(45));
    EXPECT_EQ(first.fbh, nanometres(2'700'000));
    EXPECT_EQ(first.length, millimetres(22));
    EXPECT_EQ(first.width, millimetres(9));
    EXPECT_EQ(first.throughWall, std::nullopt);
    EXPECT_EQ(first.angle, degrees(30));
    EXPECT_EQ(first.area, squareMillimetres(155));
    EXPECT_EQ(first.backWallLoss, decibels(6));
    EXPECT_EQ(first.backWallLossExplained, "edge");
    EXPECT_EQ(first.overReference, GainStep::fromMillionths(-2'500'000));
    EXPECT_EQ(first.wall, millimetres(80));
    EXPECT_FALSE(first.lengthNotMeasurable);
    EXPECT_FALSE(first.widthNotMeasurable);
    EXPECT_TRUE(first.throughWallNotMeasurable);
    EXPECT_EQ(first.kind, Kind::Volumetric);
    EXPECT_EQ(first.relevance, Relevance::Relevant);

    const Reflector& second = e.reflectors[1];
    EXPECT_EQ(second.depth, Length{});
    EXPECT_EQ(second.throughWall, millimetres(4));
    EXPECT_TRUE(second.lengthNotMeasurable);
    EXPECT_TRUE(second.widthNotMeasurable);
    EXPECT_EQ(second.relevance, Relevance::False);
    EXPECT_EQ(second.reason, "couplant");
}

TEST(UltrasonicSheet, KeepsWhatIsNotThereApartFromZero) {
    const Result<Sheet> sheet = read(fullSheet());
    ASSERT_TRUE(sheet.ok());
    const Reflector& bare = sheet->examinations[0].reflectors[2];
    EXPECT_EQ(bare.depth, std::nullopt);
    EXPECT_EQ(bare.fbh, std::nullopt);
    EXPECT_EQ(bare.length, std::nullopt);
    EXPECT_EQ(bare.width, std::nullopt);
    EXPECT_EQ(bare.throughWall, std::nullopt);
    EXPECT_EQ(bare.area, std::nullopt);
    EXPECT_EQ(bare.backWallLoss, std::nullopt);
    EXPECT_EQ(bare.overReference, std::nullopt);
    EXPECT_EQ(bare.wall, std::nullopt);
    EXPECT_EQ(bare.kind, std::nullopt);
    Json without = fullSheet();
    for (const char* name : {"zone_area_mm2", "testability", "dead_zone_mm", "directions"})
        examinationIn(without).erase(name);
    const Result<Sheet> read2 = read(without);
    ASSERT_TRUE(read2.ok());
    const UltrasonicTest& test = read2->examinations[0].ultrasonic;
    EXPECT_EQ(test.zoneArea, std::nullopt);
    EXPECT_FALSE(test.testability.has_value());
    EXPECT_EQ(test.deadZone, std::nullopt);
    EXPECT_TRUE(test.directions.empty());
}

TEST(UltrasonicSheet, RefusesAWrongFieldOfAnIndicationByItsPath) {
    const std::pair<const char*, Json> wrong[] = {{"depth_mm", -1},
                                                  {"fbh_mm", 0},
                                                  {"length_mm", 0},
                                                  {"width_mm", -2},
                                                  {"through_wall_mm", 0},
                                                  {"area_mm2", 0},
                                                  {"wall_mm", 0},
                                                  {"back_wall_loss_db", -1},
                                                  {"kind", "crack"},
                                                  {"kind", "unknown"},
                                                  {"x_mm", "1"},
                                                  {"id", " "},
                                                  {"relevance", "perhaps"},
                                                  {"not_measurable", "length"},
                                                  {"removed_mm", 1},
                                                  {"class", "linear"},
                                                  {"width_mm", 22.5},
                                                  {"fbh_mm", nullptr}};
    for (const auto& [name, value] : wrong) {
        Json bad = fullSheet();
        indicationIn(bad)[name] = value;
        EXPECT_THAT(refused(bad), HasSubstr(std::string("examinations[0].indications[0].") + name))
            << value.dump();
    }
}

TEST(UltrasonicSheet, RefusesWhatIsMeasuredAndNotMeasurable) {
    for (const char* word : {"length", "width"}) {
        Json bad = fullSheet();
        indicationIn(bad)["not_measurable"] = {word};
        EXPECT_THAT(refused(bad), HasSubstr("indications[0].not_measurable[0]")) << word;
    }
    Json bad = fullSheet();
    indicationIn(bad)["through_wall_mm"] = 4;
    EXPECT_THAT(refused(bad), HasSubstr("not_measurable[0]"));
    bad = fullSheet();
    indicationIn(bad)["not_measurable"] = {"through_wall", "through_wall"};
    EXPECT_THAT(refused(bad),
                HasSubstr("not_measurable[1]: \"through_wall\" stands there already"));
    indicationIn(bad)["not_measurable"] = {"area"};
    EXPECT_THAT(refused(bad), HasSubstr("not_measurable[0]: \"area\" is not a word for it"));
}

TEST(UltrasonicSheet, RefusesAnExplanationOfNoLossAndADismissalWithoutAReason) {
    Json bad = fullSheet();
    indicationIn(bad).erase("back_wall_loss_db");
    EXPECT_THAT(refused(bad),
                HasSubstr("indications[0].back_wall_loss_explained: explains a loss"));
    bad = fullSheet();
    indicationIn(bad)["relevance"] = "non-relevant";
    EXPECT_THAT(refused(bad), HasSubstr("indications[0].reason: is missing"));
}

TEST(UltrasonicSheet, RefusesAWrongFieldOfTheExaminationByItsPath) {
    const std::pair<const char*, Json> wrong[] = {
        {"zone_area_mm2", 0},
        {"dead_zone_mm", -1},
        {"testability", {{"noise", 1}}},
        {"testability", {{"smallest_fbh_mm", 0}}},
        {"testability", 3},
        {"directions", "from above"},
        {"directions", Json::array({1})},
        {"directions", Json::array({" "})},
        {"directions", Json::array({"from above", "from above"})},
        {"forbidden_kinds", Json::array({"crack"})}};
    for (const auto& [name, value] : wrong) {
        Json bad = fullSheet();
        examinationIn(bad)[name] = value;
        EXPECT_THAT(refused(bad), HasSubstr(std::string("examinations[0].") + name))
            << value.dump();
    }
}

TEST(UltrasonicSheet, KeepsTheFieldsOfTheMethodsApart) {
    Json surface = fullSheet();
    examinationIn(surface)["method"] = "MT";
    EXPECT_THAT(refused(surface), HasSubstr("zone_area_mm2: is not a field that is known here"));
    for (const char* name : {"zone_area_mm2", "testability", "dead_zone_mm", "directions"})
        examinationIn(surface).erase(name);
    EXPECT_THAT(refused(surface), HasSubstr("forbidden_kinds[0]"));
    examinationIn(surface).erase("forbidden_kinds");
    EXPECT_THAT(refused(surface), HasSubstr("depth_mm: is not a field that is known here"));
    examinationIn(surface)["indications"] =
        Json::array({{{"id", "1"}, {"x_mm", 1}, {"y_mm", 1}, {"length_mm", 3}, {"width_mm", 3}}});
    EXPECT_TRUE(read(surface).ok());
    indicationIn(surface)["kind"] = "planar";
    EXPECT_THAT(refused(surface), HasSubstr("indications[0].kind: \"planar\" is not a word"));
}

TEST(UltrasonicSheet, IsReadBackAsWritten) {
    const Result<Sheet> sheet = read(fullSheet());
    ASSERT_TRUE(sheet.ok());
    const std::string written = writeJson(sheetToJson(*sheet));
    EXPECT_EQ(Json::parse(written)["examinations"][0]["indications"][1]["not_measurable"],
              Json::array({"length", "width"}));
    const Result<JsonValue> again = parseJson(written, "s.json");
    ASSERT_TRUE(again.ok());
    const Result<Sheet> second = sheetFromJson(*again, "s.json");
    ASSERT_TRUE(second.ok()) << second.error().message();
    EXPECT_EQ(writeJson(sheetToJson(*second)), written);
    Json expected = fullSheet();
    for (const auto& [name, value] : indicationIn(expected).items())
        EXPECT_EQ(Json::parse(written)["examinations"][0]["indications"][0][name], value) << name;
}

}  // namespace
}  // namespace model
