// SPDX-License-Identifier: Apache-2.0
#include "window/main_window.h"

#include <QApplication>
#include <QCloseEvent>
#include <QDateTime>
#include <QDir>
#include <QFileDialog>
#include <QFileInfo>
#include <QLabel>
#include <QMessageBox>
#include <QProgressBar>
#include <QPushButton>
#include <QScreen>
#include <QSettings>
#include <QStackedWidget>
#include <QStandardPaths>
#include <QStatusBar>

#include "bench/bench_page.h"
#include "finding/finding_page.h"
#include "issuing/demonstration.h"
#include "looks/mark.h"
#include "looks/notice_bar.h"
#include "looks/text.h"
#include "reference/reference_page.h"
#include "release/release_page.h"
#include "window/start_page.h"
#include "window/welcome_dialog.h"
#include "window/workplace_bar.h"

namespace app {

MainWindow::MainWindow(QWidget* parent)
    : QMainWindow(parent),
      session_(archive_),
      pages_(new QStackedWidget(this)),
      start_(new StartPage(this)),
      bench_(new BenchPage(archive_, session_, this)),
      release_(new ReleasePage(archive_, session_, this)),
      finding_(new FindingPage(archive_, session_, this)),
      reference_(new ReferencePage(archive_, session_, this)),
      bar_(new WorkplaceBar(this)),
      reading_(new NoticeBar(this)),
      notice_(new NoticeBar(this)) {
    makeWorkplaces();
    makeStatusBar();
    makeMenus();
    resize(QSize(1440, 900).boundedTo(screen()->availableSize()));
    connect(start_, &StartPage::openRequested, this, &MainWindow::chooseArchive);
    connect(start_, &StartPage::demonstrationRequested, this, &MainWindow::openDemonstration);
    connect(bench_, &BenchPage::castingShown, this, [this](const QString& serial) {
        casting_ = serial;
        setSavedText(tr("All saved"), false);
        refreshTitle();
    });
    connect(bench_, &BenchPage::saving, this, [this] { setSavedText(tr("Saving…"), false); });
    connect(bench_, &BenchPage::saved, this, [this](const QDateTime& at) {
        setSavedText(tr("Saved %1").arg(at.toString("HH:mm:ss")), false);
    });
    connect(bench_, &BenchPage::saveFailed, this,
            [this] { setSavedText(tr("✗ NOT SAVED"), true); });
    connect(bench_, &BenchPage::message, this,
            [this](const QString& text) { statusBar()->showMessage(text, 8000); });
    connect(&archive_, &ArchiveThread::busy, busy_, &QWidget::setVisible);
    bench_->setPerson(QSettings().value("bench/person").toString());
    onSessionChanged();
    refreshTitle();
}

MainWindow::~MainWindow() {
    // Before the archive's thread and the session, which they use.
    delete bench_;
    delete release_;
    delete finding_;
    delete reference_;
}

void MainWindow::makeStatusBar() {
    demonstration_ = new QLabel(tr("Demonstration: invented data"), this);
    demonstration_->setObjectName("demonstration");
    QFont strong = font();
    strong.setBold(true);
    demonstration_->setFont(strong);
    demonstration_->setMargin(3);
    demonstration_->hide();
    saved_ = new QLabel(this);
    saved_->setObjectName("saved");
    saved_->setAccessibleName(tr("Saving"));
    busy_ = new QProgressBar(this);
    busy_->setRange(0, 0);
    busy_->setTextVisible(false);
    busy_->setFixedWidth(120);
    busy_->setAccessibleName(tr("The archive is at work"));
    busy_->hide();
    statusBar()->addPermanentWidget(busy_);
    statusBar()->addPermanentWidget(demonstration_);
    statusBar()->addPermanentWidget(saved_);
}

void MainWindow::refreshTitle() {
    QStringList parts;
    if (!casting_.isEmpty()) parts << casting_;
    if (isDemonstration_) parts << tr("Demonstration");
    parts << tr("Fettlemark");
    setWindowTitle(parts.join(" — "));
}

QString MainWindow::savedText() const {
    return saved_->text();
}

void MainWindow::setSavedText(const QString& text, bool loud) {
    QPalette colours = palette();
    if (loud) {
        colours.setColor(QPalette::WindowText,
                         colourOf(Mark::Fails, colours.color(QPalette::Window)));
    }
    QFont type = font();
    type.setBold(loud);
    saved_->setFont(type);
    saved_->setPalette(colours);
    saved_->setText(text);
}

void MainWindow::chooseArchive() {
    const QString path = QFileDialog::getOpenFileName(
        this, tr("Open an archive"), QSettings().value("archive/folder").toString(),
        tr("Archives (*.fettlemark *.db);;All files (*)"));
    if (!path.isEmpty()) openArchive(path);
}

void MainWindow::openArchive(const QString& path) {
    openPrepared(path, tr("Opening %1…").arg(QDir::toNativeSeparators(path)), {});
}

void MainWindow::openDemonstration() {
    const QDir folder(QStandardPaths::writableLocation(QStandardPaths::AppDataLocation));
    folder.mkpath(".");
    const QString path = folder.filePath("demonstration.fettlemark");
    openPrepared(path, tr("Preparing the demonstration…"),
                 [file = path.toStdString(), there = QFileInfo::exists(path),
                  version = QApplication::applicationVersion().toStdString()] {
                     return there ? model::Result<void>() : writeDemonstration(file, version);
                 });
}

void MainWindow::openPrepared(const QString& path, const QString& busy,
                              std::function<model::Result<void>()> prepare) {
    start_->setTrouble({});
    const auto open = [this, path, busy, prepare = std::move(prepare)] {
        start_->setBusy(busy);
        archive_.open(
            path.toStdString(), this,
            [this](model::Result<ArchiveThread::Opened> opened) { onOpened(std::move(opened)); },
            prepare);
    };
    afterReference([this, open] { bench_->whenSaved(open); });
}

void MainWindow::onOpened(model::Result<ArchiveThread::Opened> opened) {
    start_->setBusy({});
    if (!opened) {
        const QString reason = errorText(opened.error());
        start_->setTrouble(tr("The archive was not opened. %1").arg(reason));
        if (pages_->currentWidget() != start_) {
            QMessageBox::warning(this, tr("Not opened"), reason);
        }
        emit openFailed(reason);
        return;
    }
    QSettings().setValue("archive/folder", QFileInfo(qt(opened->path)).absolutePath());
    opened_ = *opened;
    isDemonstration_ = opened->kind == model::ArchiveKind::Demonstration;
    demonstration_->setVisible(isDemonstration_);
    casting_.clear();
    asked_ = false;
    setSavedText({}, false);
    refreshTitle();
    notice_->takeBack();
    reading_->takeBack();
    bar_->show();
    session_.setArchive(*opened);
    goTo(Bench);
    bench_->setArchive(*opened);
    release_->setArchive(*opened);
    finding_->setArchive(*opened);
    reference_->setArchive(*opened);
    if (opened->onlyForReading) sayOnlyForReading(*opened->onlyForReading);
    emit archiveOpened();
}

void MainWindow::welcome() {
    if (findChild<WelcomeDialog*>()) return;
    auto* dialog = new WelcomeDialog(session_, this);
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    connect(dialog, &QDialog::accepted, this, [this, dialog] {
        if (!dialog->person().isEmpty()) bench_->setPerson(dialog->person());
        onSessionChanged();
        if (!session_.onlyForReading()) signIn();  // where there are people
    });
    dialog->open();
}

void MainWindow::closeEvent(QCloseEvent* event) {
    if (closing_) {
        event->accept();
        return;
    }
    event->ignore();
    long_.cancel();
    if (bench_->savingFails()) {
        askAboutUnsaved();
        return;
    }
    afterReference([this] {
        bench_->whenSaved([this] {
            closing_ = true;
            close();
        });
    });
}

void MainWindow::askAboutUnsaved() {
    auto* box =
        new QMessageBox(QMessageBox::Warning, tr("Not saved"),
                        tr("The last entries could not be saved. If you close now they are lost."),
                        QMessageBox::NoButton, this);
    box->setAttribute(Qt::WA_DeleteOnClose);
    auto* stay = box->addButton(tr("&Stay"), QMessageBox::RejectRole);
    auto* lose = box->addButton(tr("Close and &lose them"), QMessageBox::DestructiveRole);
    box->setDefaultButton(qobject_cast<QPushButton*>(stay));
    connect(lose, &QAbstractButton::clicked, this, [this] {
        closing_ = true;
        close();
    });
    box->open();
}

}  // namespace app
