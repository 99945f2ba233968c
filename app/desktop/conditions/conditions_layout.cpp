// SPDX-License-Identifier: Apache-2.0
// How the page of conditions is put together.
#include <QHeaderView>
#include <QLabel>
#include <QScrollArea>
#include <QVBoxLayout>

#include "conditions_bench/conditions_page.h"
#include "conditions_bench/findings_view.h"
#include "fields/entry_table.h"
#include "fields/field_words.h"
#include "looks/heading.h"

namespace app {

ConditionsPage::ConditionsPage(QWidget* parent)
    : QWidget(parent),
      halves_(new QBoxLayout(QBoxLayout::LeftToRight)),
      scroll_(new QScrollArea(this)),
      body_(new QWidget(this)),
      columns_(new QBoxLayout(QBoxLayout::LeftToRight)),
      left_(new FieldForm(body_)),
      right_(new FieldForm(body_)),
      drift_(new QLabel(body_)),
      findings_(new FindingsView(this)),
      help_(new QLabel(this)) {
    makeForms();
    makeLists();
    drift_->setObjectName("driftConsequences");
    drift_->setAccessibleName(tr("What follows from the setting checks"));
    help_->setObjectName("conditionHelp");
    help_->setAccessibleName(tr("About the field"));
    help_->setForegroundRole(QPalette::PlaceholderText);
    help_->setMinimumHeight(2 * help_->fontMetrics().height());
    help_->setAlignment(Qt::AlignTop | Qt::AlignLeft);
    for (QLabel* text : {drift_, help_}) {
        text->setWordWrap(true);
        text->setTextFormat(Qt::PlainText);
    }

    columns_->setSpacing(24);
    columns_->addWidget(left_, 1, Qt::AlignTop);
    columns_->addWidget(right_, 1, Qt::AlignTop);
    auto* inside = new QVBoxLayout(body_);
    inside->setContentsMargins(0, 0, 8, 0);
    inside->setSpacing(8);
    inside->addLayout(columns_);
    inside->addWidget(measurements_.box);
    inside->addWidget(checks_.box);
    inside->addWidget(scans_.box);
    inside->addWidget(drift_);
    inside->addStretch(1);
    scroll_->setWidget(body_);
    scroll_->setWidgetResizable(true);
    scroll_->setFrameShape(QFrame::NoFrame);
    scroll_->setFocusPolicy(Qt::NoFocus);

    auto* entry = new QVBoxLayout;
    entry->setSpacing(4);
    entry->addWidget(scroll_, 1);
    entry->addWidget(help_);
    halves_->setContentsMargins(0, 6, 0, 0);
    halves_->setSpacing(14);
    halves_->addLayout(entry, 3);
    halves_->addWidget(findings_, 2);
    setLayout(halves_);

    judge_.setSingleShot(true);
    judge_.setInterval(60);
    connect(&judge_, &QTimer::timeout, this, &ConditionsPage::judge);
    connect(findings_, &FindingsView::acknowledged, this, &ConditionsPage::acknowledge);
    connect(left_, &FieldForm::ended, this,
            [this] { right_->editor(0)->setFocus(Qt::TabFocusReason); });
    connect(right_, &FieldForm::ended, this,
            [this] { measurements_.table->setFocus(Qt::TabFocusReason); });
    refresh();
}

/// The fields of TestConditions under headings; procedure and technique sheet are each chosen as a
/// whole, number and revision at once.
void ConditionsPage::makeForms() {
    addFields(*left_, tr("Test"), {"purpose", "place", "started_at", "ended_at"});
    addFields(*left_, tr("Procedure"), {});
    left_->add({"procedure",
                tr("Procedure"),
                {},
                tr("Of the register, with its revision. With one the validity of the test is "
                   "checked on its day; without, the certificate says that test conditions are "
                   "not stated."),
                {{"", tr("none of the register")}}});
    left_->add({"sheet", tr("Technique sheet"), {}, {}, {{"", tr("none of the register")}}});
    addFields(*left_, {}, {"test_standard", "deviations", "deviations_agreed"});
    addFields(*right_, tr("Surface"),
              {"delivery_state", "surface_preparation", "surface_finish", "coating"});
    addFields(*right_, tr("Used"), {"equipment", "consumables"});
    addFields(*right_, tr("People and pieces"),
              {"evaluated_by", "witnessed_by", "pieces_tested", "nonconformance", "first_record"});
    connectForm(*left_);
    connectForm(*right_);
}

void ConditionsPage::addFields(FieldForm& form, const QString& heading,
                               const std::vector<std::string_view>& keys) {
    if (!heading.isEmpty()) form.addHeading(heading);
    for (const auto key : keys) {
        for (const auto& field : model::TestConditions::fields()) {
            if (field.info.key == key) form.add(field.info);
        }
    }
}

void ConditionsPage::connectForm(FieldForm& form) {
    connect(&form, &FieldForm::entered, this, [this, &form](int field) { enter(form, field); });
    connect(&form, &FieldForm::helpChanged, help_, &QLabel::setText);
}

template <class T>
ConditionsPage::List ConditionsPage::makeList(const QString& title, const QString& name,
                                              std::vector<T> model::TestConditions::*entries,
                                              const QString& what) {
    List list;
    list.box = new QWidget(body_);
    list.model = new EntryRows(fieldInfos<T>(), this);
    list.table = new EntryTable(*list.model, list.box);
    list.table->setObjectName(name);
    list.table->setAccessibleName(title);
    list.wrong = new QLabel(list.box);
    list.wrong->setObjectName(name + "Wrong");
    list.wrong->setWordWrap(true);
    list.wrong->setTextFormat(Qt::PlainText);
    auto* layout = new QVBoxLayout(list.box);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(4);
    layout->addWidget(new Heading(1.05, list.box, title));
    layout->addWidget(list.table);
    layout->addWidget(list.wrong);
    connect(list.model, &EntryRows::edited, this,
            [this, entries, list, what] { takeList(entries, list, what); });
    connect(
        list.table->selectionModel(), &QItemSelectionModel::currentChanged, this,
        [this](const QModelIndex& cell) { help_->setText(cell.data(Qt::ToolTipRole).toString()); });
    return list;
}

void ConditionsPage::makeLists() {
    measurements_ = makeList(tr("Measurements"), "measurements",
                             &model::TestConditions::measurements, tr("measurement"));
    checks_ = makeList(tr("Setting checks"), "settingChecks", &model::TestConditions::settingChecks,
                       tr("setting check"));
    scans_ = makeList(tr("Scans"), "scans", &model::TestConditions::scans, tr("scan"));
    measurements_.model->setFresh([this] { return fresh({}, "at"); });
    measurements_.model->setHowEntered(
        [this](const EntryTexts& row, const std::string& key) -> std::optional<CellEntry> {
            if (!desk_ || examination_ < 0) return std::nullopt;
            return measurementEntry(desk_->editor().file(), draft(), people_, row, key);
        });
    checks_.model->setFresh([this] { return fresh("C", "at"); });
    scans_.model->setFresh([this] { return fresh("S", "started_at"); });
    for (const List& list : {checks_, scans_}) {
        list.model->setHowEntered(
            [this](const EntryTexts&, const std::string& key) { return checkEntry(key); });
    }
    measurements_.table->setWidths({{"parameter", 26}, {"at", 20}, {"value", 16}});
    checks_.table->setWidths({{"at", 20}, {"id", 6}, {"occasion", 14}, {"setting", 14}});
    scans_.table->setWidths(
        {{"id", 6}, {"area", 18}, {"started_at", 20}, {"ended_at", 20}, {"setting", 14}});
}

void ConditionsPage::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    arrange();
}

/// Side by side where there is room for it.
void ConditionsPage::arrange() {
    const int character = fontMetrics().averageCharWidth();
    const bool beside = width() > character * 88;
    halves_->setDirection(beside ? QBoxLayout::LeftToRight : QBoxLayout::TopToBottom);
    halves_->setStretch(0, beside ? 3 : 1);
    halves_->setStretch(1, beside ? 2 : 1);
    const int entry = beside ? width() * 3 / 5 : width();
    columns_->setDirection(entry > character * 84 ? QBoxLayout::LeftToRight
                                                  : QBoxLayout::TopToBottom);
}

}  // namespace app
