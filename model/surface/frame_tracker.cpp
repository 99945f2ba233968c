// SPDX-License-Identifier: Apache-2.0
#include "surface/frame_tracker.h"

#include <algorithm>
#include <cassert>
#include <cmath>

#include "surface/frame_descent.h"

namespace model {
namespace {

// So many searches around one item each still cost less than one over the whole surface.
constexpr std::size_t kMostPending = 4;

bool itemBefore(const FramePart& part, std::size_t item) {
    return part.item < item;
}
bool itemAfter(std::size_t item, const FramePart& part) {
    return item < part.item;
}

}  // namespace

FrameTracker::FrameTracker(const FrameShape& shape, Period period)
    : shape_(shape), period_(period) {}

std::size_t FrameTracker::add(std::span<const Capsule> parts, std::int64_t weight, bool own) {
    insert(nextItem_, parts, weight, own);
    return nextItem_++;
}

void FrameTracker::replace(std::size_t item, std::span<const Capsule> parts, std::int64_t weight,
                           bool own) {
    erase(item);
    insert(item, parts, weight, own);
}

void FrameTracker::remove(std::size_t item) {
    erase(item);
}

bool FrameTracker::exceeds(std::int64_t limit) {
    if (known_ && known_->value > limit) return true;
    if (limit >= overall_) return false;
    // Where the limit is not below the ceiling, only frames at what was edited can be above it.
    const bool onlyPending = limit >= ceiling_;
    auto found = onlyPending ? searchAtPending(limit, true) : search(limit, true, std::nullopt);
    if (found) {
        known_ = std::move(found);
        return true;
    }
    overall_ = limit;
    if (!onlyPending) {
        ceiling_ = limit;
        pending_.clear();
    }
    return false;
}

std::optional<FoundFrame> FrameTracker::worst() {
    if (floor() < overall_) {
        auto found = floor() >= ceiling_ ? searchAtPending(floor(), false)
                                         : search(floor(), false, std::nullopt);
        if (found) known_ = std::move(found);
        overall_ = floor();
    }
    ceiling_ = floor();
    pending_.clear();
    return known_;
}

std::pair<FrameTracker::Parts::iterator, FrameTracker::Parts::iterator> FrameTracker::partsOf(
    std::size_t item) {
    const auto first = std::lower_bound(parts_.begin(), parts_.end(), item, itemBefore);
    return {first, std::upper_bound(first, parts_.end(), item, itemAfter)};
}

void FrameTracker::insert(std::size_t item, std::span<const Capsule> parts, std::int64_t weight,
                          bool own) {
    Parts added;
    added.reserve(parts.size());
    for (const Capsule& part : parts)
        added.push_back(makeFramePart(part, weight, static_cast<std::uint32_t>(item), own));
    enterInKnownFrame(item, added);
    parts_.insert(partsOf(item).first, added.begin(), added.end());
    if (!own) ++foreignItems_;
    pending_.push_back(item);
    // A new own item may bring frames into the judgement that touched only foreign items before.
    const bool bounded = overall_ != kUnbounded && (!own || foreignItems_ == 0);
    overall_ = bounded ? std::max<std::int64_t>(overall_, 0) + weight : kUnbounded;
    if (pending_.size() > kMostPending) {
        pending_.clear();
        ceiling_ = overall_;
    }
}

// Without an item no frame counts more than before, so what bounded the values still does.
void FrameTracker::erase(std::size_t item) {
    const auto [first, last] = partsOf(item);
    assert(first != last);
    const std::int64_t weight = first->weight;
    const bool own = (first->flags & kOwnFlag) != 0;
    parts_.erase(first, last);
    if (!own) --foreignItems_;
    std::erase(pending_, item);
    leaveKnownFrame(item, weight, own);
}

void FrameTracker::enterInKnownFrame(std::size_t item, std::span<const FramePart> parts) {
    if (!known_) return;
    const double angle = static_cast<double>(known_->angleDegrees) * std::numbers::pi / 180;
    const FramePose pose{static_cast<double>(known_->x), static_cast<double>(known_->y),
                         std::cos(angle), std::sin(angle)};
    const FrameSize size(shape_);
    const auto touched = [&](std::span<const FramePart> images) {
        return std::ranges::any_of(
            images, [&](const FramePart& part) { return touches(size, pose, part); });
    };
    if (!touched(period_ ? unrolled(parts, shape_, period_->approximately())
                         : Parts(parts.begin(), parts.end())))
        return;
    known_->value += parts.front().weight;
    known_->counted.insert(std::ranges::lower_bound(known_->counted, item), item);
}

void FrameTracker::leaveKnownFrame(std::size_t item, std::int64_t weight, bool own) {
    if (!known_) return;
    const auto at = std::ranges::lower_bound(known_->counted, item);
    if (at == known_->counted.end() || *at != item) return;
    known_->counted.erase(at);
    known_->value -= weight;
    const bool judged = !own || std::ranges::any_of(known_->counted, [&](std::size_t counted) {
        return (partsOf(counted).first->flags & kOwnFlag) != 0;
    });
    if (!judged) known_.reset();
}

std::optional<FoundFrame> FrameTracker::search(std::int64_t floor, bool anyAbove,
                                               std::optional<std::size_t> anchor) const {
    std::uint32_t required = kOwnFlag;
    std::optional<double> period;
    Parts parts = parts_;
    if (anchor) {
        required |= kAnchorFlag;
        for (FramePart& part : parts)
            if (part.item == *anchor) part.flags |= kAnchorFlag;
    }
    if (period_) {
        period = period_->approximately();
        parts = unrolled(parts, shape_, *period);
    }
    return FrameDescent(parts, FrameSize(shape_), required, period).above(floor, anyAbove);
}

std::optional<FoundFrame> FrameTracker::searchAtPending(std::int64_t floor, bool anyAbove) {
    std::optional<FoundFrame> best;
    for (const std::size_t item : pending_) {
        auto found = search(best ? best->value : floor, anyAbove, item);
        if (!found) continue;
        best = std::move(found);
        if (anyAbove) break;
    }
    return best;
}

}  // namespace model
