// SPDX-License-Identifier: Apache-2.0
#include "surface/frame_bound.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace model {
namespace {

// Added to every "may touch" and taken from every "surely touches": doubles lose less at 10^6 mm.
constexpr double kRoundingMm = 1e-6;

// Below this many halvings a box turns so far that every place along its sides can be reached.
constexpr int kHalvingsForSides = 3;

// All ones or all zeros, to select without a branch: which parts a box touches is unpredictable.
std::int64_t mask(bool condition) {
    return -static_cast<std::int64_t>(condition);
}

// Weights that count from one slot to another along the width or the height.
class SlotSweeps {
public:
    explicit SlotSweeps(int slots) : slots_(slots) {
        for (int slot = 0; slot <= slots; ++slot) steps_[slot] = AxesSum{};
    }
    void add(int axis, int from, int to, std::int64_t weight) {
        steps_[from][axis] += weight;
        steps_[to + 1][axis] -= weight;
    }
    struct Most {
        std::array<std::int64_t, 2> sum{-1, -1};
        std::array<int, 2> slot{};
    };
    /// The greatest sum in any slot of either axis.
    [[nodiscard]] Most most() const {
        Most most;
        AxesSum sum{};
        for (int slot = 0; slot < slots_; ++slot) {
            sum += steps_[slot];
            for (int axis = 0; axis < 2; ++axis) {
                const bool more = sum[axis] > most.sum[axis];
                most.sum[axis] = more ? sum[axis] : most.sum[axis];
                most.slot[axis] = more ? slot : most.slot[axis];
            }
        }
        return most;
    }

    static constexpr int kMostSlots = 64;

private:
    int slots_;
    std::array<AxesSum, kMostSlots + 1> steps_;
};

// A few slots tell a short list apart.
int slotsFor(std::uint32_t count) {
    constexpr std::uint32_t kShort = 48;
    return count < kShort ? SlotSweeps::kMostSlots / 4 : SlotSweeps::kMostSlots;
}

// The list of a box being written: what may be touched stays in it, what surely is touched is
// summed up. With several parts an item, what is sure stays marked in the list until all parts
// are there (mergeItems).
class ListWriter {
public:
    ListWriter(std::span<const FramePart> parts, std::uint32_t* to, std::uint8_t* isSure)
        : parts_(parts.data()), to_(to), isSure_(isSure) {}

    /// Where the next part that stays will stand.
    [[nodiscard]] std::uint32_t end() const { return end_; }

    void enter(std::uint32_t index, bool may, bool surely) {
        to_[end_] = index;
        if (isSure_ != nullptr) {
            isSure_[end_] = static_cast<std::uint8_t>(surely);
            end_ += static_cast<std::uint32_t>(may | surely);
            return;
        }
        const FramePart& part = parts_[index];
        const bool perhaps = may & !surely;
        end_ += static_cast<std::uint32_t>(perhaps);
        maybe_ += part.weight & mask(perhaps);
        sure_ += part.weight & mask(surely);
        maybeOwn_ += part.own & static_cast<std::uint32_t>(mask(perhaps));
        sureOwn_ += part.own & static_cast<std::uint32_t>(mask(surely));
    }
    void finish(FrameNode& child, std::int64_t& maybe, std::uint32_t& maybeOwn) const {
        child.count = end_;
        child.sure += sure_;
        child.sureOwn += sureOwn_;
        maybe = maybe_;
        maybeOwn = maybeOwn_;
    }

private:
    const FramePart* parts_;
    std::uint32_t* to_;
    std::uint8_t* isSure_;  // null where every item has one part
    std::uint32_t end_ = 0;
    std::int64_t maybe_ = 0;
    std::int64_t sure_ = 0;
    std::uint32_t maybeOwn_ = 0;
    std::uint32_t sureOwn_ = 0;
};

}  // namespace

FrameBounder::FrameBounder(std::span<const FramePart> parts, const FrameSize& size,
                           double tolerance)
    : parts_(parts),
      size_(size),
      outer_(size.enlargedBy(tolerance + kRoundingMm)),
      outerReach_(outer_.reach()),
      shifts_(parts.size()),
      isSure_(parts.size()) {
    for (std::size_t index = 1; index < parts.size(); ++index)
        severalParts_ = severalParts_ || (parts[index].item == parts[index - 1].item &&
                                          parts[index].item != FramePart::kNoItem);
}

