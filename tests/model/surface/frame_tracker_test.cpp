// SPDX-License-Identifier: Apache-2.0
// The tracker against fresh searches over random edits.
#include "surface/frame_tracker.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <map>

#include "frame_scene.h"

namespace model {
namespace {

using testing::ElementsAre;

const FrameShape kCard = rectangle(105, 148);

struct Held {
    std::vector<Capsule> parts;
    std::int64_t weight;
    bool own;
};

struct Case {
    const char* name;
    FrameShape shape;
    Period period;
    double surface;
    bool groups;
    bool foreign;
};

class FrameTrackerEdits : public testing::TestWithParam<Case> {
protected:
    Held anyItem() {
        const double length = std::round(between(1, 12) * 10) / 10;
        Held held{{capsuleAt(between(0, surface()), between(0, 300), length, length / 4,
                             between(0, 180))},
                  std::llround(length * 10),
                  !GetParam().foreign || between(0, 1) < 0.5};
        if (GetParam().groups && between(0, 1) < 0.3)
            held.parts.push_back(held.parts.front().movedBy(between(5, 40), 3));
        return held;
    }
    double between(double low, double high) {
        return std::uniform_real_distribution<double>(low, high)(random_);
    }
    static double surface() { return GetParam().surface; }

    std::optional<FoundFrame> fresh() const {
        std::vector<FrameItem> items;
        for (const auto& [number, item] : held_)
            items.push_back({item.parts, item.weight, item.own});
        return worstFrame(items, GetParam().shape, GetParam().period);
    }

