// SPDX-License-Identifier: Apache-2.0
// How the page of a reading is put together.
#include <QBoxLayout>
#include <QEvent>
#include <QLabel>
#include <QScrollArea>
#include <QShortcut>
#include <QSplitter>
#include <QStyle>
#include <QToolButton>

#include "looks/heading.h"
#include "ultrasonic_bench/reading_page.h"
#include "ultrasonic_bench/reading_result.h"

namespace app {

ReadingPage::ReadingPage(QWidget* parent)
    : QWidget(parent),
      sides_(new QHBoxLayout(this)),
      scroll_(new QScrollArea(this)),
      title_(new Heading(1.1, this)),
      previous_(new QToolButton(this)),
      next_(new QToolButton(this)),
      form_(new FieldForm(this)),
      result_(new ReadingResult(this)),
      pictures_(new QSplitter(Qt::Vertical, this)),
      diagram_(new EchoDiagramView(this)),
      section_(new BeamSectionView(this)),
      help_(new QLabel(this)) {
    makeForm();
    help_->setWordWrap(true);
    help_->setForegroundRole(QPalette::PlaceholderText);
    help_->setAccessibleName(tr("About the field"));
    const auto step = [this](QToolButton* button, Qt::ArrowType arrow, const QString& name,
                             Qt::Key key, int by) {
        button->setArrowType(arrow);
        button->setAutoRaise(true);
        button->setAccessibleName(name);
        button->setToolTip(tr("%1 (%2)").arg(name, QKeySequence(key).toString()));
        auto* shortcut = new QShortcut(key, this);
        shortcut->setContext(Qt::WidgetWithChildrenShortcut);
        connect(shortcut, &QShortcut::activated, button, &QToolButton::click);
        connect(button, &QToolButton::clicked, this, [this, by] { emit rowWanted(row_ + by); });
    };
    step(previous_, Qt::LeftArrow, tr("Previous indication"), Qt::Key_PageUp, -1);
    step(next_, Qt::RightArrow, tr("Next indication"), Qt::Key_PageDown, 1);
    auto* head = new QHBoxLayout;
    head->addWidget(title_, 1);
    head->addWidget(previous_);
    head->addWidget(next_);
    auto* entry = new QWidget(this);
    entryLayout_ = new QVBoxLayout(entry);
    entryLayout_->setContentsMargins(0, 0, 8, 0);
    entryLayout_->setSpacing(8);
    entryLayout_->addLayout(head);
    entryLayout_->addWidget(form_);
    entryLayout_->addWidget(result_);
    entryLayout_->addWidget(help_);
    entryLayout_->addStretch(1);
    scroll_->setWidget(entry);
    scroll_->setWidgetResizable(true);
    scroll_->setFrameShape(QFrame::NoFrame);
    scroll_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    scroll_->setFocusPolicy(Qt::NoFocus);
    pictures_->addWidget(diagram_);
    pictures_->addWidget(section_);
    pictures_->setStretchFactor(0, 3);
    pictures_->setStretchFactor(1, 2);
    pictures_->setChildrenCollapsible(false);
    sides_->setContentsMargins(0, 6, 0, 0);
    sides_->setSpacing(10);
    sides_->addWidget(scroll_, 2);
    sides_->addWidget(pictures_, 3);
    connect(form_, &FieldForm::typed, this, [this] { refreshResult(); });
    connect(form_, &FieldForm::entered, this, &ReadingPage::commit);
    connect(form_, &FieldForm::helpChanged, help_, &QLabel::setText);
    connect(form_, &FieldForm::ended, this, [this] {
        if (next_->isEnabled()) emit rowWanted(row_ + 1);
        focusFirst();
    });
}

void ReadingPage::makeForm() {
    const QString mm = QStringLiteral("mm");
    const auto add = [this](const char* field, const QString& label, const QString& unit,
                            const QString& help, Choices choices = {}) {
        form_->add({field, label, unit, help, std::move(choices)});
    };
    add("setting", tr("Setting"), {}, tr("Probe, material and reference of this reading."),
        {{"", tr("none")}});
    add("x_mm", tr("x"), mm,
        tr("From the zone's datum along its axes; with a heading, of the probe's front where the "
           "echo is highest."));
    add("y_mm", tr("y"), mm,
        tr("From the zone's datum along its axes; with a heading, of the probe's front where the "
           "echo is highest."));
    add("heading_deg", tr("Heading"), tr("°"),
        tr("Direction in which the angle probe looks, counter-clockwise from the x axis. Empty: x "
           "and y are the indication's own."));
    add("echo.sound_path_mm", tr("Sound path"), mm,
        tr("As the instrument shows it: one way, from the index point to the reflector."));
    add("echo.gain_db", tr("Gain"), tr("dB"),
        tr("The instrument's gain at the screen height below, from −20 to 120."));
    add("echo.screen_percent", tr("Screen height"), tr("%"),
        tr("Of the echo, in percent of the screen's height: above 0 and at most 100."));
    add("movement.along_mm", tr("Moved along"), mm,
        tr("How far the probe moved along the length until the echo had dropped on both sides. No "
           "more than the beam's width: not measurable."));
    add("movement.across_mm", tr("Moved across"), mm, tr("The same across the length."));
    add("movement.drop_db", tr("Drop"), {}, tr("By how much the echo had dropped there."),
        {{"", tr("none")}, {"6", tr("6 dB")}, {"20", tr("20 dB")}});
}

void ReadingPage::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    arrange();
}

void ReadingPage::changeEvent(QEvent* event) {
    QWidget::changeEvent(event);
    if (event->type() == QEvent::FontChange) arrange();
}

/// The pictures stand beside the form, or below the result where there is no room for that.
void ReadingPage::arrange() {
    const int entryWidth =
        form_->minimumSizeHint().width() + style()->pixelMetric(QStyle::PM_ScrollBarExtent) + 14;
    const bool beside = width() >= entryWidth + diagram_->minimumSizeHint().width() + 10;
    scroll_->setMinimumWidth(beside ? entryWidth : 0);
    pictures_->setMinimumHeight(beside ? 0 : fontMetrics().height() * 22);
    const bool isBeside = sides_->indexOf(pictures_) >= 0;
    if (beside == isBeside) return;
    if (beside) {
        sides_->addWidget(pictures_, 3);
    } else {
        entryLayout_->insertWidget(entryLayout_->indexOf(help_), pictures_);
    }
}

}  // namespace app