bool FrameBounder::bound(const FrameNode& parent, const std::uint32_t* from, std::int64_t floor,
                         FrameNode& child, std::uint32_t* to) {
    child.sure = parent.sure;
    child.sureOwn = parent.sureOwn;
    child.alongWidth = child.alongHeight = 0;
    maybe_ = 0;
    maybeOwn_ = 0;
    if (size_.circle)
        sortOutByDistance(parent, from, child, to);
    else if (child.box.halvings == 0)
        sortOutAtAnyAngle(parent, from, child, to);
    else
        sortOutBySides(parent, from, child, to);
    if (severalParts_) mergeItems(child, to);
    child.bound = child.sure + maybe_;
    child.judged = child.sureOwn + maybeOwn_ > 0;
    if (child.bound <= floor) return false;
    if (!child.judged) return false;
    if (size_.circle || child.box.halvings < kHalvingsForSides) return true;
    child.bound = std::min(child.bound, child.sure + mostAlongSides(child, to));
    return child.bound > floor;
}

void FrameBounder::sortOutByDistance(const FrameNode& parent, const std::uint32_t* from,
                                     FrameNode& child, std::uint32_t* to) {
    const FramePose middle = child.box.middle();
    const double moving = std::numbers::sqrt2 * child.box.halfSide();
    const double outside = outer_.halfWidth + moving;
    const double inside = size_.halfWidth - moving - kRoundingMm;
    ListWriter list(parts_, to, severalParts_ ? isSure_.data() : nullptr);
    for (std::uint32_t position = 0; position < parent.count; ++position) {
        const FramePart& part = parts_[from[position]];
        const double away = distanceToPoint(part, middle.x, middle.y);
        list.enter(from[position], away <= outside + part.radius, away <= inside + part.radius);
    }
    list.finish(child, maybe_, maybeOwn_);
}

// At every angle together a rectangle reaches all of its circumscribed circle; of what it covers
// at every angle only the centre of its inscribed circle's share is asked for, which is quick.
void FrameBounder::sortOutAtAnyAngle(const FrameNode& parent, const std::uint32_t* from,
                                     FrameNode& child, std::uint32_t* to) {
    const FramePose middle = child.box.middle();
    const double moving = std::numbers::sqrt2 * child.box.halfSide();
    const double outside = outerReach_ + moving;
    const double inside =
        std::max(std::min(size_.halfWidth, size_.halfHeight) - moving - kRoundingMm, 0.0);
    ListWriter list(parts_, to, severalParts_ ? isSure_.data() : nullptr);
    for (std::uint32_t position = 0; position < parent.count; ++position) {
        const FramePart& part = parts_[from[position]];
        const double dx = part.x - middle.x;
        const double dy = part.y - middle.y;
        const double away = dx * dx + dy * dy;
        const double far = outside + part.extent();
        list.enter(from[position], away <= far * far, away < inside * inside);
    }
    list.finish(child, maybe_, maybeOwn_);
}

