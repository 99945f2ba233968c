// SPDX-License-Identifier: Apache-2.0
// From the bench to a released certificate through the window, by people of their roles; and
// finding and verifying it again.
#include <QCheckBox>
#include <QDir>
#include <QFile>
#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QProcess>
#include <QPushButton>
#include <QSignalSpy>
#include <QTabBar>
#include <QTableWidget>
#include <QTest>
#include <QToolButton>
#include <sqlite3.h>

#include "bench/examination_pane.h"
#include "bench/indication_model.h"
#include "bench/record_strip.h"
#include "bench/sign_dialog.h"
#include "bench/verdict_panel.h"
#include "finding/search_panel.h"
#include "looks/marked_lines.h"
#include "looks/notice_bar.h"
#include "looks/paper_view.h"
#include "looks/report_dialog.h"
#include "release/attestation_view.h"
#include "releasing_fixture.h"

namespace app {
namespace {

using testing::HasSubstr;

TEST_F(Releasing, WhatIsSignedIsShownBeforeAndOnlyToReadAfter) {
    openCasting();
    signInAs(foundry::kInspector);
    auto& bench = window_->bench();
    bench.begin();
    auto& rows = bench.examination().rows();
    // EN 1369:2012 Table 2, LM 4: linear alone at most 10 mm (grade M).
    rows.paste(rows.index(0, static_cast<int>(Column::X)), "100\t50\t12\t1");
    bench.sign();
    auto* asked = dialog<SignDialog>();
    ASSERT_NE(asked, nullptr);
    EXPECT_EQ(asked->findChild<QLabel*>("signedWord")->text(), "not acceptable");
    EXPECT_THAT(asked->findChild<QLabel*>("signedFacts")->text().toStdString(),
                HasSubstr("Indications entered: 1"));
    EXPECT_EQ(asked->rejection(), nullptr) << "nothing to reject that is not acceptable";
    ASSERT_TRUE(doIt(asked));
    ASSERT_TRUE(eventually([&] { return bench.recordStrip().text().startsWith("Signed by"); }));
    EXPECT_THAT(bench.recordStrip().text().toStdString(), HasSubstr("Ilse Bröker"));
    EXPECT_FALSE(rows.setData(rows.index(0, static_cast<int>(Column::Length)), "1", Qt::EditRole));
    EXPECT_EQ(rows.paste(rows.index(0, 0), "9\t9"), 0);
    rows.deleteRows(0, 1);
    EXPECT_EQ(rows.indications(), 1);
    EXPECT_FALSE(bench.desk()->editor().undoStack().canUndo());
}

TEST_F(Releasing, ALevel2RejectsWhatIsAcceptableWithAReasonAndALevel1Cannot) {
    openCasting();
    signInAs(foundry::kTrainee);
    auto& bench = window_->bench();
    bench.begin();
    bench.examination().nothingFound().click();
    bench.sign();
    auto* asked = dialog<SignDialog>();
    ASSERT_NE(asked, nullptr);
    EXPECT_EQ(asked->rejection(), nullptr) << "Level 1";
    asked->reject();
    signInAs(foundry::kInspector);
    ASSERT_TRUE(eventually([&] { return !bench.unsaved(); }));
    bench.sign();
    asked = dialog<SignDialog>();
    ASSERT_NE(asked->rejection(), nullptr) << "Level 2";
    asked->rejection()->click();
    EXPECT_FALSE(asked->actButton().isEnabled()) << "the reason is missing";
    asked->reason()->setPlainText("Blasting scale hides the surface");
    ASSERT_TRUE(doIt(asked));
    ASSERT_TRUE(eventually([&] { return bench.recordStrip().text().contains("Blasting scale"); }));
    ASSERT_TRUE(eventually([&] {
        return !bench.desk()->judging() && bench.verdict().word() == "not acceptable";
    })) << bench.verdict().word().toStdString();
}

TEST_F(Releasing, ASecondPersonReleasesAndTheDocumentIsInView) {
    lookAtPresented(foundry::kQaManager);
    EXPECT_GE(page().paper().pages(), 1);
    EXPECT_THAT(page().paper().text().toStdString(), HasSubstr("C-1"));
    ASSERT_TRUE(eventually([&] { return page().releaseButton().isEnabled(); }))
        << page().obstacleText().toStdString();
    EXPECT_EQ(page().obstacleText().toStdString(), "");
    page().releaseButton().click();
    auto* asked = dialog<TaskDialog>("releaseDialog");
    ASSERT_NE(asked, nullptr);
    ASSERT_TRUE(doIt(asked));
    ASSERT_TRUE(eventually([&] { return page().queue().count() == 0; }));
    EXPECT_THAT(page().notice().text().toStdString(), HasSubstr("is released"));
    const auto archive = model::Archive::open(archivePath().toStdString());
    const auto presented = model::presented(*archive, number_);
    ASSERT_TRUE(presented);
    ASSERT_TRUE(presented->released);
    EXPECT_EQ(presented->released->person, foundry::kQaManager);
    ASSERT_TRUE(eventually([&] {
        return window_->bench().castingStrip().text().contains("released by Quentin Marsh");
    })) << window_->bench().castingStrip().text().toStdString();
}

TEST_F(Releasing, WhoBelongsToManufacturingReadsWhyNot) {
    lookAtPresented(foundry::kWorksManager);
    ASSERT_TRUE(eventually([&] { return page().obstacleText().contains("manufactur"); }))
        << page().obstacleText().toStdString();
    EXPECT_FALSE(page().releaseButton().isEnabled());
    page().releaseIt();
    EXPECT_EQ(window_->findChild<TaskDialog*>("releaseDialog"), nullptr);
}

TEST_F(Releasing, TheRecorderReadsThatTheyCannotRelease) {
    {
        // The inspector is a QA manager, too.
        auto archive = model::Archive::open(archivePath().toStdString());
        auto stored = model::person(*archive, foundry::kInspector);
        stored->value.roles.insert(model::Role::QaManager);
        const auto saved = model::savePerson(*archive, stored->value, stored->version,
                                             foundry::signedIn(*archive, foundry::kAdministrator));
        ASSERT_TRUE(saved) << saved.error().message();
    }
    lookAtPresented(foundry::kInspector);
    ASSERT_TRUE(eventually([&] { return page().obstacleText().contains("Ilse Bröker recorded"); }))
        << page().obstacleText().toStdString();
    EXPECT_FALSE(page().releaseButton().isEnabled());
}

TEST_F(Releasing, WithoutASignInTheQueueIsOnlyToRead) {
    lookAtPresented(foundry::kAuditor);
    EXPECT_FALSE(page().releaseButton().isEnabled());
    EXPECT_FALSE(page().returnButton().isEnabled());
    window_->signOut();
    ASSERT_TRUE(eventually([&] { return page().obstacleText().contains("Nobody is signed in"); }));
    EXPECT_FALSE(page().releaseButton().isEnabled());
    EXPECT_FALSE(page().returnButton().isEnabled());
}

TEST_F(Releasing, WhatIsReturnedIsADraftAgainWithTheReasonInView) {
    lookAtPresented(foundry::kQaManager);
    ASSERT_TRUE(eventually([&] { return page().returnButton().isEnabled(); }));
    page().returnButton().click();
    auto* asked = dialog<TaskDialog>("returnDialog");
    ASSERT_NE(asked, nullptr);
    EXPECT_FALSE(asked->actButton().isEnabled()) << "no reason yet";
    asked->findChild<QPlainTextEdit*>("reason")->setPlainText("The procedure is missing");
    ASSERT_TRUE(doIt(asked));
    ASSERT_TRUE(eventually([&] { return page().queue().count() == 0; }));
    auto& bench = window_->bench();
    ASSERT_TRUE(eventually(
        [&] { return bench.recordStrip().text().contains("The procedure is missing"); }));
    EXPECT_THAT(bench.recordStrip().text().toStdString(), HasSubstr("Quentin Marsh"));
    signInAs(foundry::kInspector);
    EXPECT_FALSE(bench.desk()->editor().locked(0));
}

TEST_F(Releasing, ATableIsAttestedOnlyOnceEveryLineWasInView) {
    signInAs(foundry::kQaManager);
    window_->goTo(MainWindow::Release);
    page().views().setCurrentIndex(1);
    auto& view = page().attestation();
    ASSERT_TRUE(eventually([&] { return view.list().count() > 0; }));
    const auto tables = model::Archive::open(archivePath().toStdString())->tables();
    const auto* table = tables->find("EN 1369:2012");
    view.list().choose(QString::fromStdString(table->digest));
    ASSERT_GT(view.cells().rowCount(), 40);
    QCoreApplication::processEvents();
    EXPECT_FALSE(view.attestButton().isEnabled());
    view.attest();
    EXPECT_EQ(window_->findChild<TaskDialog*>("attestDialog"), nullptr);
    // To the end at once is not enough: what was skipped has not been in view.
    view.cells().scrollToBottom();
    QCoreApplication::processEvents();
    QCoreApplication::processEvents();
    EXPECT_FALSE(view.attestButton().isEnabled()) << view.stateText().toStdString();
    for (int row = 0; row < view.cells().rowCount(); ++row) {
        view.cells().scrollToItem(view.cells().item(row, 0));
        QCoreApplication::processEvents();
    }
    ASSERT_TRUE(eventually([&] { return view.attestButton().isEnabled(); }))
        << view.stateText().toStdString();
    view.attestButton().click();
    auto* asked = dialog<TaskDialog>("attestDialog");
    ASSERT_NE(asked, nullptr);
    EXPECT_FALSE(asked->actButton().isEnabled()) << "which copy?";
    asked->findChild<QLineEdit*>("companyCopy")->setText("copy 3 of the library");
    ASSERT_TRUE(doIt(asked));
    ASSERT_TRUE(eventually([&] { return view.stateText().contains("copy 3 of the library"); }));
    EXPECT_THAT(view.stateText().toStdString(), HasSubstr("Quentin Marsh"));
}

TEST_F(Releasing, WhatIsReleasedIsFoundByWordsAndSavedByteForByte) {
    lookAtReleased();
    auto& finding = window_->finding();
    EXPECT_THAT(finding.stateText().toStdString(), HasSubstr("Released by Quentin Marsh"));
    EXPECT_THAT(finding.factsText().toStdString(), HasSubstr("Casting C-1, heat H-1"));
    EXPECT_GE(finding.paper().pages(), 1);
    finding.search().words().setText("no such casting");
    ASSERT_TRUE(eventually([&] { return finding.results().count() == 0; }));
    EXPECT_THAT(finding.search().said().toStdString(), HasSubstr("No certificate"));
    finding.search().words().setText("h-1 buy");
    ASSERT_TRUE(eventually([&] { return finding.results().count() == 1; }));
    finding.search().filters().click();
    finding.findChild<QLineEdit*>("from")->setText("2026-13-01");
    ASSERT_TRUE(eventually([&] { return finding.search().said().startsWith("✗"); }))
        << finding.search().said().toStdString();
    finding.findChild<QLineEdit*>("from")->clear();
    ASSERT_TRUE(eventually([&] { return !finding.search().said().startsWith("✗"); }));
    ASSERT_TRUE(eventually([&] { return finding.paper().pages() > 0; }));
    finding.savePdfTo(pathOf("saved.pdf"));
    QFile saved(pathOf("saved.pdf"));
    ASSERT_TRUE(saved.open(QIODevice::ReadOnly));
    const auto archive = model::Archive::open(archivePath().toStdString());
    EXPECT_EQ(saved.readAll().toStdString(), *archive->certificateFile(number_));
    QSignalSpy exported(&finding, &FindingPage::exported);
    finding.exportTo(pathOf("handed-out"));
    ASSERT_TRUE(eventually([&] { return exported.count() == 1; }))
        << finding.notice().text().toStdString();
    QProcess sums;
    sums.setWorkingDirectory(pathOf("handed-out"));
    sums.start("sha256sum", {"-c", "SHA256SUMS"});
    ASSERT_TRUE(sums.waitForFinished());
    EXPECT_EQ(sums.exitCode(), 0) << sums.readAllStandardOutput().toStdString();
}

TEST_F(Releasing, TheCertificateAndTheArchiveVerify) {
    lookAtReleased();
    window_->finding().verifyThis();
    auto* report = dialog<ReportDialog>();
    ASSERT_NE(report, nullptr);
    EXPECT_EQ(report->headline(), "Intact, signed and trusted")
        << report->lines().join('\n').toStdString();
    EXPECT_THAT(report->lines().join('\n').toStdString(), HasSubstr("Ilse Bröker"));
    EXPECT_THAT(report->lines().join('\n').toStdString(), HasSubstr("Quentin Marsh"));
    report->close();
    window_->finding().verifyAll();
    auto* asked = dialog<TaskDialog>("verifyDialog");
    ASSERT_TRUE(doIt(asked));
    report = dialog<ReportDialog>();
    EXPECT_EQ(report->headline(), "Nothing was altered")
        << report->lines().join('\n').toStdString();
    report->close();
    window_->finding().showHistory();
    report = dialog<ReportDialog>();
    EXPECT_THAT(report->lines().join('\n').toStdString(), HasSubstr("Quentin Marsh: released"));
}

TEST_F(Releasing, AnAlteredFileIsNamedByBothChecks) {
    lookAtReleased();
    const auto archive = model::Archive::open(archivePath().toStdString());
    const std::string digest = archive->certificate(number_)->fileDigest;
    const QString file = archivePath() + ".files/" + QString::fromStdString(digest.substr(0, 2)) +
                         "/" + QString::fromStdString(digest.substr(2)) + ".pdf";
    QFile pdf(file);
    ASSERT_TRUE(pdf.exists()) << file.toStdString();
    pdf.setPermissions(pdf.permissions() | QFile::WriteOwner);
    ASSERT_TRUE(pdf.open(QIODevice::ReadWrite));
    pdf.seek(pdf.size() / 2);
    pdf.write("X");
    pdf.close();
    window_->finding().verifyThis();
    auto* report = dialog<ReportDialog>();
    EXPECT_EQ(report->headline(), "Altered: do not rely on it");
    report->close();
    window_->finding().verifyAll();
    ASSERT_TRUE(doIt(dialog<TaskDialog>("verifyDialog")));
    report = dialog<ReportDialog>();
    EXPECT_THAT(report->headline().toStdString(), HasSubstr("ALTERED"));
    EXPECT_THAT(report->lines().join('\n').toStdString(), HasSubstr(digest.substr(2)));
}

/// Where in the file the root of a table is.
qint64 rootOf(const QString& path, const char* table) {
    sqlite3* database = nullptr;
    sqlite3_stmt* statement = nullptr;
    EXPECT_EQ(sqlite3_open_v2(path.toUtf8().constData(), &database, SQLITE_OPEN_READONLY, nullptr),
              SQLITE_OK);
    sqlite3_prepare_v2(database,
                       "SELECT (rootpage - 1) * (SELECT page_size FROM pragma_page_size) FROM "
                       "sqlite_schema WHERE name = ?",
                       -1, &statement, nullptr);
    sqlite3_bind_text(statement, 1, table, -1, SQLITE_STATIC);
    EXPECT_EQ(sqlite3_step(statement), SQLITE_ROW);
    const qint64 at = sqlite3_column_int64(statement, 0);
    sqlite3_finalize(statement);
    sqlite3_close(database);
    return at;
}

TEST_F(Releasing, ADamagedArchiveOpensForReadingAndABarSaysWhatIsLost) {
    window_.reset();
    const qint64 at = rootOf(archivePath(), "archive");
    ASSERT_GT(at, 0);
    QFile database(archivePath());
    ASSERT_TRUE(database.open(QIODevice::ReadWrite));
    ASSERT_TRUE(database.seek(at));
    database.write(QByteArray(512, '\xee'));
    database.close();
    MainWindow window;
    window.show();
    QSignalSpy opened(&window, &MainWindow::archiveOpened);
    window.openArchive(archivePath());
    ASSERT_TRUE(eventually([&] { return opened.count() == 1; }));
    EXPECT_TRUE(window.reading().isVisible());
    EXPECT_THAT(window.reading().text().toStdString(), HasSubstr("open only for reading"));
    EXPECT_FALSE(window.session().mayEnter());
    ASSERT_TRUE(eventually([&] { return window.reading().text().contains("Restore a backup"); }))
        << window.reading().text().toStdString();
    QSignalSpy loaded(&window.bench(), &BenchPage::castingLoaded);
    window.bench().openCasting("C-1");
    ASSERT_TRUE(eventually([&] { return loaded.count() == 1; }));
    window.bench().begin();
    EXPECT_EQ(window.bench().desk()->editor().examinations(), 0);
}

}  // namespace
}  // namespace app
