// SPDX-License-Identifier: Apache-2.0
// What size prints for good readings, and how it refuses others: exit 2 (4 where the machine
// refused), one line that says where and why, and nothing on standard output.
#include <algorithm>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "process.h"
#include "sheets.h"

namespace app {
namespace {

using testing::HasSubstr;
using testing::StartsWith;

/// A straight round probe on steel against the back wall, with movement.
Json reading() {
    return Json::parse(R"({
        "format": "fettlemark-reading/1",
        "probe": {"kind": "straight", "element": "round", "diameter_mm": 24, "frequency_mhz": 2},
        "material": {"velocity_m_s": 5920, "attenuation_db_per_m": 0},
        "part": {"thickness_mm": 300, "surface": "flat"},
        "reference": {"kind": "back wall", "on": "casting", "sound_path_mm": 300,
                      "gain_db": 30, "screen_percent": 80},
        "transfer_db": 0,
        "echo": {"sound_path_mm": 200, "gain_db": 50, "screen_percent": 80},
        "movement": {"drop_db": 6, "along_mm": 35, "across_mm": 12}})");
}

/// A published problem (examination question banks): 7 dB below the back wall of 380 mm, the flaw
/// at 130 mm, 0.01 dB/mm, 2.5 MHz: a flat-bottomed hole of 4.1 mm by the far-field formula.
Json publishedReading() {
    return Json::parse(R"({
        "format": "fettlemark-reading/1",
        "probe": {"kind": "straight", "element": "rectangular", "width_mm": 10, "length_mm": 10,
                  "frequency_mhz": 2.5},
        "material": {"velocity_m_s": 5900, "attenuation_db_per_m": 10},
        "part": {"thickness_mm": 380, "surface": "flat"},
        "reference": {"kind": "back wall", "sound_path_mm": 380, "gain_db": 40,
                      "screen_percent": 80},
        "transfer_db": 0,
        "echo": {"sound_path_mm": 130, "gain_db": 47, "screen_percent": 80}})");
}

Json sizeOf(const Finished& finished) {
    EXPECT_EQ(finished.exitCode, 0);
    EXPECT_EQ(finished.error, "");
    Json size = Json::parse(finished.output, nullptr, false);
    EXPECT_FALSE(size.is_discarded()) << finished.output;
    EXPECT_EQ(size["format"], "fettlemark-size/1");
    return size;
}

Json sizeOf(const Json& json) {
    return sizeOf(runCli({"size", "-"}, json.dump()));
}

void expectRefused(const Finished& finished, int exitCode, const std::string& start,
                   const std::string& reason) {
    EXPECT_EQ(finished.exitCode, exitCode) << finished.error;
    EXPECT_EQ(finished.output, "");
    EXPECT_EQ(std::ranges::count(finished.error, '\n'), 1) << finished.error;
    EXPECT_THAT(finished.error, StartsWith(start));
    EXPECT_THAT(finished.error, HasSubstr(reason));
}

/// Refuses `json` changed in one place.
void expectRefused(Json json, const char* pointer, const Json& value, const std::string& path,
                   const std::string& reason) {
    json[Json::json_pointer(pointer)] = value;
    expectRefused(runCli({"size", "-"}, json.dump()), 2, "standard input: " + path + ": ", reason);
}

TEST(SizesOracle, SolveAPublishedProblem) {
    const Json size = sizeOf(publishedReading());
    EXPECT_NEAR(size["fbh_mm"].get<double>(), 4.1, 0.05);
    EXPECT_EQ(size["fbh_method"], "far field");
    EXPECT_EQ(size["echo_db"], -7);
}

// Wavelength, near field, place and echo worked out by hand; the beam's width with k = 0.51.
TEST(Sizes, HaveEveryField) {
    const Json size = sizeOf(reading());
    EXPECT_EQ(size["wavelength_mm"], 2.96);
    EXPECT_NEAR(size["near_field_mm"].get<double>(), 48.65, 0.005);
    EXPECT_NEAR(size["beam_width_mm"].get<double>(), 25.2, 0.3);
    EXPECT_EQ(size["depth_mm"], 200);
    EXPECT_EQ(size["surface_distance_mm"], 0);
    EXPECT_EQ(size["leg"], 1);
    EXPECT_EQ(size["echo_db"], -20);
    EXPECT_EQ(size["fbh_method"], "distance-gain-size");
    EXPECT_TRUE(size["fbh_mm"].is_number());
    EXPECT_TRUE(size["far_field_fbh_mm"].is_number());
    EXPECT_EQ(size["length_mm"], 35);
    EXPECT_TRUE(size["width_mm"].is_null());
    EXPECT_EQ(size["measurable"], Json::parse(R"({"along": true, "across": false})"));
    EXPECT_THAT(size["notes"].dump(), HasSubstr("distance-gain-size model"));
}

