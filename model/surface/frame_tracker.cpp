// SPDX-License-Identifier: Apache-2.0
#include "surface/frame_tracker.h"

#include <algorithm>
#include <cassert>
#include <cmath>

#include "surface/frame_descent.h"

namespace model {
namespace {

// Edits cut the kept boxes up. Once there are this many times as many, beginning anew is cheaper.
constexpr std::size_t kMostGrowth = 3;
constexpr std::size_t kFewBoxes = 2000;

constexpr std::size_t kFewGaps = 64;

}  // namespace

FrameTracker::FrameTracker(const FrameShape& shape, Period period) : shape_(shape), size_(shape) {
    if (period) period_ = period->approximately();
}

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
    if (search(true, limit)) return true;
    overall_ = limit;
    return false;
}

std::optional<FoundFrame> FrameTracker::worst() {
    if (floor() < overall_) {
        if (frontier_.size() > kMostGrowth * boxesAtFirst_ + kFewBoxes) frontier_.clear();
        search(false, floor());
        overall_ = floor();
    }
    return known_;
}

FrameTracker::Places FrameTracker::placesOf(std::size_t item) const {
    Places places;
    const auto first = std::ranges::find(parts_, item, &FramePart::item);
    for (auto at = first; at != parts_.end() && at->item == item; ++at)
        places.push_back(static_cast<std::uint32_t>(at - parts_.begin()));
    return places;
}

FrameBounder FrameTracker::bounder() const {
    return {parts_, size_, FinestBox(size_).tolerance};
}

void FrameTracker::insert(std::size_t item, std::span<const Capsule> parts, std::int64_t weight,
                          bool own) {
    assert(!parts.empty());
    std::vector<FramePart> added;
    added.reserve(parts.size());
    for (const Capsule& part : parts)
        added.push_back(makeFramePart(part, weight, static_cast<std::uint32_t>(item), own));
    if (period_) added = unrolled(added, shape_, *period_);
    parts_.insert(parts_.end(), added.begin(), added.end());
    if (!own) ++foreignItems_;
    // A new own item may bring frames into the judgement that touched only foreign items before.
    const bool bounded = overall_ != kUnbounded && (!own || foreignItems_ == 0);
    overall_ = bounded ? std::max<std::int64_t>(overall_, 0) + weight : kUnbounded;
    const Places places = placesOf(item);
    if (places.empty()) return;
    enterInKnownFrame(places);
    if (!frontier_.isKept()) return;
    FrameBounder sorting = bounder();
    frontier_.enter(sorting, parts_, places, size_.enlargedBy(kFrameToleranceMm).reach());
}

// Without an item no frame counts more than before, so what bounded the values still does.
void FrameTracker::erase(std::size_t item) {
    const Places places = placesOf(item);
    assert(!places.empty());
    if (frontier_.isKept()) {
        FrameBounder sorting = bounder();
        frontier_.leave(sorting, places);
    }
    leaveKnownFrame(places);
    if (parts_[places.front()].own == 0) --foreignItems_;
    for (const std::uint32_t place : places) parts_[place].item = FramePart::kNoItem;
    gaps_ += places.size();
    if (gaps_ > kFewGaps && gaps_ > parts_.size() / 4) closeGaps();
}

void FrameTracker::closeGaps() {
    Places newPlaces(parts_.size());
    std::uint32_t kept = 0;
    for (std::uint32_t place = 0; place < parts_.size(); ++place) {
        newPlaces[place] = kept;
        if (parts_[place].item != FramePart::kNoItem) parts_[kept++] = parts_[place];
    }
    parts_.resize(kept);
    gaps_ = 0;
    frontier_.renumber(newPlaces);
}

void FrameTracker::enterInKnownFrame(const Places& item) {
    if (!known_) return;
    const double angle = static_cast<double>(known_->angleDegrees) * std::numbers::pi / 180;
    const FramePose pose{static_cast<double>(known_->x), static_cast<double>(known_->y),
                         std::cos(angle), std::sin(angle)};
    if (!std::ranges::any_of(
            item, [&](std::uint32_t place) { return touches(size_, pose, parts_[place]); }))
        return;
    const FramePart& part = parts_[item.front()];
    known_->value += part.weight;
    known_->counted.insert(std::ranges::lower_bound(known_->counted, part.item), part.item);
}

void FrameTracker::leaveKnownFrame(const Places& item) {
    if (!known_) return;
    const FramePart& part = parts_[item.front()];
    const auto at = std::ranges::lower_bound(known_->counted, part.item);
    if (at == known_->counted.end() || *at != part.item) return;
    known_->counted.erase(at);
    known_->value -= part.weight;
    if (part.own == 0 || foreignItems_ == 0) {
        if (known_->counted.empty()) known_.reset();
        return;
    }
    const bool judged = std::ranges::any_of(known_->counted, [&](std::size_t counted) {
        return std::ranges::find(parts_, counted, &FramePart::item)->own != 0;
    });
    if (!judged) known_.reset();
}

// Enters what it finds as known.
bool FrameTracker::search(bool anyAbove, std::int64_t floor) {
    const bool anew = !frontier_.isKept();
    auto found = FrameDescent(parts_, size_, period_).above(floor, anyAbove, &frontier_);
    if (anew) boxesAtFirst_ = frontier_.size();
    if (!found) return false;
    known_ = std::move(found);
    return true;
}

}  // namespace model
