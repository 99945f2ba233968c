// SPDX-License-Identifier: Apache-2.0
// The search against an independent method on small random sets. It asks of every subset of the
// items that weighs more than the answer whether one frame can touch all of it. At a fixed angle
// the greatest gap between the frame and an item of the subset is a convex function of the frame's
// centre, so its minimum is found by narrowing down; and as the frame turns by t that minimum
// changes by at most t times the half diagonal, so that a sector of angles whose middle leaves a
// larger gap is ruled out whole.
#include <bit>
#include <gtest/gtest.h>

#include "frame_scene.h"
#include "surface/frame_tracker.h"

namespace model {
namespace {

struct Stroke {
    double x, y, alongX, alongY, radius;
};

// The distance from a segment to the rectangle |x| <= a, |y| <= b.
double gapTo(const Stroke& stroke, double a, double b) {
    double enter = -1, leave = 1;  // the part of the segment within both slabs
    const auto clip = [&](double at, double along, double half) {
        if (along == 0) {
            if (std::abs(at) > half) leave = -2;
            return;
        }
        const double one = (-half - at) / along, two = (half - at) / along;
        enter = std::max(enter, std::min(one, two));
        leave = std::min(leave, std::max(one, two));
    };
    clip(stroke.x, stroke.alongX, a);
    clip(stroke.y, stroke.alongY, b);
    if (enter <= leave) return 0;
    double nearest = std::numeric_limits<double>::infinity();
    for (const double sign : {-1.0, 1.0})
        nearest = std::min(
            nearest, std::hypot(std::max(std::abs(stroke.x + sign * stroke.alongX) - a, 0.0),
                                std::max(std::abs(stroke.y + sign * stroke.alongY) - b, 0.0)));
    const double squared = stroke.alongX * stroke.alongX + stroke.alongY * stroke.alongY;
    for (const double x : {-a, a})
        for (const double y : {-b, b}) {
            if (squared == 0) continue;
            const double along = std::clamp(
                ((x - stroke.x) * stroke.alongX + (y - stroke.y) * stroke.alongY) / squared, -1.,
                1.);
            nearest = std::min(nearest, std::hypot(x - stroke.x - along * stroke.alongX,
                                                   y - stroke.y - along * stroke.alongY));
        }
    return nearest;
}

template <class Function>
double leastOf(Function function, double low, double high) {
    constexpr double kGolden = 0.618033988749895;
    double one = high - kGolden * (high - low), two = low + kGolden * (high - low);
    double atOne = function(one), atTwo = function(two);
    while (high - low > 1e-4) {
        if (atOne <= atTwo) {
            high = two;
            two = one;
            atTwo = atOne;
            one = high - kGolden * (high - low);
            atOne = function(one);
        } else {
            low = one;
            one = two;
            atOne = atTwo;
            two = low + kGolden * (high - low);
            atTwo = function(two);
        }
    }
    return std::min(atOne, atTwo);
}

enum class Reach { None, WithinTolerance, Touches };

class SubsetReach {
public:
    explicit SubsetReach(const FrameShape& shape)
        : a_(shape.width.approximately() / 2), b_(shape.height.approximately() / 2) {}

    /// Whether one frame touches all strokes.
    [[nodiscard]] Reach of(const std::vector<Stroke>& strokes) const {
        Reach best = Reach::None;
        for (int sector = 0; sector < 8 && best != Reach::Touches; ++sector)
            best = std::max(best, within(strokes, (sector + 0.5) * std::numbers::pi / 8,
                                         std::numbers::pi / 16));
        return best;
    }

private:
    [[nodiscard]] Reach within(const std::vector<Stroke>& strokes, double angle,
                               double halfSector) const {
        const double gap = leastGap(strokes, angle);
        if (gap <= 0) return Reach::Touches;
        const double turning = std::hypot(a_, b_) * halfSector;
        constexpr double kNarrowing = 3e-4;  // two nested searches, each 1e-4 mm wide at the end
        if (gap > turning + kNarrowing) return Reach::None;
        if (turning < 0.004) return Reach::WithinTolerance;
        const Reach left = within(strokes, angle - halfSector / 2, halfSector / 2);
        if (left == Reach::Touches) return left;
        return std::max(left, within(strokes, angle + halfSector / 2, halfSector / 2));
    }

