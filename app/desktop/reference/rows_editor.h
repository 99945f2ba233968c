// SPDX-License-Identifier: Apache-2.0
// A table within an entry, as the zones of a part: what it is for, its rows, and what is wrong with
// them in words.
#pragma once

#include <QWidget>

#include "reference/register.h"

class QLabel;
class QPushButton;

namespace app {

class EntryRows;
class EntryTable;

class RowsEditor : public QWidget {
    Q_OBJECT

public:
    explicit RowsEditor(RowsInfo info, QWidget* parent = nullptr);

    void setRows(const std::vector<EntryTexts>& rows);
    /// As typed, without empty rows; empty texts are left out.
    [[nodiscard]] std::vector<EntryTexts> rows() const;
    /// Errors with the place "zones.2.name" of this table, the row counted as in rows(); others
    /// are passed over. Each stays until its row is changed.
    void setErrors(const std::vector<model::FieldError>& errors);
    void setKnown(const Known& known);
    void setReadOnly(bool readOnly);
    /// Takes over what stands in an open cell.
    void finishEditing();

    [[nodiscard]] EntryTable& table() { return *table_; }
    [[nodiscard]] EntryRows& model() { return *model_; }
    [[nodiscard]] QString errorText() const;
    [[nodiscard]] const RowsInfo& info() const { return info_; }

signals:
    void changed();

public slots:
    /// A further row with the same texts, at the end.
    void copyRow();
    void removeRows();

private:
    [[nodiscard]] std::vector<model::FieldError> refused(const EntryTexts& row) const;
    void refreshButtons();

    RowsInfo info_;
    EntryRows* model_;
    EntryTable* table_;
    QLabel* error_;
    QPushButton* copy_;
    QPushButton* remove_;
    std::map<EntryTexts, std::vector<model::FieldError>> refused_;
    std::map<std::string, std::vector<std::pair<std::string, QString>>> known_;
};

}  // namespace app
