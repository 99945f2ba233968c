// SPDX-License-Identifier: Apache-2.0
// Shown at the first start: what the program is not. Later in the help menu. While the archive has
// no people it also asks who sits here; once it has, who sits here is who signs in.
#pragma once

#include <QDialog>

class QFormLayout;
class QLabel;
class QLineEdit;
class QPushButton;

namespace app {

class Session;

class WelcomeDialog : public QDialog {
    Q_OBJECT

public:
    /// `session` outlives the dialog.
    explicit WelcomeDialog(const Session& session, QWidget* parent = nullptr);
    /// Under which name drafts are kept; empty: that was not asked.
    [[nodiscard]] QString person() const;

    /// Nobody has confirmed it on this account yet.
    static bool due();

private:
    [[nodiscard]] bool asksForName() const;
    void refresh();

    const Session& session_;
    QFormLayout* form_;
    QLineEdit* person_;
    QLabel* why_;
    QPushButton* understood_;
};

}  // namespace app
