// SPDX-License-Identifier: Apache-2.0
// How the archive workplace is put together.
#include <QLabel>
#include <QPushButton>
#include <QScrollArea>
#include <QSplitter>
#include <QVBoxLayout>

#include "finding/finding_page.h"
#include "finding/search_panel.h"
#include "looks/heading.h"
#include "looks/mark_label.h"
#include "looks/marked_lines.h"
#include "looks/notice_bar.h"
#include "looks/paper_view.h"

namespace app {

void FindingPage::makeLayout() {
    notice_ = new NoticeBar(this);
    auto* left = new QWidget(this);
    search_ = new SearchPanel(left);
    results_ = new MarkedList(2, left);
    results_->setAccessibleName(tr("Certificates found"));
    verifyAll_ = new QPushButton(tr("&Verify the whole archive…"), left);
    verifyAll_->setObjectName("verifyAll");
    auto* below = new QHBoxLayout;
    below->setContentsMargins(10, 2, 8, 10);
    below->addWidget(verifyAll_);
    auto* leftLayout = new QVBoxLayout(left);
    leftLayout->setContentsMargins(0, 0, 0, 0);
    leftLayout->addWidget(search_);
    leftLayout->addWidget(results_, 1);
    leftLayout->addLayout(below);
    left->setMinimumWidth(240);
    paper_ = new PaperView(this);
    auto* split = new QSplitter(Qt::Horizontal, this);
    split->addWidget(left);
    split->addWidget(paper_);
    split->addWidget(makeSide());
    split->setStretchFactor(0, 0);
    split->setStretchFactor(1, 1);
    split->setStretchFactor(2, 0);
    split->setSizes({340, 650, 290});
    split->setChildrenCollapsible(false);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(0);
    layout->addWidget(notice_);
    layout->addWidget(split, 1);
}

QWidget* FindingPage::makeSide() {
    auto* side = new QWidget(this);
    side->setMinimumWidth(240);
    mark_ = new MarkLabel(side);
    mark_->setSide(40);
    word_ = new Heading(1.5, side);
    word_->setWordWrap(true);
    word_->setObjectName("foundWord");
    word_->setAccessibleName(tr("Verdict"));
    const auto text = [side](const QString& name) {
        auto* label = new QLabel(side);
        label->setObjectName(name);
        label->setWordWrap(true);
        label->setTextFormat(Qt::PlainText);
        label->setTextInteractionFlags(Qt::TextSelectableByMouse);
        return label;
    };
    state_ = text("certificateState");
    facts_ = text("certificateFacts");
    const auto button = [side](const QString& words, const QString& name) {
        auto* made = new QPushButton(words, side);
        made->setObjectName(name);
        return made;
    };
    verify_ = button(tr("Verify this &certificate"), "verifyThis");
    history_ = button(tr("&History of the casting"), "history");
    save_ = button(tr("Save the &PDF…"), "savePdf");
    export_ = button(tr("E&xport with the record…"), "export");
    withdraw_ = button(tr("&Withdraw it…"), "withdraw");
    keeping_ = button(tr("&Keeping and disposal…"), "keeping");
    auto* head = new QHBoxLayout;
    head->setSpacing(12);
    head->addWidget(mark_);
    head->addWidget(word_, 1);
    auto* said = new QWidget(side);
    auto* saidLayout = new QVBoxLayout(said);
    saidLayout->setContentsMargins(0, 0, 0, 0);
    saidLayout->setSpacing(10);
    saidLayout->addLayout(head);
    saidLayout->addWidget(state_);
    saidLayout->addWidget(facts_);
    saidLayout->addStretch(1);
    auto* scroll = new QScrollArea(side);
    scroll->setWidgetResizable(true);
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    scroll->setFocusPolicy(Qt::NoFocus);
    scroll->setWidget(said);
    auto* layout = new QVBoxLayout(side);
    layout->setContentsMargins(14, 12, 12, 12);
    layout->setSpacing(6);
    layout->addWidget(scroll, 1);
    for (auto* one : {verify_, history_, save_, export_, withdraw_, keeping_})
        layout->addWidget(one);
    return side;
}

}  // namespace app
