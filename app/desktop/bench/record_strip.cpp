// SPDX-License-Identifier: Apache-2.0
#include "bench/record_strip.h"

#include <QEvent>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QScrollArea>
#include <algorithm>

#include "looks/mark_label.h"

namespace app {

RecordStrip::RecordStrip(QWidget* parent)
    : QWidget(parent),
      mark_(new MarkLabel(this)),
      text_(new QLabel(this)),
      scroll_(new QScrollArea(this)),
      buttons_(new QVBoxLayout) {
    text_->setWordWrap(true);
    text_->setTextFormat(Qt::PlainText);
    text_->setTextInteractionFlags(Qt::TextSelectableByMouse);
    mark_->setSide(18);
    auto* said = new QHBoxLayout;
    said->setSpacing(8);
    said->addWidget(mark_, 0, Qt::AlignTop);
    // A long reason is read by scrolling: it takes no room from the work.
    scroll_->setWidget(text_);
    scroll_->setWidgetResizable(true);
    scroll_->setFrameShape(QFrame::NoFrame);
    scroll_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    text_->setAlignment(Qt::AlignTop | Qt::AlignLeft);
    said->addWidget(scroll_, 1);
    buttons_->setSpacing(4);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(12, 6, 10, 10);
    layout->setSpacing(6);
    layout->addLayout(said);
    layout->addLayout(buttons_);
    hide();
}

void RecordStrip::say(std::optional<Mark> mark, const QString& text, const std::vector<Act>& acts) {
    mark_->setVisible(mark.has_value());
    if (mark) mark_->setMark(*mark);
    text_->setText(text);
    text_->setToolTip(text);
    scroll_->setVisible(!text.isEmpty());
    // Buttons stay where they are the same, so that the focus does.
    for (int i = buttons_->count(); i > 0; --i) {
        auto* button = buttons_->itemAt(i - 1)->widget();
        const bool stays = std::any_of(acts.begin(), acts.end(), [&](const Act& act) {
            return act.name == button->objectName();
        });
        if (stays) continue;
        buttons_->removeWidget(button);
        button->hide();
        button->deleteLater();
    }
    for (const auto& act : acts) {
        auto* shown = button(act.name);
        if (!shown) {
            shown = new QPushButton(this);
            shown->setObjectName(act.name);
            shown->setAutoDefault(true);
            buttons_->addWidget(shown);
        }
        shown->disconnect(this);
        shown->setText(act.text);
        shown->setEnabled(act.whyNot.isEmpty());
        shown->setToolTip(act.whyNot);
        connect(shown, &QPushButton::clicked, this, act.act);
    }
    setVisible(!text.isEmpty() || !acts.empty());
    fitText();
}

void RecordStrip::fitText() {
    constexpr int kMostLines = 5;
    const int needed = text_->heightForWidth(scroll_->viewport()->width());
    const int most = kMostLines * text_->fontMetrics().lineSpacing() + 2;
    scroll_->setFixedHeight(std::clamp(needed, 0, most));
    scroll_->setFocusPolicy(needed > most ? Qt::TabFocus : Qt::NoFocus);
}

void RecordStrip::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    fitText();
}

void RecordStrip::changeEvent(QEvent* event) {
    QWidget::changeEvent(event);
    if (event->type() == QEvent::FontChange) fitText();
}

QString RecordStrip::text() const {
    return text_->text();
}

QPushButton* RecordStrip::button(const QString& name) const {
    for (int i = 0; i < buttons_->count(); ++i) {
        auto* button = qobject_cast<QPushButton*>(buttons_->itemAt(i)->widget());
        if (button && button->objectName() == name) return button;
    }
    return nullptr;
}

}  // namespace app
