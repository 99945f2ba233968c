// SPDX-License-Identifier: Apache-2.0
#include "editing/casting_editor.h"

#include <QUndoCommand>
#include <algorithm>
#include <cassert>

namespace app {
namespace {

std::ptrdiff_t offset(int index) {
    return static_cast<std::ptrdiff_t>(index);
}

std::vector<model::ReadIndication> readAll(const std::vector<model::TypedIndication>& rows) {
    std::vector<model::ReadIndication> readings;
    readings.reserve(rows.size());
    for (const auto& row : rows) readings.push_back(model::read(row));
    return readings;
}

bool anyEntry(const std::vector<model::TypedIndication>& rows) {
    return std::any_of(rows.begin(), rows.end(),
                       [](const auto& row) { return !model::isBlank(row); });
}

}  // namespace

Details detailsOf(const model::ExaminationDraft& draft) {
    return {draft.header.noIndications, draft.examinedBy, draft.examinedOn, draft.procedure,
            draft.remarks};
}

bool sameContent(const model::ExaminationDraft& a, const model::ExaminationDraft& b) {
    return detailsOf(a) == detailsOf(b) && a.rows == b.rows;
}

/// Rows before and after; `withdraws` when the step also takes back "no indications found".
class CastingEditor::RowStep : public QUndoCommand {
public:
    RowStep(CastingEditor& editor, int examination, int first,
            std::vector<model::TypedIndication> before, std::vector<model::TypedIndication> after,
            bool withdraws, const QString& what)
        : QUndoCommand(what),
          editor_(editor),
          examination_(examination),
          first_(first),
          before_(std::move(before)),
          after_(std::move(after)),
          withdraws_(withdraws) {}

    void undo() override {
        editor_.applyRows(examination_, first_, static_cast<int>(after_.size()), before_);
        state(true);
    }
    void redo() override {
        editor_.applyRows(examination_, first_, static_cast<int>(before_.size()), after_);
        state(false);
    }

private:
    void state(bool stated) {
        if (!withdraws_) return;
        Details details = detailsOf(editor_.draft(examination_));
        details.noIndications = stated;
        editor_.applyDetails(examination_, details);
    }

    CastingEditor& editor_;
    int examination_;
    int first_;
    std::vector<model::TypedIndication> before_;
    std::vector<model::TypedIndication> after_;
    bool withdraws_;
};

class CastingEditor::DetailStep : public QUndoCommand {
public:
    DetailStep(CastingEditor& editor, int examination, Details before, Details after,
               const QString& what)
        : QUndoCommand(what),
          editor_(editor),
          examination_(examination),
          before_(std::move(before)),
          after_(std::move(after)) {}

