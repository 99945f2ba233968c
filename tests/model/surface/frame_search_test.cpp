// SPDX-License-Identifier: Apache-2.0
// Sets whose most unfavourable frame is known by construction. The 105 x 148 mm frame is that of
// EN 1369:2012; the expected values follow from how each set is laid out.
#include "surface/frame_search.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "frame_scene.h"

namespace model {
namespace {

using testing::ElementsAre;
using testing::SizeIs;

const FrameShape kCard = rectangle(105, 148);

// Points on the border of a 105 x 148 mm rectangle about (x, y), drawn out by `outwards`: two on
// each side near its ends and one at every corner, so that no other frame can hold them all.
FrameScene borderOf(double x, double y, double angleDegrees, double outwards) {
    FrameScene scene;
    const double c = std::cos(angleDegrees * kDegree);
    const double s = std::sin(angleDegrees * kDegree);
    const double a = 52.5 + outwards;
    const double b = 74 + outwards;
    for (const auto& [u, v] : {std::pair{a, b},
                               {a, -b},
                               {-a, b},
                               {-a, -b},
                               {a, 60.},
                               {a, -61.},
                               {-a, 62.},
                               {-a, -63.},
                               {40., b},
                               {-41., b},
                               {42., -b},
                               {-43., -b}})
        scene.add(capsuleAt(x + u * c - v * s, y + u * s + v * c));
    return scene;
}

TEST(FrameSearch, FindsNothingAmongNoItems) {
    EXPECT_FALSE(worstFrame({}, kCard));
    EXPECT_FALSE(worstFrameExceeds({}, kCard, 0));
    EXPECT_FALSE(worstFrame({}, circle(50)));
    EXPECT_FALSE(worstFrame({}, kCard, millimetres(500)));
}

TEST(FrameSearch, CountsASingleItemOnce) {
    FrameScene scene;
    scene.add(capsuleAt(-3000, 4000, 12, 3, 30), 12);
    const auto found = worstFrame(scene.items(), kCard);
    ASSERT_TRUE(found);
    EXPECT_EQ(found->value, 12);
    EXPECT_THAT(found->counted, ElementsAre(0));
    EXPECT_TRUE(worstFrameExceeds(scene.items(), kCard, 11));
    EXPECT_FALSE(worstFrameExceeds(scene.items(), kCard, 12));
}

TEST(FrameSearch, FindsAFrameEvenWhereNothingHasWeight) {
    FrameScene scene;
    scene.add(capsuleAt(1, 2, 3), 0).add(capsuleAt(500, 2, 3), 0);
    const auto found = worstFrame(scene.items(), kCard);
    ASSERT_TRUE(found);
    EXPECT_EQ(found->value, 0);
    EXPECT_THAT(found->counted, SizeIs(1));
    EXPECT_TRUE(worstFrameExceeds(scene.items(), kCard, -1));
    EXPECT_FALSE(worstFrameExceeds(scene.items(), kCard, 0));
}

TEST(FrameSearch, CountsWhatLiesOnTheBorderAtAnyAngle) {
    for (const double angle : {0.0, 12.5, 33.333, 45.0, 89.0, 90.0, 120.7, 179.0}) {
        const FrameScene scene = borderOf(210.3, -77.7, angle, 0);
        const auto found = worstFrame(scene.items(), kCard);
        ASSERT_TRUE(found);
        EXPECT_EQ(found->value, 12) << angle;
        EXPECT_THAT(boostCounted(scene.items(), *found, kCard, kFrameToleranceMm), SizeIs(12));
        EXPECT_GE(found->angleDegrees, 0);
        EXPECT_LT(found->angleDegrees, 180);
    }
}

TEST(FrameSearch, LeavesOutWhatLiesBesideTheBorderAtAnyAngle) {
    for (const double angle : {0.0, 12.5, 33.333, 45.0, 89.0, 90.0, 120.7, 179.0}) {
        const FrameScene scene = borderOf(210.3, -77.7, angle, 0.05);
        const auto found = worstFrame(scene.items(), kCard);
        ASSERT_TRUE(found);
        EXPECT_LT(found->value, 12) << angle;
        EXPECT_FALSE(worstFrameExceeds(scene.items(), kCard, 11));
    }
}

TEST(FrameSearch, LooksAtAllAnglesNotOnlySquareToTheEdges) {
    // A diagonal of 181.4 mm holds two points 180 mm apart; no side does.
    FrameScene scene;
    scene.add(capsuleAt(0, 0), 5).add(capsuleAt(180, 0), 7);
    EXPECT_EQ(worstFrame(scene.items(), kCard)->value, 12);
    FrameScene apart;
    apart.add(capsuleAt(0, 0), 5).add(capsuleAt(std::hypot(105, 148) + 0.05, 0), 7);
    EXPECT_EQ(worstFrame(apart.items(), kCard)->value, 7);
}

TEST(FrameSearch, CountsAnIndicationOnceAndInFullThatOnlyReachesIn) {
    // Three capsules around a corner that is held in place by points on the border.
    for (const double gap : {-0.02, 0.05}) {
        FrameScene scene = borderOf(0, 0, 0, 0);
        const double diagonal = std::numbers::sqrt2 / 2;
        const double away = 10 / 2.0 + gap;  // a capsule 10 mm long pointing at the corner (a, b)
        scene.add(capsuleAt(52.5 + away * diagonal, 74 + away * diagonal, 10, 2, 45), 10);
        const auto found = worstFrame(scene.items(), kCard);
        ASSERT_TRUE(found);
        // All twelve points and the capsule, or one side of the frame gives way for the capsule.
        const bool all = found->value == 22;
        EXPECT_EQ(all, gap < 0) << gap;
    }
}

TEST(FrameSearch, MeasuresToARoundEndPastACornerNotToItsBox) {
    // Discs of 20 mm past the corner of a held frame: their boxes overlap it, they do not.
    for (const double gap : {-0.02, 0.05}) {
        FrameScene scene = borderOf(0, 0, 30, 0);
        const double towards = 75 * kDegree;  // 45 degrees from both sides
        const double c = std::cos(30 * kDegree), s = std::sin(30 * kDegree);
        const double cornerX = 52.5 * c - 74 * s, cornerY = 52.5 * s + 74 * c;
        scene.add(capsuleAt(cornerX + (10 + gap) * std::cos(towards),
                            cornerY + (10 + gap) * std::sin(towards), 20, 20),
                  3);
        EXPECT_EQ(worstFrame(scene.items(), kCard)->value == 15, gap < 0) << gap;
    }
}

TEST(FrameSearch, CountsAGroupOnceWhateverItTouchesOfIt) {
    FrameScene scene;
    scene.add({capsuleAt(0, 0, 5), capsuleAt(8, 0, 5), capsuleAt(16, 2, 5)}, 21)
        .add({capsuleAt(150, 0, 4), capsuleAt(400, 0, 4)}, 100)
        .add(capsuleAt(60, 40, 3), 3);
    const auto found = worstFrame(scene.items(), kCard);
    ASSERT_TRUE(found);
    EXPECT_EQ(found->value, 124);
    EXPECT_THAT(found->counted, ElementsAre(0, 1, 2));
}

TEST(FrameSearch, CountsEverythingInAFrameMuchLargerThanTheSurface) {
    FrameScene scene;
    for (int index = 0; index < 200; ++index)
        scene.add(capsuleAt(index * 3.7, (index * 31) % 400, 5, 1, index), 1 + index);
    for (const FrameShape& shape : {rectangle(5000, 5000), rectangle(900'000, 900'000),
                                    rectangle(2000, 999'999), circle(3000)})
        EXPECT_EQ(worstFrame(scene.items(), shape)->value, 200 * 201 / 2);
}

TEST(FrameSearch, UsesALongFrameAtTheAngleThatItNeeds) {
    // 10 mm x 10 m: a strip. Points along a slanted line within it, others beside.
    FrameScene scene;
    for (int index = 0; index < 20; ++index) {
        scene.add(capsuleAt(index * 40, index * 25));
        scene.add(capsuleAt(index * 40 - 9 - index, index * 25 + 16 + 2 * index));
    }
    const auto found = worstFrame(scene.items(), rectangle(10'000, 10));
    ASSERT_TRUE(found);
    EXPECT_THAT(boostCounted(scene.items(), *found, rectangle(10'000, 10), kFrameToleranceMm),
                SizeIs(static_cast<std::size_t>(found->value)));
    EXPECT_GE(found->value, 20);
}

TEST(FrameSearch, CountsWhatATinyFrameTouches) {
    FrameScene scene;
    scene.add(capsuleAt(0, 0, 20, 0, 0), 20).add(capsuleAt(0, 0, 20, 0, 60), 20);
    scene.add(capsuleAt(100, 0, 30, 4, 0), 30);
    for (const FrameShape& shape :
         {rectangle(0.000001, 0.000001), rectangle(0.01, 0.02), circle(0.001)}) {
        EXPECT_EQ(worstFrame(scene.items(), shape)->value, 40);
        EXPECT_FALSE(worstFrameExceeds(scene.items(), shape, 40));
    }
}

TEST(FrameSearch, CountsManyItemsAtOnePlace) {
    FrameScene scene;
    for (int index = 0; index < 1000; ++index) scene.add(capsuleAt(12.5, 40, 3, 3), 7);
    for (int index = 0; index < 999; ++index) scene.add(capsuleAt(800, 40, 3, 3), 7);
    EXPECT_EQ(worstFrame(scene.items(), kCard)->value, 7000);
    EXPECT_EQ(worstFrame(scene.items(), circle(1))->value, 7000);
}

TEST(FrameSearch, FindsTheCircleThroughPointsOnItsRim) {
    for (const double outwards : {0.0, 0.05}) {
        FrameScene scene;
        for (int index = 0; index < 7; ++index)
            scene.add(capsuleAt(300 + (40 + outwards) * std::cos(index * 0.9),
                                200 + (40 + outwards) * std::sin(index * 0.9)));
        const auto found = worstFrame(scene.items(), circle(80));
        ASSERT_TRUE(found);
        if (outwards > 0)
            EXPECT_LT(found->value, 7);
        else
            EXPECT_THAT(boostCounted(scene.items(), *found, circle(80), kFrameToleranceMm),
                        SizeIs(7));
    }
}

TEST(FrameSearch, JudgesOnlyFramesWithAnOwnItem) {
    FrameScene scene;
    scene.add(capsuleAt(0, 0), 3, true);
    scene.add(capsuleAt(100, 0), 10, false);
    scene.add(capsuleAt(600, 0), 500, false);
    const auto found = worstFrame(scene.items(), kCard);
    ASSERT_TRUE(found);
    EXPECT_EQ(found->value, 13);
    EXPECT_THAT(found->counted, ElementsAre(0, 1));
    EXPECT_FALSE(worstFrameExceeds(scene.items(), kCard, 13));

    FrameScene foreign;
    foreign.add(capsuleAt(0, 0), 3, false);
    EXPECT_FALSE(worstFrame(foreign.items(), kCard));
    EXPECT_FALSE(worstFrameExceeds(foreign.items(), kCard, 0));
}

TEST(FrameSearch, SumsWeightsExactly) {
    FrameScene scene;
    std::int64_t all = 0;
    for (int index = 0; index < 1000; ++index) {
        const std::int64_t weight = 999'999'999'999 - std::int64_t{index} * 7;
        all += weight;
        scene.add(capsuleAt(index * 0.05, index * 0.04), weight);
    }
    EXPECT_EQ(worstFrame(scene.items(), kCard)->value, all);
    EXPECT_TRUE(worstFrameExceeds(scene.items(), kCard, all - 1));
    EXPECT_FALSE(worstFrameExceeds(scene.items(), kCard, all));
}

TEST(FrameSearch, GivesTheSameAnswerTwice) {
    FrameScene scene;
    std::mt19937 random(5);
    std::uniform_real_distribution<double> at(0, 400);
    for (int index = 0; index < 60; ++index)
        scene.add(capsuleAt(at(random), at(random), 8, 1, at(random)), 8);
    const auto once = worstFrame(scene.items(), kCard);
    const auto again = worstFrame(scene.items(), kCard);
    EXPECT_EQ(once->value, again->value);
    EXPECT_EQ(once->x, again->x);
    EXPECT_EQ(once->y, again->y);
    EXPECT_EQ(once->angleDegrees, again->angleDegrees);
    EXPECT_EQ(once->counted, again->counted);
}

}  // namespace
}  // namespace model