    [[nodiscard]] double leastGap(const std::vector<Stroke>& strokes, double angle) const {
        const double c = std::cos(angle), s = std::sin(angle);
        std::vector<Stroke> seen;
        double left = 1e9, right = -1e9, bottom = 1e9, top = -1e9;
        for (const Stroke& stroke : strokes) {
            seen.push_back({c * stroke.x + s * stroke.y, c * stroke.y - s * stroke.x,
                            c * stroke.alongX + s * stroke.alongY,
                            c * stroke.alongY - s * stroke.alongX, stroke.radius});
            left = std::min(left, seen.back().x);
            right = std::max(right, seen.back().x);
            bottom = std::min(bottom, seen.back().y);
            top = std::max(top, seen.back().y);
        }
        return leastOf(
            [&](double u) {
                return leastOf(
                    [&](double v) {
                        double greatest = -1e9;
                        for (Stroke stroke : seen) {
                            stroke.x -= u;
                            stroke.y -= v;
                            greatest = std::max(greatest, gapTo(stroke, a_, b_) - stroke.radius);
                        }
                        return greatest;
                    },
                    bottom - 1, top + 1);
            },
            left - 1, right + 1);
    }

    double a_;
    double b_;
};

// The greatest reach over all choices of one part for each item of the subset.
Reach reachOf(const std::vector<FrameItem>& items, std::uint32_t subset, const FrameShape& shape) {
    std::vector<std::vector<Stroke>> choices{{}};
    for (std::size_t item = 0; item < items.size(); ++item) {
        if ((subset >> item & 1) == 0) continue;
        std::vector<std::vector<Stroke>> longer;
        for (const std::vector<Stroke>& choice : choices)
            for (const Capsule& part : items[item].parts) {
                longer.push_back(choice);
                longer.back().push_back({static_cast<double>(part.x), static_cast<double>(part.y),
                                         static_cast<double>(part.half * part.along.x),
                                         static_cast<double>(part.half * part.along.y),
                                         static_cast<double>(part.radius)});
            }
        choices = std::move(longer);
    }
    Reach best = Reach::None;
    for (const std::vector<Stroke>& choice : choices)
        if (best != Reach::Touches) best = std::max(best, SubsetReach(shape).of(choice));
    return best;
}

struct Kind {
    const char* name;
    double widthShare;  // of the length; 1: discs, 0: hairlines
    bool groups;
    bool someForeign;
    std::uint32_t seed;
};

// The value that a tracker gives whose items became those of the scene by edits, asked after each.
std::int64_t valueAfterEdits(const FrameScene& scene, const FrameShape& shape) {
    const std::vector<FrameItem>& items = scene.items();
    FrameTracker tracker(shape);
    std::vector<std::size_t> numbers;
    for (std::size_t item = 0; item < items.size(); ++item) {
        // First in the place and weight of another.
        const FrameItem& other = items[(item + 1) % items.size()];
        numbers.push_back(tracker.add(other.parts, other.weight, other.own));
        tracker.worst();
    }
    for (std::size_t item = 0; item < items.size(); ++item) {
        const std::size_t spare = tracker.add(items[item].parts, 3'000'000, true);
        tracker.worst();
        tracker.replace(numbers[item], items[item].parts, items[item].weight, items[item].own);
        tracker.worst();
        tracker.remove(spare);
        tracker.worst();
    }
    const auto worst = tracker.worst();
    return worst ? worst->value : -1;
}

class FrameBruteForce : public testing::TestWithParam<Kind> {
protected:
    // 3 to 6 items in a square of 60 mm.
    static FrameScene scene(const Kind& kind, int count, std::mt19937& random) {
        const auto between = [&](double low, double high) {
            return std::uniform_real_distribution<double>(low, high)(random);
        };
        FrameScene scene;
        for (int index = 0; index < count; ++index) {
            const double length = std::round(between(1, 12) * 10) / 10;
            const auto part = [&](double x, double y) {
                return capsuleAt(x, y, length, length * kind.widthShare, between(0, 180));
            };
            const double x = between(0, 60), y = between(0, 60);
            std::vector<Capsule> parts{part(x, y)};
            if (kind.groups && index % 2 == 0) parts.push_back(part(x + between(5, 30), y));
            scene.add(std::move(parts), std::llround(length * 1e6),
                      !kind.someForeign || index % 2 == 1);
        }
        return scene;
    }

