// SPDX-License-Identifier: Apache-2.0
// Major and minor repairs by rules that are data.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "repair/severity.h"
#include "repair/shipped_rules.h"
#include "repaired/repaired_casting.h"

namespace model {
namespace {

using testing::HasSubstr;

const std::string kWhole = R"(fettlemark-repair-rule 1
id "House rule"
standard "House rule"
edition "2026"
revision 2
remark "of the works"
major share-of-wall >= 10 % at "3.1" R
major depth > 1 in at "3.2" P
heat-treatment free at "4" R2
agreement mandatory at "5" M
end
)";

std::string replaced(std::string text, const std::string& from, const std::string& to) {
    const std::size_t at = text.find(from);
    EXPECT_NE(at, std::string::npos) << from;
    return text.replace(at, from.size(), to);
}

std::string refusalOf(const std::string& text) {
    const auto rule = parseRepairRule(text, "house.repair");
    EXPECT_FALSE(rule.ok());
    return rule.ok() ? "" : rule.error().message();
}

TEST(RepairRule, IsReadWhole) {
    const auto rule = parseRepairRule(kWhole, "house.repair");
    ASSERT_TRUE(rule.ok()) << rule.error().message();
    EXPECT_EQ(rule->id, "House rule");
    EXPECT_EQ(rule->edition, "2026");
    EXPECT_EQ(rule->revision, 2);
    EXPECT_EQ(rule->remarks, std::vector<std::string>{"of the works"});
    ASSERT_EQ(rule->major.size(), 2u);
    EXPECT_EQ(rule->major[0].of, MajorCriterion::Of::ShareOfWall);
    EXPECT_EQ(rule->major[0].comparison, Comparison::AtLeast);
    EXPECT_EQ(rule->major[0].limit, Rational(10));
    EXPECT_EQ(rule->major[0].written, "10 % of the wall");
    EXPECT_EQ(rule->major[0].source.locator, "3.1");
    EXPECT_EQ(rule->major[1].limit, Rational(25'400'000));  // 1 in is 25.4 mm
    EXPECT_EQ(rule->major[1].source.grade, Grade::Partly);
    EXPECT_FALSE(rule->heatTreatment.mandatory);
    EXPECT_TRUE(rule->agreement.mandatory);
    EXPECT_EQ(rule->digest.size(), 64u);
}

TEST(RepairRule, WhatIsMissingTwiceUnknownOrWithoutSourceIsRefused) {
    for (const char* line :
         {"id \"House rule\"\n", "standard \"House rule\"\n", "edition \"2026\"\n", "revision 2\n",
          "heat-treatment free at \"4\" R2\n", "agreement mandatory at \"5\" M\n", "end\n"})
        EXPECT_THAT(refusalOf(replaced(kWhole, line, "")), HasSubstr("is missing")) << line;
    EXPECT_THAT(refusalOf(""), HasSubstr("is missing"));
    EXPECT_THAT(refusalOf(kWhole + "id \"x\"\n"), HasSubstr("house.repair:12: nothing follows"));
    EXPECT_THAT(refusalOf(replaced(kWhole, "end\n", "revision 3\nend\n")),
                HasSubstr("second time"));
    EXPECT_THAT(refusalOf(replaced(kWhole, "major depth > 1 in", "major share-of-wall > 5 %")),
                HasSubstr("second time"));
    EXPECT_THAT(refusalOf(replaced(kWhole, "major depth", "major weight")),
                HasSubstr("\"weight\" is not a known criterion"));
    EXPECT_THAT(refusalOf(replaced(kWhole, "> 1 in", "< 1 in")), HasSubstr("house.repair:8"));
    EXPECT_THAT(refusalOf(replaced(kWhole, "10 %", "10")), HasSubstr("house.repair:7"));
    EXPECT_THAT(refusalOf(replaced(kWhole, " at \"3.2\" P", "")), HasSubstr("house.repair:8"));
    EXPECT_THAT(refusalOf(replaced(kWhole, "\"5\" M", "\"5\" X")), HasSubstr("house.repair:10"));
    EXPECT_THAT(refusalOf(replaced(kWhole, "free", "perhaps")), HasSubstr("house.repair:9"));
    EXPECT_THAT(refusalOf(replaced(kWhole, "rule 1\n", "rule 2\n")), HasSubstr("format"));
    EXPECT_THAT(refusalOf("# nothing\nid \"x\"\n"), HasSubstr("first statement"));
}

TEST(RepairRule, EveryShippedOneIsRead) {
    ASSERT_FALSE(shippedRepairRules().empty());
    EXPECT_EQ(builtInRepairRules().size(), shippedRepairRules().size());
    for (const EmbeddedFile& file : shippedRepairRules()) {
        const auto rule = parseRepairRule(file.text, std::string(file.name));
        ASSERT_TRUE(rule.ok()) << rule.error().message();
        EXPECT_EQ(repairRule(rule->id)->digest, rule->digest);
    }
    EXPECT_EQ(repairRule("no such rule"), nullptr);
}

Excavation cavity(const char* length, const char* width, const char* depth, const char* wall) {
    Excavation made;
    made.zone = "Z1";
    made.length = length;
    made.width = width;
    made.depth = depth;
    made.wallBefore = wall;
    return made;
}

RepairSeverity byA216(const Excavation& excavation) {
    return severityOf(excavation, repaired::held(), repairRule("ASTM A216"));
}

TEST(RepairSeverityOracle, AstmA216PartsMajorFromMinor) {
    // ASTM A216 cl. 10 (partly read, at second hand): deeper than 20 % of the wall or 25 mm,
    // whichever is smaller, or an area above 65 cm2.
    struct Case {
        const char *length, *width, *depth, *wall;
        Severity severity;
    };
    const Case cases[] = {
        {"50", "20", "8", "40", Severity::Minor},           // 20 % of 40 mm
        {"50", "20", "8.000001", "40", Severity::Major},    //
        {"50", "20", "25", "200", Severity::Minor},         // 12.5 %, 25 mm
        {"50", "20", "25.000001", "200", Severity::Major},  //
        {"100", "65", "5", "40", Severity::Minor},          // 65 cm2
        {"100", "65.000001", "5", "40", Severity::Major},   //
    };
    for (const Case& c : cases)
        EXPECT_EQ(byA216(cavity(c.length, c.width, c.depth, c.wall)).severity, c.severity)
            << c.length << " x " << c.width << ", " << c.depth << " of " << c.wall;
    EXPECT_EQ(byA216(cavity("100", "66", "5", "40")).reason, "its area of 100 x 66 mm is > 65 cm2");
    EXPECT_EQ(byA216(cavity("100", "66", "5", "40")).source.grade, Grade::Partly);
}

TEST(RepairSeverityOracle, LeakAtThePressureTestMakesARepairMajor) {
    // ASTM A216 cl. 10 (partly read, at second hand).
    CastingFile file = repaired::held();
    file.dossier.otherResults = {repaired::otherResult("R-9", "pressure", "2026-03-01")};
    const Excavation small = cavity("50", "20", "2", "40");
    const auto severity = [&] { return severityOf(small, file, repairRule("ASTM A216")).severity; };
    EXPECT_EQ(severity(), Severity::Minor);
    OtherResult& result = file.dossier.otherResults[0];
    result.verdict = "not acceptable";
    EXPECT_EQ(severity(), Severity::Major);
    result.zone = "Z2";  // another zone leaked
    EXPECT_EQ(severity(), Severity::Minor);
    result.zone.clear();  // the casting leaked
    EXPECT_EQ(severity(), Severity::Major);
    result.verdict = "not judged";
    EXPECT_EQ(severity(), Severity::NotKnown);
}

TEST(RepairSeverity, WhatIsNotMeasuredIsNotMinor) {
    EXPECT_EQ(byA216(cavity("50", "20", "", "40")).severity, Severity::NotKnown);
    EXPECT_EQ(byA216(cavity("50", "20", "0", "40")).severity, Severity::NotKnown);
    EXPECT_EQ(byA216(cavity("50", "20", "5", "")).severity, Severity::NotKnown);
    EXPECT_EQ(byA216(cavity("50", "", "5", "40")).severity, Severity::NotKnown);
    EXPECT_EQ(byA216(cavity("50", "x", "5", "40")).severity, Severity::NotKnown);
    EXPECT_TRUE(byA216(cavity("50", "20", "5", "")).treatedAsMajor());
    // What is known to exceed one limit is major whatever else is missing.
    EXPECT_EQ(byA216(cavity("50", "", "26", "")).severity, Severity::Major);
    EXPECT_EQ(severityOf(cavity("50", "20", "2", "40"), repaired::held(), nullptr).severity,
              Severity::NotKnown);
}

TEST(RepairSeverity, AtLeastTakesTheLimitIn) {
    const auto rule = parseRepairRule(kWhole, "house.repair");
    ASSERT_TRUE(rule.ok());
    const CastingFile file = repaired::held();
    EXPECT_EQ(severityOf(cavity("9", "9", "4", "40"), file, &*rule).severity, Severity::Major);
    EXPECT_EQ(severityOf(cavity("9", "9", "3.999999", "40"), file, &*rule).severity,
              Severity::Minor);
    EXPECT_EQ(severityOf(cavity("9", "9", "25.4", "400"), file, &*rule).severity, Severity::Minor);
}

}  // namespace
}  // namespace model
