// SPDX-License-Identifier: Apache-2.0
// A new passphrase, typed twice.
#pragma once

#include <QObject>

#include "looks/passphrase_field.h"

namespace app {

class TaskDialog;

class NewPassphrase : public QObject {
    Q_OBJECT

public:
    /// Adds two lines to the dialog's form; `name` is the first field's object name.
    NewPassphrase(TaskDialog& dialog, const QString& label, const QString& name);

    /// What is wrong with it, one sentence; empty: nothing.
    [[nodiscard]] QString missing() const;
    /// Both fields are empty afterwards.
    Secret take();

private:
    QString label_;
    PassphraseField* first_;
    PassphraseField* again_;
};

}  // namespace app
