// SPDX-License-Identifier: Apache-2.0
#include "conditions_bench/conditions_page.h"

#include <QLabel>
#include <algorithm>

#include "conditions/condition_set.h"
#include "conditions/drift.h"
#include "conditions/validity.h"
#include "conditions_bench/findings_view.h"
#include "fields/entry_table.h"
#include "fields/field_words.h"
#include "looks/mark.h"
#include "looks/text.h"

namespace app {
namespace {

/// "C3": the first number that no entry has.
std::string nextId(const std::vector<EntryTexts>& rows, const std::string& prefix) {
    for (std::size_t number = rows.size() + 1;; ++number) {
        std::string id = prefix + std::to_string(number);
        const bool taken = std::ranges::any_of(rows, [&](const EntryTexts& row) {
            const auto found = row.find("id");
            return found != row.end() && found->second == id;
        });
        if (!taken) return id;
    }
}

Choices named(const std::vector<std::string>& ids) {
    Choices choices;
    choices.emplace_back("", QString());
    for (const auto& id : ids) choices.emplace_back(id, qt(id));
    return choices;
}

/// The technique sheet's rule goes before the procedure's; null: neither names one.
const model::ConditionSet* driftRule(const model::Holdings& works,
                                     const model::TestConditions& conditions) {
    const model::ConditionSet* rule = nullptr;
    for (const auto& key : {procedureKey(conditions.procedureNumber, conditions.procedureRevision),
                            procedureKey(conditions.sheetNumber, conditions.sheetRevision)}) {
        for (const auto& procedure : works.procedures) {
            if (keyOf(procedure) == key && !procedure.driftRule.empty()) {
                rule = model::conditionSet(procedure.driftRule);
            }
        }
    }
    return rule;
}

QStringList driftLines(const model::DriftConsequences& drift) {
    QStringList lines;
    const auto tr = [](const char* text) { return ConditionsPage::tr(text); };
    for (const auto& scan : drift.voidScans) {
        lines << tr("✗  Scan %1 counts as not made: check %2 shows a %3. %4")
                     .arg(qt(scan.scan), qt(scan.check), qt(scan.why),
                          scan.again.empty() ? tr("It has to be repeated.")
                                             : tr("Scan %1 repeats it.").arg(qt(scan.again)));
    }
    for (const auto& one : drift.reopened) {
        lines << tr("…  Indication %1 has to be evaluated again: check %2 shows a %3.")
                     .arg(qt(one.indication), qt(one.check), qt(one.why));
    }
    for (const auto& error : drift.unclear) lines << tr("?  %1").arg(sentence(error));
    if (!drift.withoutCheck.empty()) {
        lines << tr("?  These indications do not say after which check they were found: %1")
                     .arg(qt(model::listOf(drift.withoutCheck)));
    }
    return lines;
}

}  // namespace

void ConditionsPage::show(CastingDesk* desk, int examination) {
    if (desk_ && desk_ != desk) desk_->editor().disconnect(this);
    if (desk && desk_ != desk) {
        auto* editor = &desk->editor();
        connect(editor, &CastingEditor::conditionsChanged, this, [this](int changed) {
            if (changed == examination_) refresh();
        });
        connect(editor, &CastingEditor::edited, this, [this](int changed) {
            if (changed == examination_) judge_.start();
        });
        connect(editor, &CastingEditor::settingsChanged, this, [this](int changed) {
            if (changed == examination_) refresh();
        });
        connect(editor, &CastingEditor::detailsChanged, this, [this](int changed) {
            if (changed == examination_) refreshChoices();
        });
        connect(editor, &CastingEditor::locksChanged, this, &ConditionsPage::refresh);
        connect(editor, &CastingEditor::registersChanged, this, &ConditionsPage::refresh);
        connect(desk, &QObject::destroyed, this, [this] {
            desk_ = nullptr;
            examination_ = -1;
            judge_.stop();
        });
    }
    desk_ = desk;
    examination_ = examination;
    refresh();
}

void ConditionsPage::setPeople(People people, std::string tester, std::string name) {
    people_ = std::move(people);
    tester_ = std::move(tester);
    name_ = std::move(name);
    refresh();
}

void ConditionsPage::refresh() {
    if (!desk_ || examination_ < 0) {
        judge_.stop();
        findings_->show({}, true);
        emit standingChanged(0);
        return;
    }
    const bool locked = desk_->editor().locked(examination_);
    refreshChoices();
    refreshForm(*left_);
    refreshForm(*right_);
    left_->setReadOnly(locked);
    right_->setReadOnly(locked);
    const bool ultrasonic = draft().header.method == model::Method::Ultrasonic;
    for (const List& list : {checks_, scans_}) list.box->setVisible(ultrasonic);
    showList(&model::TestConditions::measurements, measurements_, locked);
    showList(&model::TestConditions::settingChecks, checks_, locked);
    showList(&model::TestConditions::scans, scans_, locked);
    refreshDrift();
    judge_.start();
}

void ConditionsPage::refreshChoices() {
    if (!desk_ || examination_ < 0) return;
    const auto& file = desk_->editor().file();
    left_->setChoices(left_->find("procedure"), procedureChoices(file, draft()));
    left_->setChoices(left_->find("sheet"), sheetChoices(file, draft()));
    right_->setSuggestions("equipment", equipmentChoices(file.used, draft().examinedOn));
    right_->setSuggestions("consumables", consumableChoices(file.used, draft().examinedOn));
    right_->setSuggestions("evaluated_by",
                           peopleChoices(file.used, people_, draft().header.method));
    QStringList standards;
    for (const auto& procedure : file.used.procedures) {
        if (keyOf(procedure) != procedureKey(draft().conditions.procedureNumber,
                                             draft().conditions.procedureRevision)) {
            continue;
        }
        for (const auto& standard : model::itemsOf(procedure.standards)) standards << qt(standard);
    }
    left_->setSuggestions("test_standard", standards);
    QStringList pieces;
    for (const auto& serial : model::itemsOf(file.casting.series)) pieces << qt(serial);
    right_->setSuggestions("pieces_tested", pieces);
    QStringList cases;
    for (const auto& opened : file.dossier.nonconformances) cases << qt(opened.number);
    right_->setSuggestions("nonconformance", cases);
    const bool repaired = draft().header.repairCycle > 0 ||
                          !draft().conditions.nonconformance.empty() || !cases.isEmpty();
    right_->setShown(right_->find("pieces_tested"),
                     !pieces.isEmpty() || !draft().conditions.piecesTested.empty());
    right_->setShown(right_->find("nonconformance"), repaired);
    right_->setShown(right_->find("first_record"), repaired);
}

void ConditionsPage::refreshForm(FieldForm& form) {
    const auto& conditions = draft().conditions;
    for (int i = 0; i < form.count(); ++i) {
        const std::string& key = form.facts(i).field;
        if (key == "procedure") {
            form.setText(i, procedureKey(conditions.procedureNumber, conditions.procedureRevision));
        } else if (key == "sheet") {
            form.setText(i, procedureKey(conditions.sheetNumber, conditions.sheetRevision));
        }
    }
    for (const auto& field : model::TestConditions::fields()) {
        const int at = form.find(std::string(field.info.key));
        if (at < 0) continue;
        const std::string& text = conditions.*field.text;
        form.setText(at, text);
        const auto wrong = model::wrongText(field.info, text);
        form.setError(at, wrong ? reasonText(*wrong) : QString());
    }
}

template <class T>
void ConditionsPage::showList(std::vector<T> model::TestConditions::*entries, const List& list,
                              bool locked) {
    std::vector<EntryTexts> rows;
    for (const T& entry : draft().conditions.*entries) rows.push_back(textsOf(entry));
    list.model->setRows(std::move(rows));
    list.model->setReadOnly(locked);
    const QString wrong = list.model->firstWrong();
    QPalette colours = palette();
    colours.setColor(QPalette::WindowText, colourOf(Mark::Fails, colours.color(QPalette::Window)));
    list.wrong->setPalette(colours);
    list.wrong->setText(wrong.isEmpty() ? QString() : tr("✗  %1").arg(wrong));
    list.wrong->setVisible(!wrong.isEmpty());
}

template <class T>
void ConditionsPage::takeList(std::vector<T> model::TestConditions::*entries, const List& list,
                              const QString& what) {
    if (!desk_ || examination_ < 0) return;
    model::TestConditions conditions = draft().conditions;
    auto& taken = conditions.*entries;
    taken.clear();
    for (EntryTexts row : list.model->rows()) {
        if (std::is_same_v<T, model::Measurement> && row.contains("parameter") &&
            !isUnitOf(row["unit"], row["parameter"])) {
            row["unit"] = usualUnit(row["parameter"]);
        }
        taken.push_back(entryFrom<T>(row));
    }
    desk_->editor().setConditions(examination_, std::move(conditions), what);
    // Where the lists are the same as before, nothing has been told to anybody.
    showList(entries, list, desk_->editor().locked(examination_));
}
template void ConditionsPage::takeList(
    std::vector<model::Measurement> model::TestConditions::*entries, const List& list,
    const QString& what);
template void ConditionsPage::takeList(
    std::vector<model::SettingCheck> model::TestConditions::*entries, const List& list,
    const QString& what);
template void ConditionsPage::takeList(std::vector<model::Scan> model::TestConditions::*entries,
                                       const List& list, const QString& what);

EntryTexts ConditionsPage::fresh(const std::string& idPrefix, const std::string& timeKey) const {
    EntryTexts row;
    row[timeKey] = momentNow();
    if (idPrefix == "S") {
        row["id"] = nextId(scans_.model->rows(), idPrefix);
        const auto& checks = draft().conditions.settingChecks;
        if (!checks.empty()) {
            row["setting"] = checks.back().setting;
            row["after_check"] = checks.back().id;
        }
        return row;
    }
    if (!name_.empty()) row["by"] = name_;
    if (idPrefix == "C") {
        row["id"] = nextId(checks_.model->rows(), idPrefix);
        if (draft().settings.size() == 1) row["setting"] = draft().settings.front().name;
    }
    return row;
}

std::optional<CellEntry> ConditionsPage::checkEntry(const std::string& key) const {
    if (!desk_ || examination_ < 0) return std::nullopt;
    const auto& file = desk_->editor().file();
    std::vector<std::string> ids;
    if (key == "setting") {
        for (const auto& setting : draft().settings) ids.push_back(setting.name);
        return CellEntry{named(ids), true};
    }
    if (key == "after_check") {
        for (const auto& check : draft().conditions.settingChecks) ids.push_back(check.id);
        return CellEntry{named(ids), true};
    }
    if (key == "examined_again") {
        for (const auto& scan : draft().conditions.scans) ids.push_back(scan.id);
        return CellEntry{named(ids), true};
    }
    if (key == "by") return CellEntry{nameChoices(people_)};
    if (key == "block") {
        return CellEntry{
            equipmentChoices(file.used, draft().examinedOn, "calibration block|reference block")};
    }
    return std::nullopt;
}

void ConditionsPage::enter(FieldForm& form, int field) {
    if (!desk_ || examination_ < 0) return;
    const auto& facts = form.facts(field);
    if (facts.field == "procedure") return enterProcedure(form.text(field));
    model::TestConditions conditions = draft().conditions;
    if (facts.field == "sheet") {
        std::tie(conditions.sheetNumber, conditions.sheetRevision) =
            numberAndRevision(form.text(field));
    } else {
        take(conditions, {{facts.field, form.text(field)}});
    }
    desk_->editor().setConditions(examination_, std::move(conditions), facts.label.toLower(),
                                  facts.field);
}

/// The procedure stands beside examiner and date as well; both say the same.
void ConditionsPage::enterProcedure(const std::string& key) {
    auto& editor = desk_->editor();
    if (editor.locked(examination_)) return;
    model::TestConditions conditions = draft().conditions;
    std::tie(conditions.procedureNumber, conditions.procedureRevision) = numberAndRevision(key);
    const auto& procedures = editor.file().used.procedures;
    const auto chosen = std::ranges::find(
        procedures, key, [](const model::Procedure& procedure) { return keyOf(procedure); });
    if (chosen != procedures.end()) {
        const auto standards = model::itemsOf(chosen->standards);
        if (standards.size() == 1) conditions.testStandard = standards.front();
    }
    Details details = detailsOf(draft());
    if (!key.empty()) details.procedure = key;
    const QString what = tr("procedure");
    editor.undoStack().beginMacro(what);
    editor.setConditions(examination_, std::move(conditions), what);
    editor.setDetails(examination_, std::move(details), what);
    editor.undoStack().endMacro();
}

void ConditionsPage::acknowledge(const std::string& finding, const std::string& reason) {
    if (!desk_ || examination_ < 0) return;
    model::TestConditions conditions = draft().conditions;
    auto& given = conditions.acknowledgements;
    std::erase_if(given, [&](const auto& one) { return one.finding == finding; });
    if (!reason.empty()) given.push_back({finding, reason, name_});
    desk_->editor().setConditions(examination_, std::move(conditions), tr("reason to go on"),
                                  "reason " + finding);
}

void ConditionsPage::judge() {
    if (!desk_ || examination_ < 0) return;
    const auto findings = model::validityOf(desk_->editor().file(), draft(),
                                            {tester_, draft().conditions.evaluatedBy},
                                            desk_->editor().attestedSets());
    findings_->show(findings, desk_->editor().locked(examination_));
    emit standingChanged(
        static_cast<int>(std::ranges::count_if(findings, &model::ConditionFinding::stands)));
    refreshDrift();
}

void ConditionsPage::refreshDrift() {
    const bool ultrasonic = draft().header.method == model::Method::Ultrasonic;
    drift_->setVisible(ultrasonic && !draft().conditions.settingChecks.empty());
    if (drift_->isHidden()) {
        drift_->clear();
        return;
    }
    const auto* rule = driftRule(desk_->editor().file().used, draft().conditions);
    if (!rule || !rule->hasDrift()) {
        drift_->setText(
            tr("What follows from a drift is not worked out: the procedure names no rule for it."));
        return;
    }
    const QStringList lines = driftLines(model::consequencesOf(draft(), *rule));
    drift_->setText(lines.isEmpty() ? tr("✓  No scan and no indication is touched by a drift.")
                                    : lines.join('\n'));
}

QString ConditionsPage::driftText() const {
    return drift_->text();
}

void ConditionsPage::finishEditing() {
    left_->finishEditing();
    right_->finishEditing();
    for (const List& list : {measurements_, checks_, scans_}) list.table->finishEditing();
    findings_->finishEditing();
}

void ConditionsPage::focusFirst() {
    left_->editor(0)->setFocus(Qt::TabFocusReason);
}

void ConditionsPage::goToFinding(const std::string& id) {
    findings_->choose(id);
}

}  // namespace app
