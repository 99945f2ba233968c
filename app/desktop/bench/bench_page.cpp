// SPDX-License-Identifier: Apache-2.0
#include "bench/bench_page.h"

#include <QApplication>
#include <QDate>
#include <QDesktopServices>
#include <QFileInfo>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QStackedWidget>
#include <QUndoGroup>
#include <QUrl>
#include <algorithm>

#include "attachments/attachments_page.h"
#include "bench/castings_panel.h"
#include "bench/cautions_view.h"
#include "bench/certificate_dialog.h"
#include "bench/check_list.h"
#include "bench/conflict_dialog.h"
#include "bench/examination_pane.h"
#include "bench/row_table.h"
#include "bench/surface_view.h"
#include "bench/verdict_panel.h"
#include "certificate/certificate.h"
#include "looks/mark_label.h"
#include "looks/notice_bar.h"
#include "looks/text.h"
#include "repair_bench/repair_page.h"

namespace app {

BenchPage::BenchPage(ArchiveThread& archive, Session& session, QWidget* parent)
    : QWidget(parent), archive_(archive), session_(session), undo_(new QUndoGroup(this)) {
    makeLayout();
    makeActions();
    connect(castings_, &CastingsPanel::castingChosen, this, &BenchPage::openCasting);
    connect(zones_, &ZoneList::lineShown, this, &BenchPage::showLine);
    const auto enter = [this](const QModelIndex& index) {
        const auto* line = zones_->zones().line(index);
        if (!line) return;
        if (line->examination < 0) {
            pane_->beginButton().setFocus();
        } else {
            pane_->enterNewRow();
        }
    };
    connect(zones_, &QListView::activated, this, enter);
    connect(pane_, &ExaminationPane::beginRequested, this, &BenchPage::begin);
    connect(pane_, &ExaminationPane::message, this, &BenchPage::message);
    connect(&verdict_->checks(), &CheckList::checkSelected, this,
            [this] { pane_->pointOut(verdict_->checks().current()); });
    connect(&verdict_->checks(), &QListView::activated, this,
            [this] { pane_->surface().fitFrame(); });
    connect(&certificate_, &CertificateJob::failed, this, [this](const model::Error& error) {
        notice_->say(Mark::Fails, tr("No certificate was written. %1").arg(errorText(error)),
                     {{tr("Close"), {}}});
    });
    connect(&certificate_, &CertificateJob::written, this, [this](const QString& path) {
        notice_->say(
            Mark::Passes, tr("Certificate, marked NOT RELEASED, written to %1").arg(path),
            {{tr("Open it"), [path] { QDesktopServices::openUrl(QUrl::fromLocalFile(path)); }},
             {tr("Show the folder"),
              [path] {
                  QDesktopServices::openUrl(QUrl::fromLocalFile(QFileInfo(path).absolutePath()));
              }},
             {tr("Close"), {}}});
    });
    connect(&session_, &Session::changed, this, &BenchPage::refreshLocks);
    connect(attachments_, &AttachmentsPage::kept, this, &BenchPage::reloadRegisters);
    connect(attachments_, &AttachmentsPage::message, this, &BenchPage::message);
    connect(repairs_, &RepairPage::kept, this, &BenchPage::reloadRegisters);
    connect(repairs_, &RepairPage::message, this, &BenchPage::message);
    connect(repairs_, &RepairPage::reexaminationWanted, this, &BenchPage::reexamine);
    connect(repairs_, &RepairPage::examinationWanted, this, [this](int examination) {
        zones_->setCurrentIndex(zones_->zones().indexOfExamination(examination));
        showZone();
    });
    // Going to another program saves as well.
    connect(qApp, &QGuiApplication::applicationStateChanged, this,
            [this](Qt::ApplicationState now) {
                if (now != Qt::ApplicationActive && desk_) desk_->autosave().saveNow();
            });
}

BenchPage::~BenchPage() = default;

void BenchPage::setPerson(const QString& person) {
    person_ = person;
    refreshPeople();
    if (desk_) desk_->autosave().setPerson(actorName());
}

void BenchPage::setArchive(const ArchiveThread::Opened& opened) {
    opened_ = opened;
    pane_->show(nullptr, nullptr);
    verdict_->show(nullptr, -1);
    zones_->zones().show(nullptr);
    attachments_->show(nullptr);
    repairs_->show(nullptr);
    repairs_->setKind(opened_.kind);
    desk_.reset();
    refreshCastingPages();
    life_ = {};
    conflicts_.clear();
    notice_->takeBack();
    refreshHeading();
    refreshStrips();
    archive_.ask(
        [](model::Archive& held) { return held.castings(); }, this,
        [this](model::Result<std::vector<model::Casting>> castings) {
            if (castings) {
                castings_->setCastings(*castings);
                castings_->searchField().setFocus();
            } else {
                notice_->say(Mark::Fails, errorText(castings.error()), {{tr("Close"), {}}});
            }
        });
}

void BenchPage::setTables(const std::shared_ptr<const model::TableSet>& tables) {
    opened_.tables = tables;
    if (desk_) desk_->setTables(tables);
}

void BenchPage::openCasting(const QString& serial) {
    if (desk_ && qt(desk_->editor().file().casting.serial) == serial) {
        zones_->setFocus();
        return;
    }
    whenSaved([this, serial] {
        struct Loaded {
            model::CastingFile file;
            CastingLife life;
            HeldRegisters held;
        };
        archive_.ask(
            [name = serial.toStdString()](model::Archive& held) -> model::Result<Loaded> {
                auto file = held.casting(name);
                if (!file) return file.error();
                auto life = castingLife(held, name);
                if (!life) return life.error();
                auto registers = heldRegisters(held, name);
                if (!registers) return registers.error();
                return Loaded{std::move(*file), std::move(*life), std::move(*registers)};
            },
            this,
            [this](model::Result<Loaded> loaded) {
                if (loaded) {
                    install(std::move(loaded->file), std::move(loaded->life),
                            std::move(loaded->held));
                } else {
                    notice_->say(Mark::Fails, sentence(loaded.error()), {{tr("Close"), {}}});
                }
            });
    });
}

void BenchPage::install(model::CastingFile file, CastingLife life, HeldRegisters held) {
    pane_->show(nullptr, nullptr);
    verdict_->show(nullptr, -1);
    zones_->zones().show(nullptr);
    conflicts_.clear();
    auto desk = std::make_unique<CastingDesk>(std::move(file), archive_, judging_, opened_.tables,
                                              actorName());
    life_ = std::move(life);
    applyLife(desk->editor(), life_);
    desk->editor().setRegisters(std::move(held));
    undo_->addStack(&desk->editor().undoStack());
    desk_ = std::move(desk);
    refreshLocks();
    connect(desk_.get(), &CastingDesk::liveChanged, this, &BenchPage::refreshLive);
    connect(&desk_->autosave(), &Autosave::saving, this, &BenchPage::saving);
    connect(&desk_->autosave(), &Autosave::saved, this, [this](const QDateTime& at) {
        if (conflicts_.empty() && notice_->objectName() == "saveFailure") notice_->takeBack();
        emit saved(at);
    });
    connect(&desk_->autosave(), &Autosave::failed, this, &BenchPage::onSaveFailed);
    connect(&desk_->autosave(), &Autosave::conflict, this, &BenchPage::onConflict);
    const auto lookAt = [this](int examination) {  // an undo may change another zone
        if (examination != pane_->examination()) {
            zones_->setCurrentIndex(zones_->zones().indexOfExamination(examination));
        }
    };
    connect(&desk_->editor(), &CastingEditor::rowsReplaced, this, lookAt);
    connect(&desk_->editor(), &CastingEditor::detailsChanged, this, lookAt);
    connect(&desk_->editor(), &CastingEditor::conditionsChanged, this, lookAt);
    zones_->zones().show(desk_.get());
    castings_->setCurrent(qt(desk_->editor().file().casting.serial));
    zones_->setCurrentIndex(zones_->zones().index(0));
    zones_->setFocus();
    refreshCastingPages();
    refreshHeading();
    emit castingShown(qt(desk_->editor().file().casting.serial));
    emit castingLoaded();
}

void BenchPage::showLine() {
    if (!desk_) return;
    pane_->finishEditing();
    middle_->setCurrentWidget(pane_);
    const auto* line = zones_->zones().line(zones_->currentIndex());
    pane_->show(desk_.get(), line);
    verdict_->show(desk_.get(), line ? line->examination : -1);
    refreshStrips();
}

void BenchPage::begin() {
    const auto* line = desk_ ? zones_->zones().line(zones_->currentIndex()) : nullptr;
    if (!line || line->examination >= 0 || line->zone < 0 || !line->test) return;
    if (!session_.mayEnter()) {
        emit message(session_.whyNot());
        return;
    }
    const auto& zone = desk_->editor().file().plan.zones[static_cast<std::size_t>(line->zone)];
    const model::RequiredTest& test = *line->test;
    const int examination = desk_->editor().begin(
        zone, test, actorName(), QDate::currentDate().toString(Qt::ISODate).toStdString());
    zones_->zones().show(desk_.get());
    zones_->setCurrentIndex(zones_->zones().indexOfExamination(examination));
    showLine();
    pane_->cautions().setOpen(false);  // they stood on the page before
    pane_->enterNewRow();
}

void BenchPage::refreshLive() {
    zones_->zones().refresh();
    verdict_->refresh();
    if (desk_ && !desk_->judging()) {
        pane_->refreshLive();
        refreshHeading();
        refreshStripWord();
    }
}

void BenchPage::refreshHeading() {
    castingMark_->setVisible(desk_ != nullptr);
    castingWord_->setVisible(desk_ != nullptr);
    if (!desk_) {
        heading_->setText(tr("No casting on the bench"));
        facts_->setText(QString());
        return;
    }
    const auto& file = desk_->editor().file();
    heading_->setText(tr("Casting %1").arg(qt(file.casting.serial)));
    facts_->setText(tr("%1\nHeat %2 · order %3\n%4")
                        .arg(qt(file.part.description), qt(file.casting.heat),
                             qt(file.order.number), qt(file.order.customer)));
    const auto lines = zoneLines(file);
    const auto notBegun =
        std::ranges::count_if(lines, [](const ZoneLine& line) { return line.examination < 0; });
    model::Word word = model::Word::NotJudged;
    if (const auto& live = desk_->live()) {
        word = live->complete ? reports::resultOf(file, *live->complete)
                              : std::max(live->worst(), model::Word::NotJudged);
    }
    const bool known = desk_->live() && !desk_->overdue();
    castingMark_->setMark(known ? markOf(word) : Mark::NotBegun);
    QString text = known ? tr("%1 as a whole").arg(wordText(word)) : tr("judging…");
    if (notBegun > 0) {
        text += tr(", tests not begun: %1").arg(notBegun);
    }
    castingWord_->setText(text);
}

void BenchPage::whenSaved(std::function<void()> then) {
    pane_->finishEditing();
    if (!desk_ || !desk_->autosave().unsaved()) {
        then();
        return;
    }
    auto* once = new QObject(desk_.get());
    connect(&desk_->autosave(), &Autosave::settled, once, [once, then = std::move(then)] {
        once->deleteLater();
        // Out of the desk's own signal: what follows may replace the desk.
        QMetaObject::invokeMethod(qApp, then, Qt::QueuedConnection);
    });
    desk_->autosave().saveNow();
    for (const auto& [examination, stored] : conflicts_) {
        askConflict(examination);
        break;
    }
}

bool BenchPage::unsaved() const {
    return desk_ && desk_->autosave().unsaved();
}
bool BenchPage::savingFails() const {
    return desk_ && desk_->autosave().failing();
}

void BenchPage::onSaveFailed(const model::Error& error) {
    notice_->setObjectName("saveFailure");
    notice_->say(Mark::Fails,
                 tr("NOT SAVED. %1. What you typed is still here and is tried again every few "
                    "seconds.")
                     .arg(errorText(error)),
                 {{tr("Try now"),
                   [this] {
                       if (desk_) desk_->autosave().saveNow();
                   }}},
                 true);
    emit saveFailed(errorText(error));
}

void BenchPage::onConflict(int examination, const model::ExaminationDraft& stored) {
    conflicts_[examination] = stored;
    reloadLife();  // it may have been signed meanwhile
    const auto& header = desk_->editor().draft(examination).header;
    notice_->setObjectName("conflict");
    notice_->say(Mark::Open,
                 tr("NOT SAVED. Somebody else has changed zone %1, %2 meanwhile.")
                     .arg(qt(header.zone), methodText(header.method)),
                 {{tr("Compare both versions"), [this, examination] { askConflict(examination); }}},
                 true);
    emit saveFailed(tr("changed by somebody else"));
    askConflict(examination);
}

void BenchPage::askConflict(int examination) {
    if (!desk_ || !conflicts_.contains(examination)) return;
    auto* dialog = new ConflictDialog(desk_->editor().draft(examination), conflicts_[examination],
                                      !desk_->editor().locked(examination), this);
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    connect(dialog, &ConflictDialog::keepOwn, this, [this, examination] {
        conflicts_.erase(examination);
        notice_->takeBack();
        desk_->autosave().keepOwn(examination);
    });
    connect(dialog, &ConflictDialog::takeStored, this, [this, examination] {
        conflicts_.erase(examination);
        notice_->takeBack();
        desk_->autosave().takeStored(examination);
    });
    connect(dialog, &QDialog::rejected, this, [this, examination] {
        const auto& header = desk_->editor().draft(examination).header;
        notice_->say(
            Mark::Open,
            tr("NOT SAVED. Zone %1, %2 waits for a choice between two versions.")
                .arg(qt(header.zone), methodText(header.method)),
            {{tr("Compare both versions"), [this, examination] { askConflict(examination); }}},
            true);
    });
    dialog->open();
    emit conflictShown(dialog);
}

void BenchPage::makeCertificate() {
    if (!desk_ || certificate_.running()) return;
    const QString serial = qt(desk_->editor().file().casting.serial);
    const bool incomplete = desk_->live() && !desk_->live()->complete;
    auto* dialog = new CertificateDialog(serial, opened_.kind == model::ArchiveKind::Demonstration,
                                         incomplete, this);
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    connect(dialog, &QDialog::accepted, this, [this, dialog] {
        writeCertificateTo(dialog->path(), dialog->worksName(), dialog->worksAddress());
    });
    dialog->open();
}

void BenchPage::writeCertificateTo(const QString& path, const QString& name,
                                   const QString& address) {
    whenSaved([this, path, name, address] {
        if (!desk_) return;
        reports::Issue issue;
        issue.date = QDate::currentDate().toString(Qt::ISODate).toStdString();
        issue.worksName = name.toStdString();
        issue.worksAddress = address.toStdString();
        issue.demonstration = opened_.kind == model::ArchiveKind::Demonstration;
        issue.programVersion = QApplication::applicationVersion().toStdString();
        certificate_.start(archive_, desk_->tables(), desk_->editor().file().casting.serial,
                           std::move(issue), path.toStdString());
    });
}

}  // namespace app
