// SPDX-License-Identifier: Apache-2.0
#include "window/welcome_dialog.h"

#include <QDialogButtonBox>
#include <QFormLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QSettings>

#include "editing/session.h"
#include "window/start_page.h"

namespace app {
namespace {

constexpr auto kRead = "welcome/read";
constexpr auto kPerson = "bench/person";

}  // namespace

bool WelcomeDialog::due() {
    return !QSettings().value(kRead).toBool();
}

WelcomeDialog::WelcomeDialog(const Session& session, QWidget* parent)
    : QDialog(parent),
      session_(session),
      form_(new QFormLayout(this)),
      person_(new QLineEdit(this)),
      why_(new QLabel(this)) {
    setWindowTitle(tr("Before you use Fettlemark"));
    auto* statement = new QLabel(programStatement(), this);
    statement->setWordWrap(true);
    statement->setMinimumWidth(460);
    person_->setObjectName("name");
    person_->setText(QSettings().value(kPerson).toString());
    person_->setPlaceholderText(tr("First and last name"));
    why_->setObjectName("whoSitsHere");
    why_->setWordWrap(true);
    why_->setForegroundRole(QPalette::PlaceholderText);
    auto* buttons = new QDialogButtonBox(this);
    understood_ = buttons->addButton(tr("I have read this"), QDialogButtonBox::AcceptRole);
    understood_->setObjectName("understood");
    understood_->setDefault(true);
    form_->setSpacing(12);
    form_->setContentsMargins(20, 18, 20, 14);
    form_->addRow(statement);
    form_->addRow(tr("Your &name"), person_);
    form_->addRow(why_);
    form_->addRow(buttons);
    connect(person_, &QLineEdit::textChanged, this, &WelcomeDialog::refresh);
    connect(&session_, &Session::changed, this, &WelcomeDialog::refresh);
    connect(buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
    connect(this, &QDialog::accepted, this, [this] {
        QSettings settings;
        settings.setValue(kRead, true);
        if (!person().isEmpty()) settings.setValue(kPerson, person());
    });
    refresh();
}

bool WelcomeDialog::asksForName() const {
    return session_.peopleKnown() && !session_.hasPeople() && !session_.onlyForReading();
}

void WelcomeDialog::refresh() {
    const bool asks = asksForName();
    person_->setVisible(asks);
    form_->labelForField(person_)->setVisible(asks);
    const bool signsIn = session_.hasPeople() && !session_.signer() && !session_.onlyForReading();
    why_->setText(asks      ? tr("Your name stands beside every draft that is saved here.")
                  : signsIn ? tr("To enter or sign anything, sign in next.")
                            : QString());
    why_->setVisible(!why_->text().isEmpty());
    understood_->setEnabled(!asks || !person().isEmpty());
}

QString WelcomeDialog::person() const {
    return asksForName() ? person_->text().trimmed() : QString();
}

}  // namespace app
