// SPDX-License-Identifier: Apache-2.0
#include "finding/keeping_tasks.h"

#include <QCoreApplication>
#include <QDateEdit>
#include <QFormLayout>
#include <QLabel>
#include <QPlainTextEdit>
#include <QPointer>

#include "looks/passphrase_field.h"
#include "looks/task_dialog.h"
#include "looks/text.h"

namespace app {
namespace {

constexpr auto kDay = "yyyy-MM-dd";
constexpr int kUsualYears = 10;

QString tr(const char* text) {
    return QCoreApplication::translate("KeepingTasks", text);
}

QString reasonIn(const QPlainTextEdit& text) {
    return text.toPlainText().trimmed();
}

/// `work(Archive&, const SignedIn&)` by whoever is signed in.
template <class Work>
void runSigned(ArchiveThread& archive, Session& session, TaskDialog* dialog, Work work,
               TaskDialog::Then then) {
    const Signer& signer = session.signer();
    if (!signer) {
        then(model::inputError("", "nobody is signed in any more; sign in again"));
        return;
    }
    archive.ask(
        [signer, work = std::move(work)](model::Archive& held) { return work(held, *signer); },
        dialog, std::move(then));
}

}  // namespace

QString whatGoes(const model::Disposable& certificate) {
    const auto counted = [](qsizetype count, const QString& one, const QString& several) {
        return count == 1 ? one : several.arg(count);
    };
    const auto files = static_cast<qsizetype>(certificate.files.size());
    const auto records = static_cast<qsizetype>(certificate.records.size());
    const QString entry = tr("Of certificate %1 of casting %2 the entry goes, with %3")
                              .arg(certificate.number)
                              .arg(qt(certificate.serial),
                                   counted(files, tr("its PDF file"), tr("its %1 PDF files")));
    const QString all =
        records == 0
            ? tr("%1 and what was presented for it.").arg(entry)
            : tr("%1, what was presented for it, and the content of %2 that it alone was made "
                 "from.")
                  .arg(entry, counted(records, tr("the signed examination"),
                                      tr("the %1 signed examinations")));
    return tr("%1 The history keeps that it was there, with the SHA-256 of all that goes, and what "
              "was recorded at the bench stays. Copies in backups are not reached.")
        .arg(all);
}

TaskDialog* lastDayDialog(ArchiveThread& archive, Session& session, const model::Retention& stated,
                          QWidget* parent) {
    auto* dialog = new TaskDialog(
        tr("The last day of order %1").arg(qt(stated.order)),
        tr("Until this day, the day included, nothing of the order can be disposed of. Nothing "
           "goes by itself afterwards."),
        tr("&State it"), parent);
    dialog->setObjectName("lastDayDialog");
    const QDate before =
        stated.keepUntil ? QDate::fromString(qt(*stated.keepUntil), kDay) : QDate();
    auto* day = new QDateEdit(
        before.isValid() ? before : QDate::currentDate().addYears(kUsualYears), dialog);
    day->setObjectName("day");
    day->setDisplayFormat(kDay);
    day->setCalendarPopup(true);
    day->setAccessibleName(tr("Last day"));
    dialog->form().addRow(tr("&Last day"), day);
    auto* reason = dialog->addText(tr("&Reason"), "reason");
    QObject::connect(day, &QDateEdit::dateChanged, dialog, &TaskDialog::refresh);
    dialog->setMissing([day, reason, before] {
        if (day->date() == before) return tr("This day is stated already.");
        return before.isValid() && day->date() < before && reasonIn(*reason).isEmpty()
                   ? tr("An earlier day than %1 needs a reason.").arg(before.toString(kDay))
                   : QString();
    });
    dialog->setWork([=, &archive, &session, order = stated.order](TaskDialog::Then then) {
        runSigned(
            archive, session, dialog,
            [order, until = day->date().toString(kDay).toStdString(),
             why = reasonIn(*reason).toStdString()](model::Archive& held,
                                                    const model::SignedIn& person) {
                return model::keepUntil(held, order, until, why, person);
            },
            std::move(then));
    });
    return dialog;
}

TaskDialog* holdDialog(ArchiveThread& archive, Session& session, const model::Retention& stated,
                       QWidget* parent) {
    const bool ends = stated.hold.has_value();
    auto* dialog = reasonDialog(
        (ends ? tr("End the legal hold of order %1") : tr("Put order %1 on legal hold"))
            .arg(qt(stated.order)),
        ends ? tr("It is on hold because: %1. Once that has ended, what is past its last day can "
                  "be disposed of.")
                   .arg(qt(*stated.hold))
             : tr("Nothing of the order is disposed of while it is on hold, whatever day it is."),
        ends ? tr("&End it") : tr("&Put on hold"),
        [&archive, &session, ends, order = stated.order](const std::string& reason,
                                                         TaskDialog* asked, TaskDialog::Then then) {
            runSigned(
                archive, session, asked,
                [ends, order, reason](model::Archive& held, const model::SignedIn& person) {
                    return ends ? model::endHold(held, order, reason, person)
                                : model::hold(held, order, reason, person);
                },
                std::move(then));
        },
        parent);
    dialog->setObjectName("holdDialog");
    return dialog;
}

TaskDialog* disposeDialog(ArchiveThread& archive, Session& session,
                          const model::Disposable& certificate, QWidget* parent) {
    const model::Person person = *session.person();
    auto* dialog = new TaskDialog(tr("Dispose of certificate %1").arg(certificate.number),
                                  tr("%1\n\nIt cannot be brought back.").arg(whatGoes(certificate)),
                                  tr("&Dispose of it"), parent);
    dialog->setObjectName("disposeDialog");
    auto* reason = dialog->addText(tr("&Reason"), "reason");
    auto* passphrase = new PassphraseField(dialog);
    passphrase->setObjectName("passphrase");
    passphrase->setAccessibleName(tr("Passphrase of %1").arg(qt(person.name)));
    dialog->form().addRow(tr("&Passphrase of %1").arg(qt(person.name)), passphrase);
    QStringList digests;
    for (const std::string& file : certificate.files) digests << qt(file);
    auto* files =
        dialog->addNote(tr("SHA-256 of what goes as a file:\n%1").arg(digests.join('\n')));
    files->setObjectName("goingFiles");
    files->setTextInteractionFlags(Qt::TextSelectableByMouse);
    QObject::connect(passphrase, &QLineEdit::textChanged, dialog, &TaskDialog::refresh);
    dialog->setMissing([reason, passphrase] {
        if (reasonIn(*reason).isEmpty()) return tr("State the reason.");
        return passphrase->text().isEmpty() ? tr("Type your passphrase.") : QString();
    });
    dialog->setWork([=, &archive, id = person.id,
                     number = certificate.number](TaskDialog::Then then) {
        archive.ask(
            [id, number, secret = passphrase->take(),
             why = reasonIn(*reason).toStdString()](model::Archive& held) -> model::Result<void> {
                const auto signer = model::signIn(held, id, *secret);
                if (!signer) return signer.error();
                return model::dispose(held, number, why, *signer);
            },
            dialog, std::move(then));
    });
    return dialog;
}

}  // namespace app
