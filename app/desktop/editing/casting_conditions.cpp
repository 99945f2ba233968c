// SPDX-License-Identifier: Apache-2.0
// The conditions of a test as they are edited, and the examination that follows a repair.
#include <QUndoCommand>
#include <algorithm>

#include "editing/casting_editor.h"

namespace app {
namespace {

constexpr int kConditionStepId = 1;

}  // namespace

class CastingEditor::ConditionStep : public QUndoCommand {
public:
    ConditionStep(CastingEditor& editor, int examination, model::TestConditions before,
                  model::TestConditions after, const QString& what, std::string field)
        : QUndoCommand(what),
          editor_(editor),
          examination_(examination),
          before_(std::move(before)),
          after_(std::move(after)),
          field_(std::move(field)) {}

    [[nodiscard]] int id() const override { return field_.empty() ? -1 : kConditionStepId; }
    bool mergeWith(const QUndoCommand* next) override {
        const auto* step = static_cast<const ConditionStep*>(next);
        if (step->examination_ != examination_ || step->field_ != field_) return false;
        after_ = step->after_;
        setObsolete(after_ == before_);
        return true;
    }
    void undo() override { editor_.applyConditions(examination_, before_); }
    void redo() override { editor_.applyConditions(examination_, after_); }

private:
    CastingEditor& editor_;
    int examination_;
    model::TestConditions before_;
    model::TestConditions after_;
    std::string field_;
};

void CastingEditor::setConditions(int examination, model::TestConditions conditions,
                                  const QString& what, const std::string& field) {
    const auto& before = draft(examination).conditions;
    if (locked(examination) || before == conditions) return;
    undo_.push(new ConditionStep(*this, examination, before, std::move(conditions), what, field));
}

void CastingEditor::applyConditions(int examination, const model::TestConditions& conditions) {
    auto& kept = mutableDraft(examination).conditions;
    if (kept == conditions) return;
    kept = conditions;
    emit conditionsChanged(examination);
    emit edited(examination);
}

void CastingEditor::setRegisters(HeldRegisters held) {
    const bool anew = file_.dossier != held.dossier;
    if (!anew && file_.used == held.holdings && attestedSets_ == held.attestedSets) return;
    file_.dossier = std::move(held.dossier);
    file_.used = std::move(held.holdings);
    attestedSets_ = std::move(held.attestedSets);
    emit registersChanged();
    if (anew) emit judgedAnew();
}

int CastingEditor::beginAgain(int found, const std::string& nonconformance, std::int64_t record,
                              const std::string& examinedBy, const std::string& examinedOn) {
    const auto& first = draft(found).header;
    int cycle = first.repairCycle;
    for (const auto& other : file_.examinations) {
        if (other.header.zone == first.zone && other.header.method == first.method &&
            other.header.stage == first.stage) {
            cycle = std::max(cycle, other.header.repairCycle);
        }
    }
    model::ExaminationDraft again;
    again.casting = file_.casting.serial;
    again.header.zone = first.zone;
    again.header.method = first.method;
    again.header.stage = first.stage;
    again.header.repairCycle = cycle + 1;
    again.header.thickness = first.thickness;
    again.header.surface = first.surface;
    again.header.table = first.table;
    again.header.levels = first.levels;
    again.header.forbiddenKinds = first.forbiddenKinds;
    again.examinedBy = examinedBy;
    again.examinedOn = examinedOn;
    again.conditions.purpose = "repair check";
    again.conditions.nonconformance = nonconformance;
    if (record > 0) again.conditions.firstRecord = std::to_string(record);
    return add(std::move(again));
}

}  // namespace app
