// SPDX-License-Identifier: Apache-2.0
#include "editing/judging_worker.h"

#include <QThread>
#include <utility>

namespace app {

JudgingWorker::JudgingWorker(QObject* parent) : QObject(parent) {
    thread_.reset(QThread::create([this] { run(); }));
    thread_->start();
}

JudgingWorker::~JudgingWorker() {
    {
        const std::lock_guard lock(mutex_);
        stop_ = true;
    }
    wake_.notify_one();
    thread_->wait();
}

void JudgingWorker::judge(model::CastingFile file, std::shared_ptr<const model::TableSet> tables,
                          quint64 generation) {
    {
        const std::lock_guard lock(mutex_);
        waiting_ = Task{std::move(file), std::move(tables), generation};
    }
    wake_.notify_one();
}

void JudgingWorker::run() {
    while (true) {
        std::optional<Task> task;
        {
            std::unique_lock lock(mutex_);
            wake_.wait(lock, [this] { return stop_ || waiting_.has_value(); });
            if (stop_) return;
            task = std::exchange(waiting_, std::nullopt);
        }
        auto verdict = std::make_shared<const LiveVerdict>(judgeLive(task->file, *task->tables));
        QMetaObject::invokeMethod(
            this,
            [this, verdict = std::move(verdict), generation = task->generation] {
                emit judged(verdict, generation);
            },
            Qt::QueuedConnection);
    }
}

}  // namespace app
