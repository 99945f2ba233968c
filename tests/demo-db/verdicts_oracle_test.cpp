// SPDX-License-Identifier: Apache-2.0
// The demonstration's verdicts against those worked on paper in demo-db/EXPECTED.md.
#include <algorithm>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <map>

#include "base/decimal.h"
#include "expected_verdicts.h"
#include "judge/judge.h"
#include "judge/sheet_words.h"
#include "limits/words.h"
#include "record/coverage.h"
#include "scenario_castings.h"

namespace {

using model::Check;
using model::ExaminationVerdict;

const model::TableSet& tables() {
    static const model::TableSet kTables = [] {
        auto shipped = model::TableSet::shipped();
        if (!shipped) ADD_FAILURE() << shipped.error().message();
        return shipped ? std::move(*shipped) : model::TableSet();
    }();
    return kTables;
}

const model::Verdict& verdictOn(const std::string& serial) {
    static std::map<std::string, model::Verdict> verdicts;
    const auto known = verdicts.find(serial);
    if (known != verdicts.end()) return known->second;
    auto verdict = model::judge(scenarioSheet(serial), tables());
    if (!verdict) ADD_FAILURE() << serial << ": " << verdict.error().message();
    return verdicts.emplace(serial, verdict ? std::move(*verdict) : model::Verdict()).first->second;
}

bool agrees(const ExpectedRule& expected, const Check& check) {
    if (model::word(check.rule) != expected.rule) return false;
    if (!expected.measured.empty() &&
        (!check.measured || model::formatMillionths(*check.measured) != expected.measured))
        return false;
    return expected.limit.empty() ||
           (check.limit && model::formatMillionths(*check.limit) == expected.limit);
}

std::string listed(const ExaminationVerdict& examination) {
    std::string text = "\nchecks:";
    for (const Check& check : examination.checks)
        text += "\n  " + std::string(model::word(check.rule)) + " [" + check.classText + "] " +
                (check.measured ? model::formatMillionths(*check.measured) : "-") + " against " +
                (check.limit ? model::formatMillionths(*check.limit) : "-") + " " +
                (!check.passes   ? "not judged: " + check.reason
                 : *check.passes ? "passes"
                                 : "fails");
    for (const std::string& reason : examination.reasons) text += "\n  reason: " + reason;
    return text;
}

std::string nameOf(const testing::TestParamInfo<ExpectedExamination>& parameter) {
    const ExpectedExamination& expected = parameter.param;
    std::string name = expected.serial + "_" + expected.zone + "_" + expected.method + "_cycle_" +
                       std::to_string(expected.repairCycle);
    std::ranges::replace(name, '-', '_');
    return name;
}

class ExpectedVerdict : public testing::TestWithParam<ExpectedExamination> {
protected:
    const ExpectedExamination& expected() const { return GetParam(); }
    const ExaminationVerdict* examination() const {
        for (const ExaminationVerdict& found : verdictOn(expected().serial).examinations)
            if (found.zone == expected().zone && word(found.method) == expected().method &&
                found.repairCycle == expected().repairCycle)
                return &found;
        return nullptr;
    }
};

TEST_P(ExpectedVerdict, IsTheOneWorkedOnPaper) {
    const ExaminationVerdict* found = examination();
    ASSERT_NE(found, nullptr);
    EXPECT_EQ(word(found->word), word(expected().word)) << listed(*found);
    EXPECT_EQ(found->superseded, expected().superseded);
}

TEST_P(ExpectedVerdict, FailsByExactlyTheRulesWorkedOnPaper) {
    const ExaminationVerdict* found = examination();
    ASSERT_NE(found, nullptr);
    for (const Check& check : found->checks) {
        if (check.passes != false) continue;
        EXPECT_TRUE(std::ranges::any_of(
            expected().failing, [&](const ExpectedRule& rule) { return agrees(rule, check); }))
            << "not expected to fail: " << word(check.rule) << listed(*found);
    }
    for (const ExpectedRule& rule : expected().failing)
        EXPECT_TRUE(std::ranges::any_of(
            found->checks,
            [&](const Check& check) { return check.passes == false && agrees(rule, check); }))
            << "expected to fail: " << rule.rule << " " << rule.measured << " against "
            << rule.limit << listed(*found);
}

TEST_P(ExpectedVerdict, MeasuresWhatWasWorkedOnPaperWhereItPasses) {
    const ExaminationVerdict* found = examination();
    ASSERT_NE(found, nullptr);
    for (const ExpectedRule& rule : expected().passing)
        EXPECT_TRUE(std::ranges::any_of(
            found->checks,
            [&](const Check& check) { return check.passes == true && agrees(rule, check); }))
            << "expected to pass: " << rule.rule << " " << rule.measured << " against "
            << rule.limit << listed(*found);
}

INSTANTIATE_TEST_SUITE_P(Quillmere, ExpectedVerdict, testing::ValuesIn(expectedExaminations()),
                         nameOf);

TEST(ExpectedVerdicts, CoverEveryCastingAndExamination) {
    std::size_t examinations = 0;
    const auto files = scenarioCastings();
    for (const model::CastingFile& file : files) examinations += file.examinations.size();
    EXPECT_EQ(files.size(), expectedCastings().size());
    EXPECT_EQ(examinations, expectedExaminations().size());
}

TEST(ExpectedVerdicts, OnWholeCastingsAreThoseWorkedOnPaper) {
    for (const ExpectedCasting& expected : expectedCastings())
        EXPECT_EQ(
            word(model::castingWord(scenarioCasting(expected.serial), verdictOn(expected.serial))),
            word(expected.word))
            << expected.serial;
}

// What EXPECTED.md says beyond words and numbers.
TEST(ExpectedVerdicts, SayWhyAnExaminationIsNotJudged) {
    for (const ExpectedExamination& expected : expectedExaminations()) {
        if (expected.word != model::Word::NotJudged) continue;
        for (const ExaminationVerdict& found : verdictOn(expected.serial).examinations) {
            if (found.zone != expected.zone) continue;
            const bool said =
                !found.reasons.empty() || std::ranges::any_of(found.checks, [](const Check& check) {
                    return !check.passes && !check.reason.empty();
                });
            EXPECT_TRUE(said) << expected.serial << " " << expected.zone << listed(found);
        }
    }
}

TEST(ExpectedVerdicts, FindTheAlignedGroups) {
    struct {
        const char* serial;
        const char* zone;
        std::vector<std::string> members;
        const char* length;
    } const groups[] = {{"RH-12-03", "Z3", {"1", "2"}, "14"},
                        {"BB-05-21", "Z3", {"1", "2", "3"}, "11.5"},
                        {"SF-02-01", "Z4", {"1", "2"}, "12.5"}};
    for (const auto& expected : groups)
        for (const ExaminationVerdict& found : verdictOn(expected.serial).examinations) {
            if (found.zone != expected.zone) continue;
            ASSERT_EQ(found.groups.size(), 1U) << expected.serial;
            EXPECT_THAT(found.groups[0].members,
                        testing::UnorderedElementsAreArray(expected.members));
            EXPECT_EQ(toText(found.groups[0].length), expected.length);
            EXPECT_EQ(found.groups[0].classified, model::IndicationClass::Aligned);
        }
}

TEST(ExpectedVerdicts, NameTheOtherZonesMemberOfAFrameAcrossAnEdge) {
    for (const ExaminationVerdict& found : verdictOn("SF-02-01").examinations) {
        if (found.zone != "Z1") continue;
        const auto check =
            std::ranges::find(found.checks, model::RuleKind::CumulativeLength, &Check::rule);
        ASSERT_NE(check, found.checks.end());
        EXPECT_THAT(check->members, testing::UnorderedElementsAre("1", "Z2/1"));
    }
}

TEST(ExpectedVerdicts, NoteThatAnExaminationAfterMachiningIsDue) {
    for (const ExaminationVerdict& found : verdictOn("RH-12-03").examinations) {
        if (found.zone != "Z4") continue;
        EXPECT_THAT(found.notes, testing::Contains(testing::HasSubstr("finish machined")));
    }
}

}  // namespace
