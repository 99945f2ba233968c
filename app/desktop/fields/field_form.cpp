// SPDX-License-Identifier: Apache-2.0
#include "fields/field_form.h"

#include <QComboBox>
#include <QEvent>
#include <QGridLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QScrollArea>
#include <QToolButton>

#include "fields/field_words.h"
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
    Field made;
    made.facts = facts;
    made.label = new QLabel(facts.required ? tr("%1 *").arg(facts.label) : facts.label, this);
    made.error = new QLabel(this);
    made.error->setWordWrap(true);
    made.error->setTextFormat(Qt::PlainText);
    made.error->hide();
    QWidget* editor = makeEditor(made, field);
    made.behind = makeBehind(made, field);
    QString name = facts.label;
    if (!facts.unit.isEmpty()) name = tr("%1, %2").arg(name, facts.unit);
    if (facts.required) name = tr("%1, has to be filled in").arg(name);
    editor->setObjectName(qt(facts.field));
    editor->setAccessibleName(name);
    editor->setAccessibleDescription(facts.help);
    editor->setToolTip(facts.help);
    editor->installEventFilter(this);
    made.label->setBuddy(editor);
    made.label->setToolTip(facts.help);
    grid_->addWidget(made.label, row, LabelColumn,
                     made.paragraph ? Qt::AlignLeft | Qt::AlignTop : Qt::Alignment());
    grid_->addWidget(editor, row, EditColumn);
    grid_->addWidget(made.behind, row, UnitColumn);
    grid_->addWidget(made.error, row + 1, 0, 1, GridColumns);
    fields_.push_back(std::move(made));
    if (!facts.choices.empty()) setChoices(field, facts.choices);
    return field;
}

QWidget* FieldForm::makeEditor(Field& made, int field) {
    if (!made.facts.choices.empty()) {
        made.combo = new QComboBox(this);
        made.combo->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
        made.combo->setMinimumContentsLength(7);
        connect(made.combo, &QComboBox::activated, this, [this, field] {
            emit typed(field);
            emit changed();
            emit entered(field);
        });
        return made.combo;
    }
    if (made.facts.kind == model::FieldKind::Paragraph) {
        constexpr int kLines = 3;
        made.paragraph = new QPlainTextEdit(this);
        made.paragraph->setTabChangesFocus(true);
        made.paragraph->setFixedHeight(made.paragraph->fontMetrics().lineSpacing() * kLines +
                                       kLines * 4);
        connect(made.paragraph, &QPlainTextEdit::textChanged, this, [this, field] {
            if (at(field).paragraph->hasFocus()) typedIn(field);
        });
        return made.paragraph;
    }
    made.line = new QLineEdit(this);
    made.line->setMinimumWidth(made.line->fontMetrics().averageCharWidth() * 7);
    connect(made.line, &QLineEdit::textEdited, this, [this, field] { typedIn(field); });
    connect(made.line, &QLineEdit::editingFinished, this, [this, field] { enter(field); });
    return made.line;
}

/// The unit behind a field; behind a time the key that puts the present one in.
QWidget* FieldForm::makeBehind(Field& made, int field) {
    using model::FieldKind;
    if (made.line && (made.facts.kind == FieldKind::Moment || made.facts.kind == FieldKind::Date)) {
        const bool moment = made.facts.kind == FieldKind::Moment;
        made.line->setPlaceholderText(moment ? tr("2026-11-25 10:30 · n: now")
                                             : tr("2026-11-25 · n: today"));
        auto* now = new QToolButton(this);
        now->setText(moment ? tr("Now") : tr("Today"));
        now->setFocusPolicy(Qt::NoFocus);  // by keyboard the letter n in the field does it
        now->setAutoRaise(true);
        now->setAccessibleName(tr("%1: %2").arg(made.facts.label, now->text()));
        connect(now, &QToolButton::clicked, this, [this, field] {
            putNow(field);
            enter(field);
        });
        return now;
    }
    made.unit = new QLabel(made.facts.unit, this);
    return made.unit;
}

void FieldForm::typedIn(int field) {
    open_ = field;
    emit typed(field);
    emit changed();
}

void FieldForm::putNow(int field) {
    Field& of = at(field);
    if (readOnly_ || of.fixed) return;
    const bool moment = of.facts.kind == model::FieldKind::Moment;
    of.raw = moment ? momentNow() : dateToday();
    of.line->setText(moment ? momentShown(of.raw) : qt(of.raw));
    typedIn(field);
}

int FieldForm::find(const std::string& field) const {
    for (int i = 0; i < count(); ++i) {
        if (fields_[static_cast<std::size_t>(i)].facts.field == field) return i;
    }
    return -1;
}

std::string FieldForm::text(int field) const {
    const Field& shown = at(field);
    if (shown.combo) return shown.combo->currentData().toString().toStdString();
    if (shown.paragraph) return shown.paragraph->toPlainText().trimmed().toStdString();
    const QString text = shown.line->text().trimmed();
    if (shown.facts.kind != model::FieldKind::Moment) return text.toStdString();
    // What nobody has typed over keeps its seconds, and its place in the hour that comes twice.
    return text == momentShown(shown.raw) ? shown.raw : momentFrom(text);
}

