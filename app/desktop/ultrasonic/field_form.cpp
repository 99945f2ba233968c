// SPDX-License-Identifier: Apache-2.0
#include "ultrasonic_bench/field_form.h"

#include <QComboBox>
#include <QEvent>
#include <QGridLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QScrollArea>

#include "looks/heading.h"
#include "looks/mark.h"
#include "looks/text.h"

namespace app {
namespace {

enum GridColumn { LabelColumn, EditColumn, UnitColumn, GridColumns };

}  // namespace

FieldForm::FieldForm(QWidget* parent) : QWidget(parent), grid_(new QGridLayout(this)) {
    grid_->setContentsMargins(0, 0, 0, 0);
    grid_->setHorizontalSpacing(6);
    grid_->setVerticalSpacing(4);
    grid_->setColumnStretch(EditColumn, 1);
}

void FieldForm::addHeading(const QString& text) {
    const int row = grid_->rowCount();
    if (row > 1) grid_->setRowMinimumHeight(row, 8);
    grid_->addWidget(new Heading(1.05, this, text), row + 1, 0, 1, GridColumns);
}

void FieldForm::addWide(QWidget* widget) {
    grid_->addWidget(widget, grid_->rowCount(), 0, 1, GridColumns);
}

int FieldForm::add(const FieldFacts& facts) {
    const int field = count();
    const int row = grid_->rowCount();
    auto* label = new QLabel(facts.label, this);
    auto* unit = new QLabel(facts.unit, this);
    auto* error = new QLabel(this);
    error->setWordWrap(true);
    error->setTextFormat(Qt::PlainText);
    error->hide();
    Field made{facts, label, nullptr, nullptr, unit, error};
    QWidget* editor = nullptr;
    if (facts.choices.empty()) {
        made.line = new QLineEdit(this);
        made.line->setMinimumWidth(made.line->fontMetrics().averageCharWidth() * 7);
        editor = made.line;
        connect(made.line, &QLineEdit::textEdited, this, [this, field] {
            open_ = field;
            emit typed(field);
        });
        connect(made.line, &QLineEdit::editingFinished, this, [this, field] { enter(field); });
    } else {
        made.combo = new QComboBox(this);
        made.combo->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
        made.combo->setMinimumContentsLength(7);
        editor = made.combo;
        connect(made.combo, &QComboBox::activated, this, [this, field] {
            emit typed(field);
            emit entered(field);
        });
    }
    editor->setObjectName(qt(facts.field));
    editor->setAccessibleName(facts.unit.isEmpty() ? facts.label
                                                   : tr("%1, %2").arg(facts.label, facts.unit));
    editor->setAccessibleDescription(facts.help);
    editor->setToolTip(facts.help);
    editor->installEventFilter(this);
    label->setBuddy(editor);
    label->setToolTip(facts.help);
    grid_->addWidget(label, row, LabelColumn);
    grid_->addWidget(editor, row, EditColumn);
    grid_->addWidget(unit, row, UnitColumn);
    grid_->addWidget(error, row + 1, 0, 1, GridColumns);
    fields_.push_back(std::move(made));
    if (!facts.choices.empty()) setChoices(field, facts.choices);
    return field;
}

int FieldForm::find(const std::string& field) const {
    for (int i = 0; i < count(); ++i) {
        if (fields_[static_cast<std::size_t>(i)].facts.field == field) return i;
    }
    return -1;
}

std::string FieldForm::text(int field) const {
    const auto& shown = fields_[static_cast<std::size_t>(field)];
    return shown.combo ? shown.combo->currentData().toString().toStdString()
                       : shown.line->text().trimmed().toStdString();
}

void FieldForm::setText(int field, const std::string& text) {
    const auto& shown = fields_[static_cast<std::size_t>(field)];
    if (shown.combo) {
        int index = shown.combo->findData(qt(text));
        if (index < 0) {  // something else than the choices stands there: it is shown as it is
            shown.combo->addItem(qt(text), qt(text));
            index = shown.combo->count() - 1;
        }
        shown.combo->setCurrentIndex(index);
    } else if (open_ != field && shown.line->text() != qt(text)) {
        shown.line->setText(qt(text));
        shown.line->setCursorPosition(0);
        if (shown.line->hasFocus()) shown.line->selectAll();  // typing replaces what came
    }
}

void FieldForm::setChoices(int field, const Choices& choices) {
    const auto& shown = fields_[static_cast<std::size_t>(field)];
    const QString kept = shown.combo->currentData().toString();
    shown.combo->clear();
    for (const auto& [word, text] : choices) shown.combo->addItem(text, qt(word));
    shown.combo->setCurrentIndex(std::max(0, shown.combo->findData(kept)));
}

void FieldForm::setUnit(int field, const QString& unit) {
    auto& shown = fields_[static_cast<std::size_t>(field)];
    shown.unit->setText(unit);
    editor(field)->setAccessibleName(tr("%1, %2").arg(shown.facts.label, unit));
}

void FieldForm::setHint(int field, const QString& hint) {
    const auto& shown = fields_[static_cast<std::size_t>(field)];
    if (shown.line) shown.line->setPlaceholderText(hint);
}

void FieldForm::setShown(int field, bool shown) {
    const auto& of = fields_[static_cast<std::size_t>(field)];
    for (QWidget* widget :
         {static_cast<QWidget*>(of.label), editor(field), static_cast<QWidget*>(of.unit)}) {
        widget->setVisible(shown);
    }
    of.error->setVisible(shown && !of.error->text().isEmpty());
}

bool FieldForm::shown(int field) const {
    return !editor(field)->isHidden();
}

QWidget* FieldForm::editor(int field) const {
    const auto& shown = fields_[static_cast<std::size_t>(field)];
    return shown.combo ? static_cast<QWidget*>(shown.combo) : shown.line;
}

QString FieldForm::error(int field) const {
    return fields_[static_cast<std::size_t>(field)].error->property("reason").toString();
}

void FieldForm::showErrorColour(QLabel* label) const {
    QPalette colours = palette();
    colours.setColor(QPalette::WindowText, colourOf(Mark::Fails, colours.color(QPalette::Window)));
    label->setPalette(colours);
}

void FieldForm::setError(int field, const QString& error) {
    const auto& shown = fields_[static_cast<std::size_t>(field)];
    shown.error->setProperty("reason", error);
    shown.error->setText(error.isEmpty() ? QString() : tr("✗  %1").arg(error));
    showErrorColour(shown.error);
    shown.error->setVisible(!error.isEmpty() && !editor(field)->isHidden());
    editor(field)->setAccessibleDescription(
        error.isEmpty() ? shown.facts.help : tr("%1. %2").arg(error, shown.facts.help));
}

void FieldForm::clearErrors() {
    for (int i = 0; i < count(); ++i) setError(i, {});
}

void FieldForm::setReadOnly(bool readOnly) {
    for (const auto& field : fields_) {
        if (field.line) field.line->setReadOnly(readOnly);
        if (field.combo) field.combo->setEnabled(!readOnly);
    }
}

void FieldForm::enter(int field) {
    if (open_ != field) return;
    open_ = -1;
    emit entered(field);
}

void FieldForm::finishEditing() {
    if (open_ >= 0) enter(open_);
}

/// To the next field that is shown, or out at the end.
void FieldForm::goOnFrom(const QWidget* editor) {
    int field = 0;
    while (field < count() && this->editor(field) != editor) ++field;
    do ++field;
    while (field < count() && !shown(field));
    if (field >= count()) {
        emit ended();
    } else {
        this->editor(field)->setFocus(Qt::TabFocusReason);
    }
}

bool FieldForm::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() == QEvent::FocusIn) {
        auto* editor = qobject_cast<QWidget*>(watched);
        emit helpChanged(editor->toolTip());
        for (QWidget* around = parentWidget(); around; around = around->parentWidget()) {
            if (auto* scroll = qobject_cast<QScrollArea*>(around)) {
                scroll->ensureWidgetVisible(editor);
                break;
            }
        }
    }
    if (event->type() == QEvent::ShortcutOverride && open_ < 0) {
        // Nothing is typed in the field: undo and redo are the examination's, not the field's.
        const auto* keys = static_cast<QKeyEvent*>(event);
        if (keys->matches(QKeySequence::Undo) || keys->matches(QKeySequence::Redo)) {
            event->ignore();
            return true;
        }
    }
    if (event->type() == QEvent::KeyPress) {
        const auto key = static_cast<QKeyEvent*>(event)->key();
        if (key == Qt::Key_Return || key == Qt::Key_Enter) {
            finishEditing();
            goOnFrom(qobject_cast<QWidget*>(watched));
            return true;
        }
    }
    if (event->type() == QEvent::PaletteChange) {
        for (const auto& field : fields_) showErrorColour(field.error);
    }
    return QWidget::eventFilter(watched, event);
}

}  // namespace app
