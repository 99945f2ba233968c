// SPDX-License-Identifier: Apache-2.0
// Signing in and out, people, and copies of the archive.
#include <QDateTime>
#include <QDir>
#include <QFileDialog>
#include <QFileInfo>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QInputDialog>
#include <QLabel>
#include <QLineEdit>
#include <QMenu>
#include <QMenuBar>
#include <QPushButton>
#include <QStandardPaths>
#include <QStatusBar>

#include "archive/backup.h"
#include "bench/bench_page.h"
#include "demo_db/staff.h"
#include "looks/notice_bar.h"
#include "looks/report_dialog.h"
#include "looks/task_dialog.h"
#include "looks/text.h"
#include "people/identity_dialogs.h"
#include "people/people_dialog.h"
#include "people/set_up_dialog.h"
#include "people/sign_in_dialog.h"
#include "people/works_dialog.h"
#include "window/main_window.h"

namespace app {
namespace {

/// A path that is chosen or typed.
QLineEdit* addPath(TaskDialog& dialog, const QString& label, const QString& name,
                   const QString& path, std::function<QString(const QString&)> choose) {
    auto* row = new QWidget(&dialog);
    auto* line = new QLineEdit(path, row);
    QString plain = label;
    line->setObjectName(name);
    line->setAccessibleName(plain.remove('&'));
    line->setMinimumWidth(line->fontMetrics().averageCharWidth() * 50);
    auto* button = new QPushButton(MainWindow::tr("Choose…"), row);
    button->setAutoDefault(false);
    auto* layout = new QHBoxLayout(row);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(line, 1);
    layout->addWidget(button);
    dialog.form().addRow(label, row);
    QObject::connect(line, &QLineEdit::textChanged, &dialog, &TaskDialog::refresh);
    QObject::connect(button, &QPushButton::clicked, &dialog, [line, choose = std::move(choose)] {
        const QString chosen = choose(line->text());
        if (!chosen.isEmpty()) line->setText(chosen);
    });
    return line;
}

}  // namespace

void MainWindow::makePeopleMenu() {
    auto* people = menuBar()->addMenu(tr("&People"));
    signInAction_ = people->addAction(tr("Sign &in…"), this, &MainWindow::signIn);
    signInAction_->setShortcut(QKeySequence("Ctrl+I"));
    signOutAction_ = people->addAction(tr("Sign &out"), this, &MainWindow::signOut);
    signOutAction_->setShortcut(QKeySequence("Ctrl+Shift+O"));
    people->addAction(tr("Sign out when &left alone…"), this, &MainWindow::askForIdleMinutes);
    people->addSeparator();
    passphraseAction_ = people->addAction(tr("Change your &passphrase…"), this, [this] {
        changePassphraseDialog(session_, archive_, this)->open();
    });
    peopleAction_ = people->addAction(tr("P&eople and identities…"), this, &MainWindow::showPeople);
    people->addSeparator();
    people->addAction(tr("&Works and time stamps…"), this, [this] {
        auto* dialog = worksDialog(opened_.kind, this);
        dialog->open();
        emit taskShown(dialog);
    });
}

void MainWindow::signIn() {
    if (!isOpen() || !session_.hasPeople() || session_.signer()) return;
    auto* dialog = new SignInDialog(session_, archive_, this);
    if (isDemonstration_) {
        dialog
            ->addNote(tr("This is the demonstration: everybody's passphrase is “%1”, invented and "
                         "public.")
                          .arg(demo::kPassphrase))
            ->setTextInteractionFlags(Qt::TextSelectableByMouse);
    }
    dialog->open();
    emit signInShown(dialog);
}

void MainWindow::signOut() {
    session_.signOut();
    statusBar()->showMessage(tr("Signed out."), 8000);
}

void MainWindow::setUp() {
    auto* dialog = setUpDialog(session_, archive_, this);
    connect(dialog, &TaskDialog::completed, this, [this] {
        notice_->say(Mark::Passes,
                     tr("The archive is set up. Sign in as the administrator, then add the "
                        "inspectors and QA managers under People."),
                     {{tr("Sign in…"), [this] { signIn(); }}, {tr("Close"), {}}});
    });
    dialog->open();
    emit taskShown(dialog);
}

void MainWindow::showPeople() {
    if (!isOpen() || !session_.hasPeople()) return;
    auto* dialog = new PeopleDialog(session_, archive_, this);
    dialog->open();
    emit peopleShown(dialog);
}

void MainWindow::askForIdleMinutes() {
    auto* dialog = new QInputDialog(this);
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    dialog->setWindowTitle(tr("Sign out when left alone"));
    dialog->setLabelText(
        tr("Minutes without a key or the mouse after which you are signed out (0: never):"));
    dialog->setInputMode(QInputDialog::IntInput);
    dialog->setIntRange(0, Session::kLongestIdleMinutes);
    dialog->setIntValue(session_.idleMinutes());
    dialog->setOkButtonText(tr("&Keep it"));
    dialog->setCancelButtonText(tr("&Cancel"));
    connect(dialog, &QInputDialog::intValueSelected, this,
            [this](int minutes) { session_.setIdleMinutes(minutes); });
    dialog->open();
}

void MainWindow::backUp() {
    if (!isOpen() || long_.running()) return;
    auto* dialog = new TaskDialog(
        tr("Back up the archive"),
        tr("Makes a folder with a copy of the database, the certificates and the archive's own "
           "key, and checks the copy whole. Others can go on working meanwhile. Keep it on another "
           "disk, where only those may read it who may read the archive."),
        tr("&Back up"), this);
    dialog->setMayLeave(true);
    const QFileInfo file(qt(opened_.path));
    const QString name =
        tr("%1-backup-%2")
            .arg(file.completeBaseName(), QDateTime::currentDateTime().toString("yyyy-MM-dd-HHmm"));
    auto* path = addPath(*dialog, tr("&New folder"), "backupFolder",
                         file.absoluteDir().filePath(name), [dialog, name](const QString&) {
                             const QString folder = QFileDialog::getExistingDirectory(
                                 dialog, MainWindow::tr("In which folder?"));
                             return folder.isEmpty() ? folder : QDir(folder).filePath(name);
                         });
    dialog->setMissing(
        [path] { return path->text().trimmed().isEmpty() ? tr("Say where.") : QString(); });
    connect(&long_, &LongTask::progressed, dialog, &TaskDialog::setProgress);
    connect(dialog, &QDialog::rejected, &long_, &LongTask::cancel);
    dialog->setWork([this, dialog, path](const TaskDialog::Then& then) {
        const std::string folder = path->text().trimmed().toStdString();
        long_.start(
            [from = opened_.path, folder](const model::Progress& progress) {
                return model::backUp(from, folder, model::systemClock(), progress);
            },
            [this, then, folder, guard = QPointer<TaskDialog>(dialog)](
                const model::Result<model::BackupContent>& made) {
                if (!guard) return;  // stopped
                if (!made) {
                    then(made.error());
                    return;
                }
                then({});
                QStringList lines{tr("Folder: %1").arg(qt(folder)),
                                  tr("Certificates: %1").arg(made->certificates),
                                  tr("Head of the history: %1").arg(qt(model::toText(made->head))),
                                  tr("Note the head on paper elsewhere: with it, it can be shown "
                                     "later that an archive still contains this one.")};
                if (!made->hasKey) {
                    lines << tr(
                        "The archive's own key was not there to copy: a restored archive "
                        "can only be read.");
                }
                (new ReportDialog(tr("Backed up"), Mark::Passes, tr("Copied and checked whole"), {},
                                  lines, this))
                    ->open();
            });
    });
    dialog->open();
    emit taskShown(dialog);
}

void MainWindow::restore() {
    if (long_.running()) return;
    auto* dialog = new TaskDialog(
        tr("Restore a backup"),
        tr("Checks the backup, makes a new archive from it and checks that whole. What is open now "
           "stays as it is; a file that is there already is never overwritten."),
        tr("&Restore"), this);
    dialog->setMayLeave(true);
    auto* from = addPath(*dialog, tr("&Backup's folder"), "backupFolder", {},
                         [dialog](const QString& before) {
                             return QFileDialog::getExistingDirectory(
                                 dialog, MainWindow::tr("The backup's folder"), before);
                         });
    const QDir documents(QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation));
    auto* to = addPath(
        *dialog, tr("&New archive"), "newArchive", documents.filePath(tr("restored.fettlemark")),
        [dialog](const QString& before) {
            return QFileDialog::getSaveFileName(dialog, MainWindow::tr("The new archive"), before,
                                                MainWindow::tr("Archives (*.fettlemark)"), nullptr,
                                                QFileDialog::DontConfirmOverwrite);
        });
    dialog->setMissing([from, to] {
        if (from->text().trimmed().isEmpty()) return tr("Choose the backup's folder.");
        return to->text().trimmed().isEmpty() ? tr("Say where the archive shall be.") : QString();
    });
    connect(&long_, &LongTask::progressed, dialog, &TaskDialog::setProgress);
    connect(dialog, &QDialog::rejected, &long_, &LongTask::cancel);
    dialog->setWork([this, dialog, from, to](const TaskDialog::Then& then) {
        const std::string folder = from->text().trimmed().toStdString();
        const QString path = to->text().trimmed();
        long_.start(
            [folder, file = path.toStdString()](const model::Progress& progress) {
                return model::restore(folder, file, model::systemClock(), progress);
            },
            [this, then, path, guard = QPointer<TaskDialog>(dialog)](
                const model::Result<model::BackupContent>& restored) {
                if (!guard) return;  // stopped
                if (!restored) {
                    then(restored.error());
                    return;
                }
                then({});
                openArchive(path);
            });
    });
    dialog->open();
    emit taskShown(dialog);
}

}  // namespace app
