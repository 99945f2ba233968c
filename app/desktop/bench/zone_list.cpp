// SPDX-License-Identifier: Apache-2.0
#include "bench/zone_list.h"

#include <QCoreApplication>
#include <algorithm>

#include "looks/text.h"
#include "record/coverage.h"

namespace app {
namespace {

ZoneLine lineFor(const model::CastingFile& file, int zone, model::Method method, model::Stage stage,
                 const std::string& name) {
    ZoneLine line;
    line.zone = zone;
    line.title = qt(name) + "  " + methodText(method);
    line.detail = stageText(stage);
    if (zone >= 0 && !file.plan.zones[static_cast<std::size_t>(zone)].description.empty()) {
        line.detail += " · " + qt(file.plan.zones[static_cast<std::size_t>(zone)].description);
    }
    return line;
}

QString cycleText(const model::Examination& header) {
    QString text;
    if (header.repairCycle > 0) {
        text += QCoreApplication::translate("ZoneList", "repair %1").arg(header.repairCycle);
    }
    if (header.repeat > 0) {
        if (!text.isEmpty()) text += ", ";
        text += QCoreApplication::translate("ZoneList", "repeat %1").arg(header.repeat);
    }
    return text;
}

}  // namespace

std::vector<ZoneLine> zoneLines(const model::CastingFile& file) {
    std::vector<ZoneLine> lines;
    std::vector<bool> placed(file.examinations.size(), false);
    const auto addExaminations = [&](int zone, const std::optional<model::RequiredTest>& test,
                                     auto belongs) {
        std::vector<int> found;
        for (std::size_t i = 0; i < file.examinations.size(); ++i) {
            if (!placed[i] && belongs(file.examinations[i].header)) {
                found.push_back(static_cast<int>(i));
                placed[i] = true;
            }
        }
        const auto key = [&](int index) {
            const auto& header = file.examinations[static_cast<std::size_t>(index)].header;
            return std::pair(header.repairCycle, header.repeat);
        };
        std::ranges::stable_sort(found, {}, key);
        for (const int index : found) {
            const auto& header = file.examinations[static_cast<std::size_t>(index)].header;
            ZoneLine line = lineFor(file, zone, header.method, header.stage, header.zone);
            line.examination = index;
            line.test = test;
            if (const QString cycle = cycleText(header); !cycle.isEmpty()) {
                line.detail = cycle + " · " + line.detail;
            }
            lines.push_back(std::move(line));
        }
        return !found.empty();
    };
    const std::vector<model::ZoneTest> required = model::requiredTestsOf(file).tests;
    for (std::size_t z = 0; z < file.plan.zones.size(); ++z) {
        const auto& zone = file.plan.zones[z];
        for (const model::ZoneTest& needed : required) {
            if (needed.zone != &zone) continue;
            const model::RequiredTest& test = needed.test;
            const bool begun =
                addExaminations(static_cast<int>(z), test, [&](const model::Examination& header) {
                    return header.zone == zone.name && header.method == test.method &&
                           header.stage == test.stage;
                });
            if (begun) continue;
            ZoneLine line = lineFor(file, static_cast<int>(z), test.method, test.stage, zone.name);
            line.test = test;
            lines.push_back(std::move(line));
        }
        addExaminations(static_cast<int>(z), std::nullopt,
                        [&](const model::Examination& header) { return header.zone == zone.name; });
    }
    addExaminations(-1, std::nullopt, [](const model::Examination&) { return true; });
    return lines;
}

void ZoneModel::show(CastingDesk* desk) {
    beginResetModel();
    desk_ = desk;
    lines_ = desk_ ? zoneLines(desk_->editor().file()) : std::vector<ZoneLine>();
    endResetModel();
}

void ZoneModel::refresh() {
    if (!lines_.empty()) emit dataChanged(index(0), index(rowCount() - 1));
}

const ZoneLine* ZoneModel::line(const QModelIndex& index) const {
    return index.isValid() && index.row() < rowCount()
               ? &lines_[static_cast<std::size_t>(index.row())]
               : nullptr;
}

QModelIndex ZoneModel::indexOfExamination(int examination) const {
    for (std::size_t i = 0; i < lines_.size(); ++i) {
        if (lines_[i].examination == examination) return index(static_cast<int>(i));
    }
    return {};
}

int ZoneModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(lines_.size());
}

Mark ZoneModel::markOfLine(const ZoneLine& line) const {
    if (line.examination < 0 || !desk_->live() || desk_->overdue()) return Mark::NotBegun;
    const auto at = static_cast<std::size_t>(line.examination);
    const auto& examinations = desk_->live()->examinations;
    return at < examinations.size() ? markOf(examinations[at].word) : Mark::NotBegun;
}

QString ZoneModel::wordOfLine(const ZoneLine& line) const {
    if (line.examination < 0) return tr("not begun");
    const auto at = static_cast<std::size_t>(line.examination);
    if (!desk_->live() || desk_->overdue() || at >= desk_->live()->examinations.size()) {
        return tr("judging…");
    }
    const auto& live = desk_->live()->examinations[at];
    const QString word = wordText(live.word);
    return isReplaced(line) ? tr("replaced: %1").arg(word) : word;
}

bool ZoneModel::isReplaced(const ZoneLine& line) const {
    const auto at = static_cast<std::size_t>(line.examination);
    if (line.examination < 0 || !desk_->live() || at >= desk_->live()->examinations.size()) {
        return false;
    }
    const auto& verdict = desk_->live()->examinations[at].verdict;
    return verdict && verdict->superseded;
}

QVariant ZoneModel::data(const QModelIndex& index, int role) const {
    const auto* shown = line(index);
    if (!shown || !desk_) return {};
    switch (role) {
        case Qt::DisplayRole:
            return shown->title;
        case MarkedLines::kMarkRole:
            return static_cast<int>(markOfLine(*shown));
        case MarkedLines::kWordRole:
            return wordOfLine(*shown);
        case MarkedLines::kDetailRole:
            return QStringList(shown->detail);
        case MarkedLines::kMutedRole:
            return isReplaced(*shown);
        case Qt::ToolTipRole:
            return shown->detail;
        case Qt::AccessibleTextRole:
            return QStringList{shown->title, wordOfLine(*shown), shown->detail}.join(", ");
        default:
            return {};
    }
}

ZoneList::ZoneList(QWidget* parent) : QListView(parent) {
    setModel(&model_);
    setItemDelegate(new MarkedLines(1, this));
    setAccessibleName(tr("Zones and their tests"));
    setEditTriggers(NoEditTriggers);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setFrameShape(NoFrame);
    setResizeMode(Adjust);
}

void ZoneList::currentChanged(const QModelIndex& current, const QModelIndex& previous) {
    QListView::currentChanged(current, previous);
    emit lineShown();
}

}  // namespace app
