// SPDX-License-Identifier: Apache-2.0
#include "editing/casting_editor.h"

#include <QUndoCommand>
#include <algorithm>
#include <cassert>
#include <tuple>

namespace app {
namespace {

std::ptrdiff_t offset(int index) {
    return static_cast<std::ptrdiff_t>(index);
}

// What the two kinds of row differ in.
std::vector<model::TypedIndication>& rowsIn(model::ExaminationDraft& draft,
                                            const model::TypedIndication*) {
    return draft.rows;
}
std::vector<model::TypedReflector>& rowsIn(model::ExaminationDraft& draft,
                                           const model::TypedReflector*) {
    return draft.reflectors;
}

std::vector<model::ReadIndication> readAll(const std::vector<model::TypedIndication>& rows,
                                           const model::ExaminationDraft&) {
    std::vector<model::ReadIndication> readings;
    readings.reserve(rows.size());
    for (const auto& row : rows) readings.push_back(model::read(row));
    return readings;
}

std::vector<model::ReadReflector> readAll(const std::vector<model::TypedReflector>& rows,
                                          const model::ExaminationDraft& draft) {
    std::vector<model::ReadReflector> readings;
    readings.reserve(rows.size());
    for (const auto& row : rows) readings.push_back(model::read(row, draft.settings));
    return readings;
}

template <class Row>
bool anyEntry(const std::vector<Row>& rows) {
    return std::any_of(rows.begin(), rows.end(),
                       [](const auto& row) { return !model::isBlank(row); });
}

auto parts(const model::UltrasonicTest& test) {
    const bool stated = test.testability.has_value();
    const auto testability = test.testability.value_or(model::Testability());
    return std::tuple(test.zoneArea, stated, testability.smallestFbh, testability.signalToNoise,
                      test.deadZone, test.directions);
}

}  // namespace

bool operator==(const Details& a, const Details& b) {
    return a.noIndications == b.noIndications && a.examinedBy == b.examinedBy &&
           a.examinedOn == b.examinedOn && a.procedure == b.procedure && a.remarks == b.remarks &&
           parts(a.ultrasonic) == parts(b.ultrasonic);
}

Details detailsOf(const model::ExaminationDraft& draft) {
    return {draft.header.noIndications,
            draft.examinedBy,
            draft.examinedOn,
            draft.procedure,
            draft.remarks,
            draft.header.ultrasonic};
}

bool sameContent(const model::ExaminationDraft& a, const model::ExaminationDraft& b) {
    return detailsOf(a) == detailsOf(b) && a.rows == b.rows && a.settings == b.settings &&
           a.reflectors == b.reflectors && a.conditions == b.conditions;
}

/// Rows before and after; `withdraws` when the step also takes back "no indications found".
template <class Row>
class CastingEditor::RowStep : public QUndoCommand {
public:
    RowStep(CastingEditor& editor, int examination, int first, std::vector<Row> before,
            std::vector<Row> after, bool withdraws, const QString& what)
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
    std::vector<Row> before_;
    std::vector<Row> after_;
    bool withdraws_;
};

class CastingEditor::SettingStep : public QUndoCommand {
public:
    SettingStep(CastingEditor& editor, int examination, std::vector<model::TypedSetting> before,
                std::vector<model::TypedSetting> after, const QString& what)
        : QUndoCommand(what),
          editor_(editor),
          examination_(examination),
          before_(std::move(before)),
          after_(std::move(after)) {}

