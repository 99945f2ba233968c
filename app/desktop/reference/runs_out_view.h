// SPDX-License-Identifier: Apache-2.0
// What runs out in the next 60 days or has run out: calibrations, checks, batches, certificates,
// eye tests. What is overdue comes first; mark, word and colour say it.
#pragma once

#include <QWidget>

#include "editing/archive_thread.h"
#include "reference/runs_out_lines.h"

class QLabel;
class QLineEdit;
class QTableWidget;

namespace app {

class NoticeBar;

class RunsOutView : public QWidget {
    Q_OBJECT

public:
    static constexpr int kDays = 60;

    /// `archive` outlives the view.
    explicit RunsOutView(ArchiveThread& archive, QWidget* parent = nullptr);

    void clear();
    void reload();
    /// How many have run out already.
    [[nodiscard]] int overdue() const;
    [[nodiscard]] QTableWidget& table() { return *table_; }
    [[nodiscard]] QLineEdit& find() { return *find_; }
    [[nodiscard]] NoticeBar& notice() { return *notice_; }

signals:
    void counted();  ///< the list has come
    /// Somebody wants to see this entry.
    void wanted(const QString& registerName, const QString& key);

protected:
    void changeEvent(QEvent* event) override;

private:
    void fill();
    void filter();

    ArchiveThread& archive_;
    std::vector<RunsOutLine> lines_;
    NoticeBar* notice_;
    QLineEdit* find_;
    QTableWidget* table_;
    QLabel* count_;
};

}  // namespace app
