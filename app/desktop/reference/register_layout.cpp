// SPDX-License-Identifier: Apache-2.0
// How the page of a register is put together.
#include <QAction>
#include <QHeaderView>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QScrollArea>
#include <QSplitter>
#include <QStackedWidget>
#include <QTabBar>
#include <QTableView>
#include <QVBoxLayout>

#include "fields/field_form.h"
#include "looks/heading.h"
#include "looks/notice_bar.h"
#include "reference/entry_model.h"
#include "reference/register_page.h"
#include "reference/rows_editor.h"

namespace app {
namespace {

QPushButton* button(const QString& text, const QString& name, QWidget* parent) {
    auto* made = new QPushButton(text, parent);
    made->setObjectName(name);
    made->setAutoDefault(false);
    return made;
}

}  // namespace

void RegisterPage::makeLayout() {
    notice_ = new NoticeBar(this);
    auto* split = new QSplitter(Qt::Horizontal, this);
    split->addWidget(makeListSide());
    split->addWidget(makeFormSide());
    split->setStretchFactor(0, 1);
    split->setStretchFactor(1, 1);
    split->setSizes(of_.rows.empty() ? QList{720, 480} : QList{440, 760});
    split->setChildrenCollapsible(false);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(0);
    layout->addWidget(notice_);
    layout->addWidget(split, 1);
    auto* toFind = new QAction(this);
    toFind->setShortcut(QKeySequence::Find);
    toFind->setShortcutContext(Qt::WidgetWithChildrenShortcut);
    addAction(toFind);
    connect(toFind, &QAction::triggered, this, [this] {
        find_->setFocus();
        find_->selectAll();
    });
    auto* toSave = new QAction(this);
    toSave->setShortcut(QKeySequence::Save);
    toSave->setShortcutContext(Qt::WidgetWithChildrenShortcut);
    addAction(toSave);
    connect(toSave, &QAction::triggered, this, &RegisterPage::save);
}

QWidget* RegisterPage::makeListSide() {
    auto* side = new QWidget(this);
    auto* title = new Heading(1.25, side, of_.title);
    auto* about = new QLabel(of_.about, side);
    about->setWordWrap(true);
    about->setForegroundRole(QPalette::PlaceholderText);
    find_ = new QLineEdit(side);
    find_->setObjectName("find");
    find_->setPlaceholderText(tr("Find in every field (Ctrl+F)"));
    find_->setAccessibleName(tr("Find in %1").arg(of_.title));
    find_->setClearButtonEnabled(true);
    find_->installEventFilter(this);
    list_ = new QTableView(side);
    list_->setObjectName("entries");
    list_->setAccessibleName(of_.title);
    list_->setModel(filter_);
    list_->setSortingEnabled(true);
    list_->sortByColumn(0, Qt::AscendingOrder);
    list_->setSelectionBehavior(QAbstractItemView::SelectRows);
    list_->setSelectionMode(QAbstractItemView::SingleSelection);
    list_->setEditTriggers(QAbstractItemView::NoEditTriggers);
    list_->setTabKeyNavigation(false);
    list_->setAlternatingRowColors(true);
    list_->setShowGrid(false);
    list_->setWordWrap(false);
    list_->verticalHeader()->hide();
    list_->verticalHeader()->setSectionResizeMode(QHeaderView::Fixed);
    list_->horizontalHeader()->setHighlightSections(false);
    list_->horizontalHeader()->setStretchLastSection(true);
    list_->installEventFilter(this);
    count_ = new QLabel(side);
    count_->setForegroundRole(QPalette::PlaceholderText);
    new_ = button(tr("&%1").arg(of_.newTitle), "new", side);
    like_ = button(tr("New &like this"), "like", side);
    like_->setToolTip(tr("A new entry that begins with the texts of the one in view"));
    import_ = button(tr("&Import…"), "import", side);
    import_->setToolTip(tr("From a CSV file, which is tried out first"));
    import_->setVisible(!of_.files.empty());
    auto* below = new QHBoxLayout;
    below->addWidget(count_, 1);
    below->addWidget(import_);
    below->addWidget(like_);
    below->addWidget(new_);
    auto* layout = new QVBoxLayout(side);
    layout->setContentsMargins(12, 10, 8, 10);
    layout->setSpacing(6);
    layout->addWidget(title);
    layout->addWidget(about);
    layout->addWidget(find_);
    layout->addWidget(list_, 1);
    layout->addLayout(below);
    side->setMinimumWidth(280);
    return side;
}

QWidget* RegisterPage::makeForm() {
    auto* inside = new QWidget(this);
    form_ = new FieldForm(of_.fields, inside);
    form_->setMnemonics("aegshpvdtrmynlif");  // the menus' and those of the buttons around it
    auto* layout = new QVBoxLayout(inside);
    layout->setContentsMargins(0, 0, 10, 0);
    layout->addWidget(form_);
    fileText_ = new QLabel(inside);
    fileText_->setWordWrap(true);
    fileText_->setTextFormat(Qt::PlainText);
    fileButton_ = button(tr("Choose the &file…"), "chooseFile", inside);
    auto* file = new QHBoxLayout;
    file->addWidget(fileText_, 1);
    file->addWidget(fileButton_);
    layout->addLayout(file);
    layout->addStretch(1);
    auto* scroll = new QScrollArea(this);
    scroll->setWidgetResizable(true);
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->setFocusPolicy(Qt::NoFocus);
    scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    scroll->setWidget(inside);
    return scroll;
}

QWidget* RegisterPage::makeFormSide() {
    side_ = new QWidget(this);
    heading_ = new Heading(1.25, side_);
    heading_->setObjectName("entryHeading");
    versions_ = button(of_.versionsTitle.isEmpty() ? tr("Ve&rsions…") : of_.versionsTitle,
                       "versions", side_);
    versions_->setVisible(of_.versions != nullptr);
    tabs_ = new QTabBar(side_);
    tabs_->addTab(tr("De&tails"));
    tabs_->setDrawBase(false);
    tabs_->setExpanding(false);
    tabs_->setAccessibleName(tr("Parts of the entry"));
    pages_ = new QStackedWidget(side_);
    pages_->addWidget(makeForm());
    for (const auto& table : of_.rows) {
        tabs_->addTab(table.title);
        rows_.push_back(new RowsEditor(table, pages_));
        pages_->addWidget(rows_.back());
    }
    tabs_->setVisible(!of_.rows.empty());
    help_ = new QLabel(side_);
    help_->setWordWrap(true);
    help_->setTextFormat(Qt::PlainText);
    help_->setObjectName("help");
    help_->setMinimumHeight(help_->fontMetrics().height() * 2);
    help_->setAlignment(Qt::AlignLeft | Qt::AlignVCenter);
    help_->setForegroundRole(QPalette::PlaceholderText);
    state_ = new QLabel(side_);
    state_->setObjectName("state");
    state_->setWordWrap(true);
    state_->setTextFormat(Qt::PlainText);
    drop_ = button(tr("&Discard"), "drop", side_);
    save_ = button(of_.signers.empty() ? tr("Save") : tr("Sign and save"), "save", side_);
    save_->setToolTip(tr("Ctrl+S"));
    auto* head = new QHBoxLayout;
    head->addWidget(heading_, 1);
    head->addWidget(versions_, 0, Qt::AlignTop);
    auto* below = new QHBoxLayout;
    below->addWidget(state_, 1);
    below->addWidget(drop_);
    below->addWidget(save_);
    auto* layout = new QVBoxLayout(side_);
    layout->setContentsMargins(14, 10, 12, 10);
    layout->setSpacing(8);
    layout->addLayout(head);
    layout->addWidget(tabs_);
    layout->addWidget(pages_, 1);
    layout->addWidget(help_);
    layout->addLayout(below);
    side_->setMinimumWidth(320);
    return side_;
}

}  // namespace app
