// SPDX-License-Identifier: Apache-2.0
// fettlemark [FILE | --db FILE]: the desktop program.
#include <QApplication>
#include <QCommandLineParser>
#include <QIcon>
#include <QTimer>
#include <cstdlib>

#include "looks/appearance.h"
#include "window/main_window.h"
#include "window/welcome_dialog.h"

namespace {

int run(int argc, char** argv) {
    QApplication application(argc, argv);
    QApplication::setOrganizationName("Fettlemark");
    QApplication::setApplicationName("fettlemark");
    QApplication::setApplicationVersion(FETTLEMARK_VERSION);
    QApplication::setDesktopFileName("org.fettlemark.Fettlemark");
    QApplication::setWindowIcon(QIcon::fromTheme("fettlemark"));

    QCommandLineParser parser;
    parser.setApplicationDescription(QApplication::translate(
        "main", "Records and judges the testing of iron and steel castings."));
    parser.addHelpOption();
    parser.addVersionOption();
    const QCommandLineOption archive(
        "db",
        QApplication::translate("main", "Open this archive; without it, choose at the start."),
        "FILE");
    parser.addOption(archive);
    parser.addPositionalArgument("FILE", QApplication::translate("main", "The same."), "[FILE]");
    parser.process(application);

    app::applyAppearance(application, app::chosenAppearance(), app::chosenTypeFactor());
    app::MainWindow window;
    window.show();
    const QStringList named = parser.positionalArguments();
    if (parser.isSet(archive)) {
        window.openArchive(parser.value(archive));
    } else if (!named.isEmpty()) {
        window.openArchive(named.front());
    }
    if (app::WelcomeDialog::due()) QTimer::singleShot(0, &window, &app::MainWindow::welcome);
    return QApplication::exec();
}

}  // namespace

int main(int argc, char** argv) {
    const int code = run(argc, argv);
    // All is saved and closed; a long judgement may still be going on in its thread, and ends here.
    std::_Exit(code);
}
