// SPDX-License-Identifier: Apache-2.0
#include "people/identity_dialogs.h"

#include <QComboBox>
#include <QDateEdit>
#include <QFile>
#include <QFileDialog>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>

#include "archive/identities.h"
#include "looks/passphrase_field.h"
#include "looks/text.h"
#include "people/new_passphrase.h"

namespace app {
namespace {

/// A form whose act is signed by an administrator on the archive's thread.
class IdentityDialog : public TaskDialog {
public:
    IdentityDialog(Session& session, ArchiveThread& archive, const QString& title,
                   const QString& intro, const QString& act, QWidget* parent)
        : TaskDialog(title, intro, act, parent), session_(session), archive_(archive) {}

    QLineEdit* addLine(const QString& label, const QString& name) {
        auto* line = new QLineEdit(this);
        return add(line, label, name);
    }
    PassphraseField* addPassphrase(const QString& label, const QString& name) {
        return add(new PassphraseField(this), label, name);
    }
    /// A path with a button that chooses a file.
    QLineEdit* addFile(const QString& label, const QString& filter) {
        auto* row = new QWidget(this);
        auto* path = new QLineEdit(row);
        path->setObjectName("file");
        path->setAccessibleName(tr("File"));
        auto* choose = new QPushButton(tr("Choose…"), row);
        auto* layout = new QHBoxLayout(row);
        layout->setContentsMargins(0, 0, 0, 0);
        layout->addWidget(path, 1);
        layout->addWidget(choose);
        form().addRow(label, row);
        connect(path, &QLineEdit::textChanged, this, &TaskDialog::refresh);
        connect(choose, &QPushButton::clicked, this, [this, path, filter] {
            const QString chosen = QFileDialog::getOpenFileName(this, windowTitle(), {}, filter);
            if (!chosen.isEmpty()) path->setText(chosen);
        });
        return path;
    }

    /// `work(Archive&, const SignedIn&)`, and the people asked for anew.
    template <class Work>
    void run(Work work, Then then) {
        const Signer signer = session_.signer();
        if (!signer) {
            then(model::inputError("", "nobody is signed in any more; sign in again"));
            return;
        }
        archive_.ask(
            [signer, work = std::move(work)](model::Archive& held) -> model::Result<void> {
                return work(held, *signer);
            },
            this,
            [this, then = std::move(then)](const model::Result<void>& result) {
                if (result) session_.reloadPeople();
                then(result);
            });
    }

protected:
    template <class Line>
    Line* add(Line* line, const QString& label, const QString& name) {
        line->setObjectName(name);
        QString plain = label;
        line->setAccessibleName(plain.remove('&'));
        form().addRow(label, line);
        connect(line, &QLineEdit::textChanged, this, &TaskDialog::refresh);
        return line;
    }

