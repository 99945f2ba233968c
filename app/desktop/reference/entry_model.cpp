// SPDX-License-Identifier: Apache-2.0
#include "reference/entry_model.h"

#include <algorithm>

#include "fields/field_words.h"
#include "looks/text.h"

namespace app {

EntryModel::EntryModel(const Register& of, QObject* parent) : QAbstractTableModel(parent), of_(of) {
    for (const std::string& key : of_.columns) {
        const auto found = std::ranges::find(of_.fields, key, &model::FieldInfo::key);
        if (found != of_.fields.end()) columns_.push_back(*found);
    }
}

void EntryModel::setEntries(std::vector<Entry> entries) {
    entries_ = std::move(entries);
    fill();
}

void EntryModel::setKnown(const Known& known) {
    known_.clear();
    for (const auto& [field, choices] : known) {
        for (const auto& [text, words] : choices) known_[field][text] = words;
    }
    fill();
}

void EntryModel::fill() {
    beginResetModel();
    lines_.clear();
    lines_.reserve(entries_.size());
    for (const Entry& entry : entries_) {
        Line line;
        line.key = qt(keyOf(of_, entry));
        for (const auto& column : columns_) {
            line.cells << shown(column, textOf(entry.texts, std::string(column.key)));
        }
        line.search = line.cells.join(' ');
        for (const auto& [key, text] : entry.texts) line.search += ' ' + qt(text);
        lines_.push_back(std::move(line));
    }
    endResetModel();
}

QString EntryModel::shown(const model::FieldInfo& field, const std::string& text) const {
    if (text.empty()) return {};
    if (const auto known = known_.find(std::string(field.key)); known != known_.end()) {
        const auto words = known->second.find(text);
        if (words != known->second.end()) return words->second;
    }
    switch (field.kind) {
        case model::FieldKind::Choice:
        case model::FieldKind::YesNo:
            return choiceText(text);
        case model::FieldKind::Moment:
            return momentShown(text);
        default:
            break;
    }
    return field.unit.empty() ? qt(text) : qt(text) + QChar(0x202F) + shownUnit(field.unit);
}

int EntryModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(lines_.size());
}

int EntryModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(columns_.size());
}

QVariant EntryModel::data(const QModelIndex& index, int role) const {
    if (!index.isValid()) return {};
    const Line& line = lines_[static_cast<std::size_t>(index.row())];
    switch (role) {
        case Qt::DisplayRole:
        case Qt::ToolTipRole:
            return line.cells[index.column()];
        case kKeyRole:
            return line.key;
        case kSearchRole:
            return line.search;
        default:
            return {};
    }
}

QVariant EntryModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal || section >= columnCount()) return {};
    const auto& column = columns_[static_cast<std::size_t>(section)];
    if (role == Qt::DisplayRole) return fieldLabel(column);
    if (role == Qt::ToolTipRole) return fieldHelp(column);
    if (role == Qt::TextAlignmentRole) return QVariant(Qt::AlignLeft | Qt::AlignVCenter);
    return {};
}

void EntryFilter::setWords(const QString& words) {
    words_ = words.split(' ', Qt::SkipEmptyParts);
    invalidateFilter();
}

bool EntryFilter::filterAcceptsRow(int row, const QModelIndex& parent) const {
    const QString text =
        sourceModel()->index(row, 0, parent).data(EntryModel::kSearchRole).toString();
    return std::ranges::all_of(
        words_, [&](const QString& word) { return text.contains(word, Qt::CaseInsensitive); });
}

}  // namespace app
