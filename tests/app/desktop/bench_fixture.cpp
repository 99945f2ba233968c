// SPDX-License-Identifier: Apache-2.0
#include "bench_fixture.h"

#include <QApplication>
#include <QLineEdit>
#include <QSignalSpy>
#include <QTest>

#include "bench/castings_panel.h"
#include "bench/examination_pane.h"
#include "bench/row_table.h"
#include "bench/verdict_panel.h"

namespace app {

BenchTest::BenchTest(const model::CastingFile& file) : FoundryTest(file) {
    openWindow();
}

void BenchTest::openWindow() {
    window_ = std::make_unique<MainWindow>();
    window_->bench().setPerson("Ada");
    window_->show();
    window_->activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(window_.get()));
    QSignalSpy opened(window_.get(), &MainWindow::archiveOpened);
    window_->openArchive(path());
    ASSERT_TRUE(eventually([&] { return opened.count() == 1; }));
    ASSERT_TRUE(eventually([&] { return bench().castings().searchField().hasFocus(); }));
    QSignalSpy loaded(&bench(), &BenchPage::castingLoaded);
    type("C-1");
    press(Qt::Key_Return);
    ASSERT_TRUE(eventually([&] { return loaded.count() == 1; }));
}

void BenchTest::goToZone(int line) {
    shortcut(Qt::Key_2);
    ASSERT_TRUE(eventually([&] { return bench().zones().hasFocus(); }));
    while (bench().zones().currentIndex().row() < line) press(Qt::Key_Down);
    while (bench().zones().currentIndex().row() > line) press(Qt::Key_Up);
    press(Qt::Key_Return);
    if (bench().examination().examination() < 0) press(Qt::Key_Return);  // the button "Begin"
    ASSERT_TRUE(eventually([&] { return bench().examination().table().hasFocus(); }));
}

void BenchTest::type(const QString& text) {
    for (const QChar key : text) {
        ASSERT_NE(QApplication::focusWidget(), nullptr);
        QTest::keyClicks(QApplication::focusWidget(), QString(key));
    }
}

void BenchTest::press(Qt::Key key, Qt::KeyboardModifiers modifiers) {
    ASSERT_NE(QApplication::focusWidget(), nullptr);
    QTest::keyClick(QApplication::focusWidget(), key, modifiers);
    QCoreApplication::processEvents();  // a cell is taken over in the next turn of the event loop
}

void BenchTest::typeCells(const QStringList& cells) {
    for (const QString& cell : cells) {
        type(cell);
        press(Qt::Key_Return);
    }
}

void BenchTest::shortcut(Qt::Key key, Qt::KeyboardModifiers modifiers) {
    QTest::keyClick(QApplication::focusWidget() ? QApplication::focusWidget() : window_.get(), key,
                    modifiers);
    QCoreApplication::processEvents();
}

std::string BenchTest::verdict() {
    EXPECT_TRUE(eventually([&] { return bench().desk()->live() && !bench().desk()->judging(); }));
    return bench().verdict().word().toStdString();
}

bool BenchTest::saved() {
    return eventually([&] { return !bench().unsaved(); });
}

}  // namespace app
