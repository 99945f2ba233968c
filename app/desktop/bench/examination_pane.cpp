// SPDX-License-Identifier: Apache-2.0
#include "bench/examination_pane.h"

#include <QCheckBox>
#include <QComboBox>
#include <QLabel>
#include <QPushButton>
#include <QStackedWidget>
#include <QTabBar>
#include <QTabWidget>

#include "bench/cautions.h"
#include "bench/cautions_view.h"
#include "bench/check_list.h"
#include "bench/details_form.h"
#include "bench/indication_model.h"
#include "bench/reflector_model.h"
#include "bench/row_table.h"
#include "bench/surface_view.h"
#include "conditions_bench/conditions_page.h"
#include "looks/text.h"
#include "ultrasonic_bench/coverage_page.h"
#include "ultrasonic_bench/reading_page.h"
#include "ultrasonic_bench/setting_page.h"

namespace app {
namespace {

enum Page { Empty, Begin, Examine };

QString sizeText(model::Length length) {
    return qt(model::toText(length));
}

}  // namespace

void ExaminationPane::show(CastingDesk* desk, const ZoneLine* line) {
    if (desk_ != desk) {
        if (desk_) desk_->editor().disconnect(this);
        if (desk) {
            connect(&desk->editor(), &CastingEditor::edited, this, [this](int changed) {
                if (changed == examination_) cautions_->setOpen(false);  // read, and work begun
                redraw_.start();
            });
            connect(&desk->editor(), &CastingEditor::detailsChanged, this, [this](int changed) {
                if (changed == examination_) refreshEntry();
            });
            connect(&desk->editor(), &CastingEditor::locksChanged, this, [this] {
                refreshBegin();
                refreshEntry();
                showRowMessage();
            });
        }
    }
    desk_ = desk;
    examination_ = line && desk ? line->examination : -1;
    pointedOut_.reset();
    using model::Method;
    const Method method =
        examination_ >= 0 ? desk_->editor().draft(examination_).header.method : Method::Magnetic;
    setMethod(method);
    rows_->show(examination_ >= 0 ? &desk_->editor() : nullptr, examination_);
    const bool ultrasonic = examination_ >= 0 && method == Method::Ultrasonic;
    settings_->show(ultrasonic ? desk_ : nullptr, ultrasonic ? examination_ : -1);
    reading_->show(ultrasonic ? desk_ : nullptr, ultrasonic ? examination_ : -1);
    coverage_->show(ultrasonic ? desk_ : nullptr, ultrasonic ? examination_ : -1);
    conditions_->show(examination_ >= 0 ? desk_ : nullptr, examination_);
    details_->show(examination_ >= 0 ? &desk_->editor() : nullptr, examination_);
    if (!desk_ || !line) {
        pages_->setCurrentIndex(Empty);
        return;
    }
    if (examination_ < 0) {
        showBegin(*line);
        return;
    }
    showHeading(*line);
    cautions_->show(desk_->editor().draft(examination_).header.method);
    pages_->setCurrentIndex(Examine);
    const bool inch = rows_->unit() == model::LengthUnit::Inch;
    const QSignalBlocker quiet(unit_);
    unit_->setCurrentIndex(inch ? 1 : 0);
    surface_->setUnit(rows_->unit());
    surface_->setCheck(std::nullopt);
    refreshEntry();
    refreshPicture(true);
    refreshLive();
}

void ExaminationPane::showBegin(const ZoneLine& line) {
    const auto& file = desk_->editor().file();
    const auto& zone = file.plan.zones[static_cast<std::size_t>(line.zone)];
    const model::RequiredTest& test = *line.test;
    beginTitle_->setText(
        tr("%1: %2, %3").arg(qt(zone.name), methodName(test.method), stageText(test.stage)));
    beginText_->setText(tr("%1\n%2 × %3 mm, smallest wall %4 mm\nTo %5: %6")
                            .arg(qt(zone.description), sizeText(zone.width), sizeText(zone.height),
                                 sizeText(zone.thickness), qt(test.table),
                                 levelsText(test.levels)));
    beginCautions_->setText("•  " + cautionsFor(test.method).join("\n•  "));
    refreshBegin();
    pages_->setCurrentIndex(Begin);
}

void ExaminationPane::refreshBegin() {
    begin_->setEnabled(desk_ && !desk_->editor().frozen());
}

/// The rows, and for ultrasonic testing the pages, that the method has.
void ExaminationPane::setMethod(model::Method method) {
    const bool ultrasonic = method == model::Method::Ultrasonic;
    RowModel* shown = ultrasonic ? static_cast<RowModel*>(reflectors_) : indications_;
    if (rows_ != shown) {
        rows_->show(nullptr, -1);
        rows_ = shown;
        tables_->setCurrentIndex(ultrasonic ? 1 : 0);
        table_ = static_cast<RowTable*>(tables_->currentWidget());
    }
    for (const int page : {Reading, Setting, Coverage}) {
        if (!ultrasonic && entry_->currentIndex() == page) entry_->setCurrentIndex(Rows);
        entry_->setTabVisible(page, ultrasonic);
    }
}

void ExaminationPane::goTo(EntryPage page) {
    if (!entry_->isTabVisible(page)) return;
    entry_->setCurrentIndex(page);
    switch (page) {
        case Rows:
            table_->setFocus();
            break;
        case Reading:
            reading_->focusFirst();
            break;
        case Setting:
            settings_->focusFirst();
            break;
        case Coverage:
            coverage_->focusFirst();
            break;
        case Conditions:
            conditions_->focusFirst();
            break;
    }
}

void ExaminationPane::enterNewRow() {
    table_->goToNewRow();
    goTo(entry_->currentIndex() == Reading ? Reading : Rows);
}

void ExaminationPane::showHeading(const ZoneLine& line) {
    const auto& file = desk_->editor().file();
    const auto& header = desk_->editor().draft(examination_).header;
    heading_->setText(tr("%1 · %2").arg(qt(header.zone), methodName(header.method)));
    QStringList facts{stageText(header.stage), tr("wall %1 mm").arg(sizeText(header.thickness))};
    if (header.repairCycle > 0) facts << tr("repair cycle %1").arg(header.repairCycle);
    if (header.repeat > 0) facts << tr("repeat %1").arg(header.repeat);
    if (line.zone >= 0) {
        const auto& description = file.plan.zones[static_cast<std::size_t>(line.zone)].description;
        if (!description.empty()) facts << qt(description);
    }
    place_->setText(facts.join(" · "));
    place_->setToolTip(place_->text());
}

void ExaminationPane::refreshLive() {
    if (!desk_ || examination_ < 0) return;
    if (desk_->live()) rows_->setLive(desk_->live());
    refreshPicture(false);
    showRowMessage();
}

void ExaminationPane::refreshPicture(bool fit) {
    if (!desk_ || examination_ < 0) return;
    surface_->show(pictureOf(desk_->editor(), examination_, desk_->live().get()), fit);
    if (!pointedOut_) {
        surface_->setCheck(std::nullopt);
        return;
    }
    ShownCheck shown;
    shown.mark = markOf(pointedOut_->passes);
    shown.label = checkTitle(*pointedOut_);
    if (pointedOut_->measured) shown.label += ": " + measuredAndLimit(*pointedOut_);
    shown.frame = pointedOut_->frame;
    const auto& byName = surface_->picture().byName;
    for (const auto& member : pointedOut_->members) {
        const auto found = byName.find(qt(member));
        if (found == byName.end()) continue;
        shown.members.insert(found->second.begin(), found->second.end());
    }
    surface_->setCheck(std::move(shown));
}

void ExaminationPane::pointOut(const model::Check* check) {
    pointedOut_.reset();
    if (check) pointedOut_ = *check;
    refreshPicture(false);
}

void ExaminationPane::refreshEntry() {
    if (!desk_ || examination_ < 0) return;
    const QSignalBlocker quiet(nothing_);
    nothing_->setChecked(desk_->editor().draft(examination_).header.noIndications);
    const bool locked = desk_->editor().locked(examination_);
    nothing_->setEnabled(!locked &&
                         (nothing_->isChecked() || !desk_->editor().hasEntries(examination_)));
    details_->setReadOnly(locked);
}

void ExaminationPane::setUnit(int index) {
    const auto unit = index == 1 ? model::LengthUnit::Inch : model::LengthUnit::Millimetre;
    rows_->setUnit(unit);
    surface_->setUnit(unit);
}

void ExaminationPane::finishEditing() {
    if (examination_ < 0) return;
    table_->finishEditing();
    details_->finishEditing();
    reading_->finishEditing();
    settings_->finishEditing();
    coverage_->finishEditing();
    conditions_->finishEditing();
}

/// The tab says from afar that something stands in the way of signing.
void ExaminationPane::showStanding(int standing) {
    entry_->setTabText(Conditions,
                       standing > 0 ? tr("Conditions (%1)").arg(standing) : tr("Conditions"));
    entry_->setTabIcon(Conditions, standing > 0 ? markIcon(Mark::Open, palette()) : QIcon());
    entry_->setTabToolTip(
        Conditions,
        standing > 0 ? tr("What stands in the way of signing: %1").arg(standing) : QString());
}

QString ExaminationPane::rowMessage() const {
    return rowMessage_->text();
}

void ExaminationPane::showRowMessage() {
    const auto problems = rows_->problems();
    const QModelIndex here = table_->currentIndex();
    QString text;
    bool wrong = false;
    for (const auto& problem : problems) {
        const bool current =
            here.isValid() && problem.row == here.row() && problem.column == here.column();
        if (text.isEmpty() || current) {
            text = problem.message;
            wrong = problem.state == CellState::Wrong;
        }
        if (current) break;
    }
    if (problems.size() > 1) {
        text = tr("%1   (cells in all: %2, F8 goes on)").arg(text).arg(problems.size());
    }
    QPalette colours = palette();
    if (!problems.empty()) {
        const QColor ground = colours.color(QPalette::Window);
        colours.setColor(QPalette::WindowText, colourOf(wrong ? Mark::Fails : Mark::Open, ground));
        text = (wrong ? tr("✗  %1") : tr("…  %1")).arg(text);
    } else if (desk_ && examination_ >= 0 &&
               desk_->editor().draft(examination_).header.noIndications) {
        text = rows_->readOnly() ? tr("Stated: no indications found.")
                                 : tr("Stated: no indications found. Typing a row withdraws it.");
    } else if (rows_->readOnly()) {
        text = tr("Only to read.");
        colours.setColor(QPalette::WindowText, colours.color(QPalette::PlaceholderText));
    } else {
        text = tr("Enter: next cell · Ctrl+Enter: next row · Ctrl+D: as above · F1: all keys");
        colours.setColor(QPalette::WindowText, colours.color(QPalette::PlaceholderText));
    }
    rowMessage_->setPalette(colours);
    rowMessage_->setText(text);
}

}  // namespace app
