// SPDX-License-Identifier: Apache-2.0
// What came of something, to read at leisure: a mark, a line that says it, and the particulars.
#pragma once

#include <QDialog>
#include <QStringList>
#include <optional>

#include "looks/mark.h"

class QListWidget;

namespace app {

class ReportDialog : public QDialog {
    Q_OBJECT

public:
    ReportDialog(const QString& title, std::optional<Mark> mark, const QString& headline,
                 const QString& text, const QStringList& lines, QWidget* parent = nullptr);

    [[nodiscard]] QString headline() const { return headline_; }
    [[nodiscard]] QStringList lines() const { return lines_; }

private:
    QString headline_;
    QStringList lines_;
};

}  // namespace app
