// SPDX-License-Identifier: Apache-2.0
// A casting that is not acceptable, from the nonconformance to the re-examination, through the
// window. Limit used: EN 1369:2012 Table 2, LM 4: linear alone at most 10 mm (grade M).
#include <QCheckBox>
#include <QFile>
#include <QLabel>
#include <QListWidget>
#include <QPushButton>
#include <QSignalSpy>
#include <QTest>
#include <QTreeWidget>

#include "archive/signed_record.h"
#include "bench/examination_pane.h"
#include "bench/record_strip.h"
#include "bench/row_table.h"
#include "bench/sign_dialog.h"
#include "looks/marked_lines.h"
#include "registers_fixture.h"
#include "repair_bench/opening.h"
#include "repair_bench/repair_page.h"

namespace app {
namespace {

TEST(Opening, NumbersGoOnFromWhatIsThere) {
    std::vector<model::Nonconformance> taken(2);
    taken[0].number = "C-1/N1";
    taken[1].number = "C-1/N3";
    EXPECT_EQ(nextNumber(taken, "C-1", 'N'), "C-1/N4");
    EXPECT_EQ(nextNumber(std::vector<model::Nonconformance>(), "C-1", 'N'), "C-1/N1");
}

class Repair : public RegistersTest {
protected:
    Repair() {
        attestTables();
        openCasting();
        signInAs(foundry::kInspector);
        bench().begin();
        // 4 mm is acceptable, 14 mm is not.
        editor().replaceRows(
            0, 0, 0, {row("1", "100", "50", "4", "1"), row("2", "300", "200", "14", "1")}, "rows");
        bench().sign();
        auto* sign = dialog<SignDialog>();
        EXPECT_NE(sign, nullptr);
        EXPECT_TRUE(doIt(sign));
        EXPECT_TRUE(eventually([&] { return editor().locked(0); }));
        EXPECT_TRUE(eventually([&] { return bench().recordStrip().button("openNonconformance"); }));
    }
    RepairPage& page() { return bench().repairs(); }
    /// The number of the signed record, as the archive has it.
    [[nodiscard]] std::string record() const {
        const auto states = model::examinationStates(openAgain(), "C-1");
        EXPECT_TRUE(states && !states->empty() && states->front().standing());
        return std::to_string(states->front().standing()->id);
    }
    EntryDialog* asked() { return dialog<EntryDialog>("caseDialog"); }
    void open() {
        bench().recordStrip().button("openNonconformance")->click();
        auto* dialog = asked();
        ASSERT_NE(dialog, nullptr);
        ASSERT_TRUE(doIt(dialog));
        ASSERT_TRUE(eventually([&] { return page().cases().count() == 1; }));
    }
    void press(const QString& name) {
        ASSERT_TRUE(eventually([&] { return page().button(name)->isEnabled(); }))
            << page().button(name)->toolTip().toStdString();
        page().button(name)->click();
    }
    void decide(const QString& decision) {
        signInAs(foundry::kQaManager);
        press("decide");
        auto* dialog = asked();
        ASSERT_NE(dialog, nullptr);
        enter(dialog->fields(), "decision", decision);
        enter(dialog->fields(), "reason", "too long");
        ASSERT_TRUE(doIt(dialog));
        signInAs(foundry::kInspector);
    }
    void excavate() {
        press("excavate");
        auto* dialog = asked();
        ASSERT_NE(dialog, nullptr);
        auto& form = dialog->fields();
        for (const auto& [key, text] : std::initializer_list<std::pair<const char*, const char*>>{
                 {"x", "300"},
                 {"y", "200"},
                 {"length", "20"},
                 {"width", "10"},
                 {"depth", "3"},
                 {"means", "grinding"},
                 {"done_by", "Gus Grinder"}}) {
            enter(form, key, text);
        }
        ASSERT_TRUE(doIt(dialog));
    }
    QStringList linkTexts() {
        QStringList texts;
        for (int i = 0; i < page().links().count(); ++i) texts << page().links().item(i)->text();
        return texts;
    }
    QTreeWidgetItem* step(const QString& begins) {
        for (QTreeWidgetItemIterator at(&page().steps()); *at; ++at) {
            if ((*at)->text(0).startsWith(begins)) return *at;
        }
        return nullptr;
    }
};

TEST_F(Repair, ANonconformanceIsOpenedWithWhatFailedAndTheRuleThatItBreaks) {
    bench().recordStrip().button("openNonconformance")->click();
    auto* dialog = asked();
    ASSERT_NE(dialog, nullptr);
    auto texts = dialog->texts();
    EXPECT_EQ(texts["number"], "C-1/N1");
    EXPECT_EQ(texts["casting"], "C-1");
    EXPECT_EQ(texts["zone"], "Z1");
    EXPECT_EQ(texts["method"], "MT");
    EXPECT_EQ(texts["indications"], "2") << "the one of 14 mm, not the one of 4 mm";
    EXPECT_EQ(texts["record"], record());
    EXPECT_EQ(texts["opened_by"], "Ilse Bröker");
    EXPECT_THAT(texts["rule_broken"], testing::StartsWith("EN 1369:2012"));
    EXPECT_THAT(texts["finding"], testing::HasSubstr("14 of 10"));
    ASSERT_TRUE(doIt(dialog));
    ASSERT_TRUE(eventually([&] { return page().cases().count() == 1; }));
    ASSERT_EQ(stored().dossier.nonconformances.size(), 1U);
    EXPECT_EQ(page().stateText(), "On hold, to be decided");
    EXPECT_FALSE(page().openText().isEmpty());
    EXPECT_NE(step("Found by"), nullptr);
}

TEST_F(Repair, OnlyAQaManagerDecides) {
    open();
    EXPECT_FALSE(page().button("decide")->isEnabled());
    EXPECT_THAT(page().button("decide")->toolTip().toStdString(), testing::HasSubstr("QA manager"));
    decide("weld repair");
    ASSERT_TRUE(onTheBench(
        [](const model::CastingFile& file) { return file.dossier.dispositions.size() == 1; }));
    EXPECT_EQ(stored().dossier.dispositions[0].authority, "Quentin Marsh");
    EXPECT_EQ(stored().dossier.dispositions[0].sequence, "1");
    EXPECT_TRUE(eventually([&] { return page().stateText().startsWith("To be excavated"); }))
        << page().stateText().toStdString();
}

TEST_F(Repair, AFieldThatIsMissingIsMarkedAndNothingIsKept) {
    open();
    decide("weld repair");
    press("excavate");
    auto* dialog = asked();
    ASSERT_NE(dialog, nullptr);
    enter(dialog->fields(), "depth", "deep");
    dialog->actButton().click();
    EXPECT_TRUE(eventually([&] { return !dialog->working(); }));
    EXPECT_TRUE(dialog->isVisible());
    EXPECT_FALSE(dialog->fields().error(dialog->fields().find("depth")).isEmpty());
    EXPECT_FALSE(dialog->fields().error(dialog->fields().find("means")).isEmpty());
    EXPECT_TRUE(stored().dossier.excavations.empty());
}

TEST_F(Repair, EveryLinkShowsInBothDirections) {
    open();
    decide("weld repair");
    excavate();
    ASSERT_TRUE(eventually([&] { return step("Excavation C-1/E1") != nullptr; }));
    press("weld");
    auto* dialog = asked();
    ASSERT_NE(dialog, nullptr);
    EXPECT_EQ(dialog->texts()["excavation"], "C-1/E1");
    enter(dialog->fields(), "welding_procedure", "WPS 3");
    enter(dialog->fields(), "welder", "Wes Welder");
    enter(dialog->fields(), "filler", "Invented 7018");
    enter(dialog->fields(), "filler_batch", "44");
    ASSERT_TRUE(doIt(dialog));
    ASSERT_TRUE(eventually([&] { return step("Weld repair C-1/W1") != nullptr; }));

    page().steps().setCurrentItem(step("Excavation C-1/E1"));
    EXPECT_THAT(linkTexts().join('\n').toStdString(),
                testing::AllOf(testing::HasSubstr("names nonconformance C-1/N1"),
                               testing::HasSubstr("named by weld repair C-1/W1")));
    page().steps().setCurrentItem(step("Weld repair C-1/W1"));
    EXPECT_THAT(linkTexts().join('\n').toStdString(),
                testing::HasSubstr("names excavation C-1/E1"));
    page().steps().setCurrentItem(step("Opened"));
    EXPECT_THAT(linkTexts().join('\n').toStdString(),
                testing::AllOf(testing::HasSubstr("names examination Z1 MT"),
                               testing::HasSubstr("named by disposition C-1/N1 / 1"),
                               testing::HasSubstr("named by excavation C-1/E1")));
    page().steps().setCurrentItem(step("Found by"));
    EXPECT_THAT(linkTexts().join('\n').toStdString(),
                testing::HasSubstr("named by nonconformance C-1/N1"));
}

TEST_F(Repair, TheSheetsOfTheWorkshopAreWritten) {
    open();
    decide("weld repair");
    ASSERT_TRUE(eventually([&] { return page().stateText().startsWith("To be excavated"); }));
    EXPECT_FALSE(page().button("weldMap")->isEnabled()) << "nothing was taken out yet";
    QSignalSpy written(&page(), &RepairPage::sheetWritten);
    const auto isPdf = [](const QString& path) {
        QFile file(path);
        return file.open(QIODevice::ReadOnly) && file.read(5) == "%PDF-";
    };
    page().writeSheetTo(WorkshopSheet::MarkingOut, pathOf("marking.pdf"));
    ASSERT_TRUE(eventually([&] { return written.count() == 1; }));
    EXPECT_TRUE(isPdf(pathOf("marking.pdf")));
    excavate();
    ASSERT_TRUE(eventually([&] { return page().button("weldMap")->isEnabled(); }));
    page().writeSheetTo(WorkshopSheet::WeldMap, pathOf("map.pdf"));
    ASSERT_TRUE(eventually([&] { return written.count() == 2; }));
    EXPECT_TRUE(isPdf(pathOf("map.pdf")));
    QSignalSpy said(&page(), &RepairPage::message);
    page().writeSheetTo(WorkshopSheet::WeldMap, pathOf("no such folder/map.pdf"));
    ASSERT_TRUE(eventually([&] { return said.count() == 1; }));
    EXPECT_THAT(said.front().front().toString().toStdString(),
                testing::StartsWith("No sheet was written"));
}

TEST_F(Repair, AnEntryChangesAsItsNextVersion) {
    open();
    decide("weld repair");
    excavate();
    ASSERT_TRUE(eventually([&] { return step("Excavation C-1/E1") != nullptr; }));
    page().steps().setCurrentItem(step("Excavation C-1/E1"));
    press("changeStep");
    auto* dialog = asked();
    ASSERT_NE(dialog, nullptr);
    enter(dialog->fields(), "wall_left", "36");
    ASSERT_TRUE(doIt(dialog));
    ASSERT_TRUE(onTheBench([](const model::CastingFile& file) {
        return file.dossier.excavations.front().wallLeft == "36";
    }));
    const auto versions = model::versionsOf<model::Excavation>(openAgain(), "C-1/E1");
    ASSERT_TRUE(versions);
    ASSERT_EQ(versions->size(), 2U);
    EXPECT_TRUE(versions->front().value.wallLeft.empty()) << "nothing is overwritten";
}

TEST_F(Repair, TheReexaminationBeginsOneCycleOnAndIsLinked) {
    open();
    decide("grind only");
    excavate();
    ASSERT_TRUE(eventually([&] { return step("Excavation C-1/E1") != nullptr; }));
    press("reexamine");
    ASSERT_EQ(editor().examinations(), 2);
    EXPECT_EQ(editor().draft(1).header.repairCycle, 1);
    EXPECT_EQ(editor().draft(1).conditions.nonconformance, "C-1/N1");
    EXPECT_EQ(editor().draft(1).conditions.firstRecord, record());
    EXPECT_EQ(bench().examination().examination(), 1) << "it is in view, to be typed";
    ASSERT_TRUE(saved());
    bench().showRepairs();
    ASSERT_TRUE(eventually([&] { return step("Re-examination") != nullptr; }));
    press("reexamine");
    EXPECT_EQ(editor().examinations(), 2) << "the one that was begun is gone on with";
    bench().examination().nothingFound().click();
    ASSERT_TRUE(saved());
    bench().showRepairs();
    ASSERT_TRUE(eventually([&] {
        auto* again = step("Re-examination");
        return again && again->text(1).endsWith(": acceptable");
    }));
    page().steps().setCurrentItem(step("Re-examination"));
    EXPECT_THAT(linkTexts().join('\n').toStdString(),
                testing::HasSubstr("names nonconformance C-1/N1"));
    emit page().links().itemActivated(page().links().item(0));
    EXPECT_TRUE(page().steps().currentItem()->text(0).startsWith("Opened"));
}

}  // namespace
}  // namespace app
