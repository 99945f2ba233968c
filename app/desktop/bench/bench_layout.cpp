// SPDX-License-Identifier: Apache-2.0
// How the bench is put together, and its actions.
#include <QAction>
#include <QApplication>
#include <QFrame>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QSplitter>
#include <QStackedWidget>
#include <QUndoGroup>
#include <QVBoxLayout>

#include "attachments/attachments_page.h"
#include "bench/bench_page.h"
#include "bench/castings_panel.h"
#include "bench/check_list.h"
#include "bench/examination_pane.h"
#include "bench/record_strip.h"
#include "bench/row_table.h"
#include "bench/surface_view.h"
#include "bench/verdict_panel.h"
#include "fields/entry_table.h"
#include "looks/heading.h"
#include "looks/mark_label.h"
#include "looks/notice_bar.h"
#include "repair_bench/repair_page.h"

namespace app {

void BenchPage::makeLayout() {
    notice_ = new NoticeBar(this);
    auto* left = new QWidget(this);
    castings_ = new CastingsPanel(left);
    heading_ = new Heading(1.25, left);
    facts_ = new QLabel(left);
    facts_->setWordWrap(true);
    facts_->setTextFormat(Qt::PlainText);
    facts_->setObjectName("castingFacts");
    zones_ = new ZoneList(left);
    auto* about = new QVBoxLayout;
    about->setContentsMargins(12, 4, 8, 4);
    about->setSpacing(2);
    about->addWidget(heading_);
    about->addWidget(facts_);
    castingMark_ = new MarkLabel(left);
    castingMark_->setSide(20);
    castingWord_ = new QLabel(left);
    castingWord_->setWordWrap(true);
    castingWord_->setObjectName("castingWord");
    auto* whole = new QHBoxLayout;
    whole->setContentsMargins(0, 4, 0, 2);
    whole->addWidget(castingMark_);
    whole->addWidget(castingWord_, 1);
    about->addLayout(whole);
    attachmentsButton_ = new QPushButton(left);
    attachmentsButton_->setObjectName("showAttachments");
    attachmentsButton_->setToolTip(tr("Ctrl+K"));
    repairsButton_ = new QPushButton(left);
    repairsButton_->setObjectName("showRepairs");
    repairsButton_->setToolTip(tr("Ctrl+R"));
    for (QPushButton* button : {attachmentsButton_, repairsButton_}) {
        button->setAutoDefault(false);
        about->addWidget(button);
    }
    connect(attachmentsButton_, &QPushButton::clicked, this, &BenchPage::showAttachments);
    connect(repairsButton_, &QPushButton::clicked, this, &BenchPage::showRepairs);
    auto* leftLayout = new QVBoxLayout(left);
    leftLayout->setContentsMargins(0, 0, 0, 0);
    leftLayout->setSpacing(4);
    leftLayout->addWidget(castings_, 2);
    leftLayout->addLayout(about);
    leftLayout->addWidget(zones_, 5);
    castingStrip_ = new RecordStrip(left);
    castingStrip_->setObjectName("castingStrip");
    leftLayout->addWidget(castingStrip_);

    middle_ = new QStackedWidget(this);
    pane_ = new ExaminationPane(middle_);
    attachments_ = new AttachmentsPage(archive_, session_, middle_);
    repairs_ = new RepairPage(archive_, session_, middle_);
    middle_->addWidget(pane_);
    middle_->addWidget(castingPage(attachments_));
    middle_->addWidget(castingPage(repairs_));
    auto* right = new QWidget(this);
    verdict_ = new VerdictPanel(right);
    recordStrip_ = new RecordStrip(right);
    recordStrip_->setObjectName("recordStrip");
    auto* rightLayout = new QVBoxLayout(right);
    rightLayout->setContentsMargins(0, 0, 0, 0);
    rightLayout->setSpacing(0);
    rightLayout->addWidget(verdict_, 1);
    rightLayout->addWidget(recordStrip_);
    auto* split = new QSplitter(Qt::Horizontal, this);
    split->addWidget(left);
    split->addWidget(middle_);
    split->addWidget(right);
    split->setStretchFactor(0, 0);
    split->setStretchFactor(1, 1);
    split->setStretchFactor(2, 0);
    split->setSizes({270, 800, 380});
    split->setChildrenCollapsible(false);
    left->setMinimumWidth(200);
    right->setMinimumWidth(300);

    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(0);
    layout->addWidget(notice_);
    layout->addWidget(split, 1);
    setTabOrder(&castings_->searchField(), zones_);
    setTabOrder(zones_, &pane_->surface());
    setTabOrder(&pane_->surface(), &pane_->table());
    setTabOrder(&pane_->table(), &verdict_->checks());
    refreshHeading();
}

/// A page of the whole casting, with the way back to the zone.
QWidget* BenchPage::castingPage(QWidget* page) {
    auto* around = new QWidget(middle_);
    auto* back = new QPushButton(tr("&Back to the zone"), around);
    back->setAutoDefault(false);
    back->setObjectName("backToZone");
    auto* leave = new QAction(around);
    leave->setShortcut(Qt::Key_Escape);
    leave->setShortcutContext(Qt::WidgetWithChildrenShortcut);
    around->addAction(leave);
    connect(leave, &QAction::triggered, this, &BenchPage::showZone);
    connect(back, &QPushButton::clicked, this, &BenchPage::showZone);
    auto* layout = new QVBoxLayout(around);
    layout->setContentsMargins(10, 10, 10, 8);
    layout->addWidget(page, 1);
    layout->addWidget(back, 0, Qt::AlignLeft);
    return around;
}

QAction* BenchPage::addAction(std::vector<QAction*>& menu, const QString& text, const QString& keys,
                              const std::function<void()>& act) {
    auto* action = new QAction(text, this);
    if (!keys.isEmpty()) action->setShortcut(QKeySequence(keys));
    // Changing and looking need the bench in view; the others bring it up.
    const bool needsView = &menu == &actions_.edit || &menu == &actions_.view;
    connect(action, &QAction::triggered, this, [this, act, needsView] {
        if (!isVisible() && needsView) return;
        if (!isVisible()) emit wanted();
        act();
    });
    menu.push_back(action);
    QWidget::addAction(action);
    return action;
}

void BenchPage::makeActions() {
    addAction(actions_.archive, tr("Make a &certificate…"), "Ctrl+P",
              [this] { makeCertificate(); });

    auto* undo = undo_->createUndoAction(this, tr("&Undo"));
    undo->setShortcut(QKeySequence::Undo);
    auto* redo = undo_->createRedoAction(this, tr("&Redo"));
    redo->setShortcuts({QKeySequence("Ctrl+Shift+Z"), QKeySequence("Ctrl+Y")});
    actions_.edit = {undo, redo, nullptr};
    QWidget::addAction(undo);
    QWidget::addAction(redo);
    addAction(actions_.edit, tr("&Copy cells"), {}, [this] { pane_->table().copySelection(); });
    addAction(actions_.edit, tr("&Paste cells"), {}, [this] { pane_->table().pasteClipboard(); });
    addAction(actions_.edit, tr("&Delete rows"), "Ctrl+Del", [this] {
        // Of the table that is typed in: measurements and checks are rows as well.
        auto* entries = qobject_cast<EntryTable*>(QApplication::focusWidget());
        if (entries) return entries->deleteSelectedRows();
        pane_->table().deleteSelectedRows();
    });
    actions_.edit.push_back(nullptr);
    addAction(actions_.edit, tr("Next cell that cannot be &read"), "F8", [this] {
        pane_->goTo(ExaminationPane::Rows);
        pane_->table().goToNextProblem();
    });
    addAction(actions_.edit, tr("&New row"), "Ctrl+N", [this] { pane_->enterNewRow(); });

    addAction(actions_.view, tr("&Fit the zone"), "Ctrl+0", [this] { pane_->surface().fit(); });
    addAction(actions_.view, tr("Fit the &deciding frame"), "Ctrl+9",
              [this] { pane_->surface().fitFrame(); });
    addAction(actions_.view, tr("Zoom &in"), "Ctrl+.", [this] { pane_->surface().zoomIn(); });
    addAction(actions_.view, tr("Zoom &out"), "Ctrl+,", [this] { pane_->surface().zoomOut(); });

    addAction(actions_.go, tr("&Castings"), "Ctrl+1", [this] {
        castings_->searchField().setFocus();
        castings_->searchField().selectAll();
    });
    addAction(actions_.go, tr("&Zones"), "Ctrl+2", [this] { zones_->setFocus(); });
    addAction(actions_.go, tr("&Surface"), "Ctrl+3", [this] {
        pane_->goTo(ExaminationPane::Rows);
        pane_->surface().setFocus();
    });
    addAction(actions_.go, tr("&Indications"), "Ctrl+4",
              [this] { pane_->goTo(ExaminationPane::Rows); });
    addAction(actions_.go, tr("C&hecks"), "Ctrl+5", [this] { verdict_->checks().setFocus(); });
    addAction(actions_.go, tr("&Reading (UT)"), "Ctrl+6",
              [this] { pane_->goTo(ExaminationPane::Reading); });
    addAction(actions_.go, tr("S&etting (UT)"), "Ctrl+7",
              [this] { pane_->goTo(ExaminationPane::Setting); });
    addAction(actions_.go, tr("C&overage (UT)"), "Ctrl+8",
              [this] { pane_->goTo(ExaminationPane::Coverage); });
    addAction(actions_.go, tr("Con&ditions of the test"), "Ctrl+T",
              [this] { pane_->goTo(ExaminationPane::Conditions); });
    addAction(actions_.go, tr("P&hotos and files of the casting"), "Ctrl+K",
              [this] { showAttachments(); });
    addAction(actions_.go, tr("Non&conformances and repairs"), "Ctrl+R", [this] { showRepairs(); });
    actions_.go.push_back(nullptr);
    signAction_ =
        addAction(actions_.sign, tr("&Sign this examination…"), "Ctrl+Shift+S", [this] { sign(); });
    presentAction_ = addAction(actions_.sign, tr("&Present the casting for release…"),
                               "Ctrl+Shift+P", [this] { present(); });
    const auto step = [this](int by) {
        const int row = zones_->currentIndex().row() + by;
        if (row >= 0 && row < zones_->zones().rowCount()) {
            zones_->setCurrentIndex(zones_->zones().index(row));
        }
    };
    addAction(actions_.go, tr("&Next zone"), "Ctrl+PgDown", [step] { step(1); });
    addAction(actions_.go, tr("&Previous zone"), "Ctrl+PgUp", [step] { step(-1); });
}

}  // namespace app
