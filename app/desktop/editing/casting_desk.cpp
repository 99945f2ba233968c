// SPDX-License-Identifier: Apache-2.0
#include "editing/casting_desk.h"

namespace app {
namespace {

constexpr int kPatienceMs = 120;

}  // namespace

CastingDesk::CastingDesk(model::CastingFile file, ArchiveThread& archive, JudgingWorker& worker,
                         std::shared_ptr<const model::TableSet> tables, std::string person,
                         QObject* parent)
    : QObject(parent),
      editor_(std::move(file)),
      tables_(std::move(tables)),
      autosave_(editor_, archive, std::move(person)),
      worker_(worker) {
    // Several changes of one turn of the event loop are judged once.
    gather_.setSingleShot(true);
    gather_.setInterval(0);
    connect(&gather_, &QTimer::timeout, this, [this] {
        last_ = worker_.judge(editor_.file(), tables_);
        if (first_ == 0) first_ = last_;
    });
    patience_.setSingleShot(true);
    patience_.setInterval(kPatienceMs);
    connect(&patience_, &QTimer::timeout, this, [this] {
        overdue_ = true;
        emit liveChanged();
    });
    connect(&editor_, &CastingEditor::edited, this, &CastingDesk::change);
    connect(&editor_, &CastingEditor::judgedAnew, this, &CastingDesk::change);
    connect(&worker_, &JudgingWorker::judged, this,
            [this](const std::shared_ptr<const LiveVerdict>& verdict, quint64 ticket) {
                if (first_ == 0 || ticket < first_) return;  // of the casting before
                live_ = verdict;
                answered_ = ticket;
                if (!judging()) {
                    patience_.stop();
                    overdue_ = false;
                }
                emit liveChanged();
            });
    change();
}

void CastingDesk::setTables(std::shared_ptr<const model::TableSet> tables) {
    tables_ = std::move(tables);
    change();
}

void CastingDesk::change() {
    if (!gather_.isActive()) gather_.start();
    if (!patience_.isActive()) patience_.start();
    emit liveChanged();
}

}  // namespace app
