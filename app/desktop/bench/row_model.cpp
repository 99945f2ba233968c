// SPDX-License-Identifier: Apache-2.0
#include "bench/row_model.h"

#include <QFont>
#include <QGuiApplication>
#include <QPalette>
#include <algorithm>
#include <set>

#include "looks/text.h"

namespace app {
namespace {

QString unitSymbol(model::LengthUnit unit) {
    return QString::fromUtf8(model::symbol(unit).data());
}

}  // namespace

void RowModel::show(CastingEditor* editor, int examination) {
    beginResetModel();
    if (editor_) editor_->disconnect(this);
    editor_ = editor;
    examination_ = examination;
    shownRows_ = indications();
    live_.reset();
    judgeProblems_.clear();
    judged_.clear();
    if (editor_) {
        connect(editor_, &CastingEditor::rowsReplaced, this, &RowModel::onRowsReplaced);
        connect(editor_, &CastingEditor::locksChanged, this, &RowModel::refreshAll);
        connect(editor_, &CastingEditor::settingsChanged, this, [this](int changed) {
            if (changed == examination_) refreshAll();
        });
        connect(editor_, &QObject::destroyed, this, [this] { show(nullptr, -1); });
        unit_ = shownRows_ == 0 ? model::LengthUnit::Millimetre : unitOf(shownRows_ - 1);
    }
    endResetModel();
    emit problemsChanged();
}

void RowModel::refreshAll() {
    emit dataChanged(index(0, 0), index(shownRows_, columnCount() - 1));
    emit problemsChanged();
}

int RowModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() || !editor_ ? 0 : shownRows_ + 1;
}

Qt::ItemFlags RowModel::flags(const QModelIndex& index) const {
    if (!index.isValid()) return Qt::NoItemFlags;
    const Qt::ItemFlags shown = Qt::ItemIsEnabled | Qt::ItemIsSelectable;
    return readOnly() ? shown : shown | Qt::ItemIsEditable;
}

void RowModel::setUnit(model::LengthUnit unit) {
    if (unit_ == unit) return;
    unit_ = unit;
    emit headerDataChanged(Qt::Horizontal, 0, columnCount() - 1);
    emit dataChanged(index(0, 0), index(shownRows_, columnCount() - 1));
}

void RowModel::setLive(std::shared_ptr<const LiveVerdict> live) {
    live_ = std::move(live);
    judgeProblems_.clear();
    judged_.clear();
    if (live_ && examination_ >= 0) {
        for (const auto& problem : live_->rowProblems) {
            if (problem.examination != examination_ || problem.row >= indications()) continue;
            const auto column = columnFor(problem.field).value_or(0);
            judgeProblems_[{problem.row, column}] = reasonText(problem.error);
        }
        const auto at = static_cast<std::size_t>(examination_);
        if (at < live_->examinations.size() && live_->examinations[at].verdict) {
            for (const auto& judged : live_->examinations[at].verdict->indications) {
                judged_[judged.id] = judged;
            }
        }
    }
    if (editor_) emit dataChanged(index(0, 0), index(shownRows_, columnCount() - 1));
    emit problemsChanged();
}

void RowModel::onRowsReplaced(int examination, int first, int removed, int added) {
    if (examination != examination_) return;
    // What the judge said belongs to rows that may have moved; the next verdict says it anew.
    judgeProblems_.clear();
    const int kept = std::min(removed, added);
    // At the end the empty last row becomes a row and another empty one follows it, or the other
    // way round, so that the cursor stays in the row in which somebody types.
    const int from = first + kept + (first + removed == shownRows_ ? 1 : 0);
    if (added > kept) {
        beginInsertRows({}, from, from + added - kept - 1);
        shownRows_ += added - kept;
        endInsertRows();
    } else if (removed > kept) {
        beginRemoveRows({}, from, from + removed - kept - 1);
        shownRows_ -= removed - kept;
        endRemoveRows();
    }
    emit dataChanged(index(first, 0), index(shownRows_, columnCount() - 1));
    emit problemsChanged();
}

QString RowModel::shownText(int row, int column) const {
    if (row >= indications()) return {};
    const QString text = qt(typed(row, column));
    return facts(column).of == CellOf::Word ? wordShown(words(column), text) : text;
}

QString RowModel::shownSuggestion(int row, int column) const {
    if (row >= indications()) return column == 0 && !readOnly() ? nextId() : QString();
    return blank(row) ? QString() : suggested(row, column);
}

const model::JudgedIndication* RowModel::judged(int row) const {
    const auto found = judged_.find(typed(row, 0));
    return found == judged_.end() ? nullptr : &found->second;
}

