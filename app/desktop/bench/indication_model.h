// SPDX-License-Identifier: Apache-2.0
// The rows of one examination as a table, with one more row for the next indication. What a cell
// holds is what was typed; a row typed in the other unit says so beside each length.
#pragma once

#include <QAbstractTableModel>
#include <map>
#include <memory>
#include <vector>

#include "bench/columns.h"
#include "editing/casting_editor.h"
#include "editing/live_verdict.h"

namespace app {

enum class CellState { Good, Missing, Wrong };

struct CellProblem {
    int row = 0;
    Column column = Column::Id;
    CellState state = CellState::Wrong;
    QString message;  ///< "Indication 3, length: is missing"
};

class IndicationModel : public QAbstractTableModel {
    Q_OBJECT

public:
    static constexpr int kStateRole = Qt::UserRole;          ///< CellState as int
    static constexpr int kSuggestedRole = Qt::UserRole + 1;  ///< true: shown, but not typed
    static constexpr int kUnitRole = Qt::UserRole + 2;       ///< "mm" or "in" of a length cell

    explicit IndicationModel(QObject* parent = nullptr);

    /// Shows one examination; null shows nothing.
    void show(CastingEditor* editor, int examination);
    void setLive(std::shared_ptr<const LiveVerdict> live);
    /// The unit in which new rows are typed.
    void setUnit(model::LengthUnit unit);
    [[nodiscard]] model::LengthUnit unit() const { return unit_; }

    /// The examination can only be read.
    [[nodiscard]] bool readOnly() const { return !editor_ || editor_->locked(examination_); }
    [[nodiscard]] int indications() const;  ///< rows without the empty last one
    /// Everything that keeps rows from being read, in the order of the table.
    [[nodiscard]] std::vector<CellProblem> problems() const;

    /// One step each.
    void deleteRows(int first, int count);
    void clearCells(const QModelIndexList& cells);
    /// Lays lines of tab-separated cells over the table from a cell on; adds rows as needed.
    /// Returns how many cells of the text found no column.
    int paste(const QModelIndex& from, const QString& text);
    [[nodiscard]] QString copy(const QModelIndexList& cells) const;
    /// The value of the cell above.
    void repeatAbove(const QModelIndex& cell);

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation,
                                      int role) const override;
    [[nodiscard]] Qt::ItemFlags flags(const QModelIndex& index) const override;
    bool setData(const QModelIndex& index, const QVariant& value, int role) override;

signals:
    void problemsChanged();

private:
    void onRowsReplaced(int examination, int first, int removed, int added);
    [[nodiscard]] const std::vector<model::TypedIndication>& rows() const;
    [[nodiscard]] model::TypedIndication freshRow(int ahead = 0) const;
    [[nodiscard]] QString shownText(int row, Column column) const;
    [[nodiscard]] QString suggested(int row, Column column) const;
    /// "Indication 7", or "Row 3" of one without an id.
    [[nodiscard]] QString rowName(int row) const;
    [[nodiscard]] std::optional<CellProblem> problemOf(int row, Column column) const;
    [[nodiscard]] const model::JudgedIndication* judged(int row) const;
    [[nodiscard]] QString toolTip(int row, Column column) const;
    void set(model::TypedIndication& row, Column column, const QString& typed) const;

    CastingEditor* editor_ = nullptr;
    int examination_ = -1;
    int shownRows_ = 0;
    model::LengthUnit unit_ = model::LengthUnit::Millimetre;
    std::shared_ptr<const LiveVerdict> live_;
    std::map<std::pair<int, Column>, QString> judgeProblems_;
    std::map<std::string, model::JudgedIndication> judged_;
};

}  // namespace app
