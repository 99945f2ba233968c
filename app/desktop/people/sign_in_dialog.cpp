// SPDX-License-Identifier: Apache-2.0
#include "people/sign_in_dialog.h"

#include <QComboBox>
#include <QFormLayout>
#include <QPushButton>
#include <QSettings>

#include "looks/text.h"
#include "trust/identity.h"

namespace app {
namespace {

constexpr auto kLast = "session/person";

}  // namespace

SignInDialog::SignInDialog(Session& session, ArchiveThread& archive, QWidget* parent)
    : TaskDialog(tr("Sign in"),
                 tr("Your passphrase unlocks your own signature on this machine until you sign "
                    "out. Nobody else can sign in your name."),
                 tr("&Sign in"), parent),
      session_(session),
      archive_(archive),
      person_(new QComboBox(this)),
      passphrase_(new PassphraseField(this)) {
    person_->setObjectName("person");
    person_->setAccessibleName(tr("Person"));
    passphrase_->setObjectName("passphrase");
    passphrase_->setAccessibleName(tr("Passphrase"));
    form().addRow(tr("&Person"), person_);
    form().addRow(tr("Pass&phrase"), passphrase_);
    fill();
    setMayLeave(true);
    setMissing([this] {
        if (person_->currentIndex() < 0) return tr("Nobody can sign in to this archive.");
        if (secondsLeft_ > 0) return tr("Wait until the next try.");
        return passphrase_->text().isEmpty() ? tr("Type your passphrase.") : QString();
    });
    setWork([this](const Then& then) { tryIt(then); });
    second_.setInterval(1000);
    connect(&second_, &QTimer::timeout, this, [this] {
        --secondsLeft_;
        showWait();
    });
    connect(passphrase_, &QLineEdit::textChanged, this, &SignInDialog::refresh);
    connect(person_, &QComboBox::currentIndexChanged, this, [this] {
        wrong_ = false;
        askForWait();
    });
    connect(&session_, &Session::changed, this, &SignInDialog::fill);
    askForWait();
    passphrase_->setFocus();
}

void SignInDialog::fill() {
    const QVariant chosen =
        person_->currentIndex() >= 0 ? person_->currentData() : QSettings().value(kLast);
    const QSignalBlocker quiet(person_);
    person_->clear();
    for (const auto& stored : session_.people()) {
        if (stored.value.active) person_->addItem(qt(stored.value.name), qt(stored.value.id));
    }
    const int at = person_->findData(chosen);
    if (at >= 0) person_->setCurrentIndex(at);
    refresh();
}

void SignInDialog::tryIt(const Then& then) {
    const QString id = person_->currentData().toString();
    session_.signIn(id.toStdString(), passphrase_->take(), this,
                    [this, id, then](const model::Result<void>& result) {
                        wrong_ = !result && model::isWrongPassphrase(result.error());
                        if (result) {
                            QSettings().setValue(kLast, id);
                        } else {
                            askForWait();
                        }
                        then(result);
                        passphrase_->setFocus();
                    });
}

void SignInDialog::askForWait() {
    const std::string id = person_->currentData().toString().toStdString();
    if (id.empty()) return;
    archive_.ask([id](model::Archive& held) { return model::waitBeforeSignIn(held, id); }, this,
                 [this](const model::Result<std::chrono::seconds>& wait) {
                     secondsLeft_ = wait ? static_cast<int>(wait->count()) : 0;
                     showWait();
                 });
}

void SignInDialog::showWait() {
    if (secondsLeft_ > 0) {
        if (!second_.isActive()) second_.start();
        setTrouble((wrong_ ? tr("The passphrase is wrong. The next try is possible in %1 s.")
                           : tr("After wrong passphrases the next try is possible in %1 s."))
                       .arg(secondsLeft_));
    } else {
        second_.stop();
        secondsLeft_ = 0;
        if (wrong_)
            setTrouble(tr("The passphrase is wrong. Type it again."));
        else if (!working())
            setTrouble({});
    }
    refresh();
}

}  // namespace app
