// SPDX-License-Identifier: Apache-2.0
// One person as an administrator sees and changes them.
#pragma once

#include <QWidget>
#include <map>

#include "archive/people.h"

class QCheckBox;
class QComboBox;
class QLineEdit;

namespace app {

/// "Ada Bench" -> "ada.bench"; only ASCII letters, digits and dots.
QString shortNameFor(const QString& name);
QString roleText(model::Role role);
/// "inspector, QA manager", in one order.
QString rolesText(const model::Person& person);

class PersonForm : public QWidget {
    Q_OBJECT

public:
    explicit PersonForm(QWidget* parent = nullptr);

    /// `isNew`: the short name can still be chosen.
    void show(const model::Person& person, bool isNew);
    [[nodiscard]] model::Person person() const;
    void setReadOnly(bool readOnly);
    [[nodiscard]] QLineEdit& name() { return *name_; }

signals:
    void edited();

private:
    QLineEdit* name_;
    QLineEdit* id_;
    std::map<model::Role, QCheckBox*> roles_;
    QCheckBox* manufacturing_;
    std::map<model::Method, QComboBox*> levels_;
    QLineEdit* body_;
    QCheckBox* active_;
    bool isNew_ = false;
};

}  // namespace app
