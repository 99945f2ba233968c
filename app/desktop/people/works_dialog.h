// SPDX-License-Identifier: Apache-2.0
// What stands on certificates beside what the archive holds.
#pragma once

#include <QObject>

#include "editing/works.h"

class QLineEdit;
class QPlainTextEdit;

namespace app {

class TaskDialog;

/// The works' fields in a dialog; of a demonstration they are invented and only to be read.
class WorksFields : public QObject {
    Q_OBJECT

public:
    WorksFields(TaskDialog& dialog, model::ArchiveKind kind);
    /// One sentence; empty: nothing is missing.
    [[nodiscard]] QString missing() const;
    /// As typed, and kept for the next time unless it is a demonstration's.
    Works take();

private:
    QLineEdit* name_;
    QPlainTextEdit* address_;
    QLineEdit* place_;
    Works works_;
    bool demonstration_;
};

/// The works, and the time-stamp service.
TaskDialog* worksDialog(model::ArchiveKind kind, QWidget* parent);

}  // namespace app