QString RowModel::rowName(int row) const {
    const QString id = row < indications() ? qt(typed(row, 0)) : QString();
    return id.isEmpty() ? tr("Row %1").arg(row + 1) : tr("Indication %1").arg(id);
}

std::optional<CellProblem> RowModel::problemOf(int row, int column) const {
    if (row >= indications() || blank(row)) return std::nullopt;
    const auto describe = [&](const QString& reason) {
        const bool empty = shownText(row, column).trimmed().isEmpty();
        return CellProblem{row, column, empty ? CellState::Missing : CellState::Wrong,
                           tr("%1, %2: %3").arg(rowName(row), name(column), reason)};
    };
    for (const auto& error : errors(row)) {
        if (columnFor(error.field).value_or(0) == column) return describe(reasonText(error.error));
    }
    const auto said = judgeProblems_.find({row, column});
    if (said != judgeProblems_.end()) return describe(said->second);
    return std::nullopt;
}

std::vector<CellProblem> RowModel::problems() const {
    std::vector<CellProblem> all;
    for (int row = 0; row < indications(); ++row) {
        const bool unread = !errors(row).empty();
        const auto from = judgeProblems_.lower_bound({row, 0});
        if (!unread && (from == judgeProblems_.end() || from->first.first != row)) continue;
        for (int column = 0; column < columnCount(); ++column) {
            if (auto problem = problemOf(row, column)) all.push_back(std::move(*problem));
        }
    }
    return all;
}

QString RowModel::toolTip(int row, int column) const {
    if (const auto problem = problemOf(row, column)) return problem->message;
    if (row >= indications()) return {};
    if (facts(column).of == CellOf::Length) {
        const auto value = model::parseLength(typed(row, column), unitOf(row));
        if (value) {
            return tr("%1 mm = %2 in")
                .arg(qt(model::formatLength(value->value, model::LengthUnit::Millimetre)),
                     qt(model::formatLength(value->value, model::LengthUnit::Inch)));
        }
    }
    return typed(row, column).empty() ? suggestedBy(row, column) : QString();
}

QVariant RowModel::data(const QModelIndex& index, int role) const {
    if (!index.isValid() || !editor_) return {};
    const int row = index.row();
    const int column = index.column();
    const auto of = facts(column).of;
    const bool isLength = of == CellOf::Length;
    const QString text = shownText(row, column);
    const auto rowUnit = row < indications() ? unitOf(row) : unit_;
    switch (role) {
        case Qt::EditRole:
            return text;
        case Qt::DisplayRole:
            if (text.isEmpty()) return shownSuggestion(row, column);
            return isLength && rowUnit != unit_ ? text + QChar(0x202F) + unitSymbol(rowUnit) : text;
        case kSuggestedRole:
            return text.isEmpty();
        case kUnitRole:
            return isLength ? unitSymbol(rowUnit) : QString();
        case kStateRole: {
            const auto problem = problemOf(row, column);
            return static_cast<int>(problem ? problem->state : CellState::Good);
        }
        case Qt::ToolTipRole:
            return toolTip(row, column);
        case Qt::AccessibleTextRole: {
            const auto problem = problemOf(row, column);
            const QString follows = shownSuggestion(row, column);
            const QString shown = !text.isEmpty()       ? text
                                  : follows.isEmpty()   ? tr("empty")
                                  : row < indications() ? tr("%1, not typed").arg(follows)
                                                        : tr("empty");
            return problem ? shown + ", " + problem->message : shown;
        }
        case Qt::TextAlignmentRole:
            return static_cast<int>(
                Qt::AlignVCenter |
                (isLength || of == CellOf::Number ? Qt::AlignRight : Qt::AlignLeft));
        default:
            return {};
    }
}

QVariant RowModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation == Qt::Vertical) return {};
    if (role == Qt::DisplayRole) return title(section);
    if (role == Qt::TextAlignmentRole) return static_cast<int>(Qt::AlignCenter);
    if (role == Qt::ToolTipRole) return help(section);
    return {};
}

QString RowModel::copy(const QModelIndexList& cells) const {
    std::set<int> rowSet;
    std::set<int> columnSet;
    for (const auto& cell : cells) {
        if (cell.row() >= indications()) continue;
        rowSet.insert(cell.row());
        columnSet.insert(cell.column());
    }
    QStringList lines;
    for (const int row : rowSet) {
        QStringList line;
        for (const int column : columnSet) line << shownText(row, column);
        lines << line.join('\t');
    }
    return lines.join('\n');
}

void RowModel::repeatAbove(const QModelIndex& cell) {
    if (!cell.isValid() || cell.row() == 0 || cell.row() > indications()) return;
    setData(cell, shownText(cell.row() - 1, cell.column()), Qt::EditRole);
}

}  // namespace app
