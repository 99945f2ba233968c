// SPDX-License-Identifier: Apache-2.0
// An ultrasonic examination typed by keys: setting, readings, rows and coverage. Published answers
// are those of question banks and textbooks, named at each.
#include <QApplication>
#include <QCheckBox>
#include <QLabel>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QTabWidget>
#include <QTest>

#include "bench/conflict_dialog.h"
#include "bench/row_model.h"
#include "bench/row_table.h"
#include "bench/surface_view.h"
#include "bench/verdict_panel.h"
#include "looks/mark.h"
#include "ultrasonic_fixture.h"

namespace app {
namespace {

using UltrasonicWork = UltrasonicTest;

const Entries kReading = {{"x_mm", "120"},
                          {"y_mm", "80"},
                          {"echo.sound_path_mm", "150"},
                          {"echo.gain_db", "30"},
                          {"echo.screen_percent", "80"}};

// Question bank on ultrasonic testing of forgings: an echo 10 dB above that of a hole of 2 mm at
// 200 mm, from 150 mm, is that of a hole of 2.7 mm. At 14 near fields the model must say the same.
TEST_F(UltrasonicWork, OracleAHoleAgainstAHoleAsPublished) {
    goToZone(0);
    typeSetting(straightSetting());
    typeReading(kReading);
    EXPECT_EQ(reading().result().headline(), "FBH 2.7 mm")
        << reading().result().facts().toStdString();
    EXPECT_TRUE(reading().result().facts().contains("Echo +10.0 dB"));
    ASSERT_EQ(reflectors().size(), 1U);
    EXPECT_EQ(reflectors()[0].setting, settings()[0].name);
    EXPECT_EQ(reflectors()[0].gain, "30");
}

TEST_F(UltrasonicWork, ResultAndPicturesChangeAsOneTypes) {
    goToZone(0);
    typeSetting(straightSetting());
    shortcut(Qt::Key_6);
    EXPECT_FALSE(reading().diagram().diagram().flaw);
    EXPECT_FALSE(reading().section().section().trace.end);
    typeReading(kReading);
    const auto before = reading().diagram().diagram();
    ASSERT_TRUE(before.flaw && before.reference);
    // N = D^2 / 4 lambda = 10.6 mm (question bank, 2.5 MHz, 10 mm, 5900 m/s).
    EXPECT_NEAR(before.nearFieldMm, 10.6, .05);
    EXPECT_NEAR(before.flaw->echoDb - before.reference->echoDb, 10, 1e-9);
    EXPECT_NEAR(reading().section().section().trace.end->depthMm, 150, 1e-9);

    typeInto(reading().form(), "echo.gain_db", "24");  // not entered yet
    const auto after = reading().diagram().diagram();
    ASSERT_TRUE(after.flaw);
    EXPECT_NEAR(after.flaw->echoDb - before.flaw->echoDb, 6, 1e-9);
    EXPECT_NE(reading().result().headline(), "FBH 2.7 mm");
    EXPECT_EQ(reflectors()[0].gain, "30");
    typeInto(reading().form(), "echo.sound_path_mm", "90");
    EXPECT_NEAR(reading().section().section().trace.end->depthMm, 90, 1e-9);
    EXPECT_EQ(reflectors()[0].gain, "24") << "leaving a field enters it";
    EXPECT_TRUE(reading().section().accessibleDescription().contains("90.0 mm deep"));
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
    shortcut(Qt::Key_Z);
    EXPECT_EQ(reflectors()[0].soundPath, "150");
    EXPECT_NEAR(reading().section().section().trace.end->depthMm, 150, 1e-9);
}

// Question bank: an angle probe of K 1.5 (tan of the angle) on a wall of 60 mm, the echo at 135 mm
// of depth without the skips: 15 mm deep, 202.5 mm ahead. 135 mm / cos = 243.374 mm of path.
TEST_F(UltrasonicWork, OracleAnAngleBeamOnItsThirdLeg) {
    goToZone(0);
    typeSetting({{"probe.kind", "angle"},
                 {"probe.diameter_mm", "10"},
                 {"probe.frequency_mhz", "4"},
                 {"probe.angle_deg", "56.309932"},
                 {"material.velocity_m_s", "3250"},
                 {"part.thickness_mm", "60"},
                 {"reference.kind", "flat-bottomed hole"},
                 {"reference.sound_path_mm", "200"},
                 {"reference.diameter_mm", "2"},
                 {"reference.gain_db", "40"},
                 {"reference.screen_percent", "80"}});
    typeReading({{"echo.sound_path_mm", "243.374198"},
                 {"echo.gain_db", "40"},
                 {"echo.screen_percent", "80"}});
    const auto& section = reading().section().section();
    ASSERT_TRUE(section.trace.end);
    EXPECT_EQ(section.trace.end->leg, 3);
    EXPECT_NEAR(section.trace.end->depthMm, 15, 1e-3);
    EXPECT_NEAR(section.trace.end->surfaceDistanceMm, 202.5, 1e-3);
    EXPECT_EQ(section.trace.line.size(), 4U);
    EXPECT_TRUE(reading().result().facts().contains("Depth 15.0 mm, on leg 3"));
    EXPECT_TRUE(reading().result().facts().contains("202.5 mm ahead of the probe's index point"));
    ASSERT_TRUE(section.rimMm) << "rim of EN 12680-3:2003: a third, at most 30 mm";
    EXPECT_NEAR(*section.rimMm, 20, 1e-9);
}

TEST_F(UltrasonicWork, AnImpossibleReadingIsPointedOutAtItsField) {
    goToZone(0);
    typeSetting(straightSetting());
    typeReading(kReading);
    typeInto(reading().form(), "echo.screen_percent", "120");
    EXPECT_FALSE(fieldError("echo.screen_percent").isEmpty());
    EXPECT_TRUE(fieldError("echo.gain_db").isEmpty());
    EXPECT_TRUE(reading().result().headline().contains("Not a possible reading"));
    EXPECT_FALSE(reading().diagram().diagram().flaw);
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
    const QModelIndex cell = pane().rows().index(0, at(ReflectorColumn::Screen));
    EXPECT_EQ(cell.data(RowModel::kStateRole).toInt(), static_cast<int>(CellState::Wrong));
    EXPECT_EQ(verdict(), "not judged");
    typeInto(reading().form(), "echo.screen_percent", "4o");
    EXPECT_FALSE(fieldError("echo.screen_percent").isEmpty());
    typeInto(reading().form(), "echo.screen_percent", "40");
    EXPECT_TRUE(fieldError("echo.screen_percent").isEmpty());
    EXPECT_TRUE(reading().result().headline().startsWith("FBH "));
}

TEST_F(UltrasonicWork, ComputedSizesStandInTheTableUntilSomebodyTypesOverThem) {
    goToZone(0);
    typeSetting(straightSetting());
    typeReading(kReading);
    const QModelIndex cell = pane().rows().index(0, at(ReflectorColumn::Fbh));
    EXPECT_TRUE(cell.data(RowModel::kSuggestedRole).toBool());
    EXPECT_TRUE(cell.data(Qt::DisplayRole).toString().startsWith("= 2.6"))
        << cell.data(Qt::DisplayRole).toString().toStdString();
    EXPECT_EQ(pane().rows().index(0, at(ReflectorColumn::Depth)).data().toString(), "= 150");
    shortcut(Qt::Key_4);
    pane().table().goTo(0, ReflectorColumn::Fbh);
    typeCells({"3.5"});
    EXPECT_EQ(reflectors()[0].fbh, "3.5");
    EXPECT_FALSE(cell.data(RowModel::kSuggestedRole).toBool());
    EXPECT_EQ(editor().reflector(0, 0).value->fbh, model::nanometres(3'500'000));
}

TEST_F(UltrasonicWork, EnterInTheLastFieldLeadsToTheNextReading) {
    goToZone(0);
    typeSetting(straightSetting());
    typeReading(kReading);
    for (int i = 0; i < 3; ++i) press(Qt::Key_Return);  // along, across, drop
    EXPECT_EQ(reading().row(), 1);
    EXPECT_EQ(QApplication::focusWidget()->objectName(), "x_mm");
    type("200");
    press(Qt::Key_Return);
    ASSERT_EQ(reflectors().size(), 2U);
    EXPECT_EQ(reflectors()[1].x, "200");
    EXPECT_EQ(reflectors()[1].setting, settings()[0].name);
    press(Qt::Key_PageUp);
    EXPECT_EQ(reading().row(), 0);
    EXPECT_EQ(reading().result().headline(), "FBH 2.7 mm");
}

TEST_F(UltrasonicWork, RowsAreTypedOnTheZoneAndDrawnThere) {
    goToZone(0);
    // No reading: after the empty sound path the cursor goes to the typed sizes.
    typeCells({"120", "80", "", "", "45", "6", "22", "9", "4", "vol"});
    ASSERT_EQ(reflectors().size(), 1U);
    EXPECT_EQ(reflectors()[0].depth, "45");
    EXPECT_EQ(reflectors()[0].throughWall, "4");
    EXPECT_EQ(reflectors()[0].kind, "volumetric");
    EXPECT_EQ(pane().table().currentIndex().row(), 1);
    typeCells({"200", "100", "", "", "20"});  // a point, as no length was measured
    verdict();
    const auto& drawn = pane().surface().picture().indications;
    ASSERT_EQ(drawn.size(), 2U);
    EXPECT_EQ(static_cast<double>(drawn[0].capsule.half), (22 - 9) / 2.0);
    EXPECT_EQ(static_cast<double>(drawn[0].capsule.radius), 4.5);
    EXPECT_EQ(static_cast<double>(drawn[1].capsule.half), 0);
    EXPECT_EQ(static_cast<double>(drawn[1].capsule.radius), 0);
}

TEST_F(UltrasonicWork, CoverageIsStatedAndWrongValuesStayAtTheirField) {
    goToZone(0);
    shortcut(Qt::Key_8);
    auto& form = pane().coverage().form();
    typeInto(form, "zone_area_mm2", "60000");
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
    typeInto(form, "testability.smallest_fbh_mm", "0");
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
    EXPECT_EQ(form.error(form.find("testability.smallest_fbh_mm")), "must be above zero");
    EXPECT_EQ(editor().draft(0).header.ultrasonic.zoneArea, model::squareMillimetres(60000));
    EXPECT_FALSE(editor().draft(0).header.ultrasonic.testability);
    typeInto(form, "testability.smallest_fbh_mm", "3");
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
    typeInto(form, "dead_zone_mm", "0");
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
    auto& directions = pane().coverage().directions();
    directions.setFocus();
    QTest::keyClicks(&directions, "top face");
    QTest::keyClick(&directions, Qt::Key_Return);
    QTest::keyClicks(&directions, "bottom face");
    form.editor(0)->setFocus();
    const auto& stated = editor().draft(0).header.ultrasonic;
    ASSERT_TRUE(stated.testability);
    EXPECT_EQ(stated.testability->smallestFbh, model::millimetres(3));
    EXPECT_EQ(stated.deadZone, model::Length());
    EXPECT_THAT(stated.directions, testing::ElementsAre("top face", "bottom face"));
}

// Velocity by set value times true over shown wall: 5920 x 100 / 112.8 = 5248 m/s, under both
// guide values for spheroidal graphite iron.
TEST_F(UltrasonicWork, AVelocityMeasuredOnTheCastingPutsItsNodularityInDoubt) {
    goToZone(0);
    typeSetting({{"probe.diameter_mm", "10"},
                 {"probe.frequency_mhz", "2"},
                 {"known_thickness", "100"},
                 {"shown_thickness", "112.8"},
                 {"set_velocity", "5920"}});
    auto& page = pane().settings();
    EXPECT_TRUE(page.measuredText().contains("5248 m/s")) << page.measuredText().toStdString();
    EXPECT_TRUE(page.warningText().contains("never certifies nodularity"));
    EXPECT_TRUE(page.warningText().contains("Sources"));
    auto* use = page.findChild<QPushButton*>("useVelocity");
    ASSERT_TRUE(use->isVisible());
    QTest::keyClick(use, Qt::Key_Space);
    EXPECT_EQ(settings()[0].velocity, "5248");
    auto* form = page.find("shown_thickness").first;
    typeInto(*form, "shown_thickness", "104");  // 5692 m/s
    EXPECT_TRUE(page.warningText().isEmpty());
}

// 9.5 dB between the second and the fifth back-wall echo of a wall of 250 mm: 0.001 dB/mm
// (question bank), with the far-field rule.
TEST_F(UltrasonicWork, OracleAttenuationFromTwoBackWallEchoes) {
    goToZone(0);
    typeSetting({{"known_thickness", "250"},
                 {"first_echo_number", "2"},
                 {"first_echo_gain", "20"},
                 {"second_echo_number", "5"},
                 {"second_echo_gain", "29.5"}});
    EXPECT_TRUE(pane().settings().measuredText().contains("1.0 dB/m one way"))
        << pane().settings().measuredText().toStdString();
}

TEST_F(UltrasonicWork, RowsFollowASettingToItsNewName) {
    goToZone(0);
    typeSetting(straightSetting());
    typeReading(kReading);
    shortcut(Qt::Key_7);
    auto* form = pane().settings().find("name").first;
    typeInto(*form, "name", "head on");
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
    EXPECT_EQ(settings()[0].name, "head on");
    EXPECT_EQ(reflectors()[0].setting, "head on");
    shortcut(Qt::Key_Z);
    EXPECT_EQ(settings()[0].name, "1");
    EXPECT_EQ(reflectors()[0].setting, "1");
}

TEST_F(UltrasonicWork, EverythingIsSavedAndThereAfterReopening) {
    goToZone(0);
    typeSetting(straightSetting());
    typeReading(kReading);
    shortcut(Qt::Key_8);
    auto& form = pane().coverage().form();
    typeInto(form, "testability.smallest_fbh_mm", "3");
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
    ASSERT_TRUE(saved());
    const auto before = editor().draft(0);
    window_.reset();
    openWindow();
    goToZone(0);
    EXPECT_EQ(settings(), before.settings);
    EXPECT_EQ(reflectors(), before.reflectors);
    EXPECT_TRUE(sameContent(editor().draft(0), before));
    shortcut(Qt::Key_6);
    reading().setRow(0);
    EXPECT_EQ(reading().result().headline(), "FBH 2.7 mm");
}

TEST_F(UltrasonicWork, TwoVersionsOfReadingsAreShownAndTheOtherIsTaken) {
    goToZone(0);
    typeCells({"120", "80", "", "", "45"});
    ASSERT_TRUE(saved());
    auto other = openAgain();
    auto theirs = stored().examinations.front();
    theirs.reflectors[0].depth = "50";
    ASSERT_TRUE(other.save(theirs, model::Actor{"Bo"}));
    pane().table().goTo(0, ReflectorColumn::Depth);
    typeCells({"47"});
    ConflictDialog* dialog = nullptr;
    ASSERT_TRUE(eventually([&] {
        dialog = window_->findChild<ConflictDialog*>();
        return dialog != nullptr && dialog->isVisible();
    }));
    EXPECT_EQ(stored().examinations[0].reflectors[0].depth, "50") << "nothing was overwritten";
    auto* take = dialog->findChild<QAbstractButton*>("takeStored");
    ASSERT_NE(take, nullptr);
    QTest::keyClick(take, Qt::Key_Space);
    ASSERT_TRUE(saved());
    EXPECT_EQ(reflectors()[0].depth, "50");
}

// EN 12680-3:2003 needs testability; without it nothing is acceptable.
TEST_F(UltrasonicWork, TheVerdictIsShownAndItsFailedCheckIsMarkedOnTheZone) {
    goToZone(0);
    pane().nothingFound().setFocus();
    press(Qt::Key_Space);
    EXPECT_EQ(verdict(), "not judged");
    shortcut(Qt::Key_8);
    auto& form = pane().coverage().form();
    for (const auto& [field, text] : Entries{{"zone_area_mm2", "60000"},
                                             {"testability.smallest_fbh_mm", "2"},
                                             {"testability.signal_to_noise_db", "12"},
                                             {"dead_zone_mm", "0"}}) {
        typeInto(form, field, text);
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
    }
    EXPECT_EQ(verdict(), "not judged") << "from where it was scanned is not stated";
    QTest::keyClicks(QApplication::focusWidget(), "top face");  // where Enter led to
    form.editor(0)->setFocus();
    EXPECT_EQ(verdict(), "acceptable");
    shortcut(Qt::Key_4);
    // 22 x 9 mm and 15 mm through the wall, of 12 mm allowed at level 2 (20 % of 60 mm; Table 1).
    typeCells({"120", "80", "", "", "30", "6", "22", "9", "15", "vol"});
    EXPECT_EQ(verdict(), "not acceptable");
    const auto& shown = pane().surface().check();
    ASSERT_TRUE(shown);
    EXPECT_EQ(shown->mark, Mark::Fails);
    EXPECT_EQ(shown->members.size(), 1U) << "drawn in the mark's colour";
}

// Undo while a field is typed in takes back the typing, and afterwards what was entered.
TEST_F(UltrasonicWork, AFieldFollowsUndoAndRedo) {
    goToZone(0);
    typeSetting(straightSetting());
    typeReading(kReading);
    typeInto(reading().form(), "echo.gain_db", "24");
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
    EXPECT_EQ(reflectors()[0].gain, "24");
    shortcut(Qt::Key_Z);
    EXPECT_EQ(reflectors()[0].gain, "30");
    EXPECT_EQ(reading().form().text(reading().form().find("echo.gain_db")), "30");
    EXPECT_EQ(reading().result().headline(), "FBH 2.7 mm");
    shortcut(Qt::Key_Y);
    EXPECT_EQ(reflectors()[0].gain, "24");
}

}  // namespace
}  // namespace app
