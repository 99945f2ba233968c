// SPDX-License-Identifier: Apache-2.0
// A list in which each entry has a mark, a title, a word at the right and lines of detail.
#pragma once

#include <QListView>
#include <QStandardItemModel>
#include <QStyledItemDelegate>

#include "looks/mark.h"

namespace app {

/// Draws an entry from its DisplayRole and the roles below.
class MarkedLines : public QStyledItemDelegate {
    Q_OBJECT

public:
    static constexpr int kMarkRole = Qt::UserRole;
    static constexpr int kWordRole = Qt::UserRole + 1;
    static constexpr int kDetailRole = Qt::UserRole + 2;  ///< lines
    static constexpr int kMutedRole = Qt::UserRole + 3;   ///< true: the word does not count
    static constexpr int kFirstFreeRole = Qt::UserRole + 4;

    /// Every entry has so many lines of detail.
    explicit MarkedLines(int details, QObject* parent = nullptr);

    [[nodiscard]] QSize sizeHint(const QStyleOptionViewItem& option,
                                 const QModelIndex& index) const override;
    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override;

private:
    int details_;
};

struct MarkedEntry {
    Mark mark = Mark::NotBegun;
    QString title;
    QString word;
    QStringList details;
    bool muted = false;
    QVariant key;
};

/// Such a list of plain entries, each with a key.
class MarkedList : public QListView {
    Q_OBJECT

public:
    explicit MarkedList(int details, QWidget* parent = nullptr);

    /// Replaces the entries; the one that was chosen stays so where it is still there.
    void setEntries(const std::vector<MarkedEntry>& entries);
    void append(const std::vector<MarkedEntry>& entries);
    [[nodiscard]] int count() const { return model_.rowCount(); }
    /// Invalid: none is chosen.
    [[nodiscard]] QVariant currentKey() const;
    void choose(const QVariant& key);

signals:
    void keyChosen(const QVariant& key);

protected:
    void currentChanged(const QModelIndex& current, const QModelIndex& previous) override;

private:
    QStandardItemModel model_;
    bool quiet_ = false;
};

}  // namespace app
