// SPDX-License-Identifier: Apache-2.0
// The entries of a register as the lines of a list.
#pragma once

#include <QAbstractTableModel>
#include <QSortFilterProxyModel>
#include <vector>

#include "reference/register.h"

namespace app {

class EntryModel : public QAbstractTableModel {
    Q_OBJECT

public:
    static constexpr int kKeyRole = Qt::UserRole;         ///< of the entry
    static constexpr int kSearchRole = Qt::UserRole + 1;  ///< every text of the entry

    /// `of` outlives the model.
    explicit EntryModel(const Register& of, QObject* parent = nullptr);

    void setEntries(std::vector<Entry> entries);
    /// What is shown for a text, such as a person's name beside the id.
    void setKnown(const Known& known);

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation,
                                      int role) const override;

private:
    struct Line {
        QString key;
        QStringList cells;
        QString search;
    };
    void fill();
    [[nodiscard]] QString shown(const model::FieldInfo& field, const std::string& text) const;

    const Register& of_;
    std::vector<model::FieldInfo> columns_;
    std::vector<Entry> entries_;
    std::map<std::string, std::map<std::string, QString>> known_;
    std::vector<Line> lines_;
};

/// Only the entries in which every word stands somewhere.
class EntryFilter : public QSortFilterProxyModel {
    Q_OBJECT

public:
    using QSortFilterProxyModel::QSortFilterProxyModel;
    void setWords(const QString& words);

protected:
    [[nodiscard]] bool filterAcceptsRow(int row, const QModelIndex& parent) const override;

private:
    QStringList words_;
};

}  // namespace app
