// SPDX-License-Identifier: Apache-2.0
// The zones of the casting on the bench with what each must be tested for: mark, word, and where
// it is. An examination that was begun stands in place of the test that asks for it.
#pragma once

#include <QAbstractListModel>
#include <QListView>
#include <optional>
#include <vector>

#include "editing/casting_desk.h"
#include "looks/marked_lines.h"

namespace app {

/// One line: an examination, or a required test that is not begun.
struct ZoneLine {
    int examination = -1;  ///< index in the casting's file; -1: not begun
    int zone = -1;         ///< index in the zone plan; -1: not in the plan
    /// As the plan asks for it, or the order in its place; none: neither asks for it.
    std::optional<model::RequiredTest> test;
    QString title;   ///< "Z1  MT"
    QString detail;  ///< "as cast, repair 1"
};

/// In the order of the plan; of one test the examinations in the order of cycle and repeat.
std::vector<ZoneLine> zoneLines(const model::CastingFile& file);

class ZoneModel : public QAbstractListModel {
    Q_OBJECT

public:
    using QAbstractListModel::QAbstractListModel;
    void show(CastingDesk* desk);
    void refresh();
    [[nodiscard]] const ZoneLine* line(const QModelIndex& index) const;
    [[nodiscard]] QModelIndex indexOfExamination(int examination) const;

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;

private:
    [[nodiscard]] Mark markOfLine(const ZoneLine& line) const;
    [[nodiscard]] QString wordOfLine(const ZoneLine& line) const;
    [[nodiscard]] bool isReplaced(const ZoneLine& line) const;

    CastingDesk* desk_ = nullptr;
    std::vector<ZoneLine> lines_;
};

class ZoneList : public QListView {
    Q_OBJECT

public:
    explicit ZoneList(QWidget* parent = nullptr);
    [[nodiscard]] ZoneModel& zones() { return model_; }

signals:
    /// The cursor came to a line.
    void lineShown();

protected:
    void currentChanged(const QModelIndex& current, const QModelIndex& previous) override;

private:
    ZoneModel model_;
};

}  // namespace app
