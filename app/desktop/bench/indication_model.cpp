// SPDX-License-Identifier: Apache-2.0
#include "bench/indication_model.h"

#include <QFont>
#include <QGuiApplication>
#include <QPalette>
#include <algorithm>

#include "limits/words.h"
#include "looks/text.h"

namespace app {
namespace {

const std::vector<model::TypedIndication> kNoRows;

QString unitSymbol(model::LengthUnit unit) {
    return QString::fromUtf8(model::symbol(unit).data());
}

}  // namespace

IndicationModel::IndicationModel(QObject* parent) : QAbstractTableModel(parent) {}

void IndicationModel::show(CastingEditor* editor, int examination) {
    beginResetModel();
    if (editor_) editor_->disconnect(this);
    editor_ = editor;
    examination_ = examination;
    shownRows_ = indications();
    live_.reset();
    judgeProblems_.clear();
    judged_.clear();
    if (editor_) {
        connect(editor_, &CastingEditor::rowsReplaced, this, &IndicationModel::onRowsReplaced);
        connect(editor_, &CastingEditor::locksChanged, this,
                [this] { emit dataChanged(index(0, 0), index(shownRows_, kColumns - 1)); });
        connect(editor_, &QObject::destroyed, this, [this] { show(nullptr, -1); });
        unit_ = rows().empty() ? model::LengthUnit::Millimetre : rows().back().unit;
    }
    endResetModel();
    emit problemsChanged();
}

const std::vector<model::TypedIndication>& IndicationModel::rows() const {
    return editor_ && examination_ >= 0 ? editor_->draft(examination_).rows : kNoRows;
}

int IndicationModel::indications() const {
    return static_cast<int>(rows().size());
}

int IndicationModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() || !editor_ ? 0 : shownRows_ + 1;
}

int IndicationModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : kColumns;
}

Qt::ItemFlags IndicationModel::flags(const QModelIndex& index) const {
    if (!index.isValid()) return Qt::NoItemFlags;
    const Qt::ItemFlags shown = Qt::ItemIsEnabled | Qt::ItemIsSelectable;
    return readOnly() ? shown : shown | Qt::ItemIsEditable;
}

void IndicationModel::setUnit(model::LengthUnit unit) {
    if (unit_ == unit) return;
    unit_ = unit;
    emit headerDataChanged(Qt::Horizontal, 0, kColumns - 1);
    emit dataChanged(index(0, 0), index(shownRows_, kColumns - 1));
}

void IndicationModel::setLive(std::shared_ptr<const LiveVerdict> live) {
    live_ = std::move(live);
    judgeProblems_.clear();
    judged_.clear();
    if (live_ && examination_ >= 0) {
        for (const auto& problem : live_->rowProblems) {
            if (problem.examination != examination_ || problem.row >= indications()) continue;
            const auto column = columnOf(problem.field).value_or(Column::Id);
            judgeProblems_[{problem.row, column}] = reasonText(problem.error);
        }
        const auto at = static_cast<std::size_t>(examination_);
        if (at < live_->examinations.size() && live_->examinations[at].verdict) {
            for (const auto& judged : live_->examinations[at].verdict->indications) {
                judged_[judged.id] = judged;
            }
        }
    }
    if (editor_) emit dataChanged(index(0, 0), index(shownRows_, kColumns - 1));
    emit problemsChanged();
}

void IndicationModel::onRowsReplaced(int examination, int first, int removed, int added) {
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
    emit dataChanged(index(first, 0), index(shownRows_, kColumns - 1));
    emit problemsChanged();
}

model::TypedIndication IndicationModel::freshRow(int ahead) const {
    int highest = 0;
    for (const auto& row : rows()) {
        bool whole = false;
        const int number = qt(row.id).toInt(&whole);
        if (whole) highest = std::max(highest, number);
    }
    model::TypedIndication fresh;
    fresh.id = std::to_string(highest + 1 + ahead);
    fresh.unit = unit_;
    return fresh;
}

QString IndicationModel::shownText(int row, Column column) const {
    if (row >= indications()) return {};
    const auto& typed = rows()[static_cast<std::size_t>(row)];
    QString text = qt(typed.*factsOf(column).text);
    if (factsOf(column).of == ColumnFacts::Of::Word) {
        for (const auto& [word, shown] : wordsOf(column)) {
            if (qt(word) == text) return shown;
        }
    }
    return text;
}

/// What holds where nothing was typed: shown faintly, never stored.
QString IndicationModel::suggested(int row, Column column) const {
    if (row >= indications()) {
        return column == Column::Id && !readOnly() ? qt(freshRow().id) : QString();
    }
    if (model::isBlank(rows()[static_cast<std::size_t>(row)])) return {};
    if (column == Column::Angle) return QStringLiteral("0");
    if (column == Column::Relevance) return tr("relevant");
    if (column == Column::Stated) {
        const auto* known = judged(row);
        if (known && known->classified) {
            const QString word = classText(std::string(model::word(*known->classified)));
            return known->group.empty() ? word : word + " · " + qt(known->group);
        }
    }
    return {};
}

