// SPDX-License-Identifier: Apache-2.0
#include "people_fixture.h"

#include <QApplication>
#include <QCheckBox>
#include <QLineEdit>
#include <QPushButton>
#include <QSettings>
#include <QSignalSpy>
#include <QTest>

#include "archive/attestation.h"
#include "bench/examination_pane.h"
#include "bench/record_strip.h"
#include "bench/row_table.h"
#include "bench/sign_dialog.h"
#include "looks/notice_bar.h"

namespace app {

PeopleTest::PeopleTest() {
    QSettings().setValue("works/name", "Quillmere Foundry");
    foundry::copyTo(archivePath().toStdString());
    auto archive = model::Archive::open(archivePath().toStdString());
    EXPECT_TRUE(archive) << archive.error().message();
    auto file = sampleFile();
    file.plan.zones.resize(1);
    const model::Actor office{"Office"};
    EXPECT_TRUE(archive->save(file.order, 0, office));
    EXPECT_TRUE(archive->save(file.part, 0, office));
    EXPECT_TRUE(archive->add(file.plan, office));
    EXPECT_TRUE(archive->save(file.casting, 0, office));
    openWindow();
}

void PeopleTest::openWindow() {
    window_ = std::make_unique<MainWindow>();
    window_->show();
    window_->activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(window_.get()));
    QSignalSpy opened(window_.get(), &MainWindow::archiveOpened);
    window_->openArchive(archivePath());
    ASSERT_TRUE(eventually([&] { return opened.count() == 1; }));
    ASSERT_TRUE(eventually([&] { return window_->session().hasPeople(); }));
}

void PeopleTest::signInAs(const char* person) {
    auto archive = model::Archive::open(archivePath().toStdString());
    ASSERT_TRUE(archive) << archive.error().message();
    window_->session().take(
        std::make_shared<const model::SignedIn>(foundry::signedIn(*archive, person)));
}

void PeopleTest::openCasting() {
    QSignalSpy loaded(&window_->bench(), &BenchPage::castingLoaded);
    window_->goTo(MainWindow::Bench);
    window_->bench().openCasting("C-1");
    ASSERT_TRUE(eventually([&] { return loaded.count() == 1; }));
}

void PeopleTest::attestTables() {
    auto archive = model::Archive::open(archivePath().toStdString());
    ASSERT_TRUE(archive);
    const auto tables = archive->tables();
    ASSERT_TRUE(tables);
    const auto manager = foundry::signedIn(*archive, foundry::kQaManager);
    const auto done =
        model::attest(*archive, tables->find("EN 1369:2012")->digest, "copy 3", manager);
    ASSERT_TRUE(done) << done.error().message();
}

void PeopleTest::signExamination() {
    auto& bench = window_->bench();
    bench.begin();
    ASSERT_GE(bench.examination().examination(), 0);
    bench.examination().nothingFound().click();
    bench.sign();
    auto* sign = dialog<SignDialog>();
    ASSERT_NE(sign, nullptr);
    ASSERT_TRUE(doIt(sign)) << sign->trouble().toStdString();
    ASSERT_TRUE(eventually([&] { return bench.desk()->editor().locked(0); }));
}

qint64 PeopleTest::present() {
    QSignalSpy presented(&window_->bench(), &BenchPage::presented);
    window_->bench().present();
    auto* asked = dialog<TaskDialog>("presentDialog");
    if (!asked) return 0;
    EXPECT_TRUE(doIt(asked));
    return presented.isEmpty() ? 0 : presented.front().front().toLongLong();
}

bool PeopleTest::doIt(TaskDialog* dialog) {
    QSignalSpy done(dialog, &TaskDialog::completed);
    EXPECT_TRUE(dialog->actButton().isEnabled()) << dialog->actButton().toolTip().toStdString();
    QPointer<TaskDialog> guard(dialog);
    dialog->actButton().click();
    // Making and signing a certificate may take longer on a busy machine.
    EXPECT_TRUE(QTest::qWaitFor([&] { return !guard || !guard->working(); }, 60'000));
    if (done.isEmpty() && guard) ADD_FAILURE() << guard->trouble().toStdString();
    return !done.isEmpty();
}

}  // namespace app