// Seen along the sides of the middle frame. A frame moved by (u, v), |u|, |v| <= moving, and
// turned by at most t touches a part at (x, y) only if its width side is met:
//   |x - u| <= halfWidth + what the part reaches along the width + t * lateral distance,
// and so its height side; which gives the shifts u and v at which the part can count. It contains
// the core: the middle frame with every side drawn in by moving + t * half the other side.
void FrameBounder::sortOutBySides(const FrameNode& parent, const std::uint32_t* from,
                                  FrameNode& child, std::uint32_t* to) {
    const FramePose pose = child.box.middle();
    const Axes middle{pose.x, pose.y};
    const Axes cosine = both(pose.cosine);
    const Axes sine{pose.sine, -pose.sine};
    const double moving = child.box.halfSide() * (std::abs(pose.cosine) + std::abs(pose.sine));
    const double turn = child.box.halfSector();  // above its sine
    const double anywhere = std::numbers::sqrt2 * child.box.halfSide();
    const double anyPoint = anywhere + outerReach_ * turn;
    const double circle = outerReach_ + anywhere;

    const Axes outer{outer_.halfWidth, outer_.halfHeight};
    const Axes outerTurned = outer + both(turn * moving * (1 + turn));
    const Axes half{size_.halfWidth, size_.halfHeight};
    Axes core = half - both(moving + kRoundingMm) - turn * exchanged(half);
    if (core[0] < 0 || core[1] < 0) core = both(-std::numeric_limits<double>::infinity());

    ListWriter list(parts_, to, severalParts_ ? isSure_.data() : nullptr);
    for (std::uint32_t position = 0; position < parent.count; ++position) {
        const FramePart& part = parts_[from[position]];
        const Axes away = Axes{part.x, part.y} - middle;
        const Axes along{part.alongX, part.alongY};
        const Axes seen = cosine * away + sine * exchanged(away);
        const Axes seenAlong = cosine * along + sine * exchanged(along);
        const Axes far = magnitude(seen);
        const Axes spread = magnitude(seenAlong);
        const Axes product = away * exchanged(along);
        const double across = std::abs(product[0] - product[1]);
        const double radius = part.radius;

        const Axes reach =
            outerTurned + both(radius) + spread + turn * (exchanged(spread + far) + turn * far);
        const AxesMask met = far <= reach + both(moving);
        const double circleReach = circle + part.extent();
        // NOLINTBEGIN(clang-diagnostic-bitwise-instead-of-logical): no branch in the inner loop
        bool may = static_cast<bool>(met[0] & met[1]) &
                   (sum(away * away) <= circleReach * circleReach) &
                   (across <= sum(outer * exchanged(spread)) + (radius + anyPoint) * part.half);
        // NOLINTEND(clang-diagnostic-bitwise-instead-of-logical)

        const Axes covered = core + spread;
        const AxesMask within = far <= covered;
        const AxesMask withinRadius = far <= covered + both(radius);
        const double coveredAcross = sum(core * exchanged(spread));
        const bool surely = (static_cast<bool>(withinRadius[0] & within[1]) &
                             (across <= coveredAcross + radius * spread[1])) |
                            (static_cast<bool>(within[0] & withinRadius[1]) &
                             (across <= coveredAcross + radius * spread[0]));
        // Only past a corner is a round end further away than the three axes tell; and only a
        // small box can tell.
        if (anyPoint < radius && may && !surely) {
            const AxesMask past = far + spread + both(radius + anyPoint) > outer;
            if (static_cast<bool>(past[0] & past[1]))
                may = distanceToRectangle({seen[0], seen[1], seenAlong[0], seenAlong[1]},
                                          outer_.halfWidth, outer_.halfHeight) <= radius + anyPoint;
        }
        shifts_[list.end()] = {seen - reach, seen + reach};
        list.enter(from[position], may, surely);
    }
    list.finish(child, maybe_, maybeOwn_);
}

// An item with a sure part is sure; its other parts leave the list.
void FrameBounder::mergeItems(FrameNode& child, std::uint32_t* to) {
    std::uint32_t kept = 0;
    for (std::uint32_t begin = 0, end = 0; begin < child.count; begin = end) {
        const FramePart& part = parts_[to[begin]];
        bool surely = false;
        for (end = begin; end < child.count && parts_[to[end]].item == part.item; ++end)
            surely = surely || isSure_[end] != 0;
        if (surely) {
            child.sure += part.weight;
            child.sureOwn += part.own;
            continue;
        }
        maybe_ += part.weight;
        maybeOwn_ += part.own;
        for (std::uint32_t position = begin; position < end; ++position, ++kept) {
            to[kept] = to[position];
            shifts_[kept] = shifts_[position];
        }
    }
    child.count = kept;
}

// A part counts only if both shifts suit it. Asking each part for one of the two alone, the more
// telling one, lets the width's and the height's best shift be chosen apart: a bound that misses
// the truth by no more than the parts at the corners.
std::int64_t FrameBounder::mostAlongSides(FrameNode& child, const std::uint32_t* list) {
    const double moving =
        child.box.halfSide() * (std::abs(child.box.cosine) + std::abs(child.box.sine));
    const int slots = slotsFor(child.count);
    const double slotsPerMm = slots / (2 * moving);
    const auto slot = [&](Axes shift) {
        return lesser(greater((shift + both(moving)) * slotsPerMm, both(0)), both(slots - 1));
    };
    SlotSweeps sweeps(slots);
    for (std::uint32_t begin = 0, end = 0; begin < child.count; begin = end) {
        const FramePart& part = parts_[list[begin]];
        Shifts shifts = shifts_[begin];
        end = begin + 1;
        if (severalParts_)
            for (; end < child.count && parts_[list[end]].item == part.item; ++end)
                shifts = {lesser(shifts.from, shifts_[end].from),
                          greater(shifts.to, shifts_[end].to)};
        const Axes first = slot(shifts.from);
        const Axes last = slot(shifts.to);
        const Axes length = last - first;
        const int axis = length[1] < length[0] ? 1 : 0;
        sweeps.add(axis, static_cast<int>(first[axis]), static_cast<int>(last[axis]), part.weight);
    }
    const SlotSweeps::Most most = sweeps.most();
    child.alongWidth = (most.slot[0] + 0.5) / slotsPerMm - moving;
    child.alongHeight = (most.slot[1] + 0.5) / slotsPerMm - moving;
    return most.sum[0] + most.sum[1];
}

}  // namespace model
