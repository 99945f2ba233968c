// SPDX-License-Identifier: Apache-2.0
// What is done with the certificate in view, and with the archive as a whole.
#include <QCheckBox>
#include <QDir>
#include <QFileDialog>
#include <QFileInfo>
#include <QFormLayout>
#include <QLineEdit>
#include <QPushButton>
#include <QSettings>
#include <QStandardPaths>

#include "exporting/export_certificate.h"
#include "finding/certificate_life.h"
#include "finding/certificate_report.h"
#include "finding/finding_page.h"
#include "finding/keeping_dialog.h"
#include "looks/notice_bar.h"
#include "looks/report_dialog.h"
#include "looks/task_dialog.h"
#include "looks/text.h"
#include "pdf/write_file.h"

namespace app {
namespace {

constexpr auto kFolder = "certificate/folder";

}  // namespace

void FindingPage::open(ReportDialog* dialog) {
    dialog->open();
    emit reportShown(dialog);
}

void FindingPage::verifyThis() {
    const auto wanted = number();
    if (wanted == 0) return;
    archive_.ask([wanted](model::Archive& held) { return verifyCertificate(held, wanted); }, this,
                 [this, wanted](const model::Result<CertificateReport>& report) {
                     if (!report) {
                         tell(report.error());
                         return;
                     }
                     open(new ReportDialog(tr("Certificate %1 verified").arg(wanted), report->mark,
                                           report->headline, {}, report->lines, this));
                 });
}

void FindingPage::showHistory() {
    if (!looked_) return;
    const std::string serial = looked_->certificate.facts.serial;
    archive_.ask([serial](model::Archive& held) { return castingHistory(held, serial); }, this,
                 [this, serial](const model::Result<QStringList>& lines) {
                     if (!lines) {
                         tell(lines.error());
                         return;
                     }
                     const QString title = tr("History of casting %1").arg(qt(serial));
                     open(new ReportDialog(title, std::nullopt, title,
                                           lines->isEmpty() ? tr("Nothing was signed about it.")
                                                            : tr("What was signed, in the order "
                                                                 "in which it happened."),
                                           *lines, this));
                 });
}

void FindingPage::verifyAll() {
    if (long_.running() || path_.empty()) return;
    auto* dialog = new TaskDialog(
        tr("Verify the whole archive"),
        tr("Checks the database, every row of the history with its seal and signatures, that what "
           "is stored is what was written, and every certificate's file. Saving goes on "
           "meanwhile; Cancel stops it."),
        tr("&Verify"), this);
    dialog->setObjectName("verifyDialog");
    dialog->setMayLeave(true);
    connect(&long_, &LongTask::progressed, dialog, &TaskDialog::setProgress);
    connect(dialog, &QDialog::rejected, &long_, &LongTask::cancel);
    auto* head = new QLineEdit(dialog);
    head->setObjectName("heldHead");
    head->setAccessibleName(tr("A head noted elsewhere"));
    head->setPlaceholderText(tr("number:hash as noted on paper; may be empty"));
    dialog->form().addRow(tr("A &head noted elsewhere"), head);
    auto* again = new QCheckBox(tr("&Judge every released casting again, too"), dialog);
    again->setObjectName("rejudge");
    dialog->form().addRow(again);
    dialog->setWork([this, dialog, head, again](const TaskDialog::Then& then) {
        CheckRequest request;
        request.rejudge = again->isChecked();
        if (const std::string text = head->text().trimmed().toStdString(); !text.empty()) {
            const auto held = model::parseHead(text);
            if (!held) {
                then(held.error());
                return;
            }
            request.held = *held;
        }
        long_.start(
            [path = path_,
             request](const model::Progress& progress) -> model::Result<ArchiveCheck> {
                auto archive = model::Archive::openForReading(path);
                if (!archive) return archive.error();
                return checkArchive(*archive, request,
                                    [&](CheckStep, std::int64_t done, std::int64_t total) {
                                        return progress(done, total);
                                    });
            },
            [this, then,
             guard = QPointer<TaskDialog>(dialog)](const model::Result<ArchiveCheck>& check) {
                if (!guard) return;  // stopped
                if (!check) {
                    then(check.error());
                    return;
                }
                then({});
                const auto report = reportOf(*check);
                open(new ReportDialog(tr("The archive verified"), report.mark, report.headline, {},
                                      report.lines, this));
            });
    });
    dialog->open();
    emit taskShown(dialog);
}

void FindingPage::savePdf() {
    if (!looked_ || !looked_->pdf) return;
    const QString documents = QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation);
    const QDir folder(QSettings().value(kFolder, documents).toString());
    const QString path = QFileDialog::getSaveFileName(
        this, tr("Save the certificate as it is"),
        folder.filePath(tr("certificate-%1.pdf").arg(number())), tr("PDF files (*.pdf)"));
    if (!path.isEmpty()) savePdfTo(path);
}

