// SPDX-License-Identifier: Apache-2.0
#include "people/people_dialog.h"

#include <QDialogButtonBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPushButton>
#include <QScrollArea>
#include <algorithm>

#include "looks/heading.h"
#include "looks/notice_bar.h"
#include "looks/task_dialog.h"
#include "looks/text.h"
#include "people/identity_dialogs.h"
#include "people/person_form.h"

namespace app {

PeopleDialog::PeopleDialog(Session& session, ArchiveThread& archive, QWidget* parent)
    : QDialog(parent),
      session_(session),
      archive_(archive),
      notice_(new NoticeBar(this)),
      list_(new QListWidget(this)),
      form_(new PersonForm(this)),
      identity_(new QLabel(this)),
      hint_(new QLabel(this)) {
    setWindowTitle(tr("People"));
    setAttribute(Qt::WA_DeleteOnClose);
    resize(980, 620);
    makeLayout();
    connect(list_, &QListWidget::currentRowChanged, this, [this](int row) {
        if (row >= 0) adding_ = false;
        showCurrent();
    });
    connect(form_, &PersonForm::edited, this, [this] {
        changed_ = true;
        refreshButtons();
    });
    connect(&session_, &Session::changed, this, &PeopleDialog::reload);
    showCurrent();
    reload();
}

void PeopleDialog::makeLayout() {
    list_->setAccessibleName(tr("People"));
    list_->setMinimumWidth(230);
    list_->setAlternatingRowColors(true);
    list_->setSpacing(2);
    identity_->setWordWrap(true);
    identity_->setTextFormat(Qt::PlainText);
    identity_->setTextInteractionFlags(Qt::TextSelectableByMouse);
    hint_->setWordWrap(true);
    hint_->setForegroundRole(QPalette::PlaceholderText);
    const auto button = [this](const QString& text, const QString& name, auto act) {
        auto* made = new QPushButton(text, this);
        made->setObjectName(name);
        made->setAutoDefault(false);
        connect(made, &QPushButton::clicked, this, act);
        return made;
    };
    save_ = button(tr("&Save"), "save", [this] { save(); });
    issue_ = button(tr("&Issue an identity…"), "issue", [this] {
        openTask(issueIdentityDialog(session_, archive_, current()->value, this));
    });
    import_ = button(tr("I&mport an identity…"), "import", [this] {
        openTask(importIdentityDialog(session_, archive_, current()->value, this));
    });
    withdraw_ = button(tr("&Withdraw it…"), "withdraw", [this] {
        const auto* held = identityOf(current()->value.id);
        openTask(
            withdrawIdentityDialog(session_, archive_, current()->value, held && held->own, this));
    });
    add_ = button(tr("&Add a person"), "add", [this] { addPerson(); });
    trust_ = button(tr("&Trust another authority…"), "trust",
                    [this] { openTask(trustAuthorityDialog(session_, archive_, this)); });
    revoked_ = button(tr("Take over a revocation &list…"), "revocationList",
                      [this] { openTask(takeRevocationListDialog(session_, archive_, this)); });
    authority_ = button(tr("Change the a&uthority's passphrase…"), "authority", [this] {
        openTask(changeAuthorityPassphraseDialog(session_, archive_, this));
    });

    auto* left = new QVBoxLayout;
    left->addWidget(list_, 1);
    for (auto* one : {add_, trust_, revoked_, authority_}) left->addWidget(one);
    auto* saving = new QHBoxLayout;
    saving->addWidget(hint_, 1);
    saving->addWidget(save_);
    auto* acts = new QHBoxLayout;
    acts->addWidget(issue_);
    acts->addWidget(import_);
    acts->addWidget(withdraw_);
    acts->addStretch(1);
    auto* page = new QWidget(this);
    auto* right = new QVBoxLayout(page);
    right->setContentsMargins(14, 0, 4, 0);
    right->setSpacing(10);
    right->addWidget(form_);
    right->addLayout(saving);
    right->addSpacing(8);
    right->addWidget(new Heading(1.1, this, tr("Identity")));
    right->addWidget(identity_);
    right->addLayout(acts);
    right->addStretch(1);
    auto* scroll = new QScrollArea(this);
    scroll->setWidgetResizable(true);
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->setWidget(page);
    auto* columns = new QHBoxLayout;
    columns->addLayout(left, 2);
    columns->addWidget(scroll, 5);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, this);
    buttons->button(QDialogButtonBox::Close)->setText(tr("&Close"));
    buttons->button(QDialogButtonBox::Close)->setAutoDefault(false);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    auto* layout = new QVBoxLayout(this);
    layout->addWidget(notice_);
    layout->addLayout(columns, 1);
    layout->addWidget(buttons);
}

bool PeopleDialog::mayChange() const {
    return session_.has(model::Role::Administrator) && !session_.onlyForReading();
}

void PeopleDialog::reload() {
    archive_.ask(
        [](model::Archive& held) { return model::identities(held); }, this,
        [this](model::Result<std::vector<model::StoredIdentity>> identities) {
            if (identities) {
                identities_ = std::move(*identities);
            } else {
                notice_->say(Mark::Fails, sentence(identities.error()), {{tr("Close"), {}}});
            }
            fill();
        });
}