const model::JudgedIndication* IndicationModel::judged(int row) const {
    const auto found = judged_.find(rows()[static_cast<std::size_t>(row)].id);
    return found == judged_.end() ? nullptr : &found->second;
}

QString IndicationModel::rowName(int row) const {
    const QString id = row < indications() ? qt(rows()[static_cast<std::size_t>(row)].id) : "";
    return id.isEmpty() ? tr("Row %1").arg(row + 1) : tr("Indication %1").arg(id);
}

std::optional<CellProblem> IndicationModel::problemOf(int row, Column column) const {
    if (row >= indications() || model::isBlank(rows()[static_cast<std::size_t>(row)])) {
        return std::nullopt;
    }
    const auto describe = [&](const QString& reason) {
        const bool empty = shownText(row, column).trimmed().isEmpty();
        return CellProblem{row, column, empty ? CellState::Missing : CellState::Wrong,
                           tr("%1, %2: %3").arg(rowName(row), columnName(column), reason)};
    };
    for (const auto& error : editor_->reading(examination_, row).errors) {
        if (columnOf(error.field) == column) return describe(reasonText(error.error));
    }
    const auto said = judgeProblems_.find({row, column});
    if (said != judgeProblems_.end()) return describe(said->second);
    return std::nullopt;
}

std::vector<CellProblem> IndicationModel::problems() const {
    std::vector<CellProblem> all;
    for (int row = 0; row < indications(); ++row) {
        const bool unread = !editor_->reading(examination_, row).errors.empty();
        const auto from = judgeProblems_.lower_bound({row, Column::Id});
        if (!unread && (from == judgeProblems_.end() || from->first.first != row)) continue;
        for (int i = 0; i < kColumns; ++i) {
            if (auto problem = problemOf(row, nthColumn(i))) all.push_back(std::move(*problem));
        }
    }
    return all;
}

QString IndicationModel::toolTip(int row, Column column) const {
    if (const auto problem = problemOf(row, column)) return problem->message;
    if (row >= indications()) return {};
    const auto& typed = rows()[static_cast<std::size_t>(row)];
    if (factsOf(column).of == ColumnFacts::Of::Length) {
        const auto value = model::parseLength(typed.*factsOf(column).text, typed.unit);
        if (!value) return {};
        return tr("%1 mm = %2 in")
            .arg(qt(model::formatLength(value->value, model::LengthUnit::Millimetre)),
                 qt(model::formatLength(value->value, model::LengthUnit::Inch)));
    }
    if (column == Column::Stated && !suggested(row, column).isEmpty() && typed.stated.empty()) {
        return tr("By length and width; nothing was stated.");
    }
    return {};
}

QVariant IndicationModel::data(const QModelIndex& index, int role) const {
    if (!index.isValid() || !editor_) return {};
    const int row = index.row();
    const Column column = nthColumn(index.column());
    const bool isLength = factsOf(column).of == ColumnFacts::Of::Length;
    const QString text = shownText(row, column);
    const auto rowUnit = row < indications() ? rows()[static_cast<std::size_t>(row)].unit : unit_;
    switch (role) {
        case Qt::EditRole:
            return text;
        case Qt::DisplayRole:
            if (text.isEmpty()) return suggested(row, column);
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
            const QString shown = text.isEmpty() ? tr("empty") : text;
            return problem ? shown + ", " + problem->message : shown;
        }
        case Qt::TextAlignmentRole:
            return static_cast<int>(Qt::AlignVCenter |
                                    (isLength || factsOf(column).of == ColumnFacts::Of::Number
                                         ? Qt::AlignRight
                                         : Qt::AlignLeft));
        default:
            return {};
    }
}

QVariant IndicationModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation == Qt::Vertical) return {};
    if (role == Qt::DisplayRole) return columnTitle(nthColumn(section), unit_);
    if (role == Qt::TextAlignmentRole) return static_cast<int>(Qt::AlignCenter);
    if (role == Qt::ToolTipRole) {
        switch (nthColumn(section)) {
            case Column::X:
            case Column::Y:
                return tr("Centre, from the zone's datum along its axes.");
            case Column::Width:
                return tr("Empty for a hairline; then state the class linear.");
            case Column::Angle:
                return tr("Counter-clockwise from the x axis; empty: 0.");
            case Column::Stated:
                return tr(
                    "Only where you state it: linear or non-linear. "
                    "Otherwise length and width decide.");
            case Column::Area:
                return tr("Measured area; empty: computed from length and width.");
            case Column::Removed:
                return tr("What machining will take off here; may be empty.");
            case Column::Relevance:
                return tr(
                    "Empty: relevant. Non-relevant or false need a "
                    "reason.");
            default:
                return {};
        }
    }
    return {};
}

}  // namespace app
