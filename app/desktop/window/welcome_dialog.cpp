// SPDX-License-Identifier: Apache-2.0
#include "window/welcome_dialog.h"

#include <QDialogButtonBox>
#include <QFormLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QSettings>

#include "window/start_page.h"

namespace app {
namespace {

constexpr auto kRead = "welcome/read";
constexpr auto kPerson = "bench/person";

}  // namespace

bool WelcomeDialog::due() {
    return !QSettings().value(kRead).toBool();
}

WelcomeDialog::WelcomeDialog(QWidget* parent) : QDialog(parent), person_(new QLineEdit(this)) {
    setWindowTitle(tr("Before you use Fettlemark"));
    auto* statement = new QLabel(programStatement(), this);
    statement->setWordWrap(true);
    statement->setMinimumWidth(460);
    person_->setText(QSettings().value(kPerson).toString());
    person_->setPlaceholderText(tr("First and last name"));
    auto* why = new QLabel(tr("It stands beside everything that is saved from this bench."), this);
    why->setForegroundRole(QPalette::PlaceholderText);
    auto* buttons = new QDialogButtonBox(this);
    auto* understood = buttons->addButton(tr("I have read this"), QDialogButtonBox::AcceptRole);
    understood->setDefault(true);
    const auto allow = [this, understood] {
        understood->setEnabled(!person_->text().trimmed().isEmpty());
    };
    connect(person_, &QLineEdit::textChanged, this, allow);
    allow();
    connect(buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
    connect(this, &QDialog::accepted, this, [this] {
        QSettings settings;
        settings.setValue(kRead, true);
        settings.setValue(kPerson, person());
    });
    auto* form = new QFormLayout(this);
    form->setSpacing(12);
    form->setContentsMargins(20, 18, 20, 14);
    form->addRow(statement);
    form->addRow(tr("Your &name"), person_);
    form->addRow(QString(), why);
    form->addRow(buttons);
}

QString WelcomeDialog::person() const {
    return person_->text().trimmed();
}

}  // namespace app
