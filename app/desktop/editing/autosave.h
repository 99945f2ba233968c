// SPDX-License-Identifier: Apache-2.0
// Saves every accepted edit as a draft without being asked: 0.4 s after the first unsaved edit at
// the latest, so that typing does not put it off. What could not be saved is tried again until it
// is, and said aloud meanwhile; what somebody else has changed is never overwritten unasked.
#pragma once

#include <QDateTime>
#include <QObject>
#include <QTimer>
#include <map>
#include <optional>
#include <string>

#include "base/result.h"
#include "editing/casting_editor.h"

namespace app {

class ArchiveThread;

class Autosave : public QObject {
    Q_OBJECT

public:
    /// Both outlive the autosave. `person` stands in the history as who saved.
    Autosave(CastingEditor& editor, ArchiveThread& archive, std::string person,
             QObject* parent = nullptr);

    void setPerson(std::string person) { person_ = std::move(person); }
    /// Saves what is unsaved now: on leaving a field, a casting, the program.
    void saveNow();
    /// Edits that the archive does not hold yet.
    [[nodiscard]] bool unsaved() const;
    /// A save failed and has not succeeded since.
    [[nodiscard]] bool failing() const { return failing_; }

    /// Answers to conflict(): the own version goes over the stored one, or the stored one is taken.
    void keepOwn(int examination);
    void takeStored(int examination);

signals:
    void saving();
    void saved(const QDateTime& at);
    void failed(const model::Error& error);
    void conflict(int examination, const model::ExaminationDraft& stored);
    /// Nothing is unsaved any more.
    void settled();

private:
    struct Slot {
        bool pending = false;
        bool inFlight = false;
        std::optional<model::ExaminationDraft> stored;    ///< what the archive holds, if known
        std::optional<model::ExaminationDraft> opponent;  ///< a conflict that waits for an answer
    };
    void note(int examination);
    void send(int examination);
    void finish(int examination, const model::ExaminationDraft& sent,
                model::Result<model::ExaminationDraft> answer);
    void askForOpponent(int examination, const model::Error& error);
    void fail(const model::Error& error);

    CastingEditor& editor_;
    ArchiveThread& archive_;
    std::string person_;
    std::map<int, Slot> slots_;
    QTimer delay_;
    QTimer again_;
    bool failing_ = false;
};

}  // namespace app