    std::mt19937 random_{41};
    std::map<std::size_t, Held> held_;
};

TEST_P(FrameTrackerEdits, AnswersLikeAFreshSearch) {
    FrameTracker tracker(GetParam().shape, GetParam().period);
    for (int edit = 0; edit < 120; ++edit) {
        const double kind = between(0, 1);
        auto picked = held_.begin();
        if (!held_.empty())
            std::advance(picked, static_cast<int>(between(0, static_cast<double>(held_.size()))));
        if (held_.size() < 5 || kind < 0.4) {
            const Held item = anyItem();
            held_[tracker.add(item.parts, item.weight, item.own)] = item;
        } else if (kind < 0.7) {
            picked->second = anyItem();
            tracker.replace(picked->first, picked->second.parts, picked->second.weight,
                            picked->second.own);
        } else {
            tracker.remove(picked->first);
            held_.erase(picked);
        }
        const auto expected = fresh();
        const std::int64_t value = expected ? expected->value : -1;
        // Asked in changing order, and not after every edit, so that knowledge is carried on.
        if (edit % 3 == 0) {
            EXPECT_FALSE(tracker.exceeds(value + edit % 7)) << edit;
        }
        if (edit % 3 == 1 && value > 0) {
            EXPECT_TRUE(tracker.exceeds(value - 1 - edit % 7)) << edit;
        }
        if (edit % 5 == 0) {
            const auto worst = tracker.worst();
            ASSERT_EQ(worst.has_value(), expected.has_value()) << edit;
            if (!worst) continue;
            EXPECT_EQ(worst->value, value) << edit;
            std::int64_t counted = 0;
            for (const std::size_t item : worst->counted) counted += held_.at(item).weight;
            EXPECT_EQ(counted, value);
        }
        if (edit % 4 == 0) {
            EXPECT_FALSE(tracker.exceeds(value)) << edit;
            if (value > 0) {
                EXPECT_TRUE(tracker.exceeds(value - 1)) << edit;
            }
        }
    }
}

INSTANTIATE_TEST_SUITE_P(
    Cases, FrameTrackerEdits,
    testing::Values(Case{"Flat", kCard, std::nullopt, 500, false, false},
                    Case{"Small", kCard, std::nullopt, 120, false, false},
                    Case{"Circle", circle(120), std::nullopt, 500, false, false},
                    Case{"Groups", kCard, std::nullopt, 500, true, false},
                    Case{"ForeignItems", kCard, std::nullopt, 700, true, true},
                    Case{"Round", kCard, millimetres(400), 400, true, true},
                    Case{"NarrowRound", kCard, millimetres(90), 400, true, false}),
    [](const testing::TestParamInfo<Case>& tried) { return std::string(tried.param.name); });

// Many items in few frames, edited where the worst frame lies: limits just below and at the worst
// value after each edit, at the value before it, and far from both.
class FrameTrackerAtTheWorst : public FrameTrackerEdits {};

TEST_P(FrameTrackerAtTheWorst, DecidesOnBothSidesOfTheWorstValue) {
    FrameTracker tracker(GetParam().shape, GetParam().period);
    for (int item = 0; item < 150; ++item) {
        const Held made = anyItem();
        held_[tracker.add(made.parts, made.weight, made.own)] = made;
    }
    int moved = 0;
    for (int edit = 0; edit < 60; ++edit) {
        const auto before = fresh();
        ASSERT_TRUE(before);
        Held made = anyItem();
        const auto dx = before->x + between(-80, 80) - made.parts.front().x;
        const auto dy = before->y + between(-80, 80) - made.parts.front().y;
        for (Capsule& part : made.parts) part = part.movedBy(dx, dy);
        const std::size_t picked = before->counted[static_cast<std::size_t>(
            between(0, static_cast<double>(before->counted.size() - 1)))];
        const auto counted = std::next(held_.begin(), static_cast<std::ptrdiff_t>(picked));
        if (edit % 3 == 0) {
            held_[tracker.add(made.parts, made.weight, made.own)] = made;
        } else if (edit % 3 == 1) {
            tracker.replace(counted->first, made.parts, made.weight, made.own);
            counted->second = made;
        } else {
            tracker.remove(counted->first);
            held_.erase(counted);
        }
        const auto after = fresh();
        ASSERT_TRUE(after);
        moved += after->value != before->value ? 1 : 0;
        if (edit % 4 != 0) {
            EXPECT_EQ(tracker.exceeds(before->value), after->value > before->value) << edit;
            EXPECT_EQ(tracker.exceeds(before->value - 1), after->value > before->value - 1) << edit;
        }
        EXPECT_FALSE(tracker.exceeds(after->value)) << edit;
        EXPECT_TRUE(tracker.exceeds(after->value - 1)) << edit;
        EXPECT_TRUE(tracker.exceeds(after->value * 9 / 10 - 1)) << edit;
        EXPECT_FALSE(tracker.exceeds(after->value * 11 / 10)) << edit;
        if (edit % 2 == 0) {
            EXPECT_EQ(tracker.worst()->value, after->value) << edit;
        }
    }
    EXPECT_GT(moved, 20);
}

INSTANTIATE_TEST_SUITE_P(
    Cases, FrameTrackerAtTheWorst,
    testing::Values(Case{"Flat", kCard, std::nullopt, 250, false, false},
                    Case{"Circle", circle(120), std::nullopt, 250, false, false},
                    Case{"GroupsAndForeignItems", kCard, std::nullopt, 300, true, true},
                    Case{"Round", kCard, millimetres(300), 300, true, true}),
    [](const testing::TestParamInfo<Case>& tried) { return std::string(tried.param.name); });

TEST(FrameTracker, ReachesPastTheSurfaceSearchedBefore) {
    FrameTracker tracker(kCard);
    tracker.add(std::vector{capsuleAt(0, 0, 3)}, 3);
    EXPECT_EQ(tracker.worst()->value, 3);
    // Far from all frames that the search has looked at, on every side.
    for (const double away : {-5000.0, 5000.0}) {
        tracker.add(std::vector{capsuleAt(away, 0, 4)}, 4);
        EXPECT_TRUE(tracker.exceeds(3));
        tracker.add(std::vector{capsuleAt(away, 20, 4)}, 1);
        EXPECT_EQ(tracker.worst()->value, 5);
        tracker.add(std::vector{capsuleAt(0, away, 4)}, 4);
        EXPECT_FALSE(tracker.exceeds(5));
    }
    tracker.add(std::vector{capsuleAt(0, 5010, 4)}, 4);
    EXPECT_EQ(tracker.worst()->value, 8);
}

TEST(FrameTracker, StaysRightOverManyEditsOfOneItem) {
    FrameTracker tracker(kCard);
    const std::size_t held = tracker.add(std::vector{capsuleAt(0, 0, 3)}, 3);
    const std::size_t moving = tracker.add(std::vector{capsuleAt(300, 0, 2)}, 2);
    for (int edit = 0; edit < 400; ++edit) {
        const bool beside = edit % 2 == 0;
        tracker.replace(moving, std::vector{capsuleAt(beside ? 30 : 300, 10, 2)}, 2);
        EXPECT_EQ(tracker.exceeds(3), beside) << edit;
        if (edit % 5 == 0) {
            EXPECT_EQ(tracker.worst()->value, beside ? 5 : 3) << edit;
        }
    }
    tracker.remove(moving);
    EXPECT_THAT(tracker.worst()->counted, ElementsAre(held));
}

TEST(FrameTracker, KnowsNothingWithoutItems) {
    FrameTracker tracker(kCard);
    EXPECT_FALSE(tracker.worst());
    EXPECT_FALSE(tracker.exceeds(0));
    const std::size_t item = tracker.add(std::vector{capsuleAt(0, 0, 3)}, 3);
    EXPECT_TRUE(tracker.exceeds(2));
    EXPECT_FALSE(tracker.exceeds(3));
    EXPECT_THAT(tracker.worst()->counted, ElementsAre(item));
    tracker.remove(item);
    EXPECT_FALSE(tracker.worst());
    EXPECT_FALSE(tracker.exceeds(-1));
}

TEST(FrameTracker, LosesTheFrameWithItsLastOwnItem) {
    FrameTracker tracker(kCard);
    const std::size_t own = tracker.add(std::vector{capsuleAt(0, 0, 3)}, 3, true);
    tracker.add(std::vector{capsuleAt(20, 0, 3)}, 30, false);
    EXPECT_EQ(tracker.worst()->value, 33);
    tracker.remove(own);
    EXPECT_FALSE(tracker.worst());
    EXPECT_FALSE(tracker.exceeds(0));
    tracker.add(std::vector{capsuleAt(40, 0, 3)}, 0, true);
    EXPECT_TRUE(tracker.exceeds(29));
    EXPECT_EQ(tracker.worst()->value, 30);
}

}  // namespace
}  // namespace model
