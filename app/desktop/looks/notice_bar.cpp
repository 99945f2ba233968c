// SPDX-License-Identifier: Apache-2.0
#include "looks/notice_bar.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPainter>
#include <QPushButton>

#include "looks/mark_label.h"

namespace app {

NoticeBar::NoticeBar(QWidget* parent)
    : QFrame(parent), mark_(new MarkLabel(this)), text_(new QLabel(this)) {
    text_->setWordWrap(true);
    text_->setTextFormat(Qt::PlainText);
    text_->setTextInteractionFlags(Qt::TextSelectableByMouse);
    text_->setAccessibleName(tr("Notice"));
    mark_->setSide(22);
    auto* layout = new QHBoxLayout(this);
    layout->setContentsMargins(14, 7, 10, 7);
    layout->setSpacing(10);
    layout->addWidget(mark_);
    layout->addWidget(text_, 1);
    buttons_ = new QHBoxLayout;
    layout->addLayout(buttons_);
    hide();
}

void NoticeBar::say(Mark mark, const QString& text, std::vector<Answer> answers, bool loud) {
    takeBack();
    loud_ = loud;
    mark_->setMark(mark);
    text_->setText(text);
    QFont type = font();
    type.setBold(loud);
    text_->setFont(type);
    for (auto& answer : answers) {
        auto* button = new QPushButton(answer.text, this);
        button->setAutoDefault(false);
        connect(button, &QPushButton::clicked, this, [this, act = std::move(answer.act)] {
            takeBack();
            if (act) act();
        });
        buttons_->addWidget(button);
    }
    show();
}

void NoticeBar::takeBack() {
    hide();
    text_->clear();
    while (QLayoutItem* item = buttons_->takeAt(0)) {
        if (item->widget()) item->widget()->deleteLater();
        delete item;
    }
}

QString NoticeBar::text() const {
    return text_->text();
}

void NoticeBar::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    const QColor window = palette().color(QPalette::Window);
    QColor ground = colourOf(mark_->mark(), window);
    painter.fillRect(QRect(0, 0, loud_ ? 8 : 4, height()), ground);
    ground.setAlphaF(loud_ ? .16F : .08F);
    painter.fillRect(rect(), ground);
}

}  // namespace app
