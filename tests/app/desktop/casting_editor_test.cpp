// SPDX-License-Identifier: Apache-2.0
#include "editing/casting_editor.h"

#include <QSignalSpy>

#include "foundry_fixture.h"

namespace app {
namespace {

class CastingEditorTest : public testing::Test {
protected:
    CastingEditorTest() : editor_(sampleFile()) {
        const auto& zone = editor_.file().plan.zones.front();
        exam_ = editor_.begin(zone, zone.tests.front(), "Ada", "2026-11-25");
    }

    void add(const std::string& id) {
        editor_.replaceRows(exam_, static_cast<int>(editor_.draft(exam_).rows.size()), 0,
                            {row(id, "10", "10", "3", "1")}, "typed");
    }
    [[nodiscard]] std::vector<std::string> ids() const {
        std::vector<std::string> all;
        for (const auto& typed : editor_.draft(exam_).rows) all.push_back(typed.id);
        return all;
    }

    CastingEditor editor_;
    int exam_ = -1;
};

TEST_F(CastingEditorTest, BeginsAnExaminationAsTheZonePlanAsks) {
    const auto& header = editor_.draft(exam_).header;
    EXPECT_EQ(header.zone, "Z1");
    EXPECT_EQ(header.table, "EN 1369:2012");
    EXPECT_EQ(header.levels.at("linear"), "LM 4");
    EXPECT_EQ(header.thickness, model::millimetres(40));
    ASSERT_TRUE(header.surface);
    EXPECT_EQ(header.surface->id, "S1");
    EXPECT_FALSE(header.noIndications) << "nothing found is a statement, never the default";
}

TEST_F(CastingEditorTest, BeginsATestOnlyOnce) {
    const auto& zone = editor_.file().plan.zones.front();
    EXPECT_EQ(editor_.begin(zone, zone.tests.front(), "Bo", "2026-11-26"), exam_);
    EXPECT_EQ(editor_.examinations(), 1);
}

TEST_F(CastingEditorTest, UndoAndRedoBringBackEveryRowAsTyped) {
    add("1");
    add("2");
    editor_.replaceRows(exam_, 0, 1,
                        {row("1", "3/64", "1", "2", "1"), row("9", "1", "1", "2", "1")}, "pasted");
    EXPECT_EQ(ids(), (std::vector<std::string>{"1", "9", "2"}));
    editor_.undoStack().undo();
    EXPECT_EQ(ids(), (std::vector<std::string>{"1", "2"}));
    EXPECT_EQ(editor_.draft(exam_).rows[0].x, "10");
    editor_.undoStack().undo();
    editor_.undoStack().undo();
    EXPECT_TRUE(ids().empty());
    while (editor_.undoStack().canRedo()) editor_.undoStack().redo();
    EXPECT_EQ(ids(), (std::vector<std::string>{"1", "9", "2"}));
    EXPECT_EQ(editor_.draft(exam_).rows[0].x, "3/64");
}

TEST_F(CastingEditorTest, KeepsWhatEachRowReadsAsBesideTheRow) {
    add("1");
    editor_.replaceRows(exam_, 0, 0, {row("x", "ten", "1", "2", "1")}, "typed");
    EXPECT_FALSE(editor_.reading(exam_, 0).value);
    ASSERT_TRUE(editor_.reading(exam_, 1).value);
    EXPECT_EQ(editor_.reading(exam_, 1).value->id, "1");
    editor_.undoStack().undo();
    ASSERT_TRUE(editor_.reading(exam_, 0).value);
    EXPECT_EQ(editor_.reading(exam_, 0).value->x, model::millimetres(10));
}

TEST_F(CastingEditorTest, ATypedRowWithdrawsNothingFoundInTheSameStep) {
    ASSERT_TRUE(editor_.stateNoIndications(exam_, true));
    add("1");
    EXPECT_FALSE(editor_.draft(exam_).header.noIndications);
    editor_.undoStack().undo();
    EXPECT_TRUE(editor_.draft(exam_).header.noIndications);
    EXPECT_TRUE(ids().empty());
}

TEST_F(CastingEditorTest, NothingFoundCannotBeStatedOverARow) {
    add("1");
    EXPECT_FALSE(editor_.stateNoIndications(exam_, true));
    EXPECT_FALSE(editor_.draft(exam_).header.noIndications);
}

TEST_F(CastingEditorTest, AChangeToTheSameValueIsNoStep) {
    add("1");
    const int steps = editor_.undoStack().count();
    editor_.replaceRows(exam_, 0, 1, {row("1", "10", "10", "3", "1")}, "typed");
    EXPECT_EQ(editor_.undoStack().count(), steps);
}

}  // namespace
}  // namespace app
