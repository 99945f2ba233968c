// SPDX-License-Identifier: Apache-2.0
#include "ultrasonic_bench/coverage_page.h"

#include <QEvent>
#include <QLabel>
#include <QPlainTextEdit>
#include <QVBoxLayout>

#include "fields/field_form.h"
#include "looks/text.h"

namespace app {
namespace {

enum Field { ZoneArea, SmallestFbh, SignalToNoise, DeadZone };

template <class Quantity>
std::string typedText(const std::optional<Quantity>& value) {
    return value ? model::toText(*value) : std::string();
}

}  // namespace

CoveragePage::CoveragePage(QWidget* parent)
    : QWidget(parent),
      form_(new FieldForm(this)),
      directions_(new QPlainTextEdit(this)),
      help_(new QLabel(this)) {
    form_->add({"zone_area_mm2",
                tr("Area examined"),
                tr("mm²"),
                tr("Of the zone. Limits that are a share of the area need it. Empty: not stated."),
                {}});
    form_->add({"testability.smallest_fbh_mm",
                tr("Smallest hole that shows"),
                tr("mm"),
                tr("Testability: diameter of the smallest flat-bottomed hole whose echo shows at "
                   "the end of the range. Without testability nothing is judged."),
                {}});
    form_->add({"testability.signal_to_noise_db",
                tr("Its signal to noise"),
                tr("dB"),
                tr("How far that hole's echo stands above the noise, at the end of the range."),
                {}});
    form_->add({"dead_zone_mm",
                tr("Dead zone"),
                tr("mm"),
                tr("Depth below the scanned surface in which nothing can be told from the "
                   "transmission pulse. A dead zone that no other direction covers is not judged."),
                {}});
    auto* label = new QLabel(tr("Scanned from, one &direction a line"), this);
    label->setBuddy(directions_);
    directions_->setObjectName("directions");
    directions_->setAccessibleName(tr("Scanned from, one direction a line"));
    directions_->setToolTip(
        tr("From which face and how: \"top face, straight beam\". The dead zone "
           "of one direction is covered by an opposite one."));
    directions_->setTabChangesFocus(true);
    directions_->setMaximumHeight(directions_->fontMetrics().height() * 6);
    directions_->installEventFilter(this);
    help_->setWordWrap(true);
    help_->setForegroundRole(QPalette::PlaceholderText);
    help_->setAccessibleName(tr("About the field"));
    form_->setMaximumWidth(form_->fontMetrics().averageCharWidth() * 64);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 8, 0, 0);
    layout->addWidget(form_);
    layout->addSpacing(6);
    layout->addWidget(label);
    layout->addWidget(directions_);
    layout->addWidget(help_);
    layout->addStretch(1);
    connect(form_, &FieldForm::typed, this, [this] { check(); });
    connect(form_, &FieldForm::entered, this,
            [this](int field) { commit(form_->editor(field)->accessibleName()); });
    connect(form_, &FieldForm::helpChanged, help_, &QLabel::setText);
    connect(form_, &FieldForm::ended, directions_, [this] { directions_->setFocus(); });
    setTabOrder(form_->editor(form_->count() - 1), directions_);
}

void CoveragePage::show(CastingDesk* desk, int examination) {
    if (desk_ && desk_ != desk) desk_->editor().disconnect(this);
    if (desk && desk_ != desk) {
        connect(&desk->editor(), &CastingEditor::detailsChanged, this, [this](int changed) {
            if (changed == examination_) refresh();
        });
        connect(&desk->editor(), &CastingEditor::locksChanged, this, &CoveragePage::refresh);
        connect(desk, &QObject::destroyed, this, [this] {
            desk_ = nullptr;
            examination_ = -1;
        });
    }
    if (desk_ != desk || examination_ != examination) form_->clearErrors();
    desk_ = desk;
    examination_ = examination;
    refresh();
}

/// A field that cannot be read keeps what was typed.
void CoveragePage::refresh() {
    if (!desk_ || examination_ < 0) return;
    const auto& test = desk_->editor().draft(examination_).header.ultrasonic;
    const auto testability = test.testability.value_or(model::Testability());
    const auto show = [this](int field, const std::string& text) {
        if (form_->error(field).isEmpty()) form_->setText(field, text);
    };
    show(ZoneArea, typedText(test.zoneArea));
    show(SmallestFbh, typedText(testability.smallestFbh));
    show(SignalToNoise, typedText(testability.signalToNoise));
    show(DeadZone, typedText(test.deadZone));
    QStringList lines;
    for (const auto& direction : test.directions) lines << qt(direction);
    if (!directions_->hasFocus()) directions_->setPlainText(lines.join('\n'));
    const bool locked = desk_->editor().locked(examination_);
    form_->setReadOnly(locked);
    directions_->setReadOnly(locked);
}

std::optional<model::UltrasonicTest> CoveragePage::check() {
    form_->clearErrors();
    bool readable = true;
    const auto number = [&](int field, bool zeroToo) -> std::optional<std::int64_t> {
        const std::string text = form_->text(field);
        if (text.empty()) return std::nullopt;
        const auto read = model::parseLength(text, model::LengthUnit::Millimetre);
        if (!read) {
            form_->setError(field, reasonText(read.error()));
        } else if (read->value < model::Length() || (!zeroToo && read->value == model::Length())) {
            form_->setError(field,
                            zeroToo ? tr("must not be below zero") : tr("must be above zero"));
        } else {
            return read->value.millionths();
        }
        readable = false;
        return std::nullopt;
    };
    model::UltrasonicTest test;
    if (const auto area = number(ZoneArea, false))
        test.zoneArea = model::Area::fromMillionths(*area);
    model::Testability testability;
    if (const auto hole = number(SmallestFbh, false)) {
        testability.smallestFbh = model::Length::fromMillionths(*hole);
    }
    if (const auto ratio = number(SignalToNoise, true)) {
        testability.signalToNoise = model::GainStep::fromMillionths(*ratio);
    }
    if (testability.smallestFbh || testability.signalToNoise) test.testability = testability;
    if (const auto dead = number(DeadZone, true)) {
        test.deadZone = model::Length::fromMillionths(*dead);
    }
    for (const QString& line : directions_->toPlainText().split('\n')) {
        if (!line.trimmed().isEmpty()) test.directions.push_back(line.trimmed().toStdString());
    }
    return readable ? std::optional(test) : std::nullopt;
}

void CoveragePage::commit(const QString& what) {
    if (!desk_ || examination_ < 0 || desk_->editor().locked(examination_)) return;
    auto test = check();
    if (!test) return;
    Details details = detailsOf(desk_->editor().draft(examination_));
    details.ultrasonic = std::move(*test);
    desk_->editor().setDetails(examination_, std::move(details), what);
}

void CoveragePage::finishEditing() {
    form_->finishEditing();
    commit(tr("directions"));
}

void CoveragePage::focusFirst() {
    form_->editor(0)->setFocus(Qt::TabFocusReason);
}

bool CoveragePage::eventFilter(QObject* watched, QEvent* event) {
    if (watched == directions_ && event->type() == QEvent::FocusOut) commit(tr("directions"));
    if (watched == directions_ && event->type() == QEvent::FocusIn) {
        help_->setText(directions_->toolTip());
    }
    return QWidget::eventFilter(watched, event);
}

}  // namespace app
