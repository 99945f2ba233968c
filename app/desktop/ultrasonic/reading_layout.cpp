// SPDX-License-Identifier: Apache-2.0
// How the page of a reading is put together.
#include <QBoxLayout>
#include <QLabel>
#include <QScrollArea>
#include <QShortcut>
#include <QSplitter>
#include <QToolButton>

#include "looks/heading.h"
#include "ultrasonic_bench/reading_page.h"
#include "ultrasonic_bench/reading_result.h"

namespace app {

ReadingPage::ReadingPage(QWidget* parent)
    : QWidget(parent),
      sides_(new QBoxLayout(QBoxLayout::LeftToRight, this)),
      title_(new Heading(1.1, this)),
      previous_(new QToolButton(this)),
      next_(new QToolButton(this)),
      form_(new FieldForm(this)),
      result_(new ReadingResult(this)),
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
    auto* entryLayout = new QVBoxLayout(entry);
    entryLayout->setContentsMargins(0, 0, 8, 0);
    entryLayout->setSpacing(8);
    entryLayout->addLayout(head);
    entryLayout->addWidget(form_);
    entryLayout->addWidget(result_);
    entryLayout->addWidget(help_);
    entryLayout->addStretch(1);
    auto* scroll = new QScrollArea(this);
    scroll->setWidget(entry);
    scroll->setWidgetResizable(true);
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    scroll->setFocusPolicy(Qt::NoFocus);
    auto* pictures = new QSplitter(Qt::Vertical, this);
    pictures->addWidget(diagram_);
    pictures->addWidget(section_);
    pictures->setStretchFactor(0, 3);
    pictures->setStretchFactor(1, 2);
    pictures->setChildrenCollapsible(false);
    sides_->setContentsMargins(0, 6, 0, 0);
    sides_->setSpacing(10);
    sides_->addWidget(scroll, 2);
    sides_->addWidget(pictures, 3);
    connect(form_, &FieldForm::typed, this, [this] { refreshResult(); });
    connect(form_, &FieldForm::entered, this, &ReadingPage::commit);
    connect(form_, &FieldForm::helpChanged, help_, &QLabel::setText);
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
    const bool wide = width() > fontMetrics().averageCharWidth() * 66;
    sides_->setDirection(wide ? QBoxLayout::LeftToRight : QBoxLayout::TopToBottom);
}

}  // namespace app
