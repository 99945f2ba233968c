// SPDX-License-Identifier: Apache-2.0
// The inspector's workplace: castings and zones at the left, the zone's surface and its table in
// the middle, the verdict with every check at the right. Nothing is saved by hand.
#pragma once

#include <QWidget>
#include <functional>
#include <memory>

#include "bench/certificate_job.h"
#include "bench/record_strip.h"
#include "bench/zone_list.h"
#include "editing/archive_thread.h"
#include "editing/casting_desk.h"
#include "editing/casting_life.h"
#include "editing/session.h"

class QAction;
class QLabel;
class QPushButton;
class QSplitter;
class QStackedWidget;
class QUndoGroup;

namespace app {

class AttachmentsPage;
class CastingsPanel;
class ConflictDialog;
class ExaminationPane;
class MarkLabel;
class NoticeBar;
class RepairPage;
class SignDialog;
class VerdictPanel;

class BenchPage : public QWidget {
    Q_OBJECT

public:
    /// Both outlive the page.
    BenchPage(ArchiveThread& archive, Session& session, QWidget* parent = nullptr);
    ~BenchPage() override;

    /// Who sits at the bench; stands in the history of what is saved from now on, in an archive
    /// without people.
    void setPerson(const QString& person);
    [[nodiscard]] const QString& person() const { return person_; }
    /// An archive has been opened: lists its castings.
    void setArchive(const ArchiveThread::Opened& opened);
    void openCasting(const QString& serial);
    /// The limit tables have changed, as by an attestation.
    void setTables(const std::shared_ptr<const model::TableSet>& tables);

    /// Takes over what is typed, and calls `then` once all of it is saved; not while saving fails.
    void whenSaved(std::function<void()> then);
    /// What the archive does not hold yet, typed or waiting.
    [[nodiscard]] bool unsaved() const;
    [[nodiscard]] bool savingFails() const;

    /// Actions for the window's menus, in their order; null is a separator.
    struct Actions {
        std::vector<QAction*> archive, edit, view, go, sign;
    };
    [[nodiscard]] const Actions& actions() const { return actions_; }

    // What the page is made of, for whoever arranges or tests it.
    [[nodiscard]] CastingDesk* desk() const { return desk_.get(); }
    [[nodiscard]] CastingsPanel& castings() { return *castings_; }
    [[nodiscard]] ZoneList& zones() { return *zones_; }
    [[nodiscard]] ExaminationPane& examination() { return *pane_; }
    [[nodiscard]] AttachmentsPage& attachments() { return *attachments_; }
    [[nodiscard]] RepairPage& repairs() { return *repairs_; }
    [[nodiscard]] VerdictPanel& verdict() { return *verdict_; }
    [[nodiscard]] NoticeBar& notice() { return *notice_; }
    [[nodiscard]] RecordStrip& recordStrip() { return *recordStrip_; }
    [[nodiscard]] RecordStrip& castingStrip() { return *castingStrip_; }
    [[nodiscard]] const CastingLife& life() const { return life_; }

public slots:
    void makeCertificate();
    void begin();
    /// Shows what would be signed, and signs it.
    void sign();
    void present();
    /// Asks the archive again where the casting stands.
    void reloadLife();
    /// The photos and files, and the nonconformances, of the casting; in place of the zone.
    void showAttachments();
    void showRepairs();
    void showZone();
    /// Asks the archive's registers again.
    void reloadRegisters();

signals:
    /// A key asks for something of the bench while another workplace is shown.
    void wanted();
    void castingShown(const QString& serial);
    void saving();
    void saved(const QDateTime& at);
    void saveFailed(const QString& reason);
    void message(const QString& text);
    void castingLoaded();
    void registersLoaded();
    void conflictShown(app::ConflictDialog* dialog);
    void signShown(app::SignDialog* dialog);
    /// Where the casting stands has been asked and is shown.
    void lifeShown();
    void presented(qint64 number);

protected:
    void showEvent(QShowEvent* event) override;
    void hideEvent(QHideEvent* event) override;

private:
    void makeLayout();
    void makeActions();
    QAction* addAction(std::vector<QAction*>& menu, const QString& text, const QString& keys,
                       const std::function<void()>& act);
    void install(model::CastingFile file, CastingLife life, HeldRegisters held);
    void refreshPeople();
    void refreshCastingPages();
    QWidget* castingPage(QWidget* page);
    void openNonconformance();
    void reexamine(int found, const std::string& nonconformance, qint64 record);
    void refreshLocks();
    void refreshUndo(bool visible);
    void refreshStrips();
    void refreshRecordStrip();
    void refreshStripWord();
    std::vector<RecordStrip::Act> nonconformanceAct();
    [[nodiscard]] std::optional<model::Word> wordInView() const;
    void refreshCastingStrip();
    [[nodiscard]] std::string actorName() const;
    [[nodiscard]] QString whyNotSign() const;
    [[nodiscard]] QString whyNotPresent() const;
    void whenJudged(std::function<void()> then);
    void signAct(const QString& title, const QString& intro, const QString& act,
                 std::function<model::Result<void>(model::Archive&, const std::string&,
                                                   const model::SignedIn&)>
                     work);
    void invalidate();
    void reopen();
    void showLine();
    void refreshLive();
    void refreshHeading();
    void onConflict(int examination, const model::ExaminationDraft& stored);
    void askConflict(int examination);
    void onSaveFailed(const model::Error& error);
    void writeCertificateTo(const QString& path, const QString& name, const QString& address);

    ArchiveThread& archive_;
    Session& session_;
    ArchiveThread::Opened opened_;
    QString person_;
    JudgingWorker judging_;
    std::unique_ptr<CastingDesk> desk_;
    CastingLife life_;
    std::optional<model::Word> stripWord_;  ///< by which the strip offers what it offers
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
    QPushButton* attachmentsButton_ = nullptr;
    QPushButton* repairsButton_ = nullptr;
    QStackedWidget* middle_ = nullptr;
    ExaminationPane* pane_ = nullptr;
    AttachmentsPage* attachments_ = nullptr;
    RepairPage* repairs_ = nullptr;
    VerdictPanel* verdict_ = nullptr;
    NoticeBar* notice_ = nullptr;
    RecordStrip* recordStrip_ = nullptr;
    RecordStrip* castingStrip_ = nullptr;
    QAction* signAction_ = nullptr;
    QAction* presentAction_ = nullptr;
};

}  // namespace app