TEST(Sizes, AreNullWithANoteAndExitZeroWhereNothingIsSized) {
    Json json = reading();
    json["echo"]["sound_path_mm"] = 30;
    Json size = sizeOf(json);
    EXPECT_TRUE(size["fbh_mm"].is_null());
    EXPECT_TRUE(size["fbh_method"].is_null());
    EXPECT_TRUE(size["beam_width_mm"].is_null());
    EXPECT_THAT(size["notes"].dump(), HasSubstr("near field: the echo lies at"));
    json["echo"]["sound_path_mm"] = 301;
    size = sizeOf(json);
    EXPECT_TRUE(size["fbh_mm"].is_null());
    EXPECT_TRUE(size["depth_mm"].is_null());
    EXPECT_THAT(size["notes"].dump(), HasSubstr("beyond the back wall"));
}

TEST(Sizes, ComeFromAFileAndFromStandardInputAlike) {
    const Folder folder;
    const std::string file = folder.write("r.json", reading().dump());
    EXPECT_EQ(runCli({"size", file}).output, runCli({"size", "-"}, reading().dump()).output);
    EXPECT_EQ(folder.names(), std::vector<std::string>{"r.json"});
}

TEST(Sizes, AreRefusedForAReadingThatCannotBe) {
    expectRefused(reading(), "/echo/screen_percent", 0, "echo.screen_percent", "above 0");
    expectRefused(reading(), "/echo/screen_percent", 101, "echo.screen_percent", "at most 100");
    expectRefused(reading(), "/reference/screen_percent", 0, "reference.screen_percent", "above 0");
    expectRefused(reading(), "/echo/gain_db", -21, "echo.gain_db", "from -20 to 120");
    expectRefused(reading(), "/reference/gain_db", 121, "reference.gain_db", "from -20 to 120");
    expectRefused(reading(), "/echo/sound_path_mm", 901, "echo.sound_path_mm", "third leg");
    expectRefused(reading(), "/transfer_db", 3, "transfer_db", "must be 0");
    expectRefused(reading(), "/movement/drop_db", 12, "movement.drop_db", "6 or 20");
    expectRefused(reading(), "/part/surface", "outer", "part.radius_mm", "is missing");
    Json angle = reading();
    angle["probe"]["kind"] = "angle";
    expectRefused(angle, "/probe/angle_deg", 90, "probe.angle_deg", "past critical");
    expectRefused(angle, "/probe/front_mm", 12, "probe.angle_deg", "is missing");
    Json hole = reading();
    expectRefused(hole, "/reference/kind", "side-drilled hole", "reference.diameter_mm",
                  "is missing");
    // Between casting and block the coupling has to be stated.
    Json block = reading();
    block.erase("transfer_db");
    expectRefused(block, "/reference/on", "block", "transfer_db", "is missing");
}

TEST(Sizes, AreRefusedForADocumentThatIsNoReading) {
    expectRefused(reading(), "/echo/gain", 1, "echo.gain", "not a field that is known");
    expectRefused(reading(), "/probe/kind", nullptr, "probe.kind", "must not be null");
    expectRefused(reading(), "/probe/kind", "phased array", "probe.kind", "is not a word for it");
    expectRefused(reading(), "/echo/gain_db", "40", "echo.gain_db", "must be a number");
    expectRefused(reading(), "/format", "fettlemark-sheet/1", "format", "fettlemark-reading/1");
    std::string text = reading().dump();
    text.replace(text.find("\"transfer_db\""), 0, "\"transfer_db\":0,");
    expectRefused(runCli({"size", "-"}, text), 2, "standard input: transfer_db: ", "given twice");
    expectRefused(runCli({"size", "-"}, text.substr(0, 100)), 2, "standard input: line 1", "");
}

TEST(Sizes, AreRefusedForAFileThatIsNotThereOrCannotBeRead) {
    const Folder folder;
    const std::string missing = folder.path() + "/none.json";
    expectRefused(runCli({"size", missing}), 2, missing + ": ", "is not there");
    expectRefused(runCli({"size", "/proc/self/mem"}), 4, "/proc/self/mem: ", "cannot be read");
    const std::string file = folder.write("r.json", "{}");
    expectRefused(runCli({"size", file}), 2, file + ": format: ", "is missing");
}

TEST(Sizes, HaveHelp) {
    const Finished help = runCli({"size", "--help"});
    EXPECT_EQ(help.exitCode, 0);
    for (const char* text : {"size READING.json", "fettlemark-reading/1", "fettlemark-size/1",
                             "standard input", "Exit codes:"})
        EXPECT_THAT(help.output, HasSubstr(text));
    EXPECT_THAT(runCli({"--help"}).output, HasSubstr("size READING.json"));
    expectRefused(runCli({"size"}), 2, "fettlemark-cli", "READING.json is missing");
}

}  // namespace
}  // namespace app