void PeopleDialog::fill() {
    if (adding_ || changed_) {  // what is typed stays
        refreshButtons();
        showIdentity();
        return;
    }
    const std::string id = !wanted_.empty() ? std::exchange(wanted_, {})
                           : current()      ? current()->value.id
                                            : std::string();
    {
        const QSignalBlocker quiet(list_);
        list_->clear();
        for (const auto& stored : session_.people()) {
            const auto& person = stored.value;
            const QString roles = rolesText(person);
            auto* item = new QListWidgetItem(
                tr("%1\n%2").arg(qt(person.name), person.active ? roles : tr("inactive")), list_);
            item->setData(Qt::UserRole, qt(person.id));
            item->setData(Qt::AccessibleTextRole, tr("%1, %2").arg(qt(person.name), roles));
            if (!person.active) item->setForeground(palette().color(QPalette::PlaceholderText));
        }
    }
    choose(id);
}

void PeopleDialog::choose(const std::string& id) {
    for (int row = 0; row < list_->count(); ++row) {
        if (list_->item(row)->data(Qt::UserRole).toString() == qt(id)) list_->setCurrentRow(row);
    }
    if (list_->currentRow() < 0 && list_->count() > 0) list_->setCurrentRow(0);
    showCurrent();
}

const model::Stored<model::Person>* PeopleDialog::current() const {
    const auto* item = list_->currentItem();
    if (!item || adding_) return nullptr;
    const std::string id = item->data(Qt::UserRole).toString().toStdString();
    const auto found = std::ranges::find_if(
        session_.people(), [&](const auto& stored) { return stored.value.id == id; });
    return found == session_.people().end() ? nullptr : &*found;
}

const model::StoredIdentity* PeopleDialog::identityOf(const std::string& person) const {
    const model::StoredIdentity* newest = nullptr;
    for (const auto& identity : identities_) {
        if (identity.person == person) newest = &identity;  // by number: the last one counts
    }
    return newest && newest->withdrawn.empty() ? newest : nullptr;
}

void PeopleDialog::showCurrent() {
    changed_ = false;
    const auto* stored = current();
    model::Person fresh;
    fresh.roles = {model::Role::Inspector};
    form_->show(stored ? stored->value : fresh, adding_);
    showIdentity();
    refreshButtons();
}

void PeopleDialog::showIdentity() {
    const auto* stored = current();
    if (!stored) {
        identity_->setText(adding_ ? tr("Save the person first; then issue an identity.")
                                   : QString());
        return;
    }
    const auto* held = identityOf(stored->value.id);
    if (held) {
        identity_->setText(
            tr("Signs with a certificate (%1) issued by %2, valid until %3.\nSHA-256 %4")
                .arg(qt(held->facts.key), qt(held->facts.issuer),
                     localTime(model::toText(held->facts.validUntil)),
                     qt(held->facts.fingerprint)));
        return;
    }
    QString text =
        tr("No identity in use: %1 can neither sign in nor sign.").arg(qt(stored->value.name));
    for (const auto& identity : identities_) {
        if (identity.person == stored->value.id && !identity.withdrawn.empty()) {
            text = tr("The identity was withdrawn: %1. %2 can neither sign in nor sign.")
                       .arg(qt(identity.withdrawn), qt(stored->value.name));
        }
    }
    identity_->setText(text);
}

QString PeopleDialog::identityText() const {
    return identity_->text();
}

void PeopleDialog::refreshButtons() {
    const bool may = mayChange();
    const bool chosen = current() != nullptr;
    form_->setReadOnly(!may || (!chosen && !adding_));
    save_->setEnabled(may && changed_);
    add_->setEnabled(may && !adding_);
    trust_->setEnabled(may);
    revoked_->setEnabled(may);
    authority_->setEnabled(may);
    issue_->setEnabled(may && chosen);
    import_->setEnabled(may && chosen);
    withdraw_->setEnabled(may && chosen && identityOf(current()->value.id));
    hint_->setText(may ? (changed_ ? tr("Not saved yet.") : QString())
                       : tr("Only to read: an administrator who has signed in changes people."));
}

void PeopleDialog::addPerson() {
    adding_ = true;
    {
        const QSignalBlocker quiet(list_);
        list_->setCurrentRow(-1);
    }
    showCurrent();
    changed_ = true;
    refreshButtons();
    form_->name().setFocus();
}

void PeopleDialog::save() {
    const Signer signer = session_.signer();
    if (!signer || !changed_) return;
    const auto* stored = current();
    const std::int64_t version = stored ? stored->version : 0;
    const model::Person person = form_->person();
    notice_->takeBack();
    archive_.ask(
        [signer, person, version](model::Archive& held) {
            return model::savePerson(held, person, version, *signer);
        },
        this,
        [this, person](const model::Result<std::int64_t>& saved) {
            if (!saved && saved.error().kind == model::ErrorKind::Conflict) {
                changed_ = false;
                adding_ = false;
                wanted_ = person.id;
                notice_->say(Mark::Open,
                             tr("Not saved: somebody else has changed this meanwhile. What is "
                                "stored now is shown; make your change again. (%1)")
                                 .arg(sentence(saved.error())),
                             {{tr("Close"), {}}}, true);
                session_.reloadPeople();
                return;
            }
            if (!saved) {
                notice_->say(Mark::Fails, tr("Not saved. %1").arg(sentence(saved.error())),
                             {{tr("Close"), {}}});
                return;
            }
            changed_ = false;
            adding_ = false;
            wanted_ = person.id;
            if (session_.person() && session_.person()->id == person.id) {
                notice_->say(Mark::Open,
                             tr("Saved. You have changed yourself: sign out and in again before "
                                "you sign anything."),
                             {{tr("Close"), {}}});
            }
            session_.reloadPeople();
        });
}

void PeopleDialog::openTask(TaskDialog* dialog) {
    connect(dialog, &TaskDialog::completed, this, &PeopleDialog::reload);
    dialog->open();
}

}  // namespace app
