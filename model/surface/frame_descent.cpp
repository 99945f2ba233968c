// SPDX-License-Identifier: Apache-2.0
#include "surface/frame_descent.h"

#include <algorithm>
#include <cmath>

namespace model {
namespace {

bool smallerBound(const FrameNode& a, const FrameNode& b) {
    return a.bound < b.bound;
}

// The greatest bound first costs the fewest boxes but keeps all their lists; past this many
// entries a box is followed to its end at once instead.
constexpr std::size_t kMostListed = 8'000'000;

// So many boxes are open at once in an everyday zone; the heap need not grow and move.
constexpr std::size_t kUsuallyOpen = 1024;

// Kept boxes without a list are bounded from all parts, one by one; with this many looks at parts,
// a search from the whole surface takes less.
constexpr std::size_t kMostLooks = 1'000'000;

// Lists are kept of boxes that so many of the heaviest items could make the worst.
constexpr std::int64_t kMarginInItems = 2;

std::int64_t heaviest(std::span<const FramePart> parts) {
    std::int64_t weight = 0;
    for (const FramePart& part : parts) weight = std::max(weight, part.weight);
    return weight;
}

// Turning is worth looking at once a square is this much smaller than the frame.
constexpr double kReachToSquare = 4;

constexpr int kFirstHalvings = 3;

// In wider sectors the middle angle is a poor guess.
constexpr int kHalvingsToTry = 4;

// How far a side may swing in a box, against how far the frame may move. A swing blurs a whole
// side, a move only what lies at the corners (see FrameBounder): squares may stay wide.
constexpr double kSwingToMove = 0.25;

int levelBelow(double side) {
    return static_cast<int>(std::floor(std::log2(side)));
}

}  // namespace

FrameDescent::FrameDescent(std::span<const FramePart> parts, const FrameSize& size,
                           std::optional<double> period)
    : parts_(parts),
      size_(size),
      finest_(size),
      enlarged_(size.enlargedBy(finest_.tolerance)),
      period_(period),
      bounder_(parts, size, finest_.tolerance),
      coarsestLevel_(std::max(levelBelow(size.reach() / kReachToSquare), finest_.level)) {}

std::optional<FoundFrame> FrameDescent::above(std::int64_t floor, bool anyAbove,
                                              FrameFrontier* frontier) {
    best_ = floor;
    anyAbove_ = anyAbove;
    frontier_ = frontier;
    done_ = false;
    bestFrame_.reset();
    open_.clear();
    open_.reserve(kUsuallyOpen);
    lists_.setEnd(0);
    if (frontier_ == nullptr) {
        openRoots();
        follow();
    } else {
        if (frontier_->unlistedAbove(floor) * parts_.size() > kMostLooks) frontier_->clear();
        frontier_->begin(kMarginInItems * heaviest(parts_));
        if (frontier_->isKept())
            openKept();
        else
            openRoots();
        follow();
        frontier_->end(!done_, best_);
    }
    if (!bestFrame_) return std::nullopt;
    return foundFrame();
}

void FrameDescent::follow() {
    Children children;
    std::make_heap(open_.begin(), open_.end(), smallerBound);
    while (!done_ && !open_.empty() && open_.front().bound > best_) {
        std::pop_heap(open_.begin(), open_.end(), smallerBound);
        const FrameNode node = open_.back();
        open_.pop_back();
        if (!isCoarse(node.box) || lists_.end() > kMostListed) {
            descend(node);
            continue;
        }
        const std::size_t count = split(node, children);
        for (std::size_t child = 0; child < count; ++child) {
            open_.push_back(children[child]);
            std::push_heap(open_.begin(), open_.end(), smallerBound);
        }
    }
    for (const FrameNode& node : open_) keep(node);
}

void FrameDescent::keep(const FrameNode& node) {
    if (frontier_ != nullptr && !done_) frontier_->put(node, lists_.from(node.first), best_);
}

// All parts, as the first list on the stack.
FrameNode FrameDescent::everything() {
    FrameNode everything;
    std::uint32_t* all = lists_.at(0, parts_.size());
    for (std::uint32_t index = 0; index < parts_.size(); ++index)
        if (parts_[index].item != FramePart::kNoItem) all[everything.count++] = index;
    lists_.setEnd(everything.count);
    return everything;
}

void FrameDescent::openKept() {
    const FrameNode all = everything();
    while (const KeptBox* kept = frontier_->take(best_)) {
        const std::size_t end = lists_.end();
        FrameNode node = kept->node;
        node.first = end;
        FrameNode from = all;
        if (kept->listed) {
            from = node;
            std::ranges::copy(kept->list, lists_.at(node.first, node.count));
            lists_.setEnd(node.first + node.count);
        }
        if (kept->loose || !kept->listed) {
            node.first = lists_.end();
            std::uint32_t* to = lists_.at(node.first, from.count);
            ++boxes_;
            looks_ += from.count;
            if (!bounder_.bound(from, lists_.from(from.first), best_, node, to)) {
                keep(node);
                lists_.setEnd(end);
                continue;
            }
            lists_.setEnd(node.first + node.count);
        }
        open_.push_back(node);
    }
}

// One to four squares that hold the centres of all frames that touch a part with all flags.
void FrameDescent::openRoots() {
    constexpr double kInfinite = std::numeric_limits<double>::infinity();
    double left = kInfinite, right = -kInfinite, bottom = kInfinite, top = -kInfinite;
    for (const FramePart& part : parts_) {
        if (part.own == 0 || part.item == FramePart::kNoItem) continue;
        const double reach = enlarged_.reach() + part.extent() + 1;
        left = std::min(left, part.x - reach);
        right = std::max(right, part.x + reach);
        bottom = std::min(bottom, part.y - reach);
        top = std::max(top, part.y + reach);
    }
    if (period_) {
        left = std::max(left, 0.0);
        right = std::min(right, *period_);
    }
    if (!(left <= right && bottom <= top)) return;
    FrameNode root;
    root.box.level =
        std::max(static_cast<int>(std::ceil(std::log2(std::max(right - left, top - bottom) + 1))),
                 finest_.level);
    const FrameNode all = everything();
    root.box.side = std::ldexp(1, root.box.level);
    const auto cell = [&](double at) {
        return static_cast<std::int64_t>(std::floor(at / root.box.side));
    };
    if (frontier_ != nullptr) {
        const auto edge = [&](std::int64_t at) { return static_cast<double>(at) * root.box.side; };
        frontier_->setArea(edge(cell(left)), edge(cell(right) + 1), edge(cell(bottom)),
                           edge(cell(top) + 1), period_);
    }
    for (root.box.row = cell(bottom); root.box.row <= cell(top); ++root.box.row)
        for (root.box.column = cell(left); root.box.column <= cell(right); ++root.box.column) {
            root.first = lists_.end();
            std::uint32_t* list = lists_.at(root.first, all.count);
            if (bounder_.bound(all, lists_.from(0), best_, root, list)) {
                lists_.setEnd(root.first + root.count);
                open_.push_back(root);
            } else {
                keep(root);
            }
        }
}

bool FrameDescent::isFinest(const FrameBox& box) const {
    return box.level <= finest_.level && box.halvings >= finest_.halvings;
}

bool FrameDescent::isCoarse(const FrameBox& box) const {
    return box.level > coarsestLevel_ || (!size_.circle && box.halvings < 6 && !isFinest(box));
}

bool FrameDescent::splitsSector(const FrameBox& box) const {
    if (size_.circle || box.halvings >= finest_.halvings) return false;
    if (box.level <= finest_.level) return true;
    if (box.level > coarsestLevel_) return false;
    return size_.reach() * box.halfSector() > kSwingToMove * box.halfSide();
}

// The children that may hold a better frame, the most promising first, their lists on the stack.
std::size_t FrameDescent::split(const FrameNode& node, Children& children) {
    const bool bySector = splitsSector(node.box);
    std::size_t kept = 0;
    // Wide sectors tell nothing: the first split makes eight.
    const int times = node.box.halvings == 0 ? std::min(kFirstHalvings, finest_.halvings) : 1;
    for (int number = 0; number < (bySector ? 1 << times : 4); ++number) {
        FrameNode& child = children[kept];
        child.box = bySector ? node.box.part(times, number) : node.box.quarter(number);
        if (period_ && static_cast<double>(child.box.column) * child.box.side > *period_) continue;
        child.first = lists_.end();
        std::uint32_t* to = lists_.at(child.first, node.count);
        ++boxes_;
        looks_ += node.count;
        if (!bounder_.bound(node, lists_.from(node.first), best_, child, to)) {
            keep(child);
            continue;
        }
        lists_.setEnd(child.first + child.count);
        judgeLikely(child);
        if (done_) return 0;
        ++kept;
    }
    std::sort(children.begin(), children.begin() + static_cast<std::ptrdiff_t>(kept),
              [](const FrameNode& a, const FrameNode& b) { return a.bound > b.bound; });
    return kept;
}

void FrameDescent::descend(const FrameNode& node) {
    if (isFinest(node.box)) {
        const Counted counted = judge(node, node.box.middle(), node.box.angle(), true);
        FrameNode known = node;
        known.bound = counted.value;
        known.judged = counted.judged;
        keep(known);
        return;
    }
    const std::size_t listsEnd = lists_.end();
    Children children;
    const std::size_t count = split(node, children);
    for (std::size_t child = 0; child < count && !done_; ++child)
        if (children[child].bound > best_)
            descend(children[child]);
        else
            keep(children[child]);
    lists_.setEnd(listsEnd);
}

void FrameDescent::judgeLikely(const FrameNode& node) {
    if (!size_.circle && node.box.halvings < std::min(kHalvingsToTry, finest_.halvings)) return;
    FramePose pose = node.box.middle();
    const auto within = [half = node.box.halfSide()](double away) {
        return std::clamp(away, -half, half);  // outside the box its list and sums say nothing
    };
    pose.x += within(pose.cosine * node.alongWidth - pose.sine * node.alongHeight);
    pose.y += within(pose.sine * node.alongWidth + pose.cosine * node.alongHeight);
    judge(node, pose, node.box.angle(), false);
}

FrameDescent::Counted FrameDescent::judge(const FrameNode& node, const FramePose& pose,
                                          double angle, bool finest) {
    const FrameSize& size = finest ? enlarged_ : size_;
    std::int64_t sum = node.sure;
    bool judged = node.sureOwn > 0;
    constexpr std::uint32_t kNone = std::numeric_limits<std::uint32_t>::max();
    std::uint32_t counted = kNone;
    for (const std::uint32_t index : lists_.list(node.first, node.count)) {
        const FramePart& part = parts_[index];
        if (part.item == counted || !touches(size, pose, part)) continue;
        counted = part.item;
        sum += part.weight;
        judged = judged || part.own != 0;
    }
    if (sum > best_ && judged) {
        best_ = sum;
        bestFrame_ = Best{pose, angle, finest};
        done_ = anyAbove_;
    }
    return {sum, judged};
}

FoundFrame FrameDescent::foundFrame() const {
    constexpr double kDegrees = 180 / std::numbers::pi;
    const FrameSize& size = bestFrame_->finest ? enlarged_ : size_;
    FoundFrame found;
    found.x = bestFrame_->pose.x;
    found.y = bestFrame_->pose.y;
    found.angleDegrees = size_.circle ? 0 : bestFrame_->angle * kDegrees;
    for (const FramePart& part : parts_) {
        if (part.item == FramePart::kNoItem) continue;
        if (!found.counted.empty() && found.counted.back() == part.item) continue;
        if (!touches(size, bestFrame_->pose, part)) continue;
        found.counted.push_back(part.item);
        found.value += part.weight;
    }
    std::ranges::sort(found.counted);
    return found;
}

}  // namespace model
