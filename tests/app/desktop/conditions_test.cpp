// SPDX-License-Identifier: Apache-2.0
// The conditions of a test at the bench, on a real archive. Limits used: ISO 3059:2012, UV-A at
// the part at least 10 W/m2 (grade P); ISO 17640, a loss of more than 4 dB makes scans void
// (grade P).
#include <QCheckBox>
#include <QComboBox>
#include <QLineEdit>
#include <QPushButton>
#include <QTest>
#include <QUndoStack>

#include "bench/examination_pane.h"
#include "bench/sign_dialog.h"
#include "conditions_bench/conditions_page.h"
#include "conditions_bench/findings_view.h"
#include "looks/marked_lines.h"
#include "registers_fixture.h"
#include "ultrasonic_fixture.h"

namespace app {
namespace {

class Conditions : public RegistersTest {
protected:
    Conditions() { begin(); }

    void begin() {
        openCasting();
        signInAs(foundry::kInspector);
        bench().begin();
        ASSERT_EQ(bench().examination().examination(), 0);
        bench().examination().nothingFound().click();
        bench().examination().goTo(ExaminationPane::Conditions);
        ASSERT_TRUE(eventually([&] { return !page().findings().findings().empty(); }));
    }
    ConditionsPage& page() { return bench().examination().conditions(); }
    [[nodiscard]] const model::TestConditions& conditions() { return editor().draft(0).conditions; }
    const model::ConditionFinding* finding(const std::string& id) {
        const model::ConditionFinding* found = nullptr;
        for (const auto& one : page().findings().findings()) {
            if (one.id == id) found = &one;
        }
        return found;
    }
    void chooseProcedure() {
        enter(page().left(), "procedure", "MT-01 / 3");
        ASSERT_TRUE(eventually([&] { return !page().findings().findings().front().onlySaid; }));
    }
    /// UV-A of so many W/m2, measured in fluorescent light.
    void measureUvA(const QString& value) {
        enter(page().measurements(), 0, "parameter", "viewing");
        enter(page().measurements(), 0, "value", "fluorescent");
        enter(page().measurements(), 1, "parameter", "uv_a");
        enter(page().measurements(), 1, "value", value);
        enter(page().measurements(), 1, "instrument", "UV-1");
    }
};

TEST_F(Conditions, ATestWithoutAProcedureOnlySaysThatConditionsAreNotStated) {
    ASSERT_EQ(page().findings().findings().size(), 1U);
    EXPECT_TRUE(page().findings().findings().front().onlySaid);
    bench().sign();
    auto* sign = dialog<SignDialog>();
    ASSERT_NE(sign, nullptr);
    EXPECT_TRUE(sign->actButton().isEnabled());
    EXPECT_NE(sign->findChild<MarkedList*>("signedFindings"), nullptr);
}

TEST_F(Conditions, AnObsoleteRevisionIsOfferedOnlyWhereTheOrderFixesIt) {
    const auto* combo =
        qobject_cast<QComboBox*>(page().left().editor(page().left().find("procedure")));
    EXPECT_GE(combo->findData("MT-01 / 3"), 0);
    EXPECT_EQ(combo->findData("MT-01 / 2"), -1);
    auto archive = openAgain();
    auto order = archive.order("O-1");
    ASSERT_TRUE(order);
    order->value.terms.fixedProcedures = "MT-01 / 2";
    ASSERT_TRUE(archive.save(order->value, order->version, model::Actor{"Office"}));
    ASSERT_TRUE(saved());
    window_.reset();
    openWindow();
    openCasting();
    bench().zones().setCurrentIndex(bench().zones().zones().index(0));
    combo = qobject_cast<QComboBox*>(page().left().editor(page().left().find("procedure")));
    const int fixed = combo->findData("MT-01 / 2");
    ASSERT_GE(fixed, 0);
    EXPECT_TRUE(combo->itemText(fixed).contains("fixed by the order"))
        << combo->itemText(fixed).toStdString();
}

TEST_F(Conditions, ChoosingAProcedureSaysSoBesideTheExaminerAndIsOneStep) {
    const int before = editor().undoStack().count();
    chooseProcedure();
    EXPECT_EQ(conditions().procedureNumber, "MT-01");
    EXPECT_EQ(conditions().procedureRevision, "3");
    EXPECT_EQ(conditions().testStandard, "ISO 9934-1:2016");
    EXPECT_EQ(editor().draft(0).procedure, "MT-01 / 3");
    EXPECT_EQ(editor().undoStack().count(), before + 1);
    editor().undoStack().undo();
    EXPECT_EQ(conditions(), model::TestConditions());
    EXPECT_TRUE(editor().draft(0).procedure.empty());
}

TEST_F(Conditions, WhatIsTypedInOneFieldIsOneStepAndIsSaved) {
    const int before = editor().undoStack().count();
    enter(page().left(), "place", "Bay 1");
    enter(page().left(), "place", "Bay 2");
    EXPECT_EQ(editor().undoStack().count(), before + 1);
    enter(page().right(), "coating", "40");
    EXPECT_EQ(editor().undoStack().count(), before + 2);
    ASSERT_TRUE(saved());
    EXPECT_EQ(stored().examinations[0].conditions.place, "Bay 2");
    EXPECT_EQ(stored().examinations[0].conditions.coating, "40");
    editor().undoStack().undo();
    editor().undoStack().undo();
    EXPECT_EQ(conditions().place, "");
    ASSERT_TRUE(saved());
    EXPECT_EQ(stored().examinations[0].conditions, model::TestConditions());
}

TEST_F(Conditions, ANewMeasurementHasTimePersonAndTheUsualUnit) {
    enter(page().measurements(), 0, "parameter", "uv_a");
    ASSERT_EQ(conditions().measurements.size(), 1U);
    const auto& measured = conditions().measurements[0];
    EXPECT_EQ(measured.by, "Ilse Bröker");
    EXPECT_EQ(measured.unit, "W/m2");
    const auto at = QDateTime::fromString(QString::fromStdString(measured.at), Qt::ISODate);
    EXPECT_TRUE(at.isValid());
    EXPECT_LE(std::abs(at.secsTo(QDateTime::currentDateTimeUtc())), 60);
    EXPECT_TRUE(measured.value.empty()) << "nothing is measured by itself";
}

TEST_F(Conditions, ATimeIsTypedAsTheClockOnTheWallShowsItAndKeptInUtc) {
    enter(page().left(), "started_at", "2026-11-25 10:30");
    const auto local = QDateTime(QDate(2026, 11, 25), QTime(10, 30));
    EXPECT_EQ(conditions().startedAt, local.toUTC().toString(Qt::ISODate).toStdString());
    auto* line = qobject_cast<QLineEdit*>(page().left().editor(page().left().find("started_at")));
    EXPECT_EQ(line->text(), "2026-11-25 10:30");
    line->setFocus();
    QTest::keyClick(line, Qt::Key_N);
    page().left().finishEditing();
    const auto now =
        QDateTime::fromString(QString::fromStdString(conditions().startedAt), Qt::ISODate);
    EXPECT_LE(std::abs(now.secsTo(QDateTime::currentDateTimeUtc())), 60);
    enter(page().left(), "started_at", "half past ten");
    EXPECT_EQ(conditions().startedAt, "half past ten") << "as typed, like everything at the bench";
    EXPECT_FALSE(page().left().error(page().left().find("started_at")).isEmpty());
}

TEST_F(Conditions, TooLittleLightStandsInTheWayUntilAReasonIsTyped) {
    chooseProcedure();
    measureUvA("8");
    ASSERT_TRUE(eventually([&] { return finding("MT-10/PT-10") != nullptr; }));
    const auto* dark = finding("MT-10/PT-10");
    EXPECT_EQ(dark->measured, "8 W/m2");
    EXPECT_EQ(dark->reaction, model::Reaction::Warn) << "read in part only, so it warns";
    EXPECT_TRUE(dark->stands());

    bench().sign();
    auto* sign = dialog<SignDialog>();
    ASSERT_NE(sign, nullptr);
    EXPECT_FALSE(sign->actButton().isEnabled());
    EXPECT_THAT(sign->trouble().toStdString(), testing::HasSubstr("Conditions"));
    sign->reject();

    page().goToFinding("MT-10/PT-10");
    auto& reason = page().findings().reason();
    ASSERT_TRUE(reason.isVisible());
    reason.setFocus();
    QTest::keyClicks(&reason, "second lamp added");
    QTest::keyClick(&reason, Qt::Key_Return);
    ASSERT_TRUE(eventually([&] {
        const auto* now = finding("MT-10/PT-10");
        return now && !now->stands();
    }));
    ASSERT_EQ(conditions().acknowledgements.size(), 1U);
    EXPECT_EQ(conditions().acknowledgements[0].reason, "second lamp added");
    EXPECT_EQ(conditions().acknowledgements[0].by, "Ilse Bröker");
    ASSERT_TRUE(saved());
    EXPECT_EQ(stored().examinations[0].conditions.acknowledgements, conditions().acknowledgements);
    editor().undoStack().undo();
    EXPECT_TRUE(eventually([&] {
        const auto* now = finding("MT-10/PT-10");
        return now && now->stands();
    }));
}

TEST_F(Conditions, EnoughLightSaysNothingAndOneWattIsAHundredMicrowattsPerSquareCentimetre) {
    chooseProcedure();
    measureUvA("8");
    ASSERT_TRUE(eventually([&] { return finding("MT-10/PT-10") != nullptr; }));
    // SI: 1 W/m2 = 100 uW/cm2, so 1000 uW/cm2 are the limit itself.
    enter(page().measurements(), 1, "unit", "uW/cm2");
    enter(page().measurements(), 1, "value", "1000");
    EXPECT_TRUE(eventually([&] { return finding("MT-10/PT-10") == nullptr; }));
    enter(page().measurements(), 1, "value", "999");
    EXPECT_TRUE(eventually([&] { return finding("MT-10/PT-10") != nullptr; }));
}

TEST_F(Conditions, WhatIsOverdueSaysSoInTheChoiceAndAmongTheFindings) {
    chooseProcedure();
    const auto* line =
        qobject_cast<QLineEdit*>(page().right().editor(page().right().find("equipment")));
    QStringList offered;
    for (const auto& [id, text] : equipmentChoices(editor().file().used, inDays(0))) {
        offered << text;
    }
    EXPECT_THAT(offered.join('\n').toStdString(),
                testing::HasSubstr("OVERDUE since " + inDays(-2)));
    enter(page().right(), "equipment", "UV-1, LX-1");
    enter(page().right(), "consumables", "B-7");
    EXPECT_EQ(line->text(), "UV-1, LX-1");
    EXPECT_TRUE(eventually([&] {
        bool meter = false;
        bool ink = false;
        for (const auto& one : page().findings().findings()) {
            meter = meter || (one.id.find("LX-1") != std::string::npos && one.stands());
            ink = ink || (one.id.find("B-7") != std::string::npos && one.stands());
        }
        return meter && ink;
    }));
}

TEST_F(Conditions, WhatIsSignedCanOnlyBeRead) {
    bench().sign();
    auto* sign = dialog<SignDialog>();
    ASSERT_NE(sign, nullptr);
    ASSERT_TRUE(doIt(sign));
    ASSERT_TRUE(eventually([&] { return editor().locked(0); }));
    auto* line = qobject_cast<QLineEdit*>(page().left().editor(page().left().find("place")));
    EXPECT_TRUE(line->isReadOnly());
    EXPECT_EQ(page().measurements().model()->rowCount(), 0) << "no row to type a new one in";
    model::TestConditions other;
    other.place = "elsewhere";
    editor().setConditions(0, other, "place");
    EXPECT_TRUE(conditions().place.empty());
}

TEST_F(Conditions, TwoVersionsOfADraftDifferWhereTheirConditionsDo) {
    ASSERT_TRUE(saved());
    auto other = stored().examinations.front();
    EXPECT_TRUE(sameContent(other, editor().draft(0)));
    other.conditions.place = "Bay 9";
    EXPECT_FALSE(sameContent(other, editor().draft(0)));
    editor().take(0, other);
    EXPECT_EQ(conditions().place, "Bay 9");
    editor().undoStack().undo();
    EXPECT_TRUE(conditions().place.empty());
}

/// The conditions of an ultrasonic test; its procedure names the drift rule of ISO 17640.
class Drift : public UltrasonicTest {
protected:
    Drift() {
        HeldRegisters held;
        model::Procedure procedure;
        procedure.number = "UT-01";
        procedure.revision = "1";
        procedure.kind = "procedure";
        procedure.method = "UT";
        procedure.state = "current";
        procedure.driftRule = "ISO 17640";
        held.holdings.procedures = {procedure};
        goToZone(0);
        editor().setRegisters(held);
        model::TypedSetting setting;
        setting.name = "straight";
        editor().setSettings(0, {setting}, "setting");
        pane().goTo(ExaminationPane::Conditions);
    }
    static model::SettingCheck check(const std::string& id, const std::string& hour,
                                     const std::string& occasion, const std::string& drift) {
        model::SettingCheck made;
        made.id = id;
        made.setting = "straight";
        made.at = "2026-11-25T" + hour + ":00:00Z";
        made.occasion = occasion;
        made.sensitivityDrift = drift;
        if (drift.empty()) return made;
        made.rangeDrift = "0";
        made.corrected = "yes";
        return made;
    }
    ConditionsPage& page() { return pane().conditions(); }
};

TEST_F(Drift, ALossMakesTheScanSinceTheLastGoodCheckVoid) {
    auto& form = page().left();
    auto* combo = qobject_cast<QComboBox*>(form.editor(form.find("procedure")));
    combo->setCurrentIndex(combo->findData("UT-01 / 1"));
    emit combo->activated(combo->currentIndex());
    auto conditions = editor().draft(0).conditions;
    ASSERT_EQ(conditions.procedureNumber, "UT-01");
    conditions.settingChecks = {check("C1", "08", "start", ""),
                                check("C2", "10", "interval", "-6")};
    model::Scan scan;
    scan.id = "S1";
    scan.area = "Z1";
    scan.setting = "straight";
    scan.afterCheck = "C1";
    scan.startedAt = "2026-11-25T08:10:00Z";
    scan.endedAt = "2026-11-25T08:40:00Z";
    conditions.scans = {scan};
    editor().setConditions(0, conditions, "checks");
    EXPECT_THAT(page().driftText().toStdString(),
                testing::AllOf(testing::HasSubstr("S1"), testing::HasSubstr("C2"),
                               testing::HasSubstr("It has to be repeated")));
    conditions.settingChecks[1].sensitivityDrift = "-2";
    editor().setConditions(0, conditions, "checks");
    EXPECT_THAT(page().driftText().toStdString(),
                testing::HasSubstr("No scan and no indication is touched"));
    EXPECT_EQ(page().checks().model()->rowCount(), 3) << "two checks, and the row for the next";
}

TEST(ConditionSteps, AReexaminationBeginsOneRepairCycleOnAndNamesWhatItAnswers) {
    auto file = sampleFile();
    CastingEditor editor(file);
    const int first =
        editor.begin(file.plan.zones[0], file.plan.zones[0].tests[0], "Ada", "2026-11-25");
    const int again = editor.beginAgain(first, "C-1/N1", 7, "Ada", "2026-11-27");
    const auto& draft = editor.draft(again);
    EXPECT_EQ(draft.header.zone, "Z1");
    EXPECT_EQ(draft.header.repairCycle, 1);
    EXPECT_EQ(draft.header.table, editor.draft(first).header.table);
    EXPECT_EQ(draft.conditions.nonconformance, "C-1/N1");
    EXPECT_EQ(draft.conditions.firstRecord, "7");
    EXPECT_TRUE(draft.rows.empty());
    EXPECT_FALSE(draft.header.noIndications) << "nothing is taken over as found or not found";
    EXPECT_EQ(
        editor.draft(editor.beginAgain(first, "C-1/N2", 0, "Ada", "2026-11-28")).header.repairCycle,
        2);
}

}  // namespace
}  // namespace app
