// SPDX-License-Identifier: Apache-2.0
// How the examination pane is put together.
#include <QCheckBox>
#include <QComboBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QSplitter>
#include <QStackedWidget>
#include <QTabWidget>
#include <QVBoxLayout>

#include "bench/cautions_view.h"
#include "bench/details_form.h"
#include "bench/examination_pane.h"
#include "bench/indication_model.h"
#include "bench/reflector_model.h"
#include "bench/row_table.h"
#include "bench/surface_view.h"
#include "conditions_bench/conditions_page.h"
#include "looks/heading.h"
#include "ultrasonic_bench/coverage_page.h"
#include "ultrasonic_bench/reading_page.h"
#include "ultrasonic_bench/setting_page.h"

namespace app {
ExaminationPane::ExaminationPane(QWidget* parent)
    : QWidget(parent), pages_(new QStackedWidget(this)) {
    pages_->addWidget(makeEmptyPage());
    pages_->addWidget(makeBeginPage());
    pages_->addWidget(makeExaminationPage());
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(pages_);

    redraw_.setSingleShot(true);
    redraw_.setInterval(0);
    connect(&redraw_, &QTimer::timeout, this, [this] {
        refreshPicture(false);
        refreshEntry();
        showRowMessage();
    });
    connect(surface_, &SurfaceView::rowPicked, this, [this](int row) {
        table_->goTo(row, rows_->firstCell());
        table_->setFocus();
    });
    for (int i = 0; i < tables_->count(); ++i) {
        auto* table = static_cast<RowTable*>(tables_->widget(i));
        connectTable(*table, i == 0 ? static_cast<RowModel&>(*indications_) : *reflectors_);
    }
    reading_->setFresh([this] { return reflectors_->nextRow(); });
    connect(reading_, &ReadingPage::rowWanted, this,
            [this](int row) { table_->goTo(row, rows_->firstCell()); });
    connect(entry_, &QTabWidget::currentChanged, this, [this](int page) {
        finishEditing();
        if (page != Rows) cautions_->setOpen(false);  // read, and work begun
        details_->setVisible(page == Rows || page == Coverage || page == Conditions);
    });
    connect(conditions_, &ConditionsPage::standingChanged, this, &ExaminationPane::showStanding);
    connect(unit_, &QComboBox::currentIndexChanged, this, &ExaminationPane::setUnit);
    connect(nothing_, &QCheckBox::clicked, this, [this](bool stated) {
        if (desk_) desk_->editor().stateNoIndications(examination_, stated);
        refreshEntry();
    });
    connect(begin_, &QPushButton::clicked, this, &ExaminationPane::beginRequested);
    show(nullptr, nullptr);
}

void ExaminationPane::connectTable(RowTable& table, RowModel& rows) {
    connect(&table, &RowTable::currentRowChanged, this, [this, &rows](int row) {
        if (rows_ != &rows) return;
        surface_->setCurrentRow(row);
        if (&rows == static_cast<RowModel*>(reflectors_)) reading_->setRow(row);
    });
    connect(table.selectionModel(), &QItemSelectionModel::currentChanged, this,
            [this] { showRowMessage(); });
    connect(&table, &RowTable::message, this, &ExaminationPane::message);
    connect(&rows, &RowModel::problemsChanged, this, [this] { redraw_.start(); });
}

QWidget* ExaminationPane::makeEmptyPage() {
    auto* label = new QLabel(tr("Find a casting at the left, then choose a zone."), this);
    label->setAlignment(Qt::AlignCenter);
    label->setWordWrap(true);
    label->setForegroundRole(QPalette::PlaceholderText);
    return label;
}

QWidget* ExaminationPane::makeBeginPage() {
    auto* page = new QWidget(this);
    beginTitle_ = new Heading(1.4, page);
    beginText_ = new QLabel(page);
    beginText_->setWordWrap(true);
    auto* before = new Heading(1.1, page, tr("Before you begin"));
    beginCautions_ = new QLabel(page);
    beginCautions_->setObjectName("beginCautions");
    beginCautions_->setWordWrap(true);
    beginCautions_->setMargin(10);
    beginCautions_->setBackgroundRole(QPalette::ToolTipBase);
    beginCautions_->setForegroundRole(QPalette::ToolTipText);
    beginCautions_->setAutoFillBackground(true);
    begin_ = new QPushButton(tr("&Begin this examination"), page);
    begin_->setDefault(true);
    begin_->setAutoDefault(true);
    auto* layout = new QVBoxLayout(page);
    layout->setContentsMargins(40, 36, 40, 24);
    layout->setSpacing(12);
    layout->addWidget(beginTitle_);
    layout->addWidget(beginText_);
    layout->addSpacing(10);
    layout->addWidget(before);
    layout->addWidget(beginCautions_);
    layout->addSpacing(8);
    layout->addWidget(begin_, 0, Qt::AlignLeft);
    layout->addStretch(1);
    return page;
}

QWidget* ExaminationPane::makeExaminationPage() {
    auto* page = new QWidget(this);
    heading_ = new Heading(1.25, page);
    place_ = new QLabel(page);
    place_->setWordWrap(true);
    cautions_ = new CautionsView(page);
    details_ = new DetailsForm(page);

    entry_ = new QTabWidget(page);
    entry_->setDocumentMode(true);
    entry_->addTab(makeRowsPage(), tr("Indications"));
    reading_ = new ReadingPage(entry_);
    entry_->addTab(reading_, tr("Reading"));
    settings_ = new SettingPage(entry_);
    entry_->addTab(settings_, tr("Setting"));
    coverage_ = new CoveragePage(entry_);
    entry_->addTab(coverage_, tr("Coverage"));
    conditions_ = new ConditionsPage(entry_);
    entry_->addTab(conditions_, tr("Conditions"));

    auto* layout = new QVBoxLayout(page);
    layout->setContentsMargins(10, 10, 10, 8);
    layout->setSpacing(6);
    layout->addWidget(heading_);
    layout->addWidget(place_);
    layout->addWidget(cautions_);
    layout->addWidget(details_);
    layout->addWidget(entry_, 1);
    return page;
}

QWidget* ExaminationPane::makeRowsPage() {
    auto* page = new QWidget(this);
    surface_ = new SurfaceView(page);
    indications_ = new IndicationModel(this);
    reflectors_ = new ReflectorModel(this);
    rows_ = indications_;
    tables_ = new QStackedWidget(page);
    tables_->addWidget(new RowTable(*indications_, tables_));
    tables_->addWidget(new RowTable(*reflectors_, tables_));
    table_ = static_cast<RowTable*>(tables_->widget(0));
    nothing_ = new QCheckBox(tr("&No indications found"), page);
    nothing_->setToolTip(tr("A statement: the whole zone was examined and nothing was found."));
    unit_ = new QComboBox(page);
    unit_->setObjectName("rowUnit");
    unit_->addItems({tr("mm"), tr("inch")});
    unit_->setAccessibleName(tr("Unit of new rows"));
    unit_->setToolTip(
        tr("Unit in which new rows are typed and the rulers are drawn. Rows that "
           "are there keep what was typed."));
    auto* unitLabel = new QLabel(tr("Type in &unit"), page);
    unitLabel->setBuddy(unit_);
    rowMessage_ = new QLabel(page);
    rowMessage_->setObjectName("rowMessage");
    rowMessage_->setWordWrap(true);
    rowMessage_->setAccessibleName(tr("About the rows"));

    auto* entry = new QWidget(page);
    auto* bar = new QHBoxLayout;
    bar->addWidget(nothing_);
    bar->addStretch(1);
    bar->addWidget(unitLabel);
    bar->addWidget(unit_);
    auto* entryLayout = new QVBoxLayout(entry);
    entryLayout->setContentsMargins(0, 4, 0, 0);
    entryLayout->setSpacing(5);
    entryLayout->addLayout(bar);
    entryLayout->addWidget(tables_, 1);
    entryLayout->addWidget(rowMessage_);

    auto* split = new QSplitter(Qt::Vertical, page);
    split->addWidget(surface_);
    split->addWidget(entry);
    split->setStretchFactor(0, 3);
    split->setStretchFactor(1, 2);
    split->setChildrenCollapsible(false);

    auto* layout = new QVBoxLayout(page);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(split);
    return page;
}

}  // namespace app
