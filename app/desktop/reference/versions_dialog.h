// SPDX-License-Identifier: Apache-2.0
// Every version of an entry: when it was made, by whom, and what it changed.
#pragma once

#include <QDialog>
#include <vector>

#include "reference/register.h"

class QTableWidget;

namespace app {

/// What a version changed against the one before it, one line a field: "Calibration due:
/// 2026-03-01, before 2025-03-01", then one a row of its tables. Of the first: everything that it
/// states.
QStringList changesOf(const Register& of, const Entry* before, const Entry& after);

class VersionsDialog : public QDialog {
    Q_OBJECT

public:
    /// `name` of the entry.
    VersionsDialog(const Register& of, const QString& name,
                   const std::vector<EntryVersion>& versions, QWidget* parent = nullptr);

    [[nodiscard]] QTableWidget& table() { return *table_; }

private:
    QTableWidget* table_;
};

}  // namespace app
