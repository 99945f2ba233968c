// SPDX-License-Identifier: Apache-2.0
#include "bench/certificate_dialog.h"

#include <QCoreApplication>
#include <QDialogButtonBox>
#include <QDir>
#include <QFileDialog>
#include <QFileInfo>
#include <QFormLayout>
#include <QLabel>
#include <QLineEdit>
#include <QMessageBox>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QSettings>
#include <QStandardPaths>

namespace app {
namespace {

constexpr auto kName = "works/name";
constexpr auto kAddress = "works/address";
constexpr auto kFolder = "certificate/folder";

QString fileNameFor(QString serial) {
    for (QChar& character : serial) {
        if (!character.isLetterOrNumber() && character != '-' && character != '_') character = '_';
    }
    return QCoreApplication::translate("CertificateDialog", "certificate_%1.pdf").arg(serial);
}

}  // namespace

CertificateDialog::CertificateDialog(const QString& serial, bool demonstration, bool incomplete,
                                     QWidget* parent)
    : QDialog(parent),
      name_(new QLineEdit(this)),
      address_(new QPlainTextEdit(this)),
      path_(new QLineEdit(this)) {
    setWindowTitle(tr("Certificate of casting %1").arg(serial));
    const QSettings settings;
    name_->setText(demonstration ? tr("Quillmere Foundry (invented)")
                                 : settings.value(kName).toString());
    name_->setReadOnly(demonstration);
    address_->setPlainText(demonstration ? QString() : settings.value(kAddress).toString());
    address_->setReadOnly(demonstration);
    address_->setTabChangesFocus(true);
    address_->setFixedHeight(address_->fontMetrics().height() * 3 + 14);
    const QString documents = QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation);
    const QDir folder(settings.value(kFolder, documents).toString());
    path_->setText(folder.filePath(fileNameFor(serial)));
    path_->setMinimumWidth(path_->fontMetrics().averageCharWidth() * 60);
    path_->setObjectName("certificatePath");

    auto* note = new QLabel(
        tr("The certificate is made from what the archive holds now. It is marked NOT RELEASED: "
           "release by the QA manager comes later and is signed."),
        this);
    note->setWordWrap(true);
    auto* choose = new QPushButton(tr("C&hoose…"), this);
    connect(choose, &QPushButton::clicked, this, &CertificateDialog::choosePath);
    auto* file = new QHBoxLayout;
    file->addWidget(path_, 1);
    file->addWidget(choose);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Cancel, this);
    auto* make = buttons->addButton(tr("&Make certificate"), QDialogButtonBox::AcceptRole);
    make->setDefault(true);
    connect(buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    connect(this, &QDialog::accepted, this, [this, demonstration] {
        QSettings kept;
        if (!demonstration) {
            kept.setValue(kName, worksName());
            kept.setValue(kAddress, worksAddress());
        }
        kept.setValue(kFolder, QFileInfo(path()).absolutePath());
    });
    auto* form = new QFormLayout(this);
    form->addRow(note);
    if (incomplete) {
        auto* open = new QLabel(tr("⚠ Some rows cannot be read yet. They are never left out: the "
                                   "certificate is refused until they are complete."),
                                this);
        open->setWordWrap(true);
        form->addRow(open);
    }
    form->addRow(tr("&Works"), name_);
    form->addRow(tr("&Address"), address_);
    auto* fileLabel = new QLabel(tr("&File"), this);
    fileLabel->setBuddy(path_);
    form->addRow(fileLabel, file);
    form->addRow(buttons);
}

QString CertificateDialog::worksName() const {
    return name_->text().trimmed();
}
QString CertificateDialog::worksAddress() const {
    return address_->toPlainText().trimmed();
}
QString CertificateDialog::path() const {
    return QDir::current().absoluteFilePath(path_->text());
}

void CertificateDialog::choosePath() {
    const QString chosen = QFileDialog::getSaveFileName(this, tr("Write the certificate to"),
                                                        path_->text(), tr("PDF files (*.pdf)"));
    if (chosen.isEmpty()) return;
    path_->setText(chosen);
    mayReplace_ = path();
}

void CertificateDialog::accept() {
    if (!QFileInfo::exists(path()) || path() == mayReplace_) {
        QDialog::accept();
        return;
    }
    auto* box = new QMessageBox(QMessageBox::Question, tr("Replace the file?"),
                                tr("%1 is there already.").arg(path()), QMessageBox::Cancel, this);
    box->setAttribute(Qt::WA_DeleteOnClose);
    auto* replace = box->addButton(tr("&Replace it"), QMessageBox::AcceptRole);
    connect(replace, &QAbstractButton::clicked, this, [this] {
        mayReplace_ = path();
        accept();
    });
    box->open();
}

}  // namespace app
