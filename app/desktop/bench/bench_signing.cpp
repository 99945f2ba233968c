// SPDX-License-Identifier: Apache-2.0
// The bench between draft and certificate: what is signed, and what can be signed now.
#include <QPushButton>
#include <QUndoGroup>
#include <algorithm>

#include "bench/bench_page.h"
#include "bench/examination_pane.h"
#include "bench/record_strip.h"
#include "bench/sign_dialog.h"
#include "issuing/issue.h"
#include "looks/notice_bar.h"
#include "looks/text.h"
#include "people/works_dialog.h"

namespace app {
namespace {

constexpr int kLevelToInvalidate = 3;

QString actText(const QString& what, const model::SignedAct& act) {
    return BenchPage::tr("%1 by %2 on %3").arg(what, qt(act.name), localTime(act.time));
}

/// Another record that stands and is valid, of the same zone, method, stage and cycle.
bool hasRepeat(const model::CastingFile& file, const CastingLife& life, int examination) {
    const auto& own = file.examinations[static_cast<std::size_t>(examination)];
    return std::ranges::any_of(file.examinations, [&](const model::ExaminationDraft& other) {
        const auto* record = life.standing(other.id);
        return record && !record->invalid && other.id != own.id &&
               other.header.zone == own.header.zone && other.header.method == own.header.method &&
               other.header.stage == own.header.stage &&
               other.header.repairCycle == own.header.repairCycle;
    });
}

}  // namespace

std::string BenchPage::actorName() const {
    return session_.person() ? session_.person()->name : person_.toStdString();
}

void BenchPage::refreshLocks() {
    refreshPeople();
    if (!desk_) {
        refreshStrips();
        return;
    }
    if (!session_.mayEnter()) pane_->finishEditing();
    // What was typed until now was typed by whoever was here until now.
    desk_->autosave().saveNow();
    if (session_.mayEnter()) desk_->autosave().setPerson(actorName());
    desk_->editor().setFrozen(!session_.mayEnter());
    refreshUndo(isVisible());
    refreshStrips();
}

/// Nothing is undone that is not in view, or that nobody may change.
void BenchPage::refreshUndo(bool visible) {
    const bool may = visible && desk_ && session_.mayEnter();
    undo_->setActiveStack(may ? &desk_->editor().undoStack() : nullptr);
}

void BenchPage::showEvent(QShowEvent* event) {
    QWidget::showEvent(event);
    reloadRegisters();  // another workplace may have changed them
    refreshUndo(true);
}

void BenchPage::hideEvent(QHideEvent* event) {
    QWidget::hideEvent(event);
    pane_->finishEditing();
    refreshUndo(false);
}

void BenchPage::reloadLife() {
    if (!desk_) return;
    const std::string serial = desk_->editor().file().casting.serial;
    archive_.ask([serial](model::Archive& held) { return castingLife(held, serial); }, this,
                 [this, serial](model::Result<CastingLife> life) {
                     if (!desk_ || desk_->editor().file().casting.serial != serial) return;
                     if (!life) {
                         notice_->say(Mark::Fails, sentence(life.error()), {{tr("Close"), {}}});
                         return;
                     }
                     life_ = std::move(*life);
                     applyLife(desk_->editor(), life_);
                     refreshStrips();
                     emit lifeShown();
                 });
}

void BenchPage::refreshStrips() {
    if (!desk_ || !session_.hasPeople()) {
        stripWord_ = wordInView();
        recordStrip_->say(std::nullopt, desk_ ? session_.whyNot() : QString(), nonconformanceAct());
        castingStrip_->say(std::nullopt, {}, {});
    } else {
        refreshRecordStrip();
        refreshCastingStrip();
    }
    signAction_->setEnabled(whyNotSign().isEmpty());
    presentAction_->setEnabled(whyNotPresent().isEmpty());
}

QString BenchPage::whyNotSign() const {
    if (!desk_ || pane_->examination() < 0) return tr("Choose an examination first.");
    if (!session_.hasPeople()) return tr("Nobody is set up in this archive yet.");
    if (!session_.mayEnter()) return session_.whyNot();
    return desk_->editor().locked(pane_->examination()) ? tr("It is signed already.") : QString();
}

QString BenchPage::whyNotPresent() const {
    if (!desk_) return tr("Open a casting first.");
    if (!session_.hasPeople()) return tr("Nobody is set up in this archive yet.");
    if (!session_.mayEnter()) return session_.whyNot();
    const auto& drafts = desk_->editor().file().examinations;
    const bool all = !drafts.empty() && std::ranges::all_of(drafts, [&](const auto& draft) {
        return life_.standing(draft.id) != nullptr;
    });
    if (!all) return tr("Every examination that was begun has to be signed first.");
    if (life_.waits()) return tr("It waits for release already.");
    const auto* newest = life_.newest();
    if (newest && newest->state() == model::CertificateState::Released) {
        const bool same = std::ranges::all_of(drafts, [&](const auto& draft) {
            return std::ranges::count(newest->records, life_.standing(draft.id)->id) > 0;
        });
        if (same) return tr("It is released as it stands.");
    }
    return {};
}

/// The word of the examination in view; none: there is none, or it is not judged yet.
std::optional<model::Word> BenchPage::wordInView() const {
    const auto* live = desk_ ? desk_->live().get() : nullptr;
    const auto at = static_cast<std::size_t>(std::max(pane_->examination(), 0));
    if (!live || pane_->examination() < 0 || at >= live->examinations.size()) return std::nullopt;
    return live->examinations[at].word;
}

/// Offered where the examination in view is not acceptable.
std::vector<RecordStrip::Act> BenchPage::nonconformanceAct() {
    if (!desk_ || stripWord_ != model::Word::NotAcceptable || !session_.mayEnter()) return {};
    return {{"openNonconformance", tr("Open a &nonconformance…"), {}, [this] {
                 openNonconformance();
             }}};
}

void BenchPage::refreshStripWord() {
    if (wordInView() != stripWord_) refreshStrips();
}

void BenchPage::refreshRecordStrip() {
    const int examination = pane_->examination();
    if (examination < 0) {
        recordStrip_->say(std::nullopt, session_.whyNot(), {});
        return;
    }
    const auto id = desk_->editor().draft(examination).id;
    std::vector<RecordStrip::Act> acts;
    stripWord_ = wordInView();
    if (stripWord_ == model::Word::NotAcceptable && session_.mayEnter()) {
        acts.push_back({"openNonconformance", tr("Open a &nonconformance…"), {}, [this] {
                            openNonconformance();
                        }});
    }
    if (const auto* record = life_.standing(id)) {
        QString text = actText(tr("Signed"), record->recorded);
        if (record->revision > 1) text += tr(", revision %1").arg(record->revision);
        text += '.';
        if (!record->recorded.reason.empty()) {
            text += ' ' + tr("Rejected although acceptable: %1").arg(qt(record->recorded.reason));
        }
        if (record->invalid) {
            text += '\n' + tr("%1: %2").arg(actText(tr("Declared invalid"), *record->invalid),
                                            qt(record->invalid->reason));
        }
        const auto* person = session_.person();
        const auto method = desk_->editor().draft(examination).header.method;
        if (person && person->levels.contains(method) &&
            person->levels.at(method) >= kLevelToInvalidate && !record->invalid &&
            hasRepeat(desk_->editor().file(), life_, examination)) {
            acts.push_back(
                {"invalidate", tr("Declare it &invalid…"), {}, [this] { invalidate(); }});
        }
        recordStrip_->say(markOf(record->word), text, acts);
        return;
    }
    QStringList lines;
    if (const auto back = life_.givenBack(id)) {
        lines << tr("%1: %2").arg(actText(tr("Given back"), *back), qt(back->reason));
        lines << tr("Put it right and sign it again; what was signed before stays.");
    } else {
        lines << tr("Draft, not signed yet.");
    }
    if (!session_.mayEnter()) lines << session_.whyNot();
    acts.insert(acts.begin(),
                {"sign", tr("S&ign this examination…"), whyNotSign(), [this] { sign(); }});
    recordStrip_->say(Mark::NotBegun, lines.join('\n'), acts);
}

void BenchPage::refreshCastingStrip() {
    const auto& drafts = desk_->editor().file().examinations;
    const auto signedNow = std::ranges::count_if(
        drafts, [&](const auto& draft) { return life_.standing(draft.id) != nullptr; });
    QString text = drafts.empty()
                       ? tr("No examination is begun.")
                       : tr("Signed: %1 of %2 examinations.").arg(signedNow).arg(drafts.size());
    bool released = false;
    if (const auto* newest = life_.newest()) {
        const QString number = tr("Certificate %1").arg(newest->number);
        switch (newest->state()) {
            case model::CertificateState::Waiting:
                text =
                    tr("%1 waits for release, presented by %2 on %3.")
                        .arg(number, qt(newest->presented.name), localTime(newest->presented.time));
                break;
            case model::CertificateState::Returned:
                text += '\n' + tr("%1 was %2: %3")
                                   .arg(number, actText(tr("returned"), *newest->returned),
                                        qt(newest->returned->reason));
                break;
            case model::CertificateState::Withdrawn:
                text += '\n' + tr("%1 was %2: %3")
                                   .arg(number, actText(tr("withdrawn"), *newest->withdrawn),
                                        qt(newest->withdrawn->reason));
                break;
            default:
                released = true;
                text = actText(tr("%1 released").arg(number), *newest->released) + '.' +
                       (signedNow == static_cast<std::ptrdiff_t>(drafts.size()) ? QString()
                                                                                : '\n' + text);
                break;
        }
    }
    std::vector<RecordStrip::Act> acts;
    if (!life_.waits()) {
        acts.push_back(
            {"present", tr("&Present for release…"), whyNotPresent(), [this] { present(); }});
    }
    if (signedNow > 0 && !life_.waits() && session_.has(model::Role::QaManager) &&
        !session_.onlyForReading()) {
        acts.push_back({"reopen",
                        released ? tr("&Reopen for a correction…") : tr("Give &back to the bench…"),
                        {},
                        [this] { reopen(); }});
    }
    castingStrip_->say(std::nullopt, text, acts);
}

void BenchPage::sign() {
    if (!whyNotSign().isEmpty()) {
        emit message(whyNotSign());
        return;
    }
    whenJudged([this] {
        if (!whyNotSign().isEmpty()) return;
        auto* dialog = new SignDialog(*desk_, pane_->examination(), session_, archive_, this);
        connect(dialog, &TaskDialog::completed, this, [this] {
            emit message(tr("Signed."));
            reloadLife();
        });
        dialog->open();
        emit signShown(dialog);
    });
}

/// Once everything is saved and the verdict is of what stands here.
void BenchPage::whenJudged(std::function<void()> then) {
    whenSaved([this, then = std::move(then)] {
        if (!desk_) return;
        if (!desk_->judging()) {
            then();
            return;
        }
        auto* once = new QObject(desk_.get());
        connect(desk_.get(), &CastingDesk::liveChanged, once, [this, once, then] {
            if (desk_->judging()) return;
            once->deleteLater();
            disconnect(desk_.get(), nullptr, once, nullptr);
            QMetaObject::invokeMethod(this, then, Qt::QueuedConnection);
        });
    });
}

void BenchPage::present() {
    if (!whyNotPresent().isEmpty()) {
        emit message(whyNotPresent());
        return;
    }
    const std::string serial = desk_->editor().file().casting.serial;
    auto* dialog = new TaskDialog(
        tr("Present casting %1 for release").arg(qt(serial)),
        tr("The certificate is made from the signed examinations, given a number and signed in "
           "your name. A QA manager who recorded none of them then releases it or gives it back."),
        tr("&Present it"), this);
    dialog->setObjectName("presentDialog");
    auto* works = new WorksFields(*dialog, opened_.kind);
    dialog->setMissing([works] { return works->missing(); });
    dialog->setWork([this, works, serial, dialog](const TaskDialog::Then& then) {
        const Signer signer = session_.signer();
        const auto means = IssueMeans::make(works->take());
        if (!means || !signer) {
            then(means ? model::inputError("", "nobody is signed in any more; sign in again")
                       : means.error());
            return;
        }
        archive_.ask(
            [serial, signer, issue = *means](model::Archive& held) {
                return presentCasting(held, serial, *signer, issue->settings());
            },
            dialog,
            [this, then](const model::Result<std::int64_t>& number) {
                if (!number) {
                    then(number.error());
                    return;
                }
                notice_->say(Mark::Passes,
                             tr("Presented for release as certificate %1.").arg(*number),
                             {{tr("Close"), {}}});
                reloadLife();
                emit presented(*number);
                then({});
            });
    });
    dialog->open();
}

void BenchPage::signAct(
    const QString& title, const QString& intro, const QString& act,
    std::function<model::Result<void>(model::Archive&, const std::string&, const model::SignedIn&)>
        work) {
    reasonDialog(
        title, intro, act,
        [this, work = std::move(work)](const std::string& reason, TaskDialog* dialog,
                                       const TaskDialog::Then& then) {
            const Signer signer = session_.signer();
            if (!signer) {
                then(model::inputError("", "nobody is signed in any more; sign in again"));
                return;
            }
            archive_.ask([signer, reason,
                          work](model::Archive& held) { return work(held, reason, *signer); },
                         dialog,
                         [this, then](const model::Result<void>& result) {
                             if (result) reloadLife();
                             then(result);
                         });
        },
        this)
        ->open();
}

void BenchPage::invalidate() {
    const auto* record = life_.standing(desk_->editor().draft(pane_->examination()).id);
    if (!record) return;
    signAct(tr("Declare the examination invalid"),
            tr("The other examination of this zone then counts instead of the worse of both. Both "
               "stay in the archive and both are printed, with your reason."),
            tr("&Declare it invalid"),
            [id = record->id](model::Archive& held, const std::string& reason,
                              const model::SignedIn& signer) {
                return model::invalidateRecord(held, id, reason, signer);
            });
}

void BenchPage::reopen() {
    signAct(tr("Give the casting back to the bench"),
            tr("Its signed examinations become drafts of their next revision; what was signed "
               "stays. A released certificate stands until it is withdrawn or the next one "
               "supersedes it."),
            tr("&Give it back"),
            [serial = desk_->editor().file().casting.serial](
                model::Archive& held, const std::string& reason, const model::SignedIn& signer) {
                return model::reopen(held, serial, reason, signer);
            });
}

}  // namespace app