    // Subsets of greater weight, with an own item, that a frame touches or nearly touches.
    static std::array<int, 3> reachesAbove(const FrameScene& scene, const FrameShape& shape,
                                           std::int64_t value) {
        const std::vector<FrameItem>& items = scene.items();
        std::vector<std::uint32_t> subsets(1U << items.size());
        for (std::uint32_t subset = 0; subset < subsets.size(); ++subset) subsets[subset] = subset;
        std::ranges::stable_sort(subsets, {}, [](std::uint32_t set) { return std::popcount(set); });
        std::vector<std::uint32_t> outOfReach;
        std::array<int, 3> reaches{};
        for (const std::uint32_t subset : subsets) {
            std::int64_t weight = 0;
            bool own = false;
            for (std::size_t item = 0; item < items.size(); ++item)
                if (subset >> item & 1) {
                    weight += items[item].weight;
                    own = own || items[item].own;
                }
            if (std::popcount(subset) != 2 && (weight <= value || !own)) continue;
            if (std::ranges::any_of(outOfReach,
                                    [&](std::uint32_t set) { return (set & subset) == set; }))
                continue;
            const Reach reach = reachOf(items, subset, shape);
            if (reach == Reach::None) outOfReach.push_back(subset);
            if (weight > value && own) ++reaches[static_cast<std::size_t>(reach)];
        }
        return reaches;
    }
};

TEST_P(FrameBruteForce, FindsNoHeavierSubsetThatAFrameTouches) {
    const Kind& kind = GetParam();
    std::mt19937 random(kind.seed);
    std::uniform_real_distribution<double> width(15, 40), height(5, 60);
    int onTheTolerance = 0, ruledOut = 0;
    for (int set = 0; set < 8; ++set) {
        const FrameScene scene = FrameBruteForce::scene(kind, 3 + set % 4, random);
        const FrameShape shape = rectangle(width(random), height(random));
        const auto found = worstFrame(scene.items(), shape);
        ASSERT_TRUE(found);
        const auto reaches = reachesAbove(scene, shape, found->value);
        EXPECT_EQ(reaches[static_cast<std::size_t>(Reach::Touches)], 0) << "set " << set;
        onTheTolerance += reaches[static_cast<std::size_t>(Reach::WithinTolerance)];
        ruledOut += reaches[static_cast<std::size_t>(Reach::None)];
        // And the reported frame reaches the value.
        EXPECT_EQ(weightOf(scene.items(), found->counted), found->value);
        const auto counted = boostCounted(scene.items(), *found, shape, kFrameToleranceMm);
        EXPECT_TRUE(std::ranges::includes(counted, found->counted)) << "set " << set;
        EXPECT_TRUE(worstFrameExceeds(scene.items(), shape, found->value - 1));
        EXPECT_FALSE(worstFrameExceeds(scene.items(), shape, found->value));
        EXPECT_EQ(valueAfterEdits(scene, shape), found->value) << "set " << set;
    }
    EXPECT_LE(onTheTolerance, 1);
    EXPECT_GT(ruledOut, 0);
}

INSTANTIATE_TEST_SUITE_P(
    Kinds, FrameBruteForce,
    testing::Values(Kind{"Hairlines", 0, false, false, 1}, Kind{"Capsules", 0.3, false, false, 2},
                    Kind{"Discs", 1, false, false, 3}, Kind{"Groups", 0.2, true, false, 4},
                    Kind{"ForeignItems", 0.2, true, true, 5}),
    [](const testing::TestParamInfo<Kind>& kind) { return std::string(kind.param.name); });

}  // namespace
}  // namespace model
