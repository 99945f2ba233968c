// SPDX-License-Identifier: Apache-2.0
// How the page of nonconformances is put together.
#include <QGridLayout>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QListWidget>
#include <QPushButton>
#include <QSplitter>
#include <QTreeWidget>
#include <QVBoxLayout>

#include "looks/heading.h"
#include "looks/marked_lines.h"
#include "repair_bench/repair_page.h"

namespace app {

RepairPage::RepairPage(ArchiveThread& archive, Session& session, QWidget* parent)
    : QWidget(parent),
      archive_(archive),
      session_(session),
      heading_(new Heading(1.25, this, tr("Nonconformances and repairs"))),
      loose_(new QLabel(this)),
      cases_(new MarkedList(3, this)),
      title_(new Heading(1.15, this)),
      state_(new QLabel(this)),
      open_(new QLabel(this)),
      steps_(new QTreeWidget(this)),
      linksTitle_(new QLabel(tr("&Linked with"), this)),
      links_(new QListWidget(this)) {
    cases_->setObjectName("repairCases");
    cases_->setAccessibleName(tr("Nonconformances of the casting"));
    cases_->setMinimumWidth(fontMetrics().averageCharWidth() * 30);
    state_->setObjectName("caseState");
    open_->setObjectName("caseOpen");
    open_->setAccessibleName(tr("Still to be done"));
    loose_->setObjectName("looseEnds");
    for (QLabel* text : {loose_, state_, open_}) {
        text->setWordWrap(true);
        text->setTextFormat(Qt::PlainText);
    }
    steps_->setObjectName("caseSteps");
    steps_->setAccessibleName(tr("What answers the nonconformance"));
    steps_->setHeaderLabels({tr("Step"), tr("What"), tr("When, by whom")});
    steps_->setUniformRowHeights(true);
    steps_->header()->setSectionResizeMode(QHeaderView::ResizeToContents);
    steps_->header()->setSectionResizeMode(1, QHeaderView::Stretch);
    steps_->header()->setStretchLastSection(false);
    linksTitle_->setBuddy(links_);
    links_->setObjectName("caseLinks");
    links_->setAccessibleName(tr("Linked with"));
    links_->setMaximumHeight(fontMetrics().height() * 6);

    auto* right = new QWidget(this);
    auto* rightLayout = new QVBoxLayout(right);
    rightLayout->setContentsMargins(10, 0, 0, 0);
    rightLayout->setSpacing(6);
    rightLayout->addWidget(title_);
    rightLayout->addWidget(state_);
    rightLayout->addWidget(open_);
    rightLayout->addWidget(steps_, 1);
    rightLayout->addWidget(linksTitle_);
    rightLayout->addWidget(links_);
    auto* split = new QSplitter(this);
    split->addWidget(cases_);
    split->addWidget(right);
    split->setStretchFactor(0, 1);
    split->setStretchFactor(1, 3);
    split->setChildrenCollapsible(false);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(6);
    layout->addWidget(heading_);
    layout->addWidget(loose_);
    layout->addWidget(split, 1);
    makeButtons();
    connect(cases_, &MarkedList::keyChosen, this, &RepairPage::showCase);
    connect(steps_, &QTreeWidget::currentItemChanged, this, &RepairPage::showLinks);
    connect(steps_, &QTreeWidget::itemActivated, this, [this] {
        const CaseItem item = currentItem();
        if (item.registerName.empty()) {
            goTo(item);
        } else {
            change();
        }
    });
    connect(links_, &QListWidget::itemActivated, this, [this](QListWidgetItem* item) {
        goTo({item->data(Qt::UserRole).toString().toStdString(),
              item->data(Qt::UserRole + 1).toString().toStdString(),
              item->data(Qt::UserRole + 2).toInt()});
    });
    connect(&session_, &Session::changed, this, &RepairPage::refreshButtons);
    refresh();
}

/// In the order of the work; each makes the next entry of the chosen case.
void RepairPage::makeButtons() {
    auto* grid = new QGridLayout;
    constexpr int kColumns = 4;
    const auto add = [&](const QString& text, const char* name, std::string_view registerName,
                         void (RepairPage::*act)()) {
        auto* button = new QPushButton(text, this);
        button->setObjectName(name);
        button->setAutoDefault(false);
        const int at = static_cast<int>(acts_.size());
        grid->addWidget(button, at / kColumns, at % kColumns);
        connect(button, &QPushButton::clicked, this, [this, act] { (this->*act)(); });
        acts_.push_back({button, std::string(registerName)});
        return button;
    };
    add(tr("&Decide…"), "decide", model::Disposition::kRegister, &RepairPage::decide);
    add(tr("E&xcavation…"), "excavate", model::Excavation::kRegister, &RepairPage::excavate);
    add(tr("&Weld repair…"), "weld", model::WeldRepair::kRegister, &RepairPage::weld);
    add(tr("&Heat treatment…"), "heatTreat", model::HeatTreatment::kRegister,
        &RepairPage::heatTreat);
    add(tr("Exa&mine again"), "reexamine", {}, &RepairPage::reexamine);
    add(tr("Con&cession…"), "concede", model::Concession::kRegister, &RepairPage::concede);
    add(tr("&Other result…"), "addResult", model::OtherResult::kRegister, &RepairPage::addResult);
    change_ = add(tr("Cha&nge the step…"), "changeStep", {}, &RepairPage::change);
    const auto addSheet = [&](const QString& text, const char* name, WorkshopSheet sheet, int at) {
        auto* button = new QPushButton(text, this);
        button->setObjectName(name);
        button->setAutoDefault(false);
        grid->addWidget(button, at / kColumns, at % kColumns);
        connect(button, &QPushButton::clicked, this, [this, sheet] { askForSheet(sheet); });
        return button;
    };
    const int next = static_cast<int>(acts_.size());
    markingOut_ =
        addSheet(tr("Marking-out &sheet…"), "markingOut", WorkshopSheet::MarkingOut, next);
    weldMap_ = addSheet(tr("Weld ma&p…"), "weldMap", WorkshopSheet::WeldMap, next + 1);
    static_cast<QVBoxLayout*>(layout())->addLayout(grid);
}

QPushButton* RepairPage::button(const QString& name) const {
    return findChild<QPushButton*>(name);
}

}  // namespace app
