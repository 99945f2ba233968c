// SPDX-License-Identifier: Apache-2.0
// One reading as a form: what the instrument showed, what follows from it, the point on the
// diagram and the beam's path in the part; all of it changes as one types.
#pragma once

#include <QWidget>
#include <functional>

#include "editing/casting_desk.h"
#include "fields/field_form.h"
#include "ultrasonic_bench/reading_views.h"

class QBoxLayout;
class QLabel;
class QScrollArea;
class QSplitter;
class QToolButton;

namespace app {

class Heading;
class ReadingResult;

class ReadingPage : public QWidget {
    Q_OBJECT

public:
    explicit ReadingPage(QWidget* parent = nullptr);

    /// Shows an examination's readings; null: none. `fresh` makes the next row.
    void show(CastingDesk* desk, int examination);
    void setFresh(std::function<model::TypedReflector()> fresh) { fresh_ = std::move(fresh); }
    /// The row that is typed; one past the last: the next one.
    void setRow(int row);
    [[nodiscard]] int row() const { return row_; }
    /// The limit tables have come or changed: rim and core.
    void refreshPictures() { refreshResult(); }
    void finishEditing();
    void focusFirst();

    [[nodiscard]] FieldForm& form() { return *form_; }
    [[nodiscard]] const ReadingResult& result() const { return *result_; }
    [[nodiscard]] const EchoDiagramView& diagram() const { return *diagram_; }
    [[nodiscard]] const BeamSectionView& section() const { return *section_; }

signals:
    /// Somebody wants to go to another row.
    void rowWanted(int row);

protected:
    void resizeEvent(QResizeEvent* event) override;
    void changeEvent(QEvent* event) override;

private:
    void arrange();
    void makeForm();
    [[nodiscard]] const model::TypedReflector* storedRow() const;
    [[nodiscard]] model::TypedReflector typedRow() const;
    [[nodiscard]] const model::TypedSetting* settingOf(const model::TypedReflector& row) const;
    [[nodiscard]] const model::RimZone* rim() const;
    void commit(int field);
    void refresh();
    void refreshChoices();
    void refreshResult();
    void showSize(const model::TypedReflector& row, const model::TypedSetting& setting);
    void showPictures(const model::TypedReflector& row, const model::TypedSetting& setting,
                      const std::optional<model::Reading>& reading, const model::Size* size);

    CastingDesk* desk_ = nullptr;
    int examination_ = -1;
    int row_ = 0;
    std::function<model::TypedReflector()> fresh_;

    QBoxLayout* sides_;
    QBoxLayout* entryLayout_ = nullptr;
    QScrollArea* scroll_;
    Heading* title_;
    QToolButton* previous_;
    QToolButton* next_;
    FieldForm* form_;
    ReadingResult* result_;
    QSplitter* pictures_;
    EchoDiagramView* diagram_;
    BeamSectionView* section_;
    QLabel* help_;
};

}  // namespace app
