// SPDX-License-Identifier: Apache-2.0
// Worked cases from the standards' texts, worked by hand before the engine existed. Sources are
// named beside each; values of EN 1369 Table 2, of App. 7 and of ISO 23278, and the half
// millimetre "at the maximum", are from memory (grade M).
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "sheet_maker.h"

namespace model {
namespace {

using test::apart;
using test::checkOf;
using test::inLine;
using test::judged;
using test::linear;
using test::mm;
using test::ofKind;
using test::spot;
using test::withArea;
using testing::ElementsAre;

const std::map<std::string, std::string> kAppTwo{{"all", "App. II"}};

// E1: EN 1369:2012, 5.2.3.2.
TEST(WorkedCasesOracle, LinearInLineWithSmallGapsAreOneAlignedOfTwentyMillimetres) {
    const auto verdict = judged("EN 1369:2012", {{"linear", "LM 5"}, {"aligned", "AM 6"}},
                                inLine({linear("4"), linear("5"), linear("6")}, {"2", "3"}));
    ASSERT_EQ(verdict.groups.size(), 1U);
    EXPECT_EQ(verdict.groups[0].classified, IndicationClass::Aligned);
    EXPECT_THAT(verdict.groups[0].members, ElementsAre("1", "2", "3"));
    EXPECT_EQ(verdict.groups[0].length, mm("20"));
}

// E2: ISO 4987:2020, 6.1.2, against EN 1369:2012, 5.2.
TEST(WorkedCasesOracle, ThreeSpotsAreOneNonLinearByOneStandardAndAlignedByTheOther) {
    const auto spots = inLine({spot("3"), spot("3"), spot("3")}, {"1", "1"});
    const auto iso = judged("ISO 4987:2020", {{"isolated", "SP 2"}}, spots);
    ASSERT_EQ(iso.groups.size(), 1U);
    EXPECT_NE(iso.groups[0].classified, IndicationClass::Linear);
    EXPECT_NE(iso.groups[0].classified, IndicationClass::Aligned);
    EXPECT_EQ(iso.groups[0].length, mm("11"));
    const auto en = judged("EN 1369:2012", {{"non-linear", "SM 4"}, {"aligned", "AM 5"}}, spots);
    ASSERT_EQ(en.groups.size(), 1U);
    EXPECT_EQ(en.groups[0].classified, IndicationClass::Aligned);
    EXPECT_EQ(en.groups[0].length, mm("11"));
}

// E3: ASME BPVC VIII-1:2017, Appendix 6.
TEST(WorkedCasesOracle, AppendixSixRejectsLongRoundedAndAnyRelevantLinear) {
    const auto verdict = judged("ASME VIII-1:2017 App. 6", {{"all", "App. 6"}},
                                apart({spot("5.0"), spot("5.1"), linear("1.4"), linear("1.6")}));
    EXPECT_EQ(verdict.word, Word::NotAcceptable);
    const Check* rounded = checkOf(verdict, RuleKind::IndividualLength, "non-linear");
    ASSERT_NE(rounded, nullptr);
    EXPECT_EQ(rounded->passes, false);
    EXPECT_THAT(rounded->members, ElementsAre("2"));
    const Check* lines = checkOf(verdict, RuleKind::Count, "linear");
    ASSERT_NE(lines, nullptr);
    EXPECT_EQ(lines->passes, false);
    EXPECT_THAT(lines->members, ElementsAre("4"));
}

// E4: ASME B16.34-2020, Mandatory Appendix II.
TEST(WorkedCasesOracle, AppendixTwoLimitsRoundedByThickness) {
    const auto verdict =
        judged("ASME B16.34-2020 App. II", kAppTwo, apart({linear("7.5"), spot("8.2")}), "10");
    EXPECT_EQ(verdict.word, Word::NotAcceptable);
    EXPECT_EQ(checkOf(verdict, RuleKind::IndividualLength, "linear")->passes, true);
    EXPECT_EQ(checkOf(verdict, RuleKind::IndividualLength, "non-linear")->passes, false);
}

// E5: ASME B16.34-2020, Mandatory Appendix II.
TEST(WorkedCasesOracle, AppendixTwoRejectsFourRoundedInLine) {
    const auto verdict =
        judged("ASME B16.34-2020 App. II", kAppTwo,
               inLine({spot("3"), spot("3"), spot("3"), spot("3")}, {"1.5", "1.2", "1.0"}), "30");
    EXPECT_EQ(verdict.word, Word::NotAcceptable);
    const Check* line = checkOf(verdict, RuleKind::LineOfIndications);
    ASSERT_NE(line, nullptr);
    EXPECT_EQ(line->passes, false);
    EXPECT_EQ(line->measured, 4 * kMillion);
    const auto wider =
        judged("ASME B16.34-2020 App. II", kAppTwo,
               inLine({spot("3"), spot("3"), spot("3"), spot("3")}, {"1.5", "1.6", "1.0"}), "30");
    EXPECT_EQ(wider.word, Word::Acceptable);
}

// E6 and E7: EN 1369:2012, 5.2: each gap under 2 mm.
TEST(WorkedCasesOracle, AGapOfTwoMillimetresIsNotAligned) {
    const auto levels =
        std::map<std::string, std::string>{{"non-linear", "SM 4"}, {"aligned", "AM 4"}};
    EXPECT_TRUE(
        judged("EN 1369:2012", levels, inLine({spot("2"), spot("2"), spot("2")}, {"1.5", "2.0"}))
            .groups.empty());
    const auto verdict =
        judged("EN 1369:2012", levels, inLine({spot("2"), spot("2"), spot("2")}, {"1.5", "1.9"}));
    ASSERT_EQ(verdict.groups.size(), 1U);
    EXPECT_EQ(verdict.groups[0].length, mm("9.4"));
}

// E8: the ratio's comparison, at 6.0 x 2.0 mm exactly.
TEST(WorkedCasesOracle, ThreeTimesTheWidthIsLinearBySomeStandardsOnly) {
    Indication indication = spot("6.0");
    indication.width = mm("2.0");
    const auto classOf = [&](const char* table, std::map<std::string, std::string> levels) {
        return judged(table, std::move(levels), apart({indication})).indications.at(0).classified;
    };
    EXPECT_EQ(classOf("EN 1369:2012", {{"linear", "LM 4"}}), IndicationClass::Linear);
    EXPECT_EQ(classOf("ASTM A903/A903M-99 MT", {{"all", "III"}}), IndicationClass::Linear);
    EXPECT_EQ(classOf("ASME B16.34-2020 App. II", kAppTwo), IndicationClass::NonLinear);
    EXPECT_EQ(classOf("ASME VIII-1:2017 App. 6", {{"all", "App. 6"}}), IndicationClass::NonLinear);
    EXPECT_EQ(classOf("ASME VIII-1:2017 App. 8", {{"all", "App. 8"}}), IndicationClass::NonLinear);
    EXPECT_EQ(classOf("ISO 23277:2015", {{"all", "2"}}), IndicationClass::NonLinear);
}

// E9: EN 1369:2012, Table 1.
TEST(WorkedCasesOracle, SmallIndicationsLeaveTheSumOfALevelThatDoesNotCountThem) {
    const auto findings = apart({withArea(spot("3.5"), "9"), withArea(spot("3.0"), "6.5"),
                                 withArea(spot("2.5"), "4.5"), withArea(spot("1.8"), "2")});
    const auto second = judged("EN 1369:2012", {{"non-linear", "SM 2"}}, findings);
    EXPECT_EQ(second.word, Word::Acceptable);
    EXPECT_EQ(checkOf(second, RuleKind::TotalArea)->measured, mm("20").millionths());
    EXPECT_EQ(second.bestLevels.at("non-linear"), "SM 2");
    const auto first = judged("EN 1369:2012", {{"non-linear", "SM 1"}}, findings);
    EXPECT_EQ(first.word, Word::NotAcceptable);
    EXPECT_EQ(checkOf(first, RuleKind::TotalArea)->measured, mm("22").millionths());
    EXPECT_EQ(checkOf(first, RuleKind::TotalArea)->passes, false);
}

// E10: EN 1369:2012, Table 1.
TEST(WorkedCasesOracle, ThreeAtTheMaximumAreTooMany) {
    const auto verdict = judged(
        "EN 1369:2012", {{"non-linear", "SM 2"}},
        apart({withArea(spot("4"), "10"), withArea(spot("4"), "10"), withArea(spot("4"), "10")}));
    EXPECT_EQ(verdict.word, Word::NotAcceptable);
    EXPECT_EQ(checkOf(verdict, RuleKind::CountAtMaximum)->measured, 3 * kMillion);
    EXPECT_EQ(checkOf(verdict, RuleKind::TotalArea)->passes, true);
    EXPECT_EQ(verdict.bestLevels.at("non-linear"), "SM 3");
}

// E11: EN 1369:2012, Table 1.
TEST(WorkedCasesOracle, TheSumOfAreasDecidesAndTheNextLevelIsMet) {
    const auto verdict = judged("EN 1369:2012", {{"non-linear", "SM 3"}},
                                apart({withArea(spot("5.5"), "18"), withArea(spot("5.2"), "16"),
                                       withArea(spot("4.5"), "13"), withArea(spot("4.0"), "12"),
                                       withArea(spot("3.5"), "9"), withArea(spot("3.2"), "7")}));
    EXPECT_EQ(verdict.word, Word::NotAcceptable);
    EXPECT_EQ(checkOf(verdict, RuleKind::TotalArea)->measured, mm("75").millionths());
    EXPECT_EQ(verdict.bestLevels.at("non-linear"), "SM 4");
}

// E12: EN 1369:2012, Table 1.
TEST(WorkedCasesOracle, TheStrictestLevels) {
    const auto both = apart({spot("0.8"), spot("1.2")});
    const auto one = apart({spot("0.8")});
    EXPECT_EQ(judged("EN 1369:2012", {{"non-linear", "SM 01"}}, one).word, Word::Acceptable);
    EXPECT_EQ(judged("EN 1369:2012", {{"non-linear", "SM 001"}}, one).word, Word::NotAcceptable);
    const auto verdict = judged("EN 1369:2012", {{"non-linear", "SM 01"}}, both);
    EXPECT_EQ(verdict.word, Word::NotAcceptable);
    EXPECT_THAT(checkOf(verdict, RuleKind::IndividualLength)->members, ElementsAre("2"));
}

// E13: EN 1369:2012, Table 1; "at the maximum" is longer than L2 - 0.5 (interpretation, M).
TEST(WorkedCasesOracle, AThirdNearTheMaximumIsTooMany) {
    std::vector<Indication> findings{withArea(spot("16"), "120"), withArea(spot("16"), "120"),
                                     withArea(spot("12"), "90")};
    const auto two = judged("EN 1369:2012", {{"non-linear", "SM 5"}}, apart(findings));
    EXPECT_EQ(two.word, Word::Acceptable);
    EXPECT_EQ(checkOf(two, RuleKind::TotalArea)->measured, mm("330").millionths());
    EXPECT_EQ(checkOf(two, RuleKind::CountAtMaximum)->measured, 2 * kMillion);
    findings.push_back(withArea(spot("15.8"), "118"));
    const auto three = judged("EN 1369:2012", {{"non-linear", "SM 5"}}, apart(findings));
    EXPECT_EQ(three.word, Word::NotAcceptable);
    EXPECT_EQ(checkOf(three, RuleKind::CountAtMaximum)->measured, 3 * kMillion);
    EXPECT_FALSE(checkOf(three, RuleKind::CountAtMaximum)->note.empty());
}

// E14: ASME B16.34-2020, Mandatory Appendix II.
TEST(WorkedCasesOracle, ALinearAtTheLimitPasses) {
    EXPECT_EQ(judged("ASME B16.34-2020 App. II", kAppTwo, apart({linear("18.0")})).word,
              Word::Acceptable);
    EXPECT_EQ(judged("ASME B16.34-2020 App. II", kAppTwo, apart({linear("18.5")})).word,
              Word::NotAcceptable);
}

// E15: ASME B16.34-2020, Mandatory Appendix II, the stricter reading of the spacing.
TEST(WorkedCasesOracle, LinearOnesMustStandApart) {
    const auto verdict = judged("ASME B16.34-2020 App. II", kAppTwo,
                                inLine({linear("10"), linear("9")}, {"11"}), "20");
    EXPECT_EQ(verdict.word, Word::NotAcceptable);
    EXPECT_EQ(checkOf(verdict, RuleKind::Spacing)->measured, mm("11").millionths());
    EXPECT_EQ(checkOf(verdict, RuleKind::Spacing)->passes, false);
    const auto atLimit = judged("ASME B16.34-2020 App. II", kAppTwo,
                                inLine({linear("10"), linear("9")}, {"13"}), "20");
    EXPECT_EQ(checkOf(atLimit, RuleKind::Spacing)->passes, false);
    const auto beyond = judged("ASME B16.34-2020 App. II", kAppTwo,
                               inLine({linear("10"), linear("9")}, {"13.001"}), "20");
    EXPECT_EQ(beyond.word, Word::Acceptable);
}

// E16: ASME BPVC VIII-1:2017, Appendix 8: relevance comes before the line.
TEST(WorkedCasesOracle, AnIrrelevantSpotDoesNotMakeALine) {
    const auto verdict =
        judged("ASME VIII-1:2017 App. 8", {{"all", "App. 8"}},
               inLine({spot("3"), spot("3"), spot("3"), spot("1.4")}, {"1.0", "1.0", "1.0"}));
    EXPECT_EQ(verdict.word, Word::Acceptable);
    EXPECT_FALSE(verdict.indications.at(3).considered);
    const auto four =
        judged("ASME VIII-1:2017 App. 8", {{"all", "App. 8"}},
               inLine({spot("3"), spot("3"), spot("3"), spot("1.6")}, {"1.0", "1.0", "1.0"}));
    EXPECT_EQ(four.word, Word::NotAcceptable);
}

// E17: ASTM A903/A903M: relevant above 1.6 mm; Table 1 unknown.
TEST(WorkedCasesOracle, WhatTheUnknownTableWouldJudgeIsNotJudged) {
    const std::map<std::string, std::string> levels{{"all", "III"}};
    const auto verdict = judged("ASTM A903/A903M-99 MT", levels, apart({spot("1.6"), spot("1.7")}));
    EXPECT_EQ(verdict.word, Word::NotJudged);
    EXPECT_FALSE(verdict.indications.at(0).considered);
    EXPECT_TRUE(verdict.indications.at(1).considered);
    EXPECT_EQ(judged("ASTM A903/A903M-99 MT", levels, apart({spot("1.6")})).word, Word::Acceptable);
}

// E18: EN 1369:2012, Table 2 (M).
TEST(WorkedCasesOracle, TheSumInTheFrameDecides) {
    EXPECT_EQ(
        judged("EN 1369:2012", {{"linear", "LM 3"}}, apart({linear("5"), linear("4.5")})).word,
        Word::Acceptable);
    const auto verdict = judged("EN 1369:2012", {{"linear", "LM 3"}},
                                apart({linear("5"), linear("4.5"), linear("3")}));
    EXPECT_EQ(verdict.word, Word::NotAcceptable);
    const Check* sum = checkOf(verdict, RuleKind::CumulativeLength);
    EXPECT_EQ(sum->measured, mm("12.5").millionths());
    EXPECT_THAT(sum->members, ElementsAre("1", "2", "3"));
    ASSERT_TRUE(sum->frame.has_value());
}

// E19: ASME BPVC VIII-1:2017, 7-3(a)(4) (M): t/3 at t = 40.
TEST(WorkedCasesOracle, AThirdOfTheThickness) {
    const auto word = [](const Indication& indication) {
        return judged("ASME VIII-1:2017 App. 7 PT", {{"all", "App. 7"}},
                      apart({ofKind(indication, Kind::Shrinkage)}))
            .word;
    };
    EXPECT_EQ(word(linear("13")), Word::Acceptable);
    EXPECT_EQ(word(linear("14")), Word::NotAcceptable);
    EXPECT_EQ(word(linear("13.333333")), Word::Acceptable);
    EXPECT_EQ(word(linear("13.333334")), Word::NotAcceptable);
    EXPECT_EQ(word(spot("2.5")), Word::NotAcceptable);
}

// E20: ISO 23278:2015, level 2 (M).
TEST(WorkedCasesOracle, NeighboursCloserThanTheSmallerCountAsOne) {
    const auto verdict =
        judged("ISO 23278:2015", {{"all", "2"}}, inLine({linear("2"), linear("1.5")}, {"1.0"}));
    EXPECT_EQ(verdict.word, Word::NotAcceptable);
    ASSERT_EQ(verdict.groups.size(), 1U);
    EXPECT_EQ(verdict.groups[0].length, mm("4.5"));
    EXPECT_EQ(
        judged("ISO 23278:2015", {{"all", "2"}}, inLine({linear("2"), linear("1.5")}, {"1.5"}))
            .word,
        Word::Acceptable);
}

}  // namespace
}  // namespace model
