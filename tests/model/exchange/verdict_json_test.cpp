// SPDX-License-Identifier: Apache-2.0
#include "exchange/verdict_json.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include "exchange/json_text.h"

namespace model {
namespace {

using Json = nlohmann::json;

ExaminationVerdict examination() {
    ExaminationVerdict examination;
    examination.zone = "Z1";
    examination.word = Word::NotAcceptable;
    examination.tableId = "EN 1369:2012";
    examination.tableRevision = 1;
    examination.tableDigest = std::string(64, 'a');
    examination.levels = {{"linear", "LM 4"}};
    examination.indications = {{"1", IndicationClass::Linear, true, "A1"},
                               {"2", std::nullopt, false, ""}};
    examination.groups = {
        {"A1", IndicationClass::Aligned, {"1", "Z2/7"}, Length::fromMillionths(8'012'000)}};
    examination.bestLevels = {{"linear", "LM 5"}, {"aligned", std::nullopt}};
    examination.bestLevelsUnknown = {"LM 01"};
    examination.notes = {"edges not joined"};

    Check sum;
    sum.rule = RuleKind::CumulativeLength;
    sum.key = "linear";
    sum.level = "LM 4";
    sum.classText = "linear and aligned";
    sum.source = {"Table 2", Grade::Memory};
    sum.measured = 19'500'000;
    sum.limit = Rational(18'000'000);
    sum.unit = CheckUnit::Millimetre;
    sum.passes = false;
    sum.members = {"A1", "4"};
    sum.frame = CheckFrame{{millimetres(105), millimetres(148), false}, 61.2, 40.0, 12.0};
    examination.checks.push_back(sum);
    return examination;
}

Json written(const Verdict& verdict) {
    return Json::parse(writeJson(verdictToJson(verdict)));
}
Json written(const ExaminationVerdict& examination) {
    return written(Verdict{Word::NotAcceptable, {examination}})["examinations"][0];
}

TEST(VerdictJson, SaysWhatAClassMayBeWhereItIsOpen) {
    ExaminationVerdict open = examination();
    open.indications[1].openClass = "rim or core";
    open.groups[0].openClass = "rim or planar";
    const Json zone = written(open);
    EXPECT_EQ(zone["indications"][1]["class"], "rim or core");
    EXPECT_EQ(zone["groups"][0]["class"], "rim or planar");
}

// Names, types and nulls as the format's description has them.
TEST(VerdictJson, HasTheFieldsOfItsFormat) {
    const Json verdict = written(Verdict{Word::NotAcceptable, {examination()}});
    EXPECT_EQ(verdict["format"], "fettlemark-verdict/1");
    EXPECT_EQ(verdict["verdict"], "not acceptable");
    ASSERT_EQ(verdict["examinations"].size(), 1U);
    const Json& zone = verdict["examinations"][0];
    EXPECT_EQ(zone["zone"], "Z1");
    EXPECT_EQ(zone["method"], "MT");
    EXPECT_EQ(zone["verdict"], "not acceptable");
    EXPECT_EQ(zone["table"], (Json{{"id", "EN 1369:2012"},
                                   {"revision", 1},
                                   {"sha256", std::string(64, 'a')},
                                   {"status", "not attested"}}));
    EXPECT_EQ(zone["indications"][0],
              (Json{{"id", "1"}, {"class", "linear"}, {"considered", true}, {"group", "A1"}}));
    EXPECT_EQ(zone["indications"][1],
              (Json{{"id", "2"}, {"class", nullptr}, {"considered", false}, {"group", nullptr}}));
    EXPECT_EQ(
        zone["groups"][0],
        (Json{
            {"id", "A1"}, {"class", "aligned"}, {"members", {"1", "Z2/7"}}, {"length_mm", 8.012}}));
    EXPECT_EQ(zone["best_levels"], (Json{{"linear", "LM 5"}, {"aligned", nullptr}}));
    EXPECT_EQ(zone["best_levels_unknown"], Json::array({"LM 01"}));
    EXPECT_EQ(zone["reasons"], Json::array());
    EXPECT_EQ(zone["notes"], Json::array({"edges not joined"}));
}

TEST(VerdictJson, WritesACheckWithItsFrame) {
    const Json check = written(examination())["checks"][0];
    EXPECT_EQ(check["rule"], "cumulative length");
    EXPECT_EQ(check["class"], "linear and aligned");
    EXPECT_EQ(check["locator"], "Table 2");
    EXPECT_EQ(check["grade"], "M");
    EXPECT_DOUBLE_EQ(check["measured"].get<double>(), 19.5);
    EXPECT_EQ(check["limit"], 18);
    EXPECT_EQ(check["unit"], "mm");
    EXPECT_EQ(check["passes"], false);
    EXPECT_EQ(check["members"], (Json{"A1", "4"}));
    EXPECT_EQ(check["frame"], (Json{{"centre_x_mm", 61.2},
                                    {"centre_y_mm", 40},
                                    {"angle_deg", 12},
                                    {"width_mm", 105},
                                    {"height_mm", 148}}));
}

TEST(VerdictJson, WritesACircleWithItsDiameter) {
    ExaminationVerdict zone = examination();
    zone.checks[0].frame = CheckFrame{{millimetres(150), millimetres(150), true}, -1.5, 2, 0};
    EXPECT_EQ(
        written(zone)["checks"][0]["frame"],
        (Json{{"centre_x_mm", -1.5}, {"centre_y_mm", 2}, {"angle_deg", 0}, {"diameter_mm", 150}}));
}

TEST(VerdictJson, WritesNullForACheckThatCouldNotBeMade) {
    ExaminationVerdict zone = examination();
    Check& check = zone.checks[0];
    check.measured.reset();
    check.limit.reset();
    check.passes.reset();
    check.frame.reset();
    check.reason = "the limit is unknown";
    const Json written = model::written(zone)["checks"][0];
    for (const char* name : {"measured", "limit", "passes", "frame"}) {
        ASSERT_TRUE(written.contains(name)) << name;
        EXPECT_TRUE(written[name].is_null()) << name;
    }
    EXPECT_EQ(written["reason"], "the limit is unknown");
}

// 40 mm / 3 by hand: 13.333..., cut so that no more is promised than allowed.
TEST(VerdictJson, WritesALimitThatIsNoDecimalCutAndAsAFraction) {
    ExaminationVerdict zone = examination();
    zone.checks[0].limit = Rational(40'000'000, 3);
    const std::string text = writeJson(verdictToJson({Word::NotAcceptable, {zone}}));
    EXPECT_NE(text.find("\"limit\": 13.333333,\n"), std::string::npos) << text;
    EXPECT_NE(text.find("\"limit_exact\": \"40/3\""), std::string::npos) << text;
    zone.checks[0].limit = Rational(36'000'000, 3);
    EXPECT_FALSE(written(zone)["checks"][0].contains("limit_exact"));
    EXPECT_EQ(written(zone)["checks"][0]["limit"], 12);
}

TEST(VerdictJson, WritesEveryUnitOfItsFormat) {
    const std::pair<CheckUnit, Json> units[] = {
        {CheckUnit::Millimetre, "mm"}, {CheckUnit::SquareMillimetre, "mm2"},
        {CheckUnit::Count, "count"},   {CheckUnit::Percent, "%"},
        {CheckUnit::Decibel, "dB"},    {CheckUnit::None, nullptr}};
    for (const auto& [unit, text] : units) {
        ExaminationVerdict zone = examination();
        zone.checks[0].unit = unit;
        EXPECT_EQ(written(zone)["checks"][0]["unit"], text);
    }
}

TEST(VerdictJson, WritesDecimalsWithoutBinaryNoise) {
    ExaminationVerdict zone = examination();
    zone.checks[0].measured = 100'000;           // 0.1
    zone.checks[0].frame->x = 0.1 + 0.2;         // 0.30000000000000004 in binary
    zone.checks[0].frame->y = 1234.56789012345;  // rounded to 6 decimals
    const std::string text = writeJson(verdictToJson({Word::NotAcceptable, {zone}}));
    EXPECT_NE(text.find("\"measured\": 0.1,"), std::string::npos);
    EXPECT_NE(text.find("\"centre_x_mm\": 0.3,"), std::string::npos);
    EXPECT_NE(text.find("\"centre_y_mm\": 1234.56789,"), std::string::npos) << text;
}

}  // namespace
}  // namespace model
