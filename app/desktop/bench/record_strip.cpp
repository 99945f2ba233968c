// SPDX-License-Identifier: Apache-2.0
#include "bench/record_strip.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <algorithm>

#include "looks/mark_label.h"

namespace app {

RecordStrip::RecordStrip(QWidget* parent)
    : QWidget(parent),
      mark_(new MarkLabel(this)),
      text_(new QLabel(this)),
      buttons_(new QVBoxLayout) {
    text_->setWordWrap(true);
    text_->setTextFormat(Qt::PlainText);
    text_->setTextInteractionFlags(Qt::TextSelectableByMouse);
    mark_->setSide(18);
    auto* said = new QHBoxLayout;
    said->setSpacing(8);
    said->addWidget(mark_, 0, Qt::AlignTop);
    said->addWidget(text_, 1);
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
    text_->setVisible(!text.isEmpty());
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
