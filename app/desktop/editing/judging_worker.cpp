// SPDX-License-Identifier: Apache-2.0
#include "editing/judging_worker.h"

#include <chrono>
#include <condition_variable>
#include <mutex>
#include <optional>
#include <thread>
#include <utility>

namespace app {
namespace {

struct Task {
    model::CastingFile file;
    std::shared_ptr<const model::TableSet> tables;
    quint64 ticket = 0;
};

}  // namespace

/// Shared by the worker and its thread, so that either may end first.
struct JudgingWorker::State {
    std::mutex mutex;
    std::condition_variable wake;
    std::optional<Task> waiting;
    JudgingWorker* receiver = nullptr;  ///< null: stop
    bool ended = false;

    std::optional<Task> next() {
        std::unique_lock lock(mutex);
        wake.wait(lock, [this] { return !receiver || waiting; });
        if (!receiver) return std::nullopt;
        return std::exchange(waiting, std::nullopt);
    }

    void tell(std::shared_ptr<const LiveVerdict> verdict, quint64 ticket) {
        const std::lock_guard lock(mutex);
        if (!receiver) return;
        QMetaObject::invokeMethod(
            receiver,
            [to = receiver, verdict = std::move(verdict), ticket] {
                emit to->judged(verdict, ticket);
            },
            Qt::QueuedConnection);
    }

    void run() {
        while (auto task = next()) {
            tell(std::make_shared<const LiveVerdict>(judgeLive(task->file, *task->tables)),
                 task->ticket);
        }
        const std::lock_guard lock(mutex);
        ended = true;
        wake.notify_all();
    }
};

JudgingWorker::JudgingWorker(QObject* parent) : QObject(parent), state_(std::make_shared<State>()) {
    state_->receiver = this;
    std::thread([state = state_] { state->run(); }).detach();
}

JudgingWorker::~JudgingWorker() {
    std::unique_lock lock(state_->mutex);
    state_->receiver = nullptr;
    state_->wake.notify_all();
    state_->wake.wait_for(lock, std::chrono::milliseconds(100), [this] { return state_->ended; });
}

quint64 JudgingWorker::judge(model::CastingFile file,
                             std::shared_ptr<const model::TableSet> tables) {
    {
        const std::lock_guard lock(state_->mutex);
        state_->waiting = Task{std::move(file), std::move(tables), ++tickets_};
    }
    state_->wake.notify_all();
    return tickets_;
}

}  // namespace app
