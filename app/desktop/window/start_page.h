// SPDX-License-Identifier: Apache-2.0
// What is shown before an archive is open: open one, or look around with the demonstration; and
// what the program is not.
#pragma once

#include <QWidget>

class QLabel;
class QProgressBar;
class QPushButton;

namespace app {

/// What the program states about itself, in a few sentences.
QString programStatement();

class StartPage : public QWidget {
    Q_OBJECT

public:
    explicit StartPage(QWidget* parent = nullptr);
    /// Something is being done that takes a while; empty: nothing is.
    void setBusy(const QString& what);
    void setTrouble(const QString& text);

    [[nodiscard]] QPushButton& openButton() { return *open_; }
    [[nodiscard]] QPushButton& demonstrationButton() { return *demonstration_; }

signals:
    void openRequested();
    void demonstrationRequested();

private:
    QPushButton* open_;
    QPushButton* demonstration_;
    QLabel* trouble_;
    QLabel* busyText_;
    QProgressBar* busy_;
};

}  // namespace app
