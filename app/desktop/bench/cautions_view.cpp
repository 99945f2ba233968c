// SPDX-License-Identifier: Apache-2.0
#include "bench/cautions_view.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QToolButton>
#include <QVBoxLayout>

#include "bench/cautions.h"
#include "looks/text.h"

namespace app {

CautionsView::CautionsView(QWidget* parent)
    : QFrame(parent),
      head_(new QToolButton(this)),
      body_(new QWidget(this)),
      left_(new QLabel(body_)),
      right_(new QLabel(body_)) {
    head_->setAutoRaise(true);
    head_->setToolButtonStyle(Qt::ToolButtonTextBesideIcon);
    body_->setObjectName("cautions");
    body_->setBackgroundRole(QPalette::ToolTipBase);
    body_->setAutoFillBackground(true);
    auto* columns = new QHBoxLayout(body_);
    columns->setContentsMargins(10, 6, 10, 6);
    columns->setSpacing(16);
    for (QLabel* text : {left_, right_}) {
        text->setWordWrap(true);
        text->setTextFormat(Qt::PlainText);
        text->setForegroundRole(QPalette::ToolTipText);
        text->setAlignment(Qt::AlignTop | Qt::AlignLeft);
        columns->addWidget(text, 1);
    }
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(2);
    layout->addWidget(head_, 0, Qt::AlignLeft);
    layout->addWidget(body_);
    connect(head_, &QToolButton::clicked, this, [this] { setOpen(!open_); });
    refresh();
}

void CautionsView::show(model::Method method) {
    method_ = method;
    open_ = met_.insert(method).second;
    refresh();
}

void CautionsView::setOpen(bool open) {
    open_ = open;
    refresh();
}

void CautionsView::refresh() {
    const QStringList lines = cautionsFor(method_);
    head_->setArrowType(open_ ? Qt::DownArrow : Qt::RightArrow);
    head_->setText(
        tr("%1: %2 cautions for you and the casting").arg(methodText(method_)).arg(lines.size()));
    const auto half = (lines.size() + 1) / 2;
    left_->setText("•  " + lines.mid(0, half).join("\n•  "));
    right_->setText("•  " + lines.mid(half).join("\n•  "));
    body_->setVisible(open_);
}

}  // namespace app
