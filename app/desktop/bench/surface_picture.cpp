// SPDX-License-Identifier: Apache-2.0
#include "bench/surface_picture.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "looks/text.h"

namespace app {
namespace {

const model::PlannedZone* planned(const model::CastingFile& file, const std::string& name) {
    const auto& zones = file.plan.zones;
    const auto found = std::find_if(zones.begin(), zones.end(),
                                    [&](const auto& zone) { return zone.name == name; });
    return found == zones.end() ? nullptr : &*found;
}

struct Size {
    double width = 0;
    double height = 0;
};

Size sizeOf(const model::CastingFile& file, const model::Examination& header) {
    if (header.surface) {
        return {header.surface->width.approximately(), header.surface->height.approximately()};
    }
    if (const auto* zone = planned(file, header.zone)) {
        return {zone->width.approximately(), zone->height.approximately()};
    }
    return {};
}

model::Length fromMm(double mm) {
    return model::Length::fromMillionths(static_cast<std::int64_t>(std::llround(mm * 1e6)));
}

/// `other` as seen from `own`; on a round surface the nearest of its appearances.
model::Placement relative(const model::SurfacePlace& own, const model::SurfacePlace& other) {
    const double turn = own.placement.angle.approximately() * std::numbers::pi / 180;
    double dx = (other.placement.x - own.placement.x).approximately();
    const double dy = (other.placement.y - own.placement.y).approximately();
    if (own.period) {
        const double period = own.period->approximately();
        const double between = dx + (other.width - own.width).approximately() / 2;
        dx -= std::round(between / period) * period;
    }
    return {fromMm(dx * std::cos(turn) + dy * std::sin(turn)),
            fromMm(-dx * std::sin(turn) + dy * std::cos(turn)),
            other.placement.angle - own.placement.angle};
}

QTransform transformOf(const model::Placement& placement) {
    QTransform transform;
    transform.translate(placement.x.approximately(), placement.y.approximately());
    transform.rotate(placement.angle.approximately());
    return transform;
}

class Builder {
public:
    Builder(const CastingEditor& editor, int examination, const LiveVerdict* live)
        : editor_(editor), file_(editor.file()), shown_(examination), live_(live) {}

    SurfacePicture build() {
        const auto& header = editor_.draft(shown_).header;
        const Size size = sizeOf(file_, header);
        picture_.zone = {qt(header.zone), QTransform(), size.width, size.height};
        addIndications(shown_, model::Placement{}, QString());
        addPending();
        if (header.surface) addNeighbours(*header.surface);
        addGroups();
        return std::move(picture_);
    }

private:
    [[nodiscard]] const model::ExaminationVerdict* verdictOf(int examination) const {
        if (!live_ || static_cast<std::size_t>(examination) >= live_->examinations.size()) {
            return nullptr;
        }
        const auto& verdict = live_->examinations[static_cast<std::size_t>(examination)].verdict;
        return verdict ? &*verdict : nullptr;
    }

    void addIndications(int examination, const model::Placement& at, const QString& prefix) {
        std::map<std::string, bool> considered;
        if (const auto* verdict = verdictOf(examination)) {
            for (const auto& judged : verdict->indications) {
                considered[judged.id] = judged.considered;
            }
        }
        const auto add = [&](int row, const auto& value, std::optional<model::Length> length) {
            PictureIndication shown;
            shown.label = prefix + qt(value.id);
            // Without a width a segment, without a length a point.
            const auto width = length ? value.width : std::nullopt;
            shown.capsule = model::makeCapsule(value.x, value.y, length.value_or(model::Length()),
                                               width.value_or(model::Length()), value.angle, at);
            shown.row = examination == shown_ ? row : -1;
            const auto known = considered.find(value.id);
            shown.considered = value.relevance == model::Relevance::Relevant &&
                               (known == considered.end() || known->second);
            picture_.byName[shown.label] = {static_cast<int>(picture_.indications.size())};
            picture_.indications.push_back(std::move(shown));
        };
        const auto& draft = editor_.draft(examination);
        for (int row = 0; row < static_cast<int>(draft.rows.size()); ++row) {
            const auto& value = editor_.reading(examination, row).value;
            if (value) add(row, *value, value->length);
        }
        for (int row = 0; row < static_cast<int>(draft.reflectors.size()); ++row) {
            const auto& value = editor_.reflector(examination, row).value;
            if (value) add(row, *value, value->length);
        }
    }

    void addPending() {
        const auto add = [&](std::size_t row, std::optional<model::Length> x,
                             std::optional<model::Length> y) {
            if (!x || !y) return;
            picture_.pending.push_back(
                {static_cast<int>(row), x->approximately(), y->approximately()});
        };
        const auto& draft = editor_.draft(shown_);
        for (std::size_t i = 0; i < draft.rows.size(); ++i) {
            const auto& row = draft.rows[i];
            if (editor_.reading(shown_, static_cast<int>(i)).value || model::isBlank(row)) continue;
            const auto fields = model::exactFields(row);
            add(i, fields.x, fields.y);
        }
        for (std::size_t i = 0; i < draft.reflectors.size(); ++i) {
            const auto& row = draft.reflectors[i];
            if (editor_.reflector(shown_, static_cast<int>(i)).value || model::isBlank(row)) {
                continue;
            }
            const auto exact = [&](const std::string& text) -> std::optional<model::Length> {
                const auto read = model::parseLength(text, row.unit);
                return read ? std::optional(read->value) : std::nullopt;
            };
            add(i, exact(row.x), exact(row.y));
        }
    }

    void addNeighbours(const model::SurfacePlace& own) {
        const auto& header = editor_.draft(shown_).header;
        for (const auto& zone : file_.plan.zones) {
            if (zone.name == header.zone || !zone.surface || zone.surface->id != own.id) continue;
            const auto at = relative(own, *zone.surface);
            picture_.neighbours.push_back({qt(zone.name), transformOf(at),
                                           zone.surface->width.approximately(),
                                           zone.surface->height.approximately()});
            if (const int other = judgedWith(zone.name); other >= 0) {
                addIndications(other, at, qt(zone.name) + "/");
            }
        }
    }

    /// The latest examination of a zone that is judged together with the shown one.
    [[nodiscard]] int judgedWith(const std::string& zone) const {
        const auto& header = editor_.draft(shown_).header;
        int found = -1;
        for (int i = 0; i < editor_.examinations(); ++i) {
            const auto& other = editor_.draft(i).header;
            if (other.zone == zone && other.method == header.method &&
                other.stage == header.stage && other.table == header.table) {
                if (found < 0 || editor_.draft(found).header.repairCycle <= other.repairCycle) {
                    found = i;
                }
            }
        }
        return found;
    }

    void addGroups() {
        const auto* verdict = verdictOf(shown_);
        if (!verdict) return;
        for (const auto& group : verdict->groups) {
            PictureGroup shown{qt(group.id), {}};
            for (const auto& member : group.members) {
                const auto found = picture_.byName.find(qt(member));
                if (found != picture_.byName.end()) shown.members.push_back(found->second.front());
            }
            picture_.byName[shown.id] = shown.members;
            picture_.groups.push_back(std::move(shown));
        }
    }

    const CastingEditor& editor_;
    const model::CastingFile& file_;
    int shown_;
    const LiveVerdict* live_;
    SurfacePicture picture_;
};

}  // namespace

SurfacePicture pictureOf(const CastingEditor& editor, int examination, const LiveVerdict* live) {
    return Builder(editor, examination, live).build();
}

}  // namespace app
