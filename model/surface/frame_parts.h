// SPDX-License-Identifier: Apache-2.0
// What the frame search works on: the capsules of all items in one flat list.
#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "surface/frame.h"
#include "surface/frame_search.h"

namespace model {

/// One capsule of an item, in one cache line. Lengths in mm.
struct FramePart {
    double x = 0;  ///< centre
    double y = 0;
    double alongX = 0;  ///< from the centre to one end of the segment
    double alongY = 0;
    double half = 0;  ///< length of (alongX, alongY)
    double radius = 0;
    std::int64_t weight = 0;  ///< of the whole item
    std::uint32_t item = 0;   ///< index of the item; the parts of an item are neighbours
    std::uint32_t own = 0;    ///< 1: a part of an own item; 0: of a foreign one

    static constexpr std::uint32_t kNoItem = 0xFFFF'FFFF;  ///< as `item`: left out of every search

    /// No point of the part is further from its centre.
    [[nodiscard]] double extent() const { return half + radius; }
};
static_assert(sizeof(FramePart) <= 64);

FramePart makeFramePart(const Capsule& capsule, std::int64_t weight, std::uint32_t item, bool own);

/// The parts of all items, in the order of the items.
std::vector<FramePart> flattened(std::span<const FrameItem> items);

/// `parts` as a frame whose centre lies in 0 <= x <= period meets them: each part at every place
/// x + k period that such a frame can touch. An item's images are more parts of that item.
std::vector<FramePart> unrolled(std::span<const FramePart> parts, const FrameShape& shape,
                                double period);

}  // namespace model
