// SPDX-License-Identifier: Apache-2.0
// How long an order's certificates are kept, whether they are on hold, and their disposal once
// their day is over. A QA manager or an administrator changes it; everybody else may look.
#pragma once

#include <QDialog>
#include <vector>

#include "archive/retention.h"
#include "editing/session.h"

class QLabel;
class QPushButton;
class QTableWidget;

namespace app {

class NoticeBar;
class TaskDialog;

class KeepingDialog : public QDialog {
    Q_OBJECT

public:
    /// Both outlive the dialog.
    KeepingDialog(ArchiveThread& archive, Session& session, std::string order,
                  QWidget* parent = nullptr);

    [[nodiscard]] QString statedText() const;
    [[nodiscard]] QTableWidget& certificates() { return *certificates_; }
    /// Of the chosen certificate: what would go, or why it stays.
    [[nodiscard]] QString leavingText() const;

signals:
    /// What the archive answered is in view.
    void shown();
    void disposed();

private:
    struct Known {
        model::Retention stated;
        std::vector<model::Disposable> certificates;
    };
    void makeLayout();
    void reload();
    void show(Known known);
    void showChosen();
    void refreshButtons();
    void changeDay();
    void changeHold();
    void dispose();
    [[nodiscard]] bool mayChange() const;
    [[nodiscard]] const model::Disposable* chosen() const;

    ArchiveThread& archive_;
    Session& session_;
    std::string order_;
    Known known_;
    NoticeBar* notice_;
    QLabel* stated_;
    QTableWidget* certificates_;
    QLabel* leaving_;
    QLabel* hint_;
    QPushButton* day_ = nullptr;
    QPushButton* hold_ = nullptr;
    QPushButton* dispose_ = nullptr;
};

}  // namespace app
