// SPDX-License-Identifier: Apache-2.0
// The bench and the registers: what they hold of the casting, its photos, its nonconformances.
#include <QPushButton>
#include <QStackedWidget>
#include <algorithm>

#include "attachments/attachments_page.h"
#include "bench/bench_page.h"
#include "bench/examination_pane.h"
#include "bench/row_table.h"
#include "conditions_bench/conditions_page.h"
#include "fields/field_words.h"
#include "looks/notice_bar.h"
#include "looks/text.h"
#include "repair_bench/repair_page.h"

namespace app {
namespace {

enum Middle { Zone, Attachments, Repairs };

}  // namespace

/// Who may be named as testing or evaluating, and who sits here.
void BenchPage::refreshPeople() {
    People people;
    for (const auto& stored : session_.people()) {
        people.emplace_back(stored.value.id, qt(stored.value.name));
    }
    pane_->conditions().setPeople(
        std::move(people), session_.person() ? session_.person()->id : std::string(), actorName());
    attachments_->setPerson(actorName());
    repairs_->setPerson(actorName());
}

void BenchPage::reloadRegisters() {
    if (!desk_) return;
    const std::string serial = desk_->editor().file().casting.serial;
    archive_.ask([serial](model::Archive& held) { return heldRegisters(held, serial); }, this,
                 [this, serial](model::Result<HeldRegisters> held) {
                     if (!desk_ || desk_->editor().file().casting.serial != serial) return;
                     if (!held) {
                         notice_->say(Mark::Fails, sentence(held.error()), {{tr("Close"), {}}});
                         return;
                     }
                     desk_->editor().setRegisters(std::move(*held));
                     refreshCastingPages();
                     emit registersLoaded();
                 });
}

/// Shows the casting on its own pages, and says from afar what they hold.
void BenchPage::refreshCastingPages() {
    attachments_->show(desk_.get());
    repairs_->show(desk_.get());
    if (!desk_) middle_->setCurrentIndex(Zone);
    attachmentsButton_->setEnabled(desk_ != nullptr);
    repairsButton_->setEnabled(desk_ != nullptr);
    const model::Dossier none;
    const auto& dossier = desk_ ? desk_->editor().file().dossier : none;
    attachmentsButton_->setText(tr("Photos and files: %1").arg(dossier.attachments.size()));
    repairsButton_->setText(tr("Nonconformances: %1").arg(dossier.nonconformances.size()));
}

void BenchPage::showZone() {
    if (middle_->currentIndex() == Zone) return;
    middle_->setCurrentIndex(Zone);
    zones_->setFocus();
}

void BenchPage::showAttachments() {
    if (!desk_) return;
    pane_->finishEditing();
    const int examination = pane_->examination();
    if (examination >= 0) {
        // A photo taken now is of what is in view: the zone, and the indication that is chosen.
        const int row = pane_->table().currentIndex().row();
        const auto& draft = desk_->editor().draft(examination);
        std::string indication;
        const auto at = static_cast<std::size_t>(row);
        if (row >= 0 && at < draft.rows.size()) indication = draft.rows[at].id;
        if (row >= 0 && at < draft.reflectors.size()) indication = draft.reflectors[at].id;
        attachments_->setPlace(draft.header.zone, indication);
    }
    middle_->setCurrentIndex(Attachments);
    attachments_->addButton().setFocus();
}

void BenchPage::showRepairs() {
    if (!desk_) return;
    pane_->finishEditing();
    middle_->setCurrentIndex(Repairs);
    repairs_->setFocus();
}

/// From the examination in view, which is not acceptable.
void BenchPage::openNonconformance() {
    if (!desk_ || pane_->examination() < 0) return;
    whenJudged([this] {
        const int examination = pane_->examination();
        if (examination < 0) return;
        const auto* record = life_.standing(desk_->editor().draft(examination).id);
        showRepairs();
        repairs_->openFrom(examination, record ? record->id : 0);
    });
}

void BenchPage::reexamine(int found, const std::string& nonconformance, qint64 record) {
    if (!desk_) return;
    if (!session_.mayEnter()) {
        emit message(session_.whyNot());
        return;
    }
    auto& editor = desk_->editor();
    int again = -1;
    for (int i = 0; i < editor.examinations(); ++i) {  // one that was begun is gone on with
        const auto numbers = model::itemsOf(editor.draft(i).conditions.nonconformance);
        if (!editor.locked(i) && std::ranges::count(numbers, nonconformance) > 0) again = i;
    }
    if (again < 0) {
        again = editor.beginAgain(found, nonconformance, record, actorName(), dateToday());
    }
    zones_->zones().show(desk_.get());
    zones_->setCurrentIndex(zones_->zones().indexOfExamination(again));
    showLine();
    showZone();
    pane_->enterNewRow();
}

}  // namespace app
