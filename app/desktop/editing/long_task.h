// SPDX-License-Identifier: Apache-2.0
// Work of minutes, as verifying or copying a whole archive, in a thread of its own with a
// connection of its own, so that saving and looking go on meanwhile.
#pragma once

#include <QObject>
#include <QPointer>
#include <QThread>
#include <atomic>
#include <memory>
#include <utility>

#include "archive/archive.h"

namespace app {

class LongTask : public QObject {
    Q_OBJECT

public:
    explicit LongTask(QObject* parent = nullptr) : QObject(parent) {}
    /// Stops the work and waits for it to notice.
    ~LongTask() override {
        cancel();
        if (thread_) thread_->wait();
    }

    /// Runs `work(const model::Progress&)`, which returns a Result, in its own thread, and `then`
    /// with what it returned on this one. One at a time.
    template <class Work, class Then>
    void start(Work work, Then then) {
        using Answer = std::invoke_result_t<Work, const model::Progress&>;
        if (running_) return;
        running_ = true;
        *stop_ = false;
        if (thread_) thread_->wait();
        thread_.reset(QThread::create([this, work = std::move(work), then = std::move(then),
                                       stop = stop_]() mutable {
            const model::Progress progress = [this, stop](std::int64_t done, std::int64_t total) {
                emit progressed(done, total);
                return !*stop;
            };
            auto answer = std::make_shared<Answer>(work(progress));
            QMetaObject::invokeMethod(
                this,
                [this, answer, then = std::move(then)]() mutable {
                    running_ = false;
                    then(std::move(*answer));
                },
                Qt::QueuedConnection);
        }));
        thread_->start();
    }

    [[nodiscard]] bool running() const { return running_; }
    /// The work stops at its next step, with Refused.
    void cancel() { *stop_ = true; }

signals:
    /// Comes from the task's own thread: connect it to an object of the window's.
    void progressed(qint64 done, qint64 total);

private:
    std::unique_ptr<QThread> thread_;
    std::shared_ptr<std::atomic<bool>> stop_ = std::make_shared<std::atomic<bool>>(false);
    bool running_ = false;
};

}  // namespace app
