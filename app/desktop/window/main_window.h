// SPDX-License-Identifier: Apache-2.0
// The window: a start page until an archive is open, then the workplaces.
#pragma once

#include <QMainWindow>

#include "editing/archive_thread.h"

class QLabel;
class QProgressBar;
class QStackedWidget;

namespace app {

class BenchPage;
class StartPage;

class MainWindow : public QMainWindow {
    Q_OBJECT

public:
    explicit MainWindow(QWidget* parent = nullptr);
    ~MainWindow() override;

    void openArchive(const QString& path);
    /// Makes the demonstration where it is not there yet, and opens it.
    void openDemonstration();
    /// Asks what the first start asks for; later from the help menu.
    void welcome();

    [[nodiscard]] BenchPage& bench() { return *bench_; }
    [[nodiscard]] StartPage& start() { return *start_; }
    /// "Saved 09:31:05", "Saving…", "NOT SAVED".
    [[nodiscard]] QString savedText() const;

signals:
    void archiveOpened();
    void openFailed(const QString& reason);

protected:
    void closeEvent(QCloseEvent* event) override;

private:
    void makeMenus();
    void makeStatusBar();
    void chooseArchive();
    void openPrepared(const QString& path, const QString& busy,
                      std::function<model::Result<void>()> prepare);
    void onOpened(model::Result<ArchiveThread::Opened> opened);
    void setSavedText(const QString& text, bool loud);
    void refreshTitle();
    void showKeys();
    void askAboutUnsaved();

    ArchiveThread archive_;
    QStackedWidget* pages_;
    StartPage* start_;
    BenchPage* bench_;
    QLabel* demonstration_;
    QLabel* person_;
    QLabel* saved_;
    QProgressBar* busy_;
    QString casting_;
    bool isDemonstration_ = false;
    bool closing_ = false;
};

}  // namespace app
