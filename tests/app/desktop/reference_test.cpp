// SPDX-License-Identifier: Apache-2.0
// The registers of the reference workplace: finding, entering, changing; nothing is overwritten and
// nothing typed is lost.
#include <QLabel>

#include "reference/versions_dialog.h"
#include "reference_fixture.h"
#include "window/workplace_bar.h"

namespace app {
namespace {

using testing::Each;
using testing::SizeIs;

model::Equipment meter(const std::string& id) {
    model::Equipment meter;
    meter.id = id;
    meter.kind = "light meter";
    meter.serial = "LM-" + id;
    meter.calibrationDue = "2027-03-01";
    meter.state = "in use";
    return meter;
}

void keep(model::Archive& archive, const model::Equipment& equipment, std::int64_t version = 0) {
    const auto saved = model::saveEntry(archive, equipment, version, model::Actor{"Office"});
    ASSERT_TRUE(saved) << saved.error().message();
}

TEST_F(ReferenceTest, EntersEquipmentByKeysAlone) {
    signInAs(foundry::kInspector);
    QTest::keyClick(window_.get(), Qt::Key_4, Qt::AltModifier);
    ASSERT_TRUE(eventually([&] { return window_->reference().isVisible(); }));
    auto& page = open("equipment");
    page.newButton().setFocus();
    QTest::keyClick(&page.newButton(), Qt::Key_Space);
    EXPECT_EQ(page.focusWidget(), page.form().editor(0));
    type(page, "id", "E-7");
    type(page, "kind", "yoke");
    type(page, "serial", "Y 20417");
    type(page, "calibration_due", "2027-02-28");
    type(page, "state", "in use");
    ASSERT_TRUE(save(page));

    const auto stored = model::entry<model::Equipment>(archive(), "E-7");
    ASSERT_TRUE(stored) << stored.error().message();
    EXPECT_EQ(stored->version, 1);
    EXPECT_EQ(stored->value.kind, "yoke");
    EXPECT_EQ(stored->value.serial, "Y 20417");
    EXPECT_EQ(stored->value.calibrationDue, "2027-02-28");
    const auto rows = archive().history(1, 1000);
    ASSERT_TRUE(rows);
    EXPECT_EQ(rows->back().person, "Ilse Bröker");
    EXPECT_EQ(rows->back().subject, "E-7");
}

TEST_F(ReferenceTest, SaysWhatIsWrongBesideTheFieldAsItIsLeft) {
    signInAs(foundry::kInspector);
    auto& page = open("equipment");
    page.makeNew();
    type(page, "calibration_due", "2027-02-30");
    EXPECT_THAT(error(page, "calibration_due").toStdString(), testing::HasSubstr("2027-02-30"));
    type(page, "id", "E-7");
    QSignalSpy saved(&page, &RegisterPage::saved);
    page.save();
    EXPECT_FALSE(error(page, "kind").isEmpty());   // required
    EXPECT_FALSE(error(page, "state").isEmpty());  // required
    EXPECT_TRUE(error(page, "serial").isEmpty());  // optional
    EXPECT_TRUE(page.isChanged());
    EXPECT_TRUE(saved.isEmpty());
    EXPECT_FALSE(model::entry<model::Equipment>(archive(), "E-7"));
    type(page, "calibration_due", "2027-02-28");
    EXPECT_TRUE(error(page, "calibration_due").isEmpty());
}

TEST_F(ReferenceTest, AChangeIsTheNextVersionAndTheFirstStays) {
    auto held = archive();
    keep(held, meter("E-1"));
    signInAs(foundry::kInspector);
    auto& page = open("equipment");
    show(page, "E-1");
    type(page, "calibration_due", "2028-03-01");
    ASSERT_TRUE(save(page));
    EXPECT_THAT(page.stateText().toStdString(), testing::HasSubstr("version 2"));

    const auto versions = model::versionsOf<model::Equipment>(held, "E-1");
    ASSERT_TRUE(versions);
    ASSERT_THAT(*versions, SizeIs(2));
    EXPECT_EQ((*versions)[0].value.calibrationDue, "2027-03-01");
    EXPECT_EQ((*versions)[1].value.calibrationDue, "2028-03-01");

    page.versionsButton().click();
    auto* versionsDialog = dialog<VersionsDialog>();
    ASSERT_NE(versionsDialog, nullptr);
    ASSERT_EQ(versionsDialog->table().rowCount(), 2);
    EXPECT_EQ(versionsDialog->table().item(0, 0)->text(), "2");  // the newest first
    EXPECT_EQ(versionsDialog->table().item(0, 2)->text(), "Ilse Bröker");
    EXPECT_EQ(versionsDialog->table().item(1, 2)->text(), "Office");
    EXPECT_EQ(versionsDialog->table().item(0, 3)->text(),
              "Calibration due: 2028-03-01, before 2027-03-01");
}

TEST_F(ReferenceTest, WhatNamesAnEntryCannotBeChanged) {
    auto held = archive();
    keep(held, meter("E-1"));
    signInAs(foundry::kInspector);
    auto& page = open("equipment");
    show(page, "E-1");
    type(page, "id", "E-2");
    EXPECT_EQ(page.form().text(page.form().find("id")), "E-1");
    EXPECT_FALSE(page.isChanged());
    page.makeNew();
    type(page, "id", "E-2");
    EXPECT_EQ(page.form().text(page.form().find("id")), "E-2");
}

TEST_F(ReferenceTest, ChangesOfSomebodyElseAreNotOverwritten) {
    auto held = archive();
    keep(held, meter("E-1"));
    signInAs(foundry::kInspector);
    auto& page = open("equipment");
    show(page, "E-1");
    auto moved = meter("E-1");
    moved.place = "Bay 2";
    keep(held, moved, 1);
    type(page, "remarks", "lens scratched");
    page.save();
    ASSERT_TRUE(eventually([&] { return page.notice().isVisible(); }));
    EXPECT_THAT(page.notice().text().toStdString(), testing::HasSubstr("somebody else"));
    EXPECT_EQ(model::entry<model::Equipment>(held, "E-1")->value, moved);
    QSignalSpy shown(&page, &RegisterPage::shown);
    answer(page.notice(), "Show what is stored");
    ASSERT_TRUE(eventually([&] { return !shown.isEmpty(); }));
    EXPECT_EQ(page.form().text(page.form().find("place")), "Bay 2");
}

TEST_F(ReferenceTest, WhatIsTypedIsNotLostByChoosingAnother) {
    auto held = archive();
    keep(held, meter("E-1"));
    keep(held, meter("E-2"));
    signInAs(foundry::kInspector);
    auto& page = open("equipment");
    show(page, "E-1");
    type(page, "place", "Bay 4");
    page.list().setCurrentIndex(page.list().model()->index(1, 0));
    EXPECT_THAT(page.notice().text().toStdString(), testing::HasSubstr("E-1"));
    EXPECT_EQ(page.list().currentIndex().row(), 0);
    EXPECT_EQ(page.form().text(page.form().find("place")), "Bay 4");

    answer(page.notice(), "Stay");
    EXPECT_TRUE(page.isChanged());
    page.list().setCurrentIndex(page.list().model()->index(1, 0));
    QSignalSpy saved(&page, &RegisterPage::saved);
    answer(page.notice(), "Save it");
    ASSERT_TRUE(eventually([&] { return !saved.isEmpty(); }));
    EXPECT_TRUE(eventually([&] { return page.form().text(page.form().find("id")) == "E-2"; }));
    EXPECT_EQ(model::entry<model::Equipment>(held, "E-1")->value.place, "Bay 4");
}

TEST_F(ReferenceTest, TheWindowStaysOpenForWhatIsNotSaved) {
    signInAs(foundry::kInspector);
    auto& page = open("equipment");
    page.makeNew();
    type(page, "id", "E-9");
    window_->goTo(MainWindow::Bench);
    window_->close();
    EXPECT_TRUE(window_->isVisible());
    EXPECT_TRUE(page.isVisible());
    answer(page.notice(), "Discard it");
    EXPECT_TRUE(eventually([&] { return !window_->isVisible(); }));
}

TEST_F(ReferenceTest, FindsAsOneTypesInEveryField) {
    auto held = archive();
    for (const char* id : {"E-1", "E-2", "E-3"}) keep(held, meter(id));
    auto& page = open("equipment");
    EXPECT_EQ(page.list().model()->rowCount(), 3);
    QTest::keyClick(&page.list(), Qt::Key_F, Qt::ControlModifier);
    QTest::keyClicks(&page.find(), "lm-e-3 light");
    ASSERT_EQ(page.list().model()->rowCount(), 1);
    EXPECT_EQ(page.list().model()->index(0, 0).data().toString(), "E-3");
    page.find().clear();
    EXPECT_EQ(page.list().model()->rowCount(), 3);
}

TEST_F(ReferenceTest, IsOnlyToReadUntilSomebodySignsIn) {
    auto& page = open("equipment");
    EXPECT_FALSE(page.newButton().isEnabled());
    EXPECT_THAT(page.stateText().toStdString(), testing::HasSubstr("sign in"));
    signInAs(foundry::kAuditor);
    EXPECT_FALSE(page.newButton().isEnabled());
    signInAs(foundry::kInspector);
    EXPECT_TRUE(page.newButton().isEnabled());
}

TEST_F(ReferenceTest, WhatEntitlesToTestIsSigned) {
    signInAs(foundry::kInspector);
    auto& page = open("eye test");
    EXPECT_FALSE(page.newButton().isEnabled());
    EXPECT_THAT(page.stateText().toStdString(), testing::HasSubstr("signed by"));
    signInAs(foundry::kQaManager);
    ASSERT_TRUE(page.newButton().isEnabled());
    page.makeNew();
    type(page, "person", foundry::kInspector);
    type(page, "kind", "near vision");
    type(page, "tested_on", "2026-05-04");
    type(page, "result", "passed");
    ASSERT_TRUE(save(page));
    const auto rows = archive().history(1, 1000);
    ASSERT_TRUE(rows);
    EXPECT_EQ(rows->back().action, "eye test signed");
    EXPECT_EQ(rows->back().person, "Quentin Marsh");
    // The list names people, not only their ids.
    EXPECT_EQ(page.list().model()->index(0, 0).data().toString(), "P-2 · Ilse Bröker");
}

TEST_F(ReferenceTest, ALineIsRefusedThatNamesNobody) {
    signInAs(foundry::kQaManager);
    auto& page = open("eye test");
    page.makeNew();
    type(page, "person", "P-99");
    type(page, "kind", "near vision");
    type(page, "tested_on", "2026-05-04");
    type(page, "result", "passed");
    page.save();
    EXPECT_TRUE(eventually([&] { return !error(page, "person").isEmpty(); }));
    EXPECT_TRUE(page.isChanged());
}

TEST_F(ReferenceTest, EveryPlaceCanBeReachedByKeysAndHasAName) {
    signInAs(foundry::kQaManager);
    window_->goTo(MainWindow::Reference);
    auto& places = window_->reference().places();
    EXPECT_EQ(window_->focusWidget(), &places);
    std::vector<std::string> reached{window_->reference().current()};
    for (int i = 0; i < places.count(); ++i) {
        QTest::keyClick(&places, Qt::Key_Down);
        if (window_->reference().current() != reached.back()) {
            reached.push_back(window_->reference().current());
        }
    }
    EXPECT_THAT(reached,
                testing::IsSupersetOf({"order", "part", "casting", "equipment", "equipment check",
                                       "consumable", "procedure", "qualification", "eye test",
                                       "authorisation", "limit table"}));
    for (const auto& name : reached) {
        window_->reference().goTo(name);
        auto* page = window_->reference().page(name);
        if (!page) continue;
        page->makeNew();
        for (auto* widget : page->findChildren<QWidget*>()) {
            // Not what Qt itself puts into its widgets, such as the list of a combo box.
            const bool isInside = widget->objectName().startsWith("qt_") || widget->isWindow() ||
                                  widget->window() != page->window() ||
                                  qobject_cast<const QLineEdit*>(widget->parentWidget());
            if (!(widget->focusPolicy() & Qt::TabFocus) || isInside) continue;
            const auto* button = qobject_cast<QPushButton*>(widget);
            EXPECT_FALSE(widget->accessibleName().isEmpty() &&
                         (!button || button->text().isEmpty()))
                << name << ": " << widget->metaObject()->className() << " "
                << widget->objectName().toStdString();
        }
    }
}

}  // namespace
}  // namespace app
