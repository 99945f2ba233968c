// SPDX-License-Identifier: Apache-2.0
#include "people/works_dialog.h"

#include <QFormLayout>
#include <QLineEdit>
#include <QPlainTextEdit>

#include "looks/task_dialog.h"
#include "looks/text.h"

namespace app {

WorksFields::WorksFields(TaskDialog& dialog, model::ArchiveKind kind)
    : QObject(&dialog),
      name_(new QLineEdit(&dialog)),
      place_(new QLineEdit(&dialog)),
      works_(worksOf(kind)),
      demonstration_(kind == model::ArchiveKind::Demonstration) {
    name_->setObjectName("worksName");
    name_->setAccessibleName(tr("Works"));
    name_->setText(qt(works_.name));
    dialog.form().addRow(tr("&Works"), name_);
    address_ = dialog.addText(tr("A&ddress"), "worksAddress");
    address_->setFixedHeight(address_->fontMetrics().height() * 3 + 14);
    address_->setPlainText(qt(works_.address));
    place_->setObjectName("worksPlace");
    place_->setAccessibleName(tr("Place of signing"));
    place_->setText(qt(works_.place));
    dialog.form().addRow(tr("&Place of signing"), place_);
    for (auto* line : {name_, place_}) {
        line->setReadOnly(demonstration_);
        connect(line, &QLineEdit::textChanged, &dialog, &TaskDialog::refresh);
    }
    address_->setReadOnly(demonstration_);
}

QString WorksFields::missing() const {
    return name_->text().trimmed().isEmpty() ? tr("Type the name of the works.") : QString();
}

Works WorksFields::take() {
    works_.name = name_->text().trimmed().toStdString();
    works_.address = address_->toPlainText().trimmed().toStdString();
    works_.place = place_->text().trimmed().toStdString();
    if (!demonstration_) keep(works_);
    return works_;
}

TaskDialog* worksDialog(model::ArchiveKind kind, QWidget* parent) {
    auto* dialog = new TaskDialog(WorksFields::tr("Works and time stamps"),
                                  WorksFields::tr("This stands on every certificate that is made "
                                                  "at this window."),
                                  WorksFields::tr("&Keep it"), parent);
    auto* fields = new WorksFields(*dialog, kind);
    auto* stamps = new QLineEdit(qt(worksOf(kind).timeStamps), dialog);
    stamps->setObjectName("timeStamps");
    stamps->setPlaceholderText(WorksFields::tr("https://…, may be empty"));
    stamps->setReadOnly(kind == model::ArchiveKind::Demonstration);
    dialog->form().addRow(WorksFields::tr("&Time-stamp service"), stamps);
    dialog->addNote(WorksFields::tr(
        "A time stamp (RFC 3161) proves that a signature was there while its certificate was "
        "still valid. Only a hash leaves this machine. Without one a signature proves little once "
        "the certificate has ended."));
    dialog->setMissing([fields] { return fields->missing(); });
    dialog->setWork([=](const TaskDialog::Then& then) {
        if (kind == model::ArchiveKind::Demonstration) {
            then({});
            return;
        }
        Works works = fields->take();
        works.timeStamps = stamps->text().trimmed().toStdString();
        if (auto means = IssueMeans::make(works); !means) {
            then(means.error());
            return;
        }
        keep(works);
        then({});
    });
    return dialog;
}

}  // namespace app
