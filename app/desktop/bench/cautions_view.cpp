// SPDX-License-Identifier: Apache-2.0
#include "bench/cautions_view.h"

#include <QLabel>
#include <QToolButton>
#include <QVBoxLayout>

#include "bench/cautions.h"
#include "looks/text.h"

namespace app {

CautionsView::CautionsView(QWidget* parent)
    : QFrame(parent), head_(new QToolButton(this)), text_(new QLabel(this)) {
    head_->setCheckable(true);
    head_->setAutoRaise(true);
    head_->setToolButtonStyle(Qt::ToolButtonTextBesideIcon);
    text_->setWordWrap(true);
    text_->setTextFormat(Qt::PlainText);
    text_->setObjectName("cautions");
    text_->setBackgroundRole(QPalette::ToolTipBase);
    text_->setForegroundRole(QPalette::ToolTipText);
    text_->setAutoFillBackground(true);
    text_->setMargin(8);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(2);
    layout->addWidget(head_, 0, Qt::AlignLeft);
    layout->addWidget(text_);
    connect(head_, &QToolButton::toggled, this, [this] { refresh(); });
    refresh();
}

void CautionsView::show(model::Method method) {
    method_ = method;
    head_->setChecked(met_.insert(method).second);
    refresh();
}

bool CautionsView::isOpen() const { return head_->isChecked(); }
void CautionsView::setOpen(bool open) { head_->setChecked(open); }

void CautionsView::refresh() {
    const QStringList lines = cautionsFor(method_);
    head_->setArrowType(head_->isChecked() ? Qt::DownArrow : Qt::RightArrow);
    head_->setText(tr("%1: %n caution(s) for you and the casting", nullptr,
                      static_cast<int>(lines.size()))
                       .arg(methodText(method_)));
    text_->setText("•  " + lines.join("\n•  "));
    text_->setVisible(head_->isChecked());
}

}  // namespace app
