// SPDX-License-Identifier: Apache-2.0
// The release workplace: what waits for release, the certificate as it would be released, what
// stands in the way; and the limit tables with what was attested of them.
#pragma once

#include <QWidget>
#include <functional>
#include <optional>
#include <vector>

#include "archive/lifecycle.h"
#include "editing/session.h"

class QLabel;
class QPushButton;
class QStackedWidget;
class QTabBar;

namespace app {

class AttestationView;
class MarkedList;
class MarkLabel;
class NoticeBar;
class PaperView;
class TaskDialog;

class ReleasePage : public QWidget {
    Q_OBJECT

public:
    /// Both outlive the page.
    ReleasePage(ArchiveThread& archive, Session& session, QWidget* parent = nullptr);

    void setArchive(const ArchiveThread::Opened& opened);
    /// Asks again what waits.
    void reload();

    [[nodiscard]] MarkedList& queue() { return *queue_; }
    [[nodiscard]] PaperView& paper() { return *paper_; }
    [[nodiscard]] AttestationView& attestation() { return *attestation_; }
    [[nodiscard]] NoticeBar& notice() { return *notice_; }
    [[nodiscard]] QTabBar& views() { return *views_; }
    [[nodiscard]] QPushButton& releaseButton() { return *release_; }
    [[nodiscard]] QPushButton& returnButton() { return *return_; }
    [[nodiscard]] QPushButton& endorseButton() { return *endorse_; }
    /// What stands in the way of release by whoever is signed in; empty: nothing.
    [[nodiscard]] QString obstacleText() const;

public slots:
    void releaseIt();
    void returnIt();
    void endorseIt();

signals:
    void waitingChanged(int count);
    /// Asked and shown: certificate, obstacles, what can be done.
    void shown();
    void taskShown(app::TaskDialog* dialog);
    /// A certificate was released, returned or endorsed.
    void queueChanged();
    void tablesChanged();

private:
    struct Looked;
    void makeLayout();
    QWidget* makeQueueView();
    QWidget* makeSide();
    void fillQueue(std::vector<model::Presented> waiting);
    void showCurrent();
    void show(const Looked& looked);
    void showNothing();
    void refreshButtons();
    [[nodiscard]] const model::Presented* current() const;
    using Work = std::function<model::Result<void>(model::Archive&, const model::SignedIn&)>;
    void run(const Work& work, TaskDialog* dialog,
             const std::function<void(model::Result<void>)>& then, const QString& done);
    TaskDialog* signingDialog(const QString& title, const QString& intro, const QString& act);

    ArchiveThread& archive_;
    Session& session_;
    model::ArchiveKind kind_ = model::ArchiveKind::Working;
    std::vector<model::Presented> waiting_;
    std::vector<model::Obstacle> obstacles_;
    bool looked_ = false;      ///< the obstacles are those of what is chosen and who is here
    std::string shownDigest_;  ///< of the document in view

    NoticeBar* notice_ = nullptr;
    QTabBar* views_ = nullptr;
    QStackedWidget* pages_ = nullptr;
    MarkedList* queue_ = nullptr;
    QLabel* empty_ = nullptr;
    PaperView* paper_ = nullptr;
    MarkLabel* mark_ = nullptr;
    QLabel* word_ = nullptr;
    QLabel* facts_ = nullptr;
    QLabel* obstacleTitle_ = nullptr;
    QLabel* obstaclesText_ = nullptr;
    QPushButton* release_ = nullptr;
    QPushButton* return_ = nullptr;
    QPushButton* endorse_ = nullptr;
    AttestationView* attestation_ = nullptr;
};

}  // namespace app
