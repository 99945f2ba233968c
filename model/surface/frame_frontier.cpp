// SPDX-License-Identifier: Apache-2.0
#include "surface/frame_frontier.h"

#include <algorithm>
#include <cassert>
#include <limits>

namespace model {

std::size_t FrameFrontier::bytes() const {
    std::size_t bytes = boxes_.capacity() * sizeof(KeptBox);
    for (const KeptBox& box : boxes_) bytes += box.list.capacity() * sizeof(std::uint32_t);
    return bytes;
}

void FrameFrontier::clear() {
    boxes_ = {};
    kept_ = false;
    entries_ = 0;
    area_ = {};
}

bool FrameFrontier::covers(const FramePart& part, double reach) const {
    const double far = reach + part.extent();
    double left = part.x - far;
    double right = part.x + far;
    if (period_) {
        left = std::max(left, 0.0);
        right = std::min(right, *period_);
        if (left > right) return true;
    }
    return left >= area_.left && right <= area_.right && part.y - far >= area_.bottom &&
           part.y + far <= area_.top;
}

// As if the box were bounded with this item alone.
FrameNode FrameFrontier::touched(FrameBounder& bounder, const FrameBox& box,
                                 std::span<const std::uint32_t> item) {
    FrameNode all;
    all.count = static_cast<std::uint32_t>(item.size());
    FrameNode node;
    node.box = box;
    list_.resize(item.size());
    bounder.bound(all, item.data(), std::numeric_limits<std::int64_t>::max(), node, list_.data());
    return node;
}

void FrameFrontier::giveUpList(KeptBox& box) {
    entries_ -= box.list.size();
    box.list = {};
    box.listed = false;
}

void FrameFrontier::enter(FrameBounder& bounder, std::span<const FramePart> parts,
                          std::span<const std::uint32_t> item, double reach) {
    if (!kept_) return;
    const FramePart& first = parts[item.front()];
    if (first.own != 0 && !std::ranges::all_of(item, [&](std::uint32_t index) {
            return covers(parts[index], reach);
        })) {
        clear();
        return;
    }
    for (KeptBox& box : boxes_) {
        const FrameNode alone = touched(bounder, box.node.box, item);
        if (alone.count == 0 && alone.sure == 0 && alone.sureOwn == 0) continue;
        box.loose = true;
        box.node.bound += first.weight;
        box.node.judged = box.node.judged || first.own != 0;
        if (!box.listed) continue;
        box.node.sure += alone.sure;
        box.node.sureOwn += alone.sureOwn;
        box.list.insert(box.list.end(), list_.begin(), list_.begin() + alone.count);
        box.node.count += alone.count;
        entries_ += alone.count;
    }
}

void FrameFrontier::leave(FrameBounder& bounder, std::span<const std::uint32_t> item) {
    for (KeptBox& box : boxes_) {
        const auto from = std::ranges::lower_bound(box.list, item.front());
        const auto to = std::upper_bound(from, box.list.end(), item.back());
        if (from != to) {
            const auto struck = static_cast<std::uint32_t>(to - from);
            box.list.erase(from, to);
            box.node.count -= struck;
            entries_ -= struck;
            box.loose = true;
            continue;
        }
        const FrameNode alone = touched(bounder, box.node.box, item);
        if (alone.count > 0) {
            box.loose = true;
            if (box.listed) giveUpList(box);
            continue;
        }
        box.node.bound -= alone.sure;
        if (!box.listed) continue;
        box.node.sure -= alone.sure;
        box.node.sureOwn -= alone.sureOwn;
        box.loose = box.loose || alone.sureOwn > 0;
    }
}

void FrameFrontier::renumber(std::span<const std::uint32_t> newPlaces) {
    for (KeptBox& box : boxes_)
        for (std::uint32_t& index : box.list) index = newPlaces[index];
}

void FrameFrontier::begin(std::int64_t margin) {
    if (!kept_) clear();
    taken_.clear();
    next_ = 0;
    before_ = boxes_.size();
    entriesBefore_ = entries_;
    margin_ = margin;
    tooMany_ = false;
}

const KeptBox* FrameFrontier::take(std::int64_t floor) {
    while (next_ < before_) {
        const std::size_t index = next_++;
        if (!above(boxes_[index], floor)) continue;
        taken_.push_back(index);
        return &boxes_[index];
    }
    return nullptr;
}

std::size_t FrameFrontier::unlistedAbove(std::int64_t floor) const {
    return static_cast<std::size_t>(std::ranges::count_if(
        boxes_, [&](const KeptBox& box) { return !box.listed && above(box, floor); }));
}

void FrameFrontier::put(const FrameNode& node, const std::uint32_t* list, std::int64_t best) {
    tooMany_ = tooMany_ || boxes_.size() == before_ + kMostBoxes;
    if (tooMany_) return;
    KeptBox& box = boxes_.emplace_back();
    box.node = node;
    box.listed = node.bound > best - margin_ && entries_ + node.count <= kMostEntries;
    if (!box.listed) return;
    box.list.assign(list, list + node.count);
    entries_ += node.count;
}

void FrameFrontier::setArea(double left, double right, double bottom, double top,
                            std::optional<double> period) {
    area_ = {left, right, bottom, top};
    period_ = period;
}

void FrameFrontier::end(bool complete, std::int64_t best) {
    if (!complete) {
        boxes_.resize(before_);
        entries_ = entriesBefore_;
        return;
    }
    if (tooMany_) {
        clear();
        return;
    }
    // The last box fills the gap that a taken one leaves; from the back, so that it is not one.
    for (auto taken = taken_.rbegin(); taken != taken_.rend(); ++taken) {
        entries_ -= boxes_[*taken].list.size();
        if (*taken + 1 != boxes_.size()) boxes_[*taken] = std::move(boxes_.back());
        boxes_.pop_back();
    }
    kept_ = true;
    for (KeptBox& box : boxes_)
        if (box.listed && box.node.bound <= best - margin_) giveUpList(box);
    if (boxes_.size() > kMostBoxes) clear();
}

}  // namespace model
