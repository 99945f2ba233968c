// SPDX-License-Identifier: Apache-2.0
// Judges on a thread of its own. The latest state wins: a state that was asked for while another
// is being judged replaces every one that still waits.
#pragma once

#include <QObject>
#include <condition_variable>
#include <memory>
#include <mutex>
#include <optional>

#include "editing/live_verdict.h"

class QThread;

namespace app {

class JudgingWorker : public QObject {
    Q_OBJECT

public:
    explicit JudgingWorker(QObject* parent = nullptr);
    ~JudgingWorker() override;

    /// Returns at once; `generation` comes back with the verdict.
    void judge(model::CastingFile file, std::shared_ptr<const model::TableSet> tables,
               quint64 generation);

signals:
    void judged(std::shared_ptr<const app::LiveVerdict> verdict, quint64 generation);

private:
    struct Task {
        model::CastingFile file;
        std::shared_ptr<const model::TableSet> tables;
        quint64 generation = 0;
    };
    void run();

    std::mutex mutex_;
    std::condition_variable wake_;
    std::optional<Task> waiting_;
    bool stop_ = false;
    std::unique_ptr<QThread> thread_;
};

}  // namespace app
