// SPDX-License-Identifier: Apache-2.0
#include "people/person_form.h"

#include <QCheckBox>
#include <QComboBox>
#include <QCoreApplication>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <array>

#include "looks/text.h"

namespace app {
namespace {

using model::Method;
using model::Role;

constexpr std::array kRoles{Role::Inspector, Role::QaManager, Role::ThirdParty, Role::Auditor,
                            Role::Administrator};
constexpr std::array kMethods{Method::Magnetic, Method::Penetrant, Method::Ultrasonic};

QString meaningOf(Role role) {
    const auto tr = [](const char* text) { return QCoreApplication::translate("Roles", text); };
    switch (role) {
        case Role::Inspector:
            return tr("enters findings and signs examinations");
        case Role::QaManager:
            return tr("attests limit tables, releases certificates");
        case Role::ThirdParty:
            return tr("signs certificates of type 3.2");
        case Role::Auditor:
            return tr("reads and verifies everything, changes nothing");
        case Role::Administrator:
            break;
    }
    return tr("looks after people and their identities");
}

}  // namespace

QString shortNameFor(const QString& name) {
    QString plain;
    for (const QChar character : name.normalized(QString::NormalizationForm_KD).toLower()) {
        if (character.unicode() < 128 && character.isLetterOrNumber()) plain += character;
        if (character.isSpace() && !plain.isEmpty() && !plain.endsWith('.')) plain += '.';
    }
    while (plain.endsWith('.')) plain.chop(1);
    return plain.left(64);
}

QString roleText(Role role) {
    return QCoreApplication::translate("Roles", std::string(model::word(role)).c_str());
}

QString rolesText(const model::Person& person) {
    QStringList words;
    for (const Role role : kRoles) {
        if (person.roles.contains(role)) words << roleText(role);
    }
    return words.join(", ");
}

PersonForm::PersonForm(QWidget* parent)
    : QWidget(parent),
      name_(new QLineEdit(this)),
      id_(new QLineEdit(this)),
      manufacturing_(new QCheckBox(tr("belongs to the &manufacturing department"), this)),
      body_(new QLineEdit(this)),
      active_(new QCheckBox(tr("a&ctive: may sign in and sign"), this)) {
    name_->setObjectName("personName");
    name_->setAccessibleName(tr("Name"));
    id_->setObjectName("personId");
    id_->setAccessibleName(tr("Short name"));
    id_->setPlaceholderText(tr("never given to a second person"));
    body_->setPlaceholderText(tr("for a third party: the body it belongs to"));
    body_->setAccessibleName(tr("Acts for"));
    manufacturing_->setToolTip(
        tr("EN 10204:2004: certificates of type 3.1 and 3.2 are released by somebody who does "
           "not belong to the manufacturing department."));
    auto* form = new QFormLayout(this);
    form->setContentsMargins(0, 0, 0, 0);
    form->addRow(tr("&Name"), name_);
    form->addRow(tr("S&hort name"), id_);
    auto* roles = new QVBoxLayout;
    roles->setSpacing(3);
    for (const Role role : kRoles) {
        auto* box = new QCheckBox(tr("%1: %2").arg(roleText(role), meaningOf(role)), this);
        box->setObjectName("role " + roleText(role));
        roles->addWidget(box);
        roles_[role] = box;
        connect(box, &QCheckBox::toggled, this, &PersonForm::edited);
    }
    form->addRow(tr("Roles"), roles);
    auto* levels = new QHBoxLayout;
    for (const Method method : kMethods) {
        auto* combo = new QComboBox(this);
        combo->addItems({tr("none"), tr("Level 1"), tr("Level 2"), tr("Level 3")});
        combo->setAccessibleName(tr("Qualification in %1").arg(methodName(method)));
        auto* label = new QLabel(methodText(method), this);
        label->setBuddy(combo);
        levels->addWidget(label);
        levels->addWidget(combo);
        levels->addSpacing(10);
        levels_[method] = combo;
        connect(combo, &QComboBox::currentIndexChanged, this, &PersonForm::edited);
    }
    levels->addStretch(1);
    form->addRow(tr("Qualified"), levels);
    form->addRow(QString(), manufacturing_);
    form->addRow(tr("Acts &for"), body_);
    form->addRow(QString(), active_);
    connect(name_, &QLineEdit::textEdited, this, [this](const QString& name) {
        if (isNew_ && !id_->isModified()) id_->setText(shortNameFor(name));
        emit edited();
    });
    connect(id_, &QLineEdit::textEdited, this, &PersonForm::edited);
    connect(body_, &QLineEdit::textEdited, this, &PersonForm::edited);
    connect(manufacturing_, &QCheckBox::toggled, this, &PersonForm::edited);
    connect(active_, &QCheckBox::toggled, this, &PersonForm::edited);
}

void PersonForm::show(const model::Person& person, bool isNew) {
    const QSignalBlocker quiet(this);
    isNew_ = isNew;
    name_->setText(qt(person.name));
    id_->setText(qt(person.id));
    id_->setModified(false);
    id_->setReadOnly(!isNew);
    for (const auto& [role, box] : roles_) box->setChecked(person.roles.contains(role));
    for (const auto& [method, combo] : levels_) {
        const auto level = person.levels.find(method);
        combo->setCurrentIndex(level == person.levels.end() ? 0 : level->second);
    }
    manufacturing_->setChecked(person.manufacturing);
    body_->setText(qt(person.body));
    active_->setChecked(person.active);
}

model::Person PersonForm::person() const {
    model::Person person;
    person.id = id_->text().trimmed().toStdString();
    person.name = name_->text().trimmed().toStdString();
    for (const auto& [role, box] : roles_) {
        if (box->isChecked()) person.roles.insert(role);
    }
    for (const auto& [method, combo] : levels_) {
        if (combo->currentIndex() > 0) person.levels[method] = combo->currentIndex();
    }
    person.manufacturing = manufacturing_->isChecked();
    person.body = body_->text().trimmed().toStdString();
    person.active = active_->isChecked();
    return person;
}

void PersonForm::setReadOnly(bool readOnly) {
    setEnabled(!readOnly);
}

}  // namespace app
