// SPDX-License-Identifier: Apache-2.0
// Two people have changed one draft: shows both versions side by side and asks which one counts.
#pragma once

#include <QDialog>

#include "record/records.h"

class QTableWidget;

namespace app {

class ConflictDialog : public QDialog {
    Q_OBJECT

public:
    /// `mayKeep`: false where the other version is signed, so that it stands.
    ConflictDialog(const model::ExaminationDraft& own, const model::ExaminationDraft& stored,
                   bool mayKeep, QWidget* parent = nullptr);

signals:
    void keepOwn();
    void takeStored();
};

}  // namespace app
