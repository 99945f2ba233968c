// SPDX-License-Identifier: Apache-2.0
// Judges on a thread of its own. The latest state wins: a state that was asked for while another
// is being judged replaces every one that still waits.
#pragma once

#include <QObject>
#include <memory>

#include "editing/live_verdict.h"

namespace app {

class JudgingWorker : public QObject {
    Q_OBJECT

public:
    explicit JudgingWorker(QObject* parent = nullptr);
    /// Waits a moment for what is being judged. A judgement that takes longer is left to itself:
    /// it ends with its thread, on its own copies, and nobody is told. A program must not return
    /// from main() while one may still be going on.
    ~JudgingWorker() override;

    /// Returns at once, with the ticket that comes back with the verdict; tickets rise.
    quint64 judge(model::CastingFile file, std::shared_ptr<const model::TableSet> tables);

signals:
    void judged(std::shared_ptr<const app::LiveVerdict> verdict, quint64 ticket);

private:
    struct State;
    std::shared_ptr<State> state_;
    quint64 tickets_ = 0;
};

}  // namespace app
