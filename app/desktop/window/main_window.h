// SPDX-License-Identifier: Apache-2.0
// The window: a start page until an archive is open, then the workplaces.
#pragma once

#include <QMainWindow>

#include "editing/archive_thread.h"
#include "editing/long_task.h"
#include "editing/session.h"

class QLabel;
class QProgressBar;
class QStackedWidget;

namespace app {

class BenchPage;
class FindingPage;
class NoticeBar;
class PeopleDialog;
class ReferencePage;
class ReleasePage;
class ReportDialog;
class SignInDialog;
class StartPage;
class TaskDialog;
class WorkplaceBar;

class MainWindow : public QMainWindow {
    Q_OBJECT

public:
    explicit MainWindow(QWidget* parent = nullptr);
    ~MainWindow() override;

    enum Workplace { Bench, Release, Finding, Reference };

    void openArchive(const QString& path);
    /// Makes the demonstration where it is not there yet, and opens it.
    void openDemonstration();
    /// Asks what the first start asks for; later from the help menu.
    void welcome();
    void goTo(Workplace workplace);

    [[nodiscard]] BenchPage& bench() { return *bench_; }
    [[nodiscard]] ReleasePage& release() { return *release_; }
    [[nodiscard]] FindingPage& finding() { return *finding_; }
    [[nodiscard]] ReferencePage& reference() { return *reference_; }
    [[nodiscard]] StartPage& start() { return *start_; }
    [[nodiscard]] Session& session() { return session_; }
    [[nodiscard]] WorkplaceBar& workplaces() { return *bar_; }
    /// What must not be missed about the archive: only for reading, nobody set up, left alone.
    [[nodiscard]] NoticeBar& reading() { return *reading_; }
    [[nodiscard]] NoticeBar& notice() { return *notice_; }
    /// "Saved 09:31:05", "Saving…", "NOT SAVED".
    [[nodiscard]] QString savedText() const;

public slots:
    void signIn();
    void signOut();
    void setUp();
    void showPeople();
    void backUp();
    void restore();

signals:
    void archiveOpened();
    void openFailed(const QString& reason);
    void signInShown(app::SignInDialog* dialog);
    void peopleShown(app::PeopleDialog* dialog);
    void taskShown(app::TaskDialog* dialog);

protected:
    void closeEvent(QCloseEvent* event) override;

private:
    void makeWorkplaces();
    void makeMenus();
    void makePeopleMenu();
    void makeStatusBar();
    void chooseArchive();
    void openPrepared(const QString& path, const QString& busy,
                      std::function<model::Result<void>()> prepare);
    void onOpened(model::Result<ArchiveThread::Opened> opened);
    void onSessionChanged();
    /// Once somebody has said what becomes of what is typed at the reference workplace.
    void afterReference(std::function<void()> go);
    void reloadCastings();
    void sayOnlyForReading(const model::Error& why);
    void askWhatIsLost();
    void reloadTables();
    void askForIdleMinutes();
    void setSavedText(const QString& text, bool loud);
    void refreshTitle();
    void showKeys();
    void askAboutUnsaved();
    [[nodiscard]] bool isOpen() const;

    ArchiveThread archive_;
    Session session_;
    LongTask long_;
    ArchiveThread::Opened opened_;
    QStackedWidget* pages_;
    StartPage* start_;
    BenchPage* bench_;
    ReleasePage* release_;
    FindingPage* finding_;
    ReferencePage* reference_;
    WorkplaceBar* bar_;
    NoticeBar* reading_;
    NoticeBar* notice_;
    QLabel* demonstration_;
    QLabel* saved_;
    QProgressBar* busy_;
    QAction* signInAction_ = nullptr;
    QAction* signOutAction_ = nullptr;
    QAction* passphraseAction_ = nullptr;
    QAction* peopleAction_ = nullptr;
    QString casting_;
    bool isDemonstration_ = false;
    bool asked_ = false;  ///< the sign-in was offered for this archive
    bool closing_ = false;
};

}  // namespace app
