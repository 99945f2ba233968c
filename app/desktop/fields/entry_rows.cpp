// SPDX-License-Identifier: Apache-2.0
#include "fields/entry_rows.h"

#include <QApplication>
#include <QPalette>
#include <algorithm>

#include "fields/field_words.h"
#include "looks/mark.h"
#include "looks/text.h"

namespace app {

EntryRows::EntryRows(std::vector<model::FieldInfo> fields, QObject* parent)
    : QAbstractTableModel(parent), fields_(std::move(fields)) {}

void EntryRows::setRows(std::vector<EntryTexts> rows) {
    if (rows == rows_) return;
    if (rows.size() == rows_.size()) {
        rows_ = std::move(rows);
        emit dataChanged(index(0, 0), index(rowCount() - 1, columnCount() - 1));
        return;
    }
    beginResetModel();
    rows_ = std::move(rows);
    endResetModel();
}

void EntryRows::setReadOnly(bool readOnly) {
    if (readOnly_ == readOnly) return;
    beginResetModel();
    readOnly_ = readOnly;
    endResetModel();
}

int EntryRows::column(const std::string& key) const {
    const auto found = std::ranges::find(fields_, key, &model::FieldInfo::key);
    return found == fields_.end() ? -1 : static_cast<int>(found - fields_.begin());
}

std::string EntryRows::text(int row, int column) const {
    if (row >= entries()) return {};
    const auto& texts = rows_[static_cast<std::size_t>(row)];
    const auto found = texts.find(std::string(field(column).key));
    return found == texts.end() ? std::string() : found->second;
}

CellEntry EntryRows::howEntered(const QModelIndex& cell) const {
    const auto& info = field(cell.column());
    static const EntryTexts kNone;
    const auto& row = cell.row() < entries() ? rows_[static_cast<std::size_t>(cell.row())] : kNone;
    if (how_) {
        if (auto how = how_(row, std::string(info.key))) return *how;
    }
    return {choicesOf(info),
            info.kind == model::FieldKind::Choice || info.kind == model::FieldKind::YesNo,
            info.kind};
}

QString EntryRows::shown(int row, int column) const {
    const std::string stored = text(row, column);
    if (stored.empty()) return {};
    const CellEntry how = howEntered(index(row, column));
    if (how.kind == model::FieldKind::Moment) return momentShown(stored);
    if (how.closed) {
        for (const auto& [word, shown] : how.choices) {
            if (word == stored) return shown;
        }
    }
    return qt(stored);
}

QString EntryRows::wrong(const QModelIndex& cell) const {
    if (!cell.isValid() || cell.row() >= entries()) return {};
    const auto& info = field(cell.column());
    if (auto error = model::wrongText(info, text(cell.row(), cell.column()))) {
        return reasonText(*error);
    }
    if (check_) {
        for (const auto& error : check_(rows_[static_cast<std::size_t>(cell.row())])) {
            if (error.field == info.key) return reasonText(error.error);
        }
    }
    return {};
}

QString EntryRows::firstWrong() const {
    for (int row = 0; row < entries(); ++row) {
        for (int column = 0; column < columnCount(); ++column) {
            const QString reason = wrong(index(row, column));
            if (!reason.isEmpty()) {
                return tr("Row %1, %2: %3").arg(row + 1).arg(fieldLabel(field(column)), reason);
            }
        }
    }
    return {};
}

void EntryRows::deleteRows(int first, int count) {
    count = std::min(count, entries() - first);
    if (readOnly_ || count <= 0) return;
    beginRemoveRows({}, first, first + count - 1);
    rows_.erase(rows_.begin() + first, rows_.begin() + first + count);
    endRemoveRows();
    emit edited(first, {});
}

int EntryRows::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : entries() + (readOnly_ ? 0 : 1);
}

int EntryRows::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(fields_.size());
}

QVariant EntryRows::data(const QModelIndex& index, int role) const {
    if (!index.isValid()) return {};
    switch (role) {
        case Qt::DisplayRole: {
            const QString text = shown(index.row(), index.column());
            if (wrong(index).isEmpty()) return text;
            return text.isEmpty() ? QStringLiteral("✗") : QStringLiteral("✗ ") + text;
        }
        case Qt::EditRole: {
            const std::string stored = text(index.row(), index.column());
            const bool moment = howEntered(index).kind == model::FieldKind::Moment;
            return moment ? momentShown(stored) : qt(stored);
        }
        case Qt::ForegroundRole:
            if (wrong(index).isEmpty()) return {};
            return colourOf(Mark::Fails, QApplication::palette().color(QPalette::Base));
        case Qt::ToolTipRole:
        case Qt::AccessibleDescriptionRole: {
            const QString reason = wrong(index);
            return reason.isEmpty() ? fieldHelp(field(index.column())) : reason;
        }
        default:
            return {};
    }
}

QVariant EntryRows::headerData(int section, Qt::Orientation orientation, int role) const {
    if (role == Qt::DisplayRole && orientation == Qt::Vertical) {
        return section < entries() ? QString::number(section + 1) : tr("new");
    }
    if (orientation != Qt::Horizontal) return {};
    const auto& info = field(section);
    if (role == Qt::ToolTipRole) return fieldHelp(info);
    if (role != Qt::DisplayRole) return {};
    const QString unit = shownUnit(info.unit);
    return unit.isEmpty() ? fieldLabel(info) : tr("%1, %2").arg(fieldLabel(info), unit);
}

Qt::ItemFlags EntryRows::flags(const QModelIndex& index) const {
    auto flags = QAbstractTableModel::flags(index);
    return readOnly_ ? flags : flags | Qt::ItemIsEditable;
}

bool EntryRows::setData(const QModelIndex& index, const QVariant& value, int role) {
    if (role != Qt::EditRole || readOnly_ || !index.isValid()) return false;
    const QString typed = value.toString().trimmed();
    const bool moment = howEntered(index).kind == model::FieldKind::Moment;
    const std::string text = moment ? momentFrom(typed) : typed.toStdString();
    const std::string key(field(index.column()).key);
    if (index.row() >= entries()) {
        if (text.empty()) return false;
        beginInsertRows({}, entries() + 1, entries() + 1);
        rows_.push_back(fresh_ ? fresh_() : EntryTexts());
        endInsertRows();
    }
    auto& row = rows_[static_cast<std::size_t>(index.row())];
    if (const auto found = row.find(key); found != row.end() && found->second == text) return true;
    if (text.empty()) {
        row.erase(key);
    } else {
        row[key] = text;
    }
    emit dataChanged(this->index(index.row(), 0), this->index(index.row(), columnCount() - 1));
    emit headerDataChanged(Qt::Vertical, index.row(), index.row());
    emit edited(index.row(), qt(key));
    return true;
}

}  // namespace app