    void undo() override { editor_.applySettings(examination_, before_); }
    void redo() override { editor_.applySettings(examination_, after_); }

private:
    CastingEditor& editor_;
    int examination_;
    std::vector<model::TypedSetting> before_;
    std::vector<model::TypedSetting> after_;
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
    for (const auto& draft : file_.examinations) {
        readings_.push_back(readAll(draft.rows, draft));
        reflectors_.push_back(readAll(draft.reflectors, draft));
    }
}

const model::ReadIndication& CastingEditor::reading(int examination, int row) const {
    return readings_[static_cast<std::size_t>(examination)][static_cast<std::size_t>(row)];
}

const model::ReadReflector& CastingEditor::reflector(int examination, int row) const {
    return reflectors_[static_cast<std::size_t>(examination)][static_cast<std::size_t>(row)];
}

bool CastingEditor::hasEntries(int examination) const {
    return anyEntry(draft(examination).rows) || anyEntry(draft(examination).reflectors);
}

template <class Row>
void CastingEditor::pushRows(int examination, int first, int removed, std::vector<Row> rows,
                             const QString& what) {
    if (locked(examination)) return;
    const auto& old = rowsIn(mutableDraft(examination), static_cast<const Row*>(nullptr));
    assert(first >= 0 && removed >= 0 && first + removed <= static_cast<int>(old.size()));
    std::vector<Row> before(old.begin() + offset(first), old.begin() + offset(first + removed));
    if (before == rows) return;
    const bool withdraws = draft(examination).header.noIndications && anyEntry(rows);
    undo_.push(new RowStep<Row>(*this, examination, first, std::move(before), std::move(rows),
                                withdraws, what));
}

void CastingEditor::replaceRows(int examination, int first, int removed,
                                std::vector<model::TypedIndication> rows, const QString& what) {
    pushRows(examination, first, removed, std::move(rows), what);
}

void CastingEditor::replaceRows(int examination, int first, int removed,
                                std::vector<model::TypedReflector> rows, const QString& what) {
    pushRows(examination, first, removed, std::move(rows), what);
}

void CastingEditor::setSettings(int examination, std::vector<model::TypedSetting> settings,
                                const QString& what) {
    const auto before = draft(examination).settings;
    if (locked(examination) || before == settings) return;
    std::string from;
    std::string to;
    int renamed = 0;
    for (std::size_t i = 0; i < std::min(before.size(), settings.size()); ++i) {
        if (before.size() != settings.size() || before[i].name == settings[i].name) continue;
        from = before[i].name;
        to = settings[i].name;
        ++renamed;
    }
    undo_.beginMacro(what);
    undo_.push(new SettingStep(*this, examination, before, std::move(settings), what));
    if (renamed == 1 && !from.empty()) {
        auto rows = draft(examination).reflectors;
        for (auto& row : rows) {
            if (row.setting == from) row.setting = to;
        }
        const int count = static_cast<int>(rows.size());
        replaceRows(examination, 0, count, std::move(rows), what);
    }
    undo_.endMacro();
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
    return add(std::move(added));
}

int CastingEditor::add(model::ExaminationDraft draft) {
    file_.examinations.push_back(std::move(draft));
    readings_.emplace_back();
    reflectors_.emplace_back();
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
    const auto& own = draft(examination);
    const int rows = static_cast<int>(own.rows.size());
    const int reflectors = static_cast<int>(own.reflectors.size());
    if (locked(examination)) {
        applySettings(examination, stored.settings);
        applyRows(examination, 0, rows, stored.rows);
        applyRows(examination, 0, reflectors, stored.reflectors);
        applyDetails(examination, detailsOf(stored));
        applyConditions(examination, stored.conditions);
        return;
    }
    const QString what = tr("the other version taken");
    undo_.beginMacro(what);
    if (own.settings != stored.settings) {
        undo_.push(new SettingStep(*this, examination, own.settings, stored.settings, what));
    }
    replaceRows(examination, 0, rows, stored.rows, what);
    replaceRows(examination, 0, reflectors, stored.reflectors, what);
    setDetails(examination, detailsOf(stored), what);
    setConditions(examination, stored.conditions, what);
    undo_.endMacro();
}

template <class Row>
void CastingEditor::applyRows(int examination, int first, int removed,
                              const std::vector<Row>& rows) {
    auto& kept = rowsIn(mutableDraft(examination), static_cast<const Row*>(nullptr));
    if (removed == 0 && rows.empty()) return;
    const auto replace = [&](auto& all, auto&& fresh) {
        all.erase(all.begin() + offset(first), all.begin() + offset(first + removed));
        all.insert(all.begin() + offset(first), fresh.begin(), fresh.end());
    };
    replace(kept, rows);
    auto fresh = readAll(rows, draft(examination));
    const auto at = static_cast<std::size_t>(examination);
    if constexpr (std::is_same_v<Row, model::TypedReflector>) {
        replace(reflectors_[at], std::move(fresh));
    } else {
        replace(readings_[at], std::move(fresh));
    }
    emit rowsReplaced(examination, first, removed, static_cast<int>(rows.size()));
    emit edited(examination);
}

void CastingEditor::applySettings(int examination,
                                  const std::vector<model::TypedSetting>& settings) {
    auto& kept = mutableDraft(examination);
    if (kept.settings == settings) return;
    kept.settings = settings;
    reflectors_[static_cast<std::size_t>(examination)] = readAll(kept.reflectors, kept);
    emit settingsChanged(examination);
    emit edited(examination);
}

void CastingEditor::applyDetails(int examination, const Details& details) {
    auto& kept = mutableDraft(examination);
    if (detailsOf(kept) == details) return;
    kept.header.noIndications = details.noIndications;
    kept.header.ultrasonic = details.ultrasonic;
    kept.examinedBy = details.examinedBy;
    kept.examinedOn = details.examinedOn;
    kept.procedure = details.procedure;
    kept.remarks = details.remarks;
    emit detailsChanged(examination);
    emit edited(examination);
}

}  // namespace app
