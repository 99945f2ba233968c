// SPDX-License-Identifier: Apache-2.0
// Who are you, and the passphrase. After wrong ones the wait is counted down in view.
#pragma once

#include <QTimer>

#include "editing/session.h"
#include "looks/passphrase_field.h"
#include "looks/task_dialog.h"

class QComboBox;

namespace app {

class SignInDialog : public TaskDialog {
    Q_OBJECT

public:
    /// Both outlive the dialog.
    SignInDialog(Session& session, ArchiveThread& archive, QWidget* parent = nullptr);

    [[nodiscard]] QComboBox& person() { return *person_; }
    [[nodiscard]] PassphraseField& passphrase() { return *passphrase_; }
    /// What is left of the wait after wrong passphrases, in seconds.
    [[nodiscard]] int secondsLeft() const { return secondsLeft_; }

private:
    void fill();
    void tryIt(const Then& then);
    void askForWait();
    void showWait();

    Session& session_;
    ArchiveThread& archive_;
    QComboBox* person_;
    PassphraseField* passphrase_;
    QTimer second_;
    int secondsLeft_ = 0;
    bool wrong_ = false;
};

}  // namespace app
