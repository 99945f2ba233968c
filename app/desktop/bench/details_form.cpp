// SPDX-License-Identifier: Apache-2.0
#include "bench/details_form.h"

#include <QDate>
#include <QGridLayout>
#include <QLabel>
#include <QLineEdit>

#include "looks/text.h"

namespace app {

DetailsForm::DetailsForm(QWidget* parent) : QWidget(parent), grid_(new QGridLayout(this)) {
    grid_->setContentsMargins(0, 0, 0, 0);
    grid_->setSpacing(6);
    addField(tr("Examined &by"), &Details::examinedBy, "examinedBy", 0, 0, 1);
    addField(tr("&on"), &Details::examinedOn, "examinedOn", 0, 2, 1);
    addField(tr("P&rocedure"), &Details::procedure, "procedure", 0, 4, 1);
    addField(tr("Re&marks"), &Details::remarks, "remarks", 1, 0, 5);
    grid_->setColumnStretch(1, 4);
    grid_->setColumnStretch(3, 2);
    grid_->setColumnStretch(5, 4);
    fields_[1].line->setPlaceholderText(tr("2026-11-25"));
    fields_[1].line->setToolTip(tr("Date of the test: year-month-day"));
}

void DetailsForm::addField(const QString& label, std::string Details::*field, const QString& name,
                           int row, int column, int span) {
    auto* line = new QLineEdit(this);
    line->setObjectName(name);
    auto* text = new QLabel(label, this);
    text->setBuddy(line);
    grid_->addWidget(text, row, column);
    grid_->addWidget(line, row, column + 1, 1, span);
    QString plain = label;
    plain.remove('&');
    line->setAccessibleName(plain);
    fields_.push_back({line, field, plain.toLower()});
    connect(line, &QLineEdit::editingFinished, this,
            [this, line, field, plain] { takeOver(line, field, plain.toLower()); });
}

void DetailsForm::show(CastingEditor* editor, int examination) {
    if (editor_) editor_->disconnect(this);
    editor_ = editor;
    examination_ = examination;
    if (editor_) {
        connect(editor_, &CastingEditor::detailsChanged, this, [this](int changed) {
            if (changed == examination_) refresh();
        });
        connect(editor_, &QObject::destroyed, this, [this] { show(nullptr, -1); });
    }
    refresh();
}

void DetailsForm::refresh() {
    const Details details = editor_ ? detailsOf(editor_->draft(examination_)) : Details();
    for (const auto& field : fields_) {
        const QString text = qt(details.*field.field);
        if (field.line->text() != text) {
            field.line->setText(text);
            field.line->setCursorPosition(0);
        }
    }
}

void DetailsForm::takeOver(QLineEdit* line, std::string Details::*field, const QString& label) {
    if (!editor_) return;
    Details details = detailsOf(editor_->draft(examination_));
    details.*field = line->text().trimmed().toStdString();
    editor_->setDetails(examination_, std::move(details), label);
}

void DetailsForm::setReadOnly(bool readOnly) {
    for (const auto& field : fields_) field.line->setReadOnly(readOnly);
}

void DetailsForm::finishEditing() {
    for (const auto& field : fields_) {
        if (field.line->hasFocus()) takeOver(field.line, field.field, field.label);
    }
}

}  // namespace app
