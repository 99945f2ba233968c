// SPDX-License-Identifier: Apache-2.0
#include "repair_bench/repair_page.h"

#include <QLabel>
#include <QListWidget>
#include <QPushButton>
#include <QTreeWidget>
#include <algorithm>

#include "fields/field_words.h"
#include "looks/heading.h"
#include "looks/marked_lines.h"
#include "looks/text.h"

namespace app {
namespace {

constexpr int kRegisterRole = Qt::UserRole;
constexpr int kKeyRole = Qt::UserRole + 1;
constexpr int kExaminationRole = Qt::UserRole + 2;

Mark markOf(const model::RepairCase& one) {
    namespace state = model::repair_state;
    if (one.state == state::kScrapped || one.state == state::kRegraded) return Mark::Fails;
    const bool repaired = one.state == state::kGround || one.state == state::kWelded;
    return one.closed && repaired ? Mark::Passes : Mark::Open;
}

QString on(const std::string& date, const std::string& by) {
    QStringList parts;
    if (!date.empty()) parts << qt(date);
    if (!by.empty()) parts << qt(by);
    return parts.join(", ");
}

QString millimetres(const std::string& text) {
    return RepairPage::tr("%1 mm").arg(qt(text));
}

QString cavityText(const model::Excavation& cavity) {
    QStringList parts{RepairPage::tr("%1 × %2, %3 deep")
                          .arg(qt(cavity.length), qt(cavity.width), millimetres(cavity.depth))};
    if (!cavity.wallLeft.empty()) {
        parts << RepairPage::tr("wall left %1").arg(millimetres(cavity.wallLeft));
    }
    parts << choiceText(cavity.means);
    return parts.join(", ");
}

}  // namespace

void RepairPage::show(CastingDesk* desk) {
    if (desk_ && desk_ != desk) {
        desk_->editor().disconnect(this);
        desk_->disconnect(this);
    }
    if (desk && desk_ != desk) {
        const auto anew = [this] {
            if (isVisible() && desk_ && !desk_->judging()) refresh();
        };
        connect(&desk->editor(), &CastingEditor::registersChanged, this, [this] { refresh(); });
        connect(desk, &CastingDesk::liveChanged, this, anew);
        connect(desk, &QObject::destroyed, this, [this] { desk_ = nullptr; });
    }
    desk_ = desk;
    refresh();
}

void RepairPage::showEvent(QShowEvent* event) {
    QWidget::showEvent(event);
    refresh();
}

void RepairPage::refresh() {
    all_.clear();
    file_.reset();
    QStringList loose;
    std::vector<MarkedEntry> entries;
    if (desk_) {
        file_ = std::make_unique<const model::CastingFile>(desk_->editor().file());
        const auto& live = desk_->live();
        const model::Verdict verdict = live && live->complete ? *live->complete : model::Verdict();
        all_ = model::repairCasesOf(file(), verdict, dateToday());
        for (const auto& error : model::looseEndsOf(file(), verdict)) {
            loose << "•  " + sentence(error);
        }
        for (const auto& one : all_) {
            const QString place = tr("%1 %2, %3")
                                      .arg(qt(one.opened->zone), qt(one.opened->method),
                                           choiceText(one.opened->stage));
            entries.push_back(
                {markOf(one),
                 qt(one.opened->number),
                 one.closed ? tr("closed") : tr("open"),
                 {choiceText(one.state), place, qt(one.opened->finding).section('\n', 0, 0)},
                 false,
                 qt(one.opened->number)});
        }
    }
    loose_->setText(loose.join('\n'));
    loose_->setVisible(!loose.isEmpty());
    cases_->setEntries(entries);
    if (!cases_->currentIndex().isValid() && cases_->count() > 0) {
        cases_->setCurrentIndex(cases_->model()->index(0, 0));
    }
    showCase();
}

const model::RepairCase* RepairPage::current() const {
    const std::string number = cases_->currentKey().toString().toStdString();
    const auto found = std::ranges::find_if(
        all_, [&](const model::RepairCase& one) { return one.opened->number == number; });
    return found == all_.end() ? nullptr : &*found;
}

void RepairPage::choose(const std::string& number) {
    cases_->choose(qt(number));
}

void RepairPage::showCase() {
    const auto* one = current();
    const CaseItem before = currentItem();
    {
        const QSignalBlocker quiet(steps_);
        steps_->clear();
        if (one) showSteps(*one);
        steps_->expandAll();
    }
    for (QWidget* part :
         std::initializer_list<QWidget*>{state_, open_, steps_, links_, linksTitle_}) {
        part->setVisible(one != nullptr);
    }
    if (one) {
        title_->setText(tr("Nonconformance %1").arg(qt(one->opened->number)));
        QString state = choiceText(one->state);
        if (!state.isEmpty()) state[0] = state[0].toUpper();
        if (one->carriedOnBy) state += tr(": %1").arg(qt(one->carriedOnBy->number));
        if (one->cycle > 0) state += tr(" · repair cycle %1").arg(one->cycle);
        state_->setText(state);
        QStringList open;
        for (const auto& error : one->open) open << "•  " + sentence(error);
        open_->setText(open.isEmpty() ? tr("Nothing is open.")
                                      : tr("Still to be done:\n%1").arg(open.join('\n')));
        steps_->setCurrentItem(steps_->topLevelItem(0));
        for (QTreeWidgetItemIterator at(steps_); *at; ++at) {
            const CaseItem item{(*at)->data(0, kRegisterRole).toString().toStdString(),
                                (*at)->data(0, kKeyRole).toString().toStdString(),
                                (*at)->data(0, kExaminationRole).toInt()};
            if (item == before) steps_->setCurrentItem(*at);
        }
    } else {
        title_->setText(desk_ ? tr("No nonconformance is open. One is opened from an examination "
                                   "that is not acceptable.")
                              : QString());
    }
    showLinks();
}

QTreeWidgetItem* RepairPage::addStep(QTreeWidgetItem* parent, const QString& step,
                                     const QString& what, const QString& when,
                                     const CaseItem& item) {
    auto* row = new QTreeWidgetItem({step, what, when});
    row->setData(0, kRegisterRole, qt(item.registerName));
    row->setData(0, kKeyRole, qt(item.key));
    row->setData(0, kExaminationRole, item.examination);
    row->setToolTip(1, what);
    if (parent) {
        parent->addChild(row);
    } else {
        steps_->addTopLevelItem(row);
    }
    return row;
}

void RepairPage::showSteps(const model::RepairCase& of) {
    const auto entry = [](const auto& one) {
        using T = std::decay_t<decltype(one)>;
        return CaseItem{std::string(T::kRegister), keyOf(one), -1};
    };
    const auto examination = [this](const model::ExaminationDraft& draft) {
        return CaseItem{{}, {}, static_cast<int>(&draft - file().examinations.data())};
    };
    const auto& opened = *of.opened;
    addStep(nullptr, tr("Opened"), qt(opened.finding).replace('\n', "; "),
            on(opened.openedOn, opened.openedBy), entry(opened));
    if (of.found) {
        addStep(nullptr, tr("Found by"), examinationName(*of.found),
                on(of.found->examinedOn, of.found->examinedBy), examination(*of.found));
    }
    if (of.foundByOther) {
        addStep(
            nullptr, tr("Found by"),
            tr("%1, report %2").arg(choiceText(of.foundByOther->test), qt(of.foundByOther->report)),
            on(of.foundByOther->performedOn, of.foundByOther->performedBy),
            entry(*of.foundByOther));
    }
    for (const auto* decision : of.decisions) {
        addStep(nullptr, tr("Decision %1").arg(qt(decision->sequence)),
                tr("%1: %2").arg(choiceText(decision->decision), qt(decision->reason)),
                on(decision->decidedOn, decision->authority), entry(*decision));
    }
    for (std::size_t i = 0; i < of.excavations.size(); ++i) {
        const auto& cavity = *of.excavations[i];
        auto* step = addStep(nullptr, tr("Excavation %1").arg(qt(cavity.number)),
                             cavityText(cavity), on(cavity.doneOn, cavity.doneBy), entry(cavity));
        if (i < of.severities.size()) {
            const auto& severity = of.severities[i];
            addStep(step, tr("Repair is"),
                    tr("%1: %2").arg(choiceText(word(severity.severity)), qt(severity.reason)), {},
                    entry(cavity));
        }
        for (const auto* test : of.cavityTests) {
            if (test->number != cavity.cavityRecord) continue;
            addStep(step, tr("Cavity test %1").arg(qt(test->number)),
                    tr("%1: %2").arg(choiceText(test->test), choiceText(test->verdict)),
                    on(test->performedOn, test->performedBy), entry(*test));
        }
        for (const auto* weld : of.weldRepairs) {
            if (weld->excavation != cavity.number) continue;
            auto* welded = addStep(
                step, tr("Weld repair %1").arg(qt(weld->number)),
                tr("%1, filler %2, batch %3")
                    .arg(qt(weld->weldingProcedure), qt(weld->filler), qt(weld->fillerBatch)),
                on(weld->doneOn, weld->welder), entry(*weld));
            for (const auto* heat : of.heatTreatments) {
                const auto covered = model::itemsOf(heat->weldRepairs);
                if (std::ranges::find(covered, weld->number) == covered.end()) continue;
                addStep(welded, tr("Heat treatment %1").arg(qt(heat->number)),
                        tr("%1, %2 °C, %3 min")
                            .arg(choiceText(heat->kind), qt(heat->temperature), qt(heat->holding)),
                        on(heat->doneOn, {}), entry(*heat));
            }
        }
    }
    for (const auto* again : of.reexaminations) {
        const int at = examination(*again).examination;
        QString word;
        if (const auto& live = desk_->live();
            live && static_cast<std::size_t>(at) < live->examinations.size()) {
            word = wordText(live->examinations[static_cast<std::size_t>(at)].word);
        }
        addStep(nullptr, tr("Re-examination"), tr("%1: %2").arg(examinationName(*again), word),
                on(again->examinedOn, again->examinedBy), examination(*again));
    }
    for (const auto* again : of.otherReexaminations) {
        addStep(nullptr, tr("Re-examination %1").arg(qt(again->number)),
                tr("%1: %2").arg(choiceText(again->test), choiceText(again->verdict)),
                on(again->performedOn, again->performedBy), entry(*again));
    }
    for (const auto* given : of.concessions) {
        addStep(nullptr, tr("Concession %1").arg(qt(given->number)),
                tr("%1: indications %2").arg(qt(given->customerReference), qt(given->indications)),
                on(given->grantedOn, given->grantedBy), entry(*given));
    }
    if (of.carriedOnBy) {
        addStep(nullptr, tr("Carried on by"), qt(of.carriedOnBy->number),
                on(of.carriedOnBy->openedOn, of.carriedOnBy->openedBy), entry(*of.carriedOnBy));
    }
}

CaseItem RepairPage::currentItem() const {
    const auto* row = steps_->currentItem();
    if (!row) return {};
    return {row->data(0, kRegisterRole).toString().toStdString(),
            row->data(0, kKeyRole).toString().toStdString(),
            row->data(0, kExaminationRole).toInt()};
}

void RepairPage::showLinks() {
    links_->clear();
    const CaseItem item = currentItem();
    if (file_ && steps_->currentItem()) {
        linksTitle_->setText(tr("&Links of %1").arg(nameOf(file(), item)));
        for (const auto& link : linksOf(file(), item)) {
            const QString other = nameOf(file(), link.other);
            auto* row = new QListWidgetItem(
                link.named ? tr("←  named by %1").arg(other) : tr("→  names %1").arg(other),
                links_);
            row->setData(Qt::UserRole, qt(link.other.registerName));
            row->setData(Qt::UserRole + 1, qt(link.other.key));
            row->setData(Qt::UserRole + 2, link.other.examination);
        }
    }
    refreshButtons();
}

/// To an examination on the bench, or to the step of an entry, of whichever case it is in.
void RepairPage::goTo(const CaseItem& item) {
    if (item.registerName.empty()) {
        emit examinationWanted(item.examination);
        return;
    }
    const auto find = [&] {
        for (QTreeWidgetItemIterator at(steps_); *at; ++at) {
            if ((*at)->data(0, kRegisterRole).toString() == qt(item.registerName) &&
                (*at)->data(0, kKeyRole).toString() == qt(item.key)) {
                steps_->setCurrentItem(*at);
                steps_->setFocus();
                return true;
            }
        }
        return false;
    };
    if (find()) return;
    for (const auto& one : all_) {
        choose(one.opened->number);
        if (find()) return;
    }
    emit message(tr("%1 is in no case of this casting.").arg(nameOf(file(), item)));
}

QString RepairPage::openText() const {
    return open_->text();
}
QString RepairPage::stateText() const {
    return state_->text();
}

}  // namespace app
