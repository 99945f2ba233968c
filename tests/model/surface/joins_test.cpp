// SPDX-License-Identifier: Apache-2.0
#include "surface/joins.h"

#include <gtest/gtest.h>

#include "random_capsules.h"

namespace model {
namespace {

using Sets = std::vector<std::vector<std::size_t>>;

Sets membersOf(const std::vector<SurfaceGroup>& groups) {
    Sets sets;
    for (const SurfaceGroup& group : groups) sets.push_back(group.members);
    return sets;
}

/// The rule as it is worded, by trying every pair of sets until none joins.
Sets joinedByTrying(const test::RandomCapsules& made, JoinReach reach, GapLimit constant) {
    Sets sets;
    for (std::size_t i = 0; i < made.capsules.size(); ++i) sets.push_back({i});
    const auto gapOf = [&](const auto& a, const auto& b) {
        Real gap = 1e9L;
        for (const std::size_t i : a)
            for (const std::size_t j : b)
                gap = std::min(gap, distance(made.capsules[i], made.capsules[j]));
        return roundedGap(gap);
    };
    const auto lengthOf = [&](const auto& set) {
        Real length = 0;
        for (const std::size_t i : set)
            for (const std::size_t j : set)
                length = std::max(length, model::reach(made.capsules[i], made.capsules[j]));
        return roundedLength(length);
    };
    const auto longestOf = [&](const auto& set) {
        Length longest;
        for (const std::size_t i : set) longest = std::max(longest, made.lengths[i]);
        return longest;
    };
    for (bool joined = true; joined;) {
        joined = false;
        for (std::size_t a = 0; a < sets.size() && !joined; ++a)
            for (std::size_t b = a + 1; b < sets.size() && !joined; ++b) {
                const Length gap = gapOf(sets[a], sets[b]);
                const bool joins = reach == JoinReach::LongestMember
                                       ? gap < std::max(longestOf(sets[a]), longestOf(sets[b]))
                                   : reach == JoinReach::SmallerSet
                                       ? gap < std::min(lengthOf(sets[a]), lengthOf(sets[b]))
                                       : constant.links(gap);
                if (!joins) continue;
                sets[a].insert(sets[a].end(), sets[b].begin(), sets[b].end());
                sets.erase(sets.begin() + static_cast<std::ptrdiff_t>(b));
                joined = true;
            }
    }
    Sets groups;
    for (auto& set : sets) {
        if (set.size() < 2) continue;
        std::sort(set.begin(), set.end());
        groups.push_back(set);
    }
    std::sort(groups.begin(), groups.end());
    return groups;
}

TEST(Joins, AgreeWithTryingEveryPairOfSets) {
    const GapLimit fixed{millimetres(3), true};
    for (unsigned seed = 0; seed < 60; ++seed) {
        const auto made = test::randomCapsules(seed, 25, 60 + static_cast<int>(seed) * 2, 8);
        for (const JoinReach reach :
             {JoinReach::LongestMember, JoinReach::SmallerSet, JoinReach::Constant})
            EXPECT_EQ(
                membersOf(joinedSets(made.capsules, made.lengths, reach, fixed, std::nullopt)),
                joinedByTrying(made, reach, fixed))
                << "seed " << seed;
    }
}

// Source: EN 1369:2012, 5.2.3.2 (worked case: linear 4, 5 and 6 mm in line, gaps 2 and 3).
TEST(JoinsOracle, ThreeLinearInLineAreOneOfTwentyMillimetres) {
    std::vector<Capsule> capsules;
    std::vector<Length> lengths;
    std::int64_t from = 0;
    for (const auto& [length, gap] : {std::pair{4, 2}, {5, 3}, {6, 0}}) {
        capsules.push_back(
            makeCapsule(nanometres(1'000'000 * from + 500'000 * std::int64_t{length}), {},
                        millimetres(length), nanometres(500'000), {}, {}));
        lengths.push_back(millimetres(length));
        from += length + gap;
    }
    const auto groups = joinedSets(capsules, lengths, JoinReach::LongestMember, {}, std::nullopt);
    ASSERT_EQ(groups.size(), 1U);
    EXPECT_EQ(groups[0].length, millimetres(20));
}

TEST(Joins, UnrollASetAcrossTheSeamOfARoundSurface) {
    // Period 100: 98 and 3 are 5 apart, with 4 mm long capsules along x the gap is 1.
    std::vector<Capsule> capsules;
    for (const int x : {3, 98})
        capsules.push_back(makeCapsule(millimetres(x), {}, millimetres(4), millimetres(1), {}, {}));
    const std::vector<Length> lengths(2, millimetres(4));
    const auto groups =
        joinedSets(capsules, lengths, JoinReach::LongestMember, {}, millimetres(100));
    ASSERT_EQ(groups.size(), 1U);
    EXPECT_EQ(groups[0].length, millimetres(9));
    EXPECT_TRUE(joinedSets(capsules, lengths, JoinReach::LongestMember, {}, std::nullopt).empty());
}

TEST(Joins, ASetThatClosesRoundIsAtLeastThePeriodLong) {
    std::vector<Capsule> capsules;
    for (int x = 0; x < 100; x += 10)
        capsules.push_back(makeCapsule(millimetres(x), {}, millimetres(8), millimetres(1), {}, {}));
    const std::vector<Length> lengths(10, millimetres(8));
    for (const JoinReach reach : {JoinReach::LongestMember, JoinReach::SmallerSet}) {
        const auto groups = joinedSets(capsules, lengths, reach, {}, millimetres(100));
        ASSERT_EQ(groups.size(), 1U);
        EXPECT_EQ(groups[0].members.size(), 10U);
        EXPECT_GE(groups[0].length, millimetres(100));
    }
}

}  // namespace
}  // namespace model
