// SPDX-License-Identifier: Apache-2.0
#include "window/workplace_bar.h"

#include <QEvent>
#include <QHBoxLayout>
#include <QLabel>
#include <QPainter>
#include <QPushButton>

namespace app {
namespace {

constexpr int kSide = 14;  // px left and right of a name
constexpr int kGap = 8;    // px between name, count and key

}  // namespace

WorkplaceButton::WorkplaceButton(const QString& name, const QString& key, QWidget* parent)
    : QAbstractButton(parent), key_(key) {
    setText(name);
    setCheckable(true);
    setAutoExclusive(true);
    setFocusPolicy(Qt::TabFocus);
    setWaiting(0);
    setToolTip(tr("%1 (%2)").arg(name, key));
}

void WorkplaceButton::setWaiting(int count) {
    waiting_ = count;
    setAccessibleName(count > 0 ? tr("%1, waiting: %2").arg(text()).arg(count) : text());
    updateGeometry();
    update();
}

QFont WorkplaceButton::strong() const {
    QFont type = font();
    type.setBold(true);
    return type;
}

QString WorkplaceButton::countText() const {
    return waiting_ > 0 ? QString::number(waiting_) : QString();
}

QSize WorkplaceButton::sizeHint() const {
    const QFontMetrics name(strong());
    int width = name.horizontalAdvance(text()) + kGap + fontMetrics().horizontalAdvance(key_);
    if (waiting_ > 0) width += kGap + name.horizontalAdvance(countText()) + kGap;
    return {width + 2 * kSide, name.height() + 16};
}

bool WorkplaceButton::event(QEvent* event) {
    if (event->type() == QEvent::HoverEnter || event->type() == QEvent::HoverLeave) update();
    return QAbstractButton::event(event);
}

void WorkplaceButton::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const QColor accent = palette().color(QPalette::Highlight);
    if (isChecked()) {
        painter.fillRect(rect(), palette().color(QPalette::Base));
        painter.fillRect(QRect(0, height() - 4, width(), 4), accent);
    } else if (underMouse()) {
        QColor ground = accent;
        ground.setAlphaF(.10F);
        painter.fillRect(rect(), ground);
    }
    int x = kSide;
    const QFontMetrics name(strong());
    painter.setFont(isChecked() ? strong() : font());
    painter.setPen(palette().color(QPalette::WindowText));
    const QRect line(0, 0, width(), height());
    painter.drawText(line.adjusted(x, 0, 0, 0), Qt::AlignLeft | Qt::AlignVCenter, text());
    x += name.horizontalAdvance(text()) + kGap;
    if (waiting_ > 0) {
        const int wide = name.horizontalAdvance(countText()) + kGap;
        const QRectF pill(x, (height() - name.height()) / 2.0, wide, name.height());
        painter.setPen(Qt::NoPen);
        painter.setBrush(accent);
        painter.drawRoundedRect(pill, 5, 5);
        painter.setFont(strong());
        painter.setPen(palette().color(QPalette::HighlightedText));
        painter.drawText(pill, Qt::AlignCenter, countText());
        x += wide + kGap;
    }
    painter.setFont(font());
    painter.setPen(palette().color(QPalette::PlaceholderText));
    painter.drawText(line.adjusted(x, 0, 0, 0), Qt::AlignLeft | Qt::AlignVCenter, key_);
    if (hasFocus()) {
        painter.setBrush(Qt::NoBrush);
        painter.setPen(QPen(accent, 2));
        painter.drawRect(QRectF(rect()).adjusted(2, 2, -2, -2));
    }
}

WorkplaceBar::WorkplaceBar(QWidget* parent)
    : QWidget(parent), person_(new QLabel(this)), personButton_(new QPushButton(this)) {
    person_->setObjectName("signedIn");
    person_->setTextFormat(Qt::PlainText);
    person_->setAccessibleName(tr("Who is signed in"));
    person_->setMinimumWidth(60);
    personButton_->setObjectName("signInButton");
    personButton_->setAutoDefault(false);
    auto* layout = new QHBoxLayout(this);
    layout->setContentsMargins(6, 0, 8, 0);
    layout->setSpacing(2);
    layout->addStretch(1);
    layout->addWidget(person_);
    layout->addSpacing(8);
    layout->addWidget(personButton_);
    connect(personButton_, &QPushButton::clicked, this, &WorkplaceBar::personButtonPressed);
}

int WorkplaceBar::add(const QString& name) {
    const int index = static_cast<int>(buttons_.size());
    auto* button = new WorkplaceButton(name, tr("Alt+%1").arg(index + 1), this);
    buttons_ << button;
    static_cast<QHBoxLayout*>(layout())->insertWidget(index, button);
    connect(button, &QAbstractButton::clicked, this, [this, index] { emit chosen(index); });
    return index;
}

void WorkplaceBar::setCurrent(int index) {
    buttons_[index]->setChecked(true);
}

int WorkplaceBar::current() const {
    for (int i = 0; i < buttons_.size(); ++i) {
        if (buttons_[i]->isChecked()) return i;
    }
    return -1;
}

void WorkplaceBar::setWaiting(int index, int count) {
    buttons_[index]->setWaiting(count);
}

void WorkplaceBar::setPerson(const QString& text, const QString& button) {
    person_->setText(text);
    personButton_->setText(button);
    personButton_->setVisible(!button.isEmpty());
}

QString WorkplaceBar::personText() const {
    return person_->text();
}

}  // namespace app
