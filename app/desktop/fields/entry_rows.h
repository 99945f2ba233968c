// SPDX-License-Identifier: Apache-2.0
// Entries of one kind as the rows of a table, made from the fields of the kind. Below the last row
// stands an empty one in which the next is typed.
#pragma once

#include <QAbstractTableModel>
#include <functional>
#include <optional>
#include <vector>

#include "fields/entry_texts.h"
#include "fields/field_form.h"

namespace app {

/// How a cell is entered, where its field alone does not say it.
struct CellEntry {
    Choices choices;
    bool closed = false;  ///< nothing but the choices
    model::FieldKind kind = model::FieldKind::Line;
};

class EntryRows : public QAbstractTableModel {
    Q_OBJECT

public:
    explicit EntryRows(std::vector<model::FieldInfo> fields, QObject* parent = nullptr);

    void setRows(std::vector<EntryTexts> rows);
    [[nodiscard]] const std::vector<EntryTexts>& rows() const { return rows_; }
    [[nodiscard]] int entries() const { return static_cast<int>(rows_.size()); }
    void setReadOnly(bool readOnly);
    [[nodiscard]] bool readOnly() const { return readOnly_; }
    /// What a new row holds as soon as something is typed in it.
    void setFresh(std::function<EntryTexts()> fresh) { fresh_ = std::move(fresh); }
    /// What goes before the field's own way to be entered.
    using HowEntered =
        std::function<std::optional<CellEntry>(const EntryTexts&, const std::string& key)>;
    void setHowEntered(HowEntered how) { how_ = std::move(how); }
    /// What else is wrong with a row.
    void setCheck(std::function<std::vector<model::FieldError>(const EntryTexts&)> check) {
        check_ = std::move(check);
    }

    [[nodiscard]] const model::FieldInfo& field(int column) const {
        return fields_[static_cast<std::size_t>(column)];
    }
    [[nodiscard]] int column(const std::string& key) const;  ///< -1: none
    [[nodiscard]] CellEntry howEntered(const QModelIndex& cell) const;
    /// What is wrong with a cell, in words; empty: nothing.
    [[nodiscard]] QString wrong(const QModelIndex& cell) const;
    /// The first wrong cell's row, column's name and reason in one line; empty: all is right.
    [[nodiscard]] QString firstWrong() const;
    void deleteRows(int first, int count);

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation,
                                      int role) const override;
    [[nodiscard]] Qt::ItemFlags flags(const QModelIndex& index) const override;
    bool setData(const QModelIndex& index, const QVariant& value, int role) override;

signals:
    /// Somebody has changed the rows; `key` names the field, empty where rows were deleted.
    void edited(int row, const QString& key);

private:
    [[nodiscard]] std::string text(int row, int column) const;
    [[nodiscard]] QString shown(int row, int column) const;

    std::vector<model::FieldInfo> fields_;
    std::vector<EntryTexts> rows_;
    bool readOnly_ = false;
    std::function<EntryTexts()> fresh_;
    HowEntered how_;
    std::function<std::vector<model::FieldError>(const EntryTexts&)> check_;
};

}  // namespace app
