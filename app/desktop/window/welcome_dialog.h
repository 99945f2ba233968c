// SPDX-License-Identifier: Apache-2.0
// Shown at the first start: what the program is not, and who sits at it. Later in the help menu.
#pragma once

#include <QDialog>

class QLineEdit;

namespace app {

class WelcomeDialog : public QDialog {
    Q_OBJECT

public:
    explicit WelcomeDialog(QWidget* parent = nullptr);
    [[nodiscard]] QString person() const;

    /// Nobody has confirmed it on this account yet.
    static bool due();

private:
    QLineEdit* person_;
};

}  // namespace app
