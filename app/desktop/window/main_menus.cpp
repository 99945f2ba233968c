// SPDX-License-Identifier: Apache-2.0
// The window's menus.
#include <QActionGroup>
#include <QApplication>
#include <QList>
#include <QMenuBar>
#include <QMessageBox>

#include "bench/bench_page.h"
#include "finding/finding_page.h"
#include "looks/appearance.h"
#include "window/main_window.h"

namespace app {
namespace {

void fill(QMenu& menu, const std::vector<QAction*>& actions) {
    for (QAction* action : actions) {
        if (action) {
            menu.addAction(action);
        } else {
            menu.addSeparator();
        }
    }
}

void addAppearance(QMenu& menu) {
    auto* group = new QActionGroup(&menu);
    const auto add = [&](const QString& text, Appearance appearance) {
        QAction* action = menu.addAction(text);
        action->setCheckable(true);
        action->setChecked(chosenAppearance() == appearance);
        group->addAction(action);
        QObject::connect(action, &QAction::triggered, qApp,
                         [appearance] { choose(*qApp, appearance, chosenTypeFactor()); });
    };
    add(MainWindow::tr("As the &desktop"), Appearance::Desktop);
    add(MainWindow::tr("&Light"), Appearance::Light);
    add(MainWindow::tr("D&ark"), Appearance::Dark);
    menu.addSeparator();
    const auto scale = [](double by) {
        const double factor = by == 0 ? 1.0 : std::clamp(chosenTypeFactor() + by, 0.8, 2.0);
        choose(*qApp, chosenAppearance(), factor);
    };
    auto* larger = menu.addAction(MainWindow::tr("La&rger type"), qApp, [scale] { scale(0.125); });
    larger->setShortcuts({QKeySequence("Ctrl++"), QKeySequence("Ctrl+=")});
    menu.addAction(MainWindow::tr("&Smaller type"), qApp, [scale] { scale(-0.125); })
        ->setShortcut(QKeySequence("Ctrl+-"));
    menu.addAction(MainWindow::tr("&Usual type"), qApp, [scale] { scale(0); });
}

}  // namespace

void MainWindow::makeMenus() {
    const auto& actions = bench_->actions();
    auto* archive = menuBar()->addMenu(tr("&Archive"));
    archive->addAction(tr("&Open an archive…"), this, &MainWindow::chooseArchive)
        ->setShortcut(QKeySequence::Open);
    archive->addAction(tr("Open the &demonstration"), this, &MainWindow::openDemonstration);
    archive->addSeparator();
    fill(*archive, actions.archive);
    archive->addSeparator();
    archive->addAction(tr("&Verify the whole archive…"), finding_, [this] {
        if (!isOpen()) return;
        goTo(Finding);
        finding_->verifyAll();
    });
    archive->addAction(tr("&Back up…"), this, &MainWindow::backUp);
    archive->addAction(tr("&Restore a backup…"), this, &MainWindow::restore);
    archive->addSeparator();
    archive->addAction(tr("&Quit"), this, &QWidget::close)->setShortcut(QKeySequence("Ctrl+Q"));
    fill(*menuBar()->addMenu(tr("&Edit")), actions.edit);
    auto* view = menuBar()->addMenu(tr("&View"));
    fill(*view, actions.view);
    view->addSeparator();
    addAppearance(*view);
    auto* go = menuBar()->addMenu(tr("&Go"));
    const auto place = [&](const QString& name, Workplace workplace) {
        go->addAction(name, this, [this, workplace] {
              goTo(workplace);
          })->setShortcut(QKeySequence(tr("Alt+%1").arg(static_cast<int>(workplace) + 1)));
    };
    place(tr("&Bench"), Bench);
    place(tr("&Release"), Release);
    place(tr("&Archive"), Finding);
    place(tr("Re&ference"), Reference);
    go->addSeparator();
    fill(*go, actions.go);
    fill(*menuBar()->addMenu(tr("&Sign")), actions.sign);
    makePeopleMenu();
    auto* help = menuBar()->addMenu(tr("&Help"));
    help->addAction(tr("&Keys"), this, &MainWindow::showKeys)->setShortcut(QKeySequence("F1"));
    help->addAction(tr("&Who sits here, and what the program is not…"), this, &MainWindow::welcome);
    help->addAction(tr("&About Fettlemark"), this, [this] {
        QMessageBox::about(this, tr("About Fettlemark"),
                           tr("Fettlemark %1\n\nAn acceptance recorder for the testing of iron "
                              "and steel castings. Apache License 2.0.")
                               .arg(QApplication::applicationVersion()));
    });
}

void MainWindow::showKeys() {
    const QList<std::pair<QString, QString>> keys{
        {tr("Alt+1 to Alt+4"), tr("bench, release, archive, reference")},
        {tr("Enter"), tr("next cell; after the kind, the next row")},
        {tr("Ctrl+Enter"), tr("next row at once")},
        {tr("Tab, arrows"), tr("any cell")},
        {tr("F2"), tr("change what stands in a cell")},
        {tr("Ctrl+D"), tr("the value above")},
        {tr("Delete"), tr("empty the chosen cells")},
        {tr("Ctrl+Delete"), tr("delete the chosen rows")},
        {tr("Ctrl+C, Ctrl+V"), tr("cells to and from a spreadsheet")},
        {tr("Ctrl+Z, Ctrl+Y"), tr("undo, redo")},
        {tr("F8"), tr("next cell that cannot be read")},
        {tr("Ctrl+1 to Ctrl+5"), tr("castings, zones, surface, indications, checks")},
        {tr("Ctrl+6, Ctrl+7, Ctrl+8"), tr("ultrasonic: reading, setting, coverage")},
        {tr("Ctrl+T"), tr("conditions of the test")},
        {tr("n"), tr("in a time or date: now, today")},
        {tr("Down"), tr("in a field with choices: all of them")},
        {tr("Ctrl+K, Ctrl+R"), tr("photos and files, nonconformances of the casting")},
        {tr("PgUp, PgDn"), tr("on a reading: previous, next indication")},
        {tr("Ctrl+PgUp, Ctrl+PgDn"), tr("previous, next zone")},
        {tr("Ctrl+P"), tr("make a certificate, not released")},
        {tr("Ctrl+Shift+S"), tr("sign this examination")},
        {tr("Ctrl+Shift+P"), tr("present the casting for release")},
        {tr("Ctrl+I, Ctrl+Shift+O"), tr("sign in, sign out")},
        {tr("Ctrl+F, Ctrl+S"), tr("in a register: find, save")},
        {tr("+, −, arrows"), tr("on the surface: larger, smaller, move")},
        {tr("F, D"), tr("on the surface: whole zone, deciding frame")},
        {tr("Ctrl++, Ctrl+−"), tr("larger, smaller type")}};
    QString rows;
    for (const auto& [key, does] : keys) {
        rows += QStringLiteral("<tr><td style='padding-right:24px'><b>%1</b></td><td>%2</td></tr>")
                    .arg(key.toHtmlEscaped(), does.toHtmlEscaped());
    }
    auto* box = new QMessageBox(QMessageBox::NoIcon, tr("Keys"), "<table>" + rows + "</table>",
                                QMessageBox::Close, this);
    box->setTextFormat(Qt::RichText);
    box->setAttribute(Qt::WA_DeleteOnClose);
    box->open();
}

}  // namespace app
