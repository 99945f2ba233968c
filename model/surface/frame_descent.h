// SPDX-License-Identifier: Apache-2.0
// The search itself: halving boxes of frames until none can hold a better one.
#pragma once

#include <array>
#include <limits>

#include "surface/frame_bound.h"
#include "surface/frame_frontier.h"
#include "surface/frame_lists.h"

namespace model {

/// Searches the frames that touch an own item.
///
/// What is found. Let F(c) be the weight of all items that the frame c, enlarged on each side by
/// the tolerance of FinestBox, touches, and let the value V be the greatest F over the middles c of
/// all finest boxes whose F touches an own item.
///  - Every frame of the true size lies in some finest box, hence within the enlarged middle of
///    it: none counts more than V. And V is reached by a frame enlarged by less than 0.01 mm.
///  - The finest boxes form a lattice at whole multiples of fixed steps from (0, 0) and 0 degrees.
///    It depends on the size of the frame alone, not on the items, nor on the way of the search.
///    So V is a property of the items, and any two searches agree on it to the nanometre: that
///    for the worst frame, that which only asks whether a limit is exceeded, and that which
///    continues an earlier one after an edit (FrameTracker).
///  - The search halves boxes. FrameBounder gives for each a bound that no F of a finest box within
///    exceeds: a part that it drops is touched by no enlarged middle within the box, a part that it
///    counts as sure by every frame within, with margins (1e-6 mm) above the rounding of doubles.
///    A box is left when its bound does not exceed the best value known. Best values come from
///    middles of finest boxes, and from any frame c' of the true size met on the way: its value is
///    at most F of its finest box, so at most V. When no box is left, the best value is V.
class FrameDescent {
public:
    FrameDescent(std::span<const FramePart> parts, const FrameSize& size,
                 std::optional<double> period);

    /// A frame of value V where V > floor; nothing where V <= floor, or where no frame touches an
    /// own item. With `anyAbove` the first frame found above floor instead. With a `frontier`, goes
    /// on from the boxes kept there, and keeps there where it stops.
    std::optional<FoundFrame> above(std::int64_t floor, bool anyAbove,
                                    FrameFrontier* frontier = nullptr);

    /// Boxes bounded and parts looked at so far: what the search cost.
    [[nodiscard]] std::uint64_t boxes() const { return boxes_; }
    [[nodiscard]] std::uint64_t looks() const { return looks_; }

    /// Memory held beside the parts.
    [[nodiscard]] std::size_t workspaceBytes() const {
        return bounder_.workspaceBytes() + open_.capacity() * sizeof(FrameNode) + lists_.bytes();
    }

private:
    using Children = std::array<FrameNode, 8>;

    [[nodiscard]] FrameNode everything();
    void openRoots();
    void openKept();
    void follow();
    void keep(const FrameNode& node);
    bool isFinest(const FrameBox& box) const;
    bool isCoarse(const FrameBox& box) const;
    bool splitsSector(const FrameBox& box) const;
    std::size_t split(const FrameNode& node, Children& children);
    void descend(const FrameNode& node);
    struct Counted {
        std::int64_t value;
        bool judged;
    };
    Counted judge(const FrameNode& node, const FramePose& pose, double angle, bool finest);
    void judgeLikely(const FrameNode& node);
    [[nodiscard]] FoundFrame foundFrame() const;

    std::span<const FramePart> parts_;
    FrameSize size_;
    FinestBox finest_;
    FrameSize enlarged_;
    std::optional<double> period_;
    FrameBounder bounder_;
    int coarsestLevel_ = 0;  ///< squares above are split at every angle together

    std::vector<FrameNode> open_;  ///< a heap, the greatest bound first
    FrameLists lists_;             ///< of all nodes at hand

    std::int64_t best_ = 0;
    bool anyAbove_ = false;
    FrameFrontier* frontier_ = nullptr;
    bool done_ = false;
    struct Best {
        FramePose pose;
        double angle;
        bool finest;
    };
    std::optional<Best> bestFrame_;
    std::uint64_t boxes_ = 0;
    std::uint64_t looks_ = 0;
};

}  // namespace model