void FindingPage::savePdfTo(const QString& path) {
    if (!looked_ || !looked_->pdf) return;
    QSettings().setValue(kFolder, QFileInfo(path).absolutePath());
    if (const auto written = reports::writeFile(path.toStdString(), *looked_->pdf); !written) {
        tell(written.error());
        return;
    }
    notice_->say(Mark::Passes, tr("Certificate %1 saved to %2").arg(number()).arg(path),
                 {{tr("Close"), {}}});
}

void FindingPage::exportIt() {
    if (!looked_ || !looked_->pdf) return;
    const QString documents = QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation);
    const QString folder =
        QFileDialog::getExistingDirectory(this, tr("In which folder shall the export's folder be?"),
                                          QSettings().value(kFolder, documents).toString());
    if (!folder.isEmpty()) exportTo(QDir(folder).filePath(tr("certificate-%1").arg(number())));
}

void FindingPage::exportTo(const QString& folder) {
    const auto wanted = number();
    if (wanted == 0) return;
    archive_.ask([wanted, out = folder.toStdString()](
                     model::Archive& held) { return exportCertificate(held, wanted, out); },
                 this,
                 [this, wanted, folder](const model::Result<void>& done) {
                     if (!done) {
                         tell(done.error());
                         return;
                     }
                     notice_->say(Mark::Passes,
                                  tr("Certificate %1 with its record exported to %2. “sha256sum -c "
                                     "SHA256SUMS” in that folder checks the files.")
                                      .arg(wanted)
                                      .arg(folder),
                                  {{tr("Close"), {}}});
                     emit exported(folder);
                 });
}

void FindingPage::withdraw() {
    const auto wanted = number();
    if (wanted == 0 || !withdraw_->isEnabled()) return;
    auto* dialog = reasonDialog(
        tr("Withdraw certificate %1").arg(wanted),
        tr("It is declared void from now on and stays in the archive with your reason. Tell those "
           "who hold a copy: the paper does not know it."),
        tr("&Withdraw it"),
        [this, wanted](const std::string& reason, TaskDialog* asked, const TaskDialog::Then& then) {
            const Signer signer = session_.signer();
            if (!signer) {
                then(model::inputError("", "nobody is signed in any more; sign in again"));
                return;
            }
            archive_.ask(
                [wanted, reason, signer](model::Archive& held) {
                    return model::withdraw(held, wanted, reason, *signer);
                },
                asked,
                [this, then](const model::Result<void>& result) {
                    showCurrent();
                    if (result) emit changed();
                    then(result);
                });
        },
        this);
    dialog->open();
    emit taskShown(dialog);
}

void FindingPage::showKeeping() {
    if (!looked_) return;
    auto* dialog = new KeepingDialog(archive_, session_, looked_->certificate.facts.order, this);
    connect(dialog, &KeepingDialog::disposed, this, [this] {
        reload();
        emit changed();
    });
    dialog->open();
}

}  // namespace app