    void undo() override { editor_.applyDetails(examination_, before_); }
    void redo() override { editor_.applyDetails(examination_, after_); }

private:
    CastingEditor& editor_;
    int examination_;
    Details before_;
    Details after_;
};

CastingEditor::CastingEditor(model::CastingFile file, QObject* parent)
    : QObject(parent), file_(std::move(file)) {
    for (const auto& draft : file_.examinations) readings_.push_back(readAll(draft.rows));
}

const model::ReadIndication& CastingEditor::reading(int examination, int row) const {
    return readings_[static_cast<std::size_t>(examination)][static_cast<std::size_t>(row)];
}

bool CastingEditor::hasEntries(int examination) const {
    return anyEntry(draft(examination).rows);
}

void CastingEditor::replaceRows(int examination, int first, int removed,
                                std::vector<model::TypedIndication> rows, const QString& what) {
    if (locked(examination)) return;
    const auto& old = draft(examination).rows;
    assert(first >= 0 && removed >= 0 && first + removed <= static_cast<int>(old.size()));
    std::vector<model::TypedIndication> before(old.begin() + offset(first),
                                               old.begin() + offset(first + removed));
    if (before == rows) return;
    const bool withdraws = draft(examination).header.noIndications && anyEntry(rows);
    undo_.push(new RowStep(*this, examination, first, std::move(before), std::move(rows), withdraws,
                           what));
}

bool CastingEditor::stateNoIndications(int examination, bool stated) {
    if (locked(examination) || (stated && hasEntries(examination))) return false;
    Details details = detailsOf(draft(examination));
    details.noIndications = stated;
    setDetails(examination, std::move(details), tr("no indications found"));
    return true;
}

void CastingEditor::setDetails(int examination, Details details, const QString& what) {
    Details before = detailsOf(draft(examination));
    if (locked(examination) || before == details) return;
    undo_.push(new DetailStep(*this, examination, std::move(before), std::move(details), what));
}

int CastingEditor::find(const model::PlannedZone& zone, const model::RequiredTest& test) const {
    int found = -1;
    for (int i = 0; i < examinations(); ++i) {
        const auto& header = draft(i).header;
        if (header.zone == zone.name && header.method == test.method &&
            header.stage == test.stage) {
            found = i;  // the last one: a later cycle or repeat is the one to look at
        }
    }
    return found;
}

int CastingEditor::begin(const model::PlannedZone& zone, const model::RequiredTest& test,
                         const std::string& examinedBy, const std::string& examinedOn) {
    if (const int existing = find(zone, test); existing >= 0) return existing;
    model::ExaminationDraft added;
    added.casting = file_.casting.serial;
    added.header.zone = zone.name;
    added.header.method = test.method;
    added.header.stage = test.stage;
    added.header.thickness = zone.thickness;
    added.header.surface = zone.surface;
    added.header.table = test.table;
    added.header.levels = test.levels;
    added.header.forbiddenKinds = file_.order.forbiddenKinds;
    added.examinedBy = examinedBy;
    added.examinedOn = examinedOn;
    file_.examinations.push_back(std::move(added));
    readings_.emplace_back();
    const int index = examinations() - 1;
    emit examinationAdded(index);
    emit edited(index);
    return index;
}

void CastingEditor::setSigned(std::set<int> examinations) {
    if (signed_ == examinations) return;
    signed_ = std::move(examinations);
    undo_.clear();  // a step may lead into what is signed now
    emit locksChanged();
}

void CastingEditor::setFrozen(bool frozen) {
    if (frozen_ == frozen) return;
    frozen_ = frozen;
    emit locksChanged();
}

void CastingEditor::setObjections(int examination, std::optional<model::Objection> rejected,
                                  std::optional<model::Objection> invalid) {
    auto& header = mutableDraft(examination).header;
    if (header.rejected == rejected && header.invalid == invalid) return;
    header.rejected = std::move(rejected);
    header.invalid = std::move(invalid);
    emit judgedAnew();
}

void CastingEditor::markSaved(int examination, std::int64_t id, std::int64_t version) {
    mutableDraft(examination).id = id;
    mutableDraft(examination).version = version;
}

void CastingEditor::take(int examination, const model::ExaminationDraft& stored) {
    markSaved(examination, stored.id, stored.version);
    if (locked(examination)) {
        applyRows(examination, 0, static_cast<int>(draft(examination).rows.size()), stored.rows);
        applyDetails(examination, detailsOf(stored));
        return;
    }
    undo_.beginMacro(tr("the other version taken"));
    const QString what = tr("the other version taken");
    replaceRows(examination, 0, static_cast<int>(draft(examination).rows.size()), stored.rows,
                what);
    setDetails(examination, detailsOf(stored), what);
    undo_.endMacro();
}

void CastingEditor::applyRows(int examination, int first, int removed,
                              const std::vector<model::TypedIndication>& rows) {
    auto& kept = mutableDraft(examination).rows;
    auto& readings = readings_[static_cast<std::size_t>(examination)];
    auto fresh = readAll(rows);
    kept.erase(kept.begin() + offset(first), kept.begin() + offset(first + removed));
    kept.insert(kept.begin() + offset(first), rows.begin(), rows.end());
    readings.erase(readings.begin() + offset(first), readings.begin() + offset(first + removed));
    readings.insert(readings.begin() + offset(first), std::make_move_iterator(fresh.begin()),
                    std::make_move_iterator(fresh.end()));
    emit rowsReplaced(examination, first, removed, static_cast<int>(rows.size()));
    emit edited(examination);
}

void CastingEditor::applyDetails(int examination, const Details& details) {
    auto& kept = mutableDraft(examination);
    if (detailsOf(kept) == details) return;
    kept.header.noIndications = details.noIndications;
    kept.examinedBy = details.examinedBy;
    kept.examinedOn = details.examinedOn;
    kept.procedure = details.procedure;
    kept.remarks = details.remarks;
    emit detailsChanged(examination);
    emit edited(examination);
}

}  // namespace app
