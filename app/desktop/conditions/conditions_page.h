// SPDX-License-Identifier: Apache-2.0
// Under what conditions an examination was made: procedure, surface, what was used, measurements,
// of UT also setting checks and scans; beside them what follows for the validity of the test.
#pragma once

#include <QTimer>
#include <QWidget>
#include <vector>

#include "conditions_bench/condition_choices.h"
#include "editing/casting_desk.h"

class QBoxLayout;
class QLabel;
class QScrollArea;

namespace app {

class EntryRows;
class EntryTable;
class FieldForm;
class FindingsView;

class ConditionsPage : public QWidget {
    Q_OBJECT

public:
    explicit ConditionsPage(QWidget* parent = nullptr);

    void show(CastingDesk* desk, int examination);
    /// Who belongs to the archive, and who sits at the bench: id (empty: nobody has signed in), and
    /// the name that stands by what is measured.
    void setPeople(People people, std::string tester, std::string name);
    /// Takes over what stands in an open field or cell.
    void finishEditing();
    void focusFirst();
    /// Goes to a finding, as from the dialog that signs.
    void goToFinding(const std::string& id);

    /// The two halves of the form; a field is in one of them.
    [[nodiscard]] FieldForm& left() { return *left_; }
    [[nodiscard]] FieldForm& right() { return *right_; }
    [[nodiscard]] FindingsView& findings() { return *findings_; }
    [[nodiscard]] EntryTable& measurements() { return *measurements_.table; }
    [[nodiscard]] EntryTable& checks() { return *checks_.table; }
    [[nodiscard]] EntryTable& scans() { return *scans_.table; }
    /// What follows from the setting checks, in words.
    [[nodiscard]] QString driftText() const;

signals:
    /// How many findings stand in the way of signing.
    void standingChanged(int standing);

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    /// One list of entries with its heading.
    struct List {
        EntryRows* model = nullptr;
        EntryTable* table = nullptr;
        QLabel* wrong = nullptr;
        QWidget* box = nullptr;
    };
    template <class T>
    List makeList(const QString& title, const QString& name,
                  std::vector<T> model::TestConditions::*entries, const QString& what);
    template <class T>
    void takeList(std::vector<T> model::TestConditions::*entries, const List& list,
                  const QString& what);
    template <class T>
    void showList(std::vector<T> model::TestConditions::*entries, const List& list, bool locked);
    void makeForms();
    void makeLists();
    void addFields(FieldForm& form, const QString& heading,
                   const std::vector<std::string_view>& keys);
    void connectForm(FieldForm& form);
    void arrange();
    void enter(FieldForm& form, int field);
    void enterProcedure(const std::string& key);
    void refresh();
    void refreshChoices();
    void refreshForm(FieldForm& form);
    void refreshDrift();
    void judge();
    void acknowledge(const std::string& finding, const std::string& reason);
    [[nodiscard]] EntryTexts fresh(const std::string& idPrefix, const std::string& timeKey) const;
    [[nodiscard]] std::optional<CellEntry> checkEntry(const std::string& key) const;
    [[nodiscard]] const model::ExaminationDraft& draft() const {
        return desk_->editor().draft(examination_);
    }

    CastingDesk* desk_ = nullptr;
    int examination_ = -1;
    People people_;
    std::string tester_;
    std::string name_;
    QTimer judge_;

    QBoxLayout* halves_;
    QScrollArea* scroll_;
    QWidget* body_;
    QBoxLayout* columns_;
    FieldForm* left_;
    FieldForm* right_;
    List measurements_;
    List checks_;
    List scans_;
    QLabel* drift_;
    FindingsView* findings_;
    QLabel* help_;
};

}  // namespace app
