// SPDX-License-Identifier: Apache-2.0
// One casting on the bench: its drafts, saved and judged as they change.
#pragma once

#include <QObject>
#include <QTimer>
#include <memory>
#include <string>

#include "editing/autosave.h"
#include "editing/casting_editor.h"
#include "editing/judging_worker.h"

namespace app {

class CastingDesk : public QObject {
    Q_OBJECT

public:
    /// `archive` and `worker` outlive the desk. Judging begins at once.
    CastingDesk(model::CastingFile file, ArchiveThread& archive, JudgingWorker& worker,
                std::shared_ptr<const model::TableSet> tables, std::string person,
                QObject* parent = nullptr);

    CastingEditor& editor() { return editor_; }
    Autosave& autosave() { return autosave_; }
    [[nodiscard]] const std::shared_ptr<const model::TableSet>& tables() const { return tables_; }
    /// Judges by these from now on.
    void setTables(std::shared_ptr<const model::TableSet> tables);

    /// The last verdict; null before the first. It is of the present state unless judging().
    [[nodiscard]] const std::shared_ptr<const LiveVerdict>& live() const { return live_; }
    /// The present state has not been judged yet.
    [[nodiscard]] bool judging() const { return gather_.isActive() || answered_ != last_; }
    /// Judging takes so long that the last verdict must not stand for the present state any more.
    [[nodiscard]] bool overdue() const { return overdue_; }

signals:
    /// A verdict has come, or a new one has become due.
    void liveChanged();

private:
    void change();

    CastingEditor editor_;
    std::shared_ptr<const model::TableSet> tables_;
    Autosave autosave_;
    JudgingWorker& worker_;
    QTimer gather_;
    QTimer patience_;
    bool overdue_ = true;
    std::shared_ptr<const LiveVerdict> live_;
    quint64 first_ = 0;  ///< ticket of the first judgement asked for; 0: none yet
    quint64 last_ = 0;
    quint64 answered_ = 0;
};

}  // namespace app
