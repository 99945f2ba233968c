// SPDX-License-Identifier: Apache-2.0
// The archive, on a thread of its own: a write may wait seconds for another program, a screen may
// not wait at all. Jobs are done in the order in which they were asked for.
#pragma once

#include <QObject>
#include <QPointer>
#include <QTimer>
#include <condition_variable>
#include <deque>
#include <functional>
#include <memory>
#include <mutex>
#include <optional>
#include <string>
#include <utility>

#include "archive/archive.h"

class QThread;

namespace app {

class ArchiveThread : public QObject {
    Q_OBJECT

public:
    explicit ArchiveThread(QObject* parent = nullptr);
    /// Does the jobs that were asked for, then closes the archive.
    ~ArchiveThread() override;

    struct Opened {
        std::string path;
        model::ArchiveKind kind = model::ArchiveKind::Working;
        std::shared_ptr<const model::TableSet> tables;
        /// Why it is open only for reading; none: it is written too.
        std::optional<model::Error> onlyForReading;
    };

    /// Opens `path` in place of what is open; what was open stays so when this fails. What cannot
    /// be written, because it is damaged or the machine refuses, is opened for reading. `prepare`,
    /// where given, runs first on the thread, as to make the file.
    void open(const std::string& path, QObject* context,
              std::function<void(model::Result<Opened>)> then,
              std::function<model::Result<void>()> prepare = {});

    /// Runs `work(Archive&)`, which returns a Result<T>, on the thread, and `then(Result<T>)` on
    /// the caller's, unless `context` is gone by then. Without an open archive: Input.
    template <class Work, class Then>
    void ask(Work work, QObject* context, Then then) {
        using Answer = std::invoke_result_t<Work, model::Archive&>;
        post([this, work = std::move(work), guard = QPointer<QObject>(context),
              then = std::move(then)](std::optional<model::Archive>& archive) mutable {
            auto answer = std::make_shared<Answer>(
                archive ? work(*archive) : Answer(model::inputError("", "no archive is open")));
            reply([guard, then, answer]() mutable {
                if (guard) then(std::move(*answer));
            });
        });
    }

    /// Jobs asked for and not yet answered.
    [[nodiscard]] int outstanding() const { return outstanding_; }

signals:
    /// True when a job has been going on for 0.2 s, false when all are answered.
    void busy(bool working);

private:
    using Job = std::function<void(std::optional<model::Archive>&)>;
    void post(Job job);
    void reply(std::function<void()> answer);
    void run();

    std::mutex mutex_;
    std::condition_variable wake_;
    std::deque<Job> jobs_;
    bool stop_ = false;
    int outstanding_ = 0;
    bool shownBusy_ = false;
    QTimer patience_;
    std::unique_ptr<QThread> thread_;
};

}  // namespace app
