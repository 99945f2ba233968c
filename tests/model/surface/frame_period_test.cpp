// SPDX-License-Identifier: Apache-2.0
// Surfaces that close round: x and x + period are the same place.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "frame_scene.h"

namespace model {
namespace {

using testing::ElementsAre;

const FrameShape kCard = rectangle(105, 148);
constexpr double kPeriodMm = 1570.8;
const Length kRound = nanometres(1'570'800'000);

TEST(FramePeriod, SeesAClusterAcrossTheSeam) {
    FrameScene scene;
    scene.add(capsuleAt(20, 10, 5), 5).add(capsuleAt(kPeriodMm - 20, 10, 6), 6);
    scene.add(capsuleAt(700, 10, 7), 7);
    EXPECT_EQ(worstFrame(scene.items(), kCard)->value, 7);
    const auto found = worstFrame(scene.items(), kCard, kRound);
    ASSERT_TRUE(found);
    EXPECT_EQ(found->value, 11);
    EXPECT_THAT(found->counted, ElementsAre(0, 1));
    EXPECT_THAT(boostCounted(scene.items(), *found, kCard, kFrameToleranceMm, kPeriodMm),
                ElementsAre(0, 1));
    EXPECT_TRUE(worstFrameExceeds(scene.items(), kCard, 10, kRound));
    EXPECT_FALSE(worstFrameExceeds(scene.items(), kCard, 11, kRound));
}

TEST(FramePeriod, CountsAnItemOnceInAFrameWiderThanThePeriod) {
    FrameScene scene;
    for (int index = 0; index < 30; ++index) scene.add(capsuleAt(index, 3 * index, 2), 2);
    for (const double period : {30.0, 45.5, 104.0})
        for (const FrameShape& shape : {kCard, circle(140)})
            EXPECT_EQ(
                worstFrame(scene.items(), shape, nanometres(std::llround(period * 1e6)))->value,
                60);
}

TEST(FramePeriod, TakesPlacesModuloThePeriod) {
    for (const double turns : {-3.0, 1.0, 12.0}) {
        FrameScene scene;
        scene.add(capsuleAt(40 + turns * kPeriodMm, 0), 3).add(capsuleAt(90, 20), 4);
        EXPECT_EQ(worstFrame(scene.items(), kCard, kRound)->value, 7);
        EXPECT_EQ(worstFrame(scene.items(), circle(60), kRound)->value, 7);
    }
}

TEST(FramePeriod, CountsAGroupThatWasUnrolledOnce) {
    FrameScene scene;
    scene.add({capsuleAt(1560, 0, 10), capsuleAt(1580, 0, 10), capsuleAt(3120, 0, 10)}, 30);
    scene.add(capsuleAt(60, 0), 1);
    EXPECT_EQ(worstFrame(scene.items(), kCard, kRound)->value, 31);
}

TEST(FramePeriod, DoesNotDependOnWhereTheSeamLies) {
    std::mt19937 random(11);
    std::uniform_real_distribution<double> along(0, 500);
    std::uniform_real_distribution<double> up(0, 300);
    std::vector<Capsule> capsules;
    capsules.reserve(40);
    for (int index = 0; index < 40; ++index)
        capsules.push_back(capsuleAt(along(random), up(random), 9, 2, up(random)));
    std::vector<std::int64_t> values;
    for (const double shift : {0.0, 123.4, 250.0, 499.0}) {
        FrameScene scene;
        for (const Capsule& capsule : capsules) {
            const double x = std::fmod(static_cast<double>(capsule.x) + shift, 500.0);
            Capsule moved = capsule;
            moved.x = x;
            scene.add(moved, 9);
        }
        const auto found = worstFrame(scene.items(), kCard, millimetres(500));
        ASSERT_TRUE(found);
        values.push_back(found->value);
        EXPECT_GE(weightOf(scene.items(),
                           boostCounted(scene.items(), *found, kCard, kFrameToleranceMm, 500.0)),
                  found->value);
    }
    EXPECT_THAT(values, testing::Each(values.front()));
}

}  // namespace
}  // namespace model
