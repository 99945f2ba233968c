// SPDX-License-Identifier: Apache-2.0
// The most that any frame of a box can count.
#pragma once

#include <cstdint>
#include <limits>
#include <span>
#include <vector>

#include "surface/frame_axes.h"
#include "surface/frame_box.h"

namespace model {

/// A box and what is known of it. The parts that some, but perhaps not all of its frames touch
/// stand in a list beside it: list[first] to list[first + count - 1].
struct FrameNode {
    FrameBox box;
    std::int64_t bound = 0;     ///< no finest box within counts more
    std::int64_t sure = 0;      ///< weight of the items that every frame of the box touches
    std::uint32_t sureOwn = 0;  ///< how many of those items are own
    std::uint32_t count = 0;
    std::size_t first = 0;
    bool judged = false;  ///< some frame of the box may touch an own item
    double alongWidth =
        0;  ///< from the middle to where a frame seems to count most, along its sides
    double alongHeight = 0;
};

/// Bounds boxes over one list of parts and one size of frame.
class FrameBounder {
public:
    FrameBounder(std::span<const FramePart> parts, const FrameSize& size, double tolerance);

    /// Fills bound, sure, sureOwn, count, judged and the likely best place of `child`, a part of
    /// `parent` (or all of it) with the parent's list `from`, and writes the child's list to `to`
    /// (room for all of `from`). Returns whether a judged frame of the child may exceed `floor`; if
    /// not, the likely place is not sought, and the bound may be a coarser one.
    bool bound(const FrameNode& parent, const std::uint32_t* from, std::int64_t floor,
               FrameNode& child, std::uint32_t* to);

    [[nodiscard]] std::size_t workspaceBytes() const {
        return shifts_.capacity() * sizeof(Shifts) + isSure_.capacity();
    }

private:
    void sortOutByDistance(const FrameNode& parent, const std::uint32_t* from, FrameNode& child,
                           std::uint32_t* to);
    void sortOutAtAnyAngle(const FrameNode& parent, const std::uint32_t* from, FrameNode& child,
                           std::uint32_t* to);
    void sortOutBySides(const FrameNode& parent, const std::uint32_t* from, FrameNode& child,
                        std::uint32_t* to);
    void mergeItems(FrameNode& child, std::uint32_t* to);
    std::int64_t mostAlongSides(FrameNode& child, const std::uint32_t* list);

    std::span<const FramePart> parts_;
    FrameSize size_;
    FrameSize outer_;  ///< enlarged by the tolerance and what rounding may cost
    double outerReach_;
    bool severalParts_ = false;  ///< of any item

    // Of the child being bounded.
    std::int64_t maybe_ = 0;  ///< weight of the items in its list
    std::uint32_t maybeOwn_ = 0;
    struct Shifts {  ///< of a frame along its sides, for which a part in the list may count
        Axes from, to;
    };
    std::vector<Shifts> shifts_;
    std::vector<std::uint8_t> isSure_;  ///< only where items have several parts
};

}  // namespace model
