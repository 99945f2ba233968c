// SPDX-License-Identifier: Apache-2.0
// How the release page is put together.
#include <QLabel>
#include <QPushButton>
#include <QScrollArea>
#include <QSplitter>
#include <QStackedWidget>
#include <QTabBar>
#include <QVBoxLayout>

#include "looks/heading.h"
#include "looks/mark_label.h"
#include "looks/marked_lines.h"
#include "looks/notice_bar.h"
#include "looks/paper_view.h"
#include "release/attestation_view.h"
#include "release/release_page.h"

namespace app {

void ReleasePage::makeLayout() {
    notice_ = new NoticeBar(this);
    views_ = new QTabBar(this);
    views_->addTab(tr("&Waiting for release"));
    views_->addTab(tr("Limit &tables"));
    views_->setDrawBase(false);
    views_->setExpanding(false);
    views_->setAccessibleName(tr("View"));
    attestation_ = new AttestationView(archive_, session_, this);
    pages_ = new QStackedWidget(this);
    pages_->addWidget(makeQueueView());
    pages_->addWidget(attestation_);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(0);
    layout->addWidget(notice_);
    layout->addWidget(views_);
    layout->addWidget(pages_, 1);
}

QWidget* ReleasePage::makeQueueView() {
    auto* left = new QWidget(this);
    queue_ = new MarkedList(2, left);
    queue_->setAccessibleName(tr("Waiting for release"));
    empty_ = new QLabel(tr("Nothing waits for release."), left);
    empty_->setAlignment(Qt::AlignCenter);
    empty_->setWordWrap(true);
    empty_->setForegroundRole(QPalette::PlaceholderText);
    auto* leftLayout = new QVBoxLayout(left);
    leftLayout->setContentsMargins(0, 0, 0, 0);
    leftLayout->addWidget(queue_, 1);
    leftLayout->addWidget(empty_, 1);
    paper_ = new PaperView(this);
    auto* split = new QSplitter(Qt::Horizontal, this);
    split->addWidget(left);
    split->addWidget(paper_);
    split->addWidget(makeSide());
    split->setStretchFactor(0, 0);
    split->setStretchFactor(1, 1);
    split->setStretchFactor(2, 0);
    split->setSizes({300, 660, 320});
    split->setChildrenCollapsible(false);
    left->setMinimumWidth(220);
    return split;
}

QWidget* ReleasePage::makeSide() {
    auto* side = new QWidget(this);
    side->setMinimumWidth(260);
    mark_ = new MarkLabel(side);
    mark_->setSide(40);
    word_ = new Heading(1.5, side);
    word_->setWordWrap(true);
    word_->setObjectName("releaseWord");
    word_->setAccessibleName(tr("Verdict"));
    const auto text = [side](const QString& name) {
        auto* label = new QLabel(side);
        label->setObjectName(name);
        label->setWordWrap(true);
        label->setTextFormat(Qt::PlainText);
        label->setTextInteractionFlags(Qt::TextSelectableByMouse);
        return label;
    };
    facts_ = text("releaseFacts");
    obstacleTitle_ = new Heading(1.0, side);
    obstacleTitle_->setWordWrap(true);
    obstacleTitle_->setObjectName("obstacleTitle");
    obstaclesText_ = text("obstacles");
    const auto button = [side](const QString& words, const QString& name) {
        auto* made = new QPushButton(words, side);
        made->setObjectName(name);
        made->setMinimumHeight(made->sizeHint().height() + 6);
        return made;
    };
    release_ = button(tr("&Release…"), "release");
    return_ = button(tr("Return with a rea&son…"), "return");
    endorse_ = button(tr("Sign as &third party…"), "endorse");
    auto* head = new QHBoxLayout;
    head->setSpacing(12);
    head->addWidget(mark_);
    head->addWidget(word_, 1);
    auto* said = new QWidget(side);
    auto* saidLayout = new QVBoxLayout(said);
    saidLayout->setContentsMargins(0, 0, 0, 0);
    saidLayout->setSpacing(8);
    saidLayout->addLayout(head);
    saidLayout->addWidget(facts_);
    saidLayout->addSpacing(6);
    saidLayout->addWidget(obstacleTitle_);
    saidLayout->addWidget(obstaclesText_);
    saidLayout->addStretch(1);
    auto* scroll = new QScrollArea(side);
    scroll->setWidgetResizable(true);
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    scroll->setFocusPolicy(Qt::NoFocus);
    scroll->setWidget(said);
    auto* layout = new QVBoxLayout(side);
    layout->setContentsMargins(14, 10, 12, 12);
    layout->setSpacing(8);
    layout->addWidget(scroll, 1);
    layout->addWidget(endorse_);
    layout->addWidget(release_);
    layout->addWidget(return_);
    return side;
}

}  // namespace app
