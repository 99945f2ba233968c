// SPDX-License-Identifier: Apache-2.0
// The middle of the bench: one zone's surface to scale and the table of its indications, with what
// belongs to the examination; of an ultrasonic one also its readings, settings and coverage. For a
// test that is not begun: what it asks for, and the cautions.
#pragma once

#include <QWidget>

#include "bench/surface_picture.h"
#include "bench/zone_list.h"
#include "editing/casting_desk.h"

class QCheckBox;
class QComboBox;
class QLabel;
class QPushButton;
class QStackedWidget;
class QTabWidget;

namespace app {

class CautionsView;
class ConditionsPage;
class CoveragePage;
class DetailsForm;
class IndicationModel;
class ReadingPage;
class ReflectorModel;
class RowModel;
class RowTable;
class SettingPage;
class SurfaceView;

class ExaminationPane : public QWidget {
    Q_OBJECT

public:
    explicit ExaminationPane(QWidget* parent = nullptr);

    /// Shows a line of the zone list; without a casting nothing.
    void show(CastingDesk* desk, const ZoneLine* line);
    /// The verdict has changed.
    void refreshLive();
    /// Points a check out on the surface; null: none.
    void pointOut(const model::Check* check);
    /// Takes over what stands in an open cell or field.
    void finishEditing();

    /// The pages of an examination; reading, setting and coverage are of an ultrasonic one.
    enum EntryPage { Rows, Reading, Setting, Coverage, Conditions };
    void goTo(EntryPage page);
    /// Goes to where the next indication is typed.
    void enterNewRow();

    [[nodiscard]] int examination() const { return examination_; }
    [[nodiscard]] SurfaceView& surface() { return *surface_; }
    [[nodiscard]] RowTable& table() { return *table_; }
    [[nodiscard]] RowModel& rows() { return *rows_; }
    [[nodiscard]] ReadingPage& reading() { return *reading_; }
    [[nodiscard]] SettingPage& settings() { return *settings_; }
    [[nodiscard]] CoveragePage& coverage() { return *coverage_; }
    [[nodiscard]] ConditionsPage& conditions() { return *conditions_; }
    [[nodiscard]] QCheckBox& nothingFound() { return *nothing_; }
    [[nodiscard]] QPushButton& beginButton() { return *begin_; }
    [[nodiscard]] CautionsView& cautions() { return *cautions_; }
    /// The line under the table: what keeps a row from being read, or which keys help.
    [[nodiscard]] QString rowMessage() const;

signals:
    void beginRequested();
    void message(const QString& text);

private:
    QWidget* makeEmptyPage();
    QWidget* makeBeginPage();
    QWidget* makeExaminationPage();
    QWidget* makeRowsPage();
    void connectTable(RowTable& table, RowModel& rows);
    void setMethod(model::Method method);
    void showBegin(const ZoneLine& line);
    void refreshBegin();
    void showHeading(const ZoneLine& line);
    void refreshPicture(bool fit);
    void refreshEntry();
    void showRowMessage();
    void setUnit(int index);
    void showStanding(int standing);

    CastingDesk* desk_ = nullptr;
    int examination_ = -1;
    std::optional<model::Check> pointedOut_;
    QTimer redraw_;

    QStackedWidget* pages_;
    QLabel* beginTitle_ = nullptr;
    QLabel* beginText_ = nullptr;
    QLabel* beginCautions_ = nullptr;
    QPushButton* begin_ = nullptr;
    QLabel* heading_ = nullptr;
    QLabel* place_ = nullptr;
    CautionsView* cautions_ = nullptr;
    DetailsForm* details_ = nullptr;
    SurfaceView* surface_ = nullptr;
    QCheckBox* nothing_ = nullptr;
    QComboBox* unit_ = nullptr;
    QTabWidget* entry_ = nullptr;
    QStackedWidget* tables_ = nullptr;
    IndicationModel* indications_ = nullptr;
    ReflectorModel* reflectors_ = nullptr;
    RowModel* rows_ = nullptr;  ///< those of the shown method
    RowTable* table_ = nullptr;
    ReadingPage* reading_ = nullptr;
    SettingPage* settings_ = nullptr;
    CoveragePage* coverage_ = nullptr;
    ConditionsPage* conditions_ = nullptr;
    QLabel* rowMessage_ = nullptr;
};

}  // namespace app
