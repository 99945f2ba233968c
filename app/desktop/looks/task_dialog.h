// SPDX-License-Identifier: Apache-2.0
// A form that does one thing: it says what is missing, does it away from the window's thread,
// stays open with the reason where it was refused, and closes once it is done.
#pragma once

#include <QDialog>
#include <functional>

#include "base/result.h"

class QFormLayout;
class QLabel;
class QPlainTextEdit;
class QProgressBar;
class QPushButton;

namespace app {

class TaskDialog : public QDialog {
    Q_OBJECT

public:
    /// `act` is what the button says: "&Release".
    TaskDialog(const QString& title, const QString& intro, const QString& act,
               QWidget* parent = nullptr);

    using Then = std::function<void(model::Result<void>)>;
    /// Does it, and says once how it ended; not called again before that.
    void setWork(std::function<void(Then)> work) { work_ = std::move(work); }
    /// What is still missing, one sentence; empty: it can be done.
    void setMissing(std::function<QString()> missing);
    /// Something that setMissing() looks at has changed.
    void refresh();
    /// Whether the dialog may be left while it works.
    void setMayLeave(bool may) { mayLeave_ = may; }

    [[nodiscard]] QFormLayout& form() { return *form_; }
    /// A word-wrapped line of the form.
    QLabel* addNote(const QString& text);
    /// A field for a few sentences.
    QPlainTextEdit* addText(const QString& label, const QString& name);

    [[nodiscard]] QPushButton& actButton() { return *act_; }
    [[nodiscard]] QString trouble() const;
    void setTrouble(const QString& text);
    [[nodiscard]] bool working() const { return working_; }
    /// How far the work is; `total` 0: nobody knows.
    void setProgress(qint64 done, qint64 total);

    void accept() override;
    void reject() override;

signals:
    void completed();

private:
    void finish(const model::Result<void>& result);
    void setWorking(bool working);

    std::function<void(Then)> work_;
    std::function<QString()> missing_;
    bool working_ = false;
    bool mayLeave_ = false;
    QWidget* fields_;
    QFormLayout* form_;
    QLabel* trouble_;
    QProgressBar* busy_;
    QPushButton* act_;
    QPushButton* leave_;
};

/// Asks for a reason, which must not be empty, and does something with it.
TaskDialog* reasonDialog(
    const QString& title, const QString& intro, const QString& act,
    std::function<void(std::string reason, TaskDialog* dialog, TaskDialog::Then then)> work,
    QWidget* parent);

}  // namespace app
