// SPDX-License-Identifier: Apache-2.0
// What judge says of good sheets, and the exit code that goes with it. The limits are those of
// EN 1369:2012 Table 1: at SM 2 lengths up to 4 mm, 35 mm2 in the frame, two at the maximum; at
// SM 3 up to 6 mm, 70 mm2.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "process.h"
#include "sheets.h"

namespace app {
namespace {

Finished judged(const Json& sheet, const std::vector<std::string>& options = {}) {
    std::vector<std::string> arguments{"judge", "-"};
    arguments.insert(arguments.end(), options.begin(), options.end());
    Finished finished = runCli(arguments, sheet.dump());
    EXPECT_EQ(finished.error, "");
    return finished;
}

Json verdictOf(const Finished& finished) {
    Json verdict = Json::parse(finished.output, nullptr, false);
    EXPECT_FALSE(verdict.is_discarded()) << finished.output;
    EXPECT_EQ(verdict["format"], "fettlemark-verdict/1");
    return verdict;
}

TEST(Verdicts, ThatAreAcceptableNeedAnAttestedTableOrTheSwitch) {
    for (const int spots : {0, 2}) {
        const Json sheet = spots == 0 ? cleanSheet() : spottedSheet(spots);
        const Finished plain = judged(sheet);
        EXPECT_EQ(plain.exitCode, 3);
        const Finished unattested = judged(sheet, {"--unattested"});
        EXPECT_EQ(unattested.exitCode, 0);
        // The word does not depend on it.
        EXPECT_EQ(plain.output, unattested.output);
        const Json verdict = verdictOf(plain);
        EXPECT_EQ(verdict["verdict"], "acceptable");
        EXPECT_EQ(verdict["examinations"][0]["verdict"], "acceptable");
        EXPECT_EQ(verdict["examinations"][0]["table"]["status"], "not attested");
    }
}

TEST(Verdicts, ThatAreNotAcceptableGiveOne) {
    for (const auto& options : {std::vector<std::string>{}, {"--unattested"}}) {
        const Finished finished = judged(spottedSheet(3), options);
        EXPECT_EQ(finished.exitCode, 1);
        const Json verdict = verdictOf(finished);
        EXPECT_EQ(verdict["verdict"], "not acceptable");
        const Json& zone = verdict["examinations"][0];
        EXPECT_EQ(zone["best_levels"]["non-linear"], "SM 3");
        int failed = 0;
        for (const Json& check : zone["checks"]) {
            if (check["passes"] != false) continue;
            ++failed;
            EXPECT_EQ(check["rule"], "count at the maximum");
            EXPECT_EQ(check["measured"], 3);
            EXPECT_EQ(check["limit"], 2);
            EXPECT_EQ(check["unit"], "count");
            EXPECT_EQ(check["grade"], "R");
            EXPECT_THAT(check["members"].get<std::vector<std::string>>(),
                        testing::UnorderedElementsAre("1", "2", "3"));
        }
        EXPECT_EQ(failed, 1);
    }
}

TEST(Verdicts, ThatAreNotJudgedGiveThreeEvenWithTheSwitch) {
    Json unsaid = cleanSheet();
    examinationOf(unsaid).erase("no_indications");
    Json unagreed = cleanSheet();
    examinationOf(unagreed)["not_examined"] = {{{"area_mm2", 400}, {"reason", "clamped"}}};
    for (const Json& sheet : {unsaid, unagreed}) {
        const Finished finished = judged(sheet, {"--unattested"});
        EXPECT_EQ(finished.exitCode, 3);
        const Json verdict = verdictOf(finished);
        EXPECT_EQ(verdict["verdict"], "not judged");
        EXPECT_FALSE(verdict["examinations"][0]["reasons"].empty());
    }
    examinationOf(unagreed)["not_examined"][0]["agreed"] = "A-17";
    EXPECT_EQ(judged(unagreed, {"--unattested"}).exitCode, 0);
}

TEST(Verdicts, AreTheWorstOfAllExaminations) {
    Json sheet = cleanSheet();
    const Json spotted = spottedSheet(3)["examinations"][0];
    sheet["examinations"].push_back(spotted);
    examinationOf(sheet, 1)["zone"] = "Z2";
    examinationOf(sheet, 1)["surface"]["id"] = "S2";
    sheet["examinations"].push_back(cleanSheet()["examinations"][0]);
    examinationOf(sheet, 2)["zone"] = "Z3";
    examinationOf(sheet, 2)["surface"]["id"] = "S3";
    examinationOf(sheet, 2).erase("no_indications");
    const Finished finished = judged(sheet, {"--unattested"});
    EXPECT_EQ(finished.exitCode, 1);
    const Json verdict = verdictOf(finished);
    EXPECT_EQ(verdict["verdict"], "not acceptable");
    EXPECT_EQ(verdict["examinations"][0]["verdict"], "acceptable");
    EXPECT_EQ(verdict["examinations"][1]["verdict"], "not acceptable");
    EXPECT_EQ(verdict["examinations"][2]["verdict"], "not judged");
}

TEST(Verdicts, OfASheetWithoutExaminationsAreNotJudged) {
    Json sheet = cleanSheet();
    sheet["examinations"] = Json::array();
    EXPECT_EQ(judged(sheet, {"--unattested"}).exitCode, 3);
}

// The sheet that the format's description shows, with a word chosen where it lists several.
TEST(Verdicts, HaveEveryFieldOfTheFormat) {
    Json sheet = cleanSheet();
    Json& examination = examinationOf(sheet);
    examination["surface"]["period_x_mm"] = 1570.8;
    examination["forbidden_kinds"] = {"crack"};
    examination["no_indications"] = false;
    examination["not_examined"] = {{{"area_mm2", 400}, {"reason", "lug"}, {"agreed", "A-17"}}};
    examination["indications"] = Json::parse(R"([
        {"id": "1", "x_mm": 10.0, "y_mm": 22.5, "length_mm": 3.0, "width_mm": 0.5, "angle_deg": 30,
         "area_mm2": 1.2, "kind": "crack", "class": "linear", "removed_mm": 6,
         "relevance": "relevant", "reason": "seen twice"}])");
    const Finished finished = judged(sheet);
    EXPECT_EQ(finished.exitCode, 1);  // a crack is forbidden at any size
    const Json zone = verdictOf(finished)["examinations"][0];
    for (const char* name : {"zone", "method", "verdict", "table", "indications", "groups",
                             "checks", "best_levels", "best_levels_unknown", "reasons", "notes"})
        EXPECT_TRUE(zone.contains(name)) << name;
    for (const char* name : {"id", "revision", "sha256", "status"})
        EXPECT_TRUE(zone["table"].contains(name)) << name;
    for (const char* name : {"id", "class", "considered", "group"})
        EXPECT_TRUE(zone["indications"][0].contains(name)) << name;
    EXPECT_FALSE(zone["checks"].empty());
    bool forbidden = false;
    for (const Json& check : zone["checks"]) {
        for (const char* name : {"rule", "class", "locator", "grade", "measured", "limit", "unit",
                                 "passes", "members", "frame"})
            EXPECT_TRUE(check.contains(name)) << name;
        forbidden = forbidden || (check["rule"] == "forbidden kind" && check["passes"] == false);
    }
    EXPECT_TRUE(forbidden);
}

TEST(Verdicts, AreTheSameEveryTime) {
    const std::string first = judged(spottedSheet(4)).output;
    for (int i = 0; i < 3; ++i) EXPECT_EQ(judged(spottedSheet(4)).output, first);
}

}  // namespace
}  // namespace app
