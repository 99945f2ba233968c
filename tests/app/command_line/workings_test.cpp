// SPDX-License-Identifier: Apache-2.0
// What workings prints, and how it refuses: exit 2, one line that says where and why, and nothing
// on standard output. The numbers are those of tests/model/ultrasonic, with their sources.
#include <algorithm>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "process.h"
#include "sheets.h"

namespace app {
namespace {

using testing::HasSubstr;
using testing::StartsWith;

Json worked(const std::string& question) {
    const Finished finished = runCli({"workings", "-"}, question);
    EXPECT_EQ(finished.exitCode, 0);
    EXPECT_EQ(finished.error, "");
    Json answer = Json::parse(finished.output, nullptr, false);
    EXPECT_FALSE(answer.is_discarded()) << finished.output;
    EXPECT_EQ(answer["format"], "fettlemark-worked/1");
    for (const char* text : {"formula", "source", "holds_for"})
        EXPECT_FALSE(answer[text].empty()) << text;
    return answer;
}

void expectRefused(const std::string& question, const std::string& place,
                   const std::string& reason) {
    const Finished finished = runCli({"workings", "-"}, question);
    EXPECT_EQ(finished.exitCode, 2) << finished.error;
    EXPECT_EQ(finished.output, "");
    EXPECT_EQ(std::ranges::count(finished.error, '\n'), 1) << finished.error;
    EXPECT_THAT(finished.error, StartsWith("standard input" + place + ": "));
    EXPECT_THAT(finished.error, HasSubstr(reason));
}

// Triangle 3-4-5, cos b = 0.6, wall 30 mm: 21 mm deep, and 24 mm on the second leg.
Json height() {
    return Json::parse(R"({"format": "fettlemark-working/1", "kind": "height",
        "angle_deg": 53.130102, "first_path_mm": 35, "second_path_mm": 60, "thickness_mm": 30,
        "surface": "flat"})");
}

TEST(WorkingsOracle, HeightOfTheTriangle) {
    const Json answer = worked(height().dump());
    EXPECT_EQ(answer["kind"], "height");
    EXPECT_NEAR(answer["results"]["height_mm"].get<double>(), 3, 0.0005);
    EXPECT_NEAR(answer["results"]["first_depth_mm"].get<double>(), 21, 0.0005);
    EXPECT_EQ(answer["results"]["second_leg"], 2);
    EXPECT_THAT(answer["notes"].dump(), HasSubstr("different legs"));
}

TEST(WorkingsOracle, EveryOtherKind) {
    // By hand: 10 dB less 20 lg 1.5.
    EXPECT_NEAR(worked(R"({"format": "fettlemark-working/1", "kind": "transfer",
                    "block_thickness_mm": 100, "block_gain_db": 30, "block_screen_percent": 80,
                    "casting_thickness_mm": 150, "casting_gain_db": 40,
                    "casting_screen_percent": 80})")["results"]["transfer_db"]
                    .get<double>(),
                6.48, 0.005);
    // By hand: 20 lg 4.
    EXPECT_NEAR(worked(R"({"format": "fettlemark-working/1", "kind": "back-wall-loss",
                    "sound_gain_db": 20, "sound_screen_percent": 80, "here_gain_db": 20,
                    "here_screen_percent": 20})")["results"]["back_wall_loss_db"]
                    .get<double>(),
                12.04, 0.005);
    // Published question bank: 60 degrees for steel are 37 in copper.
    EXPECT_NEAR(worked(R"({"format": "fettlemark-working/1", "kind": "beam-angle",
                    "marked_deg": 60, "marked_velocity_m_s": 3240,
                    "velocity_m_s": 2260})")["results"]["angle_deg"]
                    .get<double>(),
                37, 0.3);
    // By hand: arcsin(2730 / 5920).
    EXPECT_NEAR(worked(R"({"format": "fettlemark-working/1", "kind": "critical-angles",
                    "wedge_velocity_m_s": 2730, "longitudinal_velocity_m_s": 5920,
                    "transverse_velocity_m_s": 3255})")["results"]["first_critical_deg"]
                    .get<double>(),
                27.5, 0.05);
    // Question bank: 10.6 mm.
    EXPECT_NEAR(worked(R"({"format": "fettlemark-working/1", "kind": "near-field",
                    "probe": "straight", "element": "round", "diameter_mm": 10,
                    "frequency_mhz": 2.5, "velocity_m_s": 5900})")["results"]["near_field_mm"]
                    .get<double>(),
                10.6, 0.05);
    // Question bank: arcsin(1.22 lambda / D).
    EXPECT_NEAR(worked(R"({"format": "fettlemark-working/1", "kind": "spread",
                    "element": "round", "diameter_mm": 20, "frequency_mhz": 2.5,
                    "velocity_m_s": 5900})")["results"]["null_deg"]
                    .get<double>(),
                8.3, 0.05);
}

TEST(Workings, ANullHasANoteAndExitZero) {
    Json same = height();
    same["second_path_mm"] = 35;
    const Json answer = worked(same.dump());
    EXPECT_TRUE(answer["results"]["height_mm"].is_null());
    EXPECT_THAT(answer["notes"].dump(), HasSubstr("not measurable"));
}

TEST(Workings, RefuseWhatCannotBe) {
    const auto changed = [](const char* field, const Json& value) {
        Json json = height();
        json[field] = value;
        return json.dump();
    };
    expectRefused(changed("second_path_mm", 151), ": second_path_mm", "third leg");
    expectRefused(changed("angle_deg", 90), ": angle_deg", "must be above 0 and below 90");
    expectRefused(changed("angle_deg", "45"), ": angle_deg", "must be a number");
    expectRefused(changed("angle_deg", nullptr), ": angle_deg", "must not be null");
    expectRefused(changed("radius_mm", 80), ": radius_mm", "no meaning");
    expectRefused(changed("surface", "round"), ": surface", "is not a word for it");
    expectRefused(changed("gain_db", 30), ": gain_db", "is not a field that is known");
    expectRefused(changed("kind", "length"), ": kind", "no working");
    expectRefused(changed("kind", 3), ": kind", "must be a string, not a number");
    expectRefused(changed("format", "fettlemark-reading/1"), ": format", "fettlemark-working/1");
    Json missing = height();
    missing.erase("thickness_mm");
    expectRefused(missing.dump(), ": thickness_mm", "is missing");
    missing.erase("kind");
    expectRefused(missing.dump(), ": kind", "is missing");
    expectRefused("[]", "", "must be an object");
    expectRefused("{", ": line 1, column 1", "is not JSON");
    const Finished none = runCli({"workings", "/nowhere/w.json"});
    EXPECT_EQ(none.exitCode, 2);
    EXPECT_THAT(none.error, HasSubstr("is not there"));
}

TEST(Workings, HaveHelpThatNamesEachKindAndField) {
    const Finished help = runCli({"workings", "--help"});
    EXPECT_EQ(help.exitCode, 0);
    for (const char* text :
         {"workings WORKING.json", "\"height\"", "\"transfer\"", "\"back-wall-loss\"",
          "\"beam-angle\"", "\"critical-angles\"", "\"near-field\"", "\"spread\"", "first_path_mm",
          "only with surface outer or inner", "can be left out", "Exit codes:"})
        EXPECT_THAT(help.output, HasSubstr(text));
    EXPECT_THAT(runCli({"--help"}).output, HasSubstr("workings WORKING.json"));
}

}  // namespace
}  // namespace app
