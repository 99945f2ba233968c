// SPDX-License-Identifier: Apache-2.0
// Taking CSV files over at the reference workplace: tried out first, every problem by its row.
#include <QCheckBox>
#include <QFile>

#include "reference/import_dialog.h"
#include "reference_fixture.h"

namespace app {
namespace {

using testing::HasSubstr;

class ReferenceImportTest : public ReferenceTest {
protected:
    QString write(const QByteArray& text) {
        QFile file(pathOf("table.csv"));
        EXPECT_TRUE(file.open(QIODevice::WriteOnly));
        file.write(text);
        return file.fileName();
    }
    ImportDialog* import(RegisterPage& page) {
        QSignalSpy shown(&page, &RegisterPage::importShown);
        page.importButton().click();
        EXPECT_TRUE(eventually([&] { return !shown.isEmpty(); }));
        return shown.isEmpty() ? nullptr : shown.front().front().value<ImportDialog*>();
    }
    static void tryOut(ImportDialog& dialog, const QString& path) {
        QSignalSpy tried(&dialog, &ImportDialog::triedOut);
        dialog.setFile(path);
        EXPECT_TRUE(eventually([&] { return !tried.isEmpty(); }));
    }
};

TEST_F(ReferenceImportTest, ListsEveryProblemByRowAndStoresNothing) {
    signInAs(foundry::kInspector);
    auto& page = open("equipment");
    auto* dialog = import(page);
    ASSERT_NE(dialog, nullptr);
    tryOut(*dialog, write("id,kind,calibration_due,state\r\n"
                          "E-1,light meter,2027-01-31,in use\r\n"
                          "E-2,torch,2027-01-31,in use\r\n"
                          "E-3,yoke,31.1.2027,in use\r\n"));
    ASSERT_EQ(dialog->problems().rowCount(), 2) << dialog->summary().toStdString();
    EXPECT_EQ(dialog->problems().item(0, 0)->text(), "2");
    EXPECT_EQ(dialog->problems().item(0, 1)->text(), "3");
    EXPECT_EQ(dialog->problems().item(0, 2)->text(), "kind");
    EXPECT_EQ(dialog->problems().item(1, 0)->text(), "3");
    EXPECT_EQ(dialog->problems().item(1, 2)->text(), "calibration_due");
    EXPECT_THAT(dialog->problems().item(1, 3)->text().toStdString(), HasSubstr("31.1.2027"));
    EXPECT_FALSE(dialog->takeButton().isEnabled());
    EXPECT_TRUE(model::entries<model::Equipment>(archive())->empty());
}

TEST_F(ReferenceImportTest, TakesOverWhatWasTriedOut) {
    signInAs(foundry::kInspector);
    auto& page = open("equipment");
    auto* dialog = import(page);
    ASSERT_NE(dialog, nullptr);
    tryOut(*dialog, write("id,kind,state\nE-1,light meter,in use\nE-2,yoke,in use\n"));
    EXPECT_EQ(dialog->problems().rowCount(), 0);
    ASSERT_TRUE(dialog->takeButton().isEnabled()) << dialog->summary().toStdString();
    EXPECT_TRUE(model::entries<model::Equipment>(archive())->empty());  // only tried out
    QSignalSpy taken(dialog, &ImportDialog::taken);
    dialog->takeButton().click();
    ASSERT_TRUE(eventually([&] { return !taken.isEmpty(); }));
    EXPECT_EQ(model::entries<model::Equipment>(archive())->size(), 2U);
    EXPECT_TRUE(eventually([&] { return page.list().model()->rowCount() == 2; }));
}

TEST_F(ReferenceImportTest, EntriesThatAreThereNeedTheirBoxTicked) {
    auto held = archive();
    model::Equipment yoke;
    yoke.id = "E-1";
    yoke.kind = "yoke";
    yoke.state = "in use";
    ASSERT_TRUE(model::saveEntry(held, yoke, 0, model::Actor{"Office"}));
    signInAs(foundry::kInspector);
    auto& page = open("equipment");
    auto* dialog = import(page);
    ASSERT_NE(dialog, nullptr);
    tryOut(*dialog, write("id,kind,state,place\nE-1,yoke,in use,Bay 3\n"));
    EXPECT_EQ(dialog->problems().rowCount(), 1);
    QSignalSpy tried(dialog, &ImportDialog::triedOut);
    dialog->changeBox().setChecked(true);
    ASSERT_TRUE(eventually([&] { return !tried.isEmpty(); }));
    EXPECT_EQ(dialog->problems().rowCount(), 0);
    EXPECT_THAT(dialog->summary().toStdString(), HasSubstr("Changed: 1"));
    EXPECT_EQ(model::entry<model::Equipment>(held, "E-1")->version, 1);
}

TEST_F(ReferenceImportTest, APartsFileCanHoldZonePlans) {
    signInAs(foundry::kQaManager);
    auto& page = open("part");
    auto* dialog = import(page);
    ASSERT_NE(dialog, nullptr);
    ASSERT_EQ(dialog->kindBox().count(), 2);
    dialog->kindBox().setCurrentIndex(1);
    tryOut(*dialog,
           write("part,revision,zone,width_mm,height_mm,thickness_mm\nP-1,2,Z1,400,300,40\n"));
    EXPECT_EQ(dialog->problems().rowCount(), 0) << dialog->summary().toStdString();
    EXPECT_TRUE(dialog->takeButton().isEnabled());
}

}  // namespace
}  // namespace app
