// SPDX-License-Identifier: Apache-2.0
// The most unfavourable frame of items that are edited one at a time.
#pragma once

#include <limits>

#include "surface/frame_frontier.h"

namespace model {

/// Holds items for one shape of frame, and what is known of their worst frame. Every answer is the
/// one that a fresh worstFrame() would give (the value; of several frames of that value it may
/// name another): FrameDescent's value is a property of the items alone, and the search goes on
/// from where the last one stopped (FrameFrontier).
class FrameTracker {
public:
    explicit FrameTracker(const FrameShape& shape, Period period = std::nullopt);

    /// Adds an item (parts not empty, weight >= 0, as in FrameItem) and returns its number, by
    /// which `counted` of the answers names it. Numbers ascend and are not used again.
    std::size_t add(std::span<const Capsule> parts, std::int64_t weight = 1, bool own = true);
    /// Puts the item of that number in another place, shape or weight. The number must be held.
    void replace(std::size_t item, std::span<const Capsule> parts, std::int64_t weight = 1,
                 bool own = true);
    /// Takes the item of that number away. The number must be held.
    void remove(std::size_t item);

    /// Whether the worst frame's value is above `limit`.
    bool exceeds(std::int64_t limit);
    /// The worst frame; nothing if no item is own.
    std::optional<FoundFrame> worst();

    /// Memory held for the parts, and beside them for going on with a search.
    [[nodiscard]] std::size_t partBytes() const { return parts_.capacity() * sizeof(FramePart); }
    [[nodiscard]] std::size_t keptBytes() const { return frontier_.bytes(); }

private:
    using Places = std::vector<std::uint32_t>;

    [[nodiscard]] Places placesOf(std::size_t item) const;
    void insert(std::size_t item, std::span<const Capsule> parts, std::int64_t weight, bool own);
    void erase(std::size_t item);
    void closeGaps();
    void enterInKnownFrame(const Places& item);
    void leaveKnownFrame(const Places& item);
    [[nodiscard]] FrameBounder bounder() const;
    bool search(bool anyAbove, std::int64_t floor);
    [[nodiscard]] std::int64_t floor() const { return known_ ? known_->value : kBelowAnyValue; }

    static constexpr std::int64_t kBelowAnyValue = -1;
    static constexpr std::int64_t kUnbounded = std::numeric_limits<std::int64_t>::max();

    FrameShape shape_;
    FrameSize size_;
    std::optional<double> period_;  ///< mm
    std::vector<FramePart> parts_;  ///< with all their images; those of one item are neighbours
    std::size_t gaps_ = 0;          ///< places in parts_ that no item holds any more
    std::size_t nextItem_ = 0;
    std::size_t foreignItems_ = 0;

    // What is known: no value is above overall_, and known_ is reached.
    std::optional<FoundFrame> known_;
    std::int64_t overall_ = kBelowAnyValue;
    FrameFrontier frontier_;
    std::size_t boxesAtFirst_ = 0;  ///< in the frontier, when the search began with the surface
};

}  // namespace model
