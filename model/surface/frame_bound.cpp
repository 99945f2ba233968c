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

constexpr int kSlots = 64;

// Weights that count from one slot to another; the greatest sum in any slot.
class SlotSweep {
public:
    void add(int from, int to, std::int64_t weight) {
        step_[from] += weight;
        step_[to + 1] -= weight;
    }
    [[nodiscard]] std::pair<std::int64_t, int> most() const {
        std::int64_t sum = 0;
        std::int64_t greatest = -1;
        int where = 0;
        for (int slot = 0; slot < kSlots; ++slot) {
            sum += step_[slot];
            if (sum > greatest) {
                greatest = sum;
                where = slot;
            }
        }
        return {greatest, where};
    }

private:
    std::array<std::int64_t, kSlots + 1> step_{};
};

}  // namespace

FrameBounder::FrameBounder(std::span<const FramePart> parts, const FrameSize& size,
                           double tolerance, std::uint32_t requiredFlags)
    : parts_(parts),
      size_(size),
      outer_(size.enlargedBy(tolerance + kRoundingMm)),
      required_(requiredFlags),
      shifts_(parts.size()),
      isSure_(parts.size()) {
    for (std::size_t index = 1; index < parts.size(); ++index)
        severalParts_ = severalParts_ || parts[index].item == parts[index - 1].item;
}

bool FrameBounder::bound(const FrameNode& parent, const std::uint32_t* from, std::int64_t floor,
                         FrameNode& child, std::uint32_t* to) {
    child.sure = parent.sure;
    child.sureFlags = parent.sureFlags;
    child.alongWidth = child.alongHeight = 0;
    maybe_ = 0;
    maybeFlags_ = 0;
    if (size_.circle)
        sortOutByDistance(parent, from, child, to);
    else if (child.box.halvings == 0)
        sortOutAtAnyAngle(parent, from, child, to);
    else
        sortOutBySides(parent, from, child, to);
    if (severalParts_) mergeItems(child, to);
    child.bound = child.sure + maybe_;
    if (child.bound <= floor) return false;
    if (((child.sureFlags | maybeFlags_) & required_) != required_) return false;
    if (size_.circle || child.box.halvings < kHalvingsForSides) return true;
    child.bound = std::min(child.bound, child.sure + mostAlongSides(child, to));
    return child.bound > floor;
}

void FrameBounder::keep(FrameNode& child, std::uint32_t* to, std::uint32_t index, bool may,
                        bool surely) {
    const FramePart& part = parts_[index];
    to[child.count] = index;
    if (severalParts_) {
        isSure_[child.count] = surely;
        child.count += static_cast<std::uint32_t>(may || surely);
        return;
    }
    const bool perhaps = may && !surely;
    child.count += static_cast<std::uint32_t>(perhaps);
    maybe_ += part.weight & mask(perhaps);
    maybeFlags_ |= part.flags & static_cast<std::uint32_t>(mask(perhaps));
    child.sure += part.weight & mask(surely);
    child.sureFlags |= part.flags & static_cast<std::uint32_t>(mask(surely));
}

void FrameBounder::sortOutByDistance(const FrameNode& parent, const std::uint32_t* from,
                                     FrameNode& child, std::uint32_t* to) {
    const FramePose middle = child.box.middle();
    const double moving = std::numbers::sqrt2 * child.box.halfSide();
    const double outside = outer_.halfWidth + moving;
    const double inside = size_.halfWidth - moving - kRoundingMm;
    child.count = 0;
    for (std::uint32_t position = 0; position < parent.count; ++position) {
        const FramePart& part = parts_[from[position]];
        const double away = distanceToPoint(part, middle.x, middle.y);
        keep(child, to, from[position], away <= outside + part.radius,
             away <= inside + part.radius);
    }
}

// At every angle together a rectangle reaches all of its circumscribed circle; of what it covers
// at every angle only the centre of its inscribed circle's share is asked for, which is quick.
void FrameBounder::sortOutAtAnyAngle(const FrameNode& parent, const std::uint32_t* from,
                                     FrameNode& child, std::uint32_t* to) {
    const FramePose middle = child.box.middle();
    const double moving = std::numbers::sqrt2 * child.box.halfSide();
    const double outside = outer_.reach() + moving;
    const double inside =
        std::max(std::min(size_.halfWidth, size_.halfHeight) - moving - kRoundingMm, 0.0);
    child.count = 0;
    for (std::uint32_t position = 0; position < parent.count; ++position) {
        const FramePart& part = parts_[from[position]];
        const double dx = part.x - middle.x;
        const double dy = part.y - middle.y;
        const double away = dx * dx + dy * dy;
        const double far = outside + part.extent();
        keep(child, to, from[position], away <= far * far, away < inside * inside);
    }
}

