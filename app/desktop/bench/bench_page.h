// SPDX-License-Identifier: Apache-2.0
// The inspector's workplace: castings and zones at the left, the zone's surface and its table in
// the middle, the verdict with every check at the right. Nothing is saved by hand.
#pragma once

#include <QWidget>
#include <functional>
#include <memory>

#include "bench/certificate_job.h"
#include "bench/zone_list.h"
#include "editing/archive_thread.h"
#include "editing/casting_desk.h"

class QAction;
class QLabel;
class QSplitter;
class QUndoGroup;

namespace app {

class CastingsPanel;
class ConflictDialog;
class ExaminationPane;
class MarkLabel;
class NoticeBar;
class VerdictPanel;

class BenchPage : public QWidget {
    Q_OBJECT

public:
    /// `archive` outlives the page.
    explicit BenchPage(ArchiveThread& archive, QWidget* parent = nullptr);
    ~BenchPage() override;

    /// Who sits at the bench; stands in the history of what is saved from now on.
    void setPerson(const QString& person);
    /// An archive has been opened: lists its castings.
    void setArchive(const ArchiveThread::Opened& opened);
    void openCasting(const QString& serial);

    /// Takes over what is typed, and calls `then` once all of it is saved; not while saving fails.
    void whenSaved(std::function<void()> then);
    /// What the archive does not hold yet, typed or waiting.
    [[nodiscard]] bool unsaved() const;
    [[nodiscard]] bool savingFails() const;

    /// Actions for the window's menus, in their order; null is a separator.
    struct Actions {
        std::vector<QAction*> archive, edit, view, go;
    };
    [[nodiscard]] const Actions& actions() const { return actions_; }

    // What the page is made of, for whoever arranges or tests it.
    [[nodiscard]] CastingDesk* desk() const { return desk_.get(); }
    [[nodiscard]] CastingsPanel& castings() { return *castings_; }
    [[nodiscard]] ZoneList& zones() { return *zones_; }
    [[nodiscard]] ExaminationPane& examination() { return *pane_; }
    [[nodiscard]] VerdictPanel& verdict() { return *verdict_; }
    [[nodiscard]] NoticeBar& notice() { return *notice_; }

public slots:
    void makeCertificate();
    void begin();

signals:
    void castingShown(const QString& serial);
    void saving();
    void saved(const QDateTime& at);
    void saveFailed(const QString& reason);
    void message(const QString& text);
    void castingLoaded();
    void conflictShown(app::ConflictDialog* dialog);

private:
    void makeLayout();
    void makeActions();
    QAction* addAction(std::vector<QAction*>& menu, const QString& text, const QString& keys,
                       const std::function<void()>& act);
    void install(model::CastingFile file);
    void showLine();
    void refreshLive();
    void refreshHeading();
    void onConflict(int examination, const model::ExaminationDraft& stored);
    void askConflict(int examination);
    void onSaveFailed(const model::Error& error);
    void writeCertificateTo(const QString& path, const QString& name, const QString& address);

    ArchiveThread& archive_;
    ArchiveThread::Opened opened_;
    QString person_;
    JudgingWorker judging_;
    std::unique_ptr<CastingDesk> desk_;
    std::map<int, model::ExaminationDraft> conflicts_;
    CertificateJob certificate_;
    QUndoGroup* undo_;
    Actions actions_;

    CastingsPanel* castings_ = nullptr;
    QLabel* heading_ = nullptr;
    QLabel* facts_ = nullptr;
    MarkLabel* castingMark_ = nullptr;
    QLabel* castingWord_ = nullptr;
    ZoneList* zones_ = nullptr;
    ExaminationPane* pane_ = nullptr;
    VerdictPanel* verdict_ = nullptr;
    NoticeBar* notice_ = nullptr;
};

}  // namespace app
