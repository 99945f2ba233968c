// SPDX-License-Identifier: Apache-2.0
// What judge says of ultrasonic sheets, with its exit codes. The limits are those of EN 12680-3
// Table 1 at level 2 for a wall from 50 to 200 mm: 20 % of the wall through it, 1000 mm2 in the
// rim, 15 000 in the core (read).
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "process.h"
#include "sheets.h"

namespace app {
namespace {

using testing::HasSubstr;

/// A hub of iron, 60 mm thick, with one volumetric indication in the middle of the wall.
Json ultrasonicSheet() {
    return Json::parse(R"({
        "format": "fettlemark-sheet/1",
        "casting": {"serial": "Q-18-7", "heat": "H 7", "part": "P 9", "drawing": "D 3",
                    "material": "spheroidal graphite iron"},
        "examinations": [
          {"zone": "Z1", "method": "UT", "stage": "rough machined", "thickness_mm": 60,
           "table": "EN 12680-3:2003", "levels": {"all": "2"}, "zone_area_mm2": 100000,
           "testability": {"smallest_fbh_mm": 3, "signal_to_noise_db": 12},
           "dead_zone_mm": 5, "directions": ["from the outside", "from the bore"],
           "indications": [
             {"id": "u1", "x_mm": 120, "y_mm": 80, "depth_mm": 25, "fbh_mm": 8,
              "length_mm": 40, "width_mm": 25, "through_wall_mm": 12, "angle_deg": 0,
              "area_mm2": 785, "back_wall_loss_db": 6, "kind": "volumetric"}]}]})");
}

Finished judged(const Json& sheet, const std::vector<std::string>& options = {}) {
    std::vector<std::string> arguments{"judge", "-"};
    arguments.insert(arguments.end(), options.begin(), options.end());
    return runCli(arguments, sheet.dump());
}

Json zoneOf(const Finished& finished) {
    const Json verdict = Json::parse(finished.output, nullptr, false);
    EXPECT_FALSE(verdict.is_discarded()) << finished.output << finished.error;
    return verdict.is_discarded() ? Json::object() : verdict["examinations"][0];
}

Json checkOf(const Json& zone, const std::string& rule, const std::string& classes) {
    for (const Json& check : zone["checks"])
        if (check["rule"] == rule && check["class"] == classes) return check;
    return nullptr;
}

TEST(UltrasonicVerdicts, AreAcceptableWithinTheLimits) {
    const Finished finished = judged(ultrasonicSheet(), {"--unattested"});
    EXPECT_EQ(finished.exitCode, 0) << finished.output << finished.error;
    EXPECT_EQ(judged(ultrasonicSheet()).exitCode, 3);
    const Json zone = zoneOf(finished);
    EXPECT_EQ(zone["verdict"], "acceptable");
    EXPECT_EQ(zone["indications"][0]["class"], "core");
    EXPECT_EQ(zone["indications"][0]["considered"], true);
    EXPECT_EQ(zone["best_levels"], (Json{{"all", "2"}}));
    const Json check = checkOf(zone, "through-wall extent", "rim and core");
    EXPECT_EQ(check["measured"], 12);
    EXPECT_EQ(check["limit"], 12);
    EXPECT_EQ(check["unit"], "mm");
    EXPECT_EQ(check["passes"], true);
    EXPECT_EQ(check["grade"], "R");
    EXPECT_EQ(check["members"], Json::array({"u1"}));
    // 785 of 100 000 mm2.
    EXPECT_EQ(checkOf(zone, "area share", "rim and core")["measured"], 0.785);
    EXPECT_EQ(checkOf(zone, "testability", "all")["limit"], 5);
}

TEST(UltrasonicVerdicts, AreNotAcceptableAboveThem) {
    Json sheet = ultrasonicSheet();
    indicationOf(sheet)["through_wall_mm"] = 12.1;
    const Finished finished = judged(sheet);
    EXPECT_EQ(finished.exitCode, 1);
    const Json zone = zoneOf(finished);
    EXPECT_EQ(zone["verdict"], "not acceptable");
    EXPECT_EQ(checkOf(zone, "through-wall extent", "rim and core")["passes"], false);
    EXPECT_EQ(zone["best_levels"], (Json{{"all", "3"}}));
}

TEST(UltrasonicVerdicts, AreNotJudgedWhereSomethingIsMissing) {
    const std::pair<const char*, const char*> missing[] = {{"testability", "testability"},
                                                           {"dead_zone_mm", "dead zone"},
                                                           {"directions", "directions"}};
    for (const auto& [field, reason] : missing) {
        Json sheet = ultrasonicSheet();
        examinationOf(sheet).erase(field);
        const Finished finished = judged(sheet, {"--unattested"});
        EXPECT_EQ(finished.exitCode, 3) << field;
        EXPECT_EQ(zoneOf(finished)["verdict"], "not judged");
        EXPECT_THAT(zoneOf(finished)["reasons"].dump(), HasSubstr(reason));
    }
    Json sheet = ultrasonicSheet();
    indicationOf(sheet).erase("through_wall_mm");
    const Finished finished = judged(sheet, {"--unattested"});
    EXPECT_EQ(finished.exitCode, 3);
    const Json zone = zoneOf(finished);
    EXPECT_EQ(zone["indications"][0]["class"], "rim or core");
    const Json check = checkOf(zone, "through-wall extent", "rim and core");
    EXPECT_EQ(check["passes"], nullptr);
    EXPECT_EQ(check["measured"], nullptr);
    EXPECT_EQ(check["reason"], "u1 was not measured");
    indicationOf(sheet)["not_measurable"] = {"through_wall"};
    EXPECT_THAT(checkOf(zoneOf(judged(sheet)), "through-wall extent", "rim and core")["reason"],
                HasSubstr("u1 is not measurable"));
}

TEST(UltrasonicVerdicts, CountAnIndicationWithoutADepthAsTheWorse) {
    // 1100 mm2 are too much for the rim and little for the core.
    Json sheet = ultrasonicSheet();
    indicationOf(sheet)["area_mm2"] = 1100;
    EXPECT_EQ(judged(sheet, {"--unattested"}).exitCode, 0);
    indicationOf(sheet).erase("depth_mm");
    const Finished finished = judged(sheet, {"--unattested"});
    EXPECT_EQ(finished.exitCode, 1);
    EXPECT_EQ(checkOf(zoneOf(finished), "individual area", "rim")["passes"], false);
    EXPECT_EQ(checkOf(zoneOf(finished), "individual area", "core")["passes"], true);
}

TEST(UltrasonicVerdicts, TakeLevelsApartForRimAndCore) {
    Json sheet = ultrasonicSheet();
    indicationOf(sheet)["through_wall_mm"] = 14;
    examinationOf(sheet)["levels"] = {{"rim", "2"}, {"core", "3"}};
    const Finished finished = judged(sheet, {"--unattested"});
    EXPECT_EQ(finished.exitCode, 0) << finished.output;
    EXPECT_EQ(zoneOf(finished)["best_levels"], (Json{{"core", "3"}, {"rim", "2"}}));
}

TEST(UltrasonicVerdicts, RefuseWhatCannotBeOrDoesNotBelongThere) {
    const auto refused = [](const Json& sheet, const std::string& path) {
        const Finished finished = judged(sheet);
        EXPECT_EQ(finished.exitCode, 2) << path;
        EXPECT_EQ(finished.output, "");
        EXPECT_THAT(finished.error, HasSubstr("standard input: examinations[0]." + path));
    };
    const std::tuple<const char*, Json, const char*> cases[] = {
        {"fbh_mm", 0, "indications[0].fbh_mm: "},
        {"length_mm", -1, "indications[0].length_mm: "},
        {"width_mm", 41, "indications[0].width_mm: "},
        {"depth_mm", 61, "indications[0].depth_mm: "},
        {"not_measurable", {"length"}, "indications[0].not_measurable[0]: "},
        {"relevance", "false", "indications[0].reason: "},
        {"back_wall_loss_explained", " ", "indications[0].back_wall_loss_explained: "},
        {"class", "linear", "indications[0].class: "},
        {"kind", "crack", "indications[0].kind: "}};
    for (const auto& [field, value, path] : cases) {
        Json sheet = ultrasonicSheet();
        indicationOf(sheet)[field] = value;
        refused(sheet, path);
    }
    Json sheet = ultrasonicSheet();
    examinationOf(sheet)["levels"] = {{"all", "2"}, {"rim", "2"}};
    refused(sheet, "levels.rim: ");
    sheet = ultrasonicSheet();
    examinationOf(sheet)["indications"].push_back(indicationOf(sheet));
    refused(sheet, "indications[1].id: ");
    sheet = ultrasonicSheet();
    examinationOf(sheet)["not_examined"] =
        Json::array({{{"area_mm2", 100001}, {"reason", "hidden"}, {"agreed", "A-1"}}});
    refused(sheet, "zone_area_mm2: ");
    Json surface = cleanSheet();
    examinationOf(surface)["dead_zone_mm"] = 1;
    refused(surface, "dead_zone_mm: ");
}

}  // namespace
}  // namespace app
