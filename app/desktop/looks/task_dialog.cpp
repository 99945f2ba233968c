// SPDX-License-Identifier: Apache-2.0
#include "looks/task_dialog.h"

#include <QDialogButtonBox>
#include <QFormLayout>
#include <QLabel>
#include <QPlainTextEdit>
#include <QPointer>
#include <QProgressBar>
#include <QPushButton>
#include <QVBoxLayout>
#include <algorithm>

#include "looks/mark.h"
#include "looks/text.h"

namespace app {

TaskDialog::TaskDialog(const QString& title, const QString& intro, const QString& act,
                       QWidget* parent)
    : QDialog(parent),
      fields_(new QWidget(this)),
      form_(new QFormLayout(fields_)),
      trouble_(new QLabel(this)),
      busy_(new QProgressBar(this)) {
    setWindowTitle(title);
    setAttribute(Qt::WA_DeleteOnClose);
    auto* text = new QLabel(intro, this);
    text->setWordWrap(true);
    text->setTextFormat(Qt::PlainText);
    text->setVisible(!intro.isEmpty());
    text->setMinimumWidth(text->fontMetrics().averageCharWidth() * 64);
    form_->setContentsMargins(0, 0, 0, 0);
    form_->setSpacing(8);
    form_->setFieldGrowthPolicy(QFormLayout::AllNonFixedFieldsGrow);
    trouble_->setWordWrap(true);
    trouble_->setTextFormat(Qt::PlainText);
    trouble_->setTextInteractionFlags(Qt::TextSelectableByMouse);
    trouble_->setAccessibleName(tr("What stands in the way"));
    trouble_->setObjectName("trouble");
    busy_->setRange(0, 0);
    busy_->setTextVisible(false);
    busy_->setAccessibleName(tr("At work"));
    busy_->hide();
    auto* buttons = new QDialogButtonBox(this);
    act_ = buttons->addButton(act, QDialogButtonBox::AcceptRole);
    act_->setObjectName("act");
    act_->setDefault(true);
    leave_ = buttons->addButton(QDialogButtonBox::Cancel);
    leave_->setText(tr("&Cancel"));
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(18, 16, 18, 12);
    layout->setSpacing(12);
    layout->addWidget(text);
    layout->addWidget(fields_, 1);
    layout->addWidget(trouble_);
    layout->addWidget(busy_);
    layout->addWidget(buttons);
    connect(buttons, &QDialogButtonBox::accepted, this, &TaskDialog::accept);
    connect(buttons, &QDialogButtonBox::rejected, this, &TaskDialog::reject);
    setTrouble({});
}

void TaskDialog::setMissing(std::function<QString()> missing) {
    missing_ = std::move(missing);
    refresh();
}

void TaskDialog::refresh() {
    const QString missing = missing_ ? missing_() : QString();
    act_->setEnabled(!working_ && missing.isEmpty());
    act_->setToolTip(missing);
}

QLabel* TaskDialog::addNote(const QString& text) {
    auto* note = new QLabel(text, this);
    note->setWordWrap(true);
    note->setTextFormat(Qt::PlainText);
    note->setForegroundRole(QPalette::PlaceholderText);
    form_->addRow(note);
    return note;
}

QPlainTextEdit* TaskDialog::addText(const QString& label, const QString& name) {
    auto* text = new QPlainTextEdit(this);
    text->setObjectName(name);
    text->setTabChangesFocus(true);
    text->setFixedHeight(text->fontMetrics().height() * 4 + 14);
    QString plain = label;
    text->setAccessibleName(plain.remove('&'));
    form_->addRow(label, text);
    connect(text, &QPlainTextEdit::textChanged, this, &TaskDialog::refresh);
    return text;
}

QString TaskDialog::trouble() const {
    QString text = trouble_->text();
    return text.remove("✗  ");
}

void TaskDialog::setTrouble(const QString& text) {
    QPalette colours = palette();
    colours.setColor(QPalette::WindowText, colourOf(Mark::Fails, colours.color(QPalette::Window)));
    trouble_->setPalette(colours);
    trouble_->setText(text.isEmpty() ? text : "✗  " + text);
    trouble_->setVisible(!text.isEmpty());
    if (!isVisible()) return;
    layout()->activate();
    resize(size().expandedTo(QSize(width(), layout()->totalHeightForWidth(width()))));
}

void TaskDialog::setProgress(qint64 done, qint64 total) {
    constexpr int kSteps = 1000;
    busy_->setRange(0, total > 0 ? kSteps : 0);
    if (total > 0) busy_->setValue(static_cast<int>(std::min(done, total) * kSteps / total));
}

void TaskDialog::setWorking(bool working) {
    working_ = working;
    fields_->setEnabled(!working);
    setProgress(0, 0);
    busy_->setVisible(working);
    leave_->setEnabled(!working || mayLeave_);
    refresh();
}

void TaskDialog::accept() {
    refresh();
    if (working_ || !act_->isEnabled() || !work_) return;
    setTrouble({});
    setWorking(true);
    work_([guard = QPointer<TaskDialog>(this)](const model::Result<void>& result) {
        if (guard) guard->finish(result);
    });
}

void TaskDialog::reject() {
    if (!working_ || mayLeave_) QDialog::reject();
}

void TaskDialog::finish(const model::Result<void>& result) {
    setWorking(false);
    if (!result) {
        setTrouble(sentence(result.error()));
        return;
    }
    emit completed();
    QDialog::accept();
}

TaskDialog* reasonDialog(
    const QString& title, const QString& intro, const QString& act,
    std::function<void(std::string reason, TaskDialog* dialog, TaskDialog::Then then)> work,
    QWidget* parent) {
    auto* dialog = new TaskDialog(title, intro, act, parent);
    auto* text = dialog->addText(TaskDialog::tr("&Reason"), "reason");
    dialog->setMissing([text] {
        return text->toPlainText().trimmed().isEmpty() ? TaskDialog::tr("State the reason.")
                                                       : QString();
    });
    dialog->setWork([text, dialog, work = std::move(work)](TaskDialog::Then then) {
        work(text->toPlainText().trimmed().toStdString(), dialog, std::move(then));
    });
    text->setFocus();
    return dialog;
}

}  // namespace app
