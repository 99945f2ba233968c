// SPDX-License-Identifier: Apache-2.0
// The rules of judging that hold for every table: what is stated, what is unknown, what grouping
// may do. Limits used are named; EN 1369:2012 Table 2 values are from memory (M).
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "limits/parser.h"
#include "sheet_maker.h"

namespace model {
namespace {

using test::apart;
using test::checkOf;
using test::inLine;
using test::judged;
using test::linear;
using test::mm;
using test::numbered;
using test::ofKind;
using test::sheetOf;
using test::spot;
using test::withArea;
using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

const std::map<std::string, std::string> kThree{{"linear", "LM 3"}, {"aligned", "AM 3"}};

TEST(Engine, NothingFoundMustBeStated) {
    auto sheet = sheetOf("EN 1369:2012", kThree, {});
    EXPECT_EQ(judged(sheet).word, Word::Acceptable);
    sheet.examinations[0].noIndications = false;
    EXPECT_EQ(judged(sheet).word, Word::NotJudged);
}

TEST(Engine, AnAreaLeftOutNeedsAnAgreement) {
    auto sheet = sheetOf("EN 1369:2012", kThree, {});
    sheet.examinations[0].notExamined = {{test::mm2("400"), "covered by a lug", "A-17"}};
    EXPECT_EQ(judged(sheet).word, Word::Acceptable);
    sheet.examinations[0].notExamined[0].agreed.clear();
    EXPECT_EQ(judged(sheet).word, Word::NotJudged);
}

TEST(Engine, ASumAtTheLimitPasses) {
    // 1.1 + 2.2 against 3.3 in the same arithmetic: 3.3 + 3.3 + 3.4 = 10 = the sum of LM 3.
    const auto at =
        judged("EN 1369:2012", kThree, apart({linear("3.3"), linear("3.3"), linear("3.4")}));
    EXPECT_EQ(at.word, Word::Acceptable);
    const auto above =
        judged("EN 1369:2012", kThree, apart({linear("3.3"), linear("3.3"), linear("3.400001")}));
    EXPECT_EQ(above.word, Word::NotAcceptable);
}

TEST(Engine, AnUnknownCellLeavesOnlyWhatNeedsItOpen) {
    // LM 01: alone 1, sum unknown.
    const std::map<std::string, std::string> levels{{"linear", "LM 01"}, {"aligned", "AM 01"}};
    const auto one = judged("EN 1369:2012", levels, apart({linear("0.8")}));
    EXPECT_EQ(one.word, Word::NotJudged);
    EXPECT_EQ(checkOf(one, RuleKind::IndividualLength, "linear")->passes, true);
    EXPECT_EQ(checkOf(one, RuleKind::CumulativeLength)->passes, std::nullopt);
    EXPECT_EQ(judged("EN 1369:2012", levels, apart({linear("0.2")})).word, Word::Acceptable);
    // A failed check outranks an unknown one.
    EXPECT_EQ(judged("EN 1369:2012", levels, apart({linear("1.1")})).word, Word::NotAcceptable);
}

TEST(Engine, ALevelWithAnUnknownCellThatIsNeededIsSkippedAndNamed) {
    const auto verdict = judged("EN 1369:2012", kThree, apart({linear("0.9")}));
    EXPECT_EQ(verdict.bestLevels.at("linear"), "LM 1");
    EXPECT_EQ(verdict.bestLevels.at("aligned"), "AM 1");
    EXPECT_THAT(verdict.bestLevelsUnknown, Contains("LM 01"));
}

TEST(Engine, NoLevelIsMetWhenEvenTheLastIsTooStrict) {
    EXPECT_EQ(judged("EN 1369:2012", kThree, apart({linear("46")})).bestLevels.at("linear"),
              std::nullopt);
}

TEST(Engine, AClassWithoutAnOrderedLevelIsNotJudged) {
    const auto verdict =
        judged("EN 1369:2012", {{"non-linear", "SM 2"}}, apart({spot("2"), linear("2")}));
    EXPECT_EQ(verdict.word, Word::NotJudged);
    EXPECT_THAT(verdict.reasons, ElementsAre(HasSubstr("no level is ordered for linear: 2")));
}

TEST(Engine, TheMaterialMustBeTheTables) {
    auto sheet = sheetOf("ASME B16.34-2020 App. II", {{"all", "App. II"}}, apart({linear("30")}));
    EXPECT_EQ(judged(sheet).word, Word::NotAcceptable);
    sheet.casting.material = Material::GreyIron;
    EXPECT_EQ(judged(sheet).word, Word::NotJudged);
}

TEST(Engine, GroupingNeverAcquits) {
    // SM 2: longest 4. Three spots of 4.5 in a row become one aligned of AM 7 (45 allowed), but
    // each alone stays too long for its own level.
    const auto verdict = judged("EN 1369:2012", {{"non-linear", "SM 2"}, {"aligned", "AM 7"}},
                                inLine({spot("4.5"), spot("4.5"), spot("4.5")}, {"1", "1"}));
    ASSERT_EQ(verdict.groups.size(), 1U);
    EXPECT_EQ(verdict.word, Word::NotAcceptable);
    EXPECT_THAT(checkOf(verdict, RuleKind::IndividualLength, "non-linear")->members,
                ElementsAre("1", "2", "3"));
}

TEST(Engine, InASumAGroupCountsWithTheLargerOfItsLengthAndItsMembersSum) {
    // Two parallel linear 6 mm, 1 mm apart: joined, extent just over 6, members' sum 12.
    auto findings = numbered({linear("6", "20", "20"), linear("6", "20", "22")});
    const auto verdict =
        judged("EN 1369:2012", {{"linear", "LM 5"}, {"aligned", "AM 5"}}, findings);
    ASSERT_EQ(verdict.groups.size(), 1U);
    EXPECT_LT(verdict.groups[0].length, mm("7"));
    EXPECT_EQ(checkOf(verdict, RuleKind::CumulativeLength, "linear and aligned")->measured,
              mm("12").millionths());
}

TEST(Engine, LinearAndAlignedAreSummedApartWhenOrderedAtDifferentNumbers) {
    const auto verdict = judged("EN 1369:2012", {{"linear", "LM 5"}, {"aligned", "AM 6"}},
                                inLine({linear("5"), linear("6"), linear("7")}, {"3", "40"}));
    ASSERT_EQ(verdict.groups.size(), 1U);
    // A member stays in its own class's sum; the group is summed in its own.
    EXPECT_EQ(checkOf(verdict, RuleKind::CumulativeLength, "linear")->measured,
              mm("18").millionths());
    EXPECT_EQ(checkOf(verdict, RuleKind::CumulativeLength, "aligned")->measured,
              mm("14").millionths());
}

TEST(Engine, RemovedByMachiningLeavesNonLinearLengthsOnly) {
    auto finding = withArea(spot("4.5"), "16");
    const std::map<std::string, std::string> levels{{"non-linear", "SM 2"}, {"aligned", "AM 2"}};
    EXPECT_EQ(judged("EN 1369:2012", levels, apart({finding})).word, Word::NotAcceptable);
    finding.removed = mm("6");
    const auto verdict = judged("EN 1369:2012", levels, apart({finding}));
    EXPECT_EQ(verdict.word, Word::Acceptable);
    EXPECT_THAT(verdict.notes, Contains(HasSubstr("finish machined")));
    // In a row it stays.
    const auto row =
        judged("EN 1369:2012", levels, inLine({finding, finding, finding}, {"1", "1"}));
    EXPECT_EQ(row.groups.size(), 1U);
    EXPECT_EQ(row.word, Word::NotAcceptable);
    // A linear one always counts.
    auto crack = linear("9");
    crack.removed = mm("6");
    EXPECT_EQ(judged("EN 1369:2012", kThree, apart({crack})).word, Word::NotAcceptable);
}

TEST(Engine, WhatIsNotRelevantStaysListedAndLeavesFirst) {
    auto finding = linear("9");
    finding.relevance = Relevance::NonRelevant;
    finding.reason = "change of section";
    const auto verdict = judged("EN 1369:2012", kThree, apart({finding}));
    EXPECT_EQ(verdict.word, Word::Acceptable);
    ASSERT_EQ(verdict.indications.size(), 1U);
    EXPECT_FALSE(verdict.indications[0].considered);
}

TEST(ForbiddenKinds, AreNeverAcceptableAtAnySize) {
    auto sheet = sheetOf("EN 1369:2012", kThree, apart({ofKind(linear("0.2"), Kind::Crack)}));
    EXPECT_EQ(judged(sheet).word, Word::Acceptable);
    sheet.examinations[0].forbiddenKinds = {Kind::Crack};
    const auto verdict = judged(sheet);
    EXPECT_EQ(verdict.word, Word::NotAcceptable);
    EXPECT_THAT(checkOf(verdict, RuleKind::ForbiddenKind)->members, ElementsAre("1"));
}

TEST(ForbiddenKinds, AnUnstatedKindIsNotJudgedWhereItCouldBeForbidden) {
    const std::map<std::string, std::string> levels{
        {"linear", "LM 3"}, {"aligned", "AM 3"}, {"non-linear", "SM 3"}};
    const auto wordWith = [&](Indication indication, Kind forbidden) {
        auto sheet = sheetOf("EN 1369:2012", levels, apart({std::move(indication)}));
        sheet.examinations[0].forbiddenKinds = {forbidden};
        return judged(sheet).word;
    };
    EXPECT_EQ(wordWith(linear("4"), Kind::Crack), Word::NotJudged);
    EXPECT_EQ(wordWith(ofKind(linear("4"), Kind::Unknown), Kind::Crack), Word::NotJudged);
    EXPECT_EQ(wordWith(ofKind(linear("4"), Kind::Inclusion), Kind::Crack), Word::Acceptable);
    EXPECT_EQ(wordWith(spot("4"), Kind::Crack), Word::Acceptable);
    EXPECT_EQ(wordWith(spot("4"), Kind::Chaplet), Word::NotJudged);
    EXPECT_EQ(wordWith(ofKind(spot("4"), Kind::Chaplet), Kind::Chaplet), Word::NotAcceptable);
}

TEST(Engine, AHairlineStatedLinearIsJudgedByItsLength) {
    auto hairline = linear("7");
    hairline.width.reset();
    hairline.stated = StatedClass::Linear;
    EXPECT_EQ(judged("EN 1369:2012", kThree, apart({hairline})).word, Word::NotAcceptable);
}

TEST(Engine, AStatedLinearTightensTheRatio) {
    auto finding = spot("4");
    finding.stated = StatedClass::Linear;
    const auto verdict = judged("EN 1369:2012", kThree, apart({finding}));
    EXPECT_EQ(verdict.indications[0].classified, IndicationClass::Linear);
}

TEST(Engine, ACountTakesIsolatedAndClusteredTogether) {
    // EN 1371-1:2011 Table 1 (M): at most 8 in the frame at SP 1 and CP 1.
    std::vector<Indication> findings;
    for (int i = 0; i < 9; ++i) {
        findings.push_back(ofKind(spot("2"), i % 2 == 0 ? Kind::Clustered : Kind::Porosity));
        findings.back().x = millimetres(10 + 20 * (i % 3));
        findings.back().y = millimetres(10 + 20 * (i / 3));
    }
    const auto verdict =
        judged("EN 1371-1:2011", {{"isolated", "SP 1"}, {"clustered", "CP 1"}}, numbered(findings));
    EXPECT_EQ(verdict.word, Word::NotAcceptable);
    const Check* count = checkOf(verdict, RuleKind::Count);
    ASSERT_NE(count, nullptr);
    EXPECT_EQ(count->measured, 9 * kMillion);
    EXPECT_EQ(verdict.indications[0].classified, IndicationClass::Clustered);
    EXPECT_EQ(verdict.indications[1].classified, IndicationClass::Isolated);
}

TEST(Engine, SpacingOfAllClassesLeavesGroupsAlone) {
    // IACS Rec. 69 MT1 (M): 30 mm between relevant ones, fails under 30.
    const auto levels = std::map<std::string, std::string>{{"all", "MT1"}};
    const auto kinds = [](Indication i) { return ofKind(std::move(i), Kind::Inclusion); };
    EXPECT_EQ(
        judged("IACS Rec. 69 MT", levels, inLine({kinds(spot("3")), kinds(spot("3"))}, {"30"}))
            .word,
        Word::Acceptable);
    EXPECT_EQ(
        judged("IACS Rec. 69 MT", levels, inLine({kinds(spot("3")), kinds(spot("3"))}, {"29.999"}))
            .word,
        Word::NotAcceptable);
    const auto row = judged(
        "IACS Rec. 69 MT", levels,
        inLine({kinds(spot("0.6")), kinds(spot("0.6")), kinds(spot("0.6"))}, {"0.5", "0.5"}));
    EXPECT_EQ(row.word, Word::Acceptable);
}

std::string refusalOf(const Sheet& sheet) {
    const auto valid = validate(sheet, test::shippedTables());
    return valid.ok() ? "" : valid.error().message();
}

TEST(Validation, NamesThePathOfWhatIsWrong) {
    const auto base = [] {
        return sheetOf("EN 1369:2012", kThree, apart({linear("4"), linear("3")}));
    };
    auto sheet = base();
    sheet.examinations[0].indications[1].id = "1";
    EXPECT_THAT(refusalOf(sheet), HasSubstr("examinations[0].indications[1].id: "));
    sheet = base();
    sheet.examinations[0].table = "EN 1371-1:2011";
    EXPECT_THAT(refusalOf(sheet), HasSubstr("is a table for PT"));
    sheet = base();
    sheet.examinations[0].table = "no such table";
    EXPECT_THAT(refusalOf(sheet), HasSubstr("there is no limit table"));
    sheet = base();
    sheet.examinations[0].levels["linear"] = "SM 3";
    EXPECT_THAT(refusalOf(sheet), HasSubstr("has no level \"SM 3\""));
    sheet = base();
    sheet.examinations[0].levels["all"] = "3";
    EXPECT_THAT(refusalOf(sheet), HasSubstr("has no level key \"all\""));
    sheet = base();
    sheet.examinations[0].indications[0].width = mm("4.1");
    EXPECT_THAT(refusalOf(sheet), HasSubstr("indications[0].width_mm: is above the length"));
    sheet = base();
    sheet.examinations[0].indications[0].stated = StatedClass::NonLinear;
    EXPECT_THAT(refusalOf(sheet), HasSubstr("against the ratio"));
    sheet = base();
    sheet.examinations[0].indications[0].width.reset();
    EXPECT_THAT(refusalOf(sheet), HasSubstr("must be stated"));
    sheet = base();
    sheet.examinations.push_back(sheet.examinations[0]);
    EXPECT_THAT(refusalOf(sheet), HasSubstr("twice"));
    sheet = base();
    sheet.examinations[0].noIndications = true;
    EXPECT_THAT(refusalOf(sheet), HasSubstr("no_indications"));
    EXPECT_THAT(refusalOf(base()), IsEmpty());
}

}  // namespace
}  // namespace model
