// SPDX-License-Identifier: Apache-2.0
// An inspector's work by keyboard alone, on a real archive. Limits used: EN 1369:2012 Table 2,
// LM 4: linear alone at most 10 mm, sum in the frame at most 18 mm (grade M); counted from 5 mm.
#include <QApplication>
#include <QCheckBox>
#include <QClipboard>
#include <QComboBox>
#include <QFile>
#include <QLabel>
#include <QLineEdit>
#include <QTest>

#include "bench/certificate_dialog.h"
#include "bench/check_list.h"
#include "bench/conflict_dialog.h"
#include "bench/examination_pane.h"
#include "bench/indication_model.h"
#include "bench/row_table.h"
#include "bench/surface_view.h"
#include "bench/verdict_panel.h"
#include "bench_fixture.h"
#include "looks/notice_bar.h"

namespace app {
namespace {

using BenchWork = BenchTest;

TEST_F(BenchWork, AZoneIsTypedByKeyboardAloneAndTheVerdictFollows) {
    goToZone(0);
    EXPECT_EQ(verdict(), "not judged") << "an empty list alone says nothing";
    typeCells({"100", "50", "6", "1", "30", "por"});
    EXPECT_EQ(verdict(), "acceptable");
    ASSERT_EQ(rows().size(), 1U);
    EXPECT_EQ(rows()[0].id, "1");
    EXPECT_EQ(rows()[0].angle, "30");
    EXPECT_EQ(rows()[0].kind, "porosity");
    typeCells({"300", "200", "12", "1"});
    EXPECT_EQ(verdict(), "not acceptable");
    const auto* worst = bench().verdict().checks().current();
    ASSERT_NE(worst, nullptr);
    EXPECT_EQ(worst->rule, model::RuleKind::IndividualLength);
    EXPECT_EQ(worst->measured, 12'000'000);
    EXPECT_EQ(*worst->limit, model::Rational(10'000'000));
    EXPECT_THAT(worst->members, testing::ElementsAre("2"));
}

TEST_F(BenchWork, AVerdictThatComesWhileACellIsTypedLeavesTheCellAlone) {
    goToZone(0);
    typeCells({"100", "50"});
    type("6.5");
    EXPECT_EQ(verdict(), "not judged");
    QCoreApplication::processEvents();
    type("5");
    press(Qt::Key_Return);
    EXPECT_EQ(rows()[0].length, "6.55");
}

TEST_F(BenchWork, UndoAndRedoTakeTheVerdictWithThem) {
    goToZone(0);
    typeCells({"100", "50", "6", "1", "", ""});
    EXPECT_EQ(verdict(), "acceptable");
    press(Qt::Key_Up);  // from the next row's x back to the first row's
    EXPECT_EQ(bench().examination().table().currentIndex().row(), 0);
    bench().examination().table().goTo(0, Column::Length);
    typeCells({"14"});
    EXPECT_EQ(verdict(), "not acceptable");
    shortcut(Qt::Key_Z);
    EXPECT_EQ(rows()[0].length, "6");
    EXPECT_EQ(verdict(), "acceptable");
    shortcut(Qt::Key_Y);
    EXPECT_EQ(rows()[0].length, "14");
    EXPECT_EQ(verdict(), "not acceptable");
}

TEST_F(BenchWork, TheDecidingFrameAndItsMembersStandOnTheSurface) {
    goToZone(0);
    typeCells({"100", "50", "9.5", "1", "", ""});
    press(Qt::Key_Up, Qt::NoModifier);
    press(Qt::Key_Down, Qt::NoModifier);
    typeCells({"150", "90", "9", "1"});
    EXPECT_EQ(verdict(), "not acceptable");  // 18.5 of 18 in one frame, each alone within 10
    const auto& shown = bench().examination().surface().check();
    ASSERT_TRUE(shown);
    ASSERT_TRUE(shown->frame);
    EXPECT_EQ(shown->frame->shape.width, model::millimetres(105));
    EXPECT_EQ(shown->frame->shape.height, model::millimetres(148));
    EXPECT_EQ(shown->members.size(), 2U);
    EXPECT_THAT(shown->label.toStdString(), testing::HasSubstr("18.5 of 18"));
}

TEST_F(BenchWork, WhatIsTypedIsSavedAndThereAfterReopening) {
    goToZone(0);
    typeCells({"100", "50,5", "6"});  // no width yet
    ASSERT_TRUE(saved());
    EXPECT_TRUE(window_->savedText().startsWith("Saved ")) << window_->savedText().toStdString();
    const auto file = stored();
    ASSERT_EQ(file.examinations.size(), 1U);
    EXPECT_EQ(file.examinations[0].examinedBy, "Ada");
    window_.reset();
    openWindow();
    goToZone(0);
    ASSERT_EQ(rows().size(), 1U);
    EXPECT_EQ(rows()[0].y, "50,5");
    EXPECT_EQ(verdict(), "not judged");
}

TEST_F(BenchWork, AnOpenCellIsTakenOverWhenTheWindowIsClosed) {
    goToZone(0);
    type("77");  // no Enter
    window_->close();
    ASSERT_TRUE(eventually([&] { return !window_->isVisible(); }));
    const auto file = stored();
    ASSERT_EQ(file.examinations.size(), 1U);
    ASSERT_EQ(file.examinations[0].rows.size(), 1U);
    EXPECT_EQ(file.examinations[0].rows[0].x, "77");
}

TEST_F(BenchWork, ACellThatCannotBeReadSaysWhatIsWrong) {
    goToZone(0);
    typeCells({"100", "5o", "6", "1"});
    EXPECT_EQ(verdict(), "not judged");
    auto& pane = bench().examination();
    const QModelIndex cell = pane.rows().index(0, static_cast<int>(Column::Y));
    EXPECT_EQ(cell.data(IndicationModel::kStateRole).toInt(), static_cast<int>(CellState::Wrong));
    EXPECT_THAT(cell.data(Qt::ToolTipRole).toString().toStdString(),
                testing::StartsWith("Indication 1, y: "));
    EXPECT_TRUE(eventually([&] { return pane.rowMessage().contains("Indication 1, y: "); }));
    pane.table().goToNextProblem();
    EXPECT_EQ(pane.table().currentIndex(), cell);
    typeCells({"50"});
    EXPECT_EQ(verdict(), "acceptable");
    EXPECT_TRUE(eventually([&] { return pane.rowMessage().startsWith("Enter"); }));
}

TEST_F(BenchWork, InchTextStaysAsTypedWhenTheUnitIsSwitched) {
    goToZone(0);
    auto* unit = bench().examination().findChild<QComboBox*>("rowUnit");
    ASSERT_NE(unit, nullptr);
    unit->setCurrentIndex(1);
    typeCells({"4", "2", "15/64", "3/64", "", ""});
    ASSERT_EQ(rows().size(), 1U);
    EXPECT_EQ(rows()[0].unit, model::LengthUnit::Inch);
    EXPECT_EQ(rows()[0].length, "15/64");
    unit->setCurrentIndex(0);
    EXPECT_EQ(rows()[0].length, "15/64");
    EXPECT_EQ(rows()[0].unit, model::LengthUnit::Inch);
    const QModelIndex cell =
        bench().examination().rows().index(0, static_cast<int>(Column::Length));
    EXPECT_EQ(cell.data(Qt::EditRole).toString(), "15/64");
    EXPECT_TRUE(cell.data(Qt::DisplayRole).toString().endsWith("in"));
    typeCells({"200", "100", "6", "1"});
    EXPECT_EQ(rows()[1].unit, model::LengthUnit::Millimetre);
    ASSERT_TRUE(saved());
    const auto file = stored();
    EXPECT_EQ(file.examinations[0].rows[0].length, "15/64");
    EXPECT_EQ(file.examinations[0].rows[0].unit, model::LengthUnit::Inch);
}

TEST_F(BenchWork, NothingFoundIsStatedAndWithdrawnByARow) {
    goToZone(0);
    auto& box = bench().examination().nothingFound();
    box.setFocus();
    press(Qt::Key_Space);
    EXPECT_TRUE(box.isChecked());
    EXPECT_EQ(verdict(), "acceptable");
    bench().examination().table().setFocus();
    typeCells({"100", "50", "6", "1"});
    EXPECT_TRUE(eventually([&] { return !box.isChecked() && !box.isEnabled(); }));
    EXPECT_EQ(verdict(), "acceptable");
    EXPECT_FALSE(editor().draft(0).header.noIndications);
}

TEST_F(BenchWork, CellsComeFromAndGoToASpreadsheet) {
    goToZone(0);
    QApplication::clipboard()->setText("100\t50\t6\t1\r\n200\t60\t7\t1\r\n");
    shortcut(Qt::Key_V);
    ASSERT_EQ(rows().size(), 2U);
    EXPECT_EQ(rows()[1].id, "2");
    EXPECT_EQ(rows()[1].length, "7");
    bench().examination().table().selectAll();
    shortcut(Qt::Key_C);
    EXPECT_TRUE(QApplication::clipboard()->text().startsWith("1\t100\t50\t6\t1\t"));
    shortcut(Qt::Key_Delete);
    EXPECT_TRUE(rows().empty());
    shortcut(Qt::Key_Z);
    EXPECT_EQ(rows().size(), 2U);
}

TEST_F(BenchWork, AHairlineIsLedToItsClass) {
    goToZone(0);
    typeCells({"100", "50", "6", "", "", "", "l"});  // width, angle, kind empty
    ASSERT_EQ(rows().size(), 1U);
    EXPECT_EQ(rows()[0].stated, "linear");
    EXPECT_EQ(bench().examination().table().currentIndex().row(), 1);
    EXPECT_EQ(verdict(), "acceptable");
}

TEST_F(BenchWork, TwoVersionsAreShownAndTheChosenOneCounts) {
    goToZone(0);
    typeCells({"100", "50", "6", "1", "", ""});
    ASSERT_TRUE(saved());
    auto other = openAgain();
    auto theirs = stored().examinations.front();
    theirs.rows[0].length = "9";
    ASSERT_TRUE(other.save(theirs, model::Actor{"Bo"}));
    typeCells({"200", "60", "7", "1"});
    ConflictDialog* dialog = nullptr;
    ASSERT_TRUE(eventually([&] {
        dialog = window_->findChild<ConflictDialog*>();
        return dialog != nullptr && dialog->isVisible();
    }));
    EXPECT_TRUE(window_->savedText().contains("NOT SAVED"));
    EXPECT_TRUE(bench().notice().isVisible());
    EXPECT_EQ(stored().examinations[0].rows[0].length, "9") << "nothing was overwritten";
    auto* take = dialog->findChild<QAbstractButton*>("takeStored");
    ASSERT_NE(take, nullptr);
    QTest::keyClick(take, Qt::Key_Space);
    ASSERT_TRUE(saved());
    EXPECT_EQ(rows().size(), 1U);
    EXPECT_EQ(rows()[0].length, "9");
    EXPECT_TRUE(window_->savedText().startsWith("Saved "));
    EXPECT_FALSE(bench().notice().isVisible());
}

TEST_F(BenchWork, ATableThatNobodyAttestedSaysSo) {
    goToZone(0);
    typeCells({"100", "50", "6", "1"});
    EXPECT_EQ(verdict(), "acceptable");
    const auto* label = bench().verdict().findChild<QLabel*>("attestation");
    ASSERT_NE(label, nullptr);
    EXPECT_TRUE(label->isVisible());
    EXPECT_TRUE(label->text().contains("not attested"));
}

TEST_F(BenchWork, ANeighbourOnTheSameSurfaceIsDrawnAndCounted) {
    goToZone(0);
    typeCells({"395", "50", "9.5", "1"});
    goToZone(1);
    typeCells({"5", "60", "9", "1"});
    EXPECT_EQ(verdict(), "not acceptable") << "18.5 mm of 18 in one frame across the edge";
    const auto& picture = bench().examination().surface().picture();
    ASSERT_EQ(picture.neighbours.size(), 1U);
    EXPECT_EQ(picture.neighbours[0].name, "Z1");
    ASSERT_EQ(picture.indications.size(), 2U);
    EXPECT_EQ(picture.indications[1].label, "Z1/1");
    EXPECT_EQ(static_cast<double>(picture.indications[1].capsule.x), -5.0);
    goToZone(0);
    EXPECT_EQ(verdict(), "not acceptable");
}

TEST_F(BenchWork, UndoGoesToTheZoneThatItChanges) {
    goToZone(0);
    typeCells({"100", "50", "6", "1"});
    goToZone(1);
    EXPECT_EQ(bench().examination().examination(), 1);
    shortcut(Qt::Key_Z);
    EXPECT_EQ(bench().examination().examination(), 0);
}

TEST_F(BenchWork, TheCertificateIsWrittenWhereTheInspectorSays) {
    goToZone(0);
    typeCells({"100", "50", "6", "1", "", "por"});
    shortcut(Qt::Key_P);
    CertificateDialog* dialog = nullptr;
    ASSERT_TRUE(eventually([&] {
        dialog = window_->findChild<CertificateDialog*>();
        return dialog != nullptr;
    }));
    const QString file = pathOf("certificate.pdf");
    dialog->findChild<QLineEdit*>("certificatePath")->setText(file);
    dialog->accept();
    ASSERT_TRUE(eventually([&] { return !bench().notice().text().isEmpty(); }));
    EXPECT_TRUE(bench().notice().text().contains(file)) << bench().notice().text().toStdString();
    EXPECT_TRUE(bench().notice().text().contains("NOT RELEASED"));
    QFile written(file);
    ASSERT_TRUE(written.open(QIODevice::ReadOnly));
    EXPECT_TRUE(written.readAll().startsWith("%PDF-"));
}

TEST_F(BenchWork, ARowThatCannotBeReadRefusesTheCertificate) {
    goToZone(0);
    typeCells({"100", "50"});
    shortcut(Qt::Key_P);
    CertificateDialog* dialog = nullptr;
    ASSERT_TRUE(eventually([&] {
        dialog = window_->findChild<CertificateDialog*>();
        return dialog != nullptr;
    }));
    const QString file = pathOf("certificate.pdf");
    dialog->findChild<QLineEdit*>("certificatePath")->setText(file);
    dialog->accept();
    ASSERT_TRUE(eventually([&] { return !bench().notice().text().isEmpty(); }));
    EXPECT_TRUE(bench().notice().text().startsWith("No certificate was written"));
    EXPECT_FALSE(QFile::exists(file));
}

}  // namespace
}  // namespace app