// Seen along the sides of the middle frame. A frame moved by (u, v), |u|, |v| <= moving, and
// turned by at most t touches a part at (x, y) only if its width side is met:
//   |x - u| <= halfWidth + what the part reaches along the width + sin t * lateral distance,
// and so its height side; which gives the shifts u and v at which the part can count. It contains
// the core: the middle frame with every side drawn in by moving + sin t * half the other side.
void FrameBounder::sortOutBySides(const FrameNode& parent, const std::uint32_t* from,
                                  FrameNode& child, std::uint32_t* to) {
    const FramePose middle = child.box.middle();
    const double c = middle.cosine;
    const double s = middle.sine;
    const double moving = child.box.halfSide() * (std::abs(c) + std::abs(s));
    const double turn = child.box.halfSector();
    const double sineOfTurn = std::sin(turn);
    const double anyPoint =
        std::numbers::sqrt2 * child.box.halfSide() + outer_.reach() * 2 * std::sin(turn / 2);
    const double coreWidth = size_.halfWidth - moving - size_.halfHeight * sineOfTurn - kRoundingMm;
    const double coreHeight =
        size_.halfHeight - moving - size_.halfWidth * sineOfTurn - kRoundingMm;
    const bool hasCore = coreWidth >= 0 && coreHeight >= 0;
    const double outside = outer_.reach() + std::numbers::sqrt2 * child.box.halfSide();
    child.count = 0;
    for (std::uint32_t position = 0; position < parent.count; ++position) {
        const FramePart& part = parts_[from[position]];
        const double dx = part.x - middle.x;
        const double dy = part.y - middle.y;
        const double x = c * dx + s * dy;
        const double y = c * dy - s * dx;
        const double farX = std::abs(x);
        const double farY = std::abs(y);
        const double seenX = c * part.alongX + s * part.alongY;
        const double seenY = c * part.alongY - s * part.alongX;
        const double alongX = std::abs(seenX);
        const double alongY = std::abs(seenY);
        const double across = std::abs(dx * part.alongY - dy * part.alongX);
        const double radius = part.radius;

        const double widthReach =
            outer_.halfWidth + radius + alongX +
            sineOfTurn * (alongY + farY + moving + (farX + moving) * sineOfTurn);
        const double heightReach =
            outer_.halfHeight + radius + alongY +
            sineOfTurn * (alongX + farX + moving + (farY + moving) * sineOfTurn);
        const double circleReach = outside + part.extent();
        bool may = (farX <= widthReach + moving) & (farY <= heightReach + moving) &
                   (dx * dx + dy * dy <= circleReach * circleReach) &
                   (across <= outer_.halfWidth * alongY + outer_.halfHeight * alongX +
                                  (radius + anyPoint) * part.half);
        const bool surely =
            hasCore & (((farX <= coreWidth + alongX + radius) & (farY <= coreHeight + alongY) &
                        (across <= (coreWidth + radius) * alongY + coreHeight * alongX)) |
                       ((farX <= coreWidth + alongX) & (farY <= coreHeight + alongY + radius) &
                        (across <= coreWidth * alongY + (coreHeight + radius) * alongX)));
        // Only past a corner is a round end further away than the three axes tell.
        if (may && radius > 0 && !surely && farX + alongX + radius + anyPoint > outer_.halfWidth &&
            farY + alongY + radius + anyPoint > outer_.halfHeight)
            may = distanceToRectangle({x, y, seenX, seenY}, outer_.halfWidth, outer_.halfHeight) <=
                  radius + anyPoint;
        shifts_[child.count] = {x - widthReach, x + widthReach, y - heightReach, y + heightReach};
        keep(child, to, from[position], may, surely);
    }
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
            child.sureFlags |= part.flags;
            continue;
        }
        maybe_ += part.weight;
        maybeFlags_ |= part.flags;
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
    const double slotsPerMm = kSlots / (2 * moving);
    const auto slot = [&](double shift) {
        return static_cast<int>(std::clamp((shift + moving) * slotsPerMm, 0., kSlots - 1.));
    };
    std::array<SlotSweep, 2> sweeps;
    for (std::uint32_t begin = 0, end = 0; begin < child.count; begin = end) {
        const FramePart& part = parts_[list[begin]];
        Shifts shifts = shifts_[begin];
        end = begin + 1;
        if (severalParts_)
            for (; end < child.count && parts_[list[end]].item == part.item; ++end) {
                const Shifts& other = shifts_[end];
                shifts = {std::min(shifts.widthFrom, other.widthFrom),
                          std::max(shifts.widthTo, other.widthTo),
                          std::min(shifts.heightFrom, other.heightFrom),
                          std::max(shifts.heightTo, other.heightTo)};
            }
        const int widthFrom = slot(shifts.widthFrom);
        const int widthTo = slot(shifts.widthTo);
        const int heightFrom = slot(shifts.heightFrom);
        const int heightTo = slot(shifts.heightTo);
        const bool byHeight = heightTo - heightFrom < widthTo - widthFrom;
        sweeps[byHeight ? 1 : 0].add(byHeight ? heightFrom : widthFrom,
                                     byHeight ? heightTo : widthTo, part.weight);
    }
    const auto [width, widthSlot] = sweeps[0].most();
    const auto [height, heightSlot] = sweeps[1].most();
    child.alongWidth = (widthSlot + 0.5) / slotsPerMm - moving;
    child.alongHeight = (heightSlot + 0.5) / slotsPerMm - moving;
    return width + height;
}

}  // namespace model
