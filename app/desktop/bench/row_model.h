// SPDX-License-Identifier: Apache-2.0
// The rows of one examination as a table, with one more row for the next indication. What a cell
// holds is what was typed; what follows from other cells is shown faintly and never stored; a row
// typed in the other unit says so beside each length.
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
    int column = 0;
    CellState state = CellState::Wrong;
    QString message;  ///< "Indication 3, length: is missing"
};

class RowModel : public QAbstractTableModel {
    Q_OBJECT

public:
    static constexpr int kStateRole = Qt::UserRole;          ///< CellState as int
    static constexpr int kSuggestedRole = Qt::UserRole + 1;  ///< true: shown, but not typed
    static constexpr int kUnitRole = Qt::UserRole + 2;       ///< "mm" or "in" of a length cell

    using QAbstractTableModel::QAbstractTableModel;

    /// Shows one examination; null shows nothing.
    void show(CastingEditor* editor, int examination);
    void setLive(std::shared_ptr<const LiveVerdict> live);
    /// The unit in which new rows are typed.
    void setUnit(model::LengthUnit unit);
    [[nodiscard]] model::LengthUnit unit() const { return unit_; }

    /// The examination can only be read.
    [[nodiscard]] bool readOnly() const { return !editor_ || editor_->locked(examination_); }
    /// Rows without the empty last one.
    [[nodiscard]] virtual int indications() const = 0;
    /// Everything that keeps rows from being read, in the order of the table.
    [[nodiscard]] std::vector<CellProblem> problems() const;
    [[nodiscard]] QString name(int column) const { return facts(column).name; }
    [[nodiscard]] virtual Words words(int column) const = 0;
    [[nodiscard]] int digits(int column) const { return facts(column).digits; }
    /// Where typing a row begins, and where it goes on after a cell; none: to the next row.
    [[nodiscard]] virtual int firstCell() const = 0;
    [[nodiscard]] virtual std::optional<int> cellAfter(int row, int column) const = 0;

    /// One step each.
    virtual void deleteRows(int first, int count) = 0;
    virtual void clearCells(const QModelIndexList& cells) = 0;
    /// Lays lines of tab-separated cells over the table from a cell on; adds rows as needed.
    /// Returns how many cells of the text found no column.
    virtual int paste(const QModelIndex& from, const QString& text) = 0;
    [[nodiscard]] QString copy(const QModelIndexList& cells) const;
    /// The value of the cell above.
    void repeatAbove(const QModelIndex& cell);

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation,
                                      int role) const override;
    [[nodiscard]] Qt::ItemFlags flags(const QModelIndex& index) const override;

signals:
    void problemsChanged();

protected:
    struct ColumnFacts {
        CellOf of;
        int digits;
        QString name;
    };
    [[nodiscard]] virtual ColumnFacts facts(int column) const = 0;
    [[nodiscard]] virtual QString title(int column) const = 0;
    [[nodiscard]] virtual QString help(int column) const = 0;
    /// The column of a field by its contract name; none: it has none.
    [[nodiscard]] virtual std::optional<int> columnFor(const std::string& field) const = 0;
    // Of a row that is there:
    [[nodiscard]] virtual std::string typed(int row, int column) const = 0;
    [[nodiscard]] virtual model::LengthUnit unitOf(int row) const = 0;
    [[nodiscard]] virtual bool blank(int row) const = 0;
    [[nodiscard]] virtual const std::vector<model::FieldError>& errors(int row) const = 0;
    /// The id that the next row would have.
    [[nodiscard]] virtual QString nextId() const = 0;
    /// What holds where nothing was typed, in a row that is not blank, and why.
    [[nodiscard]] virtual QString suggested(int row, int column) const = 0;
    [[nodiscard]] virtual QString suggestedBy(int row, int column) const = 0;

    [[nodiscard]] const model::JudgedIndication* judged(int row) const;
    [[nodiscard]] QString shownText(int row, int column) const;
    void refreshAll();

    CastingEditor* editor_ = nullptr;
    int examination_ = -1;
    model::LengthUnit unit_ = model::LengthUnit::Millimetre;

private:
    void onRowsReplaced(int examination, int first, int removed, int added);
    [[nodiscard]] QString shownSuggestion(int row, int column) const;
    /// "Indication 7", or "Row 3" of one without an id.
    [[nodiscard]] QString rowName(int row) const;
    [[nodiscard]] std::optional<CellProblem> problemOf(int row, int column) const;
    [[nodiscard]] QString toolTip(int row, int column) const;

    int shownRows_ = 0;
    std::shared_ptr<const LiveVerdict> live_;
    std::map<std::pair<int, int>, QString> judgeProblems_;
    std::map<std::string, model::JudgedIndication> judged_;
};

}  // namespace app