    Session& session_;
    ArchiveThread& archive_;
};

model::Result<std::string> bytesOf(const QString& path) {
    constexpr qint64 kLargest = 1 << 20;
    QFile file(path);
    if (!file.open(QIODevice::ReadOnly)) {
        return model::refusal(path.toStdString(), "cannot be read: %1",
                              {file.errorString().toStdString()});
    }
    if (file.size() > kLargest) {
        return model::inputError(path.toStdString(), "is larger than such a file can be");
    }
    return file.readAll().toStdString();
}

model::UtcTime endOf(const QDate& day) {
    return model::UtcTime(
        std::chrono::seconds(QDateTime(day, QTime(23, 59, 59), Qt::UTC).toSecsSinceEpoch()));
}

}  // namespace

TaskDialog* issueIdentityDialog(Session& session, ArchiveThread& archive,
                                const model::Person& person, QWidget* parent) {
    auto* dialog = new IdentityDialog(
        session, archive, IdentityDialog::tr("Issue an identity"),
        IdentityDialog::tr("A new key and certificate for %1. One that there was before stays good "
                           "for what it signed, but signs no more.")
            .arg(qt(person.name)),
        IdentityDialog::tr("&Issue"), parent);
    auto* kind = new QComboBox(dialog);
    kind->addItems({IdentityDialog::tr("P-256: small and quick"),
                    IdentityDialog::tr("RSA, 3072 bits: for old programs")});
    kind->setAccessibleName(IdentityDialog::tr("Key"));
    dialog->form().addRow(IdentityDialog::tr("&Key"), kind);
    auto* until = new QDateEdit(QDate::currentDate().addYears(3), dialog);
    until->setDisplayFormat("yyyy-MM-dd");
    until->setCalendarPopup(true);
    until->setMinimumDate(QDate::currentDate());
    until->setAccessibleName(IdentityDialog::tr("Valid until"));
    dialog->form().addRow(IdentityDialog::tr("&Valid until"), until);
    auto* fresh = new NewPassphrase(*dialog, IdentityDialog::tr("The person's &new passphrase"),
                                    "newPassphrase");
    dialog->addNote(IdentityDialog::tr("%1 types it here and tells nobody, you included.")
                        .arg(qt(person.name)));
    auto* authority =
        dialog->addPassphrase(IdentityDialog::tr("&Authority's passphrase"), "authorityPassphrase");
    dialog->setMissing([fresh, authority] {
        if (QString why = fresh->missing(); !why.isEmpty()) return why;
        return authority->text().isEmpty() ? IdentityDialog::tr("Type the authority's passphrase.")
                                           : QString();
    });
    dialog->setWork([=, id = person.id](TaskDialog::Then then) {
        const auto key = kind->currentIndex() == 1 ? model::KeyKind::Rsa3072 : model::KeyKind::P256;
        dialog->run(
            [id, key, end = endOf(until->date()), own = fresh->take(), issuer = authority->take()](
                model::Archive& held, const model::SignedIn& signer) {
                return model::issueIdentity(held, id, key, end, *own, *issuer, signer);
            },
            std::move(then));
    });
    return dialog;
}

TaskDialog* importIdentityDialog(Session& session, ArchiveThread& archive,
                                 const model::Person& person, QWidget* parent) {
    auto* dialog = new IdentityDialog(
        session, archive, IdentityDialog::tr("Import an identity"),
        IdentityDialog::tr("Takes over the identity of %1 from a PKCS #12 file of your company. "
                           "The authority that issued it has to be trusted by this archive first.")
            .arg(qt(person.name)),
        IdentityDialog::tr("&Import"), parent);
    auto* file = dialog->addFile(IdentityDialog::tr("&File"),
                                 IdentityDialog::tr("PKCS #12 files (*.p12 *.pfx);;All files (*)"));
    auto* of =
        dialog->addPassphrase(IdentityDialog::tr("The f&ile's passphrase"), "filePassphrase");
    auto* fresh = new NewPassphrase(*dialog, IdentityDialog::tr("&New passphrase for signing in"),
                                    "newPassphrase");
    dialog->setMissing([file, fresh] {
        return file->text().isEmpty() ? IdentityDialog::tr("Choose the file.") : fresh->missing();
    });
    dialog->setWork([=, id = person.id](TaskDialog::Then then) {
        auto bytes = bytesOf(file->text());
        if (!bytes) {
            then(bytes.error());
            return;
        }
        dialog->run(
            [id, pkcs12 = std::move(*bytes), opening = of->take(), own = fresh->take()](
                model::Archive& held, const model::SignedIn& signer) {
                return model::importIdentity(held, id, pkcs12, *opening, *own, signer);
            },
            std::move(then));
    });
    return dialog;
}

TaskDialog* withdrawIdentityDialog(Session& session, ArchiveThread& archive,
                                   const model::Person& person, bool ownAuthority,
                                   QWidget* parent) {
    using Reason = model::RevocationReason;
    auto* dialog = new IdentityDialog(
        session, archive, IdentityDialog::tr("Withdraw the identity"),
        IdentityDialog::tr("From now on %1 can no longer sign. What was signed before stays "
                           "valid.")
            .arg(qt(person.name)),
        IdentityDialog::tr("&Withdraw"), parent);
    auto* reason = new QComboBox(dialog);
    for (const auto& [text, value] :
         {std::pair(IdentityDialog::tr("no longer needed"), Reason::NotNeeded),
          std::pair(IdentityDialog::tr("the position has changed"), Reason::PositionChanged),
          std::pair(IdentityDialog::tr("the key may be known to others"), Reason::KeyCompromise),
          std::pair(IdentityDialog::tr("replaced by another"), Reason::Superseded),
          std::pair(IdentityDialog::tr("not stated"), Reason::Unspecified)}) {
        reason->addItem(text, static_cast<int>(value));
    }
    reason->setAccessibleName(IdentityDialog::tr("Reason"));
    dialog->form().addRow(IdentityDialog::tr("&Reason"), reason);
    auto* remark = dialog->addLine(IdentityDialog::tr("Re&mark"), "remark");
    PassphraseField* authority = nullptr;
    if (ownAuthority) {
        authority = dialog->addPassphrase(IdentityDialog::tr("&Authority's passphrase"),
                                          "authorityPassphrase");
        dialog->setMissing([authority] {
            return authority->text().isEmpty()
                       ? IdentityDialog::tr("Type the authority's passphrase.")
                       : QString();
        });
    }
    dialog->setWork([=, id = person.id](TaskDialog::Then then) {
        const auto why = static_cast<Reason>(reason->currentData().toInt());
        dialog->run(
            [id, why, said = remark->text().trimmed().toStdString(),
             issuer = authority ? authority->take() : std::make_shared<const model::SecretBytes>()](
                model::Archive& held, const model::SignedIn& signer) {
                return model::withdrawIdentity(held, id, why, said, *issuer, signer);
            },
            std::move(then));
    });
    return dialog;
}

TaskDialog* trustAuthorityDialog(Session& session, ArchiveThread& archive, QWidget* parent) {
    auto* dialog = new IdentityDialog(
        session, archive, IdentityDialog::tr("Trust another authority"),
        IdentityDialog::tr("People whose certificates lead to this authority can then bring their "
                           "own identities. Compare its certificate with what the authority "
                           "publishes before you trust it."),
        IdentityDialog::tr("&Trust it"), parent);
    auto* file = dialog->addFile(
        IdentityDialog::tr("&Certificate"),
        IdentityDialog::tr("Certificates (*.pem *.crt *.cer *.der);;All files (*)"));
    auto* facts = dialog->addNote({});
    facts->setObjectName("authorityFacts");
    facts->setTextInteractionFlags(Qt::TextSelectableByMouse);
    // The certificate in a file, in PEM or DER.
    const auto certificateIn = [](const QString& path) -> model::Result<std::string> {
        auto bytes = bytesOf(path);
        if (!bytes) return bytes;
        if (bytes->starts_with("-----BEGIN") || bytes->find("\n-----BEGIN") != std::string::npos) {
            auto list = model::certificatesFromPem(*bytes);
            if (!list) return list.error();
            return list->front();
        }
        return bytes;
    };
    QObject::connect(file, &QLineEdit::textChanged, dialog, [=](const QString& path) {
        const auto der = certificateIn(path);
        const auto read = der ? model::describeCertificate(*der)
                              : model::Result<model::CertificateFacts>(der.error());
        facts->setText(read ? IdentityDialog::tr("%1, %2\nuntil %3\nSHA-256 %4")
                                  .arg(qt(read->name), qt(read->organisation),
                                       qt(model::toText(read->validUntil)).left(10),
                                       qt(read->fingerprint))
                            : QString());
    });
    dialog->setMissing([file] {
        return file->text().isEmpty() ? IdentityDialog::tr("Choose the file.") : QString();
    });
    dialog->setWork([=](TaskDialog::Then then) {
        auto der = certificateIn(file->text());
        if (!der) {
            then(der.error());
            return;
        }
        dialog->run(
            [der = std::move(*der)](model::Archive& held, const model::SignedIn& signer) {
                return model::trustAuthority(held, der, signer);
            },
            std::move(then));
    });
    return dialog;
}

TaskDialog* takeRevocationListDialog(Session& session, ArchiveThread& archive, QWidget* parent) {
    auto* dialog = new IdentityDialog(
        session, archive, IdentityDialog::tr("Take over a revocation list"),
        IdentityDialog::tr("The complete list of an authority that this archive trusts. Whom it "
                           "revokes signs no more, and a check of the archive names what was "
                           "signed since the date of the revocation."),
        IdentityDialog::tr("&Take it over"), parent);
    auto* file =
        dialog->addFile(IdentityDialog::tr("&List"),
                        IdentityDialog::tr("Revocation lists (*.crl *.pem *.der);;All files (*)"));
    dialog->setMissing([file] {
        return file->text().isEmpty() ? IdentityDialog::tr("Choose the file.") : QString();
    });
    dialog->setWork([=](TaskDialog::Then then) {
        const auto bytes = bytesOf(file->text());
        const auto list = bytes ? model::revocationListFrom(*bytes) : bytes;
        if (!list) {
            then(list.error());
            return;
        }
        dialog->run(
            [der = *list](model::Archive& held,
                          const model::SignedIn& signer) -> model::Result<void> {
                const auto taken = model::takeRevocationList(held, der, signer);
                if (!taken) return taken.error();
                return {};
            },
            std::move(then));
    });
    return dialog;
}

TaskDialog* changeAuthorityPassphraseDialog(Session& session, ArchiveThread& archive,
                                            QWidget* parent) {
    auto* dialog = new IdentityDialog(
        session, archive, IdentityDialog::tr("Change the authority's passphrase"),
        IdentityDialog::tr("Whoever issues or withdraws identities types this passphrase. Every "
                           "identity stays as it is."),
        IdentityDialog::tr("&Change it"), parent);
    auto* old =
        dialog->addPassphrase(IdentityDialog::tr("&Authority's passphrase"), "authorityPassphrase");
    auto* fresh =
        new NewPassphrase(*dialog, IdentityDialog::tr("&New passphrase"), "newPassphrase");
    dialog->setMissing([old, fresh] {
        return old->text().isEmpty() ? IdentityDialog::tr("Type the authority's passphrase.")
                                     : fresh->missing();
    });
    dialog->setWork([=](TaskDialog::Then then) {
        dialog->run(
            [before = old->take(), after = fresh->take()](model::Archive& held,
                                                          const model::SignedIn& signer) {
                return model::changeAuthorityPassphrase(held, *before, *after, signer);
            },
            std::move(then));
    });
    return dialog;
}

TaskDialog* changePassphraseDialog(Session& session, ArchiveThread& archive, QWidget* parent) {
    const QString name = session.person() ? qt(session.person()->name) : QString();
    auto* dialog = new IdentityDialog(
        session, archive, IdentityDialog::tr("Change your passphrase"),
        IdentityDialog::tr("The passphrase of %1. Your signature stays the same.").arg(name),
        IdentityDialog::tr("&Change it"), parent);
    auto* old = dialog->addPassphrase(IdentityDialog::tr("&Passphrase now"), "passphrase");
    auto* fresh =
        new NewPassphrase(*dialog, IdentityDialog::tr("&New passphrase"), "newPassphrase");
    dialog->setMissing([old, fresh] {
        return old->text().isEmpty() ? IdentityDialog::tr("Type the passphrase that it is now.")
                                     : fresh->missing();
    });
    dialog->setWork([=](TaskDialog::Then then) {
        dialog->run(
            [before = old->take(), after = fresh->take()](model::Archive& held,
                                                          const model::SignedIn& signer) {
                return model::changePassphrase(held, signer.person().id, *before, *after);
            },
            std::move(then));
    });
    return dialog;
}

}  // namespace app
