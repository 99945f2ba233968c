// SPDX-License-Identifier: Apache-2.0
#include "editing/autosave.h"

#include <algorithm>

#include "editing/archive_thread.h"

namespace app {
namespace {

constexpr int kDelayMs = 400;
constexpr int kAgainMs = 5000;

}  // namespace

Autosave::Autosave(CastingEditor& editor, ArchiveThread& archive, std::string person,
                   QObject* parent)
    : QObject(parent), editor_(editor), archive_(archive), person_(std::move(person)) {
    for (int i = 0; i < editor_.examinations(); ++i) slots_[i].stored = editor_.draft(i);
    delay_.setSingleShot(true);
    delay_.setInterval(kDelayMs);
    again_.setSingleShot(true);
    again_.setInterval(kAgainMs);
    connect(&delay_, &QTimer::timeout, this, &Autosave::saveNow);
    connect(&again_, &QTimer::timeout, this, &Autosave::saveNow);
    connect(&editor_, &CastingEditor::edited, this, &Autosave::note);
}

bool Autosave::unsaved() const {
    return std::any_of(slots_.begin(), slots_.end(), [](const auto& entry) {
        return entry.second.pending || entry.second.inFlight || entry.second.opponent;
    });
}

void Autosave::note(int examination) {
    auto& slot = slots_[examination];
    slot.pending =
        !(slot.stored && sameContent(*slot.stored, editor_.draft(examination))) || slot.inFlight;
    if (slot.pending && !delay_.isActive()) delay_.start();
}

void Autosave::saveNow() {
    delay_.stop();
    for (auto& [examination, slot] : slots_) {
        if (slot.pending && !slot.inFlight && !slot.opponent) send(examination);
    }
}

void Autosave::send(int examination) {
    auto& slot = slots_[examination];
    slot.pending = false;
    slot.inFlight = true;
    emit saving();
    auto draft = editor_.draft(examination);
    archive_.ask(
        [draft, actor = model::Actor{person_}](
            model::Archive& archive) -> model::Result<model::ExaminationDraft> {
            auto kept = archive.save(draft, actor);
            if (!kept) return kept.error();
            auto stored = draft;
            stored.id = kept->id;
            stored.version = kept->version;
            return stored;
        },
        this,
        [this, examination, draft](model::Result<model::ExaminationDraft> answer) {
            finish(examination, draft, std::move(answer));
        });
}

void Autosave::finish(int examination, const model::ExaminationDraft& sent,
                      model::Result<model::ExaminationDraft> answer) {
    auto& slot = slots_[examination];
    slot.inFlight = false;
    if (!answer) {
        slot.pending = true;
        if (answer.error().kind == model::ErrorKind::Conflict && sent.id != 0) {
            askForOpponent(examination, answer.error());
        } else {
            fail(answer.error());
        }
        return;
    }
    failing_ = false;
    again_.stop();
    editor_.markSaved(examination, answer->id, answer->version);
    slot.stored = std::move(*answer);
    slot.pending = !sameContent(*slot.stored, editor_.draft(examination));
    if (slot.pending && !delay_.isActive()) delay_.start();
    emit saved(QDateTime::currentDateTime());
    if (!unsaved()) emit settled();
}

void Autosave::askForOpponent(int examination, const model::Error& error) {
    const auto id = editor_.draft(examination).id;
    archive_.ask([id](model::Archive& archive) { return archive.draft(id); }, this,
                 [this, examination, error](model::Result<model::ExaminationDraft> stored) {
                     if (!stored) {
                         fail(error);
                         return;
                     }
                     slots_[examination].opponent = *stored;
                     emit conflict(examination, *stored);
                 });
}

void Autosave::fail(const model::Error& error) {
    failing_ = true;
    again_.start();
    emit failed(error);
}

void Autosave::keepOwn(int examination) {
    auto& slot = slots_[examination];
    if (!slot.opponent) return;
    editor_.markSaved(examination, slot.opponent->id, slot.opponent->version);
    slot.opponent.reset();
    slot.pending = true;
    saveNow();
}

void Autosave::takeStored(int examination) {
    auto& slot = slots_[examination];
    if (!slot.opponent) return;
    const auto stored = *slot.opponent;
    slot.opponent.reset();
    slot.stored = stored;
    slot.pending = false;
    editor_.take(examination, stored);
    emit saved(QDateTime::currentDateTime());
    if (!unsaved()) emit settled();
}

}  // namespace app
