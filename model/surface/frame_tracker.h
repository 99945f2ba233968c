// SPDX-License-Identifier: Apache-2.0
// The most unfavourable frame of items that are edited one at a time.
#pragma once

#include <limits>

#include "surface/frame_parts.h"

namespace model {

/// Holds items for one shape of frame, and what is known of their worst frame. Every answer is the
/// one that a fresh worstFrame() would give (the value; of several frames of that value it may
/// name another): FrameDescent's value is a property of the items alone.
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

private:
    using Parts = std::vector<FramePart>;

    [[nodiscard]] std::pair<Parts::iterator, Parts::iterator> partsOf(std::size_t item);
    void insert(std::size_t item, std::span<const Capsule> parts, std::int64_t weight, bool own);
    void erase(std::size_t item);
    void enterInKnownFrame(std::size_t item, std::span<const FramePart> parts);
    void leaveKnownFrame(std::size_t item, std::int64_t weight, bool own);
    [[nodiscard]] std::optional<FoundFrame> search(std::int64_t floor, bool anyAbove,
                                                   std::optional<std::size_t> anchor) const;
    std::optional<FoundFrame> searchAtPending(std::int64_t floor, bool anyAbove);
    [[nodiscard]] std::int64_t floor() const { return known_ ? known_->value : kBelowAnyValue; }

    static constexpr std::int64_t kBelowAnyValue = -1;
    static constexpr std::int64_t kUnbounded = std::numeric_limits<std::int64_t>::max();

    FrameShape shape_;
    Period period_;
    Parts parts_;  ///< ascending by item
    std::size_t nextItem_ = 0;
    std::size_t foreignItems_ = 0;

    // What is known. No value is above ceiling_ once the frames that touch a pending item are left
    // out, none at all is above overall_, and known_ is reached.
    std::optional<FoundFrame> known_;
    std::vector<std::size_t> pending_;
    std::int64_t ceiling_ = kBelowAnyValue;
    std::int64_t overall_ = kBelowAnyValue;
};

}  // namespace model
