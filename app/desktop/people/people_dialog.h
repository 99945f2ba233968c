// SPDX-License-Identifier: Apache-2.0
// The people of an archive and their identities. An administrator changes them; everybody else
// may look.
#pragma once

#include <QDialog>
#include <vector>

#include "archive/identities.h"
#include "editing/session.h"

class QLabel;
class QListWidget;
class QPushButton;

namespace app {

class NoticeBar;
class PersonForm;
class TaskDialog;

class PeopleDialog : public QDialog {
    Q_OBJECT

public:
    /// Both outlive the dialog.
    PeopleDialog(Session& session, ArchiveThread& archive, QWidget* parent = nullptr);

    [[nodiscard]] QListWidget& list() { return *list_; }
    [[nodiscard]] PersonForm& form() { return *form_; }
    [[nodiscard]] NoticeBar& notice() { return *notice_; }
    [[nodiscard]] QString identityText() const;

public slots:
    void addPerson();
    void save();

private:
    void makeLayout();
    void fill();
    void showCurrent();
    void showIdentity();
    void refreshButtons();
    void reload();
    void choose(const std::string& id);
    [[nodiscard]] const model::Stored<model::Person>* current() const;
    /// The identity that the person signs with now; null: none.
    [[nodiscard]] const model::StoredIdentity* identityOf(const std::string& person) const;
    void openTask(TaskDialog* dialog);
    [[nodiscard]] bool mayChange() const;

    Session& session_;
    ArchiveThread& archive_;
    std::vector<model::StoredIdentity> identities_;
    bool adding_ = false;
    bool changed_ = false;
    std::string wanted_;  ///< whom to show once the people have come
    NoticeBar* notice_;
    QListWidget* list_;
    PersonForm* form_;
    QLabel* identity_;
    QLabel* hint_;
    QPushButton* save_ = nullptr;
    QPushButton* issue_ = nullptr;
    QPushButton* import_ = nullptr;
    QPushButton* withdraw_ = nullptr;
    QPushButton* add_ = nullptr;
    QPushButton* trust_ = nullptr;
    QPushButton* revoked_ = nullptr;
    QPushButton* authority_ = nullptr;
};

}  // namespace app
