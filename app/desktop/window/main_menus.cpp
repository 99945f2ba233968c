// SPDX-License-Identifier: Apache-2.0
// The window's menus.
#include <QActionGroup>
#include <QApplication>
#include <QMenuBar>
#include <QMessageBox>

#include "bench/bench_page.h"
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
    archive->addAction(tr("&Quit"), this, &QWidget::close)->setShortcut(QKeySequence("Ctrl+Q"));
    fill(*menuBar()->addMenu(tr("&Edit")), actions.edit);
    auto* view = menuBar()->addMenu(tr("&View"));
    fill(*view, actions.view);
    view->addSeparator();
    addAppearance(*view);
    fill(*menuBar()->addMenu(tr("&Go")), actions.go);
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
    auto* box = new QMessageBox(QMessageBox::NoIcon, tr("Keys"), tr("Typing indications"),
                                QMessageBox::Close, this);
    box->setAttribute(Qt::WA_DeleteOnClose);
    box->setInformativeText(
        tr("Enter\tnext cell; after the kind, the next row\n"
           "Ctrl+Enter\tnext row at once\n"
           "Tab, arrows\tany cell\n"
           "F2\tchange what stands in a cell\n"
           "Ctrl+D\tthe value above\n"
           "Delete\tempty the chosen cells\n"
           "Ctrl+Delete\tdelete the chosen rows\n"
           "Ctrl+C, Ctrl+V\tcells to and from a spreadsheet\n"
           "Ctrl+Z, Ctrl+Y\tundo, redo\n"
           "F8\tnext cell that cannot be read\n"
           "Ctrl+1 … Ctrl+5\tcastings, zones, surface, indications, checks\n"
           "Ctrl+PgUp, PgDn\tprevious, next zone\n"
           "+  −  arrows\ton the surface: larger, smaller, move\n"
           "F, D\ton the surface: whole zone, deciding frame\n"
           "Ctrl++  Ctrl+−\tlarger, smaller type"));
    box->open();
}

}  // namespace app
