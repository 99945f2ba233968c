// SPDX-License-Identifier: Apache-2.0
// Where a search of frames stopped, kept so that it can go on after an edit.
#pragma once

#include <cstdint>
#include <limits>
#include <optional>
#include <span>
#include <vector>

#include "surface/frame_bound.h"
#include "surface/frame_lists.h"

namespace model {

/// A box of frames at which the search stopped.
struct KeptBox {
    FrameNode node;                   ///< node.first means nothing
    std::vector<std::uint32_t> list;  ///< node's list, ascending
    bool listed = false;              ///< else list, sure, sureOwn and count are not known
    bool loose = false;               ///< an edit changed it since it was bounded
};

/// Boxes that do not overlap and together hold every frame that can touch an own item, each with a
/// bound. Whatever the limit, only frames in boxes with a greater bound can exceed it: a search
/// that goes on from these finds what one over the whole surface would.
///
/// Why this stays true. Let F(c) be what the middle c of a finest box counts (FrameDescent).
///  - An item that enters adds its weight to F at the most of those c whose box it may touch; one
///    that leaves adds to none. So raising the bounds of the boxes that the entering item may touch
///    by its weight keeps them bounds, and an item that every frame of a box touches takes its
///    weight from that box's bound as it leaves.
///  - A box's list and `sure` remain what bounding it from scratch may give. An entering item is
///    sorted into the box by the same FrameBounder. A leaving one is struck off the list; where it
///    is not listed, it was counted as sure or is touched by no frame of the box. Both are asked of
///    the box itself: "all touch it" excludes the second, "none can" the first; where neither is
///    certain, list and `sure` are given up and bounded anew when the box is next opened.
///  - Frames outside all boxes touch no own item. An own item that reaches past them would end
///    this; then nothing is kept and the next search is one over the whole surface.
///
/// Only boxes whose bound comes near the best value keep their list; the others, if they are ever
/// opened again, are bounded from all parts. Both are limited in number, so that the memory is; a
/// search that stops at more boxes keeps none, and the next begins with the whole surface:
/// kMostBoxes boxes of about 200 bytes and kMostEntries list entries of 4 bytes.
class FrameFrontier {
public:
    static constexpr std::size_t kMostBoxes = 100'000;
    static constexpr std::size_t kMostEntries = 2'000'000;

    /// Whether boxes are kept; if not, a search must begin with the whole surface.
    [[nodiscard]] bool isKept() const { return kept_; }
    [[nodiscard]] std::size_t size() const { return boxes_.size(); }
    [[nodiscard]] std::size_t bytes() const;
    void clear();

    // --- Edits. `item` holds the places of all parts of one item, ascending.
    /// An item that has just entered. `reach`: no point of a frame is further from its centre.
    void enter(FrameBounder& bounder, std::span<const FramePart> parts,
               std::span<const std::uint32_t> item, double reach);
    /// An item that is about to leave.
    void leave(FrameBounder& bounder, std::span<const std::uint32_t> item);
    /// Part number n is now newPlaces[n]; the order remains.
    void renumber(std::span<const std::uint32_t> newPlaces);

    // --- A search, from begin() to end().
    /// Boxes from now on put() replace those that take() hands out, or all if nothing is kept.
    /// Lists are kept where the bound is less than `margin` below the best value at that time.
    void begin(std::int64_t margin);
    /// The next box whose bound is above `floor`, until there is none: nullptr.
    const KeptBox* take(std::int64_t floor);
    /// How many boxes above `floor` have no list.
    [[nodiscard]] std::size_t unlistedAbove(std::int64_t floor) const;
    void put(const FrameNode& node, const std::uint32_t* list, std::int64_t best);
    /// The rectangle that holds the centres of all frames of the boxes put.
    void setArea(double left, double right, double bottom, double top,
                 std::optional<double> period);
    /// `complete`: all that was taken has been put back, in whatever parts. Else nothing happened.
    void end(bool complete, std::int64_t best);

private:
    static bool above(const KeptBox& box, std::int64_t floor) {
        return box.node.judged && box.node.bound > floor;
    }
    [[nodiscard]] bool covers(const FramePart& part, double reach) const;
    FrameNode touched(FrameBounder& bounder, const FrameBox& box,
                      std::span<const std::uint32_t> item);
    void giveUpList(KeptBox& box);

    std::vector<KeptBox> boxes_;
    bool kept_ = false;
    std::size_t entries_ = 0;
    struct Area {  // without boxes it holds nothing
        double left = std::numeric_limits<double>::infinity(), right = -left;
        double bottom = left, top = right;
    };
    Area area_;
    std::optional<double> period_;

    // During a search.
    std::vector<std::size_t> taken_;
    std::size_t next_ = 0;
    std::size_t before_ = 0;  ///< boxes that were kept at its begin
    std::size_t entriesBefore_ = 0;
    std::int64_t margin_ = 0;
    bool tooMany_ = false;

    std::vector<std::uint32_t> list_;  ///< work space of touched()
};

}  // namespace model
