// SPDX-License-Identifier: Apache-2.0
// The verdict on the shown examination and why: word, mark and colour, the limit table and whether
// anybody attested it, every check, and the levels that would be met.
#pragma once

#include <QWidget>

#include "editing/casting_desk.h"

class QLabel;
class QScrollArea;

namespace app {

class CheckList;
class MarkLabel;

class VerdictPanel : public QWidget {
    Q_OBJECT

public:
    explicit VerdictPanel(QWidget* parent = nullptr);

    /// Shows one examination of a casting; null: none.
    void show(CastingDesk* desk, int examination);
    /// The verdict has changed, or is due.
    void refresh();

    [[nodiscard]] CheckList& checks() { return *checks_; }
    /// What stands as the verdict now: "not acceptable", "judging…".
    [[nodiscard]] QString word() const;

protected:
    void changeEvent(QEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    void showWord();
    void showDetail();
    void fitRest();
    void showTable(const model::ExaminationVerdict* verdict);
    void showRest(const model::ExaminationVerdict* verdict);

    CastingDesk* desk_ = nullptr;
    int examination_ = -1;
    MarkLabel* mark_;
    QLabel* word_;
    QLabel* under_;
    QLabel* table_;
    QLabel* attested_;
    CheckList* checks_;
    QLabel* detail_;
    QLabel* rest_;
    QScrollArea* below_;
    std::shared_ptr<const LiveVerdict> shown_;
};

}  // namespace app
