// SPDX-License-Identifier: Apache-2.0
// A casting's examinations while they are typed: the drafts, their undo history, and who must be
// told. Every change is a step with the values before and after it. No widget, no database.
#pragma once

#include <QObject>
#include <QUndoStack>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "editing/held_registers.h"
#include "record/records.h"

namespace app {

/// What is typed beside the rows.
struct Details {
    bool noIndications = false;  ///< "nothing found", stated
    std::string examinedBy;
    std::string examinedOn;
    std::string procedure;
    std::string remarks;
    model::UltrasonicTest ultrasonic;  ///< UT
};
bool operator==(const Details& a, const Details& b);
Details detailsOf(const model::ExaminationDraft& draft);

/// Whether two drafts say the same, versions aside.
bool sameContent(const model::ExaminationDraft& a, const model::ExaminationDraft& b);

class CastingEditor : public QObject {
    Q_OBJECT

public:
    explicit CastingEditor(model::CastingFile file, QObject* parent = nullptr);

    [[nodiscard]] const model::CastingFile& file() const { return file_; }
    [[nodiscard]] int examinations() const { return static_cast<int>(file_.examinations.size()); }
    [[nodiscard]] const model::ExaminationDraft& draft(int examination) const {
        return file_.examinations[static_cast<std::size_t>(examination)];
    }
    /// What a typed row reads as; kept beside the row, read once per change.
    [[nodiscard]] const model::ReadIndication& reading(int examination, int row) const;
    /// The same of a row of an ultrasonic examination, sized where it holds a reading.
    [[nodiscard]] const model::ReadReflector& reflector(int examination, int row) const;
    QUndoStack& undoStack() { return undo_; }

    /// Replaces `removed` rows from `first` on by `rows`: the one change that typing, pasting and
    /// deleting come down to. A row with an entry withdraws "no indications found".
    void replaceRows(int examination, int first, int removed,
                     std::vector<model::TypedIndication> rows, const QString& what);
    void replaceRows(int examination, int first, int removed,
                     std::vector<model::TypedReflector> rows, const QString& what);
    /// Replaces the settings of an ultrasonic examination; every row is read anew. A row follows
    /// its setting to a new name where exactly one name of the list has changed.
    void setSettings(int examination, std::vector<model::TypedSetting> settings,
                     const QString& what);
    /// States or withdraws "no indications found"; refused while a row holds an entry.
    bool stateNoIndications(int examination, bool stated);
    void setDetails(int examination, Details details, const QString& what);
    /// Replaces the conditions of the test. Steps one after the other that say the same non-empty
    /// `field` are one step: what is typed in one field is undone at once.
    void setConditions(int examination, model::TestConditions conditions, const QString& what,
                       const std::string& field = {});

    /// Whether the examination can only be read: it is signed, or nobody may enter anything.
    [[nodiscard]] bool locked(int examination) const {
        return frozen_ || signed_.contains(examination);
    }
    [[nodiscard]] bool frozen() const { return frozen_; }
    /// Which examinations are signed. Where that changes, the steps to undo are gone.
    void setSigned(std::set<int> examinations);
    /// Nothing at all can be changed, undone or begun; what was typed stays.
    void setFrozen(bool frozen);
    /// What the registers hold of the casting and of the works, as it is now.
    void setRegisters(HeldRegisters held);
    /// Sets of condition limits that are attested, by their SHA-256.
    [[nodiscard]] const std::set<std::string>& attestedSets() const { return attestedSets_; }
    /// What was stated against an examination after it was signed: it is judged with it.
    void setObjections(int examination, std::optional<model::Objection> rejected,
                       std::optional<model::Objection> invalid);

    /// Adds the examination that a zone plan's test asks for. No undo step: it is an act, kept as
    /// soon as it is saved. Returns its index; the existing one where it was begun before.
    int begin(const model::PlannedZone& zone, const model::RequiredTest& test,
              const std::string& examinedBy, const std::string& examinedOn);
    /// Adds the re-examination after a nonconformance: as the one that found it, one repair cycle
    /// on from the last of its zone, method and stage. `record` is that of the finding; 0: none.
    int beginAgain(int found, const std::string& nonconformance, std::int64_t record,
                   const std::string& examinedBy, const std::string& examinedOn);
    /// Index of a planned test's examination, or -1.
    [[nodiscard]] int find(const model::PlannedZone& zone, const model::RequiredTest& test) const;

    /// The archive has stored the draft.
    void markSaved(int examination, std::int64_t id, std::int64_t version);
    /// Takes what the archive holds in place of the own version; can be undone unless locked().
    void take(int examination, const model::ExaminationDraft& stored);

    /// Whether any row of an examination holds an entry.
    [[nodiscard]] bool hasEntries(int examination) const;

signals:
    void rowsReplaced(int examination, int first, int removed, int added);
    void detailsChanged(int examination);
    void settingsChanged(int examination);
    void conditionsChanged(int examination);
    void examinationAdded(int examination);
    /// Something that is stored has changed.
    void edited(int examination);
    /// What can only be read has changed.
    void locksChanged();
    /// What the registers hold has changed.
    void registersChanged();
    /// What an examination is judged with has changed, though not what is stored as its draft.
    void judgedAnew();

private:
    template <class Row>
    class RowStep;
    class DetailStep;
    class SettingStep;
    class ConditionStep;
    template <class Row>
    void pushRows(int examination, int first, int removed, std::vector<Row> rows,
                  const QString& what);
    template <class Row>
    void applyRows(int examination, int first, int removed, const std::vector<Row>& rows);
    void applySettings(int examination, const std::vector<model::TypedSetting>& settings);
    void applyDetails(int examination, const Details& details);
    void applyConditions(int examination, const model::TestConditions& conditions);
    int add(model::ExaminationDraft draft);
    model::ExaminationDraft& mutableDraft(int examination) {
        return file_.examinations[static_cast<std::size_t>(examination)];
    }

    model::CastingFile file_;
    std::vector<std::vector<model::ReadIndication>> readings_;
    std::vector<std::vector<model::ReadReflector>> reflectors_;
    QUndoStack undo_;
    std::set<int> signed_;
    std::set<std::string> attestedSets_;
    bool frozen_ = false;
};

}  // namespace app
