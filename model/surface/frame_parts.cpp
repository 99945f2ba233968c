// SPDX-License-Identifier: Apache-2.0
#include "surface/frame_parts.h"

#include <cmath>

namespace model {

FramePart makeFramePart(const Capsule& capsule, std::int64_t weight, std::uint32_t item, bool own) {
    FramePart part;
    part.x = static_cast<double>(capsule.x);
    part.y = static_cast<double>(capsule.y);
    part.alongX = static_cast<double>(capsule.half * capsule.along.x);
    part.alongY = static_cast<double>(capsule.half * capsule.along.y);
    part.half = std::hypot(part.alongX, part.alongY);
    part.radius = static_cast<double>(capsule.radius);
    part.weight = weight;
    part.item = item;
    part.own = own ? 1 : 0;
    return part;
}

std::vector<FramePart> flattened(std::span<const FrameItem> items) {
    std::vector<FramePart> parts;
    parts.reserve(items.size());
    for (std::uint32_t index = 0; index < items.size(); ++index)
        for (const Capsule& capsule : items[index].parts)
            parts.push_back(makeFramePart(capsule, items[index].weight, index, items[index].own));
    return parts;
}

std::vector<FramePart> unrolled(std::span<const FramePart> parts, const FrameShape& shape,
                                double period) {
    const double frameReach =
        1 + (shape.circle
                 ? shape.width.approximately() / 2
                 : std::hypot(shape.width.approximately(), shape.height.approximately()) / 2);
    std::vector<FramePart> images;
    images.reserve(parts.size() * 2);
    for (const FramePart& part : parts) {
        const double reach = frameReach + part.extent();
        const double first = std::ceil((-reach - part.x) / period);
        for (double image = first; part.x + image * period <= period + reach; ++image) {
            images.push_back(part);
            images.back().x = part.x + image * period;
        }
    }
    return images;
}

}  // namespace model
