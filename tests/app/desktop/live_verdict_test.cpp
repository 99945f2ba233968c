// SPDX-License-Identifier: Apache-2.0
// Limits used: EN 1369:2012 Table 2, LM 4: linear alone at most 10 mm (grade M).
#include "editing/live_verdict.h"

#include "editing/casting_editor.h"
#include "foundry_fixture.h"

namespace app {
namespace {

using model::Word;

class LiveVerdictTest : public testing::Test {
protected:
    LiveVerdictTest() : editor_(sampleFile()) {
        for (const auto& zone : editor_.file().plan.zones) {
            editor_.begin(zone, zone.tests.front(), "Ada", "2026-11-25");
        }
        for (int i = 0; i < 3; ++i) editor_.stateNoIndications(i, true);
    }

    void type(int examination, std::vector<model::TypedIndication> rows) {
        editor_.replaceRows(examination, 0,
                            static_cast<int>(editor_.draft(examination).rows.size()),
                            std::move(rows), "typed");
    }
    [[nodiscard]] LiveVerdict judged() const {
        const auto tables = model::TableSet::shipped();
        EXPECT_TRUE(tables) << tables.error().message();
        return judgeLive(editor_.file(), *tables);
    }

    CastingEditor editor_;
};

TEST_F(LiveVerdictTest, NothingFoundIsAcceptableAndWhole) {
    const auto live = judged();
    ASSERT_EQ(live.examinations.size(), 3U);
    for (const auto& examination : live.examinations) {
        EXPECT_EQ(examination.word, Word::Acceptable);
        EXPECT_FALSE(examination.partial);
    }
    ASSERT_TRUE(live.complete);
    EXPECT_EQ(live.worst(), Word::Acceptable);
}

TEST_F(LiveVerdictTest, AnUnstatedEmptyZoneIsNotJudged) {
    editor_.stateNoIndications(0, false);
    EXPECT_EQ(judged().examinations[0].word, Word::NotJudged);
}

TEST_F(LiveVerdictTest, AHalfTypedRowKeepsItsWholeSurfaceFromBeingAcceptable) {
    type(0, {row("1", "10", "10", "", "")});
    const auto live = judged();
    EXPECT_EQ(live.examinations[0].word, Word::NotJudged);
    EXPECT_EQ(live.examinations[1].word, Word::NotJudged) << "Z2 shares the surface";
    EXPECT_TRUE(live.examinations[1].partial);
    EXPECT_EQ(live.examinations[2].word, Word::Acceptable) << "Z3 lies elsewhere";
    EXPECT_FALSE(live.complete);
    EXPECT_EQ(live.worst(), Word::NotJudged);
}

TEST_F(LiveVerdictTest, WhatCanBeReadAndFailsFailsBesideAHalfTypedRow) {
    type(0, {row("1", "10", "10", "12", "1"), row("2", "50", "", "", "")});
    const auto live = judged();
    EXPECT_EQ(live.examinations[0].word, Word::NotAcceptable);
    EXPECT_TRUE(live.examinations[0].partial);
    EXPECT_EQ(live.worst(), Word::NotAcceptable);
}

TEST_F(LiveVerdictTest, NamesRowAndFieldOfWhatTheJudgeRefuses) {
    auto stated = row("3", "30", "30", "6", "1");
    stated.stated = "non-linear";  // against the ratio 6 : 1
    type(0, {row("", "", "", "", ""), row("1", "10", "10", "3", "1"),
             row("1", "20", "20", "3", "1"), stated, row("4", "4000", "10", "3", "1")});
    const auto live = judged();
    std::vector<std::pair<int, std::string>> found;
    for (const auto& problem : live.rowProblems) {
        EXPECT_EQ(problem.examination, 0);
        found.emplace_back(problem.row, problem.field);
    }
    EXPECT_THAT(found,
                testing::UnorderedElementsAre(testing::Pair(2, "id"), testing::Pair(3, "class"),
                                              testing::Pair(4, testing::_)));
    EXPECT_EQ(live.examinations[0].word, Word::NotJudged);
    ASSERT_TRUE(live.examinations[0].verdict);
    EXPECT_EQ(live.examinations[0].verdict->indications.size(), 1U);
}

TEST_F(LiveVerdictTest, AnUnknownTableStopsItsOwnExaminationOnly) {
    auto file = editor_.file();
    file.examinations[2].header.table = "No such table";
    const auto tables = model::TableSet::shipped();
    ASSERT_TRUE(tables);
    const auto live = judgeLive(file, *tables);
    EXPECT_EQ(live.examinations[0].word, Word::Acceptable);
    EXPECT_EQ(live.examinations[2].word, Word::NotJudged);
    ASSERT_EQ(live.examinationProblems.size(), 1U);
    EXPECT_EQ(live.examinationProblems[0].examination, 2);
}

}  // namespace
}  // namespace app
