// SPDX-License-Identifier: Apache-2.0
// What an inspector signs, in view before it is signed; and whether it is rejected although the
// rules accept it.
#pragma once

#include "editing/casting_desk.h"
#include "editing/session.h"
#include "looks/task_dialog.h"

class QCheckBox;
class QPlainTextEdit;

namespace app {

class SignDialog : public TaskDialog {
    Q_OBJECT

public:
    /// The desk's present state is judged and saved. All outlive the dialog.
    SignDialog(CastingDesk& desk, int examination, Session& session, ArchiveThread& archive,
               QWidget* parent = nullptr);

    /// Null where nothing can be rejected by this person.
    [[nodiscard]] QCheckBox* rejection() { return reject_; }
    [[nodiscard]] QPlainTextEdit* reason() { return reason_; }

private:
    void addVerdict();
    void addFacts();
    void addValidity();
    void addRejection();
    void addStatement();
    [[nodiscard]] QString missing() const;
    void sign(const Then& then);

    CastingDesk& desk_;
    int examination_;
    Session& session_;
    ArchiveThread& archive_;
    QCheckBox* reject_ = nullptr;
    QPlainTextEdit* reason_ = nullptr;
    QString unreadable_;  ///< why it cannot be signed as it stands
    QString invalid_;     ///< the same of the conditions of the test
};

}  // namespace app
