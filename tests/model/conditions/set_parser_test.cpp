// SPDX-License-Identifier: Apache-2.0
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "conditions/condition_set.h"

namespace model {
namespace {

using testing::HasSubstr;

const std::string kHead =
    "fettlemark-conditions 1\nid \"X\"\nstandard \"X\"\nedition \"1\"\nrevision 1\nfor MT PT\n";
const std::string kPeople =
    "fettlemark-conditions 1\nid \"X\"\nstandard \"X\"\nedition \"1\"\nrevision 1\nfor people\n";
const std::string kTail = "  reaction block\n  source \"cl. 1\" R\n";

std::string refusal(const std::string& text) {
    const auto set = parseConditionSet(text, "x.conditions");
    EXPECT_FALSE(set.ok()) << text;
    return set ? std::string() : set.error().message();
}

/// Of a set with one rule, which has these details beside reaction and source.
void refuseRule(const char* text, const char* detail = "") {
    std::string set = kHead;
    set.append("rule \"R-1\" ").append(text).append("\n").append(kTail).append(detail);
    refusal(set.append("\nend\n"));
}

ConditionRule rule(const std::string& text, const std::string& details = {}) {
    auto set = parseConditionSet(kHead + "rule \"R-1\" " + text + "\n" + kTail + details + "end\n",
                                 "x.conditions");
    EXPECT_TRUE(set.ok()) << set.error().message();
    return set ? set->rules.at(0) : ConditionRule();
}

TEST(ConditionSetParser, ReadsASetWithItsRules) {
    const auto set = parseConditionSet(
        kHead + "remark \"from a copy\"\nrule \"R-1\" limit uv_a >= 10 W/m2\n" + kTail +
            "rule \"R-2\" check \"yoke pull\" of \"yoke\"\n" + kTail + "end\n",
        "x.conditions");
    ASSERT_TRUE(set.ok()) << set.error().message();
    EXPECT_EQ(set->id, "X");
    EXPECT_EQ(set->methods, (std::vector{Method::Magnetic, Method::Penetrant}));
    EXPECT_EQ(set->remarks, std::vector<std::string>{"from a copy"});
    EXPECT_EQ(set->digest.size(), 64u);
    ASSERT_EQ(set->rules.size(), 2u);
    EXPECT_EQ(set->rules[0].line, 8);
    EXPECT_EQ(set->rules[1].check, "yoke pull");
    EXPECT_FALSE(set->hasDrift());
}

TEST(ConditionSetParser, ReadsLimitWithUnitAndSource) {
    const ConditionRule read = rule("limit part_temperature <= 50 deg C",
                                    "  when viewing \"fluorescent\"\n  unless agreement stated\n"
                                    "  if-stated\n  note \"by agreement\"\n");
    EXPECT_EQ(read.kind, ConditionKind::Limit);
    EXPECT_EQ(read.comparison, Comparison::AtMost);
    EXPECT_EQ(read.limit->text(), "50 deg C");
    EXPECT_EQ(read.when.at(0).values, std::vector<std::string>{"fluorescent"});
    EXPECT_TRUE(read.unless.at(0).values.empty());
    EXPECT_TRUE(read.ifStated);
    EXPECT_EQ(read.note, "by agreement");
    EXPECT_EQ(read.reaction, Reaction::Block);
    EXPECT_EQ(read.source.locator, "cl. 1");
    EXPECT_EQ(read.source.grade, Grade::Read);
}

TEST(ConditionSetParser, ReadsIntervalsAndTheirLastDay) {
    EXPECT_EQ(rule("check \"yoke pull\" of any", "every 6 months\n").every->text(), "6 months");
    EXPECT_EQ(rule("check \"yoke pull\" of any", "every 1 days\n").every->text(), "1 day");
    EXPECT_EQ(rule("check \"yoke pull\" of any", "every 8 hours\n").every->text(), "8 hours");
    EXPECT_EQ(rule("check \"yoke pull\" of any", "every on the day\n").every->text(), "on the day");
    EXPECT_FALSE(rule("check \"yoke pull\" of any").every);
}

TEST(ConditionSetParser, ReadsAlternativesOfACheck) {
    const ConditionRule read =
        rule("check \"yoke pull\" of \"yoke\"",
             "  value >= 13.5 kg spaced 50 mm to 100 mm\n  value >= 49.6 lb spaced 4 in to 6 in\n");
    ASSERT_EQ(read.values.size(), 2u);
    EXPECT_EQ(read.values[0].limit.text(), "13.5 kg");
    EXPECT_EQ(read.values[1].to->text(), "6 in");
}

TEST(ConditionSetParser, RefusesASetThatIsNotWhole) {
    EXPECT_THAT(refusal(""), HasSubstr("fettlemark-conditions"));
    EXPECT_THAT(refusal("id \"X\"\n"), HasSubstr("x.conditions:1"));
    EXPECT_THAT(refusal("fettlemark-conditions 2\n"), HasSubstr("format"));
    EXPECT_THAT(refusal(kHead + "end\n"), HasSubstr("no rule"));
    const std::string whole = kHead + "rule \"R-1\" limit uv_a >= 10 W/m2\n" + kTail + "end\n";
    ASSERT_TRUE(parseConditionSet(whole, "x").ok());
    for (const std::string line :
         {"id \"X\"\n", "standard \"X\"\n", "edition \"1\"\n", "revision 1\n", "for MT PT\n",
          "  reaction block\n", "  source \"cl. 1\" R\n", "end\n"}) {
        std::string cut = whole;
        cut.erase(cut.find(line), line.size());
        refusal(cut);
    }
    refusal(whole + "rule \"R-2\" stated uv_a\n" + kTail);
    refusal(kHead + "id \"Y\"\n" + whole.substr(kHead.size()));
}

TEST(ConditionSetParser, RefusesARuleThatMeansNothing) {
    for (const char* text : {"limit uva >= 10 W/m2",
                             "limit uv_a >= 10 lx",
                             "limit uv_a >= 10",
                             "limit uv_a >= ten W/m2",
                             "limit uv_a 10 W/m2",
                             "limit uv_a >= 10 W/m2 or so",
                             "limit technique >= 1",
                             "one-of uv_a \"10\"",
                             "one-of technique \"by hand\"",
                             "one-of technique",
                             "one-of technique \"coil\" \"coil\"",
                             "guess uv_a",
                             "stated",
                             "stated uv_a lamp",
                             "compare uv_a >= white_light",
                             "compare technique >= waveform",
                             "elapsed final_look_at >= 10 min",
                             "elapsed uv_a after final_look_at >= 10 min",
                             "check \"luck\" of any",
                             "check \"yoke pull\" of \"hammer\"",
                             "check \"yoke pull\"",
                             "calibration of any",
                             "expiry of \"beer\"",
                             "sulphur of \"penetrant\"",
                             "sulphur < 1 mm of \"penetrant\"",
                             "drift-loss 4 dB",
                             "drift-loss > 4 %",
                             "drift-range > 2 dB",
                             "setting-check-interval 4 mm",
                             "sight \"near vision\"",
                             "authorisation",
                             "sector \"casting\"",
                             "same couplant"})
        refuseRule(text);
}

TEST(ConditionSetParser, RefusesDetailsThatTheRuleCannotHave) {
    for (const char* detail : {"every 6 months", "value >= 4 kg", "when uv_a \"10\"",
                               "when technique \"by hand\"", "when no_such stated", "reaction warn",
                               "source \"cl. 2\" R", "colour red", "if-stated x"})
        refuseRule("limit uv_a >= 10 W/m2", detail);
    for (const char* detail :
         {"every 6 weeks", "every 0 days", "every month", "value >= 4 m", "value 4 kg",
          "value >= 4 kg spaced 50 mm", "value >= 4 kg spaced 50 kg to 60 kg"})
        refuseRule("check \"yoke pull\" of \"yoke\"", detail);
    refusal(kHead + "rule \"R-1\" check \"timer\" of any\n" + kTail + "value >= 4 kg\nend\n");
    refusal(kHead + "rule \"R-1\" calibration of \"probe\"\n" + kTail + "end\n");
    refusal(kHead + "rule \"R-1\" calibration of \"probe\"\n" + kTail + "every 9 days\nend\n");
    refusal(kHead + "rule \"R-1\" stated uv_a\n" + kTail + "rule \"R-1\" stated lamp\n" + kTail +
            "end\n");
}

TEST(ConditionSetParser, KeepsRulesOfPeopleApart) {
    EXPECT_TRUE(parseConditionSet(kPeople + "rule \"R-1\" sight \"near vision\"\n" + kTail +
                                      "every 12 months\nend\n",
                                  "x")
                    .ok());
    refusal(kPeople + "rule \"R-1\" sight \"far vision\"\n" + kTail + "every 12 months\nend\n");
    refusal(kPeople + "rule \"R-1\" sight \"near vision\"\n" + kTail + "end\n");
    refusal(kPeople + "rule \"R-1\" sight \"near vision\"\n" + kTail + "every 365 days\nend\n");
    refusal(kPeople + "rule \"R-1\" stated uv_a\n" + kTail + "end\n");
}

TEST(Capped, LeavesABlockOnlyToWhatWasReadOrAttested) {
    for (const Grade grade : {Grade::Read, Grade::ReadTwice})
        EXPECT_EQ(capped(Reaction::Block, grade, false), Reaction::Block);
    for (const Grade grade : {Grade::Partly, Grade::Memory}) {
        EXPECT_EQ(capped(Reaction::Block, grade, false), Reaction::Warn);
        EXPECT_EQ(capped(Reaction::Block, grade, true), Reaction::Block);
        EXPECT_EQ(capped(Reaction::Warn, grade, true), Reaction::Warn);
        EXPECT_EQ(capped(Reaction::Log, grade, false), Reaction::Log);
    }
}

TEST(SchemeSet, IsThatOfTheEditionElseTheLastOfTheStandard) {
    EXPECT_EQ(schemeSet("ISO 9712:2012")->id, "ISO 9712:2012");
    EXPECT_EQ(schemeSet("ISO 9712:2021")->id, "ISO 9712:2021");
    EXPECT_EQ(schemeSet("ISO 9712")->id, "ISO 9712:2021");
    EXPECT_EQ(schemeSet("SNT-TC-1A 2020")->id, "SNT-TC-1A");
    EXPECT_EQ(schemeSet("works' own"), nullptr);
    EXPECT_EQ(schemeSet("ISO 3059:2012"), nullptr);
    EXPECT_EQ(schemeSet(""), nullptr);
}

}  // namespace
}  // namespace model
