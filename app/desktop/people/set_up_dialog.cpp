// SPDX-License-Identifier: Apache-2.0
#include "people/set_up_dialog.h"

#include <QCheckBox>
#include <QFormLayout>
#include <QLineEdit>
#include <QRegularExpression>

#include "archive/identities.h"
#include "people/new_passphrase.h"
#include "people/person_form.h"

namespace app {
namespace {

constexpr int kAuthorityYears = 20;
constexpr int kIdentityYears = 3;

class SetUpDialog : public TaskDialog {
public:
    SetUpDialog(Session& session, ArchiveThread& archive, QWidget* parent)
        : TaskDialog(tr("Set up this archive"),
                     tr("People sign with identities that your company's own authority issues. "
                        "It is made here, with the first administrator, who then adds the "
                        "inspectors and QA managers."),
                     tr("&Set up"), parent),
          session_(session),
          archive_(archive) {
        company_ = addLine(tr("&Company"), "company");
        country_ = addLine(tr("C&ountry"), "country");
        country_->setMaxLength(2);
        country_->setPlaceholderText(tr("two letters, such as DE; may be empty"));
        authority_ = new NewPassphrase(*this, tr("&Authority's passphrase"), "authorityPassphrase");
        addNote(
            tr("It is needed whenever an identity is issued or withdrawn. Keep it where two "
               "people can find it: nobody can recover it."));
        name_ = addLine(tr("Administrator's &name"), "name");
        id_ = addLine(tr("&Short name"), "id");
        id_->setPlaceholderText(tr("never given to a second person"));
        connect(name_, &QLineEdit::textEdited, this, [this](const QString& name) {
            if (!id_->isModified()) id_->setText(shortNameFor(name));
        });
        passphrase_ = new NewPassphrase(*this, tr("Administrator's &passphrase"), "passphrase");
        addNote(tr("The authority is valid for %1 years, the administrator's identity for %2. "
                   "People's roles can be added afterwards.")
                    .arg(kAuthorityYears)
                    .arg(kIdentityYears));
        setMissing([this] { return missing(); });
        setWork([this](const Then& then) { setUp(then); });
        company_->setFocus();
    }

private:
    QLineEdit* addLine(const QString& label, const QString& name) {
        auto* line = new QLineEdit(this);
        line->setObjectName(name);
        QString plain = label;
        line->setAccessibleName(plain.remove('&'));
        form().addRow(label, line);
        connect(line, &QLineEdit::textChanged, this, &TaskDialog::refresh);
        return line;
    }

    [[nodiscard]] QString missing() const {
        if (company_->text().trimmed().isEmpty()) return tr("Type the company's name.");
        const int letters = static_cast<int>(country_->text().trimmed().size());
        if (letters == 1) return tr("A country has two letters.");
        if (QString why = authority_->missing(); !why.isEmpty()) return why;
        if (name_->text().trimmed().isEmpty()) return tr("Type the administrator's name.");
        if (id_->text().trimmed().isEmpty()) return tr("Type a short name.");
        return passphrase_->missing();
    }

    void setUp(const Then& then) {
        const auto now = model::systemClock().now();
        model::AuthorityRequest request;
        request.organisation = company_->text().trimmed().toStdString();
        request.name = tr("%1 inspection authority")
                           .arg(company_->text().trimmed())
                           .left(kLongestName)
                           .toStdString();
        request.country = country_->text().trimmed().toUpper().toStdString();
        request.from = now;
        request.until = now + std::chrono::years(kAuthorityYears);
        model::Person person;
        person.id = id_->text().trimmed().toStdString();
        person.name = name_->text().trimmed().toStdString();
        person.roles = {model::Role::Administrator};
        const auto until = now + std::chrono::years(kIdentityYears);
        archive_.ask(
            [request, person, authority = authority_->take(), passphrase = passphrase_->take(),
             until =
                 std::chrono::time_point_cast<std::chrono::seconds>(until)](model::Archive& held) {
                return model::setUp(held, request, *authority, person, *passphrase, until);
            },
            this,
            [this, then](const model::Result<void>& result) {
                if (result) session_.reloadPeople();
                then(result);
            });
    }

    static constexpr int kLongestName = 64;

    Session& session_;
    ArchiveThread& archive_;
    QLineEdit* company_;
    QLineEdit* country_;
    NewPassphrase* authority_;
    QLineEdit* name_;
    QLineEdit* id_;
    NewPassphrase* passphrase_;
};

}  // namespace

TaskDialog* setUpDialog(Session& session, ArchiveThread& archive, QWidget* parent) {
    return new SetUpDialog(session, archive, parent);
}

}  // namespace app