void FieldForm::setText(int field, const std::string& text) {
    Field& shown = at(field);
    if (shown.combo) {
        int index = shown.combo->findData(qt(text));
        if (index < 0) {  // something else than the choices stands there: it is shown as it is
            shown.combo->addItem(qt(text), qt(text));
            index = shown.combo->count() - 1;
        }
        shown.combo->setCurrentIndex(index);
        return;
    }
    if (open_ == field) return;
    if (shown.paragraph) {
        if (shown.paragraph->toPlainText() == qt(text)) return;
        const QSignalBlocker quiet(shown.paragraph);
        shown.paragraph->setPlainText(qt(text));
        return;
    }
    const bool moment = shown.facts.kind == model::FieldKind::Moment;
    if (moment) shown.raw = text;
    const QString now = moment ? momentShown(text) : qt(text);
    if (shown.line->text() == now) return;
    shown.line->setText(now);
    shown.line->setCursorPosition(0);
    if (shown.line->hasFocus()) shown.line->selectAll();  // typing replaces what came
}

void FieldForm::setChoices(int field, const Choices& choices) {
    const Field& shown = at(field);
    const QString kept = shown.combo->currentData().toString();
    shown.combo->clear();
    for (const auto& [word, text] : choices) shown.combo->addItem(text, qt(word));
    shown.combo->setCurrentIndex(std::max(0, shown.combo->findData(kept)));
}

void FieldForm::setUnit(int field, const QString& unit) {
    const Field& shown = at(field);
    if (shown.unit) shown.unit->setText(unit);
    editor(field)->setAccessibleName(tr("%1, %2").arg(shown.facts.label, unit));
}

void FieldForm::setHint(int field, const QString& hint) {
    const Field& shown = at(field);
    if (shown.line) shown.line->setPlaceholderText(hint);
}

void FieldForm::setShown(int field, bool shown) {
    const Field& of = at(field);
    for (QWidget* widget : {static_cast<QWidget*>(of.label), editor(field), of.behind}) {
        widget->setVisible(shown);
    }
    of.error->setVisible(shown && !of.error->text().isEmpty());
}

bool FieldForm::shown(int field) const {
    return !editor(field)->isHidden();
}

QWidget* FieldForm::editor(int field) const {
    const Field& shown = at(field);
    if (shown.combo) return shown.combo;
    return shown.paragraph ? static_cast<QWidget*>(shown.paragraph) : shown.line;
}

QString FieldForm::error(int field) const {
    return at(field).error->property("reason").toString();
}

void FieldForm::showErrorColour(QLabel* label) const {
    QPalette colours = palette();
    colours.setColor(QPalette::WindowText, colourOf(Mark::Fails, colours.color(QPalette::Window)));
    label->setPalette(colours);
}

void FieldForm::setError(int field, const QString& error) {
    const Field& shown = at(field);
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
    readOnly_ = readOnly;
    for (int i = 0; i < count(); ++i) setFixed(i, at(i).fixed);
}

void FieldForm::setFixed(int field, bool fixed) {
    Field& of = at(field);
    of.fixed = fixed;
    const bool only = fixed || readOnly_;
    if (of.line) of.line->setReadOnly(only);
    if (of.paragraph) of.paragraph->setReadOnly(only);
    if (of.combo) of.combo->setEnabled(!only);
    if (!of.unit) of.behind->setEnabled(!only);
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

int FieldForm::fieldOf(const QObject* editor) const {
    for (int i = 0; i < count(); ++i) {
        if (this->editor(i) == editor) return i;
    }
    return -1;
}

/// Keys that do something in a field instead of being typed into it.
bool FieldForm::isShortcut(int field, int key) const {
    const auto kind = at(field).facts.kind;
    const bool time = kind == model::FieldKind::Moment || kind == model::FieldKind::Date;
    return key == Qt::Key_N && time && at(field).line;
}

bool FieldForm::eventFilter(QObject* watched, QEvent* event) {
    const int field = fieldOf(watched);
    if (field < 0) return QWidget::eventFilter(watched, event);
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
    if (event->type() == QEvent::FocusOut && at(field).paragraph) enter(field);
    if (event->type() == QEvent::ShortcutOverride && open_ < 0) {
        // Nothing is typed in the field: undo and redo are the examination's, not the field's.
        const auto* keys = static_cast<QKeyEvent*>(event);
        if (keys->matches(QKeySequence::Undo) || keys->matches(QKeySequence::Redo)) {
            event->ignore();
            return true;
        }
    }
    if (event->type() == QEvent::KeyPress) {
        const auto* keys = static_cast<QKeyEvent*>(event);
        const int key = keys->key();
        if ((key == Qt::Key_Return || key == Qt::Key_Enter) && !at(field).paragraph) {
            finishEditing();
            goOnFrom(qobject_cast<QWidget*>(watched));
            return true;
        }
        // Only before anything is typed: "noon" stays what it is.
        if (open_ != field && isShortcut(field, key) && keys->modifiers() == Qt::NoModifier) {
            putNow(field);
            return true;
        }
    }
    if (event->type() == QEvent::PaletteChange) showErrorColour(at(field).error);
    return QWidget::eventFilter(watched, event);
}

}  // namespace app
