// SPDX-License-Identifier: Apache-2.0
#include "ultrasonic_fixture.h"

#include <QApplication>
#include <QComboBox>
#include <QLineEdit>
#include <QPushButton>
#include <QTest>

namespace app {

model::CastingFile ultrasonicFile() {
    auto file = sampleFile();
    file.part.material = model::Material::SpheroidalGraphiteIron;
    model::PlannedZone zone;
    zone.name = "Z1";
    zone.description = "Hub flange";
    zone.width = model::millimetres(300);
    zone.height = model::millimetres(200);
    zone.thickness = model::millimetres(60);
    zone.tests = {{model::Method::Ultrasonic,
                   model::Stage::RoughMachined,
                   "EN 12680-3:2003",
                   {{"all", "2"}}}};
    file.plan.zones = {zone};
    return file;
}

Entries straightSetting() {
    return {{"probe", "SB 10 no. 4711"},
            {"probe.diameter_mm", "10"},
            {"probe.frequency_mhz", "2.5"},
            {"material.velocity_m_s", "5900"},
            {"material.attenuation_db_per_m", "0"},
            {"part.thickness_mm", "300"},
            {"reference.kind", "flat-bottomed hole"},
            {"reference.on", "block"},
            {"reference.sound_path_mm", "200"},
            {"reference.diameter_mm", "2"},
            {"reference.gain_db", "40"},
            {"reference.screen_percent", "80"},
            {"transfer_db", "0"}};
}

UltrasonicTest::UltrasonicTest() : BenchTest(ultrasonicFile()) {}

void UltrasonicTest::typeInto(FieldForm& form, const std::string& field, const QString& text) {
    const int at = form.find(field);
    ASSERT_GE(at, 0) << field;
    QWidget* editor = form.editor(at);
    ASSERT_TRUE(editor->isVisible()) << field;
    editor->setFocus();
    if (auto* combo = qobject_cast<QComboBox*>(editor)) {
        const int wanted = combo->findData(text);
        ASSERT_GE(wanted, 0) << text.toStdString();
        QTest::keyClick(combo, Qt::Key_Home);
        for (int i = 0; i < wanted; ++i) QTest::keyClick(combo, Qt::Key_Down);
    } else {
        qobject_cast<QLineEdit*>(editor)->selectAll();
        if (text.isEmpty()) {
            QTest::keyClick(editor, Qt::Key_Delete);
        } else {
            QTest::keyClicks(editor, text);
        }
    }
    QCoreApplication::processEvents();
}

void UltrasonicTest::typeSetting(const Entries& entries) {
    shortcut(Qt::Key_7);
    QTest::keyClick(&pane().settings().addButton(), Qt::Key_Space);
    for (const auto& [field, text] : entries) {
        auto* form = pane().settings().find(field).first;
        ASSERT_NE(form, nullptr) << field;
        typeInto(*form, field, text);
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
    }
}

void UltrasonicTest::typeReading(const Entries& entries) {
    shortcut(Qt::Key_6);
    for (const auto& [field, text] : entries) {
        typeInto(reading().form(), field, text);
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
    }
}

}  // namespace app
