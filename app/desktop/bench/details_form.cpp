// SPDX-License-Identifier: Apache-2.0
#include "bench/details_form.h"

#include <QDate>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>

#include "looks/text.h"

namespace app {

DetailsForm::DetailsForm(QWidget* parent) : QWidget(parent) {
    auto* layout = new QHBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(6);
    addField(tr("Examined &by"), &Details::examinedBy, 18, "examinedBy");
    addField(tr("&on"), &Details::examinedOn, 10, "examinedOn");
    addField(tr("P&rocedure"), &Details::procedure, 18, "procedure");
    addField(tr("Re&marks"), &Details::remarks, 0, "remarks");
    fields_[1].line->setPlaceholderText(tr("2026-11-25"));
    fields_[1].line->setToolTip(tr("Date of the test: year-month-day"));
}

QLineEdit* DetailsForm::addField(const QString& label, std::string Details::*field, int characters,
                                 const QString& name) {
    auto* line = new QLineEdit(this);
    line->setObjectName(name);
    auto* text = new QLabel(label, this);
    text->setBuddy(line);
    auto* row = qobject_cast<QHBoxLayout*>(layout());
    row->addWidget(text);
    row->addWidget(line, characters == 0 ? 5 : characters / 5);
    QString plain = label;
    plain.remove('&');
    line->setAccessibleName(plain);
    if (characters > 0) {
        line->setMinimumWidth(line->fontMetrics().averageCharWidth() * characters / 2);
    }
    fields_.push_back({line, field, plain.toLower()});
    connect(line, &QLineEdit::editingFinished, this,
            [this, line, field, plain] { takeOver(line, field, plain.toLower()); });
    return line;
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

void DetailsForm::finishEditing() {
    for (const auto& field : fields_) {
        if (field.line->hasFocus()) takeOver(field.line, field.field, field.label);
    }
}

}  // namespace app
