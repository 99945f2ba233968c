// SPDX-License-Identifier: Apache-2.0
#include "judge/framing.h"

#include <algorithm>
#include <cmath>

#include "surface/bounding_box.h"

namespace model {
namespace {

std::vector<Capsule> partsOf(const ZoneView& view, const Counted& item) {
    if (item.group) return view.grouped->groups[*item.group].unrolled;
    return {view.bundle->findings[item.finding].capsule};
}

/// What a frame that touches something own can reach, ready for the search.
class Reachable {
public:
    Reachable(const ZoneView& view, const std::vector<Counted>& counted, const FrameShape& shape) {
        std::vector<BoundingBox> boxes;
        BoundingBox own;
        parts_.reserve(counted.size());
        for (const Counted& item : counted) {
            parts_.push_back(partsOf(view, item));
            BoundingBox box;
            for (const Capsule& part : parts_.back()) box.add(part);
            if (item.own)
                for (const Capsule& part : parts_.back()) own.add(part);
            boxes.push_back(box);
        }
        const Real width = shape.width.approximately();
        const Real diagonal =
            shape.circle ? width
                         : std::hypot(width, static_cast<Real>(shape.height.approximately()));
        for (std::size_t i = 0; i < counted.size(); ++i) {
            // Round surfaces are left to the search, which knows the images.
            if (!view.bundle->period && !own.isNear(boxes[i], diagonal + 1)) continue;
            items.push_back({parts_[i], *counted[i].weight, counted[i].own});
            indices.push_back(i);
            sum += *counted[i].weight;
            hasOwn = hasOwn || counted[i].own;
        }
    }

    std::vector<FrameItem> items;
    std::vector<std::size_t> indices;  // into what was counted
    std::int64_t sum = 0;
    bool hasOwn = false;

private:
    std::vector<std::vector<Capsule>> parts_;
};

/// The frame in the coordinates of the zone; on a round surface the image next to the zone.
CheckFrame inZone(const ZoneView& view, const FoundFrame& found, const FrameShape& shape) {
    const Placement placement = placementOf(view.examination());
    const Direction turn = directionOf(placement.angle);
    Real dx = found.x - millimetresOf(placement.x);
    const Real dy = found.y - millimetresOf(placement.y);
    if (view.bundle->period) {
        const SurfacePlace& place = *view.examination().surface;
        const Real period = millimetresOf(*view.bundle->period);
        const Real middle = (static_cast<Real>(place.width.approximately()) * turn.x -
                             static_cast<Real>(place.height.approximately()) * turn.y) /
                            2;
        dx -= period * std::round((dx - middle) / period);
    }
    CheckFrame frame;
    frame.shape = shape;
    frame.x = static_cast<double>(turn.x * dx + turn.y * dy);
    frame.y = static_cast<double>(turn.x * dy - turn.y * dx);
    if (!shape.circle) {
        Real angle = std::fmod(
            found.angleDegrees - static_cast<Real>(placement.angle.millionths()) / 1e6L, 180.0L);
        if (angle < 0) angle += 180;
        frame.angleDegrees = static_cast<double>(angle);
    }
    return frame;
}

}  // namespace

std::optional<WorstFrame> worstFrameOf(const ZoneView& view, const std::vector<Counted>& counted,
                                       const FrameShape& shape) {
    const Reachable reachable(view, counted, shape);
    if (!reachable.hasOwn) return std::nullopt;
    const auto found = worstFrame(reachable.items, shape, view.bundle->period);
    if (!found) return std::nullopt;
    WorstFrame worst;
    worst.value = found->value;
    for (const std::size_t item : found->counted) worst.counted.push_back(reachable.indices[item]);
    worst.frame = inZone(view, *found, shape);
    return worst;
}

bool someFrameExceeds(const ZoneView& view, const std::vector<Counted>& counted,
                      const FrameShape& shape, std::int64_t limit) {
    const Reachable reachable(view, counted, shape);
    if (!reachable.hasOwn || reachable.sum <= limit) return false;
    return worstFrameExceeds(reachable.items, shape, limit, view.bundle->period);
}

}  // namespace model
